"""The same timetable by a constraint solver, where one is installed: OR-tools CP-SAT."""

from collections.abc import Callable
from typing import Any

from scoring.timetable.programme import (
    DAY,
    JudgeDay,
    Pair,
    Plan,
    Programme,
    Slot,
    broken_pairs,
    cost,
    lost_breaks,
    row,
)

MOST_CHOICES = 5_000
MOST_PAIRS = 10_000
# The solver counts its own work so that the same input gives the same plan; the clock is only a last resort.
CLOCK_PER_WORK = 5.0


def solved_plan(programme: Programme, known: Plan, seconds: float) -> Plan | None:
    """The best plan found, starting from a known one and never worse; None where there is no solver or no answer.

    Rule: first the fewest dogs left out and pairs broken, then the shortest days, as `cost` has it. One worker and a
    fixed seed. Limits: the best only where the work allowed is enough; `seconds` is the solver's own measure of work.
    """
    choices = sum(len(block.judge_days) for block in programme.blocks.values())
    if choices > MOST_CHOICES or len(programme.conflicts) > MOST_PAIRS:
        return None
    try:
        from ortools.sat.python import cp_model
    except ImportError:
        return None
    search = _Search(programme, cp_model)
    found = search.run(known, seconds)
    return found if found is not None and cost(programme, found) <= cost(programme, known) else None


