"""What repeated work tells: a person's own click error, and the least change that is more than error."""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from scoring.measuring.photo import Place


@dataclass(frozen=True, slots=True)
class OwnClicks:
    """SD of one click along each axis, in pixels, from `landmarks` landmarks that were marked twice."""

    sd_px: float
    landmarks: int


def own_click_sd(first: Mapping[str, Place], again: Mapping[str, Place]) -> OwnClicks | None:
    """A person's click SD from landmarks marked twice on the same picture; None where no landmark was.

    Rule: each axis of each repeated landmark gives the variance d^2/2; both axes are pooled, so the SD is
    sqrt(sum(dx^2 + dy^2) / (4 n)).
    Source: the within-subject SD of duplicate readings (Dahlberg 1940); independent clicks of equal SD per axis.
    Limits: says how steadily one person clicks, not whether the landmark lies there; few landmarks tell little.
    """
    names = first.keys() & again.keys()
    if not names:
        return None
    squares = math.fsum(math.dist(first[name], again[name]) ** 2 for name in sorted(names))
    return OwnClicks(math.sqrt(squares / (4 * len(names))), len(names))


def least_real_change(sem: float) -> float:
    """The least difference of two readings that click error alone exceeds once in twenty times.

    Rule: 1.96 sqrt(2) SEM, for two independent readings with the same standard error, in its unit.
    Limits: what the SEM leaves out (stance, where the landmark lies) is left out here too.
    """
    return 1.96 * math.sqrt(2) * sem
