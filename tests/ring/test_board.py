"""The public board: numbers and signed places only, and a thousand spectators cost hardly more than one."""

import time

import pytest
from django.test import Client

from scoring.merging import covers_for
from tests.ring.test_taking_edits import actions, edit, sheet_of, take
from tests.shows_for_tests import SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def at() -> SmallShow:
    return small_show()


def board(at: SmallShow, **headers):
    return Client().get(f"/ring/{at.ring.pk}/board/", headers=headers)


def test_places_show_only_once_they_are_signed(at):
    card = f"class:{at.show_class.pk}"
    first = at.entries[1]
    take(at, edit(card, "places", [str(first.pk)], number=1), edit(card, f"grade.{first.pk}", "excellent", number=2))
    assert "Excellent" not in board(at).content.decode()
    covers = list(covers_for(actions.edits_of(card)))
    take(at, edit(card, "signature", {"covers": covers}, number=3))
    page = board(at).content.decode()
    assert "<strong>2</strong> Excellent" in page
    assert "signed" in page


def test_what_is_judged_now_comes_first(at):
    take(at, edit(sheet_of(at), "mark.croup", 1))
    page = board(at).content.decode()
    assert "Now in the ring" in page
    assert "To come" not in page
    assert "dogs, open class" in page


def test_the_board_names_no_dog_and_no_person(at):
    take(at, edit(sheet_of(at), "mark.croup", 1))
    page = board(at).content.decode()
    assert "Last in hand: number <strong>1</strong>" in page
    assert not any(entry.dog.name in page for entry in at.entries)
    assert "small.example" not in page


def test_asking_again_without_news_costs_one_query_and_no_page(at, django_assert_num_queries):
    etag = board(at).headers["ETag"]
    with django_assert_num_queries(1):
        again = board(at, if_none_match=etag)
    assert (again.status_code, again.content) == (304, b"")
    take(at, edit(sheet_of(at), "mark.croup", 1))
    assert board(at, if_none_match=etag).status_code == 200


def test_a_dog_withdrawn_without_an_edit_leaves_the_board_within_a_minute(at, monkeypatch):
    take(at, edit(sheet_of(at), "mark.croup", 1))
    etag = board(at).headers["ETag"]
    now = time.time()
    monkeypatch.setattr(time, "time", lambda: now + 61)
    assert board(at, if_none_match=etag).status_code == 200


def test_an_unknown_ring_has_no_board(at):
    assert Client().get("/ring/99999/board/").status_code == 404
