"""The office corrects who is there: an edit like any tablet's, so that every tablet of the ring hears of it."""

from django.db import transaction

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.entries.models import Entry
from ringside.people.models import Account
from ringside.ring.access import Worker
from ringside.ring.actions import edits_of, take_edits
from ringside.ring.models import Sheet
from ringside.ring.office_edits import office_edit
from ringside.ring.reasons import reason_said
from ringside.shows.access import require
from ringside.shows.models import Ring

PRESENCES = ("present", "absent", "excused")


@transaction.atomic
def mark_presence(*, who: Account, entry: Entry, presence: str) -> None:
    """Present, absent or excused, as long as the judge has neither placed the dog nor signed its class."""
    kinds = require(who, entry.show, "mark-presence")
    ring = entry.show_class.appointed.ring
    if ring is None:
        raise NotNow("This class has no ring yet: give it one on the set-up page.")
    Ring.objects.select_for_update().get(pk=ring.pk)
    key = f"class:{entry.show_class_id}"
    _require_open(Sheet.objects.filter(pk=key).first(), entry, presence)
    edit = office_edit("office", key, f"presence.{entry.pk}", presence, edits_of(key))
    [answer] = take_edits(worker=Worker(ring, kinds, account=who), raw_edits=[edit])
    if answer.state != "applied":
        raise NotNow(reason_said(answer.reason))
    record(who=who, doing="mark-presence", show_id=entry.show_id, about=f"entry:{entry.pk}", presence=presence)


def _require_open(card: Sheet | None, entry: Entry, presence: str) -> None:
    if card is None:
        return
    if card.signed is not None:
        raise NotNow("The judge has signed this class. Who was there is part of what was signed: ask the judge.")
    if presence != "present" and str(entry.pk) in (card.fields.get("places") or []):
        raise NotNow("The judge has placed this dog, so it was there. Ask the judge to take the place back first.")
