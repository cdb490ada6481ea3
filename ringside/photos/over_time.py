"""One dog's readings joined by date, each with its bar, and whether two of them differ by more than the clicks do."""

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from itertools import pairwise
from typing import Any

from django.utils.formats import date_format
from django.utils.translation import gettext

from ringside.dogs.models import Dog
from ringside.photos.models import Photo
from ringside.photos.words import NAMES, OF_LOGARITHM, interval_of, interval_words, more_or_less, number_words
from scoring.measuring.definitions import CODES
from scoring.measuring.repeats import least_real_change
from scoring.rules.ages import completed_months

# A dog is drawn and named as still growing until this age. Ours, no source: large breeds close their growth late.
GROWING_MONTHS = 18
WIDTH, HEIGHT = 640.0, 190.0
LEFT, RIGHT, TOP, FOOT = 84.0, 18.0, 16.0, 28.0


@dataclass(frozen=True, slots=True)
class Reading:
    day: date
    code: str
    value: float
    sd: float
    unit: str
    target: Mapping[str, Any] | None
    address_id: str
    is_growing: bool

    @property
    def words(self) -> str:
        return f"{number_words(self.value, self.unit)} ({interval_words(self.code, self.value, self.sd, self.unit)})"


@dataclass(frozen=True, slots=True)
class Bar:
    """One reading in the picture: its middle, the ends of its interval, whether the dog was still growing."""

    x: float
    y: float
    low: float
    high: float
    reading: Reading


@dataclass(frozen=True, slots=True)
class Chart:
    code: str
    name: str
    what: str
    bars: tuple[Bar, ...]
    path: str
    ticks: tuple[tuple[float, str], ...]
    days: tuple[tuple[float, str, str], ...]
    target: tuple[float, float] | None
    changes: tuple[str, ...]


def charts(dog: Dog, photos: Iterable[Photo]) -> tuple[Chart, ...]:
    """A chart for every measurement read in at least one dated photo, in the order of the core."""
    readings = [reading for photo in photos if photo.taken_on for reading in _readings(dog, photo)]
    by_code = {code: [one for one in readings if one.code == code] for code in CODES}
    return tuple(_chart(code, sorted(found, key=_in_order)) for code, found in by_code.items() if found)


def _in_order(reading: Reading) -> tuple[date, str]:
    return reading.day, reading.address_id


def _readings(dog: Dog, photo: Photo) -> Iterator[Reading]:
    assert photo.taken_on
    growing = completed_months(dog.born, photo.taken_on) < GROWING_MONTHS
    for one in photo.measured.get("measurements", []):
        if one["value"] is not None:
            yield Reading(
                photo.taken_on, one["code"], one["value"], one["sd"], one["unit"], one["target"],
                str(photo.public_id), growing,
            )  # fmt: skip


def change_words(before: Reading, after: Reading) -> str:
    """What lies between two readings, or that it is less than the clicks alone bring about once in twenty times."""
    told = {"first": _day(before.day), "last": _day(after.day)}
    if not _is_real(before, after):
        if before.is_growing:
            return gettext("{first} to {last}: no real change; the dog was still growing.").format(**told)
        return gettext("{first} to {last}: no real change.").format(**told)
    amount = number_words(abs(after.value - before.value), after.unit)
    told["change"] = more_or_less(after.value > before.value, amount)
    if before.is_growing:
        return gettext("{first} to {last}: {change}; the dog was still growing.").format(**told)
    return gettext("{first} to {last}: {change}.").format(**told)


def _is_real(before: Reading, after: Reading) -> bool:
    sem = math.sqrt((before.sd**2 + after.sd**2) / 2)
    if after.code in OF_LOGARITHM:
        return abs(math.log(after.value / before.value)) > least_real_change(sem)
    return abs(after.value - before.value) > least_real_change(sem)


def _day(day: date) -> str:
    return date_format(day, "DATE_FORMAT")


def _chart(code: str, readings: Sequence[Reading]) -> Chart:
    target = readings[-1].target
    band = (target["value"] - target["tolerance"], target["value"] + target["tolerance"]) if target else ()
    ends = [end for one in readings for end in interval_of(code, one.value, one.sd)]
    low, high = min(*ends, *band), max(*ends, *band)
    margin = (high - low) * 0.06 or 1.0
    up = Scale(low - margin, high + margin, HEIGHT - FOOT, TOP)
    along = _along([one.day for one in readings])
    bars = tuple(_bar(one, along(one.day.toordinal()), up) for one in readings)
    return Chart(
        code=code,
        name=str(NAMES[code].name),
        what=str(NAMES[code].what),
        bars=bars,
        path=" ".join(f"{bar.x:.1f},{bar.y:.1f}" for bar in bars),
        ticks=tuple((round(up(value), 1), number_words(value, readings[0].unit)) for value in _ticks(low, high)),
        days=tuple(_days(bars)),
        target=(round(up(band[1]), 1), round(up(band[0]) - up(band[1]), 1)) if band else None,
        changes=tuple(change_words(*pair) for pair in pairwise(readings)),
    )


def _bar(reading: Reading, x: float, up: "Scale") -> Bar:
    low, high = interval_of(reading.code, reading.value, reading.sd)
    return Bar(round(x, 1), round(up(reading.value), 1), round(up(low), 1), round(up(high), 1), reading)


@dataclass(frozen=True, slots=True)
class Scale:
    """From values to places in the picture."""

    low: float
    high: float
    start: float
    end: float

    def __call__(self, value: float) -> float:
        return self.start + (value - self.low) / (self.high - self.low) * (self.end - self.start)


def _along(days: Sequence[date]) -> Scale:
    """Days along the picture; a single day stands in its middle."""
    first, last = days[0].toordinal(), days[-1].toordinal()
    room = 0 if last > first else 1
    return Scale(first - room, last + room, LEFT + 24, WIDTH - RIGHT - 24)


def _ticks(low: float, high: float) -> tuple[float, ...]:
    return low, (low + high) / 2, high


def _days(bars: Sequence[Bar]) -> Iterator[tuple[float, str, str]]:
    """The days under the picture, none so near to the one before that they would run together."""
    last = -math.inf
    for bar in bars:
        if bar.x - last >= 150:
            last = bar.x
            anchor = "start" if bar.x < LEFT + 60 else "end" if bar.x > WIDTH - 90 else "middle"
            yield bar.x, date_format(bar.reading.day, "SHORT_DATE_FORMAT"), anchor
