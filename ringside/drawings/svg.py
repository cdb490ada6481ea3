"""The dog's outline as SVG: classes for the page's colours, presentation attributes where there is none, no script."""

from collections.abc import Collection, Iterable, Mapping, Sequence
from xml.sax.saxutils import escape, quoteattr

from ringside.drawings.outline import PEN, Outline
from ringside.drawings.symbols import Shape, symbol

LINE = 'fill="none" stroke="currentColor" stroke-linecap="round"'


def dog_svg(drawn: Outline, marks: Mapping[str, int], praised: Collection[str] = (), title: str = "") -> str:
    """One picture: the outline, and each mark of a point that has a place there."""
    return picture("dog", drawn, [*dog(drawn), *_marks(drawn, marks, praised)], title)


def picture(kind: str, drawn: Outline, elements: Iterable[str], title: str) -> str:
    title = "".join(sign for sign in title if sign.isprintable())  # XML has no place for controls and half signs
    label = f"<title>{escape(title)}</title>" if title else ""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="{kind}" viewBox="0 0 {drawn.width:g} {drawn.height:g}" '
        f'role="img" aria-label={quoteattr(title)} fill="currentColor">{label}{"".join(elements)}</svg>'
    )


def dog(drawn: Outline, coat: Sequence[tuple[float, str]] = ()) -> Iterable[str]:
    """The far legs, the near body that hides them, the coat's strokes (width, path), the shade, the ink."""
    yield from (f'<path class="ink far" opacity=".6" d="{stroke.path}"/>' for stroke in drawn.under)
    yield _pen(drawn.under_shade, PEN, "hatch far")
    yield from (f'<path class="body" fill="#fff" d="{path}"/>' for path in drawn.body)
    yield from (_pen(path, width, "coat") for width, path in coat)
    yield _pen(drawn.shade, PEN, "hatch")
    yield from (f'<path class="ink {stroke.tone}" d="{stroke.path}"/>' for stroke in drawn.strokes)


def _pen(data: str, width: float, kind: str) -> str:
    return f'<path class="{kind}" {LINE} stroke-width="{width:g}" d="{data}"/>'


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
        yield _pen(f"M{x1:.1f},{y1:.1f}L{x2:.1f},{y2:.1f}", 1.2, "leader")


def _shape(shape: Shape) -> str:
    kind = (
        'class="mark full"' if shape.filled else 'class="mark open" fill="#fff" stroke="currentColor" stroke-width="2"'
    )
    if shape.radius:
        (x, y), *_ = shape.points
        return f'<circle {kind} cx="{x:.1f}" cy="{y:.1f}" r="{shape.radius:g}"/>'
    points = " ".join(f"{x:.1f},{y:.1f}" for x, y in shape.points)
    return f'<polygon {kind} points="{points}"/>'
