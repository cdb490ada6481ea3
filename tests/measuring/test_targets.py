"""What a value is read against and what it then reads."""

from dataclasses import dataclass

import pytest

from scoring.measuring.definitions import CODES, MEASUREMENTS
from scoring.measuring.readings import reading_of, too_few_pixels
from scoring.measuring.rules_of_thumb import rules_of_thumb
from scoring.measuring.targets import Target, landmarks_named, target_of
from scoring.standards.loader import all_standards
from tests.measuring.asking import rows
from tests.measuring.dogs import pictured

DOG = pictured("standing-side")


@dataclass(frozen=True)
class Asked:
    """A figure as a standard gives it."""

    measurement: str
    value: float
    tolerance: float
    unit: str
    landmarks: str
    source: str = "an invented standard"
    verified: str = "read"


def measurement(code: str):
    return next(one for one in MEASUREMENTS if one.code == code)


def target(code: str, *figures: Asked) -> Target | None:
    return target_of(measurement(code), figures, rules_of_thumb())


def test_a_standards_figure_between_the_same_landmarks_goes_before_the_rule_of_thumb():
    found = target("front-angle", Asked("front-angle", 105, 5, "deg", "withers, point of shoulder, elbow"))
    assert (found.value, found.tolerance, found.kind) == (105, 5, "standard")
    assert (found.source, found.verified) == ("an invented standard", "read")


def test_an_angle_between_bones_is_no_target_for_points_on_the_skin():
    # FCI standard 144, Boxer: upper arm and shoulder blade at a right angle; between bones
    found = target("front-angle", Asked("front-angle", 105, 5, "deg", "bones"))
    assert found.kind == "rule-of-thumb"


def test_a_length_from_the_breastbone_is_no_target_for_one_from_the_point_of_shoulder():
    # FCI standard 147, Rottweiler: length from the breastbone to the ischial tuberosity
    words = "breastbone to ischial tuberosity, over height at withers"
    assert target("length-ratio", Asked("length-ratio", 1.15, 0, "ratio", words)) is None


def test_a_single_figure_has_our_tolerance_round_it_and_says_so():
    found = target("length-ratio", Asked("length-ratio", 1.0, 0, "ratio", LENGTH))
    assert (found.tolerance, found.tolerance_from) == (0.05, "ours")


def test_figures_for_dogs_and_for_bitches_both_lie_within_the_target():
    found = target(
        "length-ratio",
        Asked("length-ratio", 1.025, 0.025, "ratio", LENGTH),
        Asked("length-ratio", 1.05, 0.05, "ratio", LENGTH),
    )
    assert (found.value, found.tolerance) == (pytest.approx(1.05), pytest.approx(0.05))


LENGTH = "point of shoulder to point of buttock, over height at withers"


def test_a_figure_in_another_unit_is_no_target():
    assert target("length-ratio", Asked("length-ratio", 100, 0, "percent", LENGTH)) is None


@pytest.mark.parametrize(
    ("words", "named"),
    [
        (LENGTH, {"point-of-shoulder", "pin-bone", "withers", "front-foot"}),
        ("withers to brisket, over height at withers", {"withers", "brisket", "front-foot"}),
        ("iliac crest to ischial tuberosity, to the level", {"croup-start", "pin-bone"}),
        ("withers, point-of-shoulder, elbow", {"withers", "point-of-shoulder", "elbow"}),
        ("bones", set()),
    ],
)
def test_a_standards_words_name_landmarks(words, named):
    assert landmarks_named(words, rules_of_thumb()) == named


def test_the_rules_of_thumb_are_those_of_the_trade():
    # Common practice without a source: about 90 degrees before and behind, the plumb line from the withers through the
    # front foot, reach to below the nose, equal triangles, a croup of about 30 degrees, straight columns
    found = rules_of_thumb()
    assert found.target == {
        "front-angle": 90,
        "rear-angle": 90,
        "croup-slope": 30,
        "front-set": 0,
        "front-reach": 0,
        "stride-balance": 1,
        "column-bend-left": 0,
        "column-bend-right": 0,
    }
    assert found.source == "common practice, no source"
    assert set(found.tolerance) == set(CODES)


def test_a_rule_of_thumb_is_labelled_so_beside_every_reading():
    row = rows(DOG)["rear-angle"]
    assert row["target"]["kind"] == "rule-of-thumb"
    assert row["target"]["landmarks"] == ["pin-bone", "stifle", "hock"]


def test_the_boxers_own_length_and_chest_are_its_targets():
    # FCI standard 144 (text 09.07.2008): square build; chest depth half of the height at the withers
    found = rows(DOG, standard="boxer")
    assert [
        (found[code]["target"]["value"], found[code]["target"]["kind"]) for code in ("length-ratio", "chest-depth")
    ] == [(1.0, "standard"), (0.5, "standard")]
    assert found["front-angle"]["target"]["kind"] == "rule-of-thumb"


def test_every_standard_can_be_measured_against():
    for standard in all_standards():
        for row in rows(DOG, standard=standard.code).values():
            assert row["target"] is None or row["target"]["tolerance"] > 0


TEN = Target(90, 10, "ours", "memory", "rule-of-thumb", "ours", ())


@pytest.mark.parametrize(
    ("value", "sd", "reading"),
    [
        (90, 2, "as-asked"),
        (100, 2, "as-asked"),
        (102, 2, "perhaps-too-much"),
        (78, 2, "perhaps-too-little"),
        (105, 2, "a-little-much"),
        (75, 2, "a-little-little"),
        (120, 2, "much-too-much"),
        (60, 2, "much-too-little"),
    ],
)
def test_a_reading_says_how_far_a_value_lies_from_its_target(value, sd, reading):
    assert reading_of(measurement("front-angle"), value, sd, TEN) == reading


def test_a_ratios_interval_is_multiplied_not_added():
    one = Target(1, 0.1, "ours", "memory", "rule-of-thumb", "ours", ())
    balance = measurement("stride-balance")
    assert reading_of(balance, 1.12, 0.04, one) == "perhaps-too-much"
    assert reading_of(balance, 1.15, 0.01, one) == "a-little-much"
    assert too_few_pixels(balance, 2.0, 0.03, one)
    assert not too_few_pixels(balance, 1.0, 0.03, one)
