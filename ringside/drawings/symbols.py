"""How a mark looks at its place: too little and too much told by side and by filling, never by colour.

Too little is open and points down, too much is filled and points up; the size tells the degree. What is as asked is a
dot, what the judge praised a ring around it.
"""

from dataclasses import dataclass

from ringside.drawings.curves import Point

SIDES = {1: 7.0, 2: 9.5, 3: 12.0}
DOT, RING = 3.2, 8.5


@dataclass(frozen=True, slots=True)
class Shape:
    """A polygon, or a circle of `radius` around its only point; `filled` or drawn as a line."""

    points: tuple[Point, ...]
    radius: float
    filled: bool


def symbol(mark: int, is_praised: bool = False, at: Point = (0.0, 0.0)) -> tuple[Shape, ...]:
    """The shapes of one mark, -3..+3, around a point; y downward."""
    ring = (Shape((at,), RING, False),) if is_praised else ()
    if mark == 0:
        return (*ring, Shape((at,), DOT, True))
    return (*ring, Shape(_triangle(at, SIDES[abs(mark)], up=mark > 0), 0.0, mark > 0))


def _triangle(at: Point, side: float, *, up: bool) -> tuple[Point, ...]:
    tip = -side if up else side
    return ((at[0], at[1] + tip), (at[0] + 0.95 * side, at[1] - tip * 0.7), (at[0] - 0.95 * side, at[1] - tip * 0.7))
