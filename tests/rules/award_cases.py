"""The shared cases of who competes for an award, read by Python and by the tablet's script; and cards drawn at will."""

import json
from pathlib import Path
from typing import Any

from hypothesis import strategies as st

from scoring.rules.award_card import Card, offered
from scoring.rules.awards import Standing
from scoring.rules.loader import load
from scoring.rules.rulebook import SEXES, RuleBook

FILE = Path(__file__).with_name("award_cases.json")
BOOKS = (("fci", ()), ("fci", ("germany",)), ("canada", ()), ("united-kingdom", ()), ("australia", ()))
ENTRIES = [str(number) for number in range(8)]


def read() -> list[dict[str, Any]]:
    cases: list[dict[str, Any]] = json.loads(FILE.read_text(encoding="utf-8"))
    return cases


def book_of(case: dict[str, Any]) -> RuleBook:
    return load(case["rules"], overlays=tuple(case.get("overlays", ())))


def card_of(case: dict[str, Any]) -> Card:
    dogs = case.get("dogs", {})
    return Card([Standing(*row, dog=dogs.get(row[0])) for row in case["standings"]], case["decided"])


@st.composite
def cards(draw: st.DrawFn) -> tuple[RuleBook, Card]:
    """A rule book, some dogs placed in its classes, and some of its awards given to them or withheld.

    Some of the entries are one dog's, and a dog may bear the name that another's entry has.
    """
    code, overlays = draw(st.sampled_from(BOOKS))
    book = load(code, overlays=overlays)
    grades = [None, *(grade.code for grade in book.grades)]
    sexes = dict.fromkeys(ENTRIES[:4], SEXES[0]) | dict.fromkeys(ENTRIES[4:], SEXES[1])
    dogs = {entry: draw(st.sampled_from([None, *group[:2]])) for group in (ENTRIES[:4], ENTRIES[4:]) for entry in group}
    standing = st.builds(
        lambda entry, *rest: Standing(entry, sexes[entry], *rest, dog=dogs[entry]),
        st.sampled_from(ENTRIES),
        st.sampled_from(book.class_order),
        st.sampled_from([None, 1, 1, 2, 3]),
        st.sampled_from(grades),
    )
    award = st.sampled_from([one.code for one in offered(book)])
    decided = st.dictionaries(award, st.sampled_from([*ENTRIES, False]), max_size=8)
    return book, Card(draw(st.lists(standing, max_size=10)), draw(decided))
