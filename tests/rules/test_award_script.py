"""The tablet's script says the same of who competes as Python does, from the same cases and the rules as data."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from playwright.sync_api import Page

from ringside.ring.offers import award_json
from scoring.rules.award_card import Card, check_card, competing, offered, waits_for
from scoring.rules.rulebook import RuleBook
from tests.rules import award_cases

SCRIPT = Path(__file__).parents[2] / "static" / "ring" / "candidates.js"
PAGE = "http://awards.invalid/"
ASK_ALL = """async (asked) => {
  const { competing, waitsFor, checked } = await import("/candidates.js");
  return asked.map(({ awards, standings, decided: said }) => {
    const decided = new Map(Object.entries(said));
    const ofEach = (answer) => Object.fromEntries(awards.map((one) => [one.code, answer(one)]));
    return {
      competing: ofEach((one) => competing(awards, one, standings, decided)),
      waits: ofEach((one) => waitsFor(awards, one, decided).map(({ code }) => code)),
      findings: awards.map((one) => checked(awards, one, standings, decided)).filter(Boolean),
    };
  });
}"""

# pytest-base-url, which pytest-playwright brings, defines a session fixture in a way that this pytest warns of.
pytestmark = [pytest.mark.browser, pytest.mark.filterwarnings("ignore::pytest.PytestRemovedIn10Warning")]
Twin = Callable[[list[tuple[RuleBook, Card]]], list[dict[str, Any]]]


@pytest.fixture
def twin(page: Page) -> Twin:
    """Asks the script, in a page of nothing else."""
    text = SCRIPT.read_text(encoding="utf-8")
    page.route("**/*", lambda route: route.fulfill(body="<!doctype html>", content_type="text/html"))
    page.route("**/candidates.js", lambda route: route.fulfill(body=text, content_type="text/javascript"))
    page.goto(PAGE)
    return lambda asked: page.evaluate(ASK_ALL, [as_sent(book, card) for book, card in asked])


def as_sent(book: RuleBook, card: Card) -> dict[str, Any]:
    """What the tablet gets: the awards as the day's data say them, the standings as it reads them from the cards."""
    standings = [
        {"entry": s.entry, "sex": s.sex, "class_code": s.class_code, "place": s.place, "grade": s.grade, "dog": s.dog}
        for s in card.standings
    ]
    awards = [award_json(one) for one in offered(book)]
    return {"awards": awards, "standings": standings, "decided": dict(card.decided)}


def as_python_says(book: RuleBook, card: Card) -> dict[str, Any]:
    found = offered(book)
    return {
        "competing": {one.code: [each.entry for each in competing(book, one, card)] for one in found},
        "waits": {one.code: [other.code for other in waits_for(book, one, card)] for one in found},
        "findings": [{"code": said.code, "facts": dict(said.facts)} for said in check_card(book, card)],
    }


def test_the_script_answers_every_shared_case(twin: Twin) -> None:
    cases = award_cases.read()
    answers = twin([(award_cases.book_of(case), award_cases.card_of(case)) for case in cases])
    for case, found in zip(cases, answers, strict=True):
        said = [[one["code"], one["facts"]["award"], one["facts"].get("entry")] for one in found["findings"]]
        assert case["expected"].items() <= found["competing"].items(), case["name"]
        assert case["waits"].items() <= found["waits"].items(), case["name"]
        assert said == case["findings"], case["name"]


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(drawn=award_cases.cards())
def test_the_script_says_of_any_card_what_python_says(twin: Twin, drawn: tuple[RuleBook, Card]) -> None:
    assert twin([drawn]) == [as_python_says(*drawn)]


def test_the_script_is_short_and_imports_nothing() -> None:
    text = SCRIPT.read_text(encoding="utf-8")
    assert text.count("\n") < 100
    assert "\nimport " not in text
