"""Who competes beyond the breed: the groups, best in show, its reserve; what is said of a final that does not fit."""

import pytest

from scoring.rules.award_card import passes_to
from scoring.rules.finals import BreedWinner, Final, Finals, check_final, finalists, finals_for
from scoring.rules.loader import load

BOB = frozenset({"best-of-breed"})


def winner(entry: str, group: str | None, *more: str) -> BreedWinner:
    return BreedWinner(entry, group, BOB | set(more))


def competing(rules: str, award: str, group: str, at: Finals) -> list[str]:
    book = load(rules)
    return [one.entry for one in finalists(book, Final(book.award(award), group), at)]


@pytest.mark.parametrize("rules", ["fci", "canada", "united-kingdom", "australia"])
def test_the_bests_of_breed_of_a_group_compete_there_and_its_first_for_best_in_show(rules):
    # Common practice of all four bodies, no source; Canada's group places are in its championship section.
    groups = [group.code for group in load(rules).groups[:2]]
    winners = [winner("1", groups[0]), winner("2", groups[0]), winner("3", groups[1]), winner("4", None)]
    at = Finals(winners, {})
    assert competing(rules, "best-in-group", groups[0], at) == ["1", "2"]
    assert competing(rules, "best-in-show", "", at) == []
    judged = Finals(winners, {("best-in-group", groups[0]): ["2", "1"], ("best-in-group", groups[1]): ["3"]})
    assert competing(rules, "best-in-show", "", judged) == ["2", "3"]


def test_a_dog_without_best_of_breed_competes_in_no_group():
    at = Finals([BreedWinner("1", "2", frozenset({"best-opposite-sex"}))], {})
    assert competing("fci", "best-in-group", "2", at) == []


def test_the_best_puppy_of_each_breed_competes_for_best_puppy_in_show():
    at = Finals([BreedWinner("1", "2", frozenset({"best-puppy"})), winner("2", "2")], {})
    assert competing("fci", "best-puppy-in-show", "", at) == ["1"]


def test_best_in_show_does_not_compete_for_its_reserve():
    placed = {("best-in-group", "working"): ["1"], ("best-in-group", "toy"): ["2"], ("best-in-show", ""): ["1"]}
    at = Finals([winner("1", "working"), winner("2", "toy")], placed)
    assert competing("united-kingdom", "reserve-best-in-show", "", at) == ["2"]


def test_the_second_of_the_winners_own_group_competes_where_the_data_say_so():
    placed = {("best-in-group", "6"): ["1", "3"], ("best-in-group", "1"): ["2", "4"], ("best-in-show", ""): ["1"]}
    at = Finals([winner(n, "6") for n in "13"] + [winner(n, "1") for n in "24"], placed)
    assert competing("australia", "runner-up-in-show", "", at) == ["2", "3"]


def test_a_dog_that_does_not_compete_and_a_place_too_many_are_said():
    book = load("united-kingdom")
    at = Finals([winner("1", "toy")], {("best-in-group", "toy"): ["1", "9", "8", "7", "6"]})
    said = [found.code for found in check_final(book, Final(book.award("best-in-group"), "toy"), at)]
    assert said == ["award-without-right"] * 4 + ["too-many-places"]


def test_only_groups_with_breeds_hold_finals_and_a_show_without_groups_none():
    keys = [one.key for one in finals_for(load("fci"), {"2"})]
    assert keys[:2] == [("best-in-group", "2"), ("best-in-show", "")]
    assert finals_for(load("fci"), set()) == []


def test_the_fci_has_ten_groups_and_the_others_seven():
    # FCI regulation on groups as quoted by an Italian breed page: ten; the same search for Canada: seven.
    assert [len(load(rules).groups) for rules in ("fci", "canada")] == [10, 7]
    assert load("fci").group_of("dachshund", 4).name == "Dachshunds"
    assert load("canada").group_of("poodle", 9) is None


def test_the_reserve_gets_a_cancelled_certificate_and_nothing_else_moves_up():
    # British breed club on the two certificates: the reserve is worthy should the winner be disqualified.
    book = load("united-kingdom")
    assert passes_to(book, "challenge-certificate").code == "reserve-challenge-certificate"
    assert book.award("reserve-challenge-certificate").provenance.of("moves_up").verified == "derived"
    assert passes_to(book, "best-of-breed") is None
    assert passes_to(book, "best-in-show") is None
