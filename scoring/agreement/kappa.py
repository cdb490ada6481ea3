"""Two judges who put the same dogs into categories: kappa and weighted kappa."""

from collections import Counter
from collections.abc import Callable, Sequence
from math import sqrt
from statistics import NormalDist

from scoring.agreement.coefficient import CONFIDENCE, Coefficient, Interval, with_interval, without_value

Category = float | str
Pair = tuple[Category, Category]
Disagreement = Callable[[Category, Category], float]
HOW = "large-sample standard error (Fleiss, Cohen and Everitt 1969)"
ROUNDING = 1e-12


def kappa(pairs: Sequence[Pair]) -> Coefficient:
    """How far two judges agree beyond chance, every disagreement counting alike.

    Rule: (observed - chance agreement) / (1 - chance agreement). Source: Cohen 1960, Educ Psychol Meas 20:37-46.
    Interval and limits as for `weighted_kappa`.
    """
    return _kappa("Cohen's kappa (1960)", pairs, lambda one, other: float(one != other))


def weighted_kappa(pairs: Sequence[Pair], disagreement: Disagreement, weights: str) -> Coefficient:
    """How far two judges agree beyond chance, where some disagreements are worse than others.

    Rule: 1 - mean disagreement seen / mean disagreement if each judge's ratings were dealt out at random.
    Source: Cohen 1968, Psychol Bull 70:213-220; interval Fleiss, Cohen and Everitt 1969, Psychol Bull 72:323-327.
    Limits: the interval is for large samples and cut at -1 and 1; there is none when the judges agree on every dog.
    Arguments: one pair of ratings for each dog; `disagreement` of two categories, 0 for the same; `weights` in words.
    """
    return _kappa(f"Weighted kappa (Cohen 1968), {weights} weights", pairs, disagreement)


def by_distance(power: int, span: float) -> Disagreement:
    """Linear (1) or quadratic (2) disagreement: their distance as a part of the span, raised to the power."""
    return lambda one, other: (abs(float(one) - float(other)) / span) ** power if one != other else 0.0


def _kappa(method: str, pairs: Sequence[Pair], disagreement: Disagreement) -> Coefficient:
    if not pairs:
        return without_value(method, "no dog was rated by both judges")
    table = _Table(pairs, disagreement)
    if table.by_chance == 0:
        return without_value(method, "the ratings do not vary, so no disagreement could be expected by chance")
    value = 1 - table.seen / table.by_chance
    return with_interval(method, value, _interval(table, value), HOW)


class _Table:
    """Proportions of each pair of categories, and what disagreement they hold."""

    def __init__(self, pairs: Sequence[Pair], disagreement: Disagreement) -> None:
        self.count = len(pairs)
        self.cells = Counter(pairs)
        self.first = Counter(one for one, _ in pairs)
        self.second = Counter(other for _, other in pairs)
        self.worse = disagreement
        self.seen = sum(n * disagreement(*pair) for pair, n in self.cells.items()) / self.count
        self.first_mean = {one: self._against(self.second, one, first=True) for one in self.first}
        self.second_mean = {other: self._against(self.first, other, first=False) for other in self.second}
        self.by_chance = sum(n * self.first_mean[one] for one, n in self.first.items()) / self.count

    def _against(self, margin: Counter[Category], category: Category, *, first: bool) -> float:
        """Mean disagreement of one judge's category with all that the other judge gave."""
        total = sum(
            n * (self.worse(category, each) if first else self.worse(each, category)) for each, n in margin.items()
        )
        return total / self.count


def _interval(table: _Table, value: float) -> Interval | str:
    """Delta method on multinomial cells: the published formula, rewritten for disagreement weights."""
    if table.seen == 0:
        return "the judges agree on every dog, where the large-sample error vanishes"
    share = 1 - value
    influence = [
        (n, table.worse(one, other) - share * (table.first_mean[one] + table.second_mean[other]))
        for (one, other), n in table.cells.items()
    ]
    square = sum(n * each * each for n, each in influence) / table.count
    # The mean of the influences is seen - 2 share by_chance, that is -seen.
    variance = square - table.seen**2
    if variance <= ROUNDING * square:
        return "the large-sample error vanishes"
    reach = NormalDist().inv_cdf(0.5 + CONFIDENCE / 2) * sqrt(variance / table.count) / table.by_chance
    return max(-1.0, value - reach), min(1.0, value + reach)
