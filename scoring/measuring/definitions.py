"""Every measurement, defined once: its landmarks, unit, need of a level, and formula.

Formulas of a side view work in the dog's own frame: x ahead of the dog, y downward, levelled by the ground line
where there is one (y is then counted from it). Formulas of a front or rear view work in the picture as it is.
Source: landmarks and lines are the trade's (common practice, no source), as the doors of this project list them.
Each formula raises ZeroDivisionError where its landmarks leave it undefined.
"""

from collections.abc import Callable, Collection
from dataclasses import dataclass
from typing import Literal

from scoring.measuring.geometry import Point, area_ratio, cross, distance, dot, off_line, vertex_angle
from scoring.measuring.landmarks import View
from scoring.measuring.uncertain import Uncertain, angle

# What the ground line is to a measurement: nothing; a refinement; needed before its reading can be told (roll goes
# straight into a plumb line); needed before it has a value.
Levelling = Literal["free", "better", "for-reading", "required"]
Unit = Literal["deg", "ratio"]
Formula = Callable[..., Uncertain]

DEFINED = "2026-11"


@dataclass(frozen=True, slots=True)
class Measurement:
    """One measurement. `formula` takes the landmarks' points in their order; `defined` dates the definition."""

    code: str
    view: View
    landmarks: tuple[str, ...]
    unit: Unit
    levelling: Levelling
    formula: Formula
    of_height: bool = False
    sd_of_logarithm: bool = False
    needs_facing: bool = False
    defined: str = DEFINED

    def sd(self, value: Uncertain, click_sd: float) -> float:
        return value.log_sd(click_sd) if self.sd_of_logarithm else value.sd(click_sd)


def falls_ahead(start: Point, end: Point) -> Uncertain:
    """Slope of a line to the level in degrees, positive where it falls toward the dog's front."""
    to = end - start
    return angle(to.y, to.x)


def falls_behind(start: Point, end: Point) -> Uncertain:
    """Slope of a line to the level in degrees, positive where it falls toward the dog's rear."""
    to = end - start
    return angle(to.y, -to.x)


def leans_ahead(top: Point, bottom: Point) -> Uncertain:
    """Angle of a line to the vertical in degrees, positive where its lower end lies ahead."""
    to = bottom - top
    return angle(to.x, to.y)


def wither_height(withers: Point, front_foot: Point) -> Uncertain:
    """The vertical from the withers to the middle of the near front pad, in pixels."""
    return front_foot.y - withers.y


def front_set(withers: Point, front_foot: Point) -> Uncertain:
    return (front_foot.x - withers.x) / wither_height(withers, front_foot)


def upper_arm_ratio(withers: Point, point_of_shoulder: Point, elbow: Point) -> Uncertain:
    return distance(point_of_shoulder, elbow) / distance(withers, point_of_shoulder)


def length_ratio(point_of_shoulder: Point, pin_bone: Point, withers: Point, front_foot: Point) -> Uncertain:
    return (point_of_shoulder.x - pin_bone.x) / wither_height(withers, front_foot)


def chest_depth(withers: Point, brisket: Point, front_foot: Point) -> Uncertain:
    return (brisket.y - withers.y) / wither_height(withers, front_foot)


def hock_height(hock: Point, rear_foot: Point, withers: Point, front_foot: Point) -> Uncertain:
    return (rear_foot.y - hock.y) / wither_height(withers, front_foot)


def front_reach(lead: Point, nose: Point, withers: Point) -> Uncertain:
    """The moving dog's feet leave the ground, so its height is taken to the ground line, where y is 0."""
    return (lead.x - nose.x) / -withers.y


def stride_balance(
    elbow: Point, front_lead: Point, front_trail: Point, stifle: Point, rear_lead: Point, rear_trail: Point
) -> Uncertain:
    return area_ratio((elbow, front_lead, front_trail), (stifle, rear_lead, rear_trail))


def bend_left(top: Point, middle: Point, foot: Point) -> Uncertain:
    return off_line(middle, top, foot)


def bend_right(top: Point, middle: Point, foot: Point) -> Uncertain:
    return -off_line(middle, top, foot)


def convergence(left_top: Point, left_foot: Point, right_top: Point, right_foot: Point) -> Uncertain:
    """Angle between the two legs' lines in degrees, positive where they approach toward the ground."""
    left, right = left_foot - left_top, right_foot - right_top
    return angle(cross(left, right), dot(left, right))


