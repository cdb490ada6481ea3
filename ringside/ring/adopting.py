"""A breed, or a part of it, that was given another ring while it was judged: what is written of it goes with it."""

from django.db import transaction
from django.db.models import Q

from ringside.core.audit import record
from ringside.ring.actions import settle
from ringside.ring.models import Edit, Sheet
from ringside.shows.appointed import breeds_awarded_in, classes_in
from ringside.shows.models import Ring


def adopt(*, ring: Ring) -> int:
    """Numbers anew what was written in other rings of sheets that are judged here now; how many edits.

    So this ring's tablets hear of it. What the other ring's tablets send from now on is held.
    """
    classes = classes_in(ring)
    here = Q(entry__show_class__in=classes) | Q(show_class__in=classes) | Q(show_breed__in=breeds_awarded_in(ring))
    sheets = list(Sheet.objects.filter(here).exclude(ring=ring).order_by("key").values_list("key", flat=True))
    return _take_over(ring, sheets) if sheets else 0


@transaction.atomic
def _take_over(ring: Ring, sheets: list[str]) -> int:
    locked = Ring.objects.select_for_update().get(pk=ring.pk)
    edits = Edit.objects.filter(sheet__in=sheets).exclude(ring=locked).order_by("ring_id", "sequence")
    moved = list(edits.values_list("pk", flat=True))
    for pk in moved:
        locked.sequence += 1
        Edit.objects.filter(pk=pk).update(ring=locked, sequence=locked.sequence)
    locked.save(update_fields=["sequence"])
    for key in sheets:
        settle(key=key, ring=locked)
    record(who=None, doing="adopt-sheets", show_id=locked.show_id, about=f"ring:{locked.pk}", edits=len(moved))
    return len(moved)
