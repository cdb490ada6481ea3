"""The dog's outline as frozen path data: ink strokes, places for the marks, a closed path for each section."""

from dataclasses import dataclass
from functools import lru_cache

from ringside.drawings import contours, curves
from ringside.drawings.build import RECTANGULAR, Build, landmarks
from ringside.drawings.curves import Point
from ringside.drawings.frame import Frame, Line, Tone
from ringside.drawings.hatching import Segment, shortened
from ringside.drawings.limbs import far_lines
from ringside.drawings.places import laid_out, spots

WIDTH = 1000.0
SCALE = 480.0  # picture units in the height of an ordinary dog
BRUSH = 4.2
PEN = 0.9
MARGIN_SIDE, MARGIN_TOP, MARGIN_FOOT = 96.0, 76.0, 76.0


@dataclass(frozen=True, slots=True)
class Stroke:
    """`path` is the closed shape of the ink, to be filled; `weight` the width of the brush that left it."""

    path: str
    weight: float
    tone: Tone


@dataclass(frozen=True, slots=True)
class Outline:
    """All in one picture of width x height, y downward. `under` lies beneath the near body, `body` hides it."""

    width: float
    height: float
    under: tuple[Stroke, ...]
    under_shade: str
    body: tuple[str, ...]
    strokes: tuple[Stroke, ...]
    shade: str
    places: dict[str, Point]
    leaders: dict[str, tuple[Point, Point]]
    regions: dict[str, str]
    landmarks: dict[str, Point]


@dataclass(frozen=True, slots=True)
class Sheet:
    """How heights at the withers become picture units."""

    scale: float
    left: float
    ground: float
    height: float

    def __call__(self, point: Point) -> Point:
        return (self.left + self.scale * point[0], self.ground - self.scale * point[1])


@lru_cache(maxsize=64)
def outline(build: Build = RECTANGULAR) -> Outline:
    """The standing dog of this build, seen from the side and facing right."""
    frame = Frame(build, landmarks(build))
    near, far = contours.near_lines(frame), far_lines(frame)
    sheet = sheet_of(build)
    solids = {name: _closed(knots, sheet) for name, knots in contours.solids(frame).items()}
    marked = {code: sheet(spot) for code, spot in spots(frame).items()}
    places, leaders = laid_out(marked, WIDTH, sheet.height)
    return Outline(
        width=WIDTH,
        height=sheet.height,
        under=tuple(_inked(line, sheet) for line in far),
        under_shade=penned(contours.far_shade(frame), sheet),
        body=tuple(solids.values()),
        strokes=tuple(_inked(line, sheet) for line in near),
        shade=penned(contours.shade(frame), sheet),
        places=places,
        leaders=leaders,
        regions=_regions(solids),
        landmarks={name: sheet(mark) for name, mark in frame.marks.items()},
    )


def sheet_of(build: Build) -> Sheet:
    """As large as the picture allows, an ordinary dog always at the same scale."""
    frame = Frame(build, landmarks(build))
    lines = [*contours.near_lines(frame), *far_lines(frame)]
    points = [knot for line in lines for knot in line.knots]
    least, most, top = min(x for x, _ in points), max(x for x, _ in points), max(y for _, y in points)
    scale = min(SCALE, (WIDTH - 2 * MARGIN_SIDE) / (most - least))
    ground = round(MARGIN_TOP + scale * top)
    return Sheet(scale, WIDTH / 2 - scale * (least + most) / 2, ground, ground + MARGIN_FOOT)


def _inked(line: Line, sheet: Sheet) -> Stroke:
    knots = [sheet(knot) for knot in line.knots]
    if line.filled:
        return Stroke(_closed(line.knots, sheet), 0.0, line.tone)
    weight = BRUSH * line.weight
    shape = curves.brushed(curves.smooth(knots), weight, line.taper, line.tone != "detail")
    return Stroke(curves.path(shape, closed=True), round(weight, 2), line.tone)


def _closed(knots: tuple[Point, ...], sheet: Sheet) -> str:
    return curves.path(curves.smooth([sheet(knot) for knot in knots], closed=True), closed=True)


def penned(segments: list[Segment], sheet: Sheet) -> str:
    """Open path of pen strokes, to be stroked PEN wide."""
    short = [shortened((sheet(a), sheet(b)), 2.5) for a, b in segments]
    return "".join(f"M{a[0]:.1f},{a[1]:.1f}L{b[0]:.1f},{b[1]:.1f}" for a, b in short)


def _regions(solids: dict[str, str]) -> dict[str, str]:
    """A path for each section; those that speak of the whole dog have the whole dog."""
    whole, legs = "".join(solids.values()), solids["forequarters"] + solids["hindquarters"]
    return {
        **solids,
        "general": whole,
        "gait": legs,
        "coat": whole,
        "size": whole,
        "temperament": solids["head"],
    }
