"""Whether a dog's wins gain a title: one function for each kind of condition, every lack with its reason."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import Any

from scoring.findings import Finding, notes, refuses
from scoring.rules.ages import completes_on
from scoring.rules.rulebook import Need, RuleBook, TitleRoute, TitleRule


@dataclass(frozen=True, slots=True)
class Win:
    """One award a dog won. `age_months` is the age that day in months, completed or exact; None is unknown.

    `show` tells two shows of one day apart; without it, a day and a judge are a show.
    """

    award: str
    won_on: date
    judge: str
    country: str
    points: int | None = None
    age_months: float | None = None
    show: str | None = None


@dataclass(frozen=True, slots=True)
class TitleAnswer:
    """Whether a title is gained, and what each of its routes still lacks; notes lack nothing."""

    title: str
    gained: bool
    missing: tuple[Finding, ...]


def title_answers(book: RuleBook, wins: Sequence[Win]) -> list[TitleAnswer]:
    """Every title that the book can compute, with whether the wins gain it.

    Rule: a title is gained where all needs of one of its routes are met. More wins than a need asks for never hurt.
    Source: the rule book's titles, each need with its own.
    Limits: registration, health and character conditions of a title are not asked. A need known only from memory is
    answered with a note and holds nothing back. A win counts at most the points that the rules let a show give.
    """
    capped = [_capped(win, book) for win in wins]
    return [title_answer(title, capped) for title in book.titles if title.routes]


def title_answer(title: TitleRule, wins: Sequence[Win]) -> TitleAnswer:
    """One title's answer; rule and limits as `title_answers`."""
    answers = [route_findings(route, wins) for route in title.routes]
    for findings in answers:
        if all(finding.severity != "refuses" for finding in findings):
            return TitleAnswer(title.code, True, findings)
    return TitleAnswer(title.code, False, tuple(finding for findings in answers for finding in findings))


def route_findings(route: TitleRoute, wins: Sequence[Win]) -> tuple[Finding, ...]:
    """What the wins lack for one route to a title."""
    counted = [win for win in wins if win.won_on >= route.counts_from.get(win.award, date.min)]
    lacks = (NEEDS[need.kind](need, _of(need, counted), route) for need in route.needs)
    return tuple(finding for finding in lacks if finding)


def check_wins(need: Need, wins: Sequence[Win], route: TitleRoute) -> Finding | None:
    return _at_least(need, route, "wins-missing", len(wins))


def check_countries(need: Need, wins: Sequence[Win], route: TitleRoute) -> Finding | None:
    return _at_least(need, route, "countries-missing", len({_same(win.country) for win in wins}))


def check_judges(need: Need, wins: Sequence[Win], route: TitleRoute) -> Finding | None:
    return _at_least(need, route, "judges-missing", len({_same(win.judge) for win in wins}))


def check_span(need: Need, wins: Sequence[Win], route: TitleRoute) -> Finding | None:
    """A year and a day between the first win and the last.

    Rule: both days count, so the last may fall on the same day of the calendar a year later.
    Source: FCI International Championship rules, whose own example counts 1 January 2011 to 1 January 2012.
    """
    if not wins:
        return _lacking(need, route, "span-missing", months=need.months)
    first, last = min(win.won_on for win in wins), max(win.won_on for win in wins)
    earliest = completes_on(first, need.months or 0)
    if earliest is not None and last >= earliest:
        return None
    facts = {"first": first.isoformat(), "last": last.isoformat()}
    due = earliest.isoformat() if earliest else None
    return _lacking(need, route, "span-missing", months=need.months, earliest_last=due, **facts)


def check_points(need: Need, wins: Sequence[Win], route: TitleRoute) -> Finding | None:
    """The points of all wins at the ages the need names; a win of unknown age counts for no age."""
    once = _once_a_show(wins, route)
    have = sum(win.points or 0 for win in once if _is_aged(win, need))
    unknown = sum(win.age_months is None for win in once) if need.months is not None else 0
    ages = {"after_months": need.months, "until_months": need.until_months, "of_unknown_age": unknown}
    return _at_least(need, route, "points-missing", have, **ages)


def check_shows(need: Need, wins: Sequence[Win], route: TitleRoute) -> Finding | None:
    return _at_least(need, route, "shows-missing", len({_show(win) for win in wins if win.points}))


def check_judges_of_points(need: Need, wins: Sequence[Win], route: TitleRoute) -> Finding | None:
    """Different judges under whom a point was won."""
    judges = {_same(win.judge) for win in wins if win.points}
    return _at_least(need, route, "judges-missing", len(judges))


