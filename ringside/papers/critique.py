"""The written critique as a letter one would keep: dog and class on top, the judge's words, the marks, the signature."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any
from xml.sax.saxutils import escape

from reportlab.platypus import KeepTogether, Paragraph, Spacer, Table
from reportlab.platypus.flowables import Flowable, HRFlowable

from ringside.drawings.outline import Outline
from ringside.papers import styles
from ringside.papers.drawing import MarkedDog, Sign
from ringside.papers.fonts import printable
from ringside.papers.page import Heading, write

COLUMNS = 3
DRAWING_SHARE = 0.58
SIGN_WIDTH = 14.0


@dataclass(frozen=True)
class MarkLine:
    """One mark as it is listed: what the lexicon says of it, and its symbol."""

    point: str
    words: str
    mark: int
    is_praised: bool


@dataclass(frozen=True)
class CritiquePaper:
    """Everything one critique prints, in its own language. `labels` are the paper's own words (labels.toml)."""

    language: str
    show: str
    day: str
    dog: str
    about: tuple[str, ...]
    judge: str
    result: str
    sentences: tuple[str, ...]
    remark: str
    marks: tuple[MarkLine, ...]
    signed: str
    fingerprint: str
    labels: Mapping[str, Any]
    drawing: Outline


def critique_pdf(paper: CritiquePaper, size: str = "A4") -> bytes:
    """The critique as PDF: one page where the text allows, more where it does not."""
    return write(_flow(paper, styles.SIZES[size][0] - 2 * styles.MARGIN), _heading(paper), size)


def _heading(paper: CritiquePaper) -> Heading:
    return Heading(
        title=f"{paper.labels['critique']}: {paper.dog}",
        author=paper.judge,
        subject=f"{paper.show}, {paper.day}",
        language=paper.language,
        left=paper.show,
        right=paper.day,
        pages=paper.labels["pages"],
    )


def _flow(paper: CritiquePaper, width: float) -> list[Flowable]:
    return [
        Spacer(1, 10),
        _text(paper.dog, styles.DOG),
        *(_text(line, styles.LINE) for line in paper.about),
        Spacer(1, 10),
        _text(" ".join(paper.sentences), _measured(styles.WORDS, width)),
        *_remark(paper, width),
        *_marks(paper, width),
        Spacer(1, 8),
        KeepTogether(_signing(paper, width)),
    ]


def _remark(paper: CritiquePaper, width: float) -> list[Flowable]:
    if not paper.remark:
        return []
    lines = [line for line in paper.remark.splitlines() if line.strip()]
    return [
        _text(paper.labels["own"], styles.HEAD),
        *(_text(line, _measured(styles.OWN, width)) for line in lines),
        _text(paper.labels["remark"], styles.SMALL),
    ]


def _marks(paper: CritiquePaper, width: float) -> list[Flowable]:
    if not paper.marks:
        return []
    marks = {line.point: line.mark for line in paper.marks}
    praised = frozenset(line.point for line in paper.marks if line.is_praised)
    drawn = MarkedDog(paper.drawing, marks, praised, width * DRAWING_SHARE)
    drawn.hAlign = "CENTER"
    return [
        KeepTogether([_text(paper.labels["marks"], styles.HEAD), drawn, _legend(paper.labels["legend"], width)]),
        Spacer(1, 4),
        _list(paper.marks, width),
    ]


def _legend(words: Sequence[str], width: float) -> Table:
    signs = [Sign(-2, False), Sign(0, False), Sign(2, False), Sign(0, True)]
    cells = [cell for sign, word in zip(signs, words, strict=True) for cell in (sign, _text(word, styles.SMALL))]
    share = (width - 4 * SIGN_WIDTH) / 4
    return Table([cells], colWidths=[SIGN_WIDTH, share] * 4, style=_bare())


def _list(marks: Sequence[MarkLine], width: float) -> Table:
    """Every mark in the standard's order, down the first column and on in the next."""
    length = -(-len(marks) // COLUMNS)
    column = width / COLUMNS - SIGN_WIDTH
    rows = []
    for index in range(length):
        across = range(index, index + length * COLUMNS, length)
        rows.append([cell for at in across for cell in _cells(marks[at] if at < len(marks) else None)])
    return Table(rows, colWidths=[SIGN_WIDTH, column] * COLUMNS, style=_bare())


def _cells(line: MarkLine | None) -> tuple[Any, Any]:
    if line is None:
        return "", ""
    return Sign(line.mark, line.is_praised), _text(line.words, styles.SMALL)


def _bare() -> list[tuple[Any, ...]]:
    return [
        ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
        ("LEFTPADDING", (0, 0), (-1, -1), 0),
        ("RIGHTPADDING", (0, 0), (-1, -1), 4),
        ("TOPPADDING", (0, 0), (-1, -1), 0.5),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 0.5),
    ]


def _signing(paper: CritiquePaper, width: float) -> list[Flowable]:
    labels = paper.labels
    left = [_text(paper.result, styles.RESULT), _text(f"{labels['judge']}: {paper.judge}", styles.LINE)]
    line = HRFlowable(width="100%", thickness=0.7, color=styles.INK, spaceBefore=24, spaceAfter=2)
    right = [line, _text(f"{labels['signature']}. {paper.signed}", styles.SMALL)]
    table = Table([[left, right]], colWidths=[width * 0.55, width * 0.45], style=[*_bare(), ("VALIGN", (0, 0), (-1, -1), "TOP")])
    small = labels["small"].format(fingerprint=paper.fingerprint[:16])
    return [table, Spacer(1, 6), _text(small, styles.SMALL)]


def _measured(style: Any, width: float) -> Any:
    """The style kept to a readable measure, however wide the page is."""
    return style.clone(f"{style.name}-measured", rightIndent=max(0.0, width - styles.MEASURE))


def _text(text: str, style: Any) -> Paragraph:
    """A paragraph of plain text: whatever it holds is printed, nothing in it is markup."""
    return Paragraph(escape(printable(text)), style)
