"""The show's schedule as iCalendar text (RFC 5545): a day's event for each ring, with its breeds and judges."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime, time
from itertools import groupby

from django.utils.translation import gettext

from ringside.core.calendar_file import Event, calendar_text
from ringside.core.sentences import colon
from ringside.ring.queries import breed_said
from ringside.shows.appointed import appointments_of, is_undivided, parts_of
from ringside.shows.books import part_words, rules_of
from ringside.shows.models import Ring, Show, ShowBreed
from ringside.timetable.queries import Starts


def schedule_of(show: Show, now: datetime) -> bytes:
    """One all-day event a ring and day: each breed with the hour at which it begins, where that is planned."""
    lines_of_day = sorted(_lines(show), key=lambda line: line.order)
    rings = groupby(lines_of_day, key=lambda line: (line.day, line.ring.pk))
    events = [_event(show, list(found)) for _, found in rings]
    return calendar_text("Show schedule", events, now).encode()


@dataclass(frozen=True, slots=True)
class Line:
    """A breed, or a part of it, in a ring on a day; `words` name it and its judge, `at` is its planned beginning."""

    day: date
    ring: Ring
    breed_id: int
    words: str
    at: time | None

    @property
    def order(self) -> tuple[object, ...]:
        return self.day, self.ring.name, self.ring.pk, self.at or time.max, self.breed_id


def _lines(show: Show) -> Iterator[Line]:
    """Every breed, in parts where those are judged apart; without those that have no day or no ring yet."""
    book = rules_of(show)
    times = Starts(show).times
    found = ShowBreed.objects.filter(show=show).select_related("ring", "judge", "awards_judged_by")
    for breed in found.prefetch_related(appointments_of()).order_by("id"):
        parts = parts_of(breed)
        for part in parts[-1:] if is_undivided(parts) else parts:
            told = part.appointed
            name = breed_said(breed) if is_undivided(parts) else f"{breed_said(breed)}, {part_words(book, part)}"
            if told.day and told.ring:
                judge = told.judge.name if told.judge else gettext("no judge yet")
                at = times.get((breed.pk, part.sex, part.code))
                words = colon(f"{at:%H:%M} {name}" if at else name, judge)
                yield Line(told.day, told.ring, breed.pk, words, at)


def _event(show: Show, found: list[Line]) -> Event:
    day, ring = found[0].day, found[0].ring
    told = "\n".join(line.words for line in found)
    return Event(f"{day:%Y%m%d}-ring-{ring.pk}-{show.slug}", day, f"{show.name}, {ring}", told, show.place)
