"""Every finding of the core has a sentence, and every fact that a sentence names is one that the finding brings."""

import ast
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from ringside.core.sentences import SENTENCES, sentence
from scoring.placing.doors import merit, place
from scoring.placing.panel_door import panel
from scoring.rules.award_card import Card, check_card, competing, offered
from scoring.rules.awards import Standing
from scoring.rules.classes import Dog, Occasion, class_eligibility
from scoring.rules.doors import points, titles
from scoring.rules.finals import BreedWinner, Finals, check_final, finalists, finals_for
from scoring.rules.loader import load
from scoring.rules.together import Member, group_findings, handler_findings

ROOT = Path(__file__).resolve().parents[2]
SOURCES = sorted(path for room in ("rules", "placing") for path in (ROOT / "scoring" / room).glob("*.py"))
# How a code enters a finding, and at which argument it stands.
SAY = {"refuses": 0, "warns": 0, "notes": 0, "Finding": 0, "_at_least": 2, "_lacking": 2}
# Faults take the standing that the standard gives them.
STANDINGS = {"fault", "serious-fault", "disqualifying-fault"}
Said = dict[str, Any]


def codes_in(path: Path) -> Iterator[str]:
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in SAY:
            at = SAY[node.func.id]
            if len(node.args) > at and isinstance(node.args[at], ast.Constant):
                yield node.args[at].value


CODES = sorted(STANDINGS.union(*(codes_in(path) for path in SOURCES)))


def of_classes() -> Iterator[Said]:
    """Dogs too young, too old, of the wrong sex, without title or paper, neutered or not."""
    fci, australia, kennel_club = load("fci"), load("australia"), load("united-kingdom")
    day = Occasion(date(2026, 6, 13), date(2026, 6, 13), date(2026, 5, 17))
    grown, champion = (
        Dog(date(2022, 1, 1), "dog"),
        Dog(date(2022, 1, 1), "dog", titles=frozenset({"national-champion"})),
    )
    asked = [
        (fci, "open", replace(grown, born=date(2026, 7, 1))),
        (fci, "open", replace(grown, born=date(2026, 1, 1))),
        (fci, "puppy", grown),
        (fci, "junior", replace(grown, born=date(2024, 12, 13))),
        (fci, "champion", grown),
        (fci, "champion", champion),
        (fci, "working", champion),
        (fci, "open", replace(grown, neutered=True)),
        (australia, "neuter", grown),
        (kennel_club, "limit", grown),
    ]
    for book, code, dog in asked:
        yield from (found.as_json() for found in class_eligibility(book, book.class_rule(code), dog, day).findings)
    bitches_only = replace(fci.class_rule("open"), sexes=("bitch",))
    yield from (found.as_json() for found in class_eligibility(fci, bitches_only, grown, day).findings)


def of_points() -> Iterator[Said]:
    """Shows in Canada and Australia, sound ones and some that cannot be."""
    canada: Said = {"class_dogs": 3, "class_bitches": 7, "champion_dogs": 2, "champion_bitches": 1}
    amber: Said = {"dog": "Amber", "sex": "dog", "wins": ["winners", "best-of-breed"]}
    birk: Said = {"dog": "Birk", "sex": "dog", "wins": ["winners", "best-opposite-sex"]}
    both = {"Amber": {"place": 1, "breeds": 20}, "Birk": {"place": 2, "breeds": 20}}
    group = {"Cora": {"place": 1, "breeds": 20}}
    cora: Said = {"dog": "Cora", "sex": "bitch", "wins": ["challenge", "best-in-group"]}
    shows: list[Said] = [
        {"rules": "canada", "breed": canada, "results": [amber, birk], "group": both},
        {"rules": "canada", "breed": canada, "results": [birk], "best_in_show": "Birk"},
        {"rules": "canada", "breed": {}, "results": [birk]},
        {"rules": "australia", "breed": {"bitches": 9}, "results": [cora], "group": group, "best_in_show": "Cora"},
    ]
    for show in shows:
        yield from points(show)["why"]


def of_titles() -> Iterator[Said]:
    """No wins at all, one win, and wins that come close, under every body's rules."""

    def win(award: str, judge: str = "Ada", **more: Any) -> Said:
        return {"award": award, "date": "2026-06-13", "judge": judge, "country": "Invented", **more}

    asked = {
        "fci": [[], [win("cacib"), win("cacib", "Ben")]],
        "canada": [[], [win("winners", points=1)]],
        "australia": [[], [win("challenge", points=9), win("challenge", "Ben", points=9, age_months=8)]],
        "united-kingdom": [
            [],
            [win("challenge-certificate"), win("reserve-challenge-certificate")],
            [win("first-with-certificates", points=3, age_months=30)],
        ],
    }
    for rules, cases in asked.items():
        for wins in cases:
            for answer in titles({"rules": rules, "wins": wins})["titles"]:
                yield from answer["missing"]


