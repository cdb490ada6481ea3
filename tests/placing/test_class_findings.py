"""Where the judge's grades and places disagree with the rules or with the judge's own sheets."""

import pytest
from hypothesis import given

from scoring.placing.doors import place
from tests.placing.classes import answered, classes, found, sheet

EXC, VG, G = "excellent", "very-good", "good"


def placed(*grades):
    """Dogs with these grades in places 1, 2, ... and nothing marked."""
    return answered(*[sheet(number, grade, number) for number, grade in enumerate(grades, 1)])


def severities(answer, code):
    return {finding["severity"] for finding in answer["findings"] if finding["code"] == code}


@pytest.mark.parametrize(
    ("grades", "pairs"),
    [
        ([EXC, VG, EXC, VG], [[2, 3]]),
        ([VG, EXC, EXC, G], [[1, 2], [1, 3]]),
        ([EXC, EXC, VG, VG], []),
        ([G, VG, EXC], [[1, 2], [1, 3], [2, 3]]),
    ],
)
def test_every_inverted_pair_is_named(grades, pairs):
    # Grade and place: worked example of the first two rows
    assert [facts["places"] for facts in found(placed(*grades), "grade-inversion")] == pairs


def test_a_fourth_place_below_very_good_is_named():
    # VDH Zuchtschau-Ordnung s. 19: no place below Very Good
    [facts] = found(placed(VG, EXC, EXC, G), "placed-below-required-grade")
    assert facts == {"entry": 4, "place": 4, "grade": "good", "least": "very-good"}


def test_bodies_that_ask_no_grade_have_no_grade_too_low():
    answer = answered(sheet(1, None, 1), rules="united-kingdom")
    assert answer["findings"] == []


@pytest.mark.parametrize(
    "without_right",
    [
        {"presence": "absent"},
        {"presence": "withdrawn", "grade": EXC},
        {"presence": "excused"},
        {"grade": "disqualified", "reason": "invented"},
        {"grade": "cannot-be-judged", "reason": "invented"},
    ],
)
def test_a_place_without_right_refuses(without_right):
    answer = answered({"entry": 7, "marks": {}, "judge_place": 1, **without_right})
    assert [facts["entry"] for facts in found(answer, "placed-without-right")] == [7]
    assert severities(answer, "placed-without-right") == {"refuses"}


def test_a_fifth_place_is_one_too_many():
    # ENCI 2023 art. 2; VDH s. 19: places 1 to 4
    answer = placed(EXC, EXC, EXC, EXC, EXC)
    assert found(answer, "too-many-places") == [{"given": 5, "most": 4, "beyond": [5]}]
    assert severities(answer, "too-many-places") == {"refuses"}
    assert found(placed(EXC, EXC, EXC, EXC), "too-many-places") == []


def test_a_place_given_twice_refuses():
    answer = answered(sheet(1, EXC, 1), sheet(2, EXC, 2), sheet(3, EXC, 2))
    assert found(answer, "places-not-in-order") == [{"twice": [2], "left_out": []}]
    assert severities(answer, "places-not-in-order") == {"refuses"}


def test_a_place_left_out_only_warns():
    answer = answered(sheet(1, EXC, 1), sheet(2, EXC, 3))
    assert found(answer, "places-not-in-order") == [{"twice": [], "left_out": [2]}]
    assert severities(answer, "places-not-in-order") == {"warns"}


@pytest.mark.parametrize("grade", ["disqualified", "cannot-be-judged"])
@pytest.mark.parametrize("reason", [None, "", "  "])
def test_a_disqualification_without_its_reason_refuses(grade, reason):
    # FCI Regulations for Dog Shows art. 6; Dutch judges' association, December 2016
    answer = answered(sheet(1, grade, reason=reason))
    assert found(answer, "reason-missing") == [{"entry": 1, "grade": grade}]
    assert severities(answer, "reason-missing") == {"refuses"}
    assert found(answered(sheet(1, grade, reason="does not move")), "reason-missing") == []


