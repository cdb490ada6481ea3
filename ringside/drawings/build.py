"""A dog's build in a few figures, and the landmarks that follow from it.

Lengths are in heights at the withers, x forward from the withers, y up from the ground; slopes are degrees.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from ringside.drawings.curves import Point, between

Ear = Literal["drop", "erect", "folded"]
Tail = Literal["hanging", "sickle", "ring"]


@dataclass(frozen=True, slots=True)
class Build:
    """Our own drawing figures: no breed's standard, only a credible dog."""

    length: float = 1.10  # point of shoulder to pin bone, horizontally
    chest: float = 0.50  # depth at the brisket
    blade: float = 0.37
    blade_slope: float = 46
    arm: float = 0.33
    arm_slope: float = 51
    carpus: float = 0.175  # height of the front pastern
    pastern_slope: float = 12
    topline_slope: float = 2.4
    croup: float = 0.27
    croup_slope: float = 25
    thigh: float = 0.36
    thigh_slope: float = 71
    shank: float = 0.34
    shank_slope: float = 45
    neck: float = 0.41
    neck_slope: float = 59
    head: float = 0.42
    head_slope: float = 20
    muzzle: float = 0.5  # of the head
    stop: float = 1.0
    bone: float = 1.0
    flesh: float = 1.0
    tuck: float = 1.0
    ear: Ear = "drop"
    ear_size: float = 1.0
    tail: Tail = "hanging"
    tail_length: float = 1.0
    fringe: float = 0.0  # length of the long hair under the body, of the wither height


RECTANGULAR = Build()
SQUARE = Build(length=1.0, topline_slope=2.0, arm_slope=55, neck_slope=55, shank=0.33)
LONG_AND_LOW = Build(
    length=1.62,
    chest=0.66,
    blade=0.45,
    arm=0.43,
    carpus=0.15,
    topline_slope=1.0,
    croup=0.36,
    thigh=0.47,
    thigh_slope=66,
    shank=0.36,
    shank_slope=42,
    neck=0.56,
    neck_slope=48,
    head=0.62,
    head_slope=17,
    muzzle=0.54,
    stop=0.55,
    bone=1.12,
    flesh=1.35,
    tuck=0.45,
    ear_size=1.05,
    tail_length=1.1,
)


def _from(point: Point, length: float, slope: float, forward: int, upward: int) -> Point:
    turn = math.radians(slope)
    return (point[0] + forward * length * math.cos(turn), point[1] + upward * length * math.sin(turn))


def landmarks(build: Build) -> Mapping[str, Point]:
    """Every landmark of the standing side view, by its name in the measuring doors."""
    return {"withers": (0.0, 1.0), **_front(build), **_rear(build), **_head(build)}


def _front(build: Build) -> dict[str, Point]:
    shoulder = _from((0.0, 1.0), build.blade, build.blade_slope, 1, -1)
    elbow = _from(shoulder, build.arm, build.arm_slope, -1, -1)
    carpus = (elbow[0] + 0.012, build.carpus)
    foot = (carpus[0] + 0.02 + build.carpus * math.tan(math.radians(build.pastern_slope)), 0.0)
    return {
        "point-of-shoulder": shoulder,
        "elbow": elbow,
        "front-pastern": carpus,
        "front-foot": foot,
        "forechest": (shoulder[0] + 0.045 * build.flesh, shoulder[1] - 0.035),
        "brisket": (elbow[0] - 0.05, 1 - build.chest),
    }


def _rear(build: Build) -> dict[str, Point]:
    shoulder = _from((0.0, 1.0), build.blade, build.blade_slope, 1, -1)
    pin_x = shoulder[0] - build.length
    croup_x = pin_x + build.croup * math.cos(math.radians(build.croup_slope))
    croup = (croup_x, 1 + croup_x * math.tan(math.radians(build.topline_slope)))
    pin = _from(croup, build.croup, build.croup_slope, -1, -1)
    hip = between(croup, pin, 0.62, 0.035)
    stifle = _from(hip, build.thigh, build.thigh_slope, 1, -1)
    hock = _from(stifle, build.shank, build.shank_slope, -1, -1)
    return {
        "croup-start": croup,
        "pin-bone": pin,
        "tail-set": between(croup, pin, 0.8, -0.06),
        "hip": hip,
        "stifle": stifle,
        "hock": hock,
        "rear-foot": (hock[0] + 0.045, 0.0),
    }


def _head(build: Build) -> dict[str, Point]:
    occiput = _from((0.0, 1.0), build.neck, build.neck_slope, 1, 1)
    return {"occiput": occiput, "nose": _from(occiput, build.head, build.head_slope, 1, -1)}
