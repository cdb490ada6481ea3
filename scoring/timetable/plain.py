"""A timetable without a solver: blocks set one after the other where they fit best, then the order bettered."""

from collections import deque
from collections.abc import Sequence

from scoring.timetable.programme import (
    Block,
    JudgeDay,
    Plan,
    Programme,
    Slot,
    break_start,
    broken_pairs,
    cost,
    lost_breaks,
    overlap,
    row,
)

# How many times a block may be held to a judge's day in all while the order is bettered: a second or two.
MOST_TRIALS = 80_000
# Where in the order a block is tried, as parts of it: at the front for all blocks, then further back.
DEPTHS = (0.0, 0.25, 0.5, 0.75, 1.0)


def plain_plan(programme: Programme) -> Plan:
    """A plan that keeps rings, hours, gaps and breaks, and as many pairs as it finds a way to.

    Rule: list scheduling (Graham 1966, Bell Syst Tech J 45:1563) in an order that is bettered by moving one block at
    a time, those in trouble first, as long as the plan's cost falls.
    Limits: not the best plan there is; a block that finds no room is left out.
    """
    order = _first_order(programme)
    plan = _set_in_order(programme, order)
    least = cost(programme, plan)
    waiting = _moves(programme, plan)
    for _ in range(MOST_TRIALS // (1 + sum(len(block.judge_days) for block in programme.blocks.values()))):
        if not waiting:
            break
        tried_order = _moved(order, *waiting.popleft())
        tried = _set_in_order(programme, tried_order)
        if cost(programme, tried) < least:
            order, plan, least = tried_order, tried, cost(programme, tried)
            waiting = _moves(programme, plan)
    return plan


def _moved(order: Sequence[str], block: str, depth: float) -> list[str]:
    others = [each for each in order if each != block]
    place = int(depth * len(others))
    return [*others[:place], block, *others[place:]]


def _first_order(programme: Programme) -> list[str]:
    """Hardest first: few judges to choose from, many conflicts, long."""
    conflicts = [block for pair in programme.conflicts for block in pair]
    free = [block for block in programme.blocks.values() if block.id not in programme.pinned]
    free.sort(key=lambda block: (len(block.judge_days), -conflicts.count(block.id), -block.minutes))
    return [block.id for block in free]


def _moves(programme: Programme, plan: Plan) -> deque[tuple[str, float]]:
    """Free blocks and where to try them, those without a place or in a broken pair first."""
    in_trouble = {block for broken in broken_pairs(programme, plan) for block in broken.pair}
    free = [block for block in programme.blocks if block not in programme.pinned]
    free.sort(key=lambda block: (block in plan, block not in in_trouble))
    return deque((block, depth) for depth in DEPTHS for block in free)


def _set_in_order(programme: Programme, order: Sequence[str]) -> Plan:
    board = _Board(programme)
    for block in _earlier_first(programme, order):
        board.set(programme.blocks[block])
    return board.plan


def _earlier_first(programme: Programme, order: Sequence[str]) -> list[str]:
    """The same blocks, each behind those that it must come after."""
    found: dict[str, None] = {}
    stack = list(reversed(order))
    while stack:
        block = stack[-1]
        before = [each for each in programme.blocks[block].after if each not in found and each not in programme.pinned]
        if block in found or not before:
            found[block] = None
            stack.pop()
        else:
            stack += before
    return list(found)


class _Board:
    """The plan as it grows, block by block."""

    def __init__(self, programme: Programme) -> None:
        self.programme = programme
        self.plan: dict[str, Slot] = dict(programme.pinned)
        self.rows = {judge_day: row(self.plan, judge_day) for judge_day in programme.judge_days}
        self.lost = lost_breaks(programme)
        self.apart: dict[str, list[str]] = {block: [] for block in programme.blocks}
        for one, other in programme.conflicts:
            self.apart[one].append(other)
            self.apart[other].append(one)
        self.then: dict[str, list[str]] = {block: [] for block in programme.blocks}
        for block in programme.blocks.values():
            for earlier in block.after:
                self.then[earlier].append(block.id)

    def set(self, block: Block) -> None:
        """Put the block where it breaks fewest pairs, and among those where its judge comes to it soonest."""
        choices = [self._first_choice(block, self.programme.judge_days[each]) for each in block.judge_days]
        possible = [choice for choice in choices if choice is not None]
        if not possible:
            return
        _, _, slot = min(possible, key=lambda choice: choice[:2])
        self.plan[block.id] = slot
        self.rows[slot.judge_day].append(slot)
        self.rows[slot.judge_day].sort(key=lambda each: (each.start, each.end))

    def _first_choice(self, block: Block, judge_day: JudgeDay) -> tuple[int, int, Slot] | None:
        """Pairs broken, minutes from the judge's start, and the slot: the best that this judge day offers."""
        best: tuple[int, int, Slot] | None = None
        for start in self._starts(block, judge_day):
            slot = Slot(block.id, judge_day.id, start, start + block.minutes)
            if not self._is_free(slot, judge_day):
                continue
            broken = self._broken(block, slot)
            if best is None or broken < best[0]:
                best = broken, start - judge_day.start, slot
            if broken == 0:
                break
        return best

    def _starts(self, block: Block, judge_day: JudgeDay) -> list[int]:
        """The times at which the block can be as early as anything lets it: one of these is the earliest it can be."""
        ends = [slot.end for slot in self.rows[judge_day.id]]
        others = [*self.apart[block.id], *block.after]
        starts = {judge_day.start, *(end + self.programme.gap for end in ends)}
        starts.update(self.plan[other].end for other in others if other in self.plan)
        if judge_day.rest:
            rest = judge_day.rest
            starts.update(max(end, rest.earliest) + rest.minutes for end in [rest.earliest, *ends])
        return sorted(start for start in starts if judge_day.start <= start <= judge_day.end - block.minutes)

    def _is_free(self, slot: Slot, judge_day: JudgeDay) -> bool:
        gap, slots = self.programme.gap, self.rows[judge_day.id]
        if any(slot.start < other.end + gap and other.start < slot.end + gap for other in slots):
            return False
        if judge_day.rest is None or judge_day.id in self.lost:
            return True
        together = sorted([*slots, slot], key=lambda each: (each.start, each.end))
        return break_start(judge_day.rest, together) is not None

    def _broken(self, block: Block, slot: Slot) -> int:
        plan = self.plan
        meeting = sum(overlap(slot, plan[other]) for other in self.apart[block.id] if other in plan)
        early = sum(slot.start < plan[earlier].end for earlier in block.after if earlier in plan)
        late = sum(plan[later].start < slot.end for later in self.then[block.id] if later in plan)
        return meeting + early + late
