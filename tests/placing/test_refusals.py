"""What the doors `merit` and `place` cannot be asked."""

import json
from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scoring.__main__ import answer
from scoring.bad_input import BadInput
from scoring.placing.doors import MOST_SHEETS, merit, place

ASKED = {"standard": "boxer", "sex": "dog", "marks": {}}
CLASS = {"rules": "fci", "standard": "boxer", "sheets": []}
NO = object()


def without(source, key):
    return {name: value for name, value in source.items() if name != key}


@pytest.mark.parametrize(
    ("said", "code", "at"),
    [
        ({"standard": NO}, "missing-key", "standard"),
        ({"sex": NO}, "missing-key", "sex"),
        ({"marks": NO}, "missing-key", "marks"),
        ({"standard": "unicorn"}, "unknown-code", "standard"),
        ({"standard": "../boxer"}, "unknown-code", "standard"),
        ({"standard": 144}, "wrong-type", "standard"),
        ({"sex": "male"}, "unknown-code", "sex"),
        ({"marks": []}, "wrong-type", "marks"),
        ({"marks": {"wings": 1}}, "unknown-code", "marks.wings"),
        ({"marks": {"coat-wave": 1}}, "unknown-code", "marks.coat-wave"),
        ({"marks": {"bite": 1}}, "wrong-type", "marks.bite"),
        ({"marks": {"croup": 4}}, "out-of-range", "marks.croup"),
        ({"marks": {"croup": -4}}, "out-of-range", "marks.croup"),
        ({"marks": {"croup": 1.0}}, "wrong-type", "marks.croup"),
        ({"marks": {"croup": True}}, "wrong-type", "marks.croup"),
        ({"marks": {"croup": "1"}}, "wrong-type", "marks.croup"),
        ({"marks": {"croup": None}}, "wrong-type", "marks.croup"),
        ({"choices": {"bite": "sideways"}}, "unknown-code", "choices.bite"),
        ({"choices": {"bite": 1}}, "wrong-type", "choices.bite"),
        ({"choices": {"croup": "flat"}}, "wrong-type", "choices.croup"),
        ({"choices": {"wings": "two"}}, "unknown-code", "choices.wings"),
        ({"teeth_missing": 105}, "wrong-type", "teeth_missing"),
        ({"teeth_missing": ["105"]}, "wrong-type", "teeth_missing[0]"),
        ({"teeth_missing": [105, 111]}, "unknown-code", "teeth_missing[1]"),
        ({"teeth_missing": [211]}, "unknown-code", "teeth_missing[0]"),
        ({"teeth_missing": [505]}, "unknown-code", "teeth_missing[0]"),
        ({"numbers": {"height": "tall"}}, "wrong-type", "numbers.height"),
        ({"numbers": {"height": -1}}, "out-of-range", "numbers.height"),
        ({"numbers": {"height": 10**400}}, "out-of-range", "numbers.height"),
        ({"numbers": {"chest-girth": 40}}, "unknown-code", "numbers.chest-girth"),
        ({"yes": {"testicles": 1}}, "wrong-type", "yes.testicles"),
        ({"yes": {"height": True}}, "wrong-type", "yes.height"),
    ],
)
def test_a_sheet_that_cannot_be_read_is_refused_at_its_place(said, code, at):
    source = {name: value for name, value in {**ASKED, **said}.items() if value is not NO}
    with pytest.raises(BadInput) as refused:
        merit(source)
    assert (refused.value.code, refused.value.at) == (code, at)


@pytest.mark.parametrize(
    ("said", "code", "at"),
    [
        ({"rules": NO}, "missing-key", "rules"),
        ({"standard": NO}, "missing-key", "standard"),
        ({"sheets": NO}, "missing-key", "sheets"),
        ({"rules": "mars"}, "unknown-code", "rules"),
        ({"on": "13.06.2026"}, "bad-date", "on"),
        ({"on": "2026-02-30"}, "bad-date", "on"),
        ({"sheets": {}}, "wrong-type", "sheets"),
        ({"sheets": [[]]}, "wrong-type", "sheets[0]"),
        ({"sheets": [{"marks": {}}]}, "missing-key", "sheets[0].entry"),
        ({"sheets": [{"entry": 1}]}, "missing-key", "sheets[0].marks"),
        ({"sheets": [{"entry": True, "marks": {}}]}, "wrong-type", "sheets[0].entry"),
        ({"sheets": [{"entry": 1.5, "marks": {}}]}, "wrong-type", "sheets[0].entry"),
        ({"sheets": [{"entry": 1, "marks": {}}, {"entry": 1, "marks": {}}]}, "id-reused", "sheets[1].entry"),
        ({"sheets": [{"entry": 1, "marks": {"wings": 0}}]}, "unknown-code", "sheets[0].marks.wings"),
        ({"sheets": [{"entry": 1, "marks": {}, "grade": "superb"}]}, "unknown-code", "sheets[0].grade"),
        ({"sheets": [{"entry": 1, "marks": {}, "presence": "late"}]}, "unknown-code", "sheets[0].presence"),
        ({"sheets": [{"entry": 1, "marks": {}, "sex": "male"}]}, "unknown-code", "sheets[0].sex"),
        ({"sheets": [{"entry": 1, "marks": {}, "reason": 5}]}, "wrong-type", "sheets[0].reason"),
        ({"sheets": [{"entry": 1, "marks": {}, "judge_place": 0}]}, "out-of-range", "sheets[0].judge_place"),
        ({"sheets": [{"entry": 1, "marks": {}, "judge_place": "1"}]}, "wrong-type", "sheets[0].judge_place"),
        ({"sheets": [{"entry": n, "marks": {}} for n in range(MOST_SHEETS + 1)]}, "too-large", "sheets"),
    ],
)
def test_a_class_that_cannot_be_read_is_refused_at_its_place(said, code, at):
    source = {name: value for name, value in {**CLASS, **said}.items() if value is not NO}
    with pytest.raises(BadInput) as refused:
        place(source)
    assert (refused.value.code, refused.value.at) == (code, at)


KEYS = st.sampled_from(["croup", "bite", "entry", "marks"])
JSON = st.recursive(
    st.none() | st.booleans() | st.integers(-5, 500) | st.floats(-9, 9) | st.text(max_size=5),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(KEYS, inner, max_size=3),
    max_leaves=6,
)
MEMBERS = ("rules", "on", "standard", "sex", "sheets", "marks", "choices", "teeth_missing", "numbers", "yes")


@pytest.mark.parametrize("verb", ["merit", "place"])
@given(st.dictionaries(st.sampled_from(MEMBERS), JSON, max_size=3))
def test_whatever_is_asked_is_answered_or_refused(verb, said):
    with suppress(BadInput):
        json.dumps(answer(verb, json.dumps({**ASKED, **CLASS, **said})), allow_nan=False)
