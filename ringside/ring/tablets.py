"""The tablets of a ring: what each says it still holds, and what becomes of a lost one."""

from typing import Any

from django.db import transaction
from django.utils import timezone

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.people.models import Account
from ringside.ring.access import Worker
from ringside.ring.models import Tablet
from ringside.shows.access import require
from scoring.bad_input import BadInput
from scoring.sheet import check_id


def note(*, worker: Worker, device: Any, unsent: int) -> None:
    """Remembers that this device spoke and how many edits it still holds; anything that is no device id is ignored."""
    try:
        name = check_id(device, "device")
    except BadInput:
        return
    told = {
        "pairing": worker.pairing,
        "role": ", ".join(sorted(worker.roles))[:12],
        "seen_at": timezone.now(),
        "unsent": min(unsent, 1_000_000),
    }
    Tablet.objects.update_or_create(ring=worker.ring, device=name, defaults=told)


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
