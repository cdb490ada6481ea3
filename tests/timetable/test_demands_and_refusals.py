"""Single demands one by one, days that are too short, and requests that cannot be used."""

import sys

import pytest

from scoring.bad_input import BadInput
from scoring.timetable.doors import timetable
from tests.timetable.checker import problems

RING = {"id": "ring", "day": "2026-06-13", "start": "09:00", "end": "12:00"}
OTHER = {**RING, "id": "other"}
BLOCK = {"id": "boxers", "dogs": 10, "judge_days": ["ring"]}
SHOW = {"minutes_per_dog": 3, "gap_minutes": 5, "judge_days": [RING], "blocks": [BLOCK], "conflicts": []}


def block(name, dogs, *judge_days, after=()):
    return {"id": name, "dogs": dogs, "judge_days": list(judge_days or ["ring"]), "after": list(after)}


def planned(seconds=0, **changes):
    show = {**SHOW, "seconds": seconds, **changes}
    found = timetable(show)
    assert problems(show, found) == []
    return found


def codes(found):
    return [finding["code"] for finding in found["findings"]]


def test_one_block_begins_when_the_judge_does():
    [slot] = planned()["blocks"]
    assert slot == {"block": "boxers", "judge_day": "ring", "start": "09:00", "end": "09:30"}


def test_minutes_a_dog_are_taken_as_written():
    # 25 dogs at 2.4 minutes are an hour; in binary fractions 1.1 times 10 would be over 11.
    [slot] = planned(minutes_per_dog=1.1)["blocks"]
    assert slot["end"] == "09:11"
    [slot] = planned(minutes_per_dog=2.4, blocks=[block("boxers", 25)])["blocks"]
    assert slot["end"] == "10:00"


@pytest.mark.parametrize("seconds", [0, 1])
def test_a_gap_lies_between_two_blocks_and_a_break_is_left_whole(seconds):
    ring = {**RING, "break": {"from": "10:00", "to": "11:00", "minutes": 45}}
    found = planned(seconds, judge_days=[ring], blocks=[block("boxers", 15), block("pugs", 10), block("collies", 10)])
    # By hand: 30 and 30 minutes with a gap end at 10:05, the break runs to 10:50, and 45 minutes more end at 11:35.
    assert [slot["start"] for slot in found["blocks"]] == ["09:00", "09:35", "10:50"]
    assert found["breaks"] == [{"judge_day": "ring", "start": "10:05", "end": "10:50"}]


@pytest.mark.parametrize("seconds", [0, 1])
def test_a_block_follows_the_one_it_must_come_after(seconds):
    found = planned(seconds, blocks=[block("best of breed", 1, after=["boxers"]), BLOCK])
    assert [slot["block"] for slot in found["blocks"]] == ["boxers", "best of breed"]


@pytest.mark.parametrize("seconds", [0, 1])
def test_a_block_of_the_second_day_waits_for_the_first(seconds):
    days = [{**RING, "id": "sunday", "day": 2}, {**RING, "day": 1}]
    found = planned(seconds, judge_days=days, blocks=[block("finals", 5, "sunday", "ring", after=["boxers"]), BLOCK])
    assert found["unresolved"] == []


@pytest.mark.parametrize("seconds", [0, 1])
def test_a_day_too_short_leaves_a_block_out_and_says_so(seconds):
    found = planned(seconds, blocks=[block("boxers", 50), block("pugs", 40)])
    assert (found["unplaced"], codes(found)) == (["pugs"], ["day-too-short"])
    facts = {"block": "pugs", "minutes": 120, "judge_days": ["ring"]}
    assert found["findings"][0] == {"code": "day-too-short", "severity": "refuses", "facts": facts}


def test_a_block_without_a_judge_is_left_out_and_says_so():
    found = planned(blocks=[{"id": "pugs", "dogs": 3, "judge_days": []}])
    assert (found["unplaced"], codes(found)) == (["pugs"], ["no-judge-day"])


@pytest.mark.parametrize("seconds", [0, 1])
def test_what_cannot_be_kept_apart_is_named(seconds):
    found = planned(
        seconds,
        judge_days=[RING, OTHER],
        blocks=[block("boxers", 50), block("pugs", 50, "other")],
        conflicts=[["pugs", "boxers"], ["boxers", "pugs"]],
    )
    assert (found["unresolved"], codes(found)) == ([["pugs", "boxers"]], ["conflict-overlap"])


@pytest.mark.parametrize("seconds", [0, 1])
def test_a_pin_is_kept_whatever_it_goes_against_and_that_is_said(seconds):
    ring = {**RING, "break": {"from": "09:00", "to": "10:00", "minutes": 60}}
    pins = [
        {"block": "boxers", "judge_day": "ring", "start": "09:10"},
        {"block": "pugs", "judge_day": "ring", "start": "09:30"},
        {"block": "late", "judge_day": "other", "start": "23:50"},
    ]
    blocks = [BLOCK, block("pugs", 5, "other"), block("late", 20, after=["last"]), block("last", 3, "other")]
    found = planned(seconds, judge_days=[ring, OTHER], blocks=blocks, pinned=pins, conflicts=[["boxers", "pugs"]])
    assert found["unresolved"] == [["boxers", "pugs"]]
    assert set(codes(found)) == {
        "ring-overlap",
        "conflict-overlap",
        "no-break",
        "pinned-with-another-judge",
        "pinned-outside-hours",
    }
    assert {slot["block"]: slot["end"] for slot in found["blocks"]}["late"] == "24:50"


