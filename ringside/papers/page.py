"""What every paper shares: margins, the running head with show and date, page n of m, language and metadata."""

import io
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import BaseDocTemplate, Frame, PageTemplate
from reportlab.platypus.flowables import Flowable

from ringside.papers.fonts import TEXT, printable
from ringside.papers.styles import HAIRLINE, MARGIN, QUIET, SIZES

HEAD_GAP, FOOT_GAP = 14, 16


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
    """Writes each page's head and foot at the end, when the number of pages is known."""

    def __init__(self, *args: Any, heading: Heading, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.heading = heading
        self.finished: list[dict[str, Any]] = []

    def showPage(self) -> None:  # noqa: N802
        self.finished.append(dict(self.__dict__))
        self._startPage()

    def save(self) -> None:
        for number, page in enumerate(self.finished, 1):
            self.__dict__.update(page)
            self._write_head_and_foot(number, len(self.finished))
            super().showPage()
        super().save()

    def _write_head_and_foot(self, number: int, count: int) -> None:
        width, height = self._pagesize
        self.setFont(TEXT, 8.5)
        self.setFillColor(QUIET)
        self.setStrokeColor(HAIRLINE)
        self.setLineWidth(0.5)
        self.drawString(MARGIN, height - MARGIN + 4, printable(self.heading.left))
        self.drawRightString(width - MARGIN, height - MARGIN + 4, printable(self.heading.right))
        self.line(MARGIN, height - MARGIN, width - MARGIN, height - MARGIN)
        words = self.heading.pages.format(n=number, m=count)
        self.drawRightString(width - MARGIN, MARGIN - 10, printable(words))


def write(flow: Sequence[Flowable], heading: Heading, size: str = "A4") -> bytes:
    """The paper as PDF bytes; the same flow gives the same bytes within one version of the library."""
    target = io.BytesIO()
    page = SIZES[size]
    document = BaseDocTemplate(
        target, pagesize=page, invariant=1, lang=heading.language, title=heading.title, author=heading.author,
        subject=heading.subject, creator="Ringside", displayDocTitle=True,
    )  # fmt: skip
    frame = Frame(
        MARGIN, MARGIN + FOOT_GAP - 12, page[0] - 2 * MARGIN, page[1] - 2 * MARGIN - HEAD_GAP - FOOT_GAP + 12,
        leftPadding=0, rightPadding=0, topPadding=0, bottomPadding=0,
    )  # fmt: skip
    document.addPageTemplates(PageTemplate(frames=[frame]))
    document.build(list(flow), canvasmaker=_maker(heading))
    return target.getvalue()


def _maker(heading: Heading) -> Callable[..., NumberedCanvas]:
    def make(*args: Any, **kwargs: Any) -> NumberedCanvas:
        return NumberedCanvas(*args, heading=heading, **kwargs)

    return make
