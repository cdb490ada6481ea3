"""iCalendar text (RFC 5545): its events, its lines, its escapes."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta

LONGEST_LINE = 75


@dataclass(frozen=True, slots=True)
class Event:
    """What happens on a day: all of it, or from a local time on. `uid` stays the same when anything else changes."""

    uid: str
    day: date
    summary: str
    told: str
    place: str
    at: time | None = None


def calendar_text(product: str, events: Iterable[Event], now: datetime) -> str:
    """The events as a file; `product` names what made it.

    Source: RFC 5545: 3.1 (lines of at most 75 octets, CRLF), 3.3.11 (escaped text), 3.3.5 form 1 (a local time without
    a zone, since the show and whoever comes to it are in one place), 3.6.1 (an event needs UID and DTSTAMP; an all-day
    event ends on the day after, which is not part of it; one without an end stops when it begins).
    """
    stamp = now.astimezone(UTC).strftime("%Y%m%dT%H%M%SZ")
    head = ["BEGIN:VCALENDAR", "VERSION:2.0", f"PRODID:-//Ringside//{product}//EN", "CALSCALE:GREGORIAN"]
    lines = [line for event in events for line in _lines(event, stamp)]
    return "".join(folded(line) for line in [*head, *lines, "END:VCALENDAR"])


def _lines(event: Event, stamp: str) -> Iterator[str]:
    yield "BEGIN:VEVENT"
    yield f"UID:{event.uid}@ringside.invalid"
    yield f"DTSTAMP:{stamp}"
    if event.at:
        yield f"DTSTART:{event.day:%Y%m%d}T{event.at:%H%M%S}"
    else:
        yield f"DTSTART;VALUE=DATE:{event.day:%Y%m%d}"
        yield f"DTEND;VALUE=DATE:{event.day + timedelta(days=1):%Y%m%d}"
    yield f"SUMMARY:{escaped(event.summary)}"
    yield f"DESCRIPTION:{escaped(event.told)}"
    if event.place:
        yield f"LOCATION:{escaped(event.place)}"
    yield "END:VEVENT"


def escaped(text: str) -> str:
    for sign in ("\\", ";", ","):
        text = text.replace(sign, f"\\{sign}")
    return text.replace("\r\n", "\n").replace("\r", "\n").replace("\n", "\\n")


def folded(line: str) -> str:
    """The line in parts of at most 75 octets, no letter cut in two; each further part begins with a blank."""
    parts, part, size = [], "", 0
    for sign in line:
        octets = len(sign.encode())
        if size + octets > LONGEST_LINE:
            parts.append(part)
            part, size = " ", 1
        part, size = part + sign, size + octets
    return "".join(f"{one}\r\n" for one in [*parts, part])
