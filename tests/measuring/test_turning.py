"""What a turned dog hides: held against a pinhole camera written down apart, in the other direction."""

import math
from dataclasses import replace

import pytest

from scoring.measuring.photo import Photo
from scoring.measuring.turning import HEIGHTS_AWAY, spans
from tests.measuring.dogs import GROUND, STANDING

GROUND_Y = GROUND[0][1]
LEVEL = ((0.0, GROUND_Y), (2000.0, GROUND_Y))
DOG = Photo("standing-side", STANDING, 2.0, LEVEL)
HEIGHT = STANDING["front-foot"][1] - STANDING["withers"][1]


def seen(photo: Photo, degrees: float) -> Photo:
    """The dog turned about a vertical through its middle, by the pinhole camera's own formula."""
    yaw, away = math.radians(degrees), HEIGHT * HEIGHTS_AWAY
    along = [x for x, _ in photo.landmarks.values()]
    middle = ((min(along) + max(along)) / 2, max(GROUND_Y, STANDING["front-foot"][1]) - HEIGHT / 2)

    def project(place):
        x, y = place[0] - middle[0], place[1] - middle[1]
        by = away / (away + x * math.sin(yaw))
        return middle[0] + x * math.cos(yaw) * by, middle[1] + y * by

    return replace(photo, landmarks={name: project(at) for name, at in photo.landmarks.items()})


def values(photo: Photo) -> dict[str, float]:
    return {code: span.low for code, span in spans(photo, 0).items()}


@pytest.mark.parametrize("degrees", [-20, -10, 10, 20])
def test_the_span_of_a_turned_dog_holds_the_dog_itself(degrees):
    found, true = spans(seen(DOG, degrees), abs(degrees)), values(DOG)
    assert set(found) == set(true)
    for code, span in found.items():
        # The dog's middle and height shift a little in the picture; half a degree or a hundredth is left for that.
        slack = 0.5 if "slope" in code or "angle" in code else 0.012
        assert span.low - slack <= true[code] <= span.high + slack, code


def test_a_dog_that_is_not_turned_is_what_it_reads():
    assert all(span.high - span.low < 1e-9 for span in spans(DOG, 0).values())


def test_the_further_it_may_be_turned_the_less_is_known():
    ten, twenty = spans(DOG, 10), spans(DOG, 20)
    assert all(twenty[code].high - twenty[code].low > ten[code].high - ten[code].low for code in ten)


def test_without_a_height_or_from_the_front_nothing_is_said():
    assert spans(replace(DOG, landmarks={"pin-bone": (1, 2), "stifle": (3, 4), "hock": (1, 6)}), 10) == {}
    assert spans(replace(DOG, view="front", landmarks={"left-foot": (1, 2), "right-foot": (3, 4)}), 10) == {}
