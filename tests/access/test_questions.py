"""How many questions a page asks the database does not depend on how many dogs are entered: every address is asked."""

import pytest
from django.db import connection, transaction
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from ringside.entries.models import Entry
from ringside.results.models import Placing
from tests.access.expected import EXPECTED
from tests.access.places import Places
from tests.access.test_every_address import ADDRESSES, parts_of
from tests.many_entries import enter, people

pytestmark = pytest.mark.django_db


@pytest.fixture
def places() -> Places:
    return Places()


def add(places: Places, count: int, start: int) -> None:
    """So many dogs more in the class, each with an owner of its own, judged and published."""
    enter(places.at, people(count), start)
    added = Entry.objects.filter(show=places.at.show, number__gte=start)
    Placing.objects.bulk_create(
        [Placing(show_class=places.at.show_class, entry=one, presence="present", grade="excellent") for one in added]
    )


def asked(places: Places) -> dict[str, int]:
    """By the name of each address that answers a page or a file to the secretary, or else to the exhibitor."""
    found = {}
    for name, expected in EXPECTED.items():
        if expected.method == "get" and name in ADDRESSES:
            address = reverse(name, kwargs=parts_of(places, name))
            counts = (count(places, who, address) for who in ("secretary", "exhibitor"))
            found[name] = next((one for one in counts if one is not None), 0)
    return found


def count(places: Places, who: str, address: str) -> int | None:
    """None where there is no page for this person. What an answer changes is taken back."""
    client = Client()
    client.force_login(places.accounts[who])
    with transaction.atomic(), CaptureQueriesContext(connection) as questions:
        answer = client.get(address)
        if answer.streaming:
            list(answer.streaming_content)
        transaction.set_rollback(True)
    return len(questions) if answer.status_code == 200 else None


def test_no_page_asks_more_of_the_database_for_more_dogs(places):
    asked(places)  # what is asked once and then remembered
    add(places, 5, start=1000)
    few = asked(places)
    add(places, 20, start=2000)
    many = asked(places)
    assert sum(questions > 0 for questions in few.values()) > 100
    assert {name: (few[name], many[name]) for name in few if many[name] > few[name]} == {}