def _column(view: View, top: str, middle: str) -> tuple[Measurement, Measurement]:
    left, right = ((f"{side}-{top}", f"{side}-{middle}", f"{side}-foot") for side in ("left", "right"))
    return (
        Measurement("column-bend-left", view, left, "ratio", "free", bend_left),
        Measurement("column-bend-right", view, right, "ratio", "free", bend_right),
    )


def _convergence(view: View, top: str) -> Measurement:
    landmarks = (f"left-{top}", "left-foot", f"right-{top}", "right-foot")
    return Measurement("convergence", view, landmarks, "deg", "free", convergence)


_BLADE = ("withers", "point-of-shoulder")
_ARM = ("point-of-shoulder", "elbow")
_SIDE: View = "standing-side"
_TROT: View = "moving-side"

# Where one code has several entries in a view, the first whose landmarks are all clicked is the one in force.
MEASUREMENTS: tuple[Measurement, ...] = (
    Measurement("front-angle", _SIDE, (*_BLADE, "elbow"), "deg", "free", vertex_angle),
    Measurement("rear-angle", _SIDE, ("pin-bone", "stifle", "hock"), "deg", "free", vertex_angle),
    Measurement("hock-angle", _SIDE, ("stifle", "hock", "rear-foot"), "deg", "free", vertex_angle),
    Measurement("blade-slope", _SIDE, _BLADE, "deg", "required", falls_ahead),
    Measurement("arm-slope", _SIDE, _ARM, "deg", "required", falls_behind),
    Measurement(
        "pastern-slope", _SIDE, ("front-pastern", "front-foot"), "deg", "required", leans_ahead, needs_facing=True
    ),
    Measurement("croup-slope", _SIDE, ("croup-start", "pin-bone"), "deg", "required", falls_behind),
    Measurement("topline-slope", _SIDE, ("withers", "croup-start"), "deg", "required", falls_behind),
    Measurement(
        "front-set",
        _SIDE,
        ("withers", "front-foot"),
        "ratio",
        "for-reading",
        front_set,
        of_height=True,
        needs_facing=True,
    ),
    Measurement("upper-arm-ratio", _SIDE, (*_BLADE, "elbow"), "ratio", "free", upper_arm_ratio, sd_of_logarithm=True),
    Measurement(
        "length-ratio",
        _SIDE,
        ("point-of-shoulder", "pin-bone", "withers", "front-foot"),
        "ratio",
        "better",
        length_ratio,
        of_height=True,
    ),
    Measurement(
        "chest-depth", _SIDE, ("withers", "brisket", "front-foot"), "ratio", "better", chest_depth, of_height=True
    ),
    Measurement(
        "hock-height",
        _SIDE,
        ("hock", "rear-foot", "withers", "front-foot"),
        "ratio",
        "better",
        hock_height,
        of_height=True,
    ),
    Measurement(
        "front-reach",
        _TROT,
        ("front-foot-lead", "nose", "withers"),
        "ratio",
        "required",
        front_reach,
        of_height=True,
    ),
    Measurement(
        "stride-balance",
        _TROT,
        ("elbow", "front-foot-lead", "front-foot-trail", "stifle", "rear-foot-lead", "rear-foot-trail"),
        "ratio",
        "free",
        stride_balance,
        sd_of_logarithm=True,
    ),
    *_column("front", "shoulder", "pastern"),
    _convergence("front", "shoulder"),
    *_column("rear", "hip", "pastern"),
    *_column("rear", "hip", "hock"),
    _convergence("rear", "hip"),
)
CODES = tuple(dict.fromkeys(measurement.code for measurement in MEASUREMENTS))


def in_force(view: View, clicked: Collection[str]) -> tuple[Measurement, ...]:
    """The measurements of a view, one for each code, by the definition that the clicked landmarks allow."""
    chosen: dict[str, Measurement] = {}
    for measurement in MEASUREMENTS:
        if measurement.view == view:
            present = chosen.get(measurement.code)
            if present is None or (not _complete(present, clicked) and _complete(measurement, clicked)):
                chosen[measurement.code] = measurement
    return tuple(chosen.values())


def _complete(measurement: Measurement, clicked: Collection[str]) -> bool:
    return all(name in clicked for name in measurement.landmarks)
