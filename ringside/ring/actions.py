"""Takes in what the tablets wrote: one transaction a batch, one answer an edit, nothing lost and nothing doubled."""

import json
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from django.db import transaction
from django.db.models import QuerySet
from django.utils import timezone

from ringside.people.models import Person
from ringside.ring import models
from ringside.ring.access import Worker
from ringside.ring.admission import Ground, Ruling, rule_on
from ringside.ring.places import Place, place_of
from ringside.ring.reasons import reason
from ringside.shows.models import Ring
from scoring import canonical
from scoring.bad_input import BadInput
from scoring.merging import Merged, merge, settled
from scoring.sheet import Edit, digest, field_kind, parse_edit
from scoring.sheet_fields import subject_of

MOST_EDITS = 500
# What a tablet is answered for each state in which an edit is kept.
ANSWERS: dict[str, str] = {
    models.Edit.State.TAKEN: "applied",
    models.Edit.State.HELD: "held",
    models.Edit.State.LEFT_OUT: "held",
    models.Edit.State.REFUSED: "refused",
}


@dataclass(frozen=True, slots=True)
class Answer:
    """What became of one edit: applied, disputed, held or refused. `digest` says which content was answered."""

    id: str
    digest: str
    state: str
    reason: str = ""

    def as_json(self) -> dict[str, str]:
        answer = {"id": self.id, "digest": self.digest, "state": self.state}
        return {**answer, "reason": self.reason} if self.reason else answer


@transaction.atomic(savepoint=False)
def take_edits(*, worker: Worker, raw_edits: Sequence[Any]) -> list[Answer]:
    """Takes a batch of edits into a ring. The ring's row is the lock under which edits get their numbers."""
    ground = Ground(Ring.objects.select_for_update().get(pk=worker.ring.pk))
    answers = [_take_one(ground, worker, raw) for raw in raw_edits]
    ground.ring.save(update_fields=["sequence"])
    touched = {answer_sheet for _, answer_sheet in answers if answer_sheet}
    merged = {sheet: _settle_at(ground.place_of(sheet), ground.ring) for sheet in sorted(touched)}
    return [_as_merged(answer, merged.get(sheet)) for answer, sheet in answers]


def _take_one(ground: Ground, worker: Worker, raw: Any) -> tuple[Answer, str]:
    """The answer, and the sheet to merge again; no sheet where the edit cannot be kept."""
    try:
        edit = parse_edit(raw)
        _require_storable(edit)
        known = models.Edit.objects.filter(pk=edit.id).first()
        if known and known.digest != digest(edit):
            raise BadInput("id-reused", reason("id-reused"), "id")
    except BadInput as error:
        return _refusal(raw, error.message), ""
    if known and known.state != models.Edit.State.REFUSED:
        return _answer(edit, known.state, known.reason), known.sheet
    ruling = rule_on(ground, worker.roles, edit)
    if known is None or ruling.state != models.Edit.State.REFUSED:
        _store(ground, edit, ruling, worker=worker, known=known)
    return _answer(edit, ruling.state, ruling.reason), edit.sheet


def _require_storable(edit: Edit) -> None:
    """PostgreSQL cannot keep the sign U+0000; one such edit must not hold up the whole batch."""
    if r"\u0000" in json.dumps(edit.as_json()):
        raise BadInput("out-of-range", reason("sign-not-kept"), "value")


def _answer(edit: Edit, state: str, why: str) -> Answer:
    return Answer(edit.id, digest(edit), ANSWERS[state], why)


def _store(ground: Ground, edit: Edit, ruling: Ruling, *, worker: Worker, known: models.Edit | None) -> None:
    """Keeps the edit under the ring's next number; one that was refused before may count when others send it."""
    ring = ground.ring
    ring.sequence += 1
    told = {
        "ring": ring,
        "sequence": ring.sequence,
        "sheet": edit.sheet,
        "field": edit.field,
        "value": edit.value,
        "replaces": list(edit.replaces),
        "made_at": edit.made_at,
        "device": edit.device,
        "version": edit.v,
        "digest": digest(edit),
        "by": worker.account,
        "pairing": worker.pairing,
        "role": ruling.role,
        "judge": _judge_of(ground, edit),
        "state": ruling.state,
        "reason": ruling.reason[:200],
    }
    if known:
        models.Edit.objects.filter(pk=known.pk).update(**told)
    else:
        models.Edit.objects.create(id=edit.id, **told)


