"""Whatever the show, the answer keeps what it must and says what it could not keep."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scoring.__main__ import answer
from scoring.timetable.doors import timetable
from tests.timetable.checker import minutes, problems
from tests.timetable.requests import shows

METHODS = {"plain": 0, "solver": 1}


@pytest.mark.parametrize("method", METHODS)
@given(show=shows())
def test_an_independent_checker_finds_nothing_wrong(method, show):
    found = timetable({**show, "seconds": METHODS[method]})
    assert problems(show, found) == []
    json.dumps(found, allow_nan=False)


@pytest.mark.parametrize("method", METHODS)
@given(show=shows())
def test_the_same_show_gives_the_same_plan(method, show):
    show = {**show, "seconds": METHODS[method]}
    assert timetable(show) == timetable(show)


@given(show=shows())
def test_a_block_is_left_out_only_with_a_refusal(show):
    found = timetable(show)
    refused = [f["facts"]["block"] for f in found["findings"] if f["severity"] == "refuses"]
    assert sorted(refused) == sorted(found["unplaced"])


@given(show=shows(), order=st.randoms())
def test_other_names_change_nothing(show, order):
    names = [block["id"] for block in show["blocks"]]
    new = dict(zip(names, order.sample([f"b{i}" for i in range(len(names))], len(names)), strict=True))
    renamed = {
        **show,
        "blocks": [
            {**block, "id": new[block["id"]], "after": [new[each] for each in block["after"]]}
            for block in show["blocks"]
        ],
        "conflicts": [[new[one], new[other]] for one, other in show["conflicts"]],
        "pinned": [{**pin, "block": new[pin["block"]]} for pin in show["pinned"]],
    }
    one, other = timetable(show), timetable(renamed)
    expected = [{**slot, "block": new[slot["block"]]} for slot in one["blocks"]]
    key = ("judge_day", "start", "end", "block")
    assert sorted(expected, key=lambda s: [s[k] for k in key]) == sorted(
        other["blocks"], key=lambda s: [s[k] for k in key]
    )


@given(show=shows(pins=False))
def test_the_break_that_is_told_is_in_its_window_and_free(show):
    found = timetable({**show, "seconds": 0})
    windows = {day["id"]: day["break"] for day in show["judge_days"] if day.get("break")}
    assert [told["judge_day"] for told in found["breaks"]] == list(windows)
    for told in found["breaks"]:
        window, start, end = windows[told["judge_day"]], minutes(told["start"]), minutes(told["end"])
        assert minutes(window["from"]) <= start <= end - window["minutes"] <= minutes(window["to"]) - window["minutes"]
        for slot in found["blocks"]:
            if slot["judge_day"] == told["judge_day"]:
                assert minutes(slot["end"]) <= start or minutes(slot["start"]) >= end


@pytest.mark.parametrize("method", METHODS)
def test_a_whole_day_is_planned_through_the_command_line_door(method):
    show = {
        "minutes_per_dog": 3,
        "gap_minutes": 5,
        "judge_days": [
            {"id": day, "day": "2026-06-13", "start": "09:00", "end": "16:00", "break": BREAK}
            for day in ("ring 1", "ring 2")
        ],
        "blocks": [
            *({"id": f"breed {i}", "dogs": 6 + i, "judge_days": ["ring 1"]} for i in range(6)),
            *({"id": f"breed {i}", "dogs": 20 - i, "judge_days": ["ring 2"]} for i in range(6, 12)),
            {"id": "juniors", "dogs": 8, "judge_days": ["ring 1", "ring 2"], "after": ["breed 0", "breed 6"]},
        ],
        "conflicts": [[f"breed {i}", f"breed {i + 6}"] for i in range(6)],
        "pinned": [{"block": "breed 3", "judge_day": "ring 1", "start": "10:00"}],
        "seconds": METHODS[method],
    }
    found = answer("timetable", json.dumps(show))
    assert problems(show, found) == []
    assert (found["method"], found["unresolved"], found["unplaced"], found["findings"]) == (method, [], [], [])


BREAK = {"from": "12:00", "to": "14:00", "minutes": 45}
