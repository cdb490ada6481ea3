"""Number cards: four to a page, each a number to read across the ring and a strip with the claim code to cut off."""

import io
from collections.abc import Sequence
from dataclasses import dataclass

from django.utils.translation import get_language
from django.utils.translation import gettext as _
from reportlab.lib.utils import simpleSplit
from reportlab.pdfbase.pdfmetrics import stringWidth
from reportlab.pdfgen.canvas import Canvas

from ringside.papers import styles
from ringside.papers.fonts import BOLD, TEXT, plain, printable
from ringside.papers.pictures import CheckCode

PER_PAGE = 4
INSET = 14.0
STRIP = 84.0
CODE_SIDE = 54.0
TALLEST = 190.0
LINE = 12.0


@dataclass(frozen=True)
class Card:
    """One card. `titles` are the dog's classes; `code` is empty where no claim code is printed."""

    number: str
    dog: str
    titles: Sequence[str]
    ring: str
    code: str


def cards_pdf(cards: Sequence[Card], show: str, claim_url: str, size: str = "A4") -> bytes:
    """The cards in order, two across and two down; lines to cut along. `claim_url` is printed beside each code."""
    target = io.BytesIO()
    canvas = Canvas(target, pagesize=styles.SIZES[size], invariant=1, lang=get_language() or "en", initialFontName=TEXT)
    canvas.setTitle(plain(_("Number cards: {show}").format(show=show)))
    canvas.setCreator("Ringside")
    width, height = styles.SIZES[size]
    for index, card in enumerate(cards):
        down, across = divmod(index % PER_PAGE, 2)
        canvas.saveState()
        canvas.translate(across * width / 2, height / 2 * (1 - down))
        _draw(canvas, card, show, claim_url, width / 2, height / 2)
        canvas.restoreState()
        if index % PER_PAGE == PER_PAGE - 1 or index == len(cards) - 1:
            _cutting_lines(canvas, width, height)
            canvas.showPage()
    if not cards:
        canvas.setFont(TEXT, 12)
        canvas.drawString(styles.MARGIN, height - styles.MARGIN, printable(_("No dog has a catalogue number yet.")))
        canvas.showPage()
    canvas.save()
    return target.getvalue()


def _draw(canvas: Canvas, card: Card, show: str, claim_url: str, width: float, height: float) -> None:
    canvas.setFillColor(styles.INK)
    room = width - 2 * INSET
    foot = STRIP if card.code else 0.0
    further = foot + LINE * (len(card.titles) - 1)
    size = min(TALLEST, room / max(stringWidth(card.number, BOLD, 1), 0.1), (height - further) * 0.62)
    middle = further + (height - further) / 2
    canvas.setFont(BOLD, size)
    canvas.drawCentredString(width / 2, middle - size * 0.33, card.number)
    canvas.setFont(TEXT, 9)
    canvas.drawCentredString(width / 2, height - INSET - 9, _fitted(show, TEXT, 9, room))
    canvas.setFont(BOLD, 11)
    canvas.drawCentredString(width / 2, further + 44, _fitted(card.dog, BOLD, 11, room))
    canvas.setFont(TEXT, 9)
    for line, title in enumerate(card.titles):
        canvas.drawCentredString(width / 2, further + 30 - LINE * line, _fitted(title, TEXT, 9, room))
    canvas.drawCentredString(width / 2, foot + 17, card.ring)
    if card.code:
        _draw_strip(canvas, card, claim_url, width)


def _draw_strip(canvas: Canvas, card: Card, claim_url: str, width: float) -> None:
    """Below a dashed line: whoever sees the number in the ring does not see the code."""
    canvas.saveState()
    canvas.setDash(3, 3)
    canvas.setStrokeColor(styles.QUIET)
    canvas.line(INSET, STRIP, width - INSET, STRIP)
    canvas.restoreState()
    canvas.setFont(TEXT, 8)
    told = _("Cut off before the ring. Number {number}, claim code:").format(number=card.number)
    canvas.drawString(INSET, STRIP - 14, _fitted(told, TEXT, 8, width - 2 * INSET - CODE_SIDE - 8))
    canvas.setFont(BOLD, 17)
    canvas.drawString(INSET, STRIP - 34, card.code)
    canvas.setFont(TEXT, 8)
    room = width - 2 * INSET - CODE_SIDE - 8
    where = _("Results and critique by e-mail: {address}").format(address=claim_url)
    for line, words in enumerate(simpleSplit(printable(where), TEXT, 8, room)[:3]):
        canvas.drawString(INSET, STRIP - 48 - line * 10, words)
    code = CheckCode(claim_url, CODE_SIDE)
    code.drawOn(canvas, width - INSET - CODE_SIDE, (STRIP - CODE_SIDE) / 2 - 4)


def _fitted(words: str, font: str, size: float, room: float) -> str:
    shown = printable(words)
    while shown and stringWidth(shown, font, size) > room:
        shown = shown[:-2].rstrip() + "…"
    return shown


def _cutting_lines(canvas: Canvas, width: float, height: float) -> None:
    canvas.setStrokeColor(styles.HAIRLINE)
    canvas.setLineWidth(0.4)
    canvas.line(width / 2, 0, width / 2, height)
    canvas.line(0, height / 2, width, height / 2)
