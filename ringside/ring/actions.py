"""Takes in what the tablets wrote: one transaction a batch, one answer an edit, nothing lost and nothing doubled."""

import json
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from django.db import transaction
from django.utils import timezone

from ringside.entries.models import Entry
from ringside.ring import models
from ringside.ring.access import Worker
from ringside.ring.checks import check_meaning
from ringside.ring.places import Place, place_of
from ringside.ring.rights import doing_for
from ringside.shows.may import MAY, may
from ringside.shows.models import Ring, Role
from scoring import canonical
from scoring.bad_input import BadInput
from scoring.merging import Merged, merge, settled
from scoring.sheet import FORMAT, Edit, digest, field_kind, parse_edit
from scoring.sheet_fields import check_edit, subject_of

MOST_EDITS = 500
# The order in which a person's roles are tried: the first that may do it is stamped on the edit.
STAMPS = (Role.Kind.JUDGE, Role.Kind.WRITER, Role.Kind.STEWARD, Role.Kind.OWNER, Role.Kind.SECRETARY)


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


@transaction.atomic
def take_edits(*, worker: Worker, raw_edits: Sequence[Any]) -> list[Answer]:
    """Takes a batch of edits into a ring. The ring's row is the lock under which edits get their numbers."""
    locked = Ring.objects.select_for_update().get(pk=worker.ring.pk)
    answers = [_take_one(locked, worker, raw) for raw in raw_edits]
    locked.save(update_fields=["sequence"])
    touched = {answer_sheet for _, answer_sheet in answers if answer_sheet}
    merged = {sheet: settle(key=sheet, ring=locked) for sheet in sorted(touched)}
    return [_as_merged(answer, merged.get(sheet)) for answer, sheet in answers]


def _take_one(ring: Ring, worker: Worker, raw: Any) -> tuple[Answer, str]:
    """The answer, and the sheet to merge again; no sheet for a refused edit."""
    try:
        edit = parse_edit(raw)
        _require_storable(edit)
        known = models.Edit.objects.filter(pk=edit.id).first()
        if known:
            return _repeated(edit, known), known.sheet
        role, state, reason = _admit(ring, worker.roles, edit)
    except BadInput as error:
        return _refusal(raw, error.message), ""
    _store(ring, edit, worker=worker, role=role, state=state, reason=reason)
    return Answer(edit.id, digest(edit), "held" if state == models.Edit.State.HELD else "applied", reason), edit.sheet


def _require_storable(edit: Edit) -> None:
    """PostgreSQL cannot keep the sign U+0000; one such edit must not hold up the whole batch."""
    if r"\u0000" in json.dumps(edit.as_json()):
        raise BadInput(
            "out-of-range", "This text holds a sign that no database can keep (U+0000). Type it again.", "value"
        )


def _repeated(edit: Edit, known: models.Edit) -> Answer:
    if known.digest != digest(edit):
        raise BadInput("id-reused", "Another edit has this id already; it was kept.", "id")
    return Answer(edit.id, known.digest, "held" if known.state == models.Edit.State.HELD else "applied", known.reason)


def _admit(ring: Ring, roles: frozenset[str], edit: Edit) -> tuple[str, str, str]:
    """Which role wrote it, and whether it is taken in or held with a reason. Raises BadInput to refuse it."""
    doing = doing_for(edit.field)
    role = next((kind for kind in STAMPS if kind in roles and may(frozenset({kind}), doing)), None)
    if role is None:
        raise BadInput("not-allowed", f"Your role does not let you {MAY[doing][0]}.", "field")
    if models.Tablet.objects.filter(ring=ring, device=edit.device, lost_at__isnull=False).exists():
        return role, models.Edit.State.HELD, "This tablet was declared lost; the judge decides whether this counts."
    if edit.v != FORMAT:
        return role, models.Edit.State.HELD, "This edit was written by a newer page than the server knows."
    check_edit(edit)
    place = place_of(edit.sheet)
    if place is None or place.show_breed.show_id != ring.show_id:
        raise BadInput("unknown-code", "There is no such sheet in this show.", "sheet")
    if place.ring != ring:
        return role, models.Edit.State.HELD, "This dog or class is judged in another ring."
    if place.entry and place.entry.state == Entry.State.WITHDRAWN:
        return role, models.Edit.State.HELD, "This dog was withdrawn."
    check_meaning(edit, place)
    return role, models.Edit.State.TAKEN, ""


