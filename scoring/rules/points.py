"""The points a dog earns at one show."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from scoring.findings import Finding, notes, refuses, warns
from scoring.rules.rulebook import PointsRule, PointsWin, RuleBook, Sex


@dataclass(frozen=True, slots=True)
class Result:
    """What one dog won at a show."""

    dog: str
    sex: Sex
    wins: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class GroupPlace:
    """A place in the group, and the number of breeds that competed in it."""

    place: int
    breeds: int


@dataclass(frozen=True, slots=True)
class Show:
    """The dogs entered in a breed and what they won. Neither count is negative; `not_counted` is part of `entered`."""

    entered: Mapping[str, int]
    results: Sequence[Result]
    not_counted: Mapping[str, int] = field(default_factory=dict)
    group: Mapping[str, GroupPlace] = field(default_factory=dict)
    best_in_show: str | None = None

    def competing(self, count: str) -> int:
        return self.entered.get(count, 0) - self.not_counted.get(count, 0)


@dataclass(frozen=True, slots=True)
class Shown:
    """A dog entered in a class, and whether it counts: neither absent nor excused nor sent out."""

    sex: Sex
    class_code: str
    counts: bool = True


def counted(rule: PointsRule, dogs: Iterable[Shown]) -> tuple[dict[str, int], dict[str, int]]:
    """The dogs entered by each count of the rules, and those of them that do not count.

    Rule: which classes a count takes is the rules' data; a class that none takes is counted nowhere.
    Source: the rule book's `points.counted`.
    """
    entered, left_out = dict.fromkeys(rule.counts, 0), dict.fromkeys(rule.counts, 0)
    for dog in dogs:
        for name, count in rule.counted.items():
            if dog.sex == count.sex and dog.class_code in count.classes:
                entered[name] += 1
                left_out[name] += not dog.counts
    return entered, left_out


def show_points(book: RuleBook, show: Show) -> tuple[dict[str, int], list[Finding]]:
    """The points of every dog that won something, with the steps that lead there.

    Rule: count the dogs competing for a win, the winner among them and without the absent, excused and disqualified;
    turn the count into points once, for the win that gives most; add the points of a group place; stop at the cap.
    Source: the rule book's points (Canada: championship section, copy read; Australia: clubs' copies read).
    Limits: a dog with two wins of which neither contains the other is given the better, not both together. Whether a
    winner is already a champion is not asked.
    Returns: whole points by dog, and one finding for each step; what cannot be is refused in a finding and earns none.
    Raises: ValueError for a book without points.
    """
    if book.points is None:
        raise ValueError(f"{book.code} counts no points")
    points: dict[str, int] = {}
    why = [*check_given_once(book, show), *check_opposite_sexes(show), *check_all_used(book.points, show)]
    for result in show.results:
        points[result.dog], steps = dog_points(book.points, show, result)
        why += steps
    return points, why


def dog_points(rule: PointsRule, show: Show, result: Result) -> tuple[int, list[Finding]]:
    """One dog's points of the show and the steps; rule and limits as `show_points`."""
    earned, why = breed_points(rule, show, result)
    if rule.best_in_show is not None and show.best_in_show == result.dog:
        why.append(notes("best-in-show-points", dog=result.dog, points=rule.best_in_show))
        if rule.group_needs and rule.group_needs not in result.wins:
            why.append(warns("best-in-show-without-best-of-breed", dog=result.dog))
        return rule.best_in_show, why
    added, more = group_points(rule, show, result)
    total = earned + added
    if total > rule.cap:
        more.append(notes("capped", dog=result.dog, sum=total, cap=rule.cap))
    return min(total, rule.cap), why + more


def breed_points(rule: PointsRule, show: Show, result: Result) -> tuple[int, list[Finding]]:
    """The points of the best of a dog's wins: each is looked up by itself, and they are never added."""
    answers = [win_points(rule, show, result, win) for win in rule.wins if win.code in result.wins]
    best = max((points for points, _ in answers), default=0)
    return best, [finding for _, finding in answers]


def win_points(rule: PointsRule, show: Show, result: Result, win: PointsWin) -> tuple[int, Finding]:
    """The points of one win, and how many dogs were counted for it."""
    said = {"dog": result.dog, "win": win.code}
    if win.fixed is not None:
        return win.fixed, notes("fixed-points", **said, points=win.fixed, full_from_dogs=win.full_from_dogs)
    competing = sum(show.competing(count) for count in win.counts[result.sex])
    if competing == 0:
        return 0, refuses("winner-not-counted", **said, counts=list(win.counts[result.sex]))
    points = points_for_count(rule, competing)
    return points, notes("dogs-counted", **said, competing=competing, points=points)


def points_for_count(rule: PointsRule, competing: int) -> int:
    """Points by the number of dogs competing, the winner among them: by the steps, or base and count up to the cap."""
    if rule.base is not None:
        return min(rule.base + competing, rule.cap)
    return max((points for least, points in rule.steps if least <= competing), default=0)


def group_points(rule: PointsRule, show: Show, result: Result) -> tuple[int, list[Finding]]:
    """The points of a group place, by the number of breeds in the group; only for a dog that won its breed."""
    placed = show.group.get(result.dog)
    if placed is None or not rule.group:
        return 0, []
    if rule.group_needs and rule.group_needs not in result.wins:
        return 0, [refuses("group-place-without-best-of-breed", dog=result.dog)]
    points = points_for_place(rule, placed)
    facts = {"place": placed.place, "breeds": placed.breeds, "points": points}
    return points, [notes("group-points", dog=result.dog, **facts)]


def points_for_place(rule: PointsRule, placed: GroupPlace) -> int:
    rows = [row for row in rule.group if row.least_breeds <= placed.breeds]
    row = max(rows, key=lambda row: row.least_breeds)
    return row.points[placed.place - 1] if placed.place <= len(row.points) else 0


def check_given_once(book: RuleBook, show: Show) -> Iterator[Finding]:
    """An award is given once: where it is one for each sex, once for each sex."""
    for_each_sex = {award.code for award in book.awards if award.level == "sex"}
    holders: dict[tuple[str, str], list[str]] = defaultdict(list)
    for result in show.results:
        for win in result.wins:
            holders[win, result.sex if win in for_each_sex else ""].append(result.dog)
    for (win, _), dogs in holders.items():
        if len(dogs) > 1:
            yield warns("award-given-twice", win=win, dogs=dogs)


def check_opposite_sexes(show: Show) -> Iterator[Finding]:
    """The best of opposite sex is of the sex that the best of breed is not."""
    sexes = {win: result.sex for result in show.results for win in result.wins}
    best, opposite = sexes.get("best-of-breed"), sexes.get("best-opposite-sex")
    if best and best == opposite:
        yield warns("opposite-sex-is-the-same", sex=best)


def check_all_used(rule: PointsRule, show: Show) -> Iterator[Finding]:
    """Says what was given and gives no points under these rules."""
    if show.group and not rule.group:
        yield notes("group-places-give-no-points", dogs=sorted(show.group))
    if show.best_in_show is not None and rule.best_in_show is None:
        yield notes("best-in-show-gives-no-points", dog=show.best_in_show)
