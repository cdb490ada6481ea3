"""The dog's outline: every point has its place, the paths are what they promise, and the SVG holds nothing else."""

import itertools
import math
import re
import tomllib
from dataclasses import replace
from pathlib import Path
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ringside.drawings.build import LONG_AND_LOW, RECTANGULAR, SQUARE, Build, landmarks
from ringside.drawings.outline import Outline, outline
from ringside.drawings.places import MARKER
from ringside.drawings.portrait import BUILDS, portrait_of, portrait_svg
from ringside.drawings.svg import dog_svg
from ringside.drawings.symbols import symbol

VOCABULARY = tomllib.loads(
    (Path(__file__).resolve().parents[2] / "scoring" / "standards" / "vocabulary.toml").read_text(encoding="utf-8")
)
FAMILIES = {"rectangular": RECTANGULAR, "square": SQUARE, "long-and-low": LONG_AND_LOW, **BUILDS}
EVERY_FAMILY = pytest.mark.parametrize("build", FAMILIES.values(), ids=FAMILIES.keys())
PATH = re.compile(r"(?:M-?[\d.]+,-?[\d.]+|C(?:-?[\d.]+,-?[\d.]+ ?){3}|L-?[\d.]+,-?[\d.]+|Z)+")


def paths(drawn: Outline) -> list[str]:
    inked = [stroke.path for stroke in (*drawn.under, *drawn.strokes)]
    return [*inked, *drawn.body, *drawn.regions.values(), drawn.shade, drawn.under_shade]


def joint(a: tuple[float, float], corner: tuple[float, float], b: tuple[float, float]) -> float:
    to_a, to_b = (math.atan2(p[1] - corner[1], p[0] - corner[0]) for p in (a, b))
    turn = abs(math.degrees(to_a - to_b))
    return min(turn, 360 - turn)


@EVERY_FAMILY
def test_every_point_of_the_vocabulary_has_a_place(build):
    assert set(VOCABULARY["points"]) == set(outline(build).places)


@EVERY_FAMILY
def test_no_two_markers_overlap(build):
    places = outline(build).places
    too_near = [(a, b) for a, b in itertools.combinations(places, 2) if math.dist(places[a], places[b]) < MARKER]
    assert too_near == []


@EVERY_FAMILY
def test_every_marker_lies_whole_inside_the_picture(build):
    drawn = outline(build)
    half = MARKER / 2
    outside = [
        code for code, (x, y) in drawn.places.items()
        if not (half <= x <= drawn.width - half and half <= y <= drawn.height - half)
    ]  # fmt: skip
    assert outside == []


@EVERY_FAMILY
def test_a_marker_far_from_its_spot_is_led_to_it_by_a_line(build):
    drawn = outline(build)
    for code, (spot, end) in drawn.leaders.items():
        assert math.dist(end, drawn.places[code]) == pytest.approx(MARKER / 2 + 2, abs=0.2)
        assert math.dist(spot, drawn.places[code]) > MARKER


def test_every_section_of_the_vocabulary_has_a_region():
    assert set(VOCABULARY["sections"]) == set(outline().regions)


@EVERY_FAMILY
def test_a_path_holds_only_absolute_moves_curves_lines_and_ends(build):
    assert [path[:60] for path in paths(outline(build)) if not PATH.fullmatch(path)] == []


@EVERY_FAMILY
def test_the_dog_lies_whole_inside_its_picture(build):
    drawn = outline(build)
    for path in paths(drawn):
        pairs = [tuple(map(float, pair.split(","))) for pair in re.findall(r"-?[\d.]+,-?[\d.]+", path)]
        assert all(0 <= x <= drawn.width and 0 <= y <= drawn.height for x, y in pairs)


def test_a_page_that_shows_the_dog_stays_light():
    assert sum(map(len, paths(outline()))) < 45_000


def test_landmarks_are_those_of_the_standing_side_view():
    expected = {
        "withers", "point-of-shoulder", "elbow", "front-pastern", "front-foot", "forechest", "brisket", "croup-start",
        "pin-bone", "hip", "stifle", "hock", "rear-foot", "tail-set", "nose", "occiput",
    }  # fmt: skip
    assert expected == set(landmarks(RECTANGULAR))


def test_the_drawn_dog_stands_as_the_trade_asks():
    """Common practice, no source: front and rear angles near 90 degrees, the croup near 30 from the level, the plumb
    line from the withers through the front foot, the hock's rear pastern upright."""
    mark = landmarks(RECTANGULAR)
    assert joint(mark["withers"], mark["point-of-shoulder"], mark["elbow"]) == pytest.approx(90, abs=12)
    assert joint(mark["pin-bone"], mark["stifle"], mark["hock"]) == pytest.approx(100, abs=14)
    croup, pin = mark["croup-start"], mark["pin-bone"]
    assert math.degrees(math.atan2(croup[1] - pin[1], croup[0] - pin[0])) == pytest.approx(28, abs=6)
    assert mark["front-foot"][0] == pytest.approx(mark["withers"][0], abs=0.12)
    assert mark["hock"][0] == pytest.approx(mark["rear-foot"][0], abs=0.06)


