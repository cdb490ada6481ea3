"""The written critique as a letter one would keep: dog and class on top, the words, the marks, the signature."""

import dataclasses
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any
from xml.sax.saxutils import escape

from django.utils import translation
from reportlab.platypus import KeepTogether, Paragraph, Spacer, Table
from reportlab.platypus.flowables import Flowable, HRFlowable

from ringside.core.sentences import colon
from ringside.drawings.outline import Outline
from ringside.papers import styles
from ringside.papers.drawing import MarkedDog, Sign
from ringside.papers.fonts import TEXT, printable, unprintable
from ringside.papers.measured import Figure, figure_flow
from ringside.papers.page import Heading, write, write_book
from ringside.papers.pictures import CheckCode, Photo

COLUMNS = 3
LARGEST, SMALLEST = 0.64, 0.44  # the drawing's share of the width
PAGE_GAPS = 18 + 2  # what page.py keeps free at head and foot, and a little
SIGN_WIDTH = 14.0
PHOTO_GAP = 10.0
ROOM_TO_SIGN = 26.0


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
    whose: str = ""  # whether the text is the judge's own or written from the marks
    photo: bytes | None = None  # JPEG or PNG, shrunk by whoever took it in
    check_url: str = ""
    measured: Figure | None = None  # after the signature, whole on one page


def book_of_critiques(papers: Iterable[CritiquePaper], title: str, size: str = "A4") -> bytes:
    """One file of many critiques, in order and listed in its contents, each numbered from its own first page."""
    papers = iter(papers)
    first = next(papers)
    heading = dataclasses.replace(_heading(first), title=title, author="")
    return write_book(((_flow(p, size), _heading(p)) for p in _again(first, papers)), heading, size)


def _again(first: CritiquePaper, rest: Iterable[CritiquePaper]) -> Iterable[CritiquePaper]:
    yield first
    yield from rest


def unprintable_in(paper: CritiquePaper) -> list[str]:
    """The signs of this paper that print as a lozenge because the paper font lacks them."""
    words = (line.words for line in paper.marks)
    text = (paper.show, paper.dog, *paper.about, paper.judge, paper.result, *paper.sentences, paper.remark, *words)
    return unprintable("".join(text))


def critique_pdf(paper: CritiquePaper, size: str = "A4") -> bytes:
    """The critique as PDF: one page where the text allows, more where it does not."""
    return write(_flow(paper, size), _heading(paper), size)


def _width(size: str) -> float:
    return styles.SIZES[size][0] - 2 * styles.MARGIN


def titled(paper: CritiquePaper, about: str) -> str:
    """What a paper of critiques is called: of a dog, or of a show."""
    with translation.override(paper.language):
        return colon(paper.labels["critique"], about)


def _heading(paper: CritiquePaper) -> Heading:
    return Heading(
        title=titled(paper, paper.dog),
        author=paper.judge,
        subject=f"{paper.show}, {paper.day}",
        language=paper.language,
        left=paper.show,
        right=paper.day,
        pages=paper.labels["pages"],
    )


def _flow(paper: CritiquePaper, size: str) -> list[Flowable]:
    width = _width(size)
    before = [Spacer(1, 10), *_opening(paper, width), *_remark(paper, width)]
    after = [Spacer(1, 8), *_signing(paper, width)]
    room = styles.SIZES[size][1] - 2 * styles.MARGIN - PAGE_GAPS - _tall(before, width) - _tall(after, width)
    figure = figure_flow(paper.measured, paper.language, width) if paper.measured else []
    return [*before, *_marks(paper, width, room), KeepTogether(after), *figure]


def _tall(flow: Sequence[Flowable], width: float) -> float:
    return sum(part.wrap(width, 10_000)[1] + part.getSpaceBefore() + part.getSpaceAfter() for part in flow)


def _opening(paper: CritiquePaper, width: float) -> list[Flowable]:
    """Dog, class and the written critique, with the photo beside them where there is one."""
    measured = width if paper.photo is None else styles.MEASURE
    opening = [
        _text(paper.dog, _measured(styles.DOG, width, measured)),
        *(_text(line, _measured(styles.LINE, width, measured)) for line in paper.about),
        Spacer(1, 10),
        *(_text(text, _measured(styles.WORDS, width)) for text in _paragraphs(paper.sentences)),
        *([_text(paper.whose, styles.SMALL)] if paper.whose else []),
    ]
    if paper.photo is None:
        return opening
    photo = Photo(paper.photo, styles.MEASURE + PHOTO_GAP, width - styles.MEASURE - PHOTO_GAP)
    height = sum(part.wrap(width, 10_000)[1] for part in opening)
    return [photo, *opening, Spacer(1, max(0.0, photo.tall - height))]


