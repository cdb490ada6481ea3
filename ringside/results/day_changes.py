"""What was changed on the day, as the desk's page says it in the reader's language."""

from dataclasses import dataclass

from django.utils import translation

from ringside.results.models import DayChange
from ringside.results.moves import WORDS
from ringside.results.queries import title_of
from ringside.shows.models import Show, ShowClass


@dataclass(frozen=True, slots=True)
class Told:
    """A change of an entry with its classes and its reason in words."""

    change: DayChange
    before: str
    after: str
    reason: str


def kept_title(show_class: ShowClass) -> str:
    """A class's title as it is kept beside a change: in English, whoever makes it."""
    with translation.override("en"):
        return title_of(show_class)


def changes_of(show: Show, most: int) -> list[Told]:
    """The latest changes, newest first. A class that is not in the show any more is said as it was kept."""
    found = list(
        DayChange.objects.filter(entry__show=show).select_related("entry__dog", "by").order_by("-at", "-id")[:most]
    )
    classes = ShowClass.objects.filter(show_breed__show=show).select_related("show_breed__show") if found else ()
    titles = {kept_title(one): title_of(one) for one in classes}
    return [
        Told(
            one,
            titles.get(one.before, one.before),
            titles.get(one.after, one.after),
            str(WORDS.get(one.reason, one.reason)),
        )
        for one in found
    ]
