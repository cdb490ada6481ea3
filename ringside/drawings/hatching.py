"""Parallel pen strokes that fill a shape: shade under the dog, and the colour of a coat."""

import math
from collections.abc import Sequence

from ringside.drawings.curves import Point, between

Segment = tuple[Point, Point]


def crescent(knots: Sequence[Point], depth: float) -> list[Point]:
    """The strip along a line on its right hand (y upward), `depth` wide in the middle and nothing at its ends."""
    last = len(knots) - 1
    inner = []
    for i, knot in enumerate(knots):
        before, after = knots[max(i - 1, 0)], knots[min(i + 1, last)]
        length = math.dist(before, after) or 1.0
        by = depth * math.sin(math.pi * i / last) / length
        inner.append((knot[0] + (after[1] - before[1]) * by, knot[1] - (after[0] - before[0]) * by))
    return [*knots, *reversed(inner)]


def hatched(shapes: Sequence[Sequence[Point]], spacing: float, slope: float) -> list[Segment]:
    """Segments `spacing` apart at `slope` degrees wherever any of the closed shapes lies."""
    turn = math.radians(slope)
    cos, sin = math.cos(turn), math.sin(turn)
    turned = [[(x * cos + y * sin, y * cos - x * sin) for x, y in shape] for shape in shapes]
    rows = [y for shape in turned for _, y in shape]
    segments: list[Segment] = []
    for row in range(math.ceil(min(rows) / spacing), math.floor(max(rows) / spacing) + 1):
        y = row * spacing
        for start, end in _merged([span for shape in turned for span in _spans(shape, y)]):
            segments.append(
                ((start * cos - y * sin, start * sin + y * cos), (end * cos - y * sin, end * sin + y * cos))
            )
    return segments


def _spans(shape: Sequence[Point], y: float) -> list[tuple[float, float]]:
    """Where the level line y lies inside the shape."""
    crossings = sorted(
        a[0] + (b[0] - a[0]) * (y - a[1]) / (b[1] - a[1])
        for a, b in zip(shape, [*shape[1:], shape[0]], strict=True)
        if (a[1] > y) != (b[1] > y)
    )
    return list(zip(crossings[::2], crossings[1::2], strict=True))


def _merged(spans: list[tuple[float, float]]) -> list[tuple[float, float]]:
    merged: list[tuple[float, float]] = []
    for start, end in sorted(spans):
        if merged and start <= merged[-1][1]:
            merged[-1] = (merged[-1][0], max(end, merged[-1][1]))
        else:
            merged.append((start, end))
    return merged


def shortened(segment: Segment, by: float) -> Segment:
    """Drawn back from both ends, so that the pen does not touch the outline."""
    length = math.dist(*segment)
    if length <= 3 * by:
        return segment
    return (between(*segment, by / length), between(*segment, 1 - by / length))
