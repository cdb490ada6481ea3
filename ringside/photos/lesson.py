"""How a dog of a breed is read: its standard's points in the judge's order, some of them on a drawn dog that moves.

The drawn dog is one of our builds; one of its figures is turned from end to end, and what is measured on it is
measured by the same arithmetic as on a photo.
"""

from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import groupby
from typing import Any, Literal

from django.utils.translation import get_language, gettext

from ringside.drawings import contours, curves
from ringside.drawings.build import Build, landmarks
from ringside.drawings.frame import Frame, Line
from ringside.drawings.limbs import far_lines
from ringside.drawings.outline import BRUSH, WIDTH, Sheet, sheet_of
from ringside.drawings.portrait import build_of
from ringside.photos.words import NAMES, landmark_words, number_words, reading_words
from scoring.measuring.definitions import MEASUREMENTS
from scoring.measuring.readings import reading_of
from scoring.measuring.rules_of_thumb import rules_of_thumb
from scoring.measuring.targets import Target, target_of
from scoring.standards.loader import load
from scoring.standards.model import BreedStandard, Point
from scoring.standards.translated import languages, words

STEPS = 7  # drawings from one end to the other; the page bends each into the next


@dataclass(frozen=True, slots=True)
class Turn:
    """Which figure of the build is turned, how far to both sides, by which handle, and what is measured meanwhile.

    `less_is` is the end of the standard's point to which a smaller measurement belongs.
    """

    point: str
    measurement: str
    figure: Literal["length", "chest", "croup_slope", "arm_slope", "pastern_slope", "shank_slope"]
    down: float
    up: float
    handle: str
    less_is: Literal["low", "high"]
    lines: tuple[tuple[str, tuple[str, ...]], ...]


