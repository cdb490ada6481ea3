"""Points of a picture and the plane figures between them, y downward."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from scoring.measuring.uncertain import Uncertain, angle, length


@dataclass(frozen=True, slots=True)
class Point:
    x: Uncertain
    y: Uncertain

    def __sub__(self, other: "Point") -> "Point":
        return Point(self.x - other.x, self.y - other.y)

    def mirrored(self) -> "Point":
        return Point(-self.x, self.y)


def click(name: str, at: tuple[float, float]) -> Point:
    """A clicked point: its two coordinates err independently of each other and of every other name's."""
    return Point(Uncertain(at[0], {f"{name}.x": 1.0}), Uncertain(at[1], {f"{name}.y": 1.0}))


def dot(u: Point, v: Point) -> Uncertain:
    return u.x * v.x + u.y * v.y


def cross(u: Point, v: Point) -> Uncertain:
    return u.x * v.y - u.y * v.x


def distance(p: Point, q: Point) -> Uncertain:
    """Distance from p to q in pixels. Raises ZeroDivisionError where they coincide."""
    to = q - p
    return length(to.x, to.y)


def vertex_angle(one: Point, vertex: Point, other: Point) -> Uncertain:
    """Angle at `vertex` between the lines to the two others, 0 to 180 degrees.

    Raises ZeroDivisionError where an arm has no length.
    """
    u, v = one - vertex, other - vertex
    return angle(abs(cross(u, v)), dot(u, v))


def area(corners: Sequence[Point]) -> Uncertain:
    """Area of a polygon in square pixels, by the shoelace formula about its first corner."""
    first, *rest = corners
    sides = [corner - first for corner in rest]
    total = Uncertain(0.0, {})
    for u, v in pairwise(sides):
        total = total + cross(u, v)
    return abs(total.times(0.5))


def area_ratio(over: Sequence[Point], under: Sequence[Point]) -> Uncertain:
    """Area of one polygon over that of another; a click that both share is counted with its covariance.

    Rule: report ratio x exp(+-1.96 SD of the logarithm); "equal" is a statement about that interval.
    Raises ZeroDivisionError where the lower polygon has no area.
    """
    return area(over) / area(under)


def off_line(point: Point, start: Point, end: Point) -> Uncertain:
    """How far a point lies off the line from start to end, over that line's length; positive to the picture's left
    of a line that runs down it.

    Raises ZeroDivisionError where the line has no length.
    """
    line = end - start
    return cross(line, point - start) / dot(line, line)
