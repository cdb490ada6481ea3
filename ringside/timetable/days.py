"""The days of a show and what is judged on each in which ring: as it is appointed, with dogs or still without."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, time, timedelta
from itertools import groupby

from ringside.shows.models import Ring, Show
from ringside.timetable.queries import Slot, slots_of


@dataclass(frozen=True, slots=True)
class RingDay:
    """One ring on one day. `begins` is its first planned time, where one is planned."""

    ring: Ring
    slots: Sequence[Slot]

    @property
    def begins(self) -> time | None:
        return min((slot.at for slot in self.slots if slot.at), default=None)

    @property
    def dogs(self) -> int:
        return sum(slot.dogs for slot in self.slots)

    @property
    def judges(self) -> str:
        told = (slot.part.appointed.judge for slot in self.slots)
        return ", ".join(dict.fromkeys(judge.name for judge in told if judge))

    @property
    def lacks_judge(self) -> bool:
        return any(slot.part.appointed.judge is None for slot in self.slots)


@dataclass(frozen=True, slots=True)
class Day:
    """A day with its rings. `is_of_show` is false where the show's dates were changed and the appointment was not."""

    day: date
    is_of_show: bool
    rings: Sequence[RingDay]


@dataclass(frozen=True, slots=True)
class Days:
    days: Sequence[Day]
    nowhere: Sequence[Slot]  # no ring or no day yet


def days_of_show(show: Show) -> Days:
    slots = slots_of(show, with_empty=True)
    placed = [slot for slot in slots if _is_placed(slot)]
    of_day = {day: _in_rings(some) for day, some in groupby(placed, lambda slot: slot.where[0])}
    own = [show.first_day + timedelta(days=n) for n in range((show.last_day - show.first_day).days + 1)]
    days = [Day(day, day in own, of_day.get(day, [])) for day in sorted({*own, *of_day})]
    return Days(days, [slot for slot in slots if not _is_placed(slot)])


def _is_placed(slot: Slot) -> bool:
    return bool(slot.part.appointed.day and slot.part.appointed.ring)


def _in_rings(slots: Iterable[Slot]) -> list[RingDay]:
    found = []
    for _, in_ring in groupby(slots, lambda slot: slot.part.appointed.ring):
        some = list(in_ring)
        ring = some[0].part.appointed.ring
        assert ring
        found.append(RingDay(ring, some))
    return found