def _store(ring: Ring, edit: Edit, *, worker: Worker, role: str, state: str, reason: str) -> None:
    ring.sequence += 1
    models.Edit.objects.create(
        id=edit.id,
        ring=ring,
        sequence=ring.sequence,
        sheet=edit.sheet,
        field=edit.field,
        value=edit.value,
        replaces=list(edit.replaces),
        made_at=edit.made_at,
        device=edit.device,
        version=edit.v,
        digest=digest(edit),
        by=worker.account,
        pairing=worker.pairing,
        role=role,
        state=state,
        reason=reason,
    )


def _refusal(raw: Any, reason: str) -> Answer:
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
    return Answer(str(given.get("id"))[:64], content, "refused", reason)


def _as_merged(answer: Answer, merged: Merged | None) -> Answer:
    if merged is None or answer.state != "applied":
        return answer
    if answer.id in merged.held:
        return Answer(answer.id, answer.digest, "held", "The sheet is signed; the judge decides whether this counts.")
    if any(answer.id in [edit.id for edit in merged.fields[field]] for field in merged.disputed):
        return Answer(answer.id, answer.digest, "disputed", "Two devices say different things; both are kept.")
    return answer


@transaction.atomic
def settle(*, key: str, ring: Ring) -> Merged | None:
    """Merges a sheet's edits again and writes the settled state as rows; None where the sheet leads nowhere."""
    place = place_of(key)
    if place is None:
        return None
    edits = edits_of(key)
    merged = merge(edits)
    values = settled(merged)
    sheet = _sheet_row(place, ring, merged, values)
    if place.entry:
        _write_marks(sheet, values)
    return merged


def edits_of(key: str) -> list[Edit]:
    rows = models.Edit.objects.filter(sheet=key, state=models.Edit.State.TAKEN).order_by("sequence")
    return [as_edit(row) for row in rows]


def as_edit(row: models.Edit) -> Edit:
    return Edit(row.version, row.id, row.sheet, row.field, row.value, tuple(row.replaces), row.made_at, row.device)


def _sheet_row(place: Place, ring: Ring, merged: Merged, values: dict[str, Any]) -> models.Sheet:
    before = models.Sheet.objects.filter(pk=place.key).first()
    is_signed = bool(merged.signed_by) and not merged.pending
    content = {field: value for field, value in values.items() if field != "signature" and value is not None}
    sheet, _ = models.Sheet.objects.update_or_create(
        key=place.key,
        defaults={
            "ring": ring,
            "entry": place.entry,
            "show_class": None if place.entry else place.show_class,
            "show_breed": None if place.show_class else place.show_breed,
            "fields": content,
            "disputed": list(merged.disputed),
            "incomplete": list(merged.incomplete),
            "held": list(merged.held),
            "signed": content if is_signed else None,
            "signed_at": _signed_at(before, is_signed),
        },
    )
    return sheet


def _signed_at(before: models.Sheet | None, is_signed: bool) -> Any:
    if not is_signed:
        return None
    return before.signed_at if before and before.signed_at else timezone.now()


def _write_marks(sheet: models.Sheet, values: dict[str, Any]) -> None:
    sheet.marks.all().delete()
    models.Mark.objects.bulk_create(list(_marks(sheet, values.items())))


def _marks(sheet: models.Sheet, values: Iterable[tuple[str, Any]]) -> Iterable[models.Mark]:
    for field, value in values:
        if field_kind(field) == "mark" and value is not None:
            yield models.Mark(sheet=sheet, point=subject_of(field), mark=value)
