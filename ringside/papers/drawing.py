"""The dog's outline and its marks on paper."""

import re
import zlib
from collections.abc import Iterator, Mapping
from typing import Any

from reportlab.lib.colors import white
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus.flowables import Flowable

from ringside.drawings.outline import PEN, Outline
from ringside.drawings.symbols import Shape, symbol
from ringside.papers.styles import INK, QUIET

PART = re.compile(r"([MCLZ])([^MCLZ]*)")
NUMBER = re.compile(r"-?\d+(?:\.\d+)?")


class MarkedDog(Flowable):
    """The outline `width` points wide, with each mark at its place."""

    def __init__(self, drawn: Outline, marks: Mapping[str, int], praised: frozenset[str], width: float) -> None:
        super().__init__()
        self.drawn, self.marks, self.praised = drawn, marks, praised
        self.width, self.scale = width, width / drawn.width
        self.height = drawn.height * self.scale

    def wrap(self, *_: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        canvas: Canvas = self.canv
        canvas.saveState()
        canvas.translate(0, self.height)
        canvas.scale(self.scale, -self.scale)
        canvas.doForm(self._dog(canvas))
        for point, place in self.drawn.places.items():
            if point in self.marks or point in self.praised:
                self._draw_mark(canvas, point, place)
        canvas.restoreState()

    def _dog(self, canvas: Canvas) -> str:
        """The name of the bare dog in this file: drawn once, however many pages show it."""
        name = f"dog-{zlib.crc32(''.join(stroke.path for stroke in self.drawn.strokes).encode()):08x}"
        if not canvas.hasForm(name):
            canvas.beginForm(name, 0, 0, self.drawn.width, self.drawn.height)
            self._draw_dog(canvas)
            canvas.endForm()
        return name

    def _draw_dog(self, canvas: Canvas) -> None:
        drawn = self.drawn
        canvas.setLineWidth(PEN)
        _fill(canvas, [stroke.path for stroke in drawn.under], QUIET)
        _trace(canvas, drawn.under_shade, QUIET)
        _fill(canvas, drawn.body, white)
        _trace(canvas, drawn.shade, QUIET)
        _fill(canvas, [stroke.path for stroke in drawn.strokes], INK)

    def _draw_mark(self, canvas: Canvas, point: str, place: tuple[float, float]) -> None:
        mark = self.marks.get(point, 0)
        if point in self.drawn.leaders and (mark or point in self.praised):
            (x1, y1), (x2, y2) = self.drawn.leaders[point]
            canvas.setStrokeColor(QUIET)
            canvas.setLineWidth(0.9)
            canvas.line(x1, y1, x2, y2)
        for shape in symbol(mark, point in self.praised, place):
            draw_shape(canvas, shape)


class Sign(Flowable):
    """One mark's symbol, as it stands in a list."""

    def __init__(self, mark: int, is_praised: bool, size: float = 9) -> None:
        super().__init__()
        self.mark, self.is_praised, self.width, self.height = mark, is_praised, size, size

    def wrap(self, *_: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        self.canv.saveState()
        self.canv.translate(self.width / 2, self.height / 2)
        self.canv.scale(self.height / 26, -self.height / 26)
        for shape in symbol(self.mark, self.is_praised):
            draw_shape(self.canv, shape)
        self.canv.restoreState()


def draw_shape(canvas: Canvas, shape: Shape) -> None:
    canvas.setLineWidth(2)
    canvas.setStrokeColor(INK)
    canvas.setFillColor(INK if shape.filled else white)
    (x, y), *rest = shape.points
    if shape.radius:
        canvas.circle(x, y, shape.radius, stroke=1, fill=int(shape.filled))
        return
    path = canvas.beginPath()
    path.moveTo(x, y)
    for corner in rest:
        path.lineTo(*corner)
    path.close()
    canvas.drawPath(path, stroke=1, fill=1)


def _fill(canvas: Canvas, paths: Any, colour: Any) -> None:
    canvas.setFillColor(colour)
    for data in paths:
        canvas.drawPath(_path(canvas, data), stroke=0, fill=1)


def _trace(canvas: Canvas, data: str, colour: Any) -> None:
    canvas.setStrokeColor(colour)
    canvas.drawPath(_path(canvas, data), stroke=1, fill=0)


def _path(canvas: Canvas, data: str) -> Any:
    path = canvas.beginPath()
    for command, numbers in _parts(data):
        if command == "M":
            path.moveTo(*numbers[:2])
        elif command == "L":
            path.lineTo(*numbers[:2])
        elif command == "C":
            for start in range(0, len(numbers), 6):
                path.curveTo(*numbers[start : start + 6])
        else:
            path.close()
    return path


def _parts(data: str) -> Iterator[tuple[str, list[float]]]:
    for command, numbers in PART.findall(data):
        yield command, [float(number) for number in NUMBER.findall(numbers)]
