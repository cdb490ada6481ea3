"""Agreement with general-purpose libraries and with simulation on invented dogs."""

import math

import numpy
import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import Polygon

from scoring.measuring.definitions import in_force
from scoring.measuring.doors import measure
from scoring.measuring.geometry import area, click, distance, off_line, vertex_angle
from scoring.measuring.photo import Photo
from tests.measuring import cases, independent
from tests.measuring.asking import values
from tests.measuring.dogs import jittered, mirrored, pictured, turned

SIX_DIGITS = 1e-9
VIEWS = ("standing-side", "moving-side", "front", "rear")
places = st.tuples(st.integers(0, 2000), st.integers(0, 2000))


def test_the_shared_cases_are_what_the_uncertainties_library_computes():
    kept, built = cases.read(), cases.build()
    assert [case["name"] for case in kept] == [case["name"] for case in built]
    for one, other in zip(kept, built, strict=True):
        assert one["input"] == other["input"]
        for code, expected in other["expected"].items():
            assert one["expected"][code] == (None if expected is None else pytest.approx(expected, rel=1e-9, abs=1e-12))


@pytest.mark.parametrize("case", cases.read(), ids=lambda case: case["name"])
def test_every_shared_case_is_measured_so(case):
    found = {row["code"]: row for row in measure(case["input"])["measurements"]}
    assert list(found) == list(case["expected"])
    for code, expected in case["expected"].items():
        measured = (found[code]["value"], found[code]["sd"])
        assert measured == ((None, None) if expected is None else pytest.approx(expected, rel=SIX_DIGITS, abs=1e-11))


@given(
    view=st.sampled_from(VIEWS),
    seed=st.integers(0, 10_000),
    roll=st.floats(-25, 25),
    left=st.booleans(),
)
def test_value_and_sd_agree_with_the_uncertainties_library_on_any_dog(view, seed, roll, left):
    dog = turned(jittered(pictured(view), numpy.random.default_rng(seed), 12), roll)
    dog = mirrored(dog) if left else dog
    for code, expected in independent.measured(dog).items():
        assert values(dog)[code] == pytest.approx(expected, rel=1e-8, abs=1e-10)


@given(st.lists(places, min_size=3, max_size=7))
def test_an_area_is_shapelys(corners):
    # shapely's area of a ring that crosses itself is the magnitude of its signed sum, as the shoelace gives it
    found = area([click(str(n), corner) for n, corner in enumerate(corners)])
    assert found.value == pytest.approx(Polygon(corners).area, abs=1e-6)


@given(places, places, places)
def test_an_angles_sd_is_that_of_the_three_sides(one, vertex, other):
    # SD = s sqrt(a^2 + b^2 + c^2)/(a b) radians, closed form of the first-order law
    a, b, c = math.dist(one, vertex), math.dist(other, vertex), math.dist(one, other)
    if min(a, b) < 1:
        return
    found = vertex_angle(click("one", one), click("vertex", vertex), click("other", other))
    expected = math.degrees(math.sqrt(a * a + b * b + c * c) / (a * b))
    assert found.sd(1) == pytest.approx(expected, rel=1e-9)
    ratio = distance(click("one", one), click("vertex", vertex)) / distance(
        click("other", other), click("vertex", vertex)
    )
    assert math.degrees(ratio.log_sd(1)) == pytest.approx(expected, rel=1e-9)


@given(places, places, places)
def test_a_point_off_a_line_lies_so_far_that_the_triangle_has_its_area(point, start, end):
    length = math.dist(start, end)
    if length < 1:
        return
    found = abs(off_line(click("point", point), click("start", start), click("end", end)).value)
    assert found * length * length / 2 == pytest.approx(Polygon([point, start, end]).area, abs=1e-6)


@pytest.mark.parametrize("view", VIEWS)
def test_simulated_clicks_spread_as_the_first_order_sd_says(view):
    draw = numpy.random.default_rng(7)
    dog = turned(pictured(view), 3)
    drawn: dict[str, list[float]] = {}
    for _ in range(2500):
        again = jittered(dog, draw, dog.click_sd)
        photo = Photo(view, again.landmarks, dog.click_sd, again.ground)
        for one in in_force(view, photo.landmarks):
            points = photo.points if one.levelling == "free" else photo.dog_points
            quantity = one.formula(*(points[name] for name in one.landmarks)).value
            drawn.setdefault(one.code, []).append(math.log(quantity) if one.sd_of_logarithm else quantity)
    # 2,500 draws know an SD to 1.4 %; five of those are allowed
    for code, (_, sd) in values(dog).items():
        assert numpy.std(drawn[code], ddof=1) == pytest.approx(sd, rel=0.07), code
