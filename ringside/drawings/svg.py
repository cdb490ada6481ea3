"""The dog's outline with a judge's marks, as SVG elements: presentation by class and attribute, no style, no script."""

from collections.abc import Collection, Iterable, Mapping
from xml.sax.saxutils import escape, quoteattr

from ringside.drawings.outline import Outline, Stroke
from ringside.drawings.symbols import Shape, symbol


def dog_svg(drawn: Outline, marks: Mapping[str, int], praised: Collection[str] = (), title: str = "") -> str:
    """One picture: the outline, and each mark of a point that has a place there."""
    inside = "".join([*_dog(drawn), *_marks(drawn, marks, praised)])
    label = f"<title>{escape(title)}</title>" if title else ""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="dog" viewBox="0 0 {drawn.width:g} {drawn.height:g}" '
        f'role="img" aria-label={quoteattr(title)}>{label}{inside}</svg>'
    )


def _dog(drawn: Outline) -> Iterable[str]:
    yield from (_ink(stroke, "far") for stroke in drawn.under)
    yield f'<path class="hatch far" d="{drawn.under_shade}"/>'
    yield from (f'<path class="body" d="{path}"/>' for path in drawn.body)
    yield f'<path class="hatch" d="{drawn.shade}"/>'
    yield from (_ink(stroke, stroke.tone) for stroke in drawn.strokes)


def _ink(stroke: Stroke, tone: str) -> str:
    return f'<path class="ink {tone}" d="{stroke.path}"/>'


def _marks(drawn: Outline, marks: Mapping[str, int], praised: Collection[str]) -> Iterable[str]:
    for point, place in drawn.places.items():
        if point not in marks and point not in praised:
            continue
        if marks.get(point) or point in praised:
            yield from _leader(drawn, point)
        yield from (_shape(shape) for shape in symbol(marks.get(point, 0), point in praised, place))


def _leader(drawn: Outline, point: str) -> Iterable[str]:
    if point in drawn.leaders:
        (x1, y1), (x2, y2) = drawn.leaders[point]
        yield f'<path class="leader" d="M{x1:.1f},{y1:.1f}L{x2:.1f},{y2:.1f}"/>'


def _shape(shape: Shape) -> str:
    kind = "mark full" if shape.filled else "mark open"
    if shape.radius:
        (x, y), *_ = shape.points
        return f'<circle class="{kind}" cx="{x:.1f}" cy="{y:.1f}" r="{shape.radius:g}"/>'
    points = " ".join(f"{x:.1f},{y:.1f}" for x, y in shape.points)
    return f'<polygon class="{kind}" points="{points}"/>'
