"""A dog that stands in several classes is one dog in the awards. All of it is from memory: no oracle of the trade."""

from dataclasses import replace

from hypothesis import given

from scoring.rules.award_card import Card, check_card, competing, offered
from scoring.rules.awards import Round, Standing, candidates, competitors, whose
from scoring.rules.loader import load
from scoring.rules.rulebook import RuleBook
from tests.rules import award_cases

UK = load("united-kingdom")
CC, RESERVE = "challenge-certificate", "reserve-challenge-certificate"


def of_dog(dog: str | None, **places: int | None) -> list[Standing]:
    """A dog's entries, one a class, each called by the dog and the class."""
    return [
        Standing(f"{dog}-{code}", "dog", code.replace("_", "-"), place, None, dog) for code, place in places.items()
    ]


@given(award_cases.cards())
def test_where_each_dog_has_one_entry_naming_the_dogs_changes_nothing(drawn: tuple[RuleBook, Card]) -> None:
    book, card = drawn
    unnamed = Card([replace(each, dog=None) for each in card.standings], card.decided)
    named = Card([replace(each, dog=f"dog of {each.entry}") for each in card.standings], card.decided)
    for one in offered(book):
        assert competing(book, one, named) == competing(book, one, unnamed)
    assert list(check_card(book, named)) == list(check_card(book, unnamed))


@given(award_cases.cards())
def test_a_dog_competes_once_with_an_entry_that_a_line_takes(drawn: tuple[RuleBook, Card]) -> None:
    book, card = drawn
    for one in offered(book):
        dogs = [whose(each.entry, card.standings) for each in competing(book, one, card)]
        assert len(dogs) == len(set(dogs))


@given(award_cases.cards())
def test_what_the_dogs_are_called_does_not_matter(drawn: tuple[RuleBook, Card]) -> None:
    book, card = drawn
    called = [replace(each, dog=each.dog and f"called {each.dog}") for each in card.standings]
    for one in offered(book):
        assert competing(book, one, Card(called, card.decided)) == competing(book, one, card)


def test_a_dog_and_an_entry_of_one_name_are_two() -> None:
    both = [Standing("1", "dog", "open", 1), Standing("2", "dog", "limit", 1, None, "1")]
    assert candidates(UK, CC, Round(both, {})) == ["1", "2"]


def test_a_dog_second_to_the_winner_in_one_class_and_behind_another_dog_in_a_second_one_is_out_of_the_reserve() -> None:
    at = [*of_dog("a", open=1, limit=2), *of_dog("b", open=2, junior=2), *of_dog("c", junior=1), *of_dog("d", limit=1)]
    assert candidates(UK, RESERVE, Round(at, {CC: ["a-open"]})) == ["c-junior", "d-limit"]


def test_a_dog_second_to_the_winner_twice_competes_once() -> None:
    at = [*of_dog("a", open=1, limit=1), *of_dog("b", open=2, limit=2)]
    [one] = competitors(UK, RESERVE, Round(at, {CC: ["a-limit"]}))
    assert (one.entry, one.why.code, one.why.facts["class"]) == ("b-open", "competes-as-second", "open")


def test_a_beaten_dog_that_the_judge_names_all_the_same_is_a_finding_and_no_refusal() -> None:
    at = [*of_dog("a", open=1, limit=2), *of_dog("b", limit=1)]
    [said] = check_card(UK, Card(at, {f"{CC}-dog": "a-open"}))
    assert (said.code, said.severity) == ("award-without-right", "warns")


def test_the_reason_is_the_one_of_the_first_line_that_takes_the_dog() -> None:
    at = of_dog("a", junior=1, open=1)
    [one] = competitors(UK, "best-of-sex", Round(at, {CC: ["a-open"]}))
    assert (one.entry, one.why.code) == ("a-open", "competes-as-winner")
