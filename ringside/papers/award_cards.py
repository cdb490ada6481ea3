"""Award cards: one for each award, with number, dog and judge, or blank for the steward to fill in by hand."""

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

# How many cards stand across and down a sheet, by how many a sheet holds.
SHEETS = {4: (2, 2), 2: (1, 2)}
INSET = 20.0
FOOT = 74.0
ROW = 31.0


@dataclass(frozen=True, slots=True)
class AwardCard:
    """One award of one dog; `place` is the place in a final in words.

    A blank card says nothing of the dog. Where nobody is appointed, `judge` is empty and a line is left for the name.
    """

    show: str
    day: str
    award: str
    breed: str = ""
    place: str = ""
    number: str = ""
    dog: str = ""
    of_class: str = ""
    judge: str = ""
    is_blank: bool = False


def award_cards_pdf(cards: Sequence[AwardCard], title: str, size: str = "A4", per_sheet: int = 4) -> bytes:
    """The cards in order, `per_sheet` (4 or 2) to a sheet with lines to cut along; 2 of A4 are A5 each."""
    target = io.BytesIO()
    canvas = Canvas(target, pagesize=styles.SIZES[size], invariant=1, lang=get_language() or "en", initialFontName=TEXT)
    canvas.setTitle(plain(title))
    canvas.setCreator("Ringside")
    width, height = styles.SIZES[size]
    across, down = SHEETS[per_sheet]
    for start in range(0, len(cards), per_sheet):
        for index, card in enumerate(cards[start : start + per_sheet]):
            row, column = divmod(index, across)
            canvas.saveState()
            canvas.translate(column * width / across, height - (row + 1) * height / down)
            _draw(canvas, card, width / across, height / down)
            canvas.restoreState()
        _cutting_lines(canvas, width, height, across)
        canvas.showPage()
    canvas.save()
    return target.getvalue()


def _draw(canvas: Canvas, card: AwardCard, width: float, height: float) -> None:
    canvas.setFillColor(styles.INK)
    room = width - 2 * INSET
    top = _middle(canvas, card.show, width, height - INSET, room, (BOLD, 10, 7), 2)
    top = _middle(canvas, card.day, width, top, room, (TEXT, 8.5, 7), 1) - 10
    top = _middle(canvas, card.award, width, top, room, (BOLD, 24, 12), 3)
    top = _middle(canvas, card.place, width, top, room, (BOLD, 16, 11), 1)
    top = _middle(canvas, card.breed, width, top - 2, room, (TEXT, 12, 8), 2)
    if card.is_blank:
        _draw_rows(canvas, card, width, top - 10)
    else:
        _draw_dog(canvas, card, width, top)
    _draw_foot(canvas, card, width)


def _draw_dog(canvas: Canvas, card: AwardCard, width: float, top: float) -> None:
    """Number, name and class in the middle of what is left between award and signature."""
    room = width - 2 * INSET
    name, name_size = fitted(card.dog, room, (BOLD, 15, 8), 3)
    said, said_size = fitted(card.of_class, room, (TEXT, 10, 7.5), 2)
    left = top - FOOT - 10 - _tall(name, name_size) - _tall(said, said_size)
    number = min(54.0, max(24.0, left * 0.7))
    at = top - max(0.0, (left - number * 1.15) / 2)
    at = _middle(canvas, card.number, width, at, room, (BOLD, number, 12), 1)
    at = _middle(canvas, card.dog, width, at, room, (BOLD, 15, 8), 3)
    _middle(canvas, card.of_class, width, at - 2, room, (TEXT, 10, 7.5), 2)


def _draw_rows(canvas: Canvas, card: AwardCard, width: float, most: float) -> None:
    """Lines to write on, as far apart as there is room for below `most`; the breed too where the card names none."""
    asked = [_("Number"), *([] if card.breed else [_("Breed")]), _("Class"), _("Dog")]
    bottom = FOOT + 6
    step = min(ROW, (most - bottom) / len(asked))
    for index, label in enumerate(asked, 1):
        _line(canvas, label, INSET, width - INSET, bottom + (len(asked) - index) * step + 6)


def _draw_foot(canvas: Canvas, card: AwardCard, width: float) -> None:
    """The judge's name, printed or to be written, and a line for the signature."""
    if card.judge:
        words = _("Judge: {judge}").format(judge=card.judge)
        lines, size = fitted(words, width - 2 * INSET, (TEXT, 10, 6.5), 2)
        canvas.setFont(TEXT, size)
        for above, line in zip(range(len(lines) - 1, -1, -1), lines, strict=True):
            canvas.drawString(INSET, INSET + 32 + above * size * 1.2, line)
    else:
        _line(canvas, _("Judge"), INSET, width - INSET, INSET + 32)
    _line(canvas, _("Signature"), INSET, width - INSET, INSET)


def _line(canvas: Canvas, label: str, left: float, right: float, at: float) -> None:
    shown = printable(label)
    canvas.setFont(TEXT, 8)
    canvas.drawString(left, at + 2, shown)
    canvas.setStrokeColor(styles.INK)
    canvas.setLineWidth(0.5)
    canvas.line(left + stringWidth(shown, TEXT, 8) + 6, at, right, at)


def _middle(
    canvas: Canvas, words: str, width: float, top: float, room: float, type_: tuple[str, float, float], most: int
) -> float:
    """Writes the words centred below `top`; where the next ones may begin."""
    lines, size = fitted(words, room, type_, most)
    canvas.setFont(type_[0], size)
    for index, line in enumerate(lines, 1):
        canvas.drawCentredString(width / 2, top - index * size * 1.15 + size * 0.2, line)
    return top - _tall(lines, size)


def _tall(lines: Sequence[str], size: float) -> float:
    return len(lines) * size * 1.15


def fitted(words: str, room: float, type_: tuple[str, float, float], most: int) -> tuple[list[str], float]:
    """The words in at most `most` lines, and the size at which they fit; below the least size the end is cut.

    `type_` is the font, the size wanted and the least size, in points. A word longer than a line is parted.
    """
    font, wanted, least = type_
    shown, size = printable(words).strip(), wanted
    while True:
        lines = [part for line in simpleSplit(shown, font, size, room) for part in _parted(line, font, size, room)]
        if len(lines) <= most or size <= least:
            break
        size = max(least, size - 0.5)
    if len(lines) > most:
        lines = [*lines[: most - 1], _cut(" ".join(lines[most - 1 :]), font, size, room)]
    return lines, size


def _parted(line: str, font: str, size: float, room: float) -> list[str]:
    parts = [""]
    for sign in line:
        if parts[-1] and stringWidth(parts[-1] + sign, font, size) > room:
            parts.append("")
        parts[-1] += sign
    return parts


def _cut(words: str, font: str, size: float, room: float) -> str:
    while words and stringWidth(f"{words}…", font, size) > room:
        words = words[:-1]
    return f"{words.rstrip()}…"


def _cutting_lines(canvas: Canvas, width: float, height: float, across: int) -> None:
    canvas.setStrokeColor(styles.HAIRLINE)
    canvas.setLineWidth(0.4)
    if across > 1:
        canvas.line(width / 2, 0, width / 2, height)
    canvas.line(0, height / 2, width, height / 2)
