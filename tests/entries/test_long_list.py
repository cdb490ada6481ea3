"""The entry list at 30,000 entries: searched, filtered and paged in the database, at the same cost however long."""

import pytest
from django.test import Client

from ringside.entries.models import EntryTerms, ProofTick
from tests.many_entries import asked, enter, people
from tests.shows_for_tests import SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]

MANY = 30_000
PAGE = "/office/small/entries/"
QUESTIONS = ["", "q=heath+vale", "q=1100", "breed=boxer&order=name", "proof=missing", "state=withdrawn", "page=250",
             "proof=missing&q=dog&order=breed&page=3"]  # fmt: skip


@pytest.fixture
def at() -> SmallShow:
    at = small_show()
    EntryTerms.objects.create(show=at.show, vaccination="Rabies")
    return at


def add(at: SmallShow, count: int, start: int) -> None:
    dogs = enter(at, people(count), start)
    ProofTick.objects.bulk_create([ProofTick(show=at.show, dog=dog, need="vaccination") for dog in dogs[::2]])


def test_the_list_asks_as_few_questions_at_30_000_entries_as_at_a_hundred_and_forty(at):
    client = Client()
    client.force_login(at.accounts["secretary"])
    add(at, 140, start=1000)
    few = {query: asked(client, f"{PAGE}?{query}")[0] for query in QUESTIONS}
    add(at, MANY, start=2000)
    many = {query: asked(client, f"{PAGE}?{query}") for query in QUESTIONS}
    assert {query: count for query, (count, _) in many.items()} == few
    assert max(few.values()) <= 25
    assert "30144 entries" in many[""][1]
    assert "Page 250 of 302" in many["page=250"][1]
    assert f"{MANY // 2 + 70 + 4} entries" in many["proof=missing"][1]
    assert all(words.count('<td class="dog-name">') <= 100 for _, words in many.values())
