"""Smooth curves through knots, and the brush that draws them. Paths hold only absolute M, C and Z."""

import itertools
import math
from collections.abc import Iterable, Sequence

Point = tuple[float, float]
Bezier = tuple[Point, Point, Point, Point]


def between(a: Point, b: Point, t: float, aside: float = 0.0) -> Point:
    """The point at `t` on the way from a to b, moved `aside` to the left of that way (y counts upward)."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    length = math.hypot(dx, dy) or 1.0
    return (a[0] + dx * t - dy / length * aside, a[1] + dy * t + dx / length * aside)


def smooth(knots: Sequence[Point], closed: bool = False) -> list[Bezier]:
    """Cubic pieces through the knots. A knot given twice running is a corner."""
    pieces: list[Bezier] = []
    for run in _runs(knots):
        pieces += _smooth_run(run, closed and len(run) == len(knots))
    return pieces


def _runs(knots: Sequence[Point]) -> list[list[Point]]:
    runs: list[list[Point]] = [[knots[0]]]
    for before, knot in itertools.pairwise(knots):
        if knot == before:
            runs.append([knot])
        else:
            runs[-1].append(knot)
    return [run for run in runs if len(run) > 1]


def _smooth_run(run: list[Point], closed: bool) -> list[Bezier]:
    if closed:
        run = [*run, run[0]]
    tangents = [_tangent(run, i, closed) for i in range(len(run))]
    return [
        (a, _step(a, ta, _distance(a, b) / 3), _step(b, tb, -_distance(a, b) / 3), b)
        for a, b, ta, tb in zip(run, run[1:], tangents, tangents[1:], strict=False)
    ]


def _tangent(run: list[Point], i: int, closed: bool) -> Point:
    """The unit direction at a knot: the nearer neighbour has the greater say, so that close knots turn tightly."""
    last = len(run) - 1
    before = run[i - 1] if i > 0 else (run[last - 1] if closed else None)
    after = run[i + 1] if i < last else (run[1] if closed else None)
    if before is None or after is None:
        return _end_tangent(run, i)
    into, out = _direction(before, run[i]), _direction(run[i], after)
    near, far = _distance(before, run[i]), _distance(run[i], after)
    return _unit((into[0] * far + out[0] * near, into[1] * far + out[1] * near))


def _end_tangent(run: list[Point], i: int) -> Point:
    if len(run) == 2:
        return _direction(run[0], run[1])
    a, b, c = (run[0], run[1], run[2]) if i == 0 else (run[-1], run[-2], run[-3])
    curve = _unit((b[0] + (a[0] - c[0]) / 4 - a[0], b[1] + (a[1] - c[1]) / 4 - a[1]))
    return curve if i == 0 else (-curve[0], -curve[1])


def _distance(a: Point, b: Point) -> float:
    return math.hypot(b[0] - a[0], b[1] - a[1])


def _unit(v: Point) -> Point:
    length = math.hypot(*v) or 1.0
    return (v[0] / length, v[1] / length)


def _direction(a: Point, b: Point) -> Point:
    return _unit((b[0] - a[0], b[1] - a[1]))


def _step(a: Point, direction: Point, by: float) -> Point:
    return (a[0] + direction[0] * by, a[1] + direction[1] * by)


def _at(piece: Bezier, t: float) -> Point:
    s = 1 - t
    weights = (s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t)
    return (
        sum(w * p[0] for w, p in zip(weights, piece, strict=True)),
        sum(w * p[1] for w, p in zip(weights, piece, strict=True)),
    )


def sampled(pieces: Sequence[Bezier], samples: int) -> list[Point]:
    points = [pieces[0][0]]
    for piece in pieces:
        points += [_at(piece, i / samples) for i in range(1, samples + 1)]
    return points


def brushed(pieces: Sequence[Bezier], weight: float, taper: tuple[float, float], shaded: bool) -> list[Bezier]:
    """The closed shape a brush leaves along a line, picture coordinates (y downward).

    It starts and ends at `taper` of its weight. A shaded line has its body on the right hand; it is
    heavier where it turns away from the light, which falls from above and a little from the front.
    """
    along = _lengths(sampled(pieces, 3))
    left, right = [], []
    for i, piece in enumerate(pieces):
        halves = [weight / 2 * _pressure(along[3 * i + k], taper) for k in range(4)]
        headings = [_heading(piece, k / 3) for k in range(4)]
        if shaded:
            halves = [half * _shade(heading) for half, heading in zip(halves, headings, strict=True)]
        left.append(_moved(piece, headings, halves))
        right.append(_moved(piece, headings, [-half for half in halves]))
    end, start = left[-1][3], right[-1][3]
    return _joined([*left, (end, end, start, start), *[(d, c, b, a) for a, b, c, d in reversed(right)]])


def _joined(pieces: list[Bezier]) -> list[Bezier]:
    """Each piece starts just where the one before it ended, corners and rounding included."""
    starts = [pieces[0][0], *(piece[3] for piece in pieces[:-1])]
    return [(start, *piece[1:]) for start, piece in zip(starts, pieces, strict=True)]


def _heading(piece: Bezier, t: float) -> Point:
    a, b, c, d = piece
    if t in (0.0, 1.0):
        return _direction(a, b) if t == 0.0 else _direction(c, d)
    return _direction(_at(piece, t - 0.05), _at(piece, t + 0.05))


def _moved(piece: Bezier, headings: Sequence[Point], by: Sequence[float]) -> Bezier:
    """The piece moved to its left by so much at its start, its thirds and its end."""
    a, b, c, d = ((p[0] + h[1] * m, p[1] - h[0] * m) for p, h, m in zip(piece, headings, by, strict=True))
    return (a, b, c, d)


def _lengths(points: Sequence[Point]) -> list[float]:
    total, sums = 0.0, [0.0]
    for a, b in itertools.pairwise(points):
        total += _distance(a, b)
        sums.append(total)
    return [part / (total or 1.0) for part in sums]


def _pressure(t: float, taper: tuple[float, float]) -> float:
    """Lifts off over the first and the last fifth of the line."""
    start, end = taper
    rise = min(t / 0.2, 1.0)
    fall = min((1 - t) / 0.2, 1.0)
    return (start + (1 - start) * math.sin(rise * math.pi / 2)) * (end + (1 - end) * math.sin(fall * math.pi / 2))


def _shade(direction: Point) -> float:
    """0.6 in full light to 1.35 in full shade; the outward normal of (dx, dy) is (dy, -dx)."""
    facing = (-direction[0] * 0.95 - direction[1] * 0.3) / 0.9962
    return 0.975 + 0.375 * max(-1.0, min(1.0, facing))


def path(pieces: Iterable[Bezier], closed: bool = False) -> str:
    """SVG path data with one decimal."""
    parts: list[str] = []
    at: Point | None = None
    for a, b, c, d in pieces:
        if at != a:
            parts.append(f"M{_pair(a)}")
        parts.append(f"C{_pair(b)} {_pair(c)} {_pair(d)}")
        at = d
    return "".join(parts) + ("Z" if closed else "")


def _pair(point: Point) -> str:
    return f"{_number(point[0])},{_number(point[1])}"


def _number(value: float) -> str:
    text = f"{value:.1f}"
    return text[:-2] if text.endswith(".0") else text