TURNS = {
    turn.point: turn
    for turn in (
        Turn(
            "proportions", "length-ratio", "length", 0.2, 0.24, "pin-bone", "low",
            (("straight", ("point-of-shoulder", "pin-bone")), ("plumb", ("withers",))),
        ),
        Turn(
            "chest-depth", "chest-depth", "chest", 0.12, 0.1, "brisket", "low",
            (("path", ("withers", "brisket")), ("plumb", ("withers",))),
        ),
        Turn(
            "croup", "croup-slope", "croup_slope", 24, 26, "pin-bone", "low",
            (("level", ("croup-start", "pin-bone")), ("path", ("croup-start", "pin-bone"))),
        ),
        Turn(
            "front-angulation", "front-angle", "arm_slope", 20, 24, "elbow", "high",
            (("path", ("withers", "point-of-shoulder", "elbow")),),
        ),
        Turn(
            "pasterns", "pastern-slope", "pastern_slope", 16, 24, "front-foot", "low",
            (("plumb", ("front-pastern",)), ("path", ("front-pastern", "front-foot"))),
        ),
        Turn(
            "rear-angulation", "rear-angle", "shank_slope", 22, 20, "hock", "high",
            (("path", ("pin-bone", "stifle", "hock")),),
        ),
    )
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Part:
    """One point of the standard; `turn` where it can be moved on the drawing."""

    point: Point
    name: str
    low: str
    high: str
    turn: Turn | None


def parts_of(standard: BreedStandard) -> list[tuple[str, list[Part]]]:
    """The two-sided points by section, in the order in which the standard has them."""
    parts = [Part(point, *point_words(point), TURNS.get(point.code)) for point in standard.two_sided]
    return [(name, list(group)) for name, group in groupby(parts, key=lambda part: part.point.section)]


def point_words(point: Point) -> tuple[str, str, str]:
    """A two-sided point's name and its two ends, in the reader's language."""
    language = get_language() or "en"
    if language not in languages():
        return point.name, point.low or "", point.high or ""
    name, low, high = words(language)["points"][point.code]
    return name, low, high


def section_words(section: str) -> str:
    language = get_language() or "en"
    return words(language)["sections"][section] if language in languages() else section


def turned(breed: str, point: str) -> dict[str, Any]:
    """The drawings, landmarks and words of one point from end to end. Raises KeyError, UnknownStandard."""
    standard, found = load(breed), load(breed).point(point)
    drawn = _turned(breed, point)
    assert found is not None
    return {**drawn, **_words(standard, found, TURNS[point])}


@lru_cache(maxsize=32)
def _turned(breed: str, point: str) -> dict[str, Any]:
    standard, turn = load(breed), TURNS[point]
    found = standard.point(point)
    if found is None or found.kind != "two-sided":
        raise KeyError(point)
    build = build_of(breed)
    middle = getattr(build, turn.figure)
    values = [middle - turn.down + (turn.down + turn.up) * i / (STEPS - 1) for i in range(STEPS)]
    builds = [replace(build, **{turn.figure: value}, fringe=0.0) for value in values]
    sheet = sheet_of(replace(build, fringe=0.0))
    return {
        "point": point,
        "measurement": turn.measurement,
        "handle": turn.handle,
        "start": turn.down / (turn.down + turn.up),
        "ground": [[0.0, sheet.ground], [WIDTH, sheet.ground]],
        "frames": [_drawing(one, sheet) for one in builds],
        "landmarks": [_places(one, sheet) for one in builds],
        "lines": [{"kind": k, "landmarks": names, "measurement": turn.measurement} for k, names in turn.lines],
    }


def _places(build: Build, sheet: Sheet) -> dict[str, list[float]]:
    return {name: [round(part, 2) for part in sheet(place)] for name, place in landmarks(build).items()}


def _drawing(build: Build, sheet: Sheet) -> list[str]:
    """Far legs, body, ink: one path each, always the same number of them in the same order."""
    frame = Frame(build, landmarks(build))
    solids = [curves.path(curves.smooth([sheet(k) for k in knots], closed=True), closed=True)
              for knots in contours.solids(frame).values()]  # fmt: skip
    far = [_ink(line, sheet) for line in far_lines(frame)]
    return [*far, *solids, *(_ink(line, sheet) for line in contours.near_lines(frame))]


def kinds(breed: str) -> list[str]:
    """What each path of a drawing is: "far", "body" or "ink"."""
    build = replace(build_of(breed), fringe=0.0)
    frame = Frame(build, landmarks(build))
    near = ["ink" if line.tone != "detail" else "ink detail" for line in contours.near_lines(frame)]
    return [*("ink far" for _ in far_lines(frame)), *("body" for _ in contours.solids(frame)), *near]


def _ink(line: Line, sheet: Sheet) -> str:
    knots = [sheet(knot) for knot in line.knots]
    if line.filled:
        return curves.path(curves.smooth(knots, closed=True), closed=True)
    shape = curves.brushed(curves.smooth(knots), BRUSH * line.weight, line.taper, line.tone != "detail")
    return curves.path(shape, closed=True)


def _words(standard: BreedStandard, point: Point, turn: Turn) -> dict[str, Any]:
    measurement = next(one for one in MEASUREMENTS if one.code == turn.measurement)
    target = target_of(measurement, standard.figures, rules_of_thumb())
    _name, low, high = point_words(point)
    less, more = (low, high) if turn.less_is == "low" else (high, low)
    return {
        "name": str(NAMES[turn.measurement].name),
        "what": str(NAMES[turn.measurement].what),
        "unit": measurement.unit,
        "less": less,
        "more": more,
        "bands": _bands(turn.measurement, target) if target else [],
        "target": _target(standard, target, measurement.unit) if target else
        gettext("No figure between these points, neither of the standard nor of the trade: the judge's eye reads it."),
    }  # fmt: skip


def _bands(code: str, target: Target) -> list[list[Any]]:
    """Up to which value which words hold, for a value without error, least first."""
    measurement = next(one for one in MEASUREMENTS if one.code == code)
    edges = [target.value + step * target.tolerance for step in (-2, -1, 1, 2)]
    middles = [edges[0] - 1, (edges[0] + edges[1]) / 2, target.value, (edges[2] + edges[3]) / 2, edges[3] + 1]
    words = [reading_words(code, reading_of(measurement, value, 0.0, target), target.kind) for value in middles]
    return [[edge, said] for edge, said in zip([*edges, None], words, strict=True)]


def _target(standard: BreedStandard, target: Target, unit: str) -> str:
    told = {
        "figure": number_words(target.value, unit),
        "tolerance": number_words(target.tolerance, unit),
        "between": ", ".join(landmark_words(name) for name in target.landmarks),
        "source": dict(standard.sources).get(target.source, target.source),
    }
    if target.kind == "rule-of-thumb":
        sentence = gettext(
            "Rule of thumb of the trade, since the standard has no figure between these points: {figure}, give or take "
            "{tolerance} ({between})."
        )
    elif target.tolerance_from == "standard":
        sentence = gettext("The standard: {figure}, give or take {tolerance} ({between}; {source}).")
    else:
        sentence = gettext(
            "The standard: {figure}, give or take {tolerance} ({between}; {source}). The tolerance is ours."
        )
    return sentence.format(**told)
