"""Titles: what each asks for, on its edge and one short of it."""

from datetime import date, timedelta
from itertools import permutations
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scoring.rules.doors import titles
from scoring.rules.titles import most_judges_apart


def win(award: str, day: str, judge: str, country: str = "Norland", **more: Any) -> dict[str, Any]:
    return {"award": award, "date": day, "judge": judge, "country": country, **more}


def answer(rules: str, title: str, wins: list[dict[str, Any]]) -> dict[str, Any]:
    said = titles({"rules": rules, "wins": wins})["titles"]
    found: dict[str, Any] = next(one for one in said if one["title"] == title)
    return found


def gained(rules: str, title: str, wins: list[dict[str, Any]]) -> bool:
    found = answer(rules, title, wins)
    assert found["gained"] == all(finding["severity"] != "refuses" for finding in found["missing"])
    return bool(found["gained"])


def lacks(rules: str, title: str, wins: list[dict[str, Any]], route: str) -> list[str]:
    missing = answer(rules, title, wins)["missing"]
    return [finding["code"] for finding in missing if finding["facts"]["route"] == route]


CACIBS = [
    win("cacib", "2011-01-01", "Judge A", "Norland"),
    win("cacib", "2011-05-01", "Judge B", "Sudland"),
    win("cacib", "2011-09-01", "Judge C", "Westland"),
    win("cacib", "2012-01-01", "Judge A", "Norland"),
]
INTERNATIONAL = ("fci", "international-champion")


def test_four_cacibs_in_three_countries_under_three_judges_over_a_year_and_a_day_are_enough() -> None:
    # FCI International Championship rules; their own example: 1 January 2011 to 1 January 2012 counts.
    assert gained(*INTERNATIONAL, CACIBS)
    assert answer(*INTERNATIONAL, CACIBS)["missing"] == []


@pytest.mark.parametrize(
    ("at", "change", "lack"),
    [
        (3, {"date": "2011-12-31"}, "span-missing"),
        (2, {"country": "Norland"}, "countries-missing"),
        (2, {"judge": "Judge A"}, "judges-missing"),
        (1, {"award": "reserve-cacib"}, "wins-missing"),
        (2, {"judge": "  judge   a "}, "judges-missing"),
    ],
)
def test_one_condition_short_is_no_international_champion(at: int, change: dict[str, str], lack: str) -> None:
    wins = [{**one, **change} if index == at else one for index, one in enumerate(CACIBS)]
    assert not gained(*INTERNATIONAL, wins)
    assert lack in lacks(*INTERNATIONAL, wins, "without-working-trial")


@pytest.mark.parametrize("first", ["1996-01-01", "2011-01-01", "2024-03-01", "2023-03-01"])
def test_a_year_and_a_day_ends_on_the_same_day_a_year_later(first: str) -> None:
    # FCI International Championship rules: 1 January 1996 to 1 January 1997, and 2011 to 2012.
    start = date.fromisoformat(first)
    for days, expected in ((0, True), (-1, False)):
        last = start.replace(year=start.year + 1) + timedelta(days=days)
        wins = [{**CACIBS[0], "date": first}, *CACIBS[1:3], {**CACIBS[3], "date": last.isoformat()}]
        wins[1:3] = [{**one, "date": first} for one in wins[1:3]]
        assert gained(*INTERNATIONAL, wins) is expected


def test_with_a_working_trial_two_cacibs_are_enough() -> None:
    # FCI International Championship rules: 2 certificates, 2 countries, 2 judges, a year and a day, trial result.
    two = [CACIBS[0], {**CACIBS[1], "date": "2012-01-01"}]
    assert not gained(*INTERNATIONAL, two)
    assert gained(*INTERNATIONAL, [*two, win("working-trial", "2011-06-01", "Judge T")])


@pytest.mark.parametrize(
    ("award", "title"),
    [("cacib-j", "international-junior-champion"), ("cacib-v", "international-veteran-champion")],
)
def test_three_junior_or_veteran_certificates_gain_their_title_from_2023_on(award: str, title: str) -> None:
    # FCI circular 44/2022: 3 certificates, 3 countries, 3 judges, counted from 1 January 2023; no span is asked.
    three = [win(award, "2023-01-01", f"Judge {name}", f"{name}land") for name in "ABC"]
    early = [*three[:2], {**three[2], "date": "2022-12-31"}]
    assert gained("fci", title, three)
    assert lacks("fci", title, early, "certificates") == ["wins-missing", "countries-missing", "judges-missing"]


