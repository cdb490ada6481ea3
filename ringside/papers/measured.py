"""The measured photo of a critique: the picture with its lines, and the table of what it reads."""

import io
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any
from xml.sax.saxutils import escape

from django.utils import translation
from reportlab.lib.colors import white
from reportlab.lib.utils import ImageReader
from reportlab.platypus import KeepTogether, Paragraph, Spacer, Table
from reportlab.platypus.flowables import Flowable

from ringside.core.tables import by_language
from ringside.papers import styles
from ringside.papers.fonts import BOLD, TEXT, printable
from ringside.photos.words import NAMES
from scoring.measuring.definitions import CODES

TALLEST = 0.52  # of the width: leaves the table its place on the same page
DASHED = frozenset({"plumb", "level", "straight"})
SHARES = (0.3, 0.11, 0.17, 0.18, 0.24)  # of the width, one for each column
Corner = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Figure:
    """`lines` are (kind, corners) and `labels` (words, corner), in pixels of the picture; `rows` as printed."""

    jpeg: bytes
    width: int
    height: int
    lines: Sequence[tuple[str, Sequence[Corner]]]
    dots: Sequence[Corner]
    labels: Sequence[tuple[str, Corner]]
    rows: Sequence[Sequence[str]]


@cache
def words() -> Mapping[str, Any]:
    """By language, what the paper says, with the names of the measurements as the pages say them."""
    told = by_language(Path(__file__).with_name("measured_words"))
    return {language: {**of, "names": {**_names(language), **of["names"]}} for language, of in told.items()}


def _names(language: str) -> dict[str, str]:
    with translation.override(language):
        return {code: str(NAMES[code].name) for code in CODES}


class Picture(Flowable):
    """The photo with its lines, `wide` points wide: white on a dark edge, so that they show on any coat."""

    def __init__(self, figure: Figure, wide: float, tallest: float) -> None:
        super().__init__()
        self.figure = figure
        self.by = min(wide / figure.width, tallest / figure.height)
        self.width, self.height = figure.width * self.by, figure.height * self.by
        self.hAlign = "CENTER"

    def wrap(self, *_: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        self.canv.saveState()
        self.canv.drawImage(ImageReader(io.BytesIO(self.figure.jpeg)), 0, 0, self.width, self.height)
        for colour, pen in ((styles.INK, 2.2), (white, 1.0)):
            self.canv.setStrokeColor(colour)
            self.canv.setLineWidth(pen)
            for kind, corners in self.figure.lines:
                self.canv.setDash([4, 3] if kind in DASHED else [])
                self._line(corners)
        self.canv.setDash([])
        self._dots()
        self._labels()
        self.canv.restoreState()

    def _at(self, corner: Corner) -> Corner:
        return corner[0] * self.by, self.height - corner[1] * self.by

    def _line(self, corners: Sequence[Corner]) -> None:
        path = self.canv.beginPath()
        path.moveTo(*self._at(corners[0]))
        for corner in corners[1:]:
            path.lineTo(*self._at(corner))
        self.canv.drawPath(path, stroke=1, fill=0)

    def _dots(self) -> None:
        self.canv.setStrokeColor(styles.INK)
        self.canv.setFillColor(white)
        self.canv.setLineWidth(0.8)
        for corner in self.figure.dots:
            self.canv.circle(*self._at(corner), 2.4, stroke=1, fill=1)

    def _labels(self) -> None:
        """Every angle on a light ground at its corner."""
        for said, corner in self.figure.labels:
            x, y = self._at(corner)
            wide = self.canv.stringWidth(said, BOLD, 9)
            self.canv.setFillColor(white)
            self.canv.rect(x - 1.5, y - 5, wide + 3, 11, stroke=0, fill=1)
            self.canv.setFillColor(styles.INK)
            self.canv.setFont(BOLD, 9)
            self.canv.drawString(x, y - 2.5, said)


def figure_flow(figure: Figure, language: str, width: float) -> list[Flowable]:
    """Head, picture, table and what the numbers do not hold, together on one page."""
    told = words()[language]
    head = Paragraph(escape(told["head"]), styles.HEAD)
    table = _table(told, figure.rows, width)
    note = Paragraph(escape(told["note"]), styles.SMALL)
    picture = Picture(figure, width, width * TALLEST)
    return [KeepTogether([head, picture, Spacer(1, 6), table, Spacer(1, 4), note])]


def _table(told: Mapping[str, Any], rows: Sequence[Sequence[str]], width: float) -> Table:
    head = [Paragraph(escape(one), styles.SMALL.clone("small-bold", fontName=BOLD)) for one in told["columns"]]
    body = [[Paragraph(escape(printable(cell)), styles.SMALL) for cell in row] for row in rows]
    return Table(
        [head, *body],
        colWidths=[share * width for share in SHARES],
        repeatRows=1,
        style=[
            ("FONT", (0, 0), (-1, -1), TEXT),
            ("VALIGN", (0, 0), (-1, -1), "TOP"),
            ("LEFTPADDING", (0, 0), (-1, -1), 0),
            ("TOPPADDING", (0, 0), (-1, -1), 1.5),
            ("BOTTOMPADDING", (0, 0), (-1, -1), 1.5),
            ("LINEBELOW", (0, 0), (-1, 0), 0.8, styles.INK),
            ("LINEBELOW", (0, 1), (-1, -1), 0.3, styles.HAIRLINE),
        ],
    )
