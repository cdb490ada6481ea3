"""A dog over time: no change is called real that clicks alone may bring about, and the young are marked as growing."""

from dataclasses import replace
from datetime import date

import pytest

from ringside.photos.over_time import Reading, change_words, charts
from scoring.rules.ages import completed_months
from tests.photos.sending import LANDMARKS, kept_photo, signed_in
from tests.shows_for_tests import small_show

BEFORE = Reading(date(2025, 3, 1), "croup-slope", 30.0, 1.0, "deg", None, "a", False)


def after(value: float, sd: float = 1.0, **more) -> Reading:
    return replace(BEFORE, day=date(2026, 3, 1), value=value, sd=sd, **more)


@pytest.mark.parametrize(
    ("value", "words"),
    # Two independent readings with SD 1 differ with SD sqrt(2): 1.96 sqrt(2) = 2.77 degrees.
    [(32.7, "no real change"), (27.3, "no real change"), (32.9, "2.9° more"), (27.1, "2.9° less")],
)
def test_a_difference_below_the_least_real_change_is_none(value, words):
    assert words in change_words(BEFORE, after(value))


def test_the_less_sure_of_two_readings_widens_what_counts_as_none():
    # 1.96 sqrt(1 + 9) = 6.2 degrees.
    assert "no real change" in change_words(BEFORE, after(36.0, sd=3.0))
    assert "6.4° more" in change_words(BEFORE, after(36.4, sd=3.0))


def test_ratios_whose_sd_is_of_the_logarithm_are_compared_as_logarithms():
    before = replace(BEFORE, code="upper-arm-ratio", value=1.0, sd=0.05, unit="ratio")
    # exp(1.96 sqrt(2) 0.05) = 1.149
    assert "no real change" in change_words(before, replace(before, value=1.14))
    assert "0.16 more" in change_words(before, replace(before, value=1.16))


@pytest.mark.parametrize(
    ("born", "day", "months"),
    [
        (date(2024, 1, 31), date(2025, 7, 30), 17),
        (date(2024, 1, 31), date(2025, 7, 31), 18),
        (date(2024, 5, 1), date(2024, 5, 1), 0),
    ],
)
def test_age_counts_in_whole_months(born, day, months):
    assert completed_months(born, day) == months


@pytest.mark.django_db
@pytest.mark.both_databases
def test_readings_are_joined_by_day_and_the_young_dog_is_marked_as_growing():
    at = small_show()
    ada, dog = at.accounts["ada"], at.entries[0].dog  # born on 1 May 2022
    kept_photo(ada, dog, taken_on="2025-06-01")
    kept_photo(ada, dog, taken_on="2023-02-01", landmarks={**LANDMARKS, "pin-bone": [330, 350]})
    kept_photo(ada, dog, taken_on=None)
    by_code = {chart.code: chart for chart in charts(dog, dog.photos.all())}
    croup = by_code["croup-slope"]
    assert [bar.reading.day.year for bar in croup.bars] == [2023, 2025]
    assert [bar.reading.is_growing for bar in croup.bars] == [True, False]
    assert croup.bars[0].x < croup.bars[1].x
    assert all(bar.high < bar.y < bar.low for bar in croup.bars)
    assert "less; the dog was still growing" in croup.changes[0]
    assert "no real change" in by_code["front-angle"].changes[0]
    page = signed_in(ada).get(f"/photos/dogs/{dog.pk}/over-time/").content.decode()
    for words in (
        "1 photo without a day is left out",
        "still growing",
        "No real change".lower(),
        "nobody has measured",
    ):
        assert words in page
