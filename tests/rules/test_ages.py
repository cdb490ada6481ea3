"""Ages count in calendar months; a day that a month does not have becomes the first of the next."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scoring.rules.ages import completed_months, completes_on, counting_day
from tests.rules.dogs import DAYS, reference_day


@pytest.mark.parametrize(
    ("born", "months", "completes"),
    [
        ("2026-01-15", 1, "2026-02-15"),
        ("2026-01-28", 1, "2026-02-28"),
        ("2026-01-29", 1, "2026-03-01"),
        ("2026-01-30", 1, "2026-03-01"),
        ("2026-01-31", 1, "2026-03-01"),
        ("2024-01-29", 1, "2024-02-29"),
        ("2024-01-30", 1, "2024-03-01"),
        ("2026-01-31", 2, "2026-03-31"),
        ("2026-01-31", 3, "2026-05-01"),
        ("2025-08-31", 6, "2026-03-01"),
        ("2025-05-31", 6, "2025-12-01"),
        ("2025-10-31", 18, "2027-05-01"),
        ("2024-02-29", 12, "2025-03-01"),
        ("2024-02-29", 48, "2028-02-29"),
        ("2018-02-28", 96, "2026-02-28"),
        ("2025-12-31", 2, "2026-03-01"),
        ("2026-06-13", 0, "2026-06-13"),
    ],
)
def test_a_count_that_ends_on_a_missing_day_completes_on_the_first_of_the_next_month(
    born: str, months: int, completes: str
) -> None:
    # Common practice of counting a year and a day, no source; design of this project.
    assert date.fromisoformat(completes) == completes_on(date.fromisoformat(born), months)


@given(st.dates(date(2019, 1, 1), date(2025, 1, 1)), st.integers(0, 30))
def test_the_day_of_completion_is_that_of_a_day_by_day_count(born: date, months: int) -> None:
    assert reference_day(born, months) == completes_on(born, months)


@given(DAYS, st.integers(0, 240))
def test_a_month_is_completed_on_its_day_and_not_the_day_before(born: date, months: int) -> None:
    day = completes_on(born, months)
    if day is None or day == born:
        return
    assert completed_months(born, day) >= months > completed_months(born, day - timedelta(days=1))


@given(DAYS, DAYS, DAYS)
def test_a_dog_never_grows_younger(born: date, one: date, other: date) -> None:
    early, late = sorted((one, other))
    assert completed_months(born, early) <= completed_months(born, late)


@given(DAYS, DAYS, st.integers(0, 240))
def test_the_dog_born_first_completes_first(one: date, other: date, months: int) -> None:
    elder, younger = sorted((one, other))
    first, second = completes_on(elder, months), completes_on(younger, months)
    assert second is None or (first is not None and first <= second)


def test_an_age_after_the_last_year_is_no_day() -> None:
    assert completes_on(date(9999, 6, 13), 6) == date(9999, 12, 13)
    assert completes_on(date(9999, 6, 13), 7) is None
    assert completes_on(date(9999, 10, 31), 1) == date(9999, 12, 1)


def test_the_rules_name_the_day_that_counts() -> None:
    saturday, sunday = date(2026, 6, 13), date(2026, 6, 14)
    assert counting_day("show-day", sunday, saturday) == sunday
    assert counting_day("day-before", sunday, saturday) == saturday
    assert counting_day("first-day-of-show", sunday, saturday) == saturday
    assert counting_day("day-before-first-day", sunday, saturday) == date(2026, 6, 12)


def test_the_day_before_the_first_day_of_the_calendar_is_that_day() -> None:
    assert counting_day("day-before", date.min, date.min) == date.min
