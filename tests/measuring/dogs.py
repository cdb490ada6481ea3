"""Invented dogs: landmarks of a dog facing right, 900 px at the withers, and what photographing does to them."""

import math
from dataclasses import dataclass, replace

from numpy.random import Generator

Place = tuple[float, float]

STANDING: dict[str, Place] = {
    "withers": (1500.0, 500.0),
    "point-of-shoulder": (1730.0, 742.0),
    "elbow": (1520.0, 960.0),
    "front-pastern": (1530.0, 1310.0),
    "front-foot": (1545.0, 1400.0),
    "forechest": (1752.0, 790.0),
    "brisket": (1480.0, 975.0),
    "croup-start": (860.0, 545.0),
    "pin-bone": (660.0, 640.0),
    "hip": (760.0, 690.0),
    "stifle": (800.0, 930.0),
    "hock": (560.0, 1130.0),
    "rear-foot": (575.0, 1400.0),
    "tail-set": (700.0, 590.0),
    "nose": (2010.0, 420.0),
    "occiput": (1780.0, 310.0),
}
MOVING: dict[str, Place] = {
    "withers": (1500.0, 500.0),
    "nose": (2010.0, 470.0),
    "elbow": (1520.0, 960.0),
    "front-foot-lead": (1980.0, 1310.0),
    "front-foot-trail": (1330.0, 1395.0),
    "stifle": (800.0, 930.0),
    "rear-foot-lead": (1180.0, 1395.0),
    "rear-foot-trail": (520.0, 1300.0),
}
FRONT: dict[str, Place] = {
    "left-shoulder": (400.0, 300.0),
    "left-elbow": (404.0, 560.0),
    "left-pastern": (412.0, 820.0),
    "left-foot": (405.0, 1180.0),
    "right-shoulder": (700.0, 302.0),
    "right-elbow": (692.0, 558.0),
    "right-pastern": (690.0, 822.0),
    "right-foot": (680.0, 1181.0),
}
REAR: dict[str, Place] = {
    "left-hip": (410.0, 250.0),
    "left-hock": (425.0, 860.0),
    "left-pastern": (420.0, 1010.0),
    "left-foot": (415.0, 1180.0),
    "right-hip": (690.0, 250.0),
    "right-hock": (668.0, 862.0),
    "right-pastern": (670.0, 1012.0),
    "right-foot": (676.0, 1182.0),
}
POSES = {"standing-side": STANDING, "moving-side": MOVING, "front": FRONT, "rear": REAR}
GROUND = ((300.0, 1400.0), (2200.0, 1400.0))


@dataclass(frozen=True)
class Pictured:
    """A dog in a picture. `facing` is known because it was made so: +1 right, -1 left, of no meaning end on."""

    view: str
    landmarks: dict[str, Place]
    ground: tuple[Place, Place] | None
    click_sd: float = 4.0
    facing: int = 1

    def door_input(self) -> dict[str, object]:
        places = {name: list(place) for name, place in self.landmarks.items()}
        asked: dict[str, object] = {"view": self.view, "landmarks": places, "click_sd_px": self.click_sd}
        return asked | ({"ground": [list(place) for place in self.ground]} if self.ground else {})


def pictured(view: str, ground: tuple[Place, Place] | None = GROUND) -> Pictured:
    return Pictured(view, POSES[view], ground)


def changed(dog: Pictured, change) -> Pictured:
    ground = (change(dog.ground[0]), change(dog.ground[1])) if dog.ground else None
    return replace(dog, landmarks={name: change(place) for name, place in dog.landmarks.items()}, ground=ground)


def jittered(dog: Pictured, draw: Generator, sd: float) -> Pictured:
    return changed(dog, lambda place: (place[0] + draw.normal(0, sd), place[1] + draw.normal(0, sd)))


def turned(dog: Pictured, degrees: float) -> Pictured:
    cos, sin = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    return changed(dog, lambda place: (cos * place[0] - sin * place[1], sin * place[0] + cos * place[1]))


def scaled(dog: Pictured, factor: float) -> Pictured:
    return changed(dog, lambda place: (place[0] * factor, place[1] * factor))


def shifted(dog: Pictured, x: float, y: float) -> Pictured:
    return changed(dog, lambda place: (place[0] + x, place[1] + y))


def mirrored(dog: Pictured, width: float = 2500.0) -> Pictured:
    """The same dog in a mirrored picture; what was on the left is then on the right and named so."""
    flipped = changed(dog, lambda place: (width - place[0], place[1]))
    names = {name: _other_side(name) for name in flipped.landmarks}
    facing = -dog.facing if dog.view.endswith("-side") else dog.facing
    return replace(flipped, landmarks={names[n]: p for n, p in flipped.landmarks.items()}, facing=facing)


def _other_side(name: str) -> str:
    if name.startswith("left-"):
        return "right-" + name.removeprefix("left-")
    return "left-" + name.removeprefix("right-") if name.startswith("right-") else name
