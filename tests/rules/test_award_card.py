"""A breed's award card: what it offers, who competes, what waits, what is said of the judge's decisions."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scoring.rules.award_card import Card, Offered, check_card, competing, offered, waits_for, within_reach
from scoring.rules.awards import Standing
from scoring.rules.loader import codes, load
from scoring.rules.rulebook import SEXES, RuleBook
from tests.rules import award_cases


def by_code(book: RuleBook, code: str) -> Offered:
    return next(one for one in offered(book) if one.code == code)


@pytest.mark.parametrize("case", award_cases.read(), ids=lambda case: case["name"])
def test_every_shared_case_comes_out_as_reasoned(case: dict[str, Any]) -> None:
    book, card = award_cases.book_of(case), award_cases.card_of(case)
    found = {code: [one.entry for one in competing(book, by_code(book, code), card)] for code in case["expected"]}
    waits = {code: [one.code for one in waits_for(book, by_code(book, code), card)] for code in case["waits"]}
    said = [[one.code, one.facts["award"], one.facts.get("entry")] for one in check_card(book, card)]
    assert (found, waits, said) == (case["expected"], case["waits"], case["findings"])


@pytest.mark.parametrize("rules", codes())
def test_no_two_awards_of_a_breed_share_a_code(rules: str) -> None:
    named = [one.code for one in offered(load(rules))]
    assert len(named) == len(set(named))


def test_a_certificate_is_offered_to_each_sex_and_best_of_breed_once() -> None:
    # FCI show regulations: one CACIB for each sex of a breed or variety.
    named = [(one.award.code, one.code) for one in offered(load("fci"))]
    assert [code for award, code in named if award == "cacib"] == ["cacib-dog", "cacib-bitch"]
    assert [code for award, code in named if award == "best-of-breed"] == ["best-of-breed"]
    assert "best-in-show" not in [award for award, _ in named]


def test_a_breed_of_one_open_dog_offers_only_what_that_dog_could_win() -> None:
    named = [one.code for one in within_reach(load("fci"), {("dog", "open")})]
    assert named == ["cacib-dog", "reserve-cacib-dog", "best-of-sex-dog", "best-of-breed", "best-opposite-sex"]


def test_why_an_entry_competes_is_said() -> None:
    book = load("fci")
    standings = [Standing("1", "dog", "open", 1, "excellent"), Standing("2", "dog", "open", 2, "excellent")]
    card = Card(standings, {"cacib-dog": "1"})
    [reserve] = competing(book, by_code(book, "reserve-cacib-dog"), card)
    assert (reserve.why.code, reserve.why.facts["to"]) == ("competes-as-second", "cacib")
    [best] = competing(book, by_code(book, "best-of-sex-dog"), card)
    assert (best.why.code, best.why.facts["holds"]) == ("competes-as-winner", ["cacib"])
    [first] = competing(book, by_code(book, "cacib-dog"), card)
    assert (first.why.code, first.why.facts["class"], first.why.facts["place"]) == ("competes-from-class", "open", 1)


@given(award_cases.cards())
def test_nobody_competes_for_an_award_of_the_other_sex_or_for_the_reserve_of_an_own_certificate(
    drawn: tuple[RuleBook, Card],
) -> None:
    book, card = drawn
    sexes = {standing.entry: standing.sex for standing in card.standings}
    for one in offered(book):
        entries = [each.entry for each in competing(book, one, card)]
        assert len(entries) == len(set(entries))
        assert one.sex is None or {sexes[entry] for entry in entries} <= {one.sex}
        for line in one.award.candidates:
            assert line.second_to is None or card.decided.get(f"{line.second_to}-{one.sex}") not in entries


@given(award_cases.cards(), st.sampled_from(SEXES))
def test_who_competes_in_one_sex_does_not_depend_on_the_other(drawn: tuple[RuleBook, Card], sex: Any) -> None:
    book, card = drawn
    alone = Card([each for each in card.standings if each.sex == sex], card.decided)
    for one in offered(book):
        if one.sex == sex:
            assert competing(book, one, alone) == competing(book, one, card)
