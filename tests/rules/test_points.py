"""Points of a show: the published tables and worked examples, and what must hold whatever the numbers."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scoring.rules.doors import points

CANADA = ("class_dogs", "class_bitches", "champion_dogs", "champion_bitches")
AUSTRALIA = ("dogs", "bitches")
WINS = {
    "canada": ("winners", "best-of-winners", "best-of-breed", "best-opposite-sex"),
    "australia": ("challenge", "best-of-breed", "best-in-group"),
}
COUNTS = {"canada": CANADA, "australia": AUSTRALIA}


def breed(rules: str, numbers: tuple[int, ...]) -> dict[str, int]:
    return dict(zip(COUNTS[rules], numbers, strict=True))


def earned(rules: str, numbers: tuple[int, ...], *wins: str, sex: str = "dog", **more: Any) -> int:
    """The points of one dog with these wins."""
    results = [{"dog": "Amber", "sex": sex, "wins": list(wins)}]
    said = points({"rules": rules, "breed": breed(rules, numbers), "results": results, **more})
    found: int = said["points"]["Amber"]
    return found


def said(rules: str, numbers: tuple[int, ...], results: list[dict[str, Any]], **more: Any) -> list[tuple[str, str]]:
    answer = points({"rules": rules, "breed": breed(rules, numbers), "results": results, **more})
    return [(finding["code"], finding["severity"]) for finding in answer["why"]]


@pytest.mark.parametrize(
    ("competing", "expected"),
    [*[(1, 0), (2, 1), (3, 2), (4, 2), (5, 2), (6, 3), (9, 3)], *[(10, 4), (12, 4), (13, 5), (14, 5), (90, 5)]],
)
def test_canadian_points_follow_the_table(competing: int, expected: int) -> None:
    # Canadian Kennel Club championship section and a breeder's explanation: two copies that agree.
    assert earned("canada", (competing, 0, 0, 0), "winners") == expected
    assert earned("canada", (0, competing, 0, 0), "winners", sex="bitch") == expected


@pytest.mark.parametrize(
    ("wins", "expected"),
    [
        (["winners"], 2),
        (["winners", "best-of-winners"], 4),
        (["winners", "best-of-winners", "best-of-breed"], 5),
        (["best-of-breed", "winners"], 5),
    ],
)
def test_the_canadian_worked_example_comes_out(wins: list[str], expected: int) -> None:
    # Canadian breeder's worked explanation, entry 3-7-2-1: 2; then 10 dogs, 4 and not 2 + 3; then 13 dogs, 5.
    assert earned("canada", (3, 7, 2, 1), *wins) == expected
    assert earned("canada", (3, 7, 2, 1), "winners", sex="bitch") == 3


@pytest.mark.parametrize(("sex", "expected"), [("dog", 2), ("bitch", 3)])
def test_the_canadian_best_of_opposite_sex_counts_its_own_sex(sex: str, expected: int) -> None:
    # Derived from the championship section: dogs defeated directly or indirectly; 3 + 2 dogs, 7 + 1 bitches.
    assert earned("canada", (3, 7, 2, 1), "winners", "best-opposite-sex", sex=sex) == expected


GROUP = [
    # Canadian Kennel Club championship section: breeds in the group, points of the first four places.
    *[(30, (5, 4, 3, 2)), (13, (5, 4, 3, 2)), (12, (4, 3, 2, 1)), (10, (4, 3, 2, 1)), (9, (3, 2, 1, 1))],
    *[(6, (3, 2, 1, 1)), (5, (2, 1, 1, 1)), (4, (2, 1, 1, 0)), (3, (2, 1, 0, 0)), (2, (1, 0, 0, 0)), (1, (0, 0, 0, 0))],
]


@pytest.mark.parametrize(("breeds", "expected"), GROUP)
def test_canadian_group_points_follow_the_table(breeds: int, expected: tuple[int, ...]) -> None:
    found = tuple(
        earned("canada", (1, 0, 0, 0), "winners", "best-of-breed", group={"Amber": {"place": place, "breeds": breeds}})
        for place in (1, 2, 3, 4, 5)
    )
    assert found == (*expected, 0)


def test_breed_and_group_points_are_added_up_to_five() -> None:
    # Canadian Kennel Club championship section: at most five points at a show.
    alone = earned("canada", (3, 0, 0, 0), "winners", "best-of-breed")
    third = earned("canada", (3, 0, 0, 0), "winners", "best-of-breed", group={"Amber": {"place": 3, "breeds": 10}})
    first = earned("canada", (3, 0, 0, 0), "winners", "best-of-breed", group={"Amber": {"place": 1, "breeds": 10}})
    assert (alone, third, first) == (2, 4, 5)


def test_a_group_place_needs_best_of_breed() -> None:
    # Canadian Kennel Club championship section: a class dog that is best of breed and places.
    result = [{"dog": "Amber", "sex": "dog", "wins": ["winners"]}]
    group = {"Amber": {"place": 1, "breeds": 13}}
    assert earned("canada", (3, 0, 0, 0), "winners", group=group) == 2
    assert ("group-place-without-best-of-breed", "refuses") in said("canada", (3, 0, 0, 0), result, group=group)


@pytest.mark.parametrize("numbers", [(1, 0, 0, 0), (3, 7, 2, 1), (40, 40, 9, 9)])
def test_best_in_show_gives_five_points_in_all(numbers: tuple[int, ...]) -> None:
    # Canadian Kennel Club championship section and a breed club: five in total, breed and group points included.
    won = {"group": {"Amber": {"place": 1, "breeds": 20}}, "best_in_show": "Amber"}
    assert earned("canada", numbers, "winners", "best-of-breed", **won) == 5


@pytest.mark.parametrize("number", [*[(1, 6), (2, 7), (5, 10), (10, 15), (19, 24), (20, 25), (21, 25), (80, 25)]])
def test_an_australian_challenge_gives_five_and_one_for_each_of_the_sex(number: tuple[int, int]) -> None:
    # Australian clubs' pages: 1 dog 6 points, 5 dogs 10, 10 dogs 15, at most 25.
    assert earned("australia", (number[0], 3), "challenge") == number[1]


def test_the_australian_worked_example_comes_out() -> None:
    # Australian hound club and an article on the title: 5 dogs, 4 bitches; challenges 10 and 9, best of breed 14.
    results = [
        {"dog": "Amber", "sex": "dog", "wins": ["challenge", "best-of-breed"]},
        {"dog": "Bryony", "sex": "bitch", "wins": ["challenge"]},
    ]
    answer = points({"rules": "australia", "breed": breed("australia", (5, 4)), "results": results})
    assert answer["points"] == {"Amber": 14, "Bryony": 9}
    assert earned("australia", (5, 4), "challenge") == 10


def test_best_in_group_gives_twenty_five_and_no_dog_gets_more() -> None:
    # Article on the Australian title.
    assert earned("australia", (5, 4), "challenge", "best-of-breed", "best-in-group") == 25
    assert earned("australia", (30, 30), "challenge", "best-of-breed") == 25


@pytest.mark.parametrize("rules", ["canada", "australia"])
def test_a_dog_that_won_nothing_has_no_points(rules: str) -> None:
    assert earned(rules, (5,) * len(COUNTS[rules])) == 0


@pytest.mark.parametrize("rules", ["canada", "australia"])
def test_a_winner_where_nobody_competed_is_refused(rules: str) -> None:
    numbers = (0,) * len(COUNTS[rules])
    result = [{"dog": "Amber", "sex": "dog", "wins": [WINS[rules][0]]}]
    assert earned(rules, numbers, WINS[rules][0]) == 0
    assert said(rules, numbers, result) == [("winner-not-counted", "refuses")]


def test_an_award_given_to_two_dogs_is_said() -> None:
    results = [
        {"dog": dog, "sex": sex, "wins": wins}
        for dog, sex, wins in (
            ("Amber", "dog", ["winners", "best-of-breed"]),
            ("Bryony", "bitch", ["winners", "best-of-breed"]),
        )
    ]
    answer = points({"rules": "canada", "breed": breed("canada", (3, 3, 0, 0)), "results": results})
    twice = [finding["facts"] for finding in answer["why"] if finding["code"] == "award-given-twice"]
    assert twice == [{"win": "best-of-breed", "dogs": ["Amber", "Bryony"]}]


def test_best_of_opposite_sex_of_the_same_sex_is_said() -> None:
    results = [
        {"dog": "Amber", "sex": "dog", "wins": ["winners", "best-of-breed"]},
        {"dog": "Basil", "sex": "dog", "wins": ["best-opposite-sex"]},
    ]
    assert ("opposite-sex-is-the-same", "warns") in said("canada", (3, 3, 0, 0), results)


@st.composite
def shows(draw: st.DrawFn) -> tuple[str, tuple[int, ...], list[str], str]:
    rules = draw(st.sampled_from(sorted(WINS)))
    numbers = tuple(draw(st.lists(st.integers(1, 30), min_size=len(COUNTS[rules]), max_size=len(COUNTS[rules]))))
    wins = draw(st.lists(st.sampled_from(WINS[rules]), min_size=1, unique=True))
    return rules, numbers, wins, draw(st.sampled_from(["dog", "bitch"]))


@given(shows(), st.integers(0, 3))
def test_points_never_fall_when_a_competitor_is_added(
    show: tuple[str, tuple[int, ...], list[str], str], at: int
) -> None:
    rules, numbers, wins, sex = show
    more = tuple(number + (index == at % len(numbers)) for index, number in enumerate(numbers))
    assert earned(rules, numbers, *wins, sex=sex) <= earned(rules, more, *wins, sex=sex)


@given(shows(), st.data())
def test_an_absent_dog_never_changes_the_points(
    show: tuple[str, tuple[int, ...], list[str], str], data: st.DataObject
) -> None:
    # Canadian Kennel Club championship section: absent, disqualified, dismissed and excused dogs are not counted.
    rules, numbers, wins, sex = show
    absent = tuple(data.draw(st.integers(0, 20)) for _ in numbers)
    entered = tuple(number + away for number, away in zip(numbers, absent, strict=True))
    left_out = breed(rules, absent)
    assert earned(rules, numbers, *wins, sex=sex) == earned(rules, entered, *wins, sex=sex, not_counted=left_out)


@given(shows())
def test_a_further_win_never_lowers_the_points_nor_lifts_them_over_the_cap(
    show: tuple[str, tuple[int, ...], list[str], str],
) -> None:
    rules, numbers, wins, sex = show
    most = {"canada": 5, "australia": 25}[rules]
    found = [earned(rules, numbers, *wins[: count + 1], sex=sex) for count in range(len(wins))]
    assert found == sorted(found)
    assert found[-1] <= most


@given(st.integers(1, 60), st.integers(0, 60))
def test_canadian_points_agree_with_a_plain_reading_of_the_table(class_dogs: int, rest: int) -> None:
    total = class_dogs + rest
    plain = 0 if total < 2 else 1 if total < 3 else 2 if total < 6 else 3 if total < 10 else 4 if total < 13 else 5
    assert earned("canada", (class_dogs, rest, 0, 0), "winners", "best-of-winners") == plain