class _Search:
    """The programme as the solver's variables. One number a block: minutes from its judge's start."""

    def __init__(self, programme: Programme, cp_model: Any) -> None:
        self.programme = programme
        self.cp = cp_model
        self.model = cp_model.CpModel()
        self.free = [block for block in programme.blocks.values() if block.id not in programme.pinned]
        self.here: dict[Pair, Any] = {}
        self.wait: dict[str, Any] = {}
        self.start: dict[str, Any] = {slot.block: slot.start for slot in programme.pinned.values()}
        self.placed: dict[str, Any] = dict.fromkeys(programme.pinned, 1)
        self.last: dict[str, Any] = {}
        self._add_blocks()
        lost = lost_breaks(programme)
        for judge_day in programme.judge_days.values():
            self._add_judge_day(judge_day, has_break=judge_day.rest is not None and judge_day.id not in lost)
        self.broken = [*self._conflicts(), *self._orders()]

    def run(self, known: Plan, seconds: float) -> Plan | None:
        left_out = sum(max(block.dogs, 1) * (1 - self.placed[block.id]) for block in self.free)
        trouble = left_out * (len(self.broken) + 1) + sum(self.broken)
        length = sum(self.last.values()) * (DAY * len(self.free) + 1) + sum(self.wait.values())
        if self._is_untroubled(known):
            self.model.add(trouble == 0)
            return self._solve(length, known, seconds)
        better = self._solve(trouble, known, seconds / 2)
        if better is None:
            return None
        self.model.add(trouble <= self.reached)
        return self._solve(length, better, seconds / 2) or better

    def _is_untroubled(self, known: Plan) -> bool:
        left_out, broken, *_ = cost(self.programme, known)
        return left_out == 0 and broken == len(broken_pairs(self.programme, self.programme.pinned))

    def _solve(self, objective: Any, known: Plan, seconds: float) -> Plan | None:
        self.model.minimize(objective)
        self._hint(known)
        solver = self.cp.CpSolver()
        solver.parameters.num_workers = 1
        solver.parameters.random_seed = 0
        solver.parameters.max_deterministic_time = seconds
        solver.parameters.max_time_in_seconds = seconds * CLOCK_PER_WORK
        if solver.solve(self.model) not in (self.cp.OPTIMAL, self.cp.FEASIBLE):
            return None
        self.reached = round(solver.objective_value)
        return self._read(solver.value)

    def _hint(self, known: Plan) -> None:
        self.model.clear_hints()
        for (block, judge_day), here in self.here.items():
            self.model.add_hint(here, block in known and known[block].judge_day == judge_day)
        for block, wait in self.wait.items():
            slot = known.get(block)
            self.model.add_hint(wait, slot.start - self._opening(slot.judge_day) if slot else 0)

    def _read(self, value: Callable[[Any], int]) -> Plan:
        plan = dict(self.programme.pinned)
        for (block, judge_day), here in self.here.items():
            if value(here):
                start = self._opening(judge_day) + value(self.wait[block])
                plan[block] = Slot(block, judge_day, start, start + self.programme.blocks[block].minutes)
        return plan

    def _opening(self, judge_day: str) -> int:
        return self.programme.judge_days[judge_day].start

    def _add_blocks(self) -> None:
        """Each free block on one of its judge days at most, within hours; without a place it stands at zero."""
        for block in self.free:
            here = {each: self.model.new_bool_var(f"{block.id} {each}") for each in block.judge_days}
            wait = self.model.new_int_var(0, DAY, "")
            placed = self.model.new_bool_var("")
            self.model.add(sum(here.values()) == placed)
            self.model.add(wait == 0).only_enforce_if(~placed)
            for each, chosen in here.items():
                judge_day = self.programme.judge_days[each]
                self.here[block.id, each] = chosen
                self.model.add(wait <= judge_day.end - judge_day.start - block.minutes).only_enforce_if(chosen)
            start = self.model.new_int_var(0, self._horizon(), "")
            self.model.add(start == wait + sum(self._opening(each) * chosen for each, chosen in here.items()))
            self.wait[block.id], self.start[block.id], self.placed[block.id] = wait, start, placed

    def _horizon(self) -> int:
        return max((judge_day.end for judge_day in self.programme.judge_days.values()), default=0) + DAY

    def _add_judge_day(self, judge_day: JudgeDay, *, has_break: bool) -> None:
        pins = row(self.programme.pinned, judge_day.id)
        blocks = [block for block in self.free if judge_day.id in block.judge_days]
        self.model.add_no_overlap(
            [self._interval(block.id, judge_day.id, self.programme.gap) for block in blocks]
            + self._standing(pins, self.programme.gap)
        )
        if has_break and judge_day.rest:
            rest = judge_day.rest
            start = self.model.new_int_var(rest.earliest, rest.latest - rest.minutes, "")
            self.model.add_no_overlap(
                [self.model.new_fixed_size_interval_var(start, rest.minutes, "")]
                + [self._interval(block.id, judge_day.id, 0) for block in blocks]
                + self._standing(pins, 0)
            )
        last = self.model.new_int_var(max([0, *(pin.end - judge_day.start for pin in pins)]), self._horizon(), "")
        for block in blocks:
            self.model.add(last >= self.wait[block.id] + block.minutes).only_enforce_if(
                self.here[block.id, judge_day.id]
            )
        self.last[judge_day.id] = last

    def _interval(self, block: str, judge_day: str, gap: int) -> Any:
        minutes = self.programme.blocks[block].minutes + gap
        return self.model.new_optional_fixed_size_interval_var(
            self.start[block], minutes, self.here[block, judge_day], ""
        )

    def _standing(self, pins: list[Slot], gap: int) -> list[Any]:
        """Pinned blocks as intervals; those that meet are one, for the solver would call two impossible."""
        merged: list[list[int]] = []
        for pin in pins:
            if merged and pin.start < merged[-1][1]:
                merged[-1][1] = max(merged[-1][1], pin.end + gap)
            else:
                merged.append([pin.start, pin.end + gap])
        return [self.model.new_fixed_size_interval_var(start, end - start, "") for start, end in merged]

    def _conflicts(self) -> list[Any]:
        """A yes or no for each pair that could meet: does it."""
        return [
            self._unless(one, other, [(one, other), (other, one)])
            for one, other in self.programme.conflicts
            if not self._both_pinned(one, other) and self._days(one) & self._days(other)
        ]

    def _orders(self) -> list[Any]:
        """A yes or no for each block that must come after another: does it not."""
        return [
            self._unless(earlier, block.id, [(earlier, block.id)])
            for block in self.programme.blocks.values()
            for earlier in block.after
            if not self._both_pinned(earlier, block.id)
        ]

    def _unless(self, one: str, other: str, orders: list[Pair]) -> Any:
        """True unless one of these orders is kept or one of the blocks has no place."""
        broken = self.model.new_bool_var("")
        kept = []
        for first, second in orders:
            in_order = self.model.new_bool_var("")
            end = self.start[first] + self.programme.blocks[first].minutes
            self.model.add(end <= self.start[second]).only_enforce_if(in_order)
            kept.append(in_order)
        absent = [~self.placed[block] for block in (one, other) if block not in self.programme.pinned]
        self.model.add_bool_or([broken, *kept, *absent])
        return broken

    def _both_pinned(self, one: str, other: str) -> bool:
        return one in self.programme.pinned and other in self.programme.pinned

    def _days(self, block: str) -> set[int]:
        pin = self.programme.pinned.get(block)
        judge_days = [pin.judge_day] if pin else self.programme.blocks[block].judge_days
        return {self.programme.judge_days[each].midnight for each in judge_days}
