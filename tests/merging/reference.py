"""Merging once more, slow and obvious: every question answered by trying all paths, nothing shared with `scoring`.

A path leads from an edit to one it replaces. Every set is grown until it grows no more.
"""

import json
from collections.abc import Collection
from typing import Any

from scoring.sheet import Edit


def merged(edits: list[Edit], left_out: Collection[str] = ()) -> dict[str, Any]:
    edits = [edit for edit in edits if edit.id not in left_out]
    known = {edit.id for edit in edits}
    ordinary = [edit for edit in edits if edit.field != "signature"]
    signatures = [edit for edit in edits if edit.field == "signature"]
    whole = {edit.id for edit in signatures if is_whole(edit, known)}
    in_force = [edit for edit in signatures if edit.id in standing(signatures, whole)]
    signing = [edit for edit in in_force if words(edit)["covers"] is not None]
    signed = grown({name for edit in signing for name in words(edit)["covers"]}, ordinary)
    aside = {edit.id for edit in ordinary for by in in_force if edit.id in words(by)["aside"]}
    counted = signed if signing else {edit.id for edit in ordinary} - aside
    live = {edit.id for edit in ordinary if edit.id in standing(of_field(ordinary, edit.field), counted)}
    live |= standing(signatures, {edit.id for edit in signatures})
    pending = {edit.id for edit in signatures if edit.id in live and edit.id not in whole}
    shown = [edit for edit in edits if edit.id in counted or edit in signatures]
    incomplete = {edit.field for edit in shown if set(edit.replaces) - known - set(left_out)} | (
        {"signature"} if pending else set()
    )
    fields = {
        edit.field: [other for other in shown if other.id in live and other.field == edit.field] for edit in shown
    }
    return {
        "fields": {field: sorted(edit.id for edit in found) for field, found in fields.items() if found},
        "disputed": sorted(field for field, found in fields.items() if field not in incomplete and differ(found)),
        "incomplete": sorted(incomplete),
        "held": sorted({edit.id for edit in ordinary} - counted - aside),
        "aside": sorted(aside - signed),
        "signed_by": sorted(edit.id for edit in signing),
        "pending": sorted(pending),
    }


def of_field(edits: list[Edit], field: str) -> list[Edit]:
    return [edit for edit in edits if edit.field == field]


def standing(edits: list[Edit], counted: set[str]) -> set[str]:
    """The counted edits of one field that no counted edit outside their own cycle replaces."""
    through = {edit.id for edit in edits} - counted
    pairs = {(new, old) for new in counted for old in counted if new != old and leads(edits, new, old, through)}
    paths = closed(pairs)
    replaced = {old for new, old in pairs if (old, new) not in paths}
    return {edit.id for edit in edits} & counted - replaced


def leads(edits: list[Edit], new: str, old: str, through: set[str]) -> bool:
    """Whether `new` replaces `old`, itself or through edits that do not count."""
    found = {name for edit in edits if edit.id == new for name in edit.replaces}
    for _ in edits:
        found |= {name for edit in edits if edit.id in found & through for name in edit.replaces}
    return old in found


def closed(pairs: set[tuple[str, str]]) -> set[tuple[str, str]]:
    more = pairs | {(a, d) for a, b in pairs for c, d in pairs if b == c}
    return pairs if more == pairs else closed(more)


def grown(ids: set[str], edits: list[Edit]) -> set[str]:
    field = {edit.id: edit.field for edit in edits}
    held = ids & field.keys()
    more = held | {name for edit in edits if edit.id in held for name in edit.replaces if field.get(name) == edit.field}
    return held if more == held else grown(more, edits)


def words(signature: Edit) -> dict[str, Any]:
    value = signature.value
    return {"aside": [], **value} if isinstance(value, dict) else {"covers": value, "aside": []}


def is_whole(signature: Edit, known: set[str]) -> bool:
    said = words(signature)
    if said.get("covers", 0) is None:
        return isinstance(said["aside"], list)
    lists = isinstance(said.get("covers"), list) and isinstance(said["aside"], list)
    return lists and set(said["covers"]) <= known


def differ(edits: list[Edit]) -> bool:
    return any(plain(edit) != plain(edits[0]) for edit in edits)


def plain(edit: Edit) -> Any:
    """A value as text, in which 1 and true already differ; 1.0 is written as 1."""
    if edit.field == "signature" and isinstance(edit.value, dict | list):
        said = edit.value if isinstance(edit.value, dict) else {"covers": edit.value}
        return {
            name: sorted({text(m) for m in part}) if isinstance(part, list) else text(part)
            for name, part in said.items()
        }
    is_set = edit.field.startswith("set.") and isinstance(edit.value, list)
    return sorted({text(member) for member in edit.value}) if is_set else text(edit.value)


def text(value: Any) -> str:
    return json.dumps(int(value) if isinstance(value, float) else value)
