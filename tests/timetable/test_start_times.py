"""The day's plan of a show: proposed, mended, kept, and asked class by class."""

from datetime import UTC, datetime, time, timedelta
from urllib.parse import urlencode

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext

from ringside.core.denied import Denied, NotNow
from ringside.core.models import AuditLine
from ringside.results.schedule import schedule_of
from ringside.shows.models import Appointment, ShowBreed, ShowClass
from ringside.timetable.actions import plan_times
from ringside.timetable.models import StartTime
from ringside.timetable.planning import Hours, plan_of
from ringside.timetable.queries import Starts, slots_of
from tests.ring.test_awards import another
from tests.shows_for_tests import FIRST_DAY, SmallShow, small_show

ASKED = {
    "begins": "09:00", "ends": "17:30", "minutes": "3", "rest": "30", "rest_from": "11:30", "rest_to": "14:00",
}  # fmt: skip
pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def at() -> SmallShow:
    return small_show()


@pytest.fixture
def office(at) -> Client:
    client = Client()
    client.force_login(at.accounts["secretary"])
    return client


def key(breed: ShowBreed, sex: str = "", code: str = ""):
    return breed.pk, sex, code


def plan(at: SmallShow, times, who: str = "secretary") -> int:
    return plan_times(who=at.accounts[who], show=at.show, times=times)


def boxers_apart(at: SmallShow) -> ShowBreed:
    """Boxer bitches before another judge in ring 2, two of them entered."""
    breed = at.show_class.show_breed
    Appointment.objects.create(show_breed=breed, sex="bitch", judge=at.other_class.show_breed.judge,
                               ring=at.other_ring)  # fmt: skip
    bitches = ShowClass.objects.create(show_breed=breed, sex="bitch", code="open")
    another(bitches, 11), another(bitches, 12)
    return ShowBreed.objects.get(pk=breed.pk)


def start_of(show_class: ShowClass) -> time | None:
    fresh = ShowClass.objects.get(pk=show_class.pk)
    return Starts(fresh.show_breed.show).of(fresh)


def test_an_undivided_breed_has_one_time_for_all_its_classes(at):
    assert plan(at, {key(at.show_class.show_breed): time(9, 30)}) == 1
    assert start_of(at.show_class) == time(9, 30)
    assert start_of(at.other_class) is None
    line = AuditLine.objects.get(doing="plan-times")
    assert (line.who, line.detail) == (at.accounts["secretary"], {"count": 1})


def test_the_parts_of_a_divided_breed_have_times_of_their_own(at):
    breed = boxers_apart(at)
    titles = {slot.title: slot.dogs for slot in slots_of(at.show) if slot.breed == breed}
    assert titles == {"Boxer, dogs": 3, "Boxer, bitches": 2, "Boxer, best of breed": 0}
    plan(at, {key(breed, "bitch"): time(10), key(breed): time(14)})
    assert start_of(breed.classes.get(sex="bitch")) == time(10)
    # The time of best of breed is not that of the dogs.
    assert start_of(at.show_class) is None


def test_a_class_judged_apart_has_its_own_time_and_leaves_its_sex(at):
    breed = at.show_class.show_breed
    Appointment.objects.create(show_breed=breed, sex="dog", code="open", ring=at.other_ring)
    titles = {slot.title: slot.dogs for slot in slots_of(at.show) if slot.breed == breed}
    assert titles == {"Boxer, dogs, open class": 3, "Boxer, best of breed": 0}
    plan(at, {key(breed, "dog", "open"): time(11)})
    assert start_of(at.show_class) == time(11)


def test_a_plan_changes_what_it_names_and_leaves_the_rest(at):
    boxer, hovawart = (key(one.show_breed) for one in (at.show_class, at.other_class))
    plan(at, {boxer: time(9), hovawart: time(9)})
    assert plan(at, {boxer: time(9)}) == 0
    assert plan(at, {boxer: None}) == 1
    assert list(StartTime.objects.values_list("show_breed_id", "at")) == [(hovawart[0], time(9))]


def test_who_may_not_change_the_show_plans_nothing(at):
    with pytest.raises(Denied):
        plan(at, {key(at.show_class.show_breed): time(9)}, who="assistant")
    assert not StartTime.objects.exists()


def test_a_part_that_is_gone_is_refused_and_nothing_is_written(at):
    with pytest.raises(NotNow, match="1 of these"):
        plan(at, {key(at.show_class.show_breed): time(9), key(at.show_class.show_breed, "dog"): time(9)})
    assert not StartTime.objects.exists()


def proposed(at: SmallShow, **hours):
    return plan_of(at.show, Hours(**{"gap": 0, "step": 5, **hours}), seconds=0)


def minute(at: time) -> int:
    return at.hour * 60 + at.minute


