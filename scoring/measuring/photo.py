"""What was clicked on one photo, and the level frame it is measured in."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property

from scoring.measuring.geometry import Point, click, cross, distance, dot
from scoring.measuring.landmarks import ABOVE, AHEAD, SIDE_VIEWS, Pair, View
from scoring.measuring.uncertain import Uncertain, angle

Place = tuple[float, float]


@dataclass(frozen=True)
class Photo:
    """Clicks in pixels, y downward. `click_sd` is the SD of one click along each axis; `ground` has no direction."""

    view: View
    landmarks: Mapping[str, Place]
    click_sd: float
    ground: tuple[Place, Place] | None = None
    size: tuple[float, float] | None = None

    @cached_property
    def points(self) -> Mapping[str, Point]:
        """The landmarks as they were clicked."""
        return {name: click(name, at) for name, at in self.landmarks.items()}

    @cached_property
    def ground_line(self) -> tuple[Point, Point] | None:
        """The two ground clicks in the order that has the dog upright; None where there is no line.

        Where the landmarks do not tell, the line runs from left to right.
        """
        if self.ground is None or self.ground[0] == self.ground[1]:
            return None
        start, end = (click(name, at) for name, at in zip(("ground-1", "ground-2"), self.ground, strict=True))
        if self.ground[0] > self.ground[1]:
            start, end = end, start
        heights = {name: -cross(end - start, point - start).value for name, point in self.points.items()}
        return (end, start) if vote(heights, ABOVE) < 0 else (start, end)

    @cached_property
    def roll(self) -> Uncertain | None:
        """Camera roll in degrees: the direction of the ground line, positive where it falls to the right."""
        if self.ground_line is None:
            return None
        start, end = self.ground_line
        along = end - start
        return angle(along.y, along.x)

    @cached_property
    def level_points(self) -> Mapping[str, Point]:
        """The landmarks turned by minus the roll, the ground line at y 0; as clicked where there is no ground line."""
        if self.ground_line is None:
            return self.points
        start, end = self.ground_line
        size = distance(start, end)
        along = end - start
        return {
            name: Point(dot(along, point - start) / size, cross(along, point - start) / size)
            for name, point in self.points.items()
        }

    @cached_property
    def facing(self) -> int | None:
        """+1 where the dog faces the picture's right, -1 its left, None where the landmarks do not tell.

        Every pair of landmarks of which one lies ahead of the other on any dog votes; a tie falls to the nose.
        """
        if self.view not in SIDE_VIEWS:
            return None
        along = {name: point.x.value for name, point in self.level_points.items()}
        votes = vote(along, AHEAD) or vote(along, [pair for pair in AHEAD if "nose" in pair])
        # A dog's front pad lies ahead of its pastern joint; asked only where nothing better is known.
        votes = votes or vote(along, [("front-foot", "front-pastern")])
        return None if votes == 0 else (1 if votes > 0 else -1)

    @cached_property
    def dog_points(self) -> Mapping[str, Point]:
        """The level landmarks with x ahead of the dog; to the picture's right where its facing is unknown."""
        if self.facing != -1:
            return self.level_points
        return {name: point.mirrored() for name, point in self.level_points.items()}


def vote(along: Mapping[str, float], pairs: Iterable[Pair]) -> int:
    """How many pairs have their first landmark further along than their second, less those that have not."""
    found = [(along[first], along[second]) for first, second in pairs if first in along and second in along]
    return sum((one > other) - (one < other) for one, other in found)