def test_an_excellent_needs_no_reason():
    assert found(answered(sheet(1, EXC)), "reason-missing") == []


SHY = {"choices": {"temperament": "shy"}}


@pytest.mark.parametrize(
    ("decided", "expected"),
    [
        (sheet(1, EXC, **SHY), [1]),
        (sheet(1, "cannot-be-judged", reason="invented", **SHY), [1]),
        (sheet(1, None, 1, **SHY), [1]),
        (sheet(1, "disqualified", reason="shy", **SHY), []),
        (sheet(1, None, **SHY), []),
        (sheet(1, None, presence="absent", **SHY), []),
    ],
)
def test_a_disqualifying_fault_is_acted_on_or_named(decided, expected):
    # Dutch judges' association, December 2016: fear and aggression are a disqualification, not "cannot be judged"
    found_for = [facts["entry"] for facts in found(answered(decided), "disqualifying-fault-not-acted-on")]
    assert found_for == expected


def test_the_points_that_disqualify_are_named():
    decided = sheet(1, EXC, sex="dog", yes={"testicles": False}, **SHY)
    [facts] = found(answered(decided), "disqualifying-fault-not-acted-on")
    assert facts["points"] == ["testicles", "temperament"]


def test_a_puppy_may_still_be_small():
    small = {"sex": "dog", "numbers": {"height": 50}}
    puppy, adult = (answered(sheet(1, grade, **small), standard="german-shepherd-dog") for grade in ("promising", EXC))
    assert found(puppy, "disqualifying-fault-not-acted-on") == []
    assert [facts["points"] for facts in found(adult, "disqualifying-fault-not-acted-on")] == [["height"]]


def test_an_order_against_merit_is_noted_within_a_grade():
    answer = answered(sheet(1, EXC, 1, marks={"croup": 2}), sheet(2, EXC, 2, marks={"croup": 1}))
    [facts] = found(answer, "order-against-merit")
    assert facts["entries"] == [1, 2]
    assert facts["merits"][0] < facts["merits"][1]
    assert severities(answer, "order-against-merit") == {"notes"}


def test_merits_of_different_grades_are_not_compared():
    answer = answered(sheet(1, EXC, 1, marks={"croup": 2}), sheet(2, VG, 2, marks={"croup": 1}))
    assert found(answer, "order-against-merit") == []


def test_unequal_assessment_names_the_points():
    answer = answered(sheet(1, EXC, marks={"croup": 0, "reach": 1}), sheet(2, EXC, marks={"croup": 1}))
    [facts] = found(answer, "unequal-assessment")
    assert facts == {"points": ["reach"], "missing": [{"entry": 2, "points": ["reach"]}]}


def test_sheets_on_the_same_points_are_equally_assessed():
    answer = answered(sheet(1, EXC, marks={"croup": 0}), sheet(2, EXC, marks={"croup": 1}))
    assert found(answer, "unequal-assessment") == []


def test_the_sheet_of_an_absent_dog_makes_nothing_unequal():
    answer = answered(sheet(1, EXC, marks={"croup": 1}), sheet(2, None, presence="absent"))
    assert found(answer, "unequal-assessment") == []


def test_a_grade_these_rules_do_not_give_is_named():
    answer = answered(sheet(1, EXC), rules="united-kingdom")
    assert found(answer, "grade-not-used") == [{"entry": 1, "grade": EXC, "rules": "united-kingdom"}]


@given(classes(placed=False))
def test_who_places_as_proposed_is_told_nothing_of_the_order(asked):
    proposed = {one["entry"]: rank for rank, one in enumerate(place(asked)["proposed"], 1) if rank <= 4}
    sheets = [{**one, "judge_place": proposed.get(one["entry"])} for one in asked["sheets"]]
    codes = {finding["code"] for finding in place({**asked, "sheets": sheets})["findings"]}
    no_matter = {"placed-below-required-grade", "reason-missing", "unequal-assessment"}
    assert codes - no_matter <= {"disqualifying-fault-not-acted-on"}
