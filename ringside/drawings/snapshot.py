"""The drawn dog as a picture in pixels, for shows whose dogs were never photographed, with where its landmarks lie."""

import io
from collections.abc import Mapping
from dataclasses import dataclass, replace

from PIL import Image, ImageDraw

from ringside.drawings import contours
from ringside.drawings.build import Build, landmarks
from ringside.drawings.curves import Point, sampled, smooth
from ringside.drawings.frame import Frame
from ringside.drawings.limbs import far_legs

SIZE = (1600, 1200)
HEIGHT_PX = 690.0  # the dog's height at the withers
WITHERS_X, GROUND_Y, HORIZON_Y = 1010.0, 1010.0, 640
SHARPER = 2  # drawn so much larger, then made smaller, so that edges are smooth
SKY, FAR_GRASS, GRASS, SHADOW = (214, 224, 226), (150, 166, 128), (126, 146, 104), (88, 106, 74)
COATS = {"blond": ((206, 170, 112), (164, 130, 82)), "dark": ((84, 72, 62), (58, 50, 44))}


@dataclass(frozen=True, slots=True)
class Snapshot:
    """A JPEG, and its landmarks and level line in pixels, y downward."""

    jpeg: bytes
    landmarks: Mapping[str, Point]
    ground: tuple[Point, Point]


def snapshot(build: Build, coat: str = "blond") -> Snapshot:
    """The dog from its right side, camera at a right angle, without perspective."""
    frame = Frame(replace(build, fringe=0.0), landmarks(build))
    picture = Image.new("RGB", (SIZE[0] * SHARPER, SIZE[1] * SHARPER), SKY)
    pen = ImageDraw.Draw(picture)
    _field(pen)
    near, far = COATS[coat]
    for leg in far_legs(frame):
        pen.polygon(_outline(leg.knots, closed=True), fill=far)
    for knots in contours.solids(frame).values():
        pen.polygon(_outline(knots, closed=True), fill=near)
    for line in contours.near_lines(frame):
        if line.filled:
            pen.polygon(_outline(line.knots, closed=True), fill=(40, 34, 30))
        else:
            pen.line(_outline(line.knots), fill=far, width=round(4 * SHARPER * line.weight), joint="curve")
    target = io.BytesIO()
    picture.resize(SIZE, Image.Resampling.LANCZOS).save(target, "JPEG", quality=90)
    marks = {name: place_of(place) for name, place in landmarks(build).items()}
    return Snapshot(target.getvalue(), marks, ((120.0, GROUND_Y), (1480.0, GROUND_Y)))


def place_of(point: Point) -> Point:
    """From heights at the withers, x ahead and y up, to pixels."""
    return WITHERS_X + HEIGHT_PX * point[0], GROUND_Y - HEIGHT_PX * point[1]


def _outline(knots: tuple[Point, ...] | list[Point], *, closed: bool = False) -> list[Point]:
    places = (place_of(point) for point in sampled(smooth(knots, closed=closed), 8))
    return [(x * SHARPER, y * SHARPER) for x, y in places]


def _field(pen: ImageDraw.ImageDraw) -> None:
    """Sky, a lawn that grows lighter into the distance, and the dog's shadow."""
    wide, high = SIZE[0] * SHARPER, SIZE[1] * SHARPER
    for y in range(HORIZON_Y * SHARPER, high):
        part = (y - HORIZON_Y * SHARPER) / (high - HORIZON_Y * SHARPER)
        colour = tuple(round(a + (b - a) * part) for a, b in zip(FAR_GRASS, GRASS, strict=True))
        pen.line([(0, y), (wide, y)], fill=colour)
    left, top = place_of((-1.05, 0.035))
    right, foot = place_of((0.3, -0.04))
    pen.ellipse([left * SHARPER, top * SHARPER, right * SHARPER, foot * SHARPER], fill=SHADOW)
