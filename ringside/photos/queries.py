"""What the pages of photos read."""

from typing import Any

from django.db.models import Case, Q, QuerySet, When

from ringside.dogs.models import Dog
from ringside.entries.models import Entry
from ringside.people.models import Account
from ringside.photos.measured import click_sd_px
from ringside.photos.models import Photo, Steadiness, View
from ringside.shows.models import Show, ShowBreed


def photos_of(dog: Dog) -> QuerySet[Photo]:
    """A dog's photos, the newest first."""
    return _open().filter(dog=dog).order_by("-taken_on", "-uploaded_at", "id")


def _open() -> QuerySet[Photo]:
    """Without what was taken in a ring whose breed is not finished: as access.is_open has it."""
    at_ring = Q(ring__isnull=False, entry__isnull=False)
    return Photo.objects.filter(~at_ring | Q(entry__show_class__show_breed__in=finished_breeds()))


def finished_breeds() -> QuerySet[ShowBreed]:
    """The breeds whose awards are signed."""
    return ShowBreed.objects.filter(awards_card__signed__isnull=False)


def photos_of_entry(entry: Entry) -> QuerySet[Photo]:
    """The photos of a dog on a day of the show, standing from the side first, then the newest."""
    side_first = Case(When(view=View.STANDING_SIDE, then=0), default=1)
    return _open().filter(entry=entry).select_related("dog").order_by(side_first, "-uploaded_at", "id")


def photos_of_show(show: Show) -> QuerySet[Photo]:
    """The photos that were taken on a day of the show, by catalogue number."""
    found = _open().filter(entry__show=show).select_related("dog", "entry")
    return found.order_by("entry__number", "-uploaded_at", "id")


def dogs_of(account: Account) -> QuerySet[Dog]:
    return Dog.objects.filter(owners__account=account).distinct().order_by("name", "id")


def steadiness_of(user: Any) -> Steadiness | None:
    return Steadiness.objects.filter(account=user).first() if isinstance(user, Account) else None


def click_sd_of_width(user: Any) -> float:
    """What a device counts a click's SD as, over the picture's width, before the server does."""
    return click_sd_px(steadiness_of(user), 2000) / 2000
