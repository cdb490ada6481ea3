"""The photo beside a critique, and the code that leads to the page where the paper can be checked."""

import io

import segno
from reportlab.lib.units import mm
from reportlab.lib.utils import ImageReader
from reportlab.platypus.flowables import Flowable

from ringside.papers.styles import HAIRLINE, INK


class Photo(Flowable):
    """Hangs from where it stands, `left` points in and `wide` points wide, and takes no room of its own."""

    def __init__(self, content: bytes, left: float, wide: float) -> None:
        super().__init__()
        self.image, self.left, self.wide = ImageReader(io.BytesIO(content)), left, wide
        across, down = self.image.getSize()
        self.tall = min(wide * down / across, wide * 1.4)
        self.wide = min(wide, self.tall * across / down)

    def wrap(self, *_: float) -> tuple[float, float]:
        return 0.0, 0.0

    def draw(self) -> None:
        self.canv.drawImage(self.image, self.left, -self.tall, self.wide, self.tall)
        self.canv.setStrokeColor(HAIRLINE)
        self.canv.setLineWidth(0.4)
        self.canv.rect(self.left, -self.tall, self.wide, self.tall)


class CheckCode(Flowable):
    """A QR code of an address, or one made already, drawn as squares, so that it prints sharp at any size."""

    def __init__(self, shown: str | segno.QRCode, side: float = 20 * mm) -> None:
        super().__init__()
        code = segno.make_qr(shown, error="m") if isinstance(shown, str) else shown
        self.rows = tuple(tuple(bool(cell) for cell in row) for row in code.matrix)
        self.width = self.height = side

    def wrap(self, *_: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        cell = self.width / len(self.rows)
        path = self.canv.beginPath()
        for down, row in enumerate(self.rows):
            for start, end in _runs(row):
                path.rect(start * cell, self.height - (down + 1) * cell, (end - start) * cell, cell)
        self.canv.setFillColor(INK)
        self.canv.drawPath(path, stroke=0, fill=1)


def _runs(row: tuple[bool, ...]) -> list[tuple[int, int]]:
    """Where the dark stretches of a row begin and end: one rectangle each leaves no hairlines between cells."""
    edges = [i for i, cell in enumerate((*row, False)) if cell != (False, *row)[i]]
    return list(zip(edges[::2], edges[1::2], strict=True))
