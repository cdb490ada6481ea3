"""A judge who lately handled an entered dog is a finding; twelve months is the trade's figure, from memory."""

from datetime import date

import pytest
from django.test import Client

from ringside.core.sentences import sentence
from ringside.dogs.models import Dog, Ownership
from ringside.entries.handlers import name_handler
from ringside.entries.models import Entry
from ringside.people.models import Person
from ringside.shows.conflicts import findings_on_judges
from ringside.shows.models import Show, ShowBreed, ShowClass
from tests.shows_for_tests import small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def at():
    return small_show()


def codes(show):
    return [finding.code for finding in findings_on_judges(show)]


def handled(dog, handler, last_day, **more):
    """The dog at another show of this site, which ended on that day."""
    slug = f"other-{Show.objects.count()}"
    show = Show.objects.create(slug=slug, name="Spring Show", rules="fci", first_day=last_day, last_day=last_day)
    breed = ShowBreed.objects.create(show=show, breed=dog.breed)
    place = ShowClass.objects.create(show_breed=breed, sex="dog", code="open")
    return Entry.objects.create(show=show, show_class=place, dog=dog, handler=handler, **more)


@pytest.mark.parametrize(
    ("last_day", "found"),
    [
        (date(2025, 6, 12), []),
        (date(2025, 6, 13), ["judge-handles-dog"]),
        (date(2025, 6, 14), ["judge-handles-dog"]),
        (date(2026, 6, 13), ["judge-handles-dog"]),
        (date(2026, 6, 14), []),
    ],
)
def test_a_show_counts_from_the_day_a_year_before_the_first_day_up_to_that_day(at, last_day, found):
    handled(at.entries[1].dog, "judge", last_day)
    assert codes(at.show) == found


def test_a_year_before_a_leap_day_begins_on_the_last_of_february(at):
    Show.objects.filter(pk=at.show.pk).update(first_day=date(2028, 2, 29), last_day=date(2028, 2, 29))
    at.show.refresh_from_db()
    handled(at.entries[0].dog, "judge", date(2027, 2, 27))
    assert codes(at.show) == []
    handled(at.entries[0].dog, "judge", date(2027, 2, 28))
    assert codes(at.show) == ["judge-handles-dog"]


def test_the_finding_names_dog_number_show_and_day_of_the_last_such_show(at):
    handled(at.entries[1].dog, "Judge", date(2025, 9, 1))
    handled(at.entries[1].dog, "Ada & JUDGE", date(2026, 3, 1))
    [finding] = findings_on_judges(at.show)
    assert sentence(finding) == (
        "judge judges a breed in which a dog is entered whose handler at Spring Show, 1 March 2026, has the same "
        "name: Dog 2, number 2. Appoint another judge, or ask whether it is the same person."
    )


@pytest.mark.parametrize("name", ["other-judge", "Prejudge", "Judgement Kennels", ""])
def test_another_name_is_not_found(at, name):
    handled(at.entries[0].dog, name, date(2026, 3, 1))
    Entry.objects.filter(pk=at.entries[1].pk).update(handler=name)
    assert codes(at.show) == []


def test_what_was_withdrawn_or_is_another_dog_or_another_judge_s_is_no_finding(at):
    handled(at.entries[0].dog, "judge", date(2026, 3, 1), state="withdrawn")
    handled(at.other_entry.dog, "judge", date(2026, 3, 1))
    handled(Dog.objects.create(name="Far", breed="boxer", sex="dog", born=date(2022, 1, 1)), "judge", date(2026, 3, 1))
    handled(at.entries[2].dog, "judge", date(2026, 3, 1))
    Entry.objects.filter(pk=at.entries[2].pk).update(state="withdrawn")
    assert codes(at.show) == []


def test_a_handler_named_at_this_show_is_found_and_a_correction_removes_it(at):
    office, entry = at.accounts["secretary"], at.entries[0]
    name_handler(who=office, entry=entry, handler=" Judgé ")
    [finding] = findings_on_judges(at.show)
    assert "handler at Small Show, 13 June 2026, has the same name: Dog 1, number 1" in sentence(finding)
    name_handler(who=office, entry=entry, handler="Ida Quay")
    assert codes(at.show) == []


def test_an_own_dog_is_said_once(at):
    Ownership.objects.create(dog=at.entries[0].dog, person=Person.objects.get(name="judge"))
    handled(at.entries[0].dog, "judge", date(2026, 3, 1))
    assert codes(at.show) == ["judge-owns-dog"]


def test_it_stands_on_the_set_up_page_and_where_a_judge_takes_over(at):
    client = Client()
    client.force_login(at.accounts["secretary"])
    handled(at.entries[0].dog, "Eve Stone", date(2026, 3, 1))
    assert "Spring Show" not in client.get("/office/small/").content.decode()
    judge = Person.objects.get(name="judge")
    told = {"name": "Eve Stone", "email": "eve@small.example", "why": "ill"}
    answer = client.post(f"/office/small/judges/{judge.pk}/replace/", told)
    assert "handler at Spring Show, 1 March 2026" in answer.content.decode()
    assert "handler at Spring Show, 1 March 2026" in client.get("/office/small/").content.decode()


def test_handled_dogs_cost_one_query_however_many(at, django_assert_max_num_queries):
    for entry in at.entries:
        handled(entry.dog, "judge", date(2026, 3, 1))
    with django_assert_max_num_queries(7):
        assert len(findings_on_judges(at.show)) == 3
