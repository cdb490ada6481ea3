"""The schedule as a calendar program reads it: parsed by the icalendar library, and held against RFC 5545."""

from datetime import UTC, date, datetime, timedelta

import icalendar
import pytest

from ringside.results.schedule import schedule_of
from tests.shows_for_tests import SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]
NOW = datetime(2026, 5, 1, 12, 30, tzinfo=UTC)
# Signs that the format uses itself, letters of two to four octets, and a name longer than a line.
NAMES = ("Wood; Ash, Elm \\ Oak", "Łucja Żuk-Ανεμόεσσα von der 🐕 Wiese " * 4)


@pytest.fixture
def at() -> SmallShow:
    found = small_show()
    found.show.name, found.show.place = NAMES[0], NAMES[1].strip()[:120]
    found.show.last_day = found.show.first_day + timedelta(days=1)
    found.show.save()
    judge = found.show_class.show_breed.judge
    assert judge is not None
    judge.name = NAMES[1].strip()[:120]
    judge.save()
    second = found.other_class.show_breed
    second.day = found.show.last_day
    second.save()
    return found


def events(at: SmallShow) -> list[icalendar.Event]:
    calendar = icalendar.Calendar.from_ical(schedule_of(at.show, NOW))
    assert calendar.errors == []
    found = list(calendar.walk("VEVENT"))
    assert all(event.errors == [] for event in found)
    return found


def test_it_is_one_calendar_with_its_version_and_maker(at):
    # RFC 5545, section 3.6: VERSION and PRODID must be there, each once.
    [calendar] = icalendar.Calendar.from_ical(schedule_of(at.show, NOW), multiple=True)
    assert calendar["VERSION"] == "2.0"
    assert calendar["PRODID"].startswith("-//")
    assert [one.name for one in calendar.subcomponents] == ["VEVENT", "VEVENT"]


def test_each_event_has_its_own_uid_that_stays_and_a_stamp_in_utc(at):
    # RFC 5545, sections 3.8.4.7 and 3.8.7.2: UID is unique and persistent; DTSTAMP is in UTC.
    first = events(at)
    assert len({event["UID"] for event in first}) == 2
    again = icalendar.Calendar.from_ical(schedule_of(at.show, NOW + timedelta(days=3)))
    assert [event["UID"] for event in again.walk("VEVENT")] == [event["UID"] for event in first]
    assert [event["DTSTAMP"].dt for event in first] == [NOW, NOW]
    assert b"DTSTAMP:20260501T123000Z" in schedule_of(at.show, NOW)


def test_an_event_is_a_whole_day_in_no_time_zone_and_ends_on_the_day_after(at):
    # RFC 5545, sections 3.3.4, 3.2.19 and 3.6.1: a DATE bears no TZID, and DTEND is not part of the event.
    for event, day in zip(events(at), (at.show.first_day, at.show.last_day), strict=True):
        start, end = event["DTSTART"], event["DTEND"]
        assert type(start.dt) is date
        assert (start.dt, end.dt) == (day, day + timedelta(days=1))
        assert (start.params.get("VALUE"), end.params.get("VALUE")) == ("DATE", "DATE")
        assert "TZID" not in {*start.params, *end.params}


def test_every_name_comes_back_as_it_was_written(at):
    # RFC 5545, section 3.3.11.
    [first, second] = events(at)
    judge = NAMES[1].strip()[:120]
    assert str(first["SUMMARY"]) == f"{NAMES[0]}, Ring 1"
    assert str(first["LOCATION"]) == judge
    assert str(first["DESCRIPTION"]) == f"Boxer: {judge}"
    assert str(second["SUMMARY"]) == f"{NAMES[0]}, Ring 2"


def test_no_line_is_longer_than_75_octets_and_none_is_cut_within_a_letter(at):
    # RFC 5545, section 3.1: lines end with CRLF and should not be longer than 75 octets, the break left out.
    content = schedule_of(at.show, NOW)
    lines = content.split(b"\r\n")
    assert lines.pop() == b""
    assert max(map(len, lines)) <= 75
    assert any(line.startswith(b" ") for line in lines)
    assert all(line.decode("utf-8") for line in lines)
    assert b"\n" not in content.replace(b"\r\n", b"")
