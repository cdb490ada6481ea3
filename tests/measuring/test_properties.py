"""What a photo may be put through without its readings changing."""

from dataclasses import replace

import numpy
import pytest
from hypothesis import given
from hypothesis import strategies as st

from scoring.measuring.definitions import MEASUREMENTS
from tests.measuring.asking import rows, values
from tests.measuring.dogs import POSES, Pictured, jittered, mirrored, pictured, scaled, shifted, turned

ANGLES = {one.code for one in MEASUREMENTS if one.unit == "deg"}


@st.composite
def dogs(draw) -> Pictured:
    view = draw(st.sampled_from(sorted(POSES)))
    return jittered(pictured(view), numpy.random.default_rng(draw(st.integers(0, 10_000))), 12)


def close(expected: dict[str, tuple[float, float]]):
    return {code: pytest.approx(pair, rel=1e-7, abs=1e-9) for code, pair in expected.items()}


OTHER_SIDE = {"column-bend-left": "column-bend-right", "column-bend-right": "column-bend-left"}


@given(dogs())
def test_a_mirrored_photo_gives_the_same_readings(dog):
    flipped = {OTHER_SIDE.get(code, code): row for code, row in rows(mirrored(dog)).items()}
    straight = rows(dog)
    assert {code: (row["value"], row["sd"]) for code, row in flipped.items()} == close(values(dog))
    assert {code: row["reading"] for code, row in flipped.items()} == {
        code: row["reading"] for code, row in straight.items()
    }


@given(dogs(), st.floats(-180, 180))
def test_a_photo_turned_with_its_ground_line_gives_the_same_values(dog, degrees):
    assert values(turned(dog, degrees)) == close(values(dog))


@given(dogs(), st.floats(-5000, 5000), st.floats(-5000, 5000))
def test_a_shifted_photo_gives_the_same_values(dog, x, y):
    assert values(shifted(dog, x, y)) == close(values(dog))


@given(dogs(), st.floats(0.2, 5))
def test_a_larger_picture_changes_no_value_and_shrinks_each_sd(dog, factor):
    larger = values(scaled(dog, factor))
    assert larger == close({code: (value, sd / factor) for code, (value, sd) in values(dog).items()})


@given(dogs(), st.floats(0.2, 5))
def test_a_larger_picture_with_as_much_larger_clicks_changes_nothing(dog, factor):
    assert values(replace(scaled(dog, factor), click_sd=dog.click_sd * factor)) == close(values(dog))


@given(dogs())
def test_the_ground_line_has_no_direction(dog):
    assert values(replace(dog, ground=dog.ground[::-1])) == close(values(dog))


@given(dogs(), st.floats(-20, 20))
def test_camera_roll_without_a_ground_line_changes_no_vertex_angle_or_area(dog, degrees):
    loose = replace(dog, ground=None)
    free = {one.code for one in MEASUREMENTS if one.levelling == "free"}
    expected = {code: pair for code, pair in values(loose).items() if code in free}
    assert {code: pair for code, pair in values(turned(loose, degrees)).items() if code in free} == close(expected)


@given(dogs(), st.data())
def test_any_landmarks_missing_withhold_exactly_the_measurements_that_need_them(dog, data):
    kept = data.draw(st.sets(st.sampled_from(sorted(dog.landmarks))))
    partial = replace(dog, landmarks={name: place for name, place in dog.landmarks.items() if name in kept})
    for code, (value, sd) in values(partial).items():
        alternatives = [one for one in MEASUREMENTS if one.code == code and one.view == dog.view]
        if not any(set(one.landmarks) <= kept for one in alternatives):
            assert (value, sd) == (None, None), code
        elif code != "front-set" or "nose" in kept:  # withers and front foot alone do not say where the head is
            assert value is not None, code
            assert sd > 0, code


@given(dogs())
def test_every_measurement_of_a_whole_dog_has_a_value(dog):
    assert all(value is not None and sd > 0 for value, sd in values(dog).values())
