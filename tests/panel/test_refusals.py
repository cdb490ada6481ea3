"""What a panel cannot be made of, and what it is warned about."""

import json

import pytest

from scoring.__main__ import answer
from scoring.bad_input import BadInput
from scoring.placing.kemeny import MOST_TANGLED
from scoring.placing.panel_door import METHODS, panel


@pytest.mark.parametrize(
    ("source", "code", "at"),
    [
        ({}, "missing-key", "method"),
        ({"method": "skating"}, "missing-key", "marks"),
        ({"method": "guess", "marks": {}}, "unknown-code", "method"),
        ({"method": ["skating"], "marks": {}}, "wrong-type", "method"),
        ({"method": "borda", "marks": []}, "wrong-type", "marks"),
        ({"method": "borda", "marks": {"7": 1}}, "wrong-type", "marks.7"),
        ({"method": "borda", "marks": {"7": []}}, "out-of-range", "marks.7"),
        ({"method": "borda", "marks": {"7": [1, None]}}, "wrong-type", "marks.7[1]"),
        ({"method": "borda", "marks": {"7": [1.5]}}, "wrong-type", "marks.7[0]"),
        ({"method": "borda", "marks": {"7": [True]}}, "wrong-type", "marks.7[0]"),
        ({"method": "borda", "marks": {"7": [0]}}, "out-of-range", "marks.7[0]"),
        ({"method": "skating", "marks": {"7": [1, 2], "8": [2]}}, "out-of-range", "marks.8"),
        ({"method": "skating", "marks": {str(i): [1] for i in range(101)}}, "too-large", "marks"),
    ],
)
def test_marks_that_cannot_be_used_are_refused_at_their_place(source, code, at):
    with pytest.raises(BadInput) as refused:
        panel(source)
    assert (refused.value.code, refused.value.at) == (code, at)


def turns(entries):
    """Three judges, each order the last turned by a third: every majority runs in a circle."""
    return {str(i): [(i + turn * entries // 3) % entries + 1 for turn in range(3)] for i in range(entries)}


def test_a_circle_of_twelve_entries_is_still_exact():
    assert panel({"method": "kemeny", "marks": turns(12)})["ties"] == [[str(i) for i in range(12)]]


def test_a_circle_beyond_the_limit_is_refused_by_kemeny_alone():
    marks = turns(MOST_TANGLED + 3)
    with pytest.raises(BadInput) as refused:
        panel({"method": "kemeny", "marks": marks})
    assert refused.value.code == "too-large"
    assert len(panel({"method": "skating", "marks": marks})["places"]) == len(marks)


def test_many_entries_without_a_circle_are_no_trouble_for_kemeny():
    # Two judges who differ on everything but the last entry: every order of the others is best.
    marks = {str(i): [i, 60 - i] for i in range(1, 60)} | {"last": [60, 60]}
    found = panel({"method": "kemeny", "marks": marks})
    assert (found["places"]["1"], found["places"]["last"]) == (30, 60)


def test_a_judge_who_gives_a_place_twice_is_named():
    found = panel({"method": "skating", "marks": {"7": [1, 1], "8": [2, 1], "9": [3, 3]}})
    [finding] = found["findings"]
    assert (finding["code"], finding["severity"]) == ("places-not-one-each", "warns")
    assert finding["facts"] == {"judge": 2, "repeated": [1]}


@pytest.mark.parametrize("method", METHODS)
def test_no_entries_make_an_empty_order(method):
    found = panel({"method": method, "marks": {}})
    assert (found["places"], found["ties"]) == ({}, [])


@pytest.mark.parametrize("method", METHODS)
def test_every_method_answers_through_the_command_line_door(method):
    found = answer("panel", json.dumps({"method": method, "marks": {"7": [1, 2, 1], "8": [2, 1, 2]}}))
    assert (found["method"], found["places"]) == (method, {"7": 1, "8": 2})
    json.dumps(found, allow_nan=False)
