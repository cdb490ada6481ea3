"""One list of what is still missing, each with the page where it is mended."""

import pytest
from django.test import Client

from ringside.results.final_actions import hold_finals
from ringside.results.still_missing import lacks_of
from tests.results.test_awards import entry, give, publish, publish_classes
from tests.results.writing import Pen
from tests.ring.test_awards import sign_class
from tests.shows_for_tests import SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def at() -> SmallShow:
    return small_show()


def said(at: SmallShow) -> list[tuple[str, str]]:
    return [(one.where, one.words) for one in lacks_of(at.show)]


BOXERS = "Boxer, open class, dogs"


def test_classes_that_have_not_begun_are_one_line(at):
    assert said(at) == [("Classes to come", "2 classes not begun")]


def test_grade_reason_signature_and_a_tie_are_named_with_their_class(at):
    pen, card = Pen(at), f"class:{at.show_class.pk}"
    for one in at.entries[:2]:
        pen.write(f"entry:{one.pk}", {"mark.croup": 1})
    pen.write(card, {f"grade.{at.entries[0].pk}": "excellent", f"grade.{at.entries[1].pk}": "excellent"})
    pen.write(card, {f"grade.{at.entries[2].pk}": "disqualified"})
    found = said(at)
    for words in (
        "places", "the judge's signature", "number 3: reason for the grade",
        "a tie by the sheets: numbers 1, 2; the judge breaks it",
    ):  # fmt: skip
        assert (BOXERS, words) in found
    pen.write(card, {f"grade.{at.entries[1].pk}": None})
    assert (BOXERS, "number 2: grade") in said(at)


def test_a_certificate_for_a_dog_that_may_not_have_it_and_an_unsigned_round_are_named(at):
    sign_class(at, list(at.entries))
    give(at, {"cacib-dog": 3}, sign=False)
    found = said(at)
    [(where, words)] = [one for one in found if "CACIB" in one[1]]
    assert (where, words[:51]) == ("Boxer", "Number 3 has the CACIB and does not compete for it ")
    assert ("Boxer: awards", "the judge's signature on the awards") in found
    assert (BOXERS, "ready, not published") in found


def test_what_is_published_is_missing_no_more_and_an_open_final_is(at):
    sign_class(at, list(at.entries))
    give(at, {"cacib-dog": 1, "best-of-sex-dog": 1, "best-of-breed": 1})
    publish_classes(at)
    publish(at)
    assert entry(at, 1)
    assert said(at) == [("Classes to come", "1 class not begun")]
    hold_finals(who=at.accounts["secretary"], show=at.show)
    found = said(at)
    assert ("Best in show", "the name of its judge") in found
    assert ("Best in show", "the judge's signature on the paper") in found


def test_the_page_leads_to_where_it_is_mended(at):
    Pen(at).write(f"class:{at.show_class.pk}", {f"grade.{at.entries[0].pk}": "excellent"})
    client = Client()
    client.force_login(at.accounts["secretary"])
    page = client.get("/office/small/results/missing/").content.decode()
    assert f'href="/office/small/results/{at.show_class.pk}/"' in page
