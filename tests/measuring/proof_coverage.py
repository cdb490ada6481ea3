"""How often the 95 % interval holds the true value, on simulated dogs before a pinhole camera.

Two truths: the same picture clicked without error, which the interval promises, and the dog itself in its own plane,
which yaw, perspective and a landmark's depth take away from it. `main(share)` prints both; the first is asserted by
the tests, the second is printed so that the words beside a reading stay honest.
"""

import math
import sys
from collections.abc import Iterator
from dataclasses import replace

import numpy
from numpy.random import Generator

from scoring.measuring.measure import measure_photo
from scoring.measuring.photo import Photo
from scoring.measuring.readings import interval
from tests.measuring.dogs import GROUND, POSES, Pictured, Place, jittered, pictured

DOGS = 20_000
SEED = 11
PX_PER_CM = 15.0
CAMERA_CM = 400.0
FOCAL_PX = CAMERA_CM * PX_PER_CM
MIDDLE = (1250.0, 950.0)
MIDLINE_DEPTH_CM = 8.0
ON_THE_MIDLINE = ("withers", "croup-start", "nose", "occiput", "tail-set", "brisket")


def main(share: float) -> None:
    found = coverage(math.ceil(DOGS * share))
    sys.stdout.write("coverage of the 95 % interval: of the picture, of the dog\n")
    for code, (of_picture, of_dog) in found.items():
        sys.stdout.write(f"{code:20} {of_picture:6.1%} {of_dog:6.1%}\n")


def coverage(dogs: int) -> dict[str, tuple[float, float]]:
    """Share of intervals that hold the errorless picture's value, and the dog's own, for each measurement."""
    draw = numpy.random.default_rng(SEED)
    hits: dict[str, list[tuple[bool, bool]]] = {}
    for view in POSES:
        for _ in range(dogs // len(POSES) + 1):
            for code, hit in _one_dog(view, draw):
                hits.setdefault(code, []).append(hit)
    return {code: tuple(float(share) for share in numpy.mean(rows, axis=0)) for code, rows in hits.items()}


def _one_dog(view: str, draw: Generator) -> Iterator[tuple[str, tuple[bool, bool]]]:
    dog = replace(jittered(pictured(view), draw, 12), ground=GROUND)
    picture = photographed(dog, draw)
    clicked = jittered(picture, draw, dog.click_sd)
    truth, seen = _values(dog), _values(picture)
    for one in measure_photo(_photo(clicked)).measurements:
        low, high = interval(one.measurement, one.quantity.value, one.sd)
        code = one.measurement.code
        yield code, (low <= seen[code] <= high, low <= truth[code] <= high)


def photographed(dog: Pictured, draw: Generator) -> Pictured:
    """The dog turned a little, seen by a pinhole camera at half its height that is held a little askew."""
    yaw, roll = math.radians(draw.normal(0, 2)), math.radians(draw.normal(0, 2))
    seen = {name: _projected(place, _depth(name), yaw, roll) for name, place in dog.landmarks.items()}
    ends = (_projected(place, 0.0, 0.0, roll) for place in dog.ground)
    return replace(dog, landmarks=seen, ground=tuple(ends))


def _depth(name: str) -> float:
    return MIDLINE_DEPTH_CM if name in ON_THE_MIDLINE else 0.0


def _projected(place: Place, depth_cm: float, yaw: float, roll: float) -> Place:
    x, y = ((place[0] - MIDDLE[0]) / PX_PER_CM, (place[1] - MIDDLE[1]) / PX_PER_CM)
    across = x * math.cos(yaw) + depth_cm * math.sin(yaw)
    away = CAMERA_CM - x * math.sin(yaw) + depth_cm * math.cos(yaw)
    u, v = FOCAL_PX * across / away, FOCAL_PX * y / away
    turned = (u * math.cos(roll) - v * math.sin(roll), u * math.sin(roll) + v * math.cos(roll))
    return turned[0] + MIDDLE[0], turned[1] + MIDDLE[1]


def _photo(dog: Pictured) -> Photo:
    return Photo(dog.view, dog.landmarks, dog.click_sd, dog.ground)


def _values(dog: Pictured) -> dict[str, float]:
    return {one.measurement.code: one.quantity.value for one in measure_photo(_photo(dog)).measurements}


if __name__ == "__main__":
    main(1.0)
