"""Thousands of entries at once, for the tests of long lists."""

from collections.abc import Sequence
from datetime import date

from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext

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


def asked(client: Client, address: str) -> tuple[int, str]:
    """How many questions a page asks of the database, and the page."""
    with CaptureQueriesContext(connection) as queries:
        answer = client.get(address)
    assert answer.status_code == 200
    return len(queries), answer.content.decode()
