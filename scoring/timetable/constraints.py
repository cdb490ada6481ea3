"""A programme as a constraint solver's variables: where and when each block is, and what that breaks."""

from collections.abc import Callable
from functools import partial
from typing import Any

from scoring.timetable.programme import (
    DAY,
    Block,
    Break,
    JudgeDay,
    Pair,
    Plan,
    Programme,
    Slot,
    break_start,
    lost_breaks,
    overlap,
    row,
)


class Constraints:
    """The model. Every variable is kept with the way to read it off a plan, so that any plan can be the start.

    `wait` is the minutes from the judge's start to the block's, 0 for one left out; `last` those to a judge's last dog;
    `broken` holds one yes or no for each pair that can be broken and is not broken by pins alone.
    """

    def __init__(self, programme: Programme, cp_model: Any) -> None:
        self.programme = programme
        self.model = cp_model.CpModel()
        self.free = [block for block in programme.blocks.values() if block.id not in programme.pinned]
        self.readings: list[tuple[Any, Callable[[Plan], int]]] = []
        self.here: dict[Pair, Any] = {}
        self.wait: dict[str, Any] = {}
        self.last: dict[str, Any] = {}
        self.start: dict[str, Any] = {slot.block: slot.start for slot in programme.pinned.values()}
        self.placed: dict[str, Any] = dict.fromkeys(programme.pinned, 1)
        self.horizon = max((judge_day.end for judge_day in programme.judge_days.values()), default=0) + DAY
        for block in self.free:
            self._add_block(block)
        lost = lost_breaks(programme)
        for judge_day in programme.judge_days.values():
            self._add_row(judge_day)
            if judge_day.rest and judge_day.id not in lost:
                self._add_break(judge_day, judge_day.rest)
            self._add_last(judge_day)
        self.broken = [*self._conflicts(), *self._orders()]

    def start_from(self, plan: Plan) -> None:
        self.model.clear_hints()
        for variable, reading in self.readings:
            self.model.add_hint(variable, reading(plan))

    def plan_of(self, value: Callable[[Any], int]) -> Plan:
        plan = dict(self.programme.pinned)
        for (block, judge_day), here in self.here.items():
            if value(here):
                start = self._opening(judge_day) + value(self.wait[block])
                plan[block] = Slot(block, judge_day, start, start + self.programme.blocks[block].minutes)
        return plan

    def _yes_or_no(self, reading: Callable[[Plan], int]) -> Any:
        variable = self.model.new_bool_var("")
        self.readings.append((variable, reading))
        return variable

    def _number(self, low: int, high: int, reading: Callable[[Plan], int]) -> Any:
        variable = self.model.new_int_var(low, high, "")
        self.readings.append((variable, reading))
        return variable

    def _opening(self, judge_day: str) -> int:
        return self.programme.judge_days[judge_day].start

    def _add_block(self, block: Block) -> None:
        """On one of its judge days at most, within hours; left out, it stands at zero."""
        name = block.id
        placed = self._yes_or_no(lambda plan: name in plan)
        wait = self._number(0, DAY, lambda plan: self._waited(plan, name))
        start = self._number(0, self.horizon, lambda plan: _start(plan, name))
        here = {each: self._yes_or_no(partial(_is_at, name, each)) for each in block.judge_days}
        self.model.add(sum(here.values()) == placed)
        self.model.add(wait == 0).only_enforce_if(~placed)
        self.model.add(start == wait + sum(self._opening(each) * chosen for each, chosen in here.items()))
        for each, chosen in here.items():
            judge_day = self.programme.judge_days[each]
            self.model.add(wait <= judge_day.end - judge_day.start - block.minutes).only_enforce_if(chosen)
            self.here[name, each] = chosen
        self.placed[name], self.wait[name], self.start[name] = placed, wait, start

    def _waited(self, plan: Plan, block: str) -> int:
        return plan[block].start - self._opening(plan[block].judge_day) if block in plan else 0

    def _blocks_of(self, judge_day: JudgeDay) -> list[Block]:
        return [block for block in self.free if judge_day.id in block.judge_days]

    def _add_row(self, judge_day: JudgeDay) -> None:
        """One block at a time in a ring, a gap between two."""
        self.model.add_no_overlap(self._intervals(judge_day, self.programme.gap))

    def _add_break(self, judge_day: JudgeDay, rest: Break) -> None:
        start = self._number(
            rest.earliest, rest.latest - rest.minutes, lambda plan: break_start(rest, row(plan, judge_day.id)) or 0
        )
        pause = self.model.new_fixed_size_interval_var(start, rest.minutes, "")
        self.model.add_no_overlap([pause, *self._intervals(judge_day, 0)])

    def _add_last(self, judge_day: JudgeDay) -> None:
        pinned = _last(judge_day, self.programme.pinned)
        last = self._number(pinned, max(pinned, DAY), lambda plan: _last(judge_day, plan))
        for block in self._blocks_of(judge_day):
            here = self.here[block.id, judge_day.id]
            self.model.add(last >= self.wait[block.id] + block.minutes).only_enforce_if(here)
        self.last[judge_day.id] = last

    def _intervals(self, judge_day: JudgeDay, gap: int) -> list[Any]:
        """Every block that may stand in this ring that day, each lengthened by the gap."""
        free = [
            self.model.new_optional_fixed_size_interval_var(
                self.start[block.id], block.minutes + gap, self.here[block.id, judge_day.id], ""
            )
            for block in self._blocks_of(judge_day)
        ]
        pinned = _merged(row(self.programme.pinned, judge_day.id), gap)
        return free + [self.model.new_fixed_size_interval_var(start, end - start, "") for start, end in pinned]

    def _conflicts(self) -> list[Any]:
        return [
            self._meeting(one, other)
            for one, other in self.programme.conflicts
            if one != other and not self._both_pinned(one, other) and self._days(one) & self._days(other)
        ]

    def _orders(self) -> list[Any]:
        return [
            self._disorder(earlier, block.id)
            for block in self.programme.blocks.values()
            for earlier in block.after
            if not self._both_pinned(earlier, block.id)
        ]

    def _meeting(self, one: str, other: str) -> Any:
        """Yes where both have a place and neither is over when the other begins."""
        broken = self._yes_or_no(lambda plan: one in plan and other in plan and overlap(plan[one], plan[other]))
        kept = [self._in_order(one, other), self._in_order(other, one)]
        self.model.add_bool_or([broken, *kept, *self._left_out(one, other)])
        return broken

    def _disorder(self, earlier: str, later: str) -> Any:
        """Yes where both have a place and the earlier is not over when the later begins."""
        broken = self._yes_or_no(
            lambda plan: earlier in plan and later in plan and plan[later].start < plan[earlier].end
        )
        self.model.add_bool_or([broken, self._in_order(earlier, later), *self._left_out(earlier, later)])
        return broken

    def _in_order(self, first: str, second: str) -> Any:
        minutes = self.programme.blocks[first].minutes
        kept = self._yes_or_no(lambda plan: _start(plan, first) + minutes <= _start(plan, second))
        self.model.add(self.start[first] + minutes <= self.start[second]).only_enforce_if(kept)
        return kept

    def _left_out(self, *blocks: str) -> list[Any]:
        return [~self.placed[block] for block in blocks if block not in self.programme.pinned]

    def _both_pinned(self, one: str, other: str) -> bool:
        return one in self.programme.pinned and other in self.programme.pinned

    def _days(self, block: str) -> set[int]:
        pin = self.programme.pinned.get(block)
        judge_days = [pin.judge_day] if pin else self.programme.blocks[block].judge_days
        return {self.programme.judge_days[each].midnight for each in judge_days}


def _start(plan: Plan, block: str) -> int:
    return plan[block].start if block in plan else 0


def _is_at(block: str, judge_day: str, plan: Plan) -> bool:
    return block in plan and plan[block].judge_day == judge_day


def _last(judge_day: JudgeDay, plan: Plan) -> int:
    return max([0, *(slot.end - judge_day.start for slot in row(plan, judge_day.id))])


def _merged(pins: list[Slot], gap: int) -> list[tuple[int, int]]:
    """Times taken by pins; those that meet are one, for the solver would call two impossible."""
    merged: list[tuple[int, int]] = []
    for pin in pins:
        if merged and pin.start < merged[-1][1]:
            start, end = merged.pop()
            merged.append((start, max(end, pin.end + gap)))
        else:
            merged.append((pin.start, pin.end + gap))
    return merged
