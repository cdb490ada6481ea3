"""A ring is not removed while tablets work in it, nor once anything was written there: what was written is kept."""

from typing import Any

from django.utils import timezone

from ringside.core.denied import NotNow
from ringside.shows.models import Ring


def keep_used_ring(sender: Any, *, ring: Ring, **more: Any) -> None:
    if ring.pairings.filter(used_at__isnull=False, ends_at__gt=timezone.now()).exists():
        raise NotNow("A tablet is paired with ring {name}: end the pairing under “Show day” first.", name=ring.name)
    if ring.edits.exists() or ring.sheets.exists() or ring.tablets.exists():
        raise NotNow("Tablets have worked in ring {name}, and what they wrote is kept there. Rename the ring instead, "
                     "or leave it without breeds.", name=ring.name)  # fmt: skip
