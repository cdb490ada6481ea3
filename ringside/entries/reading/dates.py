"""Dates as people and spreadsheets write them, and which style a whole column is written in."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from django.utils.translation import gettext_noop as _

from ringside.entries.reading.words import meaning_of

# Code: how it is shown, and the places of day, month and year.
STYLES: dict[str, tuple[str, tuple[int, int, int]]] = {
    "dd.mm.yyyy": (_("day first, as 31.12.2025"), (0, 1, 2)),
    "dd/mm/yyyy": (_("day first, as 31/12/2025"), (0, 1, 2)),
    "mm/dd/yyyy": (_("month first, as 12/31/2025"), (1, 0, 2)),
    "yyyy-mm-dd": (_("year first, as 2025-12-31"), (2, 1, 0)),
}
NUMBERS = re.compile(r"(\d{1,4})\s*([./\-\s])\s*(\d{1,2})\s*[./\-\s]\s*(\d{1,4})\.?")
NAMED = re.compile(r"(\d{1,2})(?:st|nd|rd|th)?[.\s/-]*(?:de\s+)?([^\W\d_]{3,})[.\s/-]*(?:de\s+)?(\d{4}|\d{2})")
CLOCK = re.compile(r"[T\s]+00:00(:00(\.0+)?)?Z?$")
YEAR_FIRST = re.compile(r"\d{4}\D")


@dataclass(frozen=True, slots=True)
class DateStyle:
    """`certain` is False where every date could also be read with day and month changed over.

    `mixed` where some dates can only be day first and others only month first.
    """

    code: str
    certain: bool
    mixed: bool = False


def read_date(text: str, style: str, latest_year: int) -> date | None:
    """The date in a cell. A year first, or a month by name, needs no style; two-digit years end with `latest_year`."""
    text = CLOCK.sub("", text.strip())
    numbers = NUMBERS.fullmatch(text)
    if numbers:
        parts = (numbers[1], numbers[3], numbers[4])
        day, month, year = (2, 1, 0) if YEAR_FIRST.match(text) else STYLES[style][1]
        return _date(parts[day], parts[month], parts[year], latest_year)
    named = NAMED.fullmatch(text)
    month_of_name = named and meaning_of("months", named[2])
    return _date(named[1], month_of_name, named[3], latest_year) if named and month_of_name else None


def could_be_either(text: str) -> bool:
    """Whether day and month could be changed over: 03/04/2025. With dots the day comes first everywhere."""
    found = _written(text)
    return found is not None and found[0] != "." and found[1] <= 12 and found[2] <= 12 and found[1] != found[2]


def style_of(cells: Iterable[str]) -> DateStyle:
    """The style of a column, by all of its dates together."""
    found = [written for written in map(_written, cells) if written]
    day_first = sum(first > 12 for _, first, _ in found)
    month_first = sum(second > 12 for _, _, second in found)
    dots = sum(sign == "." for sign, _, _ in found)
    if not found:
        return DateStyle("yyyy-mm-dd", certain=True)
    if dots * 2 >= len(found):
        return DateStyle("dd.mm.yyyy", certain=True, mixed=month_first > 0)
    code = "mm/dd/yyyy" if month_first > day_first else "dd/mm/yyyy"
    either = not (day_first or month_first) and any(first != second for _, first, second in found)
    return DateStyle(code, certain=not either, mixed=bool(day_first and month_first))


def _written(text: str) -> tuple[str, int, int] | None:
    """Sign, first and second number of a date whose style must be known."""
    text = CLOCK.sub("", text.strip())
    numbers = NUMBERS.fullmatch(text)
    if not numbers or YEAR_FIRST.match(text):
        return None
    return numbers[2], int(numbers[1]), int(numbers[3])


def _date(day: str, month: str, year: str, latest_year: int) -> date | None:
    if len(year) not in (2, 4):
        return None
    whole = int(year)
    if len(year) == 2:
        whole += latest_year // 100 * 100
        whole -= 100 if whole > latest_year else 0
    try:
        return date(whole, int(month), int(day))
    except ValueError:
        return None
