"""Several judges who give the same dogs numbers: intraclass correlation of a single judge."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import sqrt

from scoring.agreement.coefficient import CONFIDENCE, Coefficient, Interval, with_interval, without_value
from scoring.agreement.quantiles import f_quantile

HOW = "F distribution (Shrout and Fleiss 1979)"
AGREEMENT = "ICC(2,1), any judge, absolute agreement (Shrout and Fleiss 1979)"
CONSISTENCY = "ICC(3,1), these judges, consistency (Shrout and Fleiss 1979)"
UPPER = 0.5 + CONFIDENCE / 2
LARGEST = 10**100


@dataclass(frozen=True, slots=True)
class MeanSquares:
    """The two-way table's mean squares, exact: between dogs, between judges, and what is left."""

    dogs: int
    judges: int
    between_dogs: Fraction
    between_judges: Fraction
    error: Fraction


def icc_2_1(rows: Sequence[Sequence[float]]) -> Coefficient:
    """How well one judge, drawn from all judges, would agree with another about the same dogs.

    Rule: (MSD - MSE) / (MSD + (k - 1) MSE + k (MSJ - MSE)/n). Source: Shrout and Fleiss 1979, Psychol Bull 86:420-428,
    model 2; its interval by Satterthwaite's approximation.
    Limits: supposes normal errors; can be below 0. No interval where the approximate degrees of freedom fall under 1.
    Arguments: one row for each dog, one number from every judge in each.
    """
    reason = _unusable(rows)
    if reason:
        return without_value(AGREEMENT, reason)
    squares = mean_squares(rows)
    bottom = _agreement_bottom(squares)
    if bottom == 0:
        return without_value(AGREEMENT, "the parts of the variance cancel out")
    value = (squares.between_dogs - squares.error) / bottom
    if abs(value) > LARGEST:
        return without_value(AGREEMENT, "the parts of the variance cancel out")
    return with_interval(AGREEMENT, float(value), _agreement_interval(squares, value), HOW)


def icc_3_1(rows: Sequence[Sequence[float]]) -> Coefficient:
    """How well these judges keep the same differences between dogs, one judge's constant severity set aside.

    Rule: (MSD - MSE) / (MSD + (k - 1) MSE). Source: Shrout and Fleiss 1979, Psychol Bull 86:420-428, model 3.
    Limits: supposes normal errors and no lasting quarrel of one judge with one dog; lies between -1/(k - 1) and 1.
    Arguments: one row for each dog, one number from every judge in each.
    """
    reason = _unusable(rows)
    if reason:
        return without_value(CONSISTENCY, reason)
    squares = mean_squares(rows)
    bottom = squares.between_dogs + (squares.judges - 1) * squares.error
    if bottom == 0:
        return without_value(CONSISTENCY, "the judges do not tell the dogs apart")
    value = (squares.between_dogs - squares.error) / bottom
    return with_interval(CONSISTENCY, float(value), _consistency_interval(squares), HOW)


def least_real_change(rows: Sequence[Sequence[float]], *, same_judge: bool) -> float | None:
    """The smallest difference of two ratings that is more than the error of measurement, at 95 %.

    Rule: 1.96 sqrt(2) SEM; SEM squared is MSE for the same judge twice, and MSE plus the judges' variance, never below
    0, for any judge. Source: Weir 2005, J Strength Cond Res 19:231-240; de Vet et al. 2006, J Clin Epidemiol 59:1033.
    Arguments: one row for each dog, one number from every judge in each. Returns it in the unit of the ratings, None
    where there are fewer than two dogs or judges.
    """
    if len(rows) < 2 or len(rows[0]) < 2:
        return None
    squares = mean_squares(rows)
    judges = max(Fraction(0), (squares.between_judges - squares.error) / squares.dogs)
    return 1.96 * sqrt(2 * (squares.error + (0 if same_judge else judges)))


def mean_squares(rows: Sequence[Sequence[float]]) -> MeanSquares:
    """The two-way analysis of variance without repeats, exact. Needs two dogs and two judges or more."""
    table = [[Fraction(value) for value in row] for row in rows]
    dogs, judges = len(table), len(table[0])
    every = [value for row in table for value in row]
    correction = _total(every) ** 2 / (dogs * judges)
    by_dog = _squares([_total(row) for row in table]) / judges - correction
    by_judge = _squares([_total(column) for column in zip(*table, strict=True)]) / dogs - correction
    error = (_squares(every) - correction - by_dog - by_judge) / ((dogs - 1) * (judges - 1))
    return MeanSquares(dogs, judges, by_dog / (dogs - 1), by_judge / (judges - 1), error)


def _total(values: Iterable[Fraction]) -> Fraction:
    return sum(values, Fraction(0))


def _squares(values: Sequence[Fraction]) -> Fraction:
    return _total(value * value for value in values)


def _unusable(rows: Sequence[Sequence[float]]) -> str:
    if not rows:
        return "no dog was rated by every judge"
    if len(rows[0]) < 2:
        return "one judge cannot agree or disagree"
    if len(rows) < 2:
        return "one dog gives no differences between dogs"
    if len({value for row in rows for value in row}) == 1:
        return "every rating is the same"
    return ""


def _agreement_bottom(squares: MeanSquares) -> Fraction:
    n, k = squares.dogs, squares.judges
    return squares.between_dogs + (k - 1) * squares.error + k * (squares.between_judges - squares.error) / Fraction(n)


def _consistency_interval(squares: MeanSquares) -> Interval | str:
    if _error_vanishes(squares):
        return "no error is left to measure it by"
    ratio = float(squares.between_dogs / squares.error)
    above, below = squares.dogs - 1, (squares.dogs - 1) * (squares.judges - 1)
    low = ratio / f_quantile(UPPER, above, below)
    high = ratio * f_quantile(UPPER, below, above)
    return (low - 1) / (low + squares.judges - 1), (high - 1) / (high + squares.judges - 1)


def _agreement_interval(squares: MeanSquares, value: Fraction) -> Interval | str:
    if _error_vanishes(squares):
        return "no error is left to measure it by"
    n, k = squares.dogs, squares.judges
    freedom = _satterthwaite(squares, value)
    if freedom < 1:
        return "too few degrees of freedom"
    dogs = float(squares.between_dogs / squares.error)
    rest = k * float(squares.between_judges / squares.error) + k * n - k - n
    over, under = f_quantile(UPPER, n - 1, freedom), f_quantile(UPPER, freedom, n - 1)
    low = n * (dogs - over) / (over * rest + n * dogs)
    high = n * (under * dogs - 1) / (rest + n * under * dogs)
    return low, high


def _error_vanishes(squares: MeanSquares) -> bool:
    return squares.error * LARGEST <= squares.between_dogs + squares.between_judges


def _satterthwaite(squares: MeanSquares, value: Fraction) -> float:
    n, k = squares.dogs, squares.judges
    judges = k * value * squares.between_judges / squares.error
    error = n * (1 + (k - 1) * value) - k * value
    bottom = (n - 1) * judges**2 + error**2
    return float((k - 1) * (n - 1) * (judges + error) ** 2 / bottom) if bottom else 0.0