def of_sheets() -> Iterator[Said]:
    """Dogs with faults, classes whose places and grades do not go together, judges who placed unevenly."""
    dogs: list[Said] = [
        {"standard": "boxer", "sex": "bitch", "marks": {"white": 3}, "yes": {"testicles": True}},
        {"standard": "boxer", "sex": "dog", "marks": {}, "yes": {"testicles": False}},
        {
            "standard": "boxer",
            "sex": "dog",
            "marks": {},
            "choices": {"bite": "scissor", "temperament": "shy", "eye-colour": "blue"},
        },
        {"standard": "hovawart", "sex": "dog", "marks": {}, "teeth_missing": [105, 106, 107]},
        {"standard": "dachshund", "sex": "dog", "marks": {}, "numbers": {"chest-girth": 33}},
    ]
    for dog in dogs:
        yield from merit(dog)["findings"]
    faulty: Said = {"choices": {"bite": "overshot", "temperament": "aggressive"}, "yes": {"testicles": False}}
    graded = ["good", "excellent", "excellent", "cannot-be-judged", "promising", None]
    sheets: list[Said] = [
        {"entry": n, "sex": "dog", "marks": {}, "grade": grade, "judge_place": n} for n, grade in enumerate(graded, 1)
    ]
    sheets[1] |= {"marks": {"croup": 3}}
    sheets[2] |= faulty
    sheets[5] |= {"judge_place": 4, **faulty}
    yield from place({"rules": "fci", "standard": "boxer", "sheets": sheets})["findings"]
    yield from place({"rules": "canada", "standard": "boxer", "sheets": sheets[:2]})["findings"]
    yield from place({"rules": "fci", "standard": "boxer", "sheets": [sheets[1]]})["findings"]
    yield from panel({"method": "borda", "marks": {"1": [1, 1], "2": [1, 3]}})["findings"]


def of_awards() -> Iterator[Said]:
    """Dogs that compete from a class, as winner and as second; an award without right; one withheld."""
    fci = load("fci")
    placed = [Standing(str(n), "dog", "open", n, "excellent") for n in (1, 2, 3)]
    card = Card(placed, {"cacib-dog": "1", "best-of-sex-dog": "3", "best-of-breed": "2"})
    for one in offered(fci):
        yield from (each.why.as_json() for each in competing(fci, one, card))
    strict = replace(fci, awards=tuple(replace(award, may_be_withheld=False) for award in fci.awards))
    yield from (found.as_json() for found in check_card(strict, replace(card, decided={"cacib-dog": False})))
    yield from (found.as_json() for found in check_card(fci, card))


def of_groups() -> Iterator[Said]:
    """Too few dogs, too many, dogs that share too little or of which too little is known; handlers of all ages."""
    fci = load("fci")
    one = Member("Ada", "boxer", "", "bitch", frozenset({"Nora"}), "Odo", "Sol", "Luna")
    other = replace(one, name="Ben", breed="hovawart", owners=frozenset({"Tam"}), breeder="", sire="Mars", dam="Venus")
    for code in ("brace", "breeders-group", "progeny-group"):
        for members in ([one], [one, other], [one, replace(other, dam="")], [one] * 6):
            yield from (found.as_json() for found in group_findings(fci.competition(code), members))
    for born in (None, date(2020, 1, 1), date(2000, 1, 1)):
        handling = fci.competition("junior-handling-younger")
        yield from (found.as_json() for found in handler_findings(handling, born, date(2026, 6, 13)))


def of_finals() -> Iterator[Said]:
    """A group of two dogs whose first is best in show: the second competes for runner-up."""
    book = load("australia")
    winners = [BreedWinner(dog, "6", frozenset({"best-of-breed"})) for dog in ("1", "2")]
    at = Finals(winners, {("best-in-group", "6"): ["1", "2"], ("best-in-show", ""): ["1", "2"]})
    for one in finals_for(book, {"6"}):
        yield from (each.why.as_json() for each in finalists(book, one, at))
        yield from (found.as_json() for found in check_final(book, one, at))


FOUND: list[Said] = [
    *of_classes(), *of_points(), *of_titles(), *of_sheets(), *of_awards(), *of_groups(), *of_finals(),
]  # fmt: skip


@pytest.mark.parametrize("code", CODES)
def test_every_finding_has_a_sentence(code: str) -> None:
    assert code in SENTENCES


@pytest.mark.parametrize("code", CODES)
def test_a_sentence_says_only_what_its_finding_brings(code: str) -> None:
    said = [sentence(found) for found in FOUND if found["code"] == code]
    assert said, f"No example here leads to {code}."
    assert [words for words in said if "…" in words or "{" in words or "[" in words or not words.endswith(".")] == []
