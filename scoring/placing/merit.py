"""Merit: what the marks leave of 100. Advice to the judge, never a result."""

import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache
from importlib.resources import files

from scoring.standards.model import BreedStandard, Scale

WHOLE = 100


@dataclass(frozen=True, slots=True)
class Lost:
    """What one mark loses: `loss` is the share of the point's weight, 0..1."""

    point: str
    mark: int
    loss: Fraction


@dataclass(frozen=True, slots=True)
class Merit:
    """Exact, so that two dogs tie only where they really do. `lost` is in the order of the standard."""

    value: Fraction
    lost: tuple[Lost, ...]

    def loss_at(self, point: str) -> Fraction:
        return next((lost.loss for lost in self.lost if lost.point == point), Fraction(0))


@lru_cache(maxsize=1)
def loss_steps() -> tuple[Fraction, ...]:
    """The loss of a mark 0, 1, 2 and 3 steps from what is asked."""
    text = files("scoring.placing").joinpath("data/loss.toml").read_text(encoding="utf-8")
    return tuple(Fraction(step) for step in tomllib.loads(text, parse_float=Decimal)["steps"])


def merit_of(standard: BreedStandard, marks: Mapping[str, int]) -> Merit:
    """100 less what the marks lose.

    Rule: 100 x (1 - sum(weight x loss(|mark|)) / sum(all weights)) over the standard's two-sided points.
    Source: ours; the weights too, unless the standard publishes a scale of points, which is then the weights.
    Limits: a point without a mark loses nothing; choices, teeth and numbers do not enter.
    Arguments: `marks` by point code, whole numbers from -3 to 3; marks of other points are ignored.
    Returns a merit from 0 to 100, exact.
    """
    losses = {point.code: loss_steps()[abs(marks.get(point.code, 0))] for point in standard.two_sided}
    value = what_is_left([(Fraction(point.weight or 0), losses[point.code]) for point in standard.two_sided])
    return Merit(value, tuple(Lost(point, marks[point], loss) for point, loss in losses.items() if loss))


def what_is_left(weighted: Iterable[tuple[Fraction, Fraction]]) -> Fraction:
    """100 less the weighted mean of the losses (0..1), in hundredths: one pair of weight and loss for each point."""
    pairs = list(weighted)
    total = sum((weight for weight, _ in pairs), Fraction(0))
    return WHOLE * (1 - sum((weight * loss for weight, loss in pairs), Fraction(0)) / total)


def grade_by_scale(scale: Scale, merit: Fraction) -> str | None:
    """The grade a published scale gives this merit: the best whose threshold it reaches, itself included.

    None where the scale gives no thresholds or the merit is below all of them.
    """
    return next((grade for grade, least in scale.thresholds if merit >= Fraction(least)), None)
