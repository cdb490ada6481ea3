"""Days and rings of a show on one page: rings added, renamed, found on the ground, removed once nothing is in them."""

from datetime import time, timedelta

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.utils import timezone

from ringside.core.denied import NotNow
from ringside.core.models import AuditLine
from ringside.notices.queries import dogs_of
from ringside.notices.wording import where
from ringside.ring.models import Pairing, Tablet
from ringside.shows import rings
from ringside.shows.models import Appointment, Ring, Show, ShowBreed
from ringside.timetable.days import days_of_show
from ringside.timetable.models import StartTime
from tests.shows_for_tests import FIRST_DAY, SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]
PAGE = "/office/small/times/days/"


@pytest.fixture
def at() -> SmallShow:
    return small_show()


@pytest.fixture
def office(at) -> Client:
    client = Client()
    client.force_login(at.accounts["secretary"])
    return client


def remove(at: SmallShow, ring: Ring) -> None:
    rings.remove_ring(who=at.accounts["secretary"], ring=ring)


def test_each_day_of_the_show_has_its_rings_with_the_first_planned_time(at):
    Show.objects.update(last_day=FIRST_DAY + timedelta(days=1))
    StartTime.objects.create(show_breed=at.show_class.show_breed, at=time(9, 30))
    found = days_of_show(Show.objects.get())
    assert [one.day for one in found.days] == [FIRST_DAY, FIRST_DAY + timedelta(days=1)]
    first, other = found.days[0].rings
    assert (first.ring, first.begins, first.dogs, first.judges) == (at.ring, time(9, 30), 3, "judge")
    assert (other.ring, other.begins, other.dogs) == (at.other_ring, None, 1)
    assert found.days[1].rings == []


def test_a_breed_stands_in_its_ring_before_a_dog_is_entered_and_its_parts_apart(at):
    breed = ShowBreed.objects.create(show=at.show, breed="rottweiler", ring=at.ring, day=FIRST_DAY)
    Appointment.objects.create(show_breed=breed, sex="bitch", ring=at.other_ring)
    titles = {one.ring.name: [slot.title for slot in one.slots] for one in days_of_show(at.show).days[0].rings}
    assert titles["1"] == ["Boxer", "Rottweiler, dogs", "Rottweiler, best of breed"]
    assert titles["2"] == ["Hovawart", "Rottweiler, bitches"]


def test_what_has_no_ring_and_what_lies_on_no_day_of_the_show_is_said(at, office):
    ShowBreed.objects.filter(pk=at.show_class.show_breed_id).update(ring=None)
    ShowBreed.objects.filter(pk=at.other_class.show_breed_id).update(day=FIRST_DAY + timedelta(days=7))
    page = office.get(PAGE).content.decode()
    assert "Without a ring or a day" in page
    assert "This is no day of the show." in page


def test_a_ring_is_added_renamed_and_found_and_the_letters_say_where(at, office):
    office.post(PAGE, {"name": "3", "place": ""})
    third = Ring.objects.get(name="3")
    name = f"ring-{at.ring.pk}"
    office.post(f"{PAGE}rings/{at.ring.pk}/", {f"{name}-name": "Red", f"{name}-place": "Hall 2, by the north door"})
    assert Ring.objects.get(pk=at.ring.pk).place == "Hall 2, by the north door"
    letters = [where(dog) for dog in dogs_of(at.show) if dog.appointed.ring == at.ring]
    assert "ring Red (Hall 2, by the north door)" in letters[0]
    doings = AuditLine.objects.values_list("doing", "about")
    assert {("add-ring", f"ring:{third.pk}"), ("change-ring", f"ring:{at.ring.pk}")} <= set(doings)


def test_two_rings_of_one_name_are_refused_and_what_was_typed_stays(at, office):
    name = f"ring-{at.ring.pk}"
    answer = office.post(f"{PAGE}rings/{at.ring.pk}/", {f"{name}-name": "2", f"{name}-place": "By the pond"})
    page = answer.content.decode()
    assert answer.status_code == 400
    assert "There is a ring 2 already. Give each ring a name of its own." in page
    assert 'value="By the pond"' in page
    assert "There is a ring 2 already" in office.post(PAGE, {"name": "2"}).content.decode()
    with pytest.raises(NotNow):
        rings.add_ring(who=at.accounts["secretary"], show=at.show, name="2")


def test_a_ring_with_breeds_is_not_removed_and_they_are_named(at, office):
    page = office.post(f"{PAGE}rings/{at.ring.pk}/remove/", follow=True).content.decode()
    assert "Ring 1 is still appointed: Boxer. Give them another ring first, then remove this one." in page
    Appointment.objects.create(show_breed=at.other_class.show_breed, sex="dog", code="open", ring=at.ring)
    with pytest.raises(NotNow, match="Boxer and Hovawart"):
        remove(at, at.ring)


def test_a_ring_with_tablets_is_not_removed(at):
    third = Ring.objects.create(show=at.show, name="3")
    now = timezone.now()
    pairing = Pairing.objects.create(ring=third, day=FIRST_DAY, kind="judge", code_digest="d", made_at=now,
                                     used_at=now, ends_at=now + timedelta(hours=1))  # fmt: skip
    with pytest.raises(NotNow, match="end the pairing"):
        remove(at, third)
    pairing.delete()
    Tablet.objects.create(ring=third, device="one", seen_at=now)
    with pytest.raises(NotNow, match="Rename the ring instead"):
        remove(at, third)
    assert Ring.objects.filter(pk=third.pk).exists()


def test_an_empty_ring_is_removed(at, office):
    third = Ring.objects.create(show=at.show, name="3")
    assert "Ring 3 is removed." in office.post(f"{PAGE}rings/{third.pk}/remove/", follow=True).content.decode()
    assert not Ring.objects.filter(pk=third.pk).exists()


def test_an_assistant_reads_the_days_and_changes_nothing(at):
    client = Client()
    client.force_login(at.accounts["assistant"])
    page = client.get(PAGE).content.decode()
    assert "Boxer" in page
    assert "Add a ring" not in page
    assert client.post(PAGE, {"name": "3"}).status_code == 403


def test_the_days_are_read_with_the_same_queries_however_many_breeds(at):
    def queries() -> int:
        with CaptureQueriesContext(connection) as seen:
            days_of_show(at.show)
        return len(seen)

    few = queries()
    for breed in ("rottweiler", "dobermann", "leonberger"):
        ShowBreed.objects.create(show=at.show, breed=breed, ring=at.ring, day=FIRST_DAY)
    assert queries() == few
