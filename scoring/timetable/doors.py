"""The door `timetable`: judges' days and blocks of dogs in, who judges what when out."""

from collections.abc import Mapping
from typing import Any

from scoring.bad_input import a_number, value_of
from scoring.findings import Finding, notes, refuses, warns
from scoring.timetable.plain import plain_plan
from scoring.timetable.programme import (
    JudgeDay,
    Plan,
    Programme,
    Slot,
    break_start,
    broken_pairs,
    lost_breaks,
    row,
)
from scoring.timetable.reading import read_programme
from scoring.timetable.solver import solved_plan

SECONDS = 3.0
MOST_SECONDS = 600.0


def timetable(source: Mapping[str, Any]) -> dict[str, Any]:
    """When and before which judge each block is judged.

    Rule: a block runs without pause on one of its judge days, within that day's hours, so many minutes from the next,
    and leaves the judge's break whole between its two times. Where all that holds, as few pairs as can be are broken:
    blocks of one handler at the same time, a block before one that it must follow. Pinned blocks stay.
    Limits: a block without room is left out of `blocks`, named in `unplaced` and in the finding `day-too-short`; a
    block of no dogs takes no time. `seconds` 0 asks for the plain method. How many dogs a judge may see in a day is for
    the rules in force to say, not for this plan.
    Arguments: `source` as in the door's description; times "HH:MM". Besides `blocks`, `unresolved` (conflicts that
    meet, orders not kept, pinned blocks that meet in one ring) and `method` it answers `unplaced`, `breaks` and
    `findings`. Raises BadInput.
    """
    programme = read_programme(source)
    seconds = a_number(value_of(source, "seconds", default=SECONDS), "seconds", 0, MOST_SECONDS)
    plain = plain_plan(programme)
    solved = solved_plan(programme, plain, seconds) if seconds else None
    plan = plain if solved is None else solved
    return {
        "blocks": [_slot_as_json(programme, slot) for slot in _in_sequence(programme, plan)],
        "unresolved": [list(pair) for pair in dict.fromkeys(each.pair for each in broken_pairs(programme, plan))],
        "method": "plain" if solved is None else "solver",
        "unplaced": [block for block in programme.blocks if block not in plan],
        "breaks": _breaks(programme, plan),
        "findings": [finding.as_json() for finding in _findings(programme, plan)],
    }


def _in_sequence(programme: Programme, plan: Plan) -> list[Slot]:
    return [slot for judge_day in programme.judge_days for slot in row(plan, judge_day)]


def _slot_as_json(programme: Programme, slot: Slot) -> dict[str, Any]:
    judge_day = programme.judge_days[slot.judge_day]
    return {"block": slot.block, "judge_day": slot.judge_day, **_times(judge_day, slot.start, slot.end)}


def _times(judge_day: JudgeDay, start: int, end: int) -> dict[str, str]:
    return {"start": _clock(start - judge_day.midnight), "end": _clock(end - judge_day.midnight)}


def _clock(minutes: int) -> str:
    return f"{minutes // 60:02}:{minutes % 60:02}"


def _breaks(programme: Programme, plan: Plan) -> list[dict[str, str]]:
    """Each judge's break at the earliest it can be."""
    found = []
    for judge_day in programme.judge_days.values():
        start = break_start(judge_day.rest, row(plan, judge_day.id)) if judge_day.rest else None
        if judge_day.rest and start is not None:
            found.append({"judge_day": judge_day.id, **_times(judge_day, start, start + judge_day.rest.minutes)})
    return found


def _findings(programme: Programme, plan: Plan) -> list[Finding]:
    return [
        *(_without_place(programme, block) for block in programme.blocks if block not in plan),
        *(warns(broken.code, blocks=list(broken.pair)) for broken in broken_pairs(programme, plan)),
        *_pin_findings(programme),
        *(warns("no-break", judge_day=judge_day) for judge_day in sorted(lost_breaks(programme))),
        *(notes("conflict-within-block", block=one) for one, other in programme.conflicts if one == other),
    ]


def _without_place(programme: Programme, block: str) -> Finding:
    missing = programme.blocks[block]
    if not missing.judge_days:
        return refuses("no-judge-day", block=block)
    return refuses("day-too-short", block=block, minutes=missing.minutes, judge_days=list(missing.judge_days))


def _pin_findings(programme: Programme) -> list[Finding]:
    """Pins are the secretary's word and are kept; what they go against is said."""
    found = []
    for slot in programme.pinned.values():
        judge_day = programme.judge_days[slot.judge_day]
        facts = {"block": slot.block, "judge_day": slot.judge_day}
        if slot.judge_day not in programme.blocks[slot.block].judge_days:
            found.append(warns("pinned-with-another-judge", **facts))
        if slot.start < judge_day.start or slot.end > judge_day.end:
            found.append(warns("pinned-outside-hours", **facts))
    return found
