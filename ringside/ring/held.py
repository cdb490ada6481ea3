"""Edits that wait for a person: kept with their reason until somebody takes them in; and edits that come as a file."""

import json
from collections import Counter
from typing import Any

from django.db import transaction

from ringside.core.audit import record
from ringside.core.denied import Denied, NotNow
from ringside.people.models import Account
from ringside.ring.access import Worker
from ringside.ring.actions import MOST_EDITS, Answer, as_edit, settle, take_edits
from ringside.ring.checks import check_meaning
from ringside.ring.models import Edit
from ringside.ring.places import Place, place_of
from ringside.ring.reasons import reason, reason_said
from ringside.ring.tablets import came_by_file
from ringside.shows.access import require
from ringside.shows.may import doing_words, may
from ringside.shows.models import Ring, Role, Show
from scoring.bad_input import BadInput
from scoring.sheet import FORMAT
from scoring.sheet_fields import check_edit

MOST_BYTES = 4 * 1024 * 1024


def held_in(show: Show) -> list[Edit]:
    return list(
        Edit.objects.filter(ring__show=show, state=Edit.State.HELD).select_related("ring").order_by("received_at", "id")
    )


def held_by(ring: Ring, edit_id: str) -> Edit | None:
    return Edit.objects.select_related("ring__show").filter(ring=ring, state=Edit.State.HELD, pk=edit_id).first()


@transaction.atomic
def take_in(*, worker: Worker, edit: Edit) -> None:
    """A held edit counts from now on, in the ring where its dog or class is judged today; all tablets hear of it."""
    _require_right(worker, edit)
    place = _checked_place(edit)
    _decide(worker, edit, place.ring or edit.ring, Edit.State.TAKEN)


@transaction.atomic
def leave_out(*, worker: Worker, edit: Edit) -> None:
    """A held edit does not count, and stays on record; all tablets hear of it."""
    _require_right(worker, edit)
    place = place_of(edit.sheet)
    _decide(worker, edit, (place and place.ring) or edit.ring, Edit.State.LEFT_OUT)


def _require_right(worker: Worker, edit: Edit) -> None:
    """The office decides on everything of its show; at the ring the judge, on what is judged there."""
    if not may(worker.roles, "decide-held-edits"):
        raise Denied("Your role does not let you {doing}.", doing=doing_words("decide-held-edits"))
    place = place_of(edit.sheet)
    at_home = place is not None and place.ring == worker.ring
    if not at_home and not may(worker.roles, "take-held-edits"):
        raise Denied("This is not of your ring: the show secretary decides on it.")


def _decide(worker: Worker, edit: Edit, ring: Ring, state: str) -> None:
    """Under a new number, so that every tablet of the ring hears of it."""
    locked = Ring.objects.select_for_update().get(pk=ring.pk)
    told = {"ring": locked, "sequence": locked.sequence + 1, "state": state}
    if not Edit.objects.filter(pk=edit.pk, state=Edit.State.HELD).update(**told):
        raise NotNow("This was decided already.")
    locked.sequence += 1
    locked.save(update_fields=["sequence"])
    settle(key=edit.sheet, ring=locked)
    about = {"edit": edit.pk, "state": state, "pairing": worker.pairing and worker.pairing.pk}
    record(who=worker.account, doing="decide-held-edit", show_id=locked.show_id, about=edit.sheet, **about)


def _checked_place(edit: Edit) -> Place:
    """Where the edit belongs now; what was held may never have been looked at, so it is checked here."""
    written = as_edit(edit)
    try:
        check_edit(written)
        place = place_of(edit.sheet)
        if place is None or place.ring is None or edit.version != FORMAT:
            raise BadInput("unknown-code", reason("not-known-here"))
        check_meaning(written, place)
    except BadInput as problem:
        why = reason_said(problem.message)
        raise NotNow("This edit cannot be taken in: {message} It stays on record.", message=why) from None
    return place


def take_file(*, who: Account, ring: Ring, content: bytes) -> list[tuple[dict[str, Any], Answer]]:
    """Takes in what a tablet handed over as a file; each edit with its answer.

    The office stands in for the tablet as a writer does: marks and words count, a signature must come from the judge.
    """
    require(who, ring.show, "take-held-edits")
    edits = _edits_in(content)
    worker = Worker(ring, frozenset({str(Role.Kind.WRITER)}), account=who)
    answers: list[Answer] = []
    for start in range(0, len(edits), MOST_EDITS):
        batch = edits[start : start + MOST_EDITS]
        before = _kept(batch)
        answers += take_edits(worker=worker, raw_edits=batch)
        came_by_file(ring, _kept(batch) - before)
    record(who=who, doing="take-handover-file", show_id=ring.show_id, about=f"ring:{ring.pk}", edits=len(edits))
    return list(zip(edits, answers, strict=True))


def _kept(batch: list[dict[str, Any]]) -> Counter[str]:
    """How many of these edits are on record, by device."""
    ids = [str(edit.get("id")) for edit in batch]
    return Counter(Edit.objects.filter(pk__in=ids).values_list("device", flat=True))


def _edits_in(content: bytes) -> list[dict[str, Any]]:
    if len(content) > MOST_BYTES:
        raise Denied("This file is larger than a tablet's edits can be. Choose the file that the tablet saved.", 400)
    try:
        kept = json.loads(content)
        edits = [*kept["edits"], *(row["edit"] for row in kept.get("refused", []))]
    except (ValueError, KeyError, TypeError, RecursionError, AttributeError):
        raise Denied("No ring page saved this file. Choose the one named ring-edits-….json.", 400) from None
    return [edit if isinstance(edit, dict) else {} for edit in edits]
