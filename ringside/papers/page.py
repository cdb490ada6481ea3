"""What every paper shares: margins, the running head with show and date, page n of m, language and metadata."""

import io
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from django.utils.formats import date_format
from reportlab.pdfbase.pdfmetrics import stringWidth
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import BaseDocTemplate, Frame, PageTemplate
from reportlab.platypus.flowables import Flowable

from ringside.papers.fonts import TEXT, plain, printable
from ringside.papers.styles import HAIRLINE, MARGIN, QUIET, SIZES
from ringside.shows.models import Show

HEAD_GAP, FOOT_GAP = 14, 16
HEAD_SIZE = 8.5


@dataclass(frozen=True)
class Heading:
    """What a paper says of itself: in its metadata, at the head and at the foot of each page.

    `pages` is "Page {n} of {m}" in the paper's language.
    """

    title: str
    author: str
    subject: str
    language: str
    left: str
    right: str
    pages: str


class NumberedCanvas(Canvas):
    """Holds one paper's pages until their number is known; several papers may follow each other in one file."""

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.finished: list[dict[str, Any]] = []
        self.sections: tuple[str, ...] = ()

    def enter_section(self, name: str, top: float) -> None:
        """What is printed from `top` on belongs to this section; a page names its first and its last at the foot."""
        begins_page = self.absolutePosition(0, top)[1] > self._pagesize[1] - MARGIN - HEAD_GAP - 45
        self.sections = (name,) if begins_page else (*self.sections, name)

    def showPage(self) -> None:  # noqa: N802
        self.finished.append(dict(self.__dict__))
        self.sections = self.sections[-1:]
        self._startPage()

    def save(self) -> None:
        """Called by the library at the end of each paper; `close` ends the file."""

    def number_pages(self, heading: Heading, *, mark: bool) -> None:
        """Writes the paper's pages out, each with its head and foot; `mark` lists the paper in the file's contents."""
        pages, self.finished, self.sections = self.finished, [], ()
        for number, page in enumerate(pages, 1):
            self.__dict__.update(page)
            if mark and number == 1:
                self.bookmarkPage(f"paper-{self.getPageNumber()}")
                self.addOutlineEntry(plain(heading.title), f"paper-{self.getPageNumber()}")
            self._write_head_and_foot(heading, number, len(pages))
            super().showPage()
        self.finished = []

    def close(self, heading: Heading) -> None:
        self.setTitle(plain(heading.title))
        self.setAuthor(plain(heading.author))
        self.setSubject(plain(heading.subject))
        self.setCreator("Ringside")
        super().save()

    def _write_head_and_foot(self, heading: Heading, number: int, count: int) -> None:
        """Put before the page's own content, so that a reader who listens hears the head first."""
        content = list(self._code)
        self._code.clear()
        self.saveState()
        width, height = self._pagesize
        self.setFont(TEXT, HEAD_SIZE)
        self.setFillColor(QUIET)
        self.setStrokeColor(HAIRLINE)
        self.setLineWidth(0.5)
        right = _shortened(printable(heading.right), (width - 2 * MARGIN) / 3)
        room = width - 2 * MARGIN - stringWidth(right, TEXT, HEAD_SIZE) - 12
        self.drawString(MARGIN, height - MARGIN + 4, _shortened(printable(heading.left), room))
        self.drawRightString(width - MARGIN, height - MARGIN + 4, right)
        self.line(MARGIN, height - MARGIN, width - MARGIN, height - MARGIN)
        self.drawRightString(width - MARGIN, MARGIN - 10, printable(heading.pages.format(n=number, m=count)))
        ends = dict.fromkeys((*self.sections[:1], *self.sections[-1:]))
        self.drawString(MARGIN, MARGIN - 10, _shortened(printable(" – ".join(ends)), (width - 2 * MARGIN) * 0.7))
        self.restoreState()
        self._code.extend(content)


def _shortened(text: str, width: float) -> str:
    if stringWidth(text, TEXT, HEAD_SIZE) <= width:
        return text
    while text and stringWidth(f"{text}…", TEXT, HEAD_SIZE) > width:
        text = text[:-1]
    return f"{text.rstrip()}…"


def write(flow: Sequence[Flowable], heading: Heading, size: str = "A4") -> bytes:
    """The paper as PDF bytes; the same flow gives the same bytes within one version of the library."""
    return write_book([(flow, heading)], heading, size)


def write_book(papers: Iterable[tuple[Sequence[Flowable], Heading]], heading: Heading, size: str = "A4") -> bytes:
    """Several papers in one file, in order, each numbered from its own first page; one is laid out at a time."""
    target = io.BytesIO()
    canvas = NumberedCanvas(target, pagesize=SIZES[size], invariant=1, lang=heading.language, initialFontName=TEXT)
    canvas.setViewerPreference("DisplayDocTitle", "true")
    for flow, own in papers:
        _template(size).build(list(flow), canvasmaker=lambda *_, **__: canvas)
        canvas.number_pages(own, mark=own is not heading)
    canvas.close(heading)
    return target.getvalue()


def _template(size: str) -> BaseDocTemplate:
    width, height = SIZES[size]
    frame = Frame(
        MARGIN, MARGIN + FOOT_GAP - 12, width - 2 * MARGIN, height - 2 * MARGIN - HEAD_GAP - FOOT_GAP + 12,
        leftPadding=0, rightPadding=0, topPadding=0, bottomPadding=0,
    )  # fmt: skip
    document = BaseDocTemplate(None, pagesize=(width, height))
    document.addPageTemplates(PageTemplate(frames=[frame]))
    return document


def day_words(day: date | None) -> str:
    """In the reader's language; empty where the day is not known yet."""
    return date_format(day) if day else ""


def show_days(show: Show) -> str:
    """The day of a show, or its first and last one, in the reader's language."""
    return " – ".join(dict.fromkeys(date_format(day) for day in (show.first_day, show.last_day)))