@pytest.mark.parametrize("seconds", [0, 1])
def test_an_order_that_pins_break_by_a_minute_is_named(seconds):
    pins = [
        {"block": "boxers", "judge_day": "ring", "start": "09:00"},
        {"block": "finals", "judge_day": "other", "start": "09:29"},
    ]
    blocks = [BLOCK, block("finals", 5, "other", after=["boxers"])]
    found = planned(seconds, judge_days=[RING, OTHER], blocks=blocks, pinned=pins)
    assert (found["unresolved"], codes(found)) == ([["boxers", "finals"]], ["out-of-order"])
    pins[1]["start"] = "09:30"
    assert planned(seconds, judge_days=[RING, OTHER], blocks=blocks, pinned=pins)["unresolved"] == []


def test_a_handler_with_two_dogs_in_one_block_is_noted():
    found = planned(conflicts=[["boxers", "boxers"]])
    assert (found["unresolved"], codes(found)) == ([], ["conflict-within-block"])


@pytest.mark.parametrize("seconds", [0, 1])
def test_nothing_to_plan_is_an_empty_plan(seconds):
    assert planned(seconds, blocks=[])["blocks"] == []
    assert planned(seconds, blocks=[], judge_days=[])["blocks"] == []


def test_a_machine_without_the_solver_gets_the_plain_plan(monkeypatch):
    monkeypatch.setitem(sys.modules, "ortools.sat.python", None)
    assert planned(seconds=1)["method"] == "plain"


def test_a_show_beyond_the_solver_is_planned_plainly():
    names = [f"block {i}" for i in range(300)]
    rings = [{**RING, "id": f"ring {i}"} for i in range(20)]
    blocks = [block(name, 1, *(ring["id"] for ring in rings)) for name in names]
    assert planned(1, judge_days=rings, blocks=blocks)["method"] == "plain"


def without(source, key):
    return {name: value for name, value in source.items() if name != key}


def ring(**changes):
    return {"judge_days": [{**RING, **changes}]}


def rest(start, end, minutes):
    return ring(**{"break": {"from": start, "to": end, "minutes": minutes}})


@pytest.mark.parametrize(
    ("changes", "code", "at"),
    [
        ({"minutes_per_dog": 0}, "out-of-range", "minutes_per_dog"),
        ({"minutes_per_dog": "3"}, "wrong-type", "minutes_per_dog"),
        ({"gap_minutes": -1}, "out-of-range", "gap_minutes"),
        ({"seconds": -1}, "out-of-range", "seconds"),
        ({"judge_days": {}}, "wrong-type", "judge_days"),
        ({"judge_days": [3]}, "wrong-type", "judge_days[0]"),
        ({"judge_days": [RING, RING]}, "id-reused", "judge_days[1].id"),
        ({"judge_days": [without(RING, "day")]}, "missing-key", "judge_days[0].day"),
        (ring(day=None), "wrong-type", "judge_days[0].day"),
        (ring(start="9:00"), "wrong-type", "judge_days[0].start"),
        (ring(start=540), "wrong-type", "judge_days[0].start"),
        (ring(end="25:00"), "out-of-range", "judge_days[0].end"),
        (ring(end="10:60"), "out-of-range", "judge_days[0].end"),
        (ring(end="08:00"), "out-of-range", "judge_days[0].end"),
        (rest("10:00", "10:30", 45), "out-of-range", "judge_days[0].break.minutes"),
        (ring(**{"break": {"from": "10:00", "to": "11:00"}}), "missing-key", "judge_days[0].break.minutes"),
        ({"blocks": [BLOCK, BLOCK]}, "id-reused", "blocks[1].id"),
        ({"blocks": [without(BLOCK, "dogs")]}, "missing-key", "blocks[0].dogs"),
        ({"blocks": [{**BLOCK, "dogs": 2.5}]}, "wrong-type", "blocks[0].dogs"),
        ({"blocks": [{**BLOCK, "dogs": -1}]}, "out-of-range", "blocks[0].dogs"),
        ({"blocks": [{**BLOCK, "judge_days": ["x"]}]}, "unknown-code", "blocks[0].judge_days[0]"),
        ({"blocks": [{**BLOCK, "after": ["x"]}]}, "unknown-code", "blocks[0].after[0]"),
        ({"blocks": [{**BLOCK, "after": ["boxers"]}]}, "out-of-range", "blocks"),
        ({"blocks": [block("a", 1, after=["b"]), block("b", 1, after=["a"])]}, "out-of-range", "blocks"),
        ({"conflicts": [["boxers"]]}, "out-of-range", "conflicts[0]"),
        ({"conflicts": [["boxers", "x"]]}, "unknown-code", "conflicts[0][1]"),
        ({"pinned": [{"block": "x", "judge_day": "ring", "start": "09:00"}]}, "unknown-code", "pinned[0].block"),
        ({"pinned": [{"block": "boxers", "judge_day": "x", "start": "09:00"}]}, "unknown-code", "pinned[0].judge_day"),
        ({"pinned": [{"block": "boxers", "judge_day": "ring"}]}, "missing-key", "pinned[0].start"),
        ({"pinned": 2 * [{"block": "boxers", "judge_day": "ring", "start": "09:00"}]}, "id-reused", "pinned[1].block"),
        ({"blocks": [block(str(i), 1) for i in range(501)]}, "too-large", "blocks"),
    ],
)
def test_a_request_that_cannot_be_used_is_refused_at_its_place(changes, code, at):
    with pytest.raises(BadInput) as refused:
        timetable({**SHOW, **changes})
    assert (refused.value.code, refused.value.at) == (code, at)


@pytest.mark.parametrize("key", SHOW)
def test_every_required_key_is_asked_for(key):
    with pytest.raises(BadInput) as refused:
        timetable(without(SHOW, key))
    assert (refused.value.code, refused.value.at) == ("missing-key", key)
