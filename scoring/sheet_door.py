"""The door `merge`: the edits of one sheet in, the merged sheet out."""

from collections.abc import Mapping
from typing import Any

from scoring.bad_input import a_list, an_object, join, value_of
from scoring.merging import Merged
from scoring.merging import merge as merge_edits
from scoring.sheet import FORMAT, read_edit

# Merging reads none of these, so a caller may leave them out.
UNREAD = {"v": FORMAT, "made_at": "", "device": ""}


def merge(source: Mapping[str, Any]) -> dict[str, Any]:
    """The merged sheet. Raises BadInput where an edit cannot be read, an id is reused or sheets are mixed."""
    edits = []
    for index, raw in enumerate(a_list(value_of(source, "edits"), "edits")):
        at = join("edits", index)
        edits.append(read_edit({**UNREAD, **an_object(raw, at)}, at))
    return _as_json(merge_edits(edits))


def _as_json(merged: Merged) -> dict[str, Any]:
    return {
        "fields": {
            field: [{"edit": edit.id, "value": edit.value} for edit in live] for field, live in merged.fields.items()
        },
        "disputed": list(merged.disputed),
        "incomplete": list(merged.incomplete),
        "held": list(merged.held),
    }