def _paragraphs(sentences: Sequence[str]) -> list[str]:
    """The text as one paragraph, or as many as the judge made of it."""
    return [line for line in " ".join(sentences).splitlines() if line.strip()]


def _remark(paper: CritiquePaper, width: float) -> list[Flowable]:
    if not paper.remark:
        return []
    lines = [line for line in paper.remark.splitlines() if line.strip()]
    return [
        _text(paper.labels["own"], styles.HEAD),
        *(_text(line, _measured(styles.OWN, width)) for line in lines),
        _text(paper.labels["remark"], styles.SMALL),
    ]


def _marks(paper: CritiquePaper, width: float, room: float) -> list[Flowable]:
    """The drawing with its legend and list, a little smaller where that keeps the critique on one page."""
    if not paper.marks:
        return []
    head, legend = _text(paper.labels["marks"], styles.HEAD), _legend(paper.labels["legend"], width)
    listed = [Spacer(1, 4), _list(paper.marks, width)]
    tallest = room - _tall([head, legend, *listed], width)
    marks = {line.point: line.mark for line in paper.marks}
    praised = frozenset(line.point for line in paper.marks if line.is_praised)
    drawn = MarkedDog(paper.drawing, marks, praised, width * _share(paper.drawing, width, tallest))
    drawn.hAlign = "CENTER"
    return [KeepTogether([head, drawn, legend]), *listed]


def _share(drawing: Outline, width: float, tallest: float) -> float:
    fitting = tallest * drawing.width / drawing.height / width
    return min(fitting, LARGEST) if fitting >= SMALLEST else LARGEST


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
        ("FONT", (0, 0), (-1, -1), TEXT),  # else the table asks for a font that is not in the file
        ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
        ("LEFTPADDING", (0, 0), (-1, -1), 0),
        ("RIGHTPADDING", (0, 0), (-1, -1), 4),
        ("TOPPADDING", (0, 0), (-1, -1), 0.5),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 0.5),
    ]


def _signing(paper: CritiquePaper, width: float) -> list[Flowable]:
    labels = paper.labels
    left = [_text(paper.result, styles.RESULT), _text(labels["judge"].format(name=paper.judge), styles.LINE)]
    line = HRFlowable(width="100%", thickness=0.7, color=styles.INK, spaceAfter=2)
    right = [Spacer(1, ROOM_TO_SIGN), line, _text(f"{labels['signature']}. {paper.signed}", styles.SMALL)]
    table = Table(
        [[left, right]], colWidths=[width * 0.55, width * 0.45], style=[*_bare(), ("VALIGN", (0, 0), (-1, -1), "TOP")]
    )
    return [table, Spacer(1, 6), _small_print(paper, width)]


def _small_print(paper: CritiquePaper, width: float) -> Flowable:
    """That the signed sheet and the governing body decide; what could not be printed; where to check the paper."""
    lines = [paper.labels["small"].format(fingerprint=paper.fingerprint[:16])]
    if missing := unprintable_in(paper):
        codes = " ".join(f"U+{ord(sign):04X}" for sign in missing[:12])
        lines.append(paper.labels["unprintable"].format(signs=codes))
    if not paper.check_url:
        return Table([[[_text(line, styles.SMALL) for line in lines]]], colWidths=[width], style=_bare())
    lines.append(paper.labels["check"].format(address=paper.check_url))
    code = CheckCode(paper.check_url)
    cells = [[_text(line, styles.SMALL) for line in lines], code]
    return Table([cells], colWidths=[width - code.width, code.width], style=_bare())


def _measured(style: Any, width: float, measure: float = styles.MEASURE) -> Any:
    """The style kept to a readable measure, however wide the page is."""
    return style.clone(f"{style.name}-measured", rightIndent=max(0.0, width - measure))


def _text(text: str, style: Any) -> Paragraph:
    """A paragraph of plain text: whatever it holds is printed, nothing in it is markup."""
    return Paragraph(escape(printable(text)), style)
