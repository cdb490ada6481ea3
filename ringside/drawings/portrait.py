"""Drawn pictures of dogs that nobody has photographed: the parametric dog with a breed's build and a coat in hatching.

The builds and coats are our drawing figures, so that one dog can be told from another; no standard speaks here.
"""

import zlib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from ringside.drawings import contours
from ringside.drawings.build import LONG_AND_LOW, RECTANGULAR, SQUARE, Build, landmarks
from ringside.drawings.curves import Point, sampled, smooth
from ringside.drawings.frame import Frame
from ringside.drawings.hatching import Segment, hatched
from ringside.drawings.outline import outline, penned, sheet_of
from ringside.drawings.svg import dog, picture

Shape = list[Point]


@dataclass(frozen=True, slots=True)
class Hatch:
    """Pen strokes over one area of the dog: their distance in heights at the withers, slope and width."""

    area: str
    spacing: float
    slope: float
    width: float


@dataclass(frozen=True, slots=True)
class Portrait:
    build: Build
    coat: tuple[Hatch, ...]


MASK = Hatch("muzzle", 0.008, 52, 1.9)
DARK_MANTLE = (Hatch("mantle", 0.0105, 66, 2.4), Hatch("mantle", 0.03, 20, 1.2))
COATS: Mapping[str, tuple[Hatch, ...]] = {
    "blond": (Hatch("whole", 0.034, 72, 0.9),),
    "fawn": (Hatch("whole", 0.024, 72, 1.0), MASK),
    "grey": (Hatch("mantle", 0.014, 66, 1.4), Hatch("whole", 0.028, 72, 0.9), MASK),
    "black": (Hatch("whole", 0.0105, 66, 2.4), Hatch("whole", 0.03, 20, 1.2)),
    "black-and-tan": (*DARK_MANTLE, Hatch("whole", 0.028, 72, 0.9)),
    "tricolour": (*DARK_MANTLE, Hatch("legs", 0.026, 72, 0.9)),
}
BUILDS: Mapping[str, Build] = {
    "boxer": replace(SQUARE, muzzle=0.36, stop=1.9, head=0.41, neck_slope=62, ear_size=0.8, tuck=1.25, tail="sickle"),
    "rottweiler": replace(
        RECTANGULAR, head=0.43, muzzle=0.42, stop=1.35, bone=1.12, flesh=1.2, ear_size=0.75, neck=0.38
    ),
    "german-shepherd-dog": replace(
        RECTANGULAR,
        length=1.15,
        ear="erect",
        ear_size=1.05,
        topline_slope=4.5,
        stop=0.7,
        tail_length=1.08,
        fringe=0.035,
    ),
    "hovawart": replace(RECTANGULAR, length=1.13, fringe=0.06, ear_size=0.9, tail_length=1.1),
    "bernese-mountain-dog": replace(RECTANGULAR, head=0.42, bone=1.15, fringe=0.07, ear_size=0.85, stop=1.2, neck=0.37),
    "dachshund": LONG_AND_LOW,
}
COATS_OF: Mapping[str, tuple[str, ...]] = {
    "boxer": ("fawn",),
    "rottweiler": ("black-and-tan",),
    "german-shepherd-dog": ("grey", "black-and-tan"),
    "hovawart": ("blond", "black", "black-and-tan"),
    "bernese-mountain-dog": ("tricolour",),
    "dachshund": ("black-and-tan",),
}


def build_of(breed: str) -> Build:
    """The drawing figure of a breed; a working dog of ordinary proportions where we have none."""
    return BUILDS.get(breed, RECTANGULAR)


def portrait_of(breed: str, name: str) -> Portrait:
    """A dog of this breed, the same whenever it has the same name: a little longer or shorter, one of the coats."""
    seed = zlib.crc32(name.encode("utf-8", "replace"))
    coats = COATS_OF.get(breed, tuple(COATS))
    return Portrait(_varied(build_of(breed), seed), COATS[coats[seed % len(coats)]])


def _varied(build: Build, seed: int) -> Build:
    def by(step: int, most: float) -> float:
        """Between -most and +most, one of five values."""
        return most * ((seed >> step) % 5 - 2) / 2

    return replace(
        build,
        length=build.length + by(3, 0.03),
        neck=build.neck + by(6, 0.025),
        neck_slope=build.neck_slope + by(9, 3.0),
        head_slope=build.head_slope + by(12, 4.0),
        croup_slope=build.croup_slope + by(15, 3.0),
        ear_size=build.ear_size * (1 + by(18, 0.08)),
        tail_length=build.tail_length * (1 + by(21, 0.08)),
    )


def portrait_svg(portrait: Portrait, title: str = "") -> str:
    """The picture as SVG, ink in the colour of the text around it."""
    drawn = outline(portrait.build)
    return picture("portrait", drawn, dog(drawn, coat_paths(portrait)), title)


def coat_paths(portrait: Portrait) -> list[tuple[float, str]]:
    """The width and the pen strokes of each hatch of the coat, in the picture of `outline(portrait.build)`."""
    frame = Frame(portrait.build, landmarks(portrait.build))
    sheet = sheet_of(portrait.build)
    areas = _areas(frame)
    return [(hatch.width, penned(_strokes(hatch, areas), sheet)) for hatch in portrait.coat]


def _strokes(hatch: Hatch, areas: Mapping[str, list[Shape]]) -> list[Segment]:
    return hatched(areas[hatch.area], hatch.spacing, hatch.slope)


def _areas(frame: Frame) -> dict[str, list[Shape]]:
    solids = {name: _dense(knots) for name, knots in contours.solids(frame).items()}
    return {
        "whole": list(solids.values()),
        "legs": [solids["forequarters"], solids["hindquarters"]],
        "muzzle": [_dense(_muzzle(frame))],
        "mantle": [_dense(_mantle(frame)), solids["tail"], _dense(_cap(frame))],
    }


def _dense(knots: Iterable[Point]) -> Shape:
    return sampled(smooth([*knots], closed=True), 5)


def _muzzle(frame: Frame) -> tuple[Point, ...]:
    return (
        frame.face(0.45, -0.075), frame.face(0.86, -0.07), frame.face(0.98, -0.16), frame.face(0.96, -0.27),
        frame.face(0.82, -0.37), frame.face(0.5, -0.4), frame.face(0.32, -0.34), frame.face(0.34, -0.2),
    )  # fmt: skip


def _mantle(frame: Frame) -> tuple[Point, ...]:
    """Back, loin, croup, upper thigh, upper shoulder and the crest of the neck."""
    behind = contours.back(frame)
    return (
        *behind,
        frame.head(0.2, -0.25),
        frame.on("occiput", "point-of-shoulder", 0.5, 0.03),
        frame.on("withers", "point-of-shoulder", 0.85, 0.02),
        frame.on("point-of-shoulder", "elbow", 0.5, -0.08),
        frame.at("brisket", -0.12, 0.13),
        frame.at("stifle", 0.1, 0.2),
        frame.on("hip", "stifle", 0.5, 0.0),
        frame.on("pin-bone", "stifle", 0.2, 0.0),
        frame.at("pin-bone", 0.0, -0.02),
    )


def _cap(frame: Frame) -> tuple[Point, ...]:
    return (
        frame.head(0.0, 0.0), frame.head(0.14, 0.035), frame.head(0.3, 0.04), frame.face(-0.08, -0.01),
        frame.face(-0.14, -0.16), frame.head(0.24, -0.3), frame.head(0.04, -0.2),
    )  # fmt: skip
