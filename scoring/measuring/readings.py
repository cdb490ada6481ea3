"""What a measured value says beside its target, as a statement about its 95 % interval."""

import math
from typing import Literal

from scoring.measuring.definitions import Measurement
from scoring.measuring.targets import Target

Reading = Literal[
    "as-asked",
    "perhaps-too-little",
    "perhaps-too-much",
    "a-little-little",
    "a-little-much",
    "much-too-little",
    "much-too-much",
    "cannot-be-told",
    "no-target",
    "withheld",
]
NORMAL_95 = 1.96


def interval(measurement: Measurement, value: float, sd: float) -> tuple[float, float]:
    """95 % interval of a value, in its unit: value x exp(+-1.96 SD) where the SD is of the logarithm.

    Limits: click error only. Raises OverflowError where a logarithm's SD is too large for the interval to be written.
    """
    if measurement.sd_of_logarithm:
        return value * math.exp(-NORMAL_95 * sd), value * math.exp(NORMAL_95 * sd)
    return value - NORMAL_95 * sd, value + NORMAL_95 * sd


def sd_needed(target: Target) -> float:
    """The largest SD, in the target's unit, that a reading can use: the 95 % interval then just fits the tolerance."""
    return target.tolerance / NORMAL_95


def too_few_pixels(measurement: Measurement, value: float, sd: float, target: Target) -> bool:
    """Whether the click error leaves the reading open: a larger picture, or steadier clicks, would close it."""
    # A ratio near 0 has a small SD in its unit and a boundless one of its logarithm, so the target's size counts too.
    in_unit = max(abs(value), target.value) * sd if measurement.sd_of_logarithm else sd
    return in_unit > sd_needed(target)


def reading_of(measurement: Measurement, value: float, sd: float, target: Target) -> Reading:
    """Where a value lies to its target.

    Rule: as asked within the tolerance, a little off within twice the tolerance, much off beyond; "perhaps" where the
    value is outside the tolerance and its interval is not. Steps: ours, no source.
    Limits: only for a value whose SD is small enough (`too_few_pixels`) and that nothing else puts in doubt.
    """
    low, high = interval(measurement, value, sd)
    least, most = target.value - target.tolerance, target.value + target.tolerance
    if least <= value <= most:
        return "as-asked"
    if value < least:
        return "perhaps-too-little" if high >= least else _degree(value, target, "a-little-little", "much-too-little")
    return "perhaps-too-much" if low <= most else _degree(value, target, "a-little-much", "much-too-much")


def _degree(value: float, target: Target, little: Reading, much: Reading) -> Reading:
    return little if abs(value - target.value) <= 2 * target.tolerance else much
