"""The lines of a measured photo as values that a page draws over it: paths, plumb lines, levels, points, labels."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from ringside.photos.marks import LANDMARKS, LINES, Line
from ringside.photos.models import Photo
from ringside.photos.words import landmark_words, number_words

Place = Sequence[float]
LEVEL_LENGTH = 0.22  # of the picture's height: how far a level line runs out from its landmark
OF_WIDTH = 0.011  # half the size of a point over the picture's width


@dataclass(frozen=True, slots=True)
class DrawnLine:
    kind: str
    points: str


@dataclass(frozen=True, slots=True)
class Dot:
    name: str
    x: float
    y: float


@dataclass(frozen=True, slots=True)
class Label:
    words: str
    x: float
    y: float


@dataclass(frozen=True, slots=True)
class Drawn:
    lines: tuple[DrawnLine, ...]
    dots: tuple[Dot, ...]
    labels: tuple[Label, ...]
    radius: float
    text: float


def drawn_lines(photo: Photo) -> Drawn:
    """Every line whose landmarks are all marked, and the angles written at their vertex."""
    order = [landmark.code for landmark in LANDMARKS[photo.view]]
    marked = {name: photo.landmarks[name] for name in order if name in photo.landmarks}
    lines = [line for line in LINES[photo.view] if all(name in marked for name in line.landmarks)]
    return Drawn(
        lines=(*_ground(photo), *(_drawn(line, marked, photo) for line in lines)),
        dots=tuple(Dot(landmark_words(name), *place) for name, place in marked.items()),
        labels=tuple(_labels(photo, lines, marked)),
        radius=photo.width * OF_WIDTH,
        text=photo.width * OF_WIDTH * 3.2,
    )


def _ground(photo: Photo) -> Iterator[DrawnLine]:
    if photo.ground:
        yield DrawnLine("ground", _points(*photo.ground))


def _drawn(line: Line, marked: Mapping[str, Place], photo: Photo) -> DrawnLine:
    places = [marked[name] for name in line.landmarks]
    if line.kind == "plumb":
        return DrawnLine("plumb", _points(places[0], _plumb_end(places[0], photo)))
    if line.kind == "level":
        return DrawnLine("level", _points(places[0], _level_end(places, photo)))
    if line.kind == "triangle":
        return DrawnLine("triangle", _points(*places, places[0]))
    return DrawnLine(line.kind, _points(*places))


def _level(photo: Photo) -> tuple[float, float]:
    """The level's direction in the picture, as a unit vector to the right."""
    if not photo.ground or photo.ground[0] == photo.ground[1]:
        return 1.0, 0.0
    (x1, y1), (x2, y2) = sorted(photo.ground)
    long = math.hypot(x2 - x1, y2 - y1)
    return (x2 - x1) / long, (y2 - y1) / long


def _plumb_end(start: Place, photo: Photo) -> Place:
    """Down to the ground line, or to the picture's lower edge where there is none."""
    x, y = _level(photo)
    if not photo.ground:
        return start[0], float(photo.height)
    ground = photo.ground[0]
    down = (ground[1] - start[1]) * x - (ground[0] - start[0]) * y
    return start[0] - y * down, start[1] + x * down


def _level_end(places: Sequence[Place], photo: Photo) -> Place:
    x, y = _level(photo)
    long = LEVEL_LENGTH * photo.height * (1 if places[1][0] > places[0][0] else -1)
    return places[0][0] + x * long, places[0][1] + y * long


def _labels(photo: Photo, lines: Sequence[Line], marked: Mapping[str, Place]) -> Iterator[Label]:
    values = {one["code"]: one for one in photo.measured.get("measurements", []) if one["value"] is not None}
    for line in lines:
        one = values.get(line.measurement)
        if one and one["unit"] == "deg" and line.kind == "path" and len(line.landmarks) == 3:
            x, y = marked[line.landmarks[1]]
            yield Label(number_words(one["value"], "deg"), x + photo.width * OF_WIDTH * 1.8, y)


def _points(*places: Place) -> str:
    return " ".join(f"{x:.1f},{y:.1f}" for x, y in places)
