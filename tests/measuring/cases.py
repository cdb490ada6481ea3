"""The cases that Python and the browser's script share, computed by `independent`; checked in as cases.json.

`python -m tests.measuring.cases` writes the file again.
"""

import json
from dataclasses import replace
from pathlib import Path

import numpy

from tests.measuring.dogs import Pictured, jittered, mirrored, pictured, scaled, shifted, turned
from tests.measuring.independent import FORMULAS, measured

FILE = Path(__file__).with_name("cases.json")
SEED = 20261125


def build() -> list[dict[str, object]]:
    draw = numpy.random.default_rng(SEED)
    plain = [(f"{view} as drawn", pictured(view)) for view in FORMULAS]
    random = [(f"{view} {n}", _random(view, draw)) for view in FORMULAS for n in range(12)]
    no_ground = [(f"{view} without a ground line", pictured(view, ground=None)) for view in FORMULAS]
    partial = [(f"{view} with landmarks missing {n}", _partial(view, draw)) for view in FORMULAS for n in range(3)]
    return [_case(name, dog) for name, dog in (*plain, *random, *no_ground, *partial)]


def _random(view: str, draw: numpy.random.Generator) -> Pictured:
    dog = replace(jittered(pictured(view), draw, 15), click_sd=float(draw.uniform(1, 8)))
    dog = scaled(dog, float(draw.uniform(0.5, 1.6)))
    dog = shifted(turned(dog, float(draw.uniform(-20, 20))), float(draw.uniform(-300, 300)), 50)
    dog = mirrored(dog) if draw.random() < 0.5 else dog
    return replace(dog, ground=dog.ground[::-1]) if draw.random() < 0.5 else dog


def _partial(view: str, draw: numpy.random.Generator) -> Pictured:
    dog = _random(view, draw)
    left_out = set(draw.choice(sorted(dog.landmarks), size=2, replace=False)) - {"nose", "point-of-shoulder"}
    return replace(dog, landmarks={name: place for name, place in dog.landmarks.items() if name not in left_out})


def _case(name: str, dog: Pictured) -> dict[str, object]:
    found = measured(dog)
    expected = {code: list(found[code]) if code in found else None for code in FORMULAS[dog.view]}
    return {"name": name, "input": dog.door_input(), "expected": expected}


def read() -> list[dict[str, object]]:
    return json.loads(FILE.read_text(encoding="utf-8"))


if __name__ == "__main__":
    FILE.write_text("[\n" + ",\n".join(map(json.dumps, build())) + "\n]\n", encoding="utf-8")
