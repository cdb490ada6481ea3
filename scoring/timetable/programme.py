"""What is to be timetabled, what a plan of it is, and how good one is. Times are minutes from the first midnight."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

DAY = 24 * 60


@dataclass(frozen=True, slots=True)
class Break:
    """So many minutes without a dog, wholly between two times."""

    earliest: int
    latest: int
    minutes: int


@dataclass(frozen=True, slots=True)
class JudgeDay:
    """One judge in a ring on one day."""

    id: str
    midnight: int
    start: int
    end: int
    rest: Break | None


@dataclass(frozen=True, slots=True)
class Block:
    """Dogs judged one after the other without a pause: a breed, a sex or a class."""

    id: str
    dogs: int
    minutes: int
    judge_days: tuple[str, ...]
    after: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Slot:
    block: str
    judge_day: str
    start: int
    end: int


Pair = tuple[str, str]
Plan = Mapping[str, Slot]


@dataclass(frozen=True, slots=True)
class Programme:
    """All there is to plan. `conflicts` are pairs that one person must attend; `pinned` blocks stay where they are.

    No block waits for itself through `after`.
    """

    judge_days: Mapping[str, JudgeDay]
    blocks: Mapping[str, Block]
    conflicts: tuple[Pair, ...]
    pinned: Mapping[str, Slot]
    gap: int


@dataclass(frozen=True, slots=True)
class Broken:
    """Two blocks that a plan could not keep apart or in order."""

    code: Literal["conflict-overlap", "out-of-order", "ring-overlap"]
    pair: Pair


def overlap(one: Slot, other: Slot) -> bool:
    return one.start < other.end and other.start < one.end


def row(plan: Plan, judge_day: str) -> list[Slot]:
    """What one judge does that day, in order of time."""
    return sorted(
        (slot for slot in plan.values() if slot.judge_day == judge_day), key=lambda slot: (slot.start, slot.end)
    )


def break_start(rest: Break, slots: Iterable[Slot]) -> int | None:
    """The earliest start of the break beside these slots, given in order of time; None where it does not fit."""
    start = rest.earliest
    for slot in slots:
        if slot.start < start + rest.minutes:
            start = max(start, slot.end)
    return start if start + rest.minutes <= rest.latest else None


def lost_breaks(programme: Programme) -> frozenset[str]:
    """The judge days whose break the pinned blocks leave no room for."""
    return frozenset(
        judge_day.id
        for judge_day in programme.judge_days.values()
        if judge_day.rest and break_start(judge_day.rest, row(programme.pinned, judge_day.id)) is None
    )


def broken_pairs(programme: Programme, plan: Plan) -> list[Broken]:
    """Every pair that the plan breaks, each once."""
    conflicts = [Broken("conflict-overlap", pair) for pair in programme.conflicts if _overlap_in(plan, pair)]
    orders = [
        Broken("out-of-order", (earlier, later))
        for later, block in programme.blocks.items()
        for earlier in block.after
        if earlier in plan and later in plan and plan[later].start < plan[earlier].end
    ]
    return conflicts + orders + _overlapping_pins(programme)


def cost(programme: Programme, plan: Plan) -> tuple[int, int, int, int]:
    """What makes one plan better than another, the first difference deciding; less is better.

    Dogs without a place in the plan, pairs broken, minutes from each judge's start to their last dog, and minutes from
    each judge's start to the start of each block. The order is ours, without a source.
    """
    left_out = sum(max(block.dogs, 1) for block in programme.blocks.values() if block.id not in plan)
    opening = {judge_day.id: judge_day.start for judge_day in programme.judge_days.values()}
    last: dict[str, int] = {}
    for slot in plan.values():
        last[slot.judge_day] = max(last.get(slot.judge_day, 0), slot.end - opening[slot.judge_day])
    waits = sum(slot.start - opening[slot.judge_day] for slot in plan.values())
    return left_out, len(broken_pairs(programme, plan)), sum(last.values()), waits


def _overlap_in(plan: Plan, pair: Pair) -> bool:
    one, other = plan.get(pair[0]), plan.get(pair[1])
    return pair[0] != pair[1] and one is not None and other is not None and overlap(one, other)


def _overlapping_pins(programme: Programme) -> list[Broken]:
    """Only pinned blocks can meet in one ring: everything else is placed where the ring is free."""
    pins: Sequence[Slot] = list(programme.pinned.values())
    return [
        Broken("ring-overlap", (one.block, other.block))
        for i, one in enumerate(pins)
        for other in pins[i + 1 :]
        if one.judge_day == other.judge_day and overlap(one, other)
    ]
