"""Which classes are open: the published ages on their last days, and each clause by itself."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scoring.findings import Finding
from scoring.rules.ages import completes_on
from scoring.rules.classes import Dog, Occasion, class_eligibility, eligibility
from scoring.rules.loader import codes, load, overlay_codes
from scoring.rules.rulebook import ClassRule, RuleBook, Sex
from tests.rules.dogs import BIRTHDAYS, SHOWN_ON

BOOKS = [load(code) for code in codes()] + [
    load(code, overlays=(overlay,)) for code in codes() for overlay in overlay_codes(code)
]
EVERY_CLASS = [(book, rule) for book in BOOKS for rule in book.classes]
AGED_OUT = [(book, rule) for book, rule in EVERY_CLASS if rule.most_months]
DAY = timedelta(days=1)


def named(book: RuleBook, rule: ClassRule) -> str:
    return "-".join([book.code, *book.overlays, rule.code])


def fitting(rule: ClassRule, born: date) -> Dog:
    """A dog with every paper that a class asks for."""
    neutered = rule.neutered == "required"
    return Dog(born, rule.sexes[0], neutered, frozenset(rule.titles), frozenset(rule.documents))


def findings(book: RuleBook, rule: ClassRule, dog: Dog, shown_on: date, first_day: date | None = None) -> list[Finding]:
    return list(class_eligibility(book, rule, dog, Occasion(shown_on, first_day or shown_on)).findings)


def refusals(book: RuleBook, rule: ClassRule, dog: Dog, shown_on: date) -> list[str]:
    return [finding.code for finding in findings(book, rule, dog, shown_on) if finding.severity == "refuses"]


def open_classes(book: RuleBook, dog: Dog, shown_on: date = SHOWN_ON) -> list[str]:
    return [answer.class_code for answer in eligibility(book, dog, shown_on) if answer.open]


def born_months_before(months: int, day: date = SHOWN_ON) -> date:
    """The birthday of a dog that completes some months on a day in the middle of a month."""
    year, month = divmod(day.year * 12 + day.month - 1 - months, 12)
    return date(year, month + 1, day.day)


@pytest.mark.parametrize(("book", "rule"), EVERY_CLASS, ids=[named(*pair) for pair in EVERY_CLASS])
def test_one_day_too_young_is_refused_and_one_day_older_is_open(book: RuleBook, rule: ClassRule) -> None:
    # Whether the day before the show decides (VDH section 16(3); Finland, Sweden) or the day itself.
    late = 1 if book.age_day.startswith("day-before") else 0
    youngest = fitting(rule, born_months_before(rule.least_months) - late * DAY)
    younger = fitting(rule, youngest.born + DAY)
    assert refusals(book, rule, younger, SHOWN_ON) == ["too-young"]
    assert refusals(book, rule, youngest, SHOWN_ON) == []


@pytest.mark.parametrize(("book", "rule"), AGED_OUT, ids=[named(*pair) for pair in AGED_OUT])
def test_the_last_day_is_as_the_text_says_and_the_day_after_is_refused(book: RuleBook, rule: ClassRule) -> None:
    on_the_day = fitting(rule, born_months_before(rule.most_months or 0))
    codes_on_the_day = [finding.code for finding in findings(book, rule, on_the_day, SHOWN_ON)]
    expected = {"included": [], "excluded": ["too-old"], "open-question": ["upper-bound-open-question"]}
    assert expected[rule.last_day] == codes_on_the_day
    assert refusals(book, rule, fitting(rule, on_the_day.born - DAY), SHOWN_ON) == ["too-old"]
    assert refusals(book, rule, fitting(rule, on_the_day.born + DAY), SHOWN_ON) == []


@pytest.mark.parametrize(
    ("months", "expected"),
    [
        # FCI class list as published by a member; minor puppy: Belgian and Czech entry forms.
        (5, ["minor-puppy"]),
        (6, ["minor-puppy", "puppy"]),
        (7, ["puppy"]),
        (10, ["junior"]),
        (15, ["junior", "intermediate", "open"]),
        (18, ["junior", "intermediate", "open"]),
        (19, ["intermediate", "open"]),
        (24, ["intermediate", "open"]),
        (25, ["open"]),
        (95, ["open"]),
        (96, ["open", "veteran"]),
    ],
)
def test_the_fci_opens_the_classes_of_its_list(months: int, expected: list[str]) -> None:
    assert expected == open_classes(load("fci"), Dog(born_months_before(months), "dog"))


@pytest.mark.parametrize(
    ("months", "days_older", "expected"),
    [
        # The Kennel Club's class definitions: "six and not exceeding nine / twelve / eighteen calendar months".
        (9, 0, {"minor-puppy", "puppy", "junior"}),
        (9, 1, {"puppy", "junior"}),
        (12, 0, {"puppy", "junior"}),
        (12, 1, {"junior"}),
        (18, 0, {"junior"}),
        (18, 1, set()),
    ],
)
def test_the_united_kingdom_includes_the_last_day(months: int, days_older: int, expected: set[str]) -> None:
    dog = Dog(born_months_before(months) - days_older * DAY, "bitch")
    youngsters = {"minor-puppy", "puppy", "junior"}
    assert expected == youngsters.intersection(open_classes(load("united-kingdom"), dog))


@pytest.mark.parametrize(
    ("months", "expected"),
    [
        # Australian class list: "six and under nine", "nine and under eighteen".
        (3, ["baby-puppy"]),
        (6, ["minor-puppy", "puppy"]),
        (9, ["puppy", "junior"]),
        (12, ["junior"]),
        (18, ["intermediate"]),
        (36, []),
    ],
)
def test_australia_excludes_the_last_day(months: int, expected: list[str]) -> None:
    aged = {"baby-puppy", "minor-puppy", "puppy", "junior", "intermediate"}
    opened = open_classes(load("australia"), Dog(born_months_before(months), "bitch"))
    assert expected == [code for code in opened if code in aged]


def test_the_norwegian_veteran_is_seven_years_old_and_that_of_the_fci_eight() -> None:
    # Norwegian Kennel Club regulation summaries; FCI class list.
    seven = Dog(born_months_before(84), "dog")
    assert "veteran" in open_classes(load("fci", overlays=("norway",)), seven)
    assert "veteran" not in open_classes(load("fci"), seven)


@pytest.mark.parametrize(("months", "expected"), [(5, "minor-puppy"), (6, "minor-puppy"), (7, "puppy"), (9, "junior")])
def test_the_finnish_puppy_classes_meet_at_seven_months(months: int, expected: str) -> None:
    # Finnish class lists: minor puppy 5 to under 7, puppy 7 to under 9, junior 9 to under 18 months.
    dog = Dog(born_months_before(months) - DAY, "dog")
    assert open_classes(load("fci", overlays=("finland",)), dog) == [expected]


def test_a_finnish_dog_is_old_enough_the_day_before_the_show_starts() -> None:
    # Finnish class lists: lower limit reached at latest the day before the show starts.
    book = load("fci", overlays=("finland",))
    dog = Dog(born_months_before(9), "dog")
    saturday = eligibility(book, dog, SHOWN_ON + DAY, SHOWN_ON)
    later_show = eligibility(book, dog, SHOWN_ON + DAY, SHOWN_ON + DAY)
    assert [answer.open for answer in (saturday[2], later_show[2])] == [False, True]


def test_in_the_united_kingdom_the_first_day_of_the_show_counts() -> None:
    # The Kennel Club's class definitions: "on the first day of the show".
    book = load("united-kingdom")
    dog = Dog(born_months_before(6, SHOWN_ON + DAY), "dog")
    two_days = eligibility(book, dog, SHOWN_ON + DAY, SHOWN_ON)
    one_day = eligibility(book, dog, SHOWN_ON + DAY)
    assert [answers[0].open for answers in (two_days, one_day)] == [False, True]


def test_a_dog_born_on_the_thirty_first_is_six_months_old_on_the_first_of_march() -> None:
    puppy, dog = load("fci").class_rule("puppy"), Dog(date(2025, 8, 31), "dog")
    assert refusals(load("fci"), puppy, dog, date(2026, 2, 28)) == ["too-young"]
    assert refusals(load("fci"), puppy, dog, date(2026, 3, 1)) == []


def test_too_young_says_how_old_the_dog_is_and_when_it_may_come() -> None:
    german = load("fci", overlays=("germany",))
    dog = Dog(date(2025, 9, 13), "dog")
    [finding] = findings(german, german.class_rule("junior"), dog, SHOWN_ON)
    assert finding.as_json() == {
        "code": "too-young",
        "severity": "refuses",
        "facts": {
            "least_months": 9,
            "completed_months": 8,
            "counted_on": "2026-06-12",
            "first_possible_on": "2026-06-14",
            "verified": "read",
        },
    }


@given(st.sampled_from(EVERY_CLASS), BIRTHDAYS)
def test_the_first_possible_day_is_possible_and_the_day_before_is_not(
    pair: tuple[RuleBook, ClassRule], born: date
) -> None:
    book, rule = pair
    [finding, *_] = [*findings(book, rule, fitting(rule, born), born), None]
    assert finding is not None
    first = date.fromisoformat(finding.facts["first_possible_on"])
    assert refusals(book, rule, fitting(rule, born), first) == []
    assert refusals(book, rule, fitting(rule, born), first - DAY) == ["too-young"]


@given(st.sampled_from(AGED_OUT), BIRTHDAYS)
def test_the_last_possible_day_is_possible_and_the_day_after_is_not(
    pair: tuple[RuleBook, ClassRule], born: date
) -> None:
    book, rule = pair
    much_later = completes_on(born, 600) or date.max
    [finding] = [one for one in findings(book, rule, fitting(rule, born), much_later) if one.code == "too-old"]
    last = date.fromisoformat(finding.facts["last_possible_on"])
    assert refusals(book, rule, fitting(rule, born), last) == []
    assert refusals(book, rule, fitting(rule, born), last + DAY) == ["too-old"]


@given(st.sampled_from(EVERY_CLASS), BIRTHDAYS, st.lists(st.integers(0, 6000), min_size=3, max_size=8))
def test_a_class_opens_once_and_closes_once(pair: tuple[RuleBook, ClassRule], born: date, later: list[int]) -> None:
    book, rule = pair
    days = [born + timedelta(days=count) for count in sorted(later)]
    opened = "".join("o" if not refusals(book, rule, fitting(rule, born), day) else "-" for day in days)
    assert "o-o" not in opened.replace("oo", "o").replace("--", "-").strip("-")


def test_a_working_class_asks_for_the_working_certificate() -> None:
    # FCI class list: 15 months and the working certificate attached.
    fci, born = load("fci"), born_months_before(30)
    working = fci.class_rule("working")
    assert refusals(fci, working, Dog(born, "dog"), SHOWN_ON) == ["certificate-missing"]
    assert refusals(fci, working, Dog(born, "dog", certificates=frozenset({"WCC"})), SHOWN_ON) == []


@pytest.mark.parametrize("title", ["national-champion", "international-champion"])
def test_a_champion_class_asks_for_a_confirmed_title(title: str) -> None:
    # FCI class list: 15 months and a confirmed title.
    fci, born = load("fci"), born_months_before(30)
    champion = fci.class_rule("champion")
    assert refusals(fci, champion, Dog(born, "dog"), SHOWN_ON) == ["title-missing"]
    assert refusals(fci, champion, Dog(born, "dog", titles=frozenset({title})), SHOWN_ON) == []


def test_a_junior_title_opens_no_champion_class() -> None:
    dog = Dog(born_months_before(30), "dog", titles=frozenset({"international-junior-champion"}))
    assert "champion" not in open_classes(load("fci"), dog)


def test_a_title_must_be_confirmed_by_the_day_entries_close() -> None:
    # FCI class list: title confirmed by the official closing date.
    fci, closes_on = load("fci"), date(2026, 5, 1)
    dog = Dog(born_months_before(30), "dog", titles=frozenset({"national-champion"}))
    occasion = Occasion(SHOWN_ON, SHOWN_ON, closes_on)
    answer = class_eligibility(fci, fci.class_rule("champion"), dog, occasion)
    assert [(finding.code, finding.facts["confirmed_by"]) for finding in answer.findings] == [
        ("title-due-by-closing", "2026-05-01")
    ]
    assert answer.open


@pytest.mark.parametrize(("overlays", "noted"), [((), True), (("norway",), False)])
def test_whether_a_champion_may_stand_in_the_open_class_is_the_members(overlays: tuple[str, ...], noted: bool) -> None:
    # FCI class list: a confirmed champion uses the champion class; Norwegian summaries: foreign champions in open.
    book = load("fci", overlays=overlays)
    dog = Dog(born_months_before(30), "dog", titles=frozenset({"national-champion"}))
    said = [finding.code for finding in findings(book, book.class_rule("open"), dog, SHOWN_ON)]
    assert said == (["champion-must-use-champion-class"] if noted else [])
    assert "open" in open_classes(book, dog)


@pytest.mark.parametrize(("code", "barred"), [("fci", True), ("canada", True), ("united-kingdom", False)])
def test_neutered_dogs_are_barred_where_the_rules_say_so(code: str, barred: bool) -> None:
    # FCI show rules, Serbian copy; Canadian disqualification extracts; United Kingdom: from memory.
    book = load(code)
    dog = Dog(born_months_before(30), "dog", neutered=True)
    assert refusals(book, book.class_rule("open"), dog, SHOWN_ON) == (["neutered-not-allowed"] if barred else [])


@pytest.mark.parametrize(("neutered", "expected"), [(True, ["neuter"]), (False, ["open"])])
def test_australia_has_a_class_for_neuters(neutered: bool, expected: list[str]) -> None:
    # Australian class list.
    opened = open_classes(load("australia"), Dog(born_months_before(40), "bitch", neutered))
    assert [code for code in opened if code in ("open", "neuter")] == expected


def test_canada_has_a_baby_class_from_the_day_its_notice_names() -> None:
    # Canadian Kennel Club notice, 2021: from 1 July 2021.
    assert "baby-puppy" not in load("canada", date(2021, 6, 30)).class_order
    assert "baby-puppy" in load("canada", date(2021, 7, 1)).class_order


def test_a_class_limited_by_wins_says_that_they_are_not_looked_at() -> None:
    book = load("united-kingdom")
    assert [
        finding.code for finding in findings(book, book.class_rule("limit"), Dog(date(2024, 1, 1), "dog"), SHOWN_ON)
    ] == ["win-limit-not-checked"]


@given(st.sampled_from(BOOKS), st.sampled_from(["dog", "bitch"]), st.booleans())
def test_a_dog_born_after_the_show_may_enter_nothing(book: RuleBook, sex: Sex, neutered: bool) -> None:
    dog = Dog(SHOWN_ON + DAY, sex, neutered)
    answers = eligibility(book, dog, SHOWN_ON)
    assert [answer.findings[0].code for answer in answers] == ["not-born-yet"] * len(book.classes)
    assert open_classes(book, dog) == []
