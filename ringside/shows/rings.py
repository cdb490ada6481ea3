"""The rings of a show: added, renamed, found on the ground, and removed once nothing is in them any more."""

from django.db import transaction
from django.dispatch import Signal

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.core.sentences import listed
from ringside.people.models import Account
from ringside.shows.access import require
from ringside.shows.models import Ring, Show, ShowBreed
from ringside.shows.queries import breed_title

# For the rooms that come after this one: receivers take `ring`, and refuse with a sentence what would be lost with it.
ring_goes = Signal()
NAMED = 3  # breeds, in a refusal


@transaction.atomic
def add_ring(*, who: Account, show: Show, name: str, place: str = "") -> Ring:
    require(who, show, "change-show")
    refuse_twin(show, name)
    ring = Ring.objects.create(show=show, name=name, place=place)
    record(who=who, doing="add-ring", show_id=show.pk, about=f"ring:{ring.pk}", ring=name)
    return ring


@transaction.atomic
def change_ring(*, who: Account, ring: Ring, name: str, place: str) -> None:
    """Another name or place; breeds, tablets and what is written in the ring stay with it."""
    require(who, ring.show, "change-show")
    refuse_twin(ring.show, name, ring.pk)
    Ring.objects.filter(pk=ring.pk).update(name=name, place=place)
    record(who=who, doing="change-ring", show_id=ring.show_id, about=f"ring:{ring.pk}", before=ring.name, ring=name)


@transaction.atomic
def remove_ring(*, who: Account, ring: Ring) -> None:
    require(who, ring.show, "change-show")
    # Its row is the lock of what is written in it.
    ring = Ring.objects.select_for_update().select_related("show").get(pk=ring.pk)
    titles = judged_in(ring)
    if titles:
        named = [*titles[:NAMED], *([f"+ {len(titles) - NAMED}"] if len(titles) > NAMED else [])]
        raise NotNow("Ring {name} is still appointed: {breeds}. Give them another ring first, then remove this one.",
                     name=ring.name, breeds=listed(named))  # fmt: skip
    ring_goes.send(Ring, ring=ring)
    record(who=who, doing="remove-ring", show_id=ring.show_id, about=f"ring:{ring.pk}", ring=ring.name)
    ring.delete()


def judged_in(ring: Ring) -> list[str]:
    """The breeds of which something is appointed to the ring, by name."""
    own, parts = ShowBreed.objects.filter(ring=ring), ShowBreed.objects.filter(appointments__ring=ring)
    return [breed_title(one) for one in (own | parts).distinct().order_by("id")]


def refuse_twin(show: Show, name: str, pk: int | None = None) -> None:
    """NotNow where another ring than `pk` has this name, in whatever capitals."""
    if any(one.name.casefold() == name.casefold() for one in show.rings.exclude(pk=pk)):
        raise NotNow("There is a ring {name} already. Give each ring a name of its own.", name=name)
