"""An interval for a statistic that has no formula of its own: leave dogs out and see how far it moves."""

from collections.abc import Callable, Sequence
from math import sqrt
from typing import TypeVar

from scoring.agreement.coefficient import CONFIDENCE, Interval
from scoring.agreement.quantiles import t_quantile

Dog = TypeVar("Dog")
MOST_GROUPS = 100
HOW = "jackknife over dogs (Tukey 1958), Student's t"


def jackknife_interval(
    statistic: Callable[[Sequence[Dog]], float | None], dogs: Sequence[Dog], value: float
) -> Interval | str:
    """The 95 % interval of a statistic, centred on its value, or the reason why there is none.

    Rule: variance (G - 1)/G times the sum of squares of the leave-one-out values about their mean; Student's t with
    G - 1 degrees of freedom. Over 100 dogs, every hundredth dog is left out together (delete-a-group jackknife).
    Source: Tukey 1958, Ann Math Stat 29:614; Efron and Tibshirani 1993, An Introduction to the Bootstrap, ch. 11;
    Kott 2001, J Off Stat 17:521-526, for groups. Limits: few dogs make it rough; it takes the judges as they are.
    """
    groups = min(len(dogs), MOST_GROUPS)
    if groups < 3:
        return "fewer than three dogs"
    without = [statistic([dog for i, dog in enumerate(dogs) if i % groups != group]) for group in range(groups)]
    known = [each for each in without if each is not None]
    if len(known) < groups:
        return "it rests on a single dog"
    spread = _standard_error(known)
    if spread == 0:
        return "leaving any dog out changes nothing, which says nothing about other dogs"
    reach = t_quantile(0.5 + CONFIDENCE / 2, groups - 1) * spread
    return value - reach, value + reach


def _standard_error(values: Sequence[float]) -> float:
    count = len(values)
    if len(set(values)) == 1:
        return 0.0
    mean = sum(values) / count
    return sqrt((count - 1) / count * sum((each - mean) ** 2 for each in values))
