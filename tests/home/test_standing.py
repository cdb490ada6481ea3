"""The left column of the office: what each stage of a show still lacks, by the same queries for a show of any size."""

from datetime import timedelta

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.utils import timezone

from ringside.entries.models import Entry, EntryFile, EntryLine, EntryRequest
from ringside.fees.models import FeeLine, Payment
from ringside.home.models import CorrectionRequest
from ringside.home.standing import standing_of
from ringside.people.models import Person
from ringside.results.models import Publication
from ringside.ring.models import Edit, Sheet, Tablet
from ringside.shows.models import Appointment, ShowBreed, ShowClass
from tests.many_entries import enter, people
from tests.shows_for_tests import FIRST_DAY, SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]
BEFORE = FIRST_DAY - timedelta(days=30)


@pytest.fixture
def at() -> SmallShow:
    return small_show()


def lacks(at: SmallShow, stage: str, today=BEFORE) -> list[str]:
    return standing_of(at.show, today)[stage]


def test_a_show_that_is_ready_and_whose_day_has_not_come_lacks_nothing(at):
    assert set(map(tuple, standing_of(at.show, BEFORE).values())) == {()}


def test_set_up_names_breeds_without_a_judge_a_ring_or_a_day(at):
    ShowBreed.objects.create(show=at.show, breed="rottweiler", ring=at.ring, day=FIRST_DAY)
    ShowBreed.objects.create(show=at.show, breed="dobermann", ring=at.ring)
    assert lacks(at, "set_up") == ["2 breeds without a judge", "1 breed without ring or day"]
    ShowBreed.objects.filter(classes=None).delete()
    assert lacks(at, "set_up") == []


def test_a_day_that_the_show_no_longer_has_is_no_day(at):
    Appointment.objects.create(show_breed=at.show_class.show_breed, sex="dog", day=FIRST_DAY + timedelta(days=1))
    assert lacks(at, "set_up") == ["1 breed without ring or day"]
    Appointment.objects.all().delete()
    ShowBreed.objects.filter(pk=at.other_class.show_breed_id).update(day=FIRST_DAY - timedelta(days=1))
    assert lacks(at, "set_up") == ["1 breed without ring or day"]


def test_a_breed_whose_every_part_has_a_judge_of_its_own_lacks_none(at):
    judge = at.show_class.show_breed.judge
    breed = ShowBreed.objects.create(show=at.show, breed="rottweiler", ring=at.ring, day=FIRST_DAY)
    for sex in ("dog", "bitch"):
        Appointment.objects.create(show_breed=breed, sex=sex, judge=judge)
    # Nobody judges best of breed yet.
    assert lacks(at, "set_up") == ["1 breed without a judge"]
    Appointment.objects.create(show_breed=breed, judge=judge)
    assert lacks(at, "set_up") == []


def test_entries_name_what_waits_for_the_secretary(at):
    EntryRequest.objects.create(show=at.show)
    file = EntryFile.objects.create(show=at.show, name="club.csv", digest="d", kind="csv", date_style="iso")
    EntryLine.objects.bulk_create([EntryLine(file=file, line=n) for n in (2, 3)])
    assert lacks(at, "entries") == ["1 to decide", "2 lines not taken in"]


def test_fees_count_who_has_still_to_pay(at):
    assert lacks(at, "fees") == []
    FeeLine.objects.create(show=at.show, name="Each dog", amount=20)
    assert lacks(at, "fees") == ["3 unpaid"]
    ben = Person.objects.get(name="ben")
    Payment.objects.create(show=at.show, person=ben, kind="received", amount=20, day=BEFORE, how="cash")
    assert lacks(at, "fees") == ["2 unpaid"]


def test_numbers_are_not_given_or_some_dogs_lack_one(at):
    Entry.objects.filter(pk=at.other_entry.pk).update(number=None)
    assert lacks(at, "papers") == ["1 dog without a number"]
    Entry.objects.update(number=None)
    assert lacks(at, "papers") == ["numbers not given"]
    Entry.objects.update(state="withdrawn")
    assert (lacks(at, "papers"), lacks(at, "entries")) == ([], ["no dog yet"])


def test_the_day_names_what_is_held_and_what_a_tablet_still_holds(at):
    Edit.objects.create(id="one", ring=at.ring, sequence=1, sheet="class:1", field="places", state=Edit.State.HELD)
    Tablet.objects.create(ring=at.ring, device="one", seen_at=timezone.now(), unsent=3)
    assert lacks(at, "day") == ["1 held to decide", "1 tablet not sent"]


def test_results_name_what_can_be_published_and_from_the_first_day_on_what_is_not_signed(at):
    assert lacks(at, "results", FIRST_DAY) == ["2 classes not signed"]
    Sheet.objects.create(key=f"class:{at.show_class.pk}", ring=at.ring, show_class=at.show_class, signed={"places": []})
    assert lacks(at, "results") == ["1 to publish", "1 class not signed"]
    Publication.objects.create(show_class=at.show_class)
    assert lacks(at, "results") == ["1 class not signed"]
    CorrectionRequest.objects.create(entry=at.entries[0], kind="name", text="Dog One")
    assert lacks(at, "results") == ["1 request open", "1 class not signed"]


def test_every_page_of_the_office_says_so_and_a_stages_link_keeps_its_name(at):
    ShowBreed.objects.filter(pk=at.show_class.show_breed_id).update(judge=None)
    client = Client()
    client.force_login(at.accounts["assistant"])
    for page in ("", "entries/", "fees/", "results/", "times/"):
        told = client.get(f"/office/small/{page}").content.decode()
        assert '<span class="lacks">1 breed without a judge</span>' in told
        assert ">Set up</a>" in told


def test_thousands_of_dogs_cost_no_query_more(at):
    FeeLine.objects.create(show=at.show, name="Each dog", amount=20)
    ShowBreed.objects.create(show=at.show, breed="rottweiler")

    def queries() -> int:
        with CaptureQueriesContext(connection) as seen:
            standing_of(at.show, FIRST_DAY)
        return len(seen)

    few = queries()
    enter(at, people(3000), 100)
    for number, breed in enumerate(("dobermann", "leonberger")):
        one = ShowBreed.objects.create(show=at.show, breed=breed)
        ShowClass.objects.create(show_breed=one, sex="dog", code="open", order=number)
    assert queries() == few
    assert lacks(at, "fees") == ["3003 unpaid"]
