"""Catalogue numbers: a dog has one for all its classes; nobody else has it."""

from collections import defaultdict
from datetime import date

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from hypothesis.extra.django import TestCase

from ringside.dogs.models import Dog
from ringside.entries.models import Entry
from ringside.entries.numbering import dogs_without_number, entries_numbered, number_entries
from ringside.results import day_actions
from ringside.shows.models import Show, ShowClass
from tests.shows_for_tests import SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]
CODES = ("limit", "novice", "open", "puppy")
TODAY = date(2026, 6, 13)
TEXTS = {
    "name": "Left Out of the Meadow", "breed": "Boxer", "sex": "dog", "born": "03.03.2022", "owner": "Dora",
    "class": "limit", "email": "dora@small.example", "chip": "",
}  # fmt: skip


def classes_of(at: SmallShow) -> list[ShowClass]:
    breed = at.show_class.show_breed
    return [
        ShowClass.objects.update_or_create(show_breed=breed, sex="dog", code=code, defaults={"order": at_})[0]
        for at_, code in enumerate(CODES)
    ]


def numbers_of(show: Show) -> dict[int, set[int | None]]:
    """The numbers of each dog, of the entries that have their turn."""
    found = defaultdict(set)
    for dog, number in Entry.objects.filter(show=show, state="entered").values_list("dog_id", "number"):
        found[dog].add(number)
    return found


def assert_one_number_a_dog(show: Show) -> None:
    """Counted again by hand: each dog has one number, and the numbers run from 1 without gaps over the dogs."""
    numbers = numbers_of(show)
    assert all(len(one) == 1 for one in numbers.values())
    assert sorted(number for one in numbers.values() for number in one) == list(range(1, len(numbers) + 1))


# In which of the four classes each dog stands, first and later.
ENTERED = st.lists(st.tuples(*[st.frozensets(st.integers(0, 3), max_size=3)] * 2), min_size=1, max_size=6)


class ADogHasOneNumber(TestCase):
    @settings(max_examples=25, suppress_health_check=[HealthCheck.too_slow])
    @given(dogs=ENTERED)
    def test_in_whatever_classes_and_whenever_it_is_entered(self, dogs):
        at = small_show()
        Entry.objects.all().delete()
        classes = classes_of(at)
        rows = [Dog.objects.create(name=f"D{n}", breed="boxer", sex="dog", born=TODAY) for n in range(len(dogs))]
        entered: set[tuple[int, int]] = set()
        for turn in (0, 1):
            wanted = {(dog.pk, at_) for dog, both in zip(rows, dogs, strict=True) for at_ in both[turn]} - entered
            before = dict(Entry.objects.values_list("pk", "number"))
            Entry.objects.bulk_create(
                Entry(show=at.show, dog_id=dog, show_class=classes[at_]) for dog, at_ in sorted(wanted)
            )
            entered |= wanted
            if wanted:
                assert number_entries(who=at.accounts["secretary"], show=at.show) == len(wanted)
            assert_one_number_a_dog(at.show)
            assert before.items() <= dict(Entry.objects.values_list("pk", "number")).items()


def test_a_dog_has_its_number_from_its_first_place_in_the_catalogue():
    at = small_show()
    limit, *_ = classes_of(at)
    first, second, third = at.entries
    Entry.objects.update(number=None)
    # The third dog stands in limit, which comes before open.
    more = Entry.objects.create(show=at.show, show_class=limit, dog=third.dog)
    number_entries(who=at.accounts["secretary"], show=at.show)
    numbers = dict(Entry.objects.values_list("pk", "number"))
    assert [numbers[one.pk] for one in (third, more, first, second)] == [1, 1, 2, 3]
    assert [entry.pk for entry in entries_numbered(at.show, 1)] == [more.pk, third.pk]


def test_a_later_entry_of_a_numbered_dog_gets_its_number_and_a_later_dog_the_next_free_one():
    at = small_show()
    limit, *_ = classes_of(at)
    late = Dog.objects.create(name="Late", breed="boxer", sex="dog", born=TODAY)
    for dog in (late, at.entries[1].dog):
        Entry.objects.create(show=at.show, show_class=limit, dog=dog)
    assert dogs_without_number(at.show) == 2
    assert number_entries(who=at.accounts["secretary"], show=at.show) == 2
    assert Entry.objects.get(show_class=limit, dog=late).number == 5
    assert Entry.objects.get(show_class=limit, dog=at.entries[1].dog).number == 2


def test_a_dog_with_two_numbers_from_before_gets_the_lower_one_and_nothing_printed_changes():
    at = small_show()
    limit, novice, *_ = classes_of(at)
    Entry.objects.create(show=at.show, show_class=limit, dog=at.entries[0].dog, number=9)
    later = Entry.objects.create(show=at.show, show_class=novice, dog=at.entries[0].dog)
    number_entries(who=at.accounts["secretary"], show=at.show)
    later.refresh_from_db()
    assert later.number == 1
    assert Entry.objects.get(show_class=limit).number == 9


def test_a_new_dog_gets_no_number_that_a_dog_with_two_from_before_has_as_its_other():
    at = small_show()
    limit, novice, *_ = classes_of(at)
    Entry.objects.create(show=at.show, show_class=limit, dog=at.entries[0].dog, number=5)
    late = Dog.objects.create(name="Late", breed="boxer", sex="dog", born=TODAY)
    entry = Entry.objects.create(show=at.show, show_class=novice, dog=late)
    number_entries(who=at.accounts["secretary"], show=at.show)
    entry.refresh_from_db()
    assert entry.number == 6


def test_on_the_day_a_dog_of_the_catalogue_is_added_to_a_class_under_its_number():
    at = small_show()
    Show.objects.update(rules="united-kingdom")
    dog = at.entries[1].dog
    Dog.objects.filter(pk=dog.pk).update(chip="981000000000017")
    texts = {
        **TEXTS, "name": dog.name, "chip": "981000000000017", "owner": "ben", "email": "ben@small.example",
        "born": f"{dog.born:%d.%m.%Y}",
    }  # fmt: skip
    show = Show.objects.get(pk=at.show.pk)
    entry = day_actions.add_at_ring(
        who=at.accounts["secretary"], show=show, texts=texts, note="Left out by the printer.", today=TODAY
    )
    assert (entry.dog_id, entry.number) == (dog.pk, 2)
    new = day_actions.add_at_ring(
        who=at.accounts["secretary"], show=show, texts=TEXTS, note="Left out by the printer.", today=TODAY
    )
    assert new.number == 5
