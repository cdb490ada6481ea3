"""The door `merge` of the command line."""

import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scoring.__main__ import answer
from scoring.bad_input import BadInput
from tests.merging.edits import json_values, raw


def merged(*edits: dict[str, Any]) -> dict[str, Any]:
    return answer("merge", json.dumps({"edits": edits}))


def test_the_door_tells_live_edits_with_their_values() -> None:
    edits = [raw(id="a", value=1), raw(id="b", value=2), raw(id="c", field="remark", value="x", replaces=["q"])]
    assert merged(*edits, raw(id="s", field="signature", value=["a", "b", "c"]), raw(id="d", field="note")) == {
        "fields": {
            "mark.croup": [{"edit": "a", "value": 1}, {"edit": "b", "value": 2}],
            "remark": [{"edit": "c", "value": "x"}],
            "signature": [{"edit": "s", "value": ["a", "b", "c"]}],
        },
        "disputed": ["mark.croup"],
        "incomplete": ["remark"],
        "held": ["d"],
    }


def test_the_door_does_without_what_merging_does_not_read() -> None:
    edit = {"id": "a", "sheet": "entry:1", "field": "any field", "value": [2**70], "replaces": []}
    assert merged(edit)["fields"] == {"any field": [{"edit": "a", "value": [2**70]}]}


@pytest.mark.parametrize(
    ("source", "code", "at"),
    [
        ({}, "missing-key", "edits"),
        ({"edits": {}}, "wrong-type", "edits"),
        ({"edits": [7]}, "wrong-type", "edits[0]"),
        ({"edits": [{"id": "a"}]}, "missing-key", "edits[0].sheet"),
        ({"edits": [raw(), raw(replaces=[None])]}, "wrong-type", "edits[1].replaces[0]"),
        ({"edits": [raw(), raw(value=2)]}, "id-reused", "edits[1].id"),
        ({"edits": [raw(), raw(id="b", sheet="entry:2")]}, "several-sheets", "edits[1].sheet"),
    ],
)
def test_an_input_that_cannot_be_merged_is_refused_at_its_place(source: Any, code: str, at: str) -> None:
    with pytest.raises(BadInput) as refused:
        answer("merge", json.dumps(source))
    assert (refused.value.code, refused.value.at) == (code, at)


def test_a_number_beyond_all_bounds_is_refused() -> None:
    with pytest.raises(BadInput):
        answer("merge", json.dumps({"edits": [raw(value=0)]}).replace('"value": 0', '"value": 1e999'))


@given(st.text(max_size=6), st.lists(json_values, min_size=2, max_size=2))
def test_any_field_and_any_value_merge(field: str, values: list[Any]) -> None:
    first, second = (raw(id=name, field=field, value=value) for name, value in zip("ab", values, strict=True))
    assert merged(first, {**second, "replaces": ["a"]})["fields"] == {field: [{"edit": "b", "value": values[1]}]}
