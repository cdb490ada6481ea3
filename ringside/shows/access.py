"""The only ways by which a page gets a show or a thing of it."""

from typing import Any

from django.http import Http404

from ringside.core.denied import Denied
from ringside.people.models import Account
from ringside.shows.appointed import appointments_of, rings_of_judge
from ringside.shows.may import doing_words, may
from ringside.shows.models import Ring, Role, Show, ShowBreed, ShowClass


def roles_of(user: Any, show: Show) -> frozenset[str]:
    if not isinstance(user, Account):
        return frozenset()
    return frozenset(Role.objects.filter(show=show, account=user).values_list("kind", flat=True))


def require(user: Any, show: Show, doing: str) -> frozenset[str]:
    """The person's roles in the show, if one of them may; otherwise a refusal, or nothing at all to a stranger."""
    kinds = roles_of(user, show)
    if not kinds:
        raise Http404
    if not may(kinds, doing):
        raise Denied(
            "Your role in this show does not let you {doing}. Ask the show secretary.", doing=doing_words(doing)
        )
    return kinds


def access_show(user: Any, slug: str, doing: str = "see-office") -> Show:
    show = Show.objects.filter(slug=slug).first()
    if show is None:
        raise Http404
    require(user, show, doing)
    return show


def access_class(user: Any, slug: str, class_id: int, doing: str = "see-office") -> ShowClass:
    show = access_show(user, slug, doing)
    found = (
        ShowClass.objects.select_related("show_breed__show", "show_breed__judge", "show_breed__ring")
        .prefetch_related(appointments_of("show_breed__"))
        .filter(show_breed__show=show, pk=class_id)
        .first()
    )
    if found is None:
        raise Http404
    return found


def access_breed(user: Any, slug: str, breed_id: int, doing: str = "see-office") -> ShowBreed:
    show = access_show(user, slug, doing)
    breeds = ShowBreed.objects.select_related("show", "judge", "ring").prefetch_related(appointments_of())
    found = breeds.filter(show=show, pk=breed_id).first()
    if found is None:
        raise Http404
    return found


def access_ring(user: Any, ring_id: int, doing: str = "see-ring") -> tuple[Ring, frozenset[str]]:
    """The ring and the person's roles there. A judge reaches only the rings where that judge is appointed."""
    ring = Ring.objects.select_related("show").filter(pk=ring_id).first()
    if ring is None:
        raise Http404
    kinds = require(user, ring.show, doing)
    if kinds == {Role.Kind.JUDGE} and ring not in rings_of_judge(user, ring.show):
        raise Denied("You are not appointed in this ring. Ask the show secretary which ring is yours.")
    return ring, kinds