def test_a_proposal_lets_one_breed_follow_the_other_in_its_ring(at):
    second = ShowBreed.objects.create(show=at.show, breed="rottweiler", ring=at.ring, day=FIRST_DAY)
    another(ShowClass.objects.create(show_breed=second, sex="dog", code="open"), 20)
    third = ShowBreed.objects.create(show=at.show, breed="dobermann", ring=at.ring, day=FIRST_DAY + timedelta(days=1))
    another(ShowClass.objects.create(show_breed=third, sex="dog", code="open"), 21)
    found = proposed(at).times
    # Nobody knows yet who judges the rottweilers, but their ring is taken; three boxers take nine minutes: ten.
    boxer, other = (minute(found[key(one)]) for one in (at.show_class.show_breed, second))
    assert boxer + 10 <= other or other + 5 <= boxer
    assert {at.minute % 5 for at in found.values()} == {0}
    assert found[key(third)] == time(9)


def test_a_proposal_keeps_what_is_planned_and_sets_the_rest_around_it(at):
    second = ShowBreed.objects.create(show=at.show, breed="rottweiler", ring=at.ring, day=FIRST_DAY,
                                      judge=at.show_class.show_breed.judge)  # fmt: skip
    another(ShowClass.objects.create(show_breed=second, sex="dog", code="open"), 20)
    plan(at, {key(at.show_class.show_breed): time(9)})
    found = proposed(at, per_dog=5.0).times
    assert found[key(second)] == time(9, 15)
    assert key(at.show_class.show_breed) not in found


def test_a_judge_is_never_proposed_for_two_rings_at_once_and_has_a_break(at):
    judge = at.show_class.show_breed.judge
    ShowBreed.objects.filter(pk=at.other_class.show_breed_id).update(judge=judge)
    found = proposed(at, per_dog=30.0, start="11:30", rest_from="11:30", rest_to="13:30")
    [boxer, hovawart] = (minute(found.times[key(one.show_breed)]) for one in (at.show_class, at.other_class))
    assert boxer + 90 <= hovawart or hovawart + 30 <= boxer
    [pause] = found.breaks
    assert pause.startswith("judge, Sat 13 Jun, ")
    assert found.findings == []


def test_a_proposal_names_what_has_no_ring_and_what_finds_no_room(at):
    breed = at.show_class.show_breed
    breed.ring = None
    breed.save()
    found = proposed(at, end="09:20", per_dog=30.0, rest=0)
    assert found.times == {}
    assert sorted(found.findings) == [
        "Boxer has no ring and day yet.", "Hovawart finds no room on its judge's day: 30 minutes are asked.",
    ]  # fmt: skip


def test_the_office_proposes_mends_and_keeps_on_one_page(at, office):
    page = office.get(f"/office/small/times/?{urlencode(ASKED)}").content.decode()
    assert "proposed and not kept yet" in page
    assert 'value="09:05"' in page
    assert not StartTime.objects.exists()
    names = {one: f"at-{one.show_breed_id}--" for one in (at.show_class, at.other_class)}
    office.post("/office/small/times/", {names[at.show_class]: "09:30", names[at.other_class]: ""})
    assert start_of(at.show_class) == time(9, 30)
    assert "1 breed or part has no time yet" in office.get("/office/small/times/").content.decode()


def test_hours_that_cannot_be_are_said_beside_their_fields_and_kept(at, office):
    asked = {**ASKED, "ends": "08:00", "rest": "200", "rest_to": "12:00"}
    page = office.get(f"/office/small/times/?{urlencode(asked)}").content.decode()
    assert "The rings end before they begin: look at both times." in page
    assert "less than or equal to 180" in page
    assert 'value="08:00"' in page
    page = office.get(f"/office/small/times/?{urlencode({**asked, 'rest': '60'})}").content.decode()
    assert "The break does not fit between its two times." in page


def test_a_time_that_is_none_is_said_and_what_was_typed_stays(at, office):
    name, other = f"at-{at.show_class.show_breed_id}--", f"at-{at.other_class.show_breed_id}--"
    answer = office.post("/office/small/times/", {name: "half nine", other: "10:00"})
    page = answer.content.decode()
    assert answer.status_code == 400
    assert "Write the time as 09:30" in page
    assert "half nine" in page
    assert 'value="10:00"' in page
    assert not StartTime.objects.exists()


def test_an_assistant_reads_the_times_and_cannot_change_them(at):
    plan(at, {key(at.show_class.show_breed): time(9, 30)})
    client = Client()
    client.force_login(at.accounts["assistant"])
    page = client.get("/office/small/times/").content.decode()
    assert "09:30" in page
    assert "Keep these times" not in page


def test_the_plan_is_read_with_the_same_queries_however_many_breeds(at):
    def queries() -> int:
        with CaptureQueriesContext(connection) as seen:
            slots_of(at.show)
        return len(seen)

    few = queries()
    for breed in ("rottweiler", "dobermann", "leonberger"):
        one = ShowBreed.objects.create(show=at.show, breed=breed, ring=at.ring, day=FIRST_DAY)
        another(ShowClass.objects.create(show_breed=one, sex="dog", code="open"), 30 + one.pk)
    assert queries() == few


def test_the_calendar_of_the_show_says_the_hours(at):
    plan(at, {key(at.show_class.show_breed): time(9, 30)})
    text = schedule_of(at.show, datetime(2026, 6, 1, tzinfo=UTC)).decode().replace("\r\n ", "")
    assert "DESCRIPTION:09:30 Boxer: judge" in text
    assert "DESCRIPTION:Hovawart: other-judge" in text
