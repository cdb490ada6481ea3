"""How the edits of one sheet merge: without loss, and to the same sheet in whatever order and however often they come.

- A field's live edits are those that no other edit of the field replaces. An edit never replaces itself, and edits
  that replace each other in a cycle all stay live unless one from outside the cycle replaces them.
- Live edits of equal value settle a field; otherwise it is disputed and all are kept. While an id that one of its
  edits replaces is not known, the field is incomplete instead.
- The signed sheet is the merge of the edits that the signatures in force cover and everything those replace within
  their fields; every other edit is held, whenever it arrives. Signatures themselves are never held.
- Edits that a signature sets aside are left out, neither live nor held, as long as that signature is in force.
- An edit in a format we do not know is held, and known to those that name it.
- An edit that was refused, or is kept aside until somebody decides, is left out: it says nothing, no signature can
  cover it, and those that name it in `replaces` do not wait for it.
"""

from collections.abc import Collection, Iterable, Mapping, Set
from dataclasses import dataclass
from typing import Any

from scoring.bad_input import BadInput
from scoring.replacing import Edits, live_edits, replaced_closure
from scoring.sheet import FORMAT, Edit, same_content, value_key
from scoring.signing import signing

SIGNATURE = "signature"


@dataclass(frozen=True, slots=True)
class Merged:
    """One sheet as its edits leave it: every tuple sorted, every field's live edits in the order of their ids.

    `held`, `aside`, `signed_by` and `pending` are edit ids: kept out by a signature, set aside by one, the signatures
    in force, and the live signatures that wait for edits they cover.
    """

    fields: Mapping[str, tuple[Edit, ...]]
    disputed: tuple[str, ...]
    incomplete: tuple[str, ...]
    held: tuple[str, ...]
    aside: tuple[str, ...]
    signed_by: tuple[str, ...]
    pending: tuple[str, ...]


def merge(edits: Iterable[Edit], left_out: Collection[str] = ()) -> Merged:
    """The sheet that these edits make.

    Rule: at the head of this module and of `signing`. Limits: edits of one sheet; any field name, any JSON value.
    `left_out` are the ids of edits refused or kept aside.
    Raises BadInput: `id-reused` where two edits share an id and differ, `several-sheets` where sheets are mixed.
    """
    known = _by_id(edit for edit in edits if edit.id not in left_out)
    signatures, others = _apart(known)
    said = signing(signatures, known.keys())
    signed = replaced_closure(said.covers or (), others)
    aside = (said.aside & others.keys()) - signed
    counted = others.keys() - aside if said.covers is None else signed
    fields = _live_fields(others, counted) | _live_fields(signatures, signatures.keys())
    waiting = _waiting([*map(others.__getitem__, counted), *signatures.values()], known.keys() | set(left_out))
    incomplete = waiting | {SIGNATURE} if said.pending else waiting
    return Merged(
        fields=dict(sorted(fields.items())),
        disputed=tuple(sorted(f for f, live in fields.items() if f not in incomplete and not _agree(live))),
        incomplete=tuple(sorted(incomplete)),
        held=tuple(sorted(known.keys() - signatures.keys() - counted - aside)),
        aside=tuple(sorted(aside)),
        signed_by=tuple(sorted(said.signed_by)),
        pending=tuple(sorted(said.pending)),
    )


def settled(merged: Merged) -> dict[str, Any]:
    """The value of every field that is neither disputed nor incomplete; null where it was emptied."""
    open_fields = {*merged.disputed, *merged.incomplete}
    return {field: live[0].value for field, live in merged.fields.items() if field not in open_fields}


def replaces_for(edits: Iterable[Edit], field: str, unsent: Collection[str] = ()) -> tuple[str, ...]:
    """The ids that a new edit of the field names.

    Rule: every live id this device has seen, held ones too, and all that its own unsent chain replaced.
    `unsent` are the ids of its edits that no server has answered for.
    """
    seen = {edit.id: edit for edit in edits if edit.field == field and edit.v == FORMAT}
    live = {edit.id for edit in live_edits(seen, seen.keys())}
    chain = [seen[edit_id].replaces for edit_id in replaced_closure(live, seen) if edit_id in unsent]
    return tuple(sorted(live.union(*chain)))


def covers_for(edits: Iterable[Edit], aside: Collection[str] | None = None) -> tuple[str, ...]:
    """The ids that a new signature covers: every edit that is live, held ones too, once those set aside are left out.

    `aside` are the ids that the new signature sets aside; None stands for those set aside now.
    """
    known = _by_id(edits)
    left_out = merge(known.values()).aside if aside is None else aside
    others = _apart(known)[1]
    live = _live_fields(others, others.keys() - set(left_out))
    return tuple(sorted(edit.id for of_field in live.values() for edit in of_field))


def _by_id(edits: Iterable[Edit]) -> dict[str, Edit]:
    known: dict[str, Edit] = {}
    for index, edit in enumerate(edits):
        first = known.setdefault(edit.id, edit)
        if first is not edit and not same_content(first, edit):
            message = f'The id "{edit.id[:60]}" is taken by an edit of other content.'
            raise BadInput("id-reused", message, f"edits[{index}].id")
        if edit.sheet != next(iter(known.values())).sheet:
            raise BadInput("several-sheets", "Give the edits of one sheet.", f"edits[{index}].sheet")
    return known


def _apart(known: Edits) -> tuple[dict[str, Edit], dict[str, Edit]]:
    """The signatures and the other edits, those in an unknown format left out."""
    readable = [edit for edit in known.values() if edit.v == FORMAT]
    return (
        {edit.id: edit for edit in readable if edit.field == SIGNATURE},
        {edit.id: edit for edit in readable if edit.field != SIGNATURE},
    )


def _live_fields(edits: Edits, counted: Set[str]) -> dict[str, tuple[Edit, ...]]:
    by_field: dict[str, dict[str, Edit]] = {}
    for edit_id, edit in edits.items():
        by_field.setdefault(edit.field, {})[edit_id] = edit
    merged = {field: live_edits(of_field, counted) for field, of_field in by_field.items()}
    return {field: live for field, live in merged.items() if live}


def _waiting(edits: Iterable[Edit], known: Set[str]) -> set[str]:
    """The fields of edits that replace an id not known."""
    return {edit.field for edit in edits if any(older not in known for older in edit.replaces)}


def _agree(live: Iterable[Edit]) -> bool:
    return len({value_key(edit.field, edit.value) for edit in live}) == 1
