"""The order the sheets propose."""

from hypothesis import given
from hypothesis import strategies as st

from scoring.placing.doors import place
from scoring.standards.loader import load
from tests.placing.classes import answered, classes, sheet
from tests.placing.reference import reference


def order(answer):
    return [(proposed["entry"], proposed["place"]) for proposed in answer["proposed"]]


@given(classes())
def test_the_order_is_that_of_comparing_every_dog_with_every_other(asked):
    places, tied = reference(asked)
    answer = place(asked)
    assert dict(order(answer)) == places
    assert {frozenset(tie) for tie in answer["ties"]} == tied


@given(classes(), st.randoms(use_true_random=False))
def test_the_order_of_the_sheets_does_not_matter(asked, random):
    shuffled = {**asked, "sheets": random.sample(asked["sheets"], len(asked["sheets"]))}
    assert place(shuffled) == place(asked)


@given(classes())
def test_mirrored_marks_propose_the_same_order(asked):
    sheets = [{**one, "marks": {point: -mark for point, mark in one["marks"].items()}} for one in asked["sheets"]]
    mirrored = place({**asked, "sheets": sheets})
    assert (mirrored["proposed"], mirrored["ties"]) == (place(asked)["proposed"], place(asked)["ties"])


@given(classes())
def test_the_judges_places_do_not_change_the_proposal(asked):
    unplaced = [{**one, "judge_place": None} for one in asked["sheets"]]
    assert place({**asked, "sheets": unplaced})["proposed"] == place(asked)["proposed"]


def test_grade_goes_before_merit():
    answer = answered(sheet(1, "very-good"), sheet(2, "excellent", marks={"reach": 3, "drive": 3}))
    assert order(answer) == [(2, 1), (1, 2)]


def test_merit_orders_dogs_of_one_grade():
    answer = answered(sheet(1, "excellent", marks={"reach": 2}), sheet(2, "excellent", marks={"reach": 1}))
    assert order(answer) == [(2, 1), (1, 2)]


def test_of_equal_merits_the_dog_that_loses_at_the_heavier_point_stands_behind():
    # All of two, and a fifth of five twice: both lose 2
    light, heavy = {"white": 3}, {"topline": 1, "front-angulation": 1}
    weights = {point.code: point.weight for point in load("boxer").two_sided}
    assert (weights["white"], weights["topline"], weights["front-angulation"]) == (2, 5, 5)
    answer = answered(sheet("heavy", "excellent", marks=heavy), sheet("light", "excellent", marks=light))
    assert order(answer) == [("light", 1), ("heavy", 2)]
    assert answer["ties"] == []


def test_a_tie_stays_a_tie_and_the_next_place_counts_both():
    alike = {"marks": {"croup": 1}}
    answer = answered(
        sheet(3, "excellent", **alike),
        sheet(1, "excellent", marks={"croup": -1}),
        sheet(2, "excellent", marks={"reach": 3}),
    )
    assert order(answer) == [(1, 1), (3, 1), (2, 3)]
    assert answer["ties"] == [[1, 3]]


def test_points_of_one_weight_break_no_tie():
    answer = answered(sheet(1, "excellent", marks={"reach": 2}), sheet(2, "excellent", marks={"drive": 2}))
    assert answer["ties"] == [[1, 2]]


def test_dogs_without_a_right_to_a_place_are_not_proposed():
    # FCI Regulations for Dog Shows: absent, disqualified and not judged dogs cannot be placed
    barred = [
        sheet("a", None, presence="absent"),
        sheet("b", "disqualified", reason="invented"),
        sheet("c", "cannot-be-judged", reason="invented"),
        sheet("d", "excellent", presence="withdrawn"),
        sheet("e", "excellent", presence="excused"),
    ]
    assert order(answered(*barred, sheet("f", "good"))) == [("f", 1)]


def test_the_order_goes_on_past_the_places_the_rules_give():
    answer = answered(*[sheet(number, "excellent", marks={"reach": 3, "croup": number % 4}) for number in range(6)])
    assert len(answer["proposed"]) == 6


def test_a_class_that_is_not_graded_is_ordered_by_merit():
    sheets = [sheet(1, marks={"croup": 2}), sheet(2)]
    assert order(answered(*sheets, rules="united-kingdom")) == [(2, 1), (1, 2)]


def test_puppy_grades_order_puppies():
    answer = answered(sheet(1, "promising"), sheet(2, "very-promising", marks={"croup": 3}), sheet(3, "less-promising"))
    assert order(answer) == [(2, 1), (1, 2), (3, 3)]


def test_no_sheets_make_no_proposal():
    assert answered() == {"proposed": [], "ties": [], "findings": []}
