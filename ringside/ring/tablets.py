"""The tablets of a ring: what each says it still holds, and what becomes of a lost one."""

from collections import Counter
from datetime import timedelta
from typing import Any

from django.db import transaction
from django.db.models import F
from django.db.models.functions import Greatest
from django.utils import timezone

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.people.models import Account
from ringside.ring.access import Worker
from ringside.ring.models import Tablet
from ringside.shows.access import require
from ringside.shows.models import Ring
from scoring.bad_input import BadInput
from scoring.sheet import check_id

# A tablet asks for news all the time; that it is there is written down once in this time.
SEEN_EVERY = timedelta(seconds=30)


def note(*, worker: Worker, device: Any, unsent: int) -> None:
    """Remembers that this device spoke and how many edits it still holds; anything that is no device id is ignored."""
    name = _name(device)
    if not name:
        return
    told = {
        "pairing": worker.pairing,
        "role": ", ".join(sorted(worker.roles))[:12],
        "seen_at": timezone.now(),
        "unsent": min(unsent, 1_000_000),
    }
    known = Tablet.objects.filter(ring=worker.ring, device=name)
    if not known.update(**told):
        Tablet.objects.update_or_create(ring=worker.ring, device=name, defaults=told)


def see(*, worker: Worker, device: Any) -> None:
    """Remembers that this device is there and holds nothing: a tablet asks for news only when all it has is sent."""
    name = _name(device)
    since = timezone.now() - SEEN_EVERY
    if name and not Tablet.objects.filter(ring=worker.ring, device=name, seen_at__gt=since, unsent=0).exists():
        note(worker=worker, device=name, unsent=0)


def _name(device: Any) -> str:
    try:
        return check_id(device, "device")
    except BadInput:
        return ""


def came_by_file(ring: Ring, devices: Counter[str]) -> None:
    """So many edits of these devices came in as a file: they hold them still, but not alone any more."""
    for device, edits in devices.items():
        found = Tablet.objects.filter(ring=ring, device=device)
        found.update(unsent=Greatest(F("unsent") - edits, 0))


@transaction.atomic
def declare_lost(*, who: Account, tablet: Tablet, reason: str) -> None:
    """The ring goes on without this tablet; what comes from it later is held for the judge."""
    require(who, tablet.ring.show, "pair-tablets")
    if not reason.strip():
        raise NotNow("Say why the tablet counts as lost; the reason is kept.")
    Tablet.objects.filter(pk=tablet.pk).update(lost_at=timezone.now(), lost_reason=reason.strip()[:200])
    record(who=who, doing="declare-tablet-lost", show_id=tablet.ring.show_id, about=f"tablet:{tablet.pk}")


def holding_unsent(ring_id: int) -> list[Tablet]:
    """The tablets that have announced edits the server does not have, lost ones left out."""
    return list(Tablet.objects.filter(ring=ring_id, unsent__gt=0, lost_at__isnull=True).order_by("id"))