@pytest.mark.parametrize("slope", [12, 25, 38])
def test_a_steeper_croup_is_drawn_steeper(slope):
    mark = outline(replace(RECTANGULAR, croup_slope=slope)).landmarks
    croup, pin = mark["croup-start"], mark["pin-bone"]
    assert math.degrees(math.atan2(pin[1] - croup[1], croup[0] - pin[0])) == pytest.approx(slope)


@given(
    st.builds(
        Build, length=st.floats(0.95, 1.7), chest=st.floats(0.42, 0.66), neck_slope=st.floats(40, 68),
        croup_slope=st.floats(8, 45), shank_slope=st.floats(35, 60), ear=st.sampled_from(["drop", "erect", "folded"]),
        tail=st.sampled_from(["hanging", "sickle", "ring"]), bone=st.floats(0.8, 1.3), fringe=st.floats(0, 0.08),
    )
)  # fmt: skip
def test_any_credible_build_can_be_drawn_with_room_for_every_mark(build):
    drawn = outline(build)
    places = list(drawn.places.values())
    assert min(math.dist(a, b) for a, b in itertools.combinations(places, 2)) >= MARKER
    assert all(PATH.fullmatch(path) for path in paths(drawn))


def test_the_same_build_gives_the_same_drawing():
    first = outline(RECTANGULAR)
    outline.cache_clear()
    assert first == outline(RECTANGULAR)


@pytest.mark.parametrize("mark", [-3, -2, -1, 0, 1, 2, 3])
def test_too_little_is_open_and_points_down_too_much_is_filled_and_points_up(mark):
    (shape,) = symbol(mark)
    if mark == 0:
        assert shape.radius > 0
        return
    tip, *base = shape.points
    assert shape.filled is (mark > 0)
    assert all((y > tip[1]) is (mark > 0) for _, y in base)


def test_a_greater_degree_is_a_larger_symbol():
    def size(mark: int) -> float:
        (shape,) = symbol(mark)
        return max(x for x, _ in shape.points) - min(x for x, _ in shape.points)

    assert size(1) < size(2) < size(3) <= MARKER
    assert [size(-mark) for mark in (1, 2, 3)] == [size(mark) for mark in (1, 2, 3)]


def test_praise_has_a_shape_of_its_own():
    assert set(symbol(0, True)) - set(symbol(0))
    assert set(symbol(2, True)) - set(symbol(2))


def parts_of(svg: str) -> list[ElementTree.Element]:
    return list(ElementTree.fromstring(svg).iter())


@pytest.mark.parametrize("code", ["croup", "tail-carriage", "reach", "eye-colour"])
def test_a_marked_point_is_drawn_and_an_unmarked_one_is_not(code):
    bare, marked = dog_svg(outline(), {}), dog_svg(outline(), {code: 2})
    assert bare.count('class="mark') == 0
    assert marked.count('class="mark') == 1


TAGS = {"svg", "title", "path", "polygon", "circle"}


@given(st.text(), st.dictionaries(st.sampled_from(sorted(VOCABULARY["points"])), st.integers(-3, 3)))
def test_the_svg_holds_no_style_no_script_and_nothing_of_its_title_as_markup(title, marks):
    parts = parts_of(dog_svg(outline(), marks, ("topline",), title))
    assert {part.tag.removeprefix("{http://www.w3.org/2000/svg}") for part in parts} <= TAGS
    assert {name for part in parts for name in part.attrib if name == "style" or name.startswith("on")} == set()
    assert parts[0].get("aria-label") == "".join(sign for sign in title if sign.isprintable())


@pytest.mark.parametrize("breed", [*BUILDS, "a-breed-without-a-figure"])
def test_a_portrait_is_the_same_for_the_same_name_and_well_formed(breed):
    first, again = portrait_of(breed, "Aurora vom Stillen Grund"), portrait_of(breed, "Aurora vom Stillen Grund")
    assert first == again
    parts = parts_of(portrait_svg(first, "Aurora"))
    assert {part.tag.removeprefix("{http://www.w3.org/2000/svg}") for part in parts} <= TAGS
    assert not any("style" in part.attrib for part in parts)


def test_dogs_of_one_breed_do_not_all_look_alike():
    assert len({portrait_of("hovawart", f"Dog {number}") for number in range(20)}) > 10
