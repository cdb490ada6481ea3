"""Thousands of entries at once, for the tests of long lists."""

from collections.abc import Sequence
from datetime import date

from ringside.dogs.models import Dog, Ownership
from ringside.entries.models import Entry
from ringside.people.models import Person
from tests.shows_for_tests import SmallShow


def people(count: int) -> list[Person]:
    return Person.objects.bulk_create([Person(name=f"Nora Vale {number}") for number in range(count)])


def enter(at: SmallShow, owners: Sequence[Person], start: int) -> list[Dog]:
    """A dog for each of these owners, in one class, under numbers from `start` on."""
    dogs = Dog.objects.bulk_create(
        [
            Dog(name=f"Dog {number} of Heath", breed="boxer", sex="dog", born=date(2022, 1, 1), chip=f"{number:015}")
            for number in range(start, start + len(owners))
        ]
    )
    Ownership.objects.bulk_create([Ownership(dog=dog, person=one) for dog, one in zip(dogs, owners, strict=True)])
    Entry.objects.bulk_create(
        [Entry(show=at.show, dog=dog, show_class=at.show_class, number=n) for n, dog in enumerate(dogs, start)]
    )
    return dogs