def _judge_of(ground: Ground, edit: Edit) -> Person | None:
    """Who judges what a signature signs, as it comes; nobody for other edits."""
    place = ground.place_of(edit.sheet) if field_kind(edit.field) == "signature" else None
    return place.judge if place else None


def _refusal(raw: Any, why: str) -> Answer:
    """A refusal that names what it refuses as far as that can be read, so that the tablet can put it aside."""
    given = raw if isinstance(raw, dict) else {}
    members = {
        name: given.get(name) for name in ("v", "id", "sheet", "field", "value", "replaces", "made_at", "device")
    }
    try:
        canonical.check_sound(members, "")
        content = canonical.digest(members)
    except BadInput:
        content = ""
    return Answer(str(given.get("id"))[:64], content, "refused", why)


def _as_merged(answer: Answer, merged: Merged | None) -> Answer:
    if merged is None or answer.state != "applied":
        return answer
    if answer.id in merged.held:
        return Answer(answer.id, answer.digest, "held", reason("after-signing"))
    if any(answer.id in [edit.id for edit in merged.fields[field]] for field in merged.disputed):
        return Answer(answer.id, answer.digest, "disputed", reason("two-devices"))
    return answer


@transaction.atomic
def settle(*, key: str, ring: Ring) -> Merged | None:
    """Merges a sheet's edits again and writes the settled state as rows; None for a sheet that is not this ring's."""
    return _settle_at(place_of(key), ring)


def _settle_at(place: Place | None, ring: Ring) -> Merged | None:
    if place is None or place.ring != ring:
        return None
    rows = list(_rows_of(place.key))
    taken = [as_edit(row) for row in rows if row.state == models.Edit.State.TAKEN]
    # Those that do not count, as far as the ring's tablets hear of them.
    left_out = frozenset(row.pk for row in rows if row.state != models.Edit.State.TAKEN and row.ring_id == ring.pk)
    merged = merge(taken, left_out)
    values = settled(merged)
    sheet = _sheet_row(place, ring, merged, values)
    if place.entry:
        _write_marks(sheet, values)
    return merged


def edits_of(key: str) -> list[Edit]:
    """The edits of a sheet that count, as they came."""
    return [as_edit(row) for row in _rows_of(key).filter(state=models.Edit.State.TAKEN)]


def _rows_of(key: str) -> QuerySet[models.Edit]:
    return models.Edit.objects.filter(sheet=key).order_by("sequence")


def as_edit(row: models.Edit) -> Edit:
    return Edit(row.version, row.id, row.sheet, row.field, row.value, tuple(row.replaces), row.made_at, row.device)


def _sheet_row(place: Place, ring: Ring, merged: Merged, values: dict[str, Any]) -> models.Sheet:
    """Under the ring's lock: no other batch of the ring writes this row meanwhile."""
    sheet = models.Sheet.objects.filter(pk=place.key).first() or models.Sheet(key=place.key)
    is_signed = bool(merged.signed_by) and not merged.pending
    sheet.ring = ring
    sheet.entry = place.entry
    sheet.show_class = None if place.entry else place.show_class
    sheet.show_breed = None if place.show_class else place.show_breed
    sheet.fields = {field: value for field, value in values.items() if field != "signature" and value is not None}
    sheet.disputed = list(merged.disputed)
    sheet.incomplete = list(merged.incomplete)
    sheet.held = list(merged.held)
    sheet.signed = sheet.fields if is_signed else None
    sheet.signed_at = (sheet.signed_at or timezone.now()) if is_signed else None
    sheet.save(force_insert=sheet._state.adding)
    return sheet


def _write_marks(sheet: models.Sheet, values: dict[str, Any]) -> None:
    sheet.marks.all().delete()
    models.Mark.objects.bulk_create(list(_marks(sheet, values.items())))


def _marks(sheet: models.Sheet, values: Iterable[tuple[str, Any]]) -> Iterable[models.Mark]:
    for field, value in values:
        if field_kind(field) == "mark" and value is not None:
            yield models.Mark(sheet=sheet, point=subject_of(field), mark=value)
