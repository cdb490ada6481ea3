"""What a breed standard is, as frozen values. Every figure names its source and how well it is known.

`verified`: "read" was seen in a copy of the text, "derived" follows by arithmetic or by our own reading from what
was seen, "memory" is known but was not seen and is to be confirmed.
"""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from typing import Literal

Kind = Literal["two-sided", "choice", "set", "number", "yes-no"]
Sex = Literal["dog", "bitch"]
Standing = Literal["asked", "tolerated", "fault", "serious-fault", "disqualifying-fault"]
Verified = Literal["read", "derived", "memory"]

# From right to worst: a later standing outweighs an earlier one.
STANDINGS: tuple[Standing, ...] = ("asked", "tolerated", "fault", "serious-fault", "disqualifying-fault")
FAULTS: tuple[Standing, ...] = STANDINGS[2:]
MOST_STEPS = 3


class UnknownStandard(LookupError):
    """No standard has this code."""


@dataclass(frozen=True, slots=True)
class Option:
    """One option of a choice or set, and how the standard stands to it."""

    code: str
    standing: Standing
    source: str
    verified: Verified


@dataclass(frozen=True, slots=True)
class MarkFault:
    """A mark so far from what is asked that the standard lists it as a fault."""

    mark: int
    standing: Standing
    source: str
    verified: Verified


@dataclass(frozen=True, slots=True)
class Point:
    """One thing the standard describes. `asks` says in our words what it asks; `weight` is None unless two-sided."""

    code: str
    section: str
    kind: Kind
    name: str
    asks: str
    source: str
    verified: Verified
    weight: Decimal | None = None
    weight_source: str | None = None
    low: str | None = None
    high: str | None = None
    options: tuple[Option, ...] = ()
    mark_faults: tuple[MarkFault, ...] = ()
    unit: str | None = None
    least: float | None = None
    most: float | None = None
    sex: Sex | None = None
    when_no: Option | None = None

    def option(self, code: str) -> Option | None:
        return next((option for option in self.options if option.code == code), None)

    def is_for(self, sex: Sex | None) -> bool:
        """Whether this point is looked at in a dog of that sex; where the sex is not known, it may be."""
        return self.sex is None or sex is None or self.sex == sex


@dataclass(frozen=True, slots=True)
class Beyond:
    """How a value stands that lies more than `more_than` units outside a range."""

    more_than: float
    standing: Standing
    source: str
    verified: Verified


@dataclass(frozen=True, slots=True)
class Size:
    """The range of one number (height, weight) for one sex, both ends included, and the ideal inside it."""

    point: str
    sex: Sex | None
    low: float
    high: float
    ideal_low: float | None
    ideal_high: float | None
    unit: str
    beyond: tuple[Beyond, ...]
    source: str
    verified: Verified


@dataclass(frozen=True, slots=True)
class SizeBand:
    """A size that a number decides: over `over`, up to and including `up_to`; None is no limit."""

    size: str
    point: str
    over: float | None
    up_to: float | None
    source: str
    verified: Verified

    def holds(self, value: float) -> bool:
        return (self.over is None or value > self.over) and (self.up_to is None or value <= self.up_to)


@dataclass(frozen=True, slots=True)
class Variety:
    """The unit that competes for certificates where a breed has several."""

    code: str
    name: str
    coat: str | None
    size: str | None
    source: str
    verified: Verified


@dataclass(frozen=True, slots=True)
class TeethClause:
    """At least `at_least` of `teeth` missing, and at least `in_all` teeth missing in all, stand so."""

    code: str
    teeth: frozenset[int]
    at_least: int
    in_all: int
    standing: Standing
    source: str
    verified: Verified


@dataclass(frozen=True, slots=True)
class Teeth:
    """What the standard says of missing teeth; `not_counted` are never missed."""

    not_counted: frozenset[int]
    clauses: tuple[TeethClause, ...]


@dataclass(frozen=True, slots=True)
class Figure:
    """A measured value the standard gives. `landmarks` says between what; "bones" is not what a photo shows.

    `low` and `high` are the ends of the published range, or both the one published value.
    """

    measurement: str
    low: float
    high: float
    unit: str
    landmarks: str
    sex: Sex | None
    source: str
    verified: Verified

    @property
    def value(self) -> float:
        return (self.low + self.high) / 2

    @property
    def tolerance(self) -> float:
        return (self.high - self.low) / 2


@dataclass(frozen=True, slots=True)
class ScaleItem:
    """One line of a published scale of points and the points of ours that share it."""

    name: str
    worth: Decimal
    points: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Scale:
    """A published scale of points; `thresholds` are the least merit of each grade, best first, where it gives them."""

    items: tuple[ScaleItem, ...]
    thresholds: tuple[tuple[str, Decimal], ...]
    source: str
    verified: Verified


@dataclass(frozen=True, slots=True)
class BreedStandard:
    code: str
    name: str
    also: tuple[str, ...]
    authority: str
    number: int
    group: int
    edition: date
    source: str
    verified: Verified
    sources: tuple[tuple[str, str], ...]
    caveats: tuple[str, ...]
    colours: tuple[str, ...]
    varieties: tuple[Variety, ...]
    size_bands: tuple[SizeBand, ...]
    points: tuple[Point, ...]
    sizes: tuple[Size, ...]
    teeth: Teeth | None
    figures: tuple[Figure, ...]
    scale: Scale | None

    @property
    def two_sided(self) -> tuple[Point, ...]:
        return tuple(point for point in self.points if point.kind == "two-sided")

    def point(self, code: str) -> Point | None:
        return next((point for point in self.points if point.code == code), None)

    def size(self, point: str, sex: Sex | None) -> Size | None:
        """The range of a number for this sex; None where the standard gives none or the sex is not known."""
        return next((size for size in self.sizes if size.point == point and size.sex in (None, sex)), None)
