"""Whether a show takes entries on the web, and until when."""

from datetime import date, timedelta
from enum import StrEnum

from django.db.models import QuerySet

from ringside.shows.models import Show


class Standing(StrEnum):
    NOT_YET = "not yet"
    OPEN = "open"
    LATE = "late"
    OVER = "over"


def closes_on(show: Show) -> date:
    """The last day of entries: as the show sets it, else the day before the show."""
    return show.entries_close or show.first_day - timedelta(days=1)


def standing_of(show: Show, today: date) -> Standing:
    """Where entries stand on a day. After closing and before the show they are late: the secretary decides on each."""
    if show.entries_open is None or today < show.entries_open:
        return Standing.NOT_YET
    if today <= closes_on(show):
        return Standing.OPEN
    return Standing.LATE if today < show.first_day else Standing.OVER


def public_shows(today: date) -> QuerySet[Show]:
    """The shows that take or will take entries on the web and are still to come, the next first."""
    return Show.objects.filter(entries_open__isnull=False, first_day__gt=today).order_by("first_day", "id")
