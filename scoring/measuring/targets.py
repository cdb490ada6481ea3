"""What a measurement is read against: the breed standard's figure where it is between the same landmarks, else the
trade's rule of thumb, else nothing.
"""

import re
from collections.abc import Iterable, Sequence
from dataclasses import asdict, dataclass
from typing import Any, Literal, Protocol

from scoring.measuring.definitions import Measurement
from scoring.measuring.rules_of_thumb import RulesOfThumb


class Figure(Protocol):
    """A measured value that a breed standard gives; `landmarks` says in its words between what."""

    @property
    def measurement(self) -> str: ...
    @property
    def value(self) -> float: ...
    @property
    def tolerance(self) -> float: ...
    @property
    def unit(self) -> str: ...
    @property
    def landmarks(self) -> str: ...
    @property
    def source(self) -> str: ...
    @property
    def verified(self) -> str: ...


@dataclass(frozen=True, slots=True)
class Target:
    """`value` and `tolerance` in the measurement's unit. A single figure of a standard has our tolerance round it."""

    value: float
    tolerance: float
    source: str
    verified: str
    kind: Literal["standard", "rule-of-thumb"]
    tolerance_from: Literal["standard", "ours"]
    landmarks: tuple[str, ...]

    def as_json(self) -> dict[str, Any]:
        return {**asdict(self), "landmarks": list(self.landmarks)}


def target_of(measurement: Measurement, figures: Iterable[Figure], rules: RulesOfThumb) -> Target | None:
    """The target of a measurement, or None where neither the standard nor the trade names one.

    Rule: a published figure goes before the rule of thumb, but only where it is defined by the same landmarks in the
    same unit; an angle between bones is not the angle between points on the skin.
    Limits: where the standard has one figure for dogs and another for bitches, both lie within the target.
    """
    return _published(measurement, matching(measurement, figures, rules), rules) or _of_the_trade(measurement, rules)


def matching(measurement: Measurement, figures: Iterable[Figure], rules: RulesOfThumb) -> tuple[Figure, ...]:
    """The figures that mean this measurement: same code, unit and landmarks."""
    return tuple(
        figure
        for figure in figures
        if figure.measurement == measurement.code
        and figure.unit == measurement.unit
        and landmarks_named(figure.landmarks, rules) == frozenset(measurement.landmarks)
    )


def landmarks_named(words: str, rules: RulesOfThumb) -> frozenset[str]:
    """The landmarks that a standard's words name, longest wording first; words that are no landmark name none."""
    spoken = sorted(rules.spoken, key=len, reverse=True)
    either = "|".join(map(re.escape, spoken))
    found = re.findall(rf"\b(?:{either})\b", words.lower().replace("-", " "))
    return frozenset(name for wording in found for name in rules.spoken[wording])


def span(figures: Sequence[Figure]) -> tuple[float, float]:
    """Least and most that these figures ask for, in their unit."""
    low = min(float(figure.value) - float(figure.tolerance) for figure in figures)
    return low, max(float(figure.value) + float(figure.tolerance) for figure in figures)


def _published(measurement: Measurement, figures: Sequence[Figure], rules: RulesOfThumb) -> Target | None:
    if not figures:
        return None
    low, high = span(figures)
    return Target(
        value=(low + high) / 2,
        tolerance=(high - low) / 2 if high > low else rules.tolerance[measurement.code],
        source=figures[0].source,
        verified=figures[0].verified,
        kind="standard",
        tolerance_from="standard" if high > low else "ours",
        landmarks=measurement.landmarks,
    )


def _of_the_trade(measurement: Measurement, rules: RulesOfThumb) -> Target | None:
    if measurement.code not in rules.target:
        return None
    return Target(
        value=rules.target[measurement.code],
        tolerance=rules.tolerance[measurement.code],
        source=rules.source,
        verified=rules.verified,
        kind="rule-of-thumb",
        tolerance_from="ours",
        landmarks=measurement.landmarks,
    )
