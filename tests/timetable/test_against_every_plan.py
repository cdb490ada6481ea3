"""Tiny shows, all of whose plans can be tried: the solver finds the best, the plain method a valid one no better."""

from itertools import combinations, product

import pytest
from hypothesis import given

from scoring.timetable.doors import timetable
from tests.timetable.checker import minutes
from tests.timetable.requests import shows

tiny_shows = shows(most_judge_days=2, most_blocks=3, most_dogs=4, longest=12, pins=False)


def worth(show, plan):
    """Dogs left out, pairs broken, the judges' lengths of day, waits; `plan` has (judge day, start, end) or None."""
    days = {day["id"]: day for day in show["judge_days"]}
    known = {block: where for block, where in plan.items() if where}
    absolute = {block: (days[at]["day"], start, end) for block, (at, start, end) in known.items()}

    def meet(one, other):
        a, b = absolute[one], absolute[other]
        return a[0] == b[0] and a[1] < b[2] and b[1] < a[2]

    def too_early(later, earlier):
        a, b = absolute[later], absolute[earlier]
        return (a[0], a[1]) < (b[0], b[2])

    conflicts = {frozenset(pair) for pair in show["conflicts"]}
    broken = sum(meet(*pair) for pair in conflicts if all(block in known for block in pair))
    orders = [(block["id"], earlier) for block in show["blocks"] for earlier in block["after"]]
    broken += sum(too_early(*pair) for pair in orders if all(block in known for block in pair))
    opening = {name: minutes(day["start"]) for name, day in days.items()}
    last = {}
    for at, _, end in known.values():
        last[at] = max(last.get(at, 0), end - opening[at])
    waits = sum(start - opening[at] for at, start, _ in known.values())
    left_out = sum(block["dogs"] for block in show["blocks"] if block["id"] not in known)
    return left_out, broken, sum(last.values()), waits


def is_kept(show, plan):
    for day in show["judge_days"]:
        row = [(start, end) for where in plan.values() if where for at, start, end in [where] if at == day["id"]]
        gap = show["gap_minutes"]
        if any(a[0] < b[1] + gap and b[0] < a[1] + gap for a, b in combinations(row, 2)):
            return False
        rest = day.get("break")
        if rest:
            begins = range(minutes(rest["from"]), minutes(rest["to"]) - rest["minutes"] + 1)
            if not any(all(end <= t or start >= t + rest["minutes"] for start, end in row) for t in begins):
                return False
    return True


def places_for(show, block):
    days = {day["id"]: day for day in show["judge_days"]}
    length = -int(-block["dogs"] * show["minutes_per_dog"] * 10 // 10)
    yield None
    for at in block["judge_days"]:
        for start in range(minutes(days[at]["start"]), minutes(days[at]["end"]) - length + 1):
            yield at, start, start + length


def least_of_all(show):
    names = [block["id"] for block in show["blocks"]]
    options = [list(places_for(show, block)) for block in show["blocks"]]
    plans = (dict(zip(names, choice, strict=True)) for choice in product(*options))
    return min(worth(show, plan) for plan in plans if is_kept(show, plan))


def worth_of_answer(show, found):
    plan = {
        slot["block"]: (slot["judge_day"], minutes(slot["start"]), minutes(slot["end"])) for slot in found["blocks"]
    }
    return worth(show, plan)


@given(tiny_shows)
def test_the_solver_finds_the_best_of_all_plans(show):
    found = timetable({**show, "seconds": 5})
    assert found["method"] == "solver"
    assert worth_of_answer(show, found) == least_of_all(show)


@given(tiny_shows)
def test_the_plain_method_is_never_better_than_the_best_of_all_plans(show):
    assert worth_of_answer(show, timetable({**show, "seconds": 0})) >= least_of_all(show)


@given(shows(pins=False))
def test_the_solver_is_never_worse_than_the_plain_method(show):
    plain, solved = (timetable({**show, "seconds": seconds}) for seconds in (0, 0.2))
    assert worth_of_answer(show, solved) <= worth_of_answer(show, plain)


@pytest.mark.parametrize("seconds", [0, 1])
def test_a_handler_s_two_blocks_are_pulled_apart_where_the_day_allows_it(seconds):
    rings = [{"id": ring, "day": 1, "start": "09:00", "end": "10:00"} for ring in ("ring 1", "ring 2")]
    blocks = [
        {"id": name, "dogs": 10, "judge_days": [ring]}
        for name, ring in [("boxers", "ring 1"), ("pugs", "ring 1"), ("collies", "ring 2"), ("terriers", "ring 2")]
    ]
    conflicts = [["boxers", "collies"], ["pugs", "terriers"]]
    show = {"minutes_per_dog": 3, "gap_minutes": 0, "judge_days": rings, "blocks": blocks, "conflicts": conflicts}
    found = timetable({**show, "seconds": seconds})
    starts = {slot["block"]: slot["start"] for slot in found["blocks"]}
    assert (found["unresolved"], found["unplaced"]) == ([], [])
    assert starts["boxers"] == starts["terriers"] != starts["collies"] == starts["pugs"]
