"""Edits that wait for a person: kept with their reason until somebody takes them in; and edits that come as a file."""

import json
from typing import Any

from django.db import transaction

from ringside.core.audit import record
from ringside.core.denied import Denied, NotNow
from ringside.people.models import Account
from ringside.ring.access import Worker
from ringside.ring.actions import MOST_EDITS, Answer, as_edit, settle, take_edits
from ringside.ring.checks import check_meaning
from ringside.ring.models import Edit
from ringside.ring.places import place_of
from ringside.shows.access import require
from ringside.shows.models import Ring, Role, Show
from scoring.bad_input import BadInput
from scoring.sheet import FORMAT
from scoring.sheet_fields import check_edit

MOST_BYTES = 4 * 1024 * 1024


def held_in(show: Show) -> list[Edit]:
    return list(
        Edit.objects.filter(ring__show=show, state=Edit.State.HELD).select_related("ring").order_by("received_at", "id")
    )


@transaction.atomic
def take_in(*, who: Account, edit: Edit) -> None:
    """A held edit counts from now on, in the ring where its dog or class is judged today; all tablets hear of it."""
    require(who, edit.ring.show, "take-held-edits")
    place = _place(edit)
    ring = Ring.objects.select_for_update().get(pk=place.pk)
    ring.sequence += 1
    ring.save(update_fields=["sequence"])
    Edit.objects.filter(pk=edit.pk).update(ring=ring, sequence=ring.sequence, state=Edit.State.TAKEN)
    settle(key=edit.sheet, ring=ring)
    record(who=who, doing="take-held-edit", show_id=ring.show_id, about=edit.sheet, edit=edit.pk, reason=edit.reason)


def _place(edit: Edit) -> Ring:
    """The ring the edit belongs to now; what was held may never have been looked at, so it is checked here."""
    written = as_edit(edit)
    try:
        check_edit(written)
        place = place_of(edit.sheet)
        if place is None or place.ring is None or edit.version != FORMAT:
            raise BadInput("unknown-code", "Its dog, class or format is not known here.")
        check_meaning(written, place)
    except BadInput as problem:
        raise NotNow(f"This edit cannot be taken in: {problem.message} It stays on record.") from None
    return place.ring


def take_file(*, who: Account, ring: Ring, content: bytes) -> list[tuple[dict[str, Any], Answer]]:
    """Takes in what a tablet handed over as a file; each edit with its answer.

    The office stands in for the tablet as a writer does: marks and words count, a signature must come from the judge.
    """
    require(who, ring.show, "take-held-edits")
    edits = _edits_in(content)
    worker = Worker(ring, frozenset({str(Role.Kind.WRITER)}), account=who)
    answers: list[Answer] = []
    for start in range(0, len(edits), MOST_EDITS):
        answers += take_edits(worker=worker, raw_edits=edits[start : start + MOST_EDITS])
    record(who=who, doing="take-handover-file", show_id=ring.show_id, about=f"ring:{ring.pk}", edits=len(edits))
    return list(zip(edits, answers, strict=True))


def _edits_in(content: bytes) -> list[dict[str, Any]]:
    if len(content) > MOST_BYTES:
        raise Denied("This file is larger than a tablet's edits can be. Choose the file that the tablet saved.", 400)
    try:
        kept = json.loads(content)
        edits = [*kept["edits"], *(row["edit"] for row in kept.get("refused", []))]
    except (ValueError, KeyError, TypeError, RecursionError, AttributeError):
        raise Denied("No ring page saved this file. Choose the one named ring-edits-….json.", 400) from None
    return [edit if isinstance(edit, dict) else {} for edit in edits]