def check_win_of_points(need: Need, wins: Sequence[Win], route: TitleRoute) -> Finding | None:
    """One win of at least so many points."""
    best = max((win.points or 0 for win in wins), default=0)
    return _at_least(need, route, "win-of-points-missing", best)


def check_win_after_age(need: Need, wins: Sequence[Win], route: TitleRoute) -> Finding | None:
    """One win when over an age in months. A dog of exactly that many completed months counts as over it."""
    if any(_is_aged(win, need) for win in wins):
        return None
    unknown = sum(win.age_months is None for win in wins)
    return _lacking(need, route, "win-after-age-missing", after_months=need.months, of_unknown_age=unknown)


def check_judges_apart(need: Need, wins: Sequence[Win], route: TitleRoute) -> Finding | None:
    """Every win the route asks for under a judge of its own: one judge cannot stand for two of them.

    Limits: which of the wins was won at what age is a need by itself. The two can only clash with certificates of
    three judges, one of them late enough, and those gain the title by the other route.
    """
    return _at_least(need, route, "judges-apart-missing", most_judges_apart(_slots(wins, route)))


def most_judges_apart(slots: Sequence[frozenset[str]]) -> int:
    """The most slots that can be filled, each from its own judges and no judge twice.

    Rule: a largest matching between slots and judges, by augmenting paths.
    Source: general graph theory (Kuhn 1955).
    """
    filled_by: dict[str, int] = {}

    def fill(slot: int, tried: set[str]) -> bool:
        for judge in sorted(slots[slot] - tried):
            tried.add(judge)
            if judge not in filled_by or fill(filled_by[judge], tried):
                filled_by[judge] = slot
                return True
        return False

    return sum(fill(slot, set()) for slot in range(len(slots)))


Check = Callable[[Need, Sequence[Win], TitleRoute], Finding | None]
NEEDS: Mapping[str, Check] = {
    "wins": check_wins,
    "countries": check_countries,
    "judges": check_judges,
    "judges-of-points": check_judges_of_points,
    "judges-apart": check_judges_apart,
    "span": check_span,
    "points": check_points,
    "shows": check_shows,
    "win-of-points": check_win_of_points,
    "win-after-age": check_win_after_age,
}


def _slots(wins: Sequence[Win], route: TitleRoute) -> list[frozenset[str]]:
    """The judges who could stand for each win that the route asks for."""
    wanted = [need for need in route.needs if need.kind == "wins"]
    return [judges for need in wanted for judges in [_judges(_of(need, wins))] * need.least]


def _judges(wins: Iterable[Win]) -> frozenset[str]:
    return frozenset(_same(win.judge) for win in wins)


def _capped(win: Win, book: RuleBook) -> Win:
    if win.points is None or book.points is None:
        return win
    return replace(win, points=min(win.points, book.points.cap))


def _of(need: Need, wins: Sequence[Win]) -> list[Win]:
    return [win for win in wins if win.award in need.awards]


def _is_aged(win: Win, need: Need) -> bool:
    if need.months is None:
        return True
    most = float("inf") if need.until_months is None else need.until_months
    return win.age_months is not None and need.months <= win.age_months <= most


def _once_a_show(wins: Sequence[Win], route: TitleRoute) -> list[Win]:
    """The wins that count: of those in `once_a_show` the best of each show, of the others all."""
    best: dict[tuple[str, ...], Win] = {}
    for win in sorted(wins, key=lambda win: win.points or 0):
        if win.award in route.once_a_show:
            best[_show(win)] = win
    return [win for win in wins if win.award not in route.once_a_show] + list(best.values())


def _show(win: Win) -> tuple[str, ...]:
    return (win.show,) if win.show is not None else (win.won_on.isoformat(), _same(win.judge))


def _same(name: str) -> str:
    """A name without differences of case and spacing."""
    return " ".join(name.split()).casefold()


def _at_least(need: Need, route: TitleRoute, code: str, have: int, **facts: Any) -> Finding | None:
    if have >= need.least:
        return None
    return _lacking(need, route, code, least=need.least, have=have, **facts)


def _lacking(need: Need, route: TitleRoute, code: str, **facts: Any) -> Finding:
    verified = need.provenance.whole.verified
    say = notes if verified == "memory" else refuses
    return say(code, route=route.code, awards=list(need.awards), verified=verified, **facts)
