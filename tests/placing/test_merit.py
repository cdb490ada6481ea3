"""What the marks leave of a hundred."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scoring.placing.doors import merit
from scoring.placing.merit import merit_of, what_is_left
from scoring.standards.loader import load
from tests.placing.classes import STANDARDS, marks_of, two_sided

MARKED = st.sampled_from(STANDARDS).flatmap(lambda standard: st.tuples(st.just(standard), marks_of(standard)))
LOSS = {0: Fraction(0), 1: Fraction(1, 5), 2: Fraction(1, 2), 3: Fraction(1)}


def of(standard, marks):
    return merit({"standard": standard, "sex": "dog", "marks": marks})


def test_a_published_composite_is_the_weighted_mean_it_says_it_is():
    # Holstein Canada's published weights: mammary 40, feet and legs 28, dairy strength 20, rump 12;
    # class scores 86, 80, 84, 82 give 83.44
    scores = [(40, 86), (28, 80), (20, 84), (12, 82)]
    weighted = [(Fraction(weight), 1 - Fraction(score, 100)) for weight, score in scores]
    assert what_is_left(weighted) == Fraction("83.44")


def test_a_dog_without_a_mark_keeps_everything():
    assert of("boxer", {}) == {"merit": 100.0, "lost": [], "findings": []}


def test_a_mark_of_nought_loses_nothing_and_is_not_listed():
    assert of("boxer", {"croup": 0})["lost"] == []


@given(MARKED)
def test_merit_is_the_formula_written_out(marked):
    standard, marks = marked
    weights = {point.code: Fraction(point.weight) for point in load(standard).two_sided}
    lost = sum(weights[point] * LOSS[abs(mark)] for point, mark in marks.items())
    expected = 100 * (1 - lost / sum(weights.values()))
    assert merit_of(load(standard), marks).value == expected
    assert of(standard, marks)["merit"] == float(expected)


@given(MARKED)
def test_what_is_lost_is_listed_in_the_order_of_the_standard(marked):
    standard, marks = marked
    expected = [
        {"point": point, "mark": marks[point], "loss": float(LOSS[abs(marks[point])])}
        for point in two_sided(standard)
        if marks.get(point)
    ]
    assert of(standard, marks)["lost"] == expected


@given(MARKED, st.data())
def test_a_better_mark_never_lowers_merit(marked, data):
    standard, marks = marked
    point = data.draw(st.sampled_from(two_sided(standard)))
    mark = marks.get(point, 0)
    nearer = {**marks, point: mark - (mark > 0) + (mark < 0)}
    assert of(standard, nearer)["merit"] >= of(standard, marks)["merit"]


@given(MARKED)
def test_too_much_loses_as_surely_as_too_little(marked):
    standard, marks = marked
    mirrored = {point: -mark for point, mark in marks.items()}
    assert merit_of(load(standard), mirrored).value == merit_of(load(standard), marks).value


@pytest.mark.parametrize("standard", STANDARDS)
def test_a_dog_wrong_everywhere_keeps_nothing(standard):
    assert of(standard, dict.fromkeys(two_sided(standard), 3))["merit"] == 0.0


@given(MARKED)
def test_choices_teeth_and_numbers_do_not_enter(marked):
    standard, marks = marked
    asked = {"standard": standard, "sex": "dog", "marks": marks}
    more = {"choices": {"bite": "wry"}, "teeth_missing": [101, 204], "yes": {"testicles": False}}
    assert merit({**asked, **more})["merit"] == merit(asked)["merit"]
