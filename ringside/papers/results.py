"""The results of a class on paper."""

from collections.abc import Sequence
from dataclasses import dataclass
from xml.sax.saxutils import escape

from reportlab.platypus import Paragraph, Spacer, Table
from reportlab.platypus.flowables import Flowable

from ringside.papers import styles
from ringside.papers.fonts import TEXT, printable
from ringside.papers.page import Heading, write


@dataclass(frozen=True)
class ResultLine:
    place: str
    number: str
    dog: str
    grade: str
    reason: str


@dataclass(frozen=True)
class ResultsPaper:
    """One class. `columns` are the headings of place, number, dog and grade."""

    show: str
    day: str
    title: str
    judge: str
    columns: tuple[str, str, str, str]
    lines: Sequence[ResultLine]
    pages: str
    language: str = "en"


def results_pdf(paper: ResultsPaper, size: str = "A4") -> bytes:
    heading = Heading(paper.title, paper.judge, paper.show, paper.language, paper.show, paper.day, paper.pages)
    width = styles.SIZES[size][0] - 2 * styles.MARGIN
    flow: list[Flowable] = [
        Spacer(1, 10), _text(paper.title, styles.RESULT), _text(paper.judge, styles.LINE), Spacer(1, 8),
        _table(paper, width),
    ]  # fmt: skip
    return write(flow, heading, size)


def _table(paper: ResultsPaper, width: float) -> Table:
    head = [_text(word, styles.HEAD) for word in paper.columns]
    rows = [
        [
            _text(line.place, styles.LINE),
            _text(line.number, styles.LINE),
            _text(line.dog, styles.LINE),
            [_text(line.grade, styles.LINE), *([_text(line.reason, styles.SMALL)] if line.reason else [])],
        ]
        for line in paper.lines
    ]
    rules = [
        ("FONT", (0, 0), (-1, -1), TEXT),
        ("LINEBELOW", (0, 0), (-1, -1), 0.4, styles.HAIRLINE),
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("LEFTPADDING", (0, 0), (-1, -1), 0),
    ]
    return Table([head, *rows], colWidths=[46, 50, width - 246, 150], style=rules, repeatRows=1, splitInRow=1)


def _text(text: str, style: object) -> Paragraph:
    return Paragraph(escape(printable(text)), style)
