"""The same timetable by a constraint solver, where one is installed: OR-tools CP-SAT."""

from typing import Any

from scoring.timetable.constraints import Constraints
from scoring.timetable.programme import DAY, Plan, Programme, broken_pairs, cost

MOST_CHOICES = 5_000
MOST_PAIRS = 10_000
# The solver counts its own work so that the same input gives the same plan: measured, a quarter of its unit takes half
# a second to a second. The clock is only a last resort.
WORK_PER_SECOND = 0.25
CLOCK_PER_SECOND = 4.0


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
    found = _search(Constraints(programme, cp_model), known, seconds, cp_model)
    return found if found is not None and cost(programme, found) <= cost(programme, known) else None


def _search(model: Constraints, known: Plan, seconds: float, cp_model: Any) -> Plan | None:
    """Trouble first, unless the known plan has none that can be helped; then length with no more trouble than that."""
    left_out = sum(max(block.dogs, 1) * (1 - model.placed[block.id]) for block in model.free)
    trouble = left_out * (len(model.broken) + 1) + sum(model.broken)
    if _trouble(model, known):
        better = _solve(model, trouble, known, seconds / 2, cp_model)
        if better is None:
            return None
        known, seconds = better, seconds / 2
    model.model.add(trouble <= _trouble(model, known))
    length = sum(model.last.values()) * (DAY * len(model.free) + 1) + sum(model.wait.values())
    return _solve(model, length, known, seconds, cp_model) or known


def _trouble(model: Constraints, plan: Plan) -> int:
    """The same of a plan at hand; what pins alone break is nothing a search can help."""
    left_out, broken, *_ = cost(model.programme, plan)
    return left_out * (len(model.broken) + 1) + broken - len(broken_pairs(model.programme, model.programme.pinned))


def _solve(model: Constraints, objective: Any, known: Plan, seconds: float, cp_model: Any) -> Plan | None:
    model.model.minimize(objective)
    model.start_from(known)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 0
    solver.parameters.max_deterministic_time = seconds * WORK_PER_SECOND
    solver.parameters.max_time_in_seconds = seconds * CLOCK_PER_SECOND
    status = solver.solve(model.model)
    return model.plan_of(solver.value) if status in (cp_model.OPTIMAL, cp_model.FEASIBLE) else None
