"""A line of the drawing, and the ways to name a place on a dog, in heights at the withers, y upward."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from ringside.drawings.build import Build
from ringside.drawings.curves import Point, between

Tone = Literal["near", "far", "detail"]


@dataclass(frozen=True, slots=True)
class Line:
    name: str
    knots: tuple[Point, ...]
    weight: float = 1.0
    taper: tuple[float, float] = (0.3, 0.3)
    tone: Tone = "near"
    filled: bool = False


@dataclass(frozen=True, slots=True)
class Frame:
    """A build with its landmarks, and the ways to name a place on the dog."""

    build: Build
    marks: Mapping[str, Point]

    def at(self, name: str, x: float = 0.0, y: float = 0.0) -> Point:
        mark = self.marks[name]
        return (mark[0] + x, mark[1] + y)

    def on(self, a: str, b: str, t: float, aside: float = 0.0) -> Point:
        return between(self.marks[a], self.marks[b], t, aside)

    def head(self, u: float, v: float) -> Point:
        """In head lengths from the occiput: u along skull and bridge, v up from them."""
        occiput, nose = complex(*self.marks["occiput"]), complex(*self.marks["nose"])
        point = occiput + complex(u, v) * (nose - occiput) / complex(1.03, -0.11)
        return (point.real, point.imag)

    def face(self, t: float, v: float) -> Point:
        """As `head`, with t 0 at the stop and 1 at the end of the nose, whatever the length of the muzzle."""
        stop = 1.0 - self.build.muzzle
        return self.head(stop + t * self.build.muzzle, v)
