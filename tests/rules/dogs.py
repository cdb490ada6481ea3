"""Days and dogs that the tests of the rules share."""

from datetime import date
from typing import Any

from hypothesis import strategies as st

SHOWN_ON = date(2026, 6, 13)
DAYS = st.dates(date(1, 1, 1), date(9999, 12, 31))
BIRTHDAYS = st.dates(date(1990, 1, 1), date(2026, 6, 12))


def reference_day(born: date, months: int) -> date:
    """The day a dog completes some months, the slow way: try every day from birth on until the count is there."""
    day, counted = born, 0
    while counted < months:
        day = date.fromordinal(day.toordinal() + 1)
        missing = day.day == 1 and born.day > date.fromordinal(day.toordinal() - 1).day
        counted += day.day == born.day or missing
    return day


def door_dog(born: date, **more: Any) -> dict[str, Any]:
    plain = {"sex": "bitch", "neutered": False, "titles": [], "certificates": []}
    return {"born": born.isoformat(), **plain, **more}