CHAMPION = "national-champion"


def certificates(
    judges: str, reserves: str = "", day: str = "2023-07-01", age: int | None = 20
) -> list[dict[str, Any]]:
    return [win("challenge-certificate", day, judge, age_months=age) for judge in judges] + [
        win("reserve-challenge-certificate", day, judge, age_months=age) for judge in reserves
    ]


@pytest.mark.parametrize(
    ("judges", "reserves", "expected"),
    [
        ("ABC", "", True),
        ("AAB", "", False),
        ("AABC", "", True),
        ("AB", "", False),
        ("AB", "CDEFG", True),
        ("AB", "CDEF", False),
        ("AB", "CDEFA", False),
        ("AB", "ACDEFG", True),
        ("A", "BCDEFGHI", False),
        ("AA", "CDEFGH", False),
    ],
)
def test_british_champions_have_three_certificates_or_two_and_five_reserves(
    judges: str, reserves: str, expected: bool
) -> None:
    # The Kennel Club, May 2023: 3 certificates under 3 judges; or 2 and 5 reserves, all from 7 different judges.
    assert gained("united-kingdom", CHAMPION, certificates(judges, reserves)) is expected


def test_reserves_count_from_july_2023() -> None:
    # The Kennel Club, May 2023: reserves won from 1 July 2023.
    late = certificates("AB", "CDEFG")
    early = [*late[:-1], {**late[-1], "date": "2023-06-30"}]
    old_certificates = [{**one, "date": "2021-05-01"} for one in late[:2]]
    assert gained("united-kingdom", CHAMPION, [*old_certificates, *late[2:]])
    assert not gained("united-kingdom", CHAMPION, early)


@pytest.mark.parametrize(("age", "expected"), [(None, False), (10, False), (13, True)])
def test_one_certificate_must_be_won_over_twelve_months_of_age(age: int | None, expected: bool) -> None:
    # The Kennel Club, May 2023: one of them when over 12 months.
    wins = [*certificates("AB", age=9), *certificates("C", age=age)]
    assert gained("united-kingdom", CHAMPION, wins) is expected


def test_a_judge_of_both_kinds_stands_for_one_of_them() -> None:
    # The Kennel Club, May 2023: all from 7 different judges.
    assert lacks("united-kingdom", CHAMPION, certificates("AB", "BCDEF"), "certificates-and-reserves") == [
        "judges-apart-missing"
    ]


def points(*shows: tuple[str, int], award: str = "winners", age: int | None = 24) -> list[dict[str, Any]]:
    first = date(2025, 1, 4)
    return [
        win(award, (first + timedelta(days=7 * week)).isoformat(), judge, points=earned, age_months=age)
        for week, (judge, earned) in enumerate(shows)
    ]


@pytest.mark.parametrize(
    ("shows", "expected"),
    [
        ([("A", 5), ("B", 4), ("C", 1)], True),
        ([("A", 5), ("B", 3), ("C", 1)], False),
        ([("A", 5), ("B", 5)], False),
        ([("A", 5), ("B", 5), ("C", 0)], False),
        ([(judge, 1) for judge in "ABCDEFGHIJ"], False),
        ([*[(judge, 1) for judge in "ABCDEFGH"], ("I", 2)], True),
    ],
)
def test_a_canadian_champion_has_ten_points_three_judges_and_one_win_of_two(
    shows: list[tuple[str, int]], expected: bool
) -> None:
    # Canadian Kennel Club championship section: 10 points, 3 judges, one win of 2 points at breed or group level.
    assert gained("canada", CHAMPION, points(*shows)) is expected


def test_two_awards_of_one_show_count_once() -> None:
    # Canadian Kennel Club championship section: points of a show are looked up once, not added.
    one_show = [win(award, "2025-01-04", "A", points=5) for award in ("winners", "best-of-breed")]
    others = points(("B", 2), ("C", 2))
    assert lacks("canada", CHAMPION, [*one_show, *others], "points") == ["points-missing"]
    two_shows = [{**one, "show": f"ring {index}"} for index, one in enumerate(one_show)]
    assert gained("canada", CHAMPION, [*two_shows, *others])


