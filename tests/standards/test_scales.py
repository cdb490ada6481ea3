"""Published scales of points become the weights, and the grades where they say so."""

from decimal import Decimal
from fractions import Fraction

import pytest

from scoring.placing.merit import grade_by_scale, merit_of
from tests.standards.scales import boston_terrier, hound


def test_the_boston_terriers_eleven_items_make_a_hundred():
    # AKC standard of the Boston Terrier, scale of points (showsightmagazine.com; breeds.ca)
    worths = [item.worth for item in boston_terrier().scale.items]
    assert worths == [10, 10, 15, 5, 5, 15, 10, 10, 5, 5, 10]
    assert sum(worths) == 100


def test_the_hounds_nine_items_make_a_hundred():
    # Hound scale (ennik.nl, harehound, breed 4)
    worths = [item.worth for item in hound().scale.items]
    assert worths == [20, 15, 5, 5, 5, 15, 20, 5, 10]
    assert sum(worths) == 100


@pytest.mark.parametrize("standard", [boston_terrier(), hound()], ids=["boston-terrier", "hound"])
def test_the_points_of_an_item_share_its_worth(standard):
    for item in standard.scale.items:
        assert sum(standard.point(code).weight for code in item.points) == item.worth


def test_a_published_scale_is_the_source_of_the_weights():
    assert {point.weight_source for point in boston_terrier().two_sided} == {"scale"}


def test_a_fully_lost_item_costs_its_points_of_the_hundred():
    assert merit_of(hound(), {"skull": 3}).value == 100 - 15
    assert merit_of(boston_terrier(), {"expression": -3, "feet": 3}).value == 100 - 10 - 5


@pytest.mark.parametrize(
    ("merit", "grade"),
    [
        ("100", "excellent"),
        ("90", "excellent"),
        ("89.9", "very-good"),
        ("80", "very-good"),
        ("79.99", "good"),
        ("70", "good"),
        ("69.9", "sufficient"),
        ("60", "sufficient"),
        ("59.9", None),
    ],
)
def test_the_hound_scale_grades_by_its_thresholds(merit, grade):
    # Excellent at least 90, Very Good 80, Good 70, Fair 60 (ennik.nl, harehound, breed 4)
    assert grade_by_scale(hound().scale, Fraction(Decimal(merit))) == grade


def test_a_scale_without_thresholds_gives_no_grade():
    assert grade_by_scale(boston_terrier().scale, Fraction(100)) is None
