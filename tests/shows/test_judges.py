"""Findings on judges' appointments, on the page where they can still be changed."""

from datetime import timedelta

import pytest
from django.test import Client

from ringside.core.sentences import sentence
from ringside.dogs.models import Dog, Ownership
from ringside.entries.models import Entry
from ringside.people.models import Person
from ringside.shows.conflicts import findings_on_judges, limits
from ringside.shows.models import ShowBreed
from tests.shows_for_tests import FIRST_DAY, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def at():
    return small_show()


def codes(show):
    return [finding.code for finding in findings_on_judges(show)]


def test_a_show_in_order_has_no_finding(at):
    assert codes(at.show) == []


def test_a_judge_who_owns_a_dog_of_the_breed_is_named_with_the_dog(at):
    judge = Person.objects.get(name="judge")
    Ownership.objects.create(dog=at.entries[1].dog, person=judge)
    [finding] = findings_on_judges(at.show)
    assert finding.code == "judge-owns-dog"
    assert "Dog 2, number 2" in sentence(finding)


@pytest.mark.parametrize("name", ["JUDGE", " judge ", "Judgé"])
def test_a_name_written_another_way_is_the_same_name(at, name):
    other = Person.objects.create(name=name)
    Ownership.objects.create(dog=at.entries[0].dog, person=other)
    assert codes(at.show) == ["judge-owns-dog"]


@pytest.mark.parametrize("breeder", ["Judge", "Ada Meadow & judge", "A. Meadow, JUDGE", "Ada und Judge", "Judge/Ada"])
def test_a_judge_who_bred_a_dog_is_found_in_the_breeders_text(at, breeder):
    Dog.objects.filter(pk=at.entries[0].dog_id).update(breeder=breeder)
    assert codes(at.show) == ["judge-bred-dog"]


@pytest.mark.parametrize("breeder", ["Prejudge", "Judgement Kennels", "", "other-judge"])
def test_a_name_inside_another_is_not_the_same_name(at, breeder):
    Dog.objects.filter(pk=at.entries[0].dog_id).update(breeder=breeder)
    assert codes(at.show) == []


def test_a_dog_of_another_breed_or_a_withdrawn_one_is_no_conflict(at):
    judge = Person.objects.get(name="judge")
    Ownership.objects.create(dog=at.other_entry.dog, person=judge)
    Ownership.objects.create(dog=at.entries[0].dog, person=judge)
    Entry.objects.filter(pk=at.entries[0].pk).update(state="withdrawn")
    assert codes(at.show) == []


def fill(at, count):
    """Entries up to `count` in the first class."""
    dogs = Dog.objects.bulk_create(
        Dog(name=f"More {n}", breed="boxer", sex="dog", born=at.entries[0].dog.born) for n in range(count - 3)
    )
    Entry.objects.bulk_create(Entry(show=at.show, show_class=at.show_class, dog=dog) for dog in dogs)


def test_a_day_over_the_limit_says_how_well_the_limit_is_known(at):
    [limit] = limits()
    fill(at, limit.dogs)
    assert codes(at.show) == []
    fill(at, 4)
    [finding] = findings_on_judges(at.show)
    assert "judge has 81 dogs on 13 June 2026; the limit is 80" in sentence(finding)
    assert "from memory, to be confirmed" in sentence(finding)


def test_a_body_whose_limit_is_not_known_has_no_finding(at):
    fill(at, 200)
    at.show.rules = "canada"
    assert codes(at.show) == []


def test_two_rings_on_one_day_are_found_and_two_days_are_not(at):
    judge = Person.objects.get(name="judge")
    ShowBreed.objects.filter(breed="hovawart").update(judge=judge)
    [finding] = findings_on_judges(at.show)
    assert (
        sentence(finding) == "judge is appointed in Ring 1 and Ring 2 on 13 June 2026: put these breeds into one ring."
    )
    ShowBreed.objects.filter(breed="hovawart").update(day=FIRST_DAY + timedelta(days=1))
    assert codes(at.show) == []


def test_the_findings_stand_on_the_set_up_page(at):
    ShowBreed.objects.filter(breed="hovawart").update(judge=Person.objects.get(name="judge"))
    client = Client()
    client.force_login(at.accounts["secretary"])
    assert "Look at these appointments" in client.get("/office/small/").content.decode()


def test_findings_cost_the_same_queries_however_many_dogs(at, django_assert_max_num_queries):
    fill(at, 60)
    with django_assert_max_num_queries(7):
        findings_on_judges(at.show)
