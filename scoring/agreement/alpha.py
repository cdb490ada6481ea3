"""Any number of judges, gaps allowed: Krippendorff's alpha."""

from collections import Counter
from collections.abc import Callable, Sequence
from fractions import Fraction
from typing import TypeVar

from scoring.agreement.coefficient import Coefficient, with_interval, without_value
from scoring.agreement.jackknife import HOW, jackknife_interval
from scoring.agreement.kendall import doubled_ranks

Rating = float | str
Dogs = Sequence[Sequence[Rating]]
R = TypeVar("R", int, Rating)


def krippendorff_alpha(rows: Sequence[Sequence[Rating | None]], level: str) -> Coefficient:
    """How far judges agree beyond chance, at the level of measurement the ratings have.

    Rule: 1 - disagreement within dogs / disagreement of all pairable ratings. Nominal: differing is 1; interval: the
    square of the difference; ordinal: the same on the ratings' mid-ranks, which is the published ordinal difference.
    Source: Krippendorff 2004, Content Analysis, 2nd ed., ch. 11. Limits: a dog rated once says nothing and is left
    out. The jackknife's interval is cut at 1.
    Arguments: one row for each dog, None for a gap; `level` one of LEVELS. Returns at most 1, below 0 for a quarrel.
    """
    method = f"Krippendorff's alpha (2004), {level}"
    dogs = [[rating for rating in row if rating is not None] for row in rows]
    pairable: Dogs = [ratings for ratings in dogs if len(ratings) > 1]
    if not pairable:
        return without_value(method, "no dog was rated by two judges")
    statistic = LEVELS[level]
    if level == "interval":
        pairable = _whole(pairable)
    value = statistic(pairable)
    if value is None:
        return without_value(method, "every rating is the same")
    interval = jackknife_interval(statistic, pairable, value)
    if not isinstance(interval, str):
        interval = interval[0], min(1.0, interval[1])
    return with_interval(method, value, interval, HOW)


def _nominal(dogs: Dogs) -> float | None:
    return _alpha(dogs, _differing)


def _ordinal(dogs: Dogs) -> float | None:
    ranks = iter(doubled_ranks([float(rating) for ratings in dogs for rating in ratings]))
    return _alpha([[next(ranks) for _ in ratings] for ratings in dogs], _square_differences)


def _interval(dogs: Dogs) -> float | None:
    return _alpha([[int(rating) for rating in ratings] for ratings in dogs], _square_differences)


def _alpha(dogs: Sequence[Sequence[R]], differences: Callable[[Sequence[R]], int]) -> float | None:
    every = [rating for ratings in dogs for rating in ratings]
    overall = differences(every)
    if overall == 0:
        return None
    within: Counter[int] = Counter()
    for ratings in dogs:
        within[len(ratings) - 1] += differences(ratings)
    return float(1 - (len(every) - 1) * sum(Fraction(total, others) for others, total in within.items()) / overall)


def _differing(ratings: Sequence[Rating]) -> int:
    """How many ordered pairs of these ratings differ."""
    return len(ratings) ** 2 - sum(n * n for n in Counter(ratings).values())


def _square_differences(ratings: Sequence[int]) -> int:
    """The sum of the squared differences over all ordered pairs of these ratings."""
    return 2 * (len(ratings) * sum(each * each for each in ratings) - sum(ratings) ** 2)


def _whole(dogs: Dogs) -> list[list[int]]:
    """The ratings, all multiplied by what makes them whole numbers: alpha does not feel it, and nothing rounds."""
    exact = [[Fraction(rating) for rating in ratings] for ratings in dogs]
    scale = max(rating.denominator for ratings in exact for rating in ratings)
    return [[int(rating * scale) for rating in ratings] for ratings in exact]


LEVELS: dict[str, Callable[[Dogs], float | None]] = {"nominal": _nominal, "ordinal": _ordinal, "interval": _interval}
