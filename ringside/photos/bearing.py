"""On which point of a sheet a reading bears, and the mark it proposes. Only the judge sets a mark."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from ringside.photos.lesson import TURNS
from ringside.photos.measured import Reading, Row, reading_of
from ringside.photos.models import Photo

# Steps of the mark by what is read: a little off is one step, clearly off two. Ours, no source; three is the judge's.
STEPS: Mapping[str, int] = {
    "as-asked": 0, "a-little-little": -1, "a-little-much": 1, "much-too-little": -2, "much-too-much": 2,
}  # fmt: skip
# A measurement, the point it bears on, and which end of the point a smaller measurement belongs to.
POINTS = {turn.measurement: (turn.point, turn.less_is) for turn in TURNS.values()}


@dataclass(frozen=True, slots=True)
class Bearing:
    """`mark` is None where the photo does not bear one."""

    point: str
    row: Row
    mark: int | None


def bearings(reading: Reading) -> tuple[Bearing, ...]:
    """Every reading that bears on a point, in the order of the reading."""
    rows = (row for row in (*reading.rows, *reading.without_target) if row.code in POINTS)
    return tuple(Bearing(POINTS[row.code][0], row, proposed(row.code, row.verdict)) for row in rows)


def proposed(measurement: str, verdict: str) -> int | None:
    """The mark that a reading proposes: -2..+2 in the point's own direction; None where it cannot be told.

    Rule: a wide angle is the straight end of angulation, so that its sign is turned round.
    """
    point, less_is = POINTS.get(measurement, ("", "low"))
    step = STEPS.get(verdict)
    if not point or step is None:
        return None
    return step if less_is == "low" else -step


def by_point(photos: Iterable[Photo]) -> dict[str, Bearing]:
    """The reading that bears on each point, of the first photo that has one."""
    found: dict[str, Bearing] = {}
    for photo in photos:
        for bearing in bearings(reading_of(photo)):
            found.setdefault(bearing.point, bearing)
    return found