@pytest.mark.parametrize(
    ("shows", "age", "expected"),
    [
        ([(judge, 25) for judge in "ABCD"], 24, True),
        ([(judge, 25) for judge in "ABCD"], 11, False),
        ([(judge, 25) for judge in "ABCD"], None, False),
        ([(judge, 25) for judge in "ABC"], 24, False),
        ([*[(judge, 25) for judge in "ABC"], ("D", 24)], 24, False),
        ([(judge, 10) for judge in "ABCDEFGHIJ"], 24, True),
        ([("A", 50), ("B", 50), ("C", 50)], 24, False),
    ],
)
def test_an_australian_champion_has_a_hundred_points(
    shows: list[tuple[str, int]], age: int | None, expected: bool
) -> None:
    # Australian clubs' pages: 100 points, 25 of them after 12 months, at least 4 shows, at most 25 a show.
    assert gained("australia", CHAMPION, points(*shows, award="challenge", age=age)) is expected


def test_twenty_five_australian_points_must_be_won_after_twelve_months() -> None:
    # Australian clubs' pages.
    young = points(*[(judge, 25) for judge in "ABCD"], award="challenge", age=8)
    grown = [{**one, "date": "2026-01-03", "age_months": 20} for one in young[:1]]
    assert lacks("australia", CHAMPION, young, "points") == ["points-missing"]
    assert gained("australia", CHAMPION, [*young, *grown])


def test_what_is_known_from_memory_only_is_noted_and_holds_nothing_back() -> None:
    one_judge = points(*[("A", 25)] * 4, award="challenge")
    found = answer("australia", CHAMPION, one_judge)
    assert found["gained"]
    assert [(one["code"], one["severity"], one["facts"]["verified"]) for one in found["missing"]] == [
        ("judges-missing", "notes", "memory")
    ]


@pytest.mark.parametrize(("wins", "expected"), [(40, True), (39, False)])
def test_an_australian_grand_champion_has_a_thousand_points(wins: int, expected: bool) -> None:
    # Australian clubs' pages.
    shows = [(f"Judge {count % 6}", 25) for count in range(wins)]
    assert gained("australia", "grand-champion", points(*shows, award="best-in-group")) is expected


@pytest.mark.parametrize(
    ("with_certificates", "without", "age", "expected"),
    [(6, 7, 12, True), (1, 22, 12, True), (0, 25, 12, False), (7, 6, 12, False), (6, 7, 19, False), (6, 7, 5, False)],
)
def test_a_junior_warrant_has_twenty_five_points_of_both_kinds_by_eighteen_months(
    with_certificates: int, without: int, age: int, expected: bool
) -> None:
    # The Kennel Club, Junior Warrant from 2018: 25 points at 6 to 18 months, 3 from the one kind and 7 from the other.
    kinds = (("first-with-certificates", with_certificates, 3), ("first-without-certificates", without, 1))
    wins = [
        one
        for award, count, each in kinds
        for one in points(*[(f"Judge {number}", each) for number in range(count)], award=award, age=age)
    ]
    assert gained("united-kingdom", "junior-warrant", wins) is expected


def test_an_open_show_gives_a_junior_one_point() -> None:
    # The Kennel Club, Junior Warrant from 2018: only 1 point an open show.
    twice = [win("first-without-certificates", "2025-01-04", "A", points=1, age_months=10)] * 7
    missing = answer("united-kingdom", "junior-warrant", twice)["missing"]
    assert [finding["facts"]["have"] for finding in missing] == [1, 0, 1]


@given(st.permutations(CACIBS), st.lists(st.sampled_from(CACIBS), max_size=4))
def test_order_and_further_wins_never_take_a_title_away(wins: list[dict[str, Any]], more: list[dict[str, Any]]) -> None:
    assert gained(*INTERNATIONAL, [*wins, *more])


SLOTS = st.lists(st.frozensets(st.sampled_from("ABCDE"), max_size=3), max_size=5)


@given(SLOTS)
def test_judges_apart_agrees_with_trying_every_order(slots: list[frozenset[str]]) -> None:
    orders = permutations("ABCDE", len(slots))
    tried = (sum(judge in slot for judge, slot in zip(order, slots, strict=True)) for order in orders)
    assert max(tried) == most_judges_apart(slots)
