"""What a reading owes to a dog that stands at an angle to the picture, which no click error holds."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import product

from scoring.measuring.definitions import in_force
from scoring.measuring.landmarks import SIDE_VIEWS
from scoring.measuring.photo import Photo, Place
from scoring.measuring.uncertain import Uncertain
from scoring.measuring.withholding import measured

# How near the camera is taken to stand, in heights at the withers: 2.4 m from a dog of 60 cm. The page asks for 3 m, so
# that the span holds what a photo taken as asked may hide. Ours, no source.
HEIGHTS_AWAY = 4.0


@dataclass(frozen=True, slots=True)
class Span:
    """Least and most that the dog itself may have, in the measurement's unit, the clicks taken as exact."""

    low: float
    high: float


def spans(photo: Photo, degrees: float) -> Mapping[str, Span]:
    """What each measurement of a side view would be on the dog, had it stood turned by so many degrees.

    Rule: the picture is taken back through a pinhole camera at half the dog's height, HEIGHTS_AWAY from it, turned to
    either side, with the level line clicked along the dog's feet or along something that is level in the picture; the
    span holds all four and the reading itself.
    Source: the pinhole camera, plane geometry; checked against drawn dogs in tests/browser/photos.
    Limits: the dog is taken as flat; where withers, foot or the side it faces are not known there is no span.
    """
    plain = _values(photo)
    found: dict[str, list[float]] = {code: [value] for code, value in plain.items()}
    for turned in _turned(photo, math.radians(degrees)):
        for code, value in _values(turned).items():
            found.setdefault(code, []).append(value)
    return {code: Span(min(values), max(values)) for code, values in found.items() if len(values) == 5}


def _values(photo: Photo) -> Mapping[str, float]:
    found = ((one.code, measured(photo, one)) for one in in_force(photo.view, photo.landmarks))
    return {code: quantity.value for code, quantity in found if isinstance(quantity, Uncertain)}


def _turned(photo: Photo, yaw: float) -> Iterator[Photo]:
    """The photo as it would be had the dog stood at a right angle, for every way of being turned."""
    level = {name: (point.x.value, point.y.value) for name, point in photo.level_points.items()}
    height = _height(photo, level)
    if photo.view not in SIDE_VIEWS or not height:
        return
    along = [x for x, _ in level.values()]
    ground = level["front-foot"][1] if photo.ground_line is None else 0.0
    if "front-foot" in level:
        ground = max(ground, level["front-foot"][1])
    middle = ((min(along) + max(along)) / 2, ground - height / 2)
    ends: tuple[Place, Place] = ((min(along), ground), (max(along) + 1, ground))
    for sign, at_feet in product((-1, 1), (True, False)):
        back = _Back(middle, height * HEIGHTS_AWAY, sign * yaw, height / 2 if at_feet else 0.0)
        # A level line that is level in the picture is level on the dog too.
        line = (back(ends[0]), back(ends[1])) if at_feet else ends
        moved = {name: back(place) for name, place in level.items()}
        yield replace(photo, landmarks=moved, ground=photo.ground_line and line, size=None)


def _height(photo: Photo, level: Mapping[str, Place]) -> float:
    """The height at the withers in pixels; 0 where it is not known."""
    if "withers" not in level:
        return 0.0
    if "front-foot" in level:
        return max(level["front-foot"][1] - level["withers"][1], 0.0)
    return max(-level["withers"][1], 0.0) if photo.ground_line else 0.0


@dataclass(frozen=True, slots=True)
class _Back:
    """From a place in the level picture to the dog's own plane, `away` pixels off and turned by `yaw` radians.

    A level line along the feet of a turned dog tilts in the picture by atan(below tan(yaw) / away), with `below` the
    camera's height over the ground; levelled by it, the whole picture was tilted back by as much.
    """

    middle: Place
    away: float
    yaw: float
    below: float

    def __call__(self, place: Place) -> Place:
        tilt = -math.atan(self.below * math.tan(self.yaw) / self.away)
        x, y = place[0] - self.middle[0], place[1] - self.middle[1]
        u, v = x * math.cos(tilt) - y * math.sin(tilt), x * math.sin(tilt) + y * math.cos(tilt)
        across = u * self.away / (self.away * math.cos(self.yaw) - u * math.sin(self.yaw))
        return across + self.middle[0], v * (1 + across * math.sin(self.yaw) / self.away) + self.middle[1]
