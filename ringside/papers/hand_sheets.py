"""The judge's sheets to write on by hand, where no tablet is: a page a dog, the breed's points with seven boxes."""

import zlib
from collections.abc import Iterator, Sequence

from django.utils.translation import gettext as _
from django.utils.translation import ngettext, pgettext
from reportlab.lib.utils import simpleSplit
from reportlab.pdfbase.pdfmetrics import stringWidth
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import PageBreak
from reportlab.platypus.flowables import Flowable

from ringside.core.sentences import colon
from ringside.papers import styles
from ringside.papers.fonts import BOLD, TEXT, printable
from ringside.papers.page import FOOT_GAP, HEAD_GAP, day_words, write
from ringside.papers.programme import BreedList, ClassList, Exhibit, Programme, SheetForm
from ringside.papers.tables import heading, judge_words, text, width_of

BOX, STOPS = 13.0, 7
GAP = 14.0
HEAD = 62.0
SCALE_ROW, QUESTION_ROW, LINE_ROW = 26.5, 22.0, 20.0
ANSWER = 7.5
FOOT = 58.0


def hand_sheets_pdf(programme: Programme, size: str = "A4") -> bytes:
    flow = list(_flow(programme, size)) or [text(_("No dog yet."))]
    return write(flow, heading(programme, _("Judge's sheets")), size)


def _flow(programme: Programme, size: str) -> Iterator[Flowable]:
    height = styles.SIZES[size][1] - 2 * styles.MARGIN - HEAD_GAP - FOOT_GAP
    first = True
    for breed, one, exhibit in programme.exhibits():
        if not first:
            yield PageBreak()
        first = False
        yield HandSheet(breed, one, exhibit, width_of(size), height)


class HandSheet(Flowable):
    """One dog's page. What every dog of the breed and sex shares is drawn once in the file and used again."""

    def __init__(self, breed: BreedList, one: ClassList, exhibit: Exhibit, width: float, height: float) -> None:
        super().__init__()
        self.breed, self.one, self.exhibit = breed, one, exhibit
        self.width, self.height = width, height

    def wrap(self, *_size: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        canvas: Canvas = self.canv
        canvas.enter_section(self.breed.name, self.height)
        canvas.saveState()
        self._draw_head(canvas)
        canvas.doForm(self._form(canvas))
        canvas.restoreState()

    def _draw_head(self, canvas: Canvas) -> None:
        """Number, class and age: what a judge may know of a dog before it is judged."""
        canvas.setFillColor(styles.INK)
        canvas.setFont(BOLD, 30)
        canvas.drawString(0, self.height - 34, printable(self.exhibit.number))
        left = max(stringWidth(self.exhibit.number, BOLD, 30) + 18, 80)
        _fit(canvas, self._dog(), left, self.height - 22, self.width - left, 12, BOLD)
        judge, ring, day = self.breed.where(self.one)
        told = ", ".join(filter(None, (ring, day_words(day), judge_words(judge))))
        _fit(canvas, told, left, self.height - 36, self.width - left, 9.5)

    def _dog(self) -> str:
        months = self.exhibit.months
        said = [colon(self.breed.name, self.one.title)]
        if months is not None:
            said.append(ngettext("{months} month old", "{months} months old", months).format(months=months))
        return ", ".join(said)

    def _form(self, canvas: Canvas) -> str:
        form = self.breed.forms.get(self.one.sex, SheetForm(()))
        said = repr((form, self.one.grades, self.width, self.height)).encode()
        name = f"sheet-{zlib.crc32(said):08x}"
        if not canvas.hasForm(name):
            canvas.beginForm(name, 0, 0, self.width, self.height)
            _draw_form(canvas, form, self.one.grades, self.width, self.height)
            canvas.endForm()
        return name


def _draw_form(canvas: Canvas, form: SheetForm, grades: Sequence[str], width: float, height: float) -> None:
    canvas.setFillColor(styles.INK)
    canvas.setStrokeColor(styles.INK)
    canvas.setLineWidth(0.5)
    canvas.setFont(TEXT, 8)
    rule = _("One box a point: the middle is what the standard asks. Ring the name to praise.")
    _fit(canvas, rule, 0, height - HEAD + 6, width, 8)
    column = (width - GAP) / 2
    top = height - HEAD
    for index, scale in enumerate(form.scales):
        across, down = divmod(index, _half(form.scales))
        _draw_scale(canvas, scale.name, scale.low, scale.high, across * (column + GAP), top - down * SCALE_ROW, column)
    top = _draw_questions(canvas, form, column, top - _half(form.scales) * SCALE_ROW - 4)
    _draw_lines(canvas, width, top - 6)
    _draw_foot(canvas, grades, width)


def _half(some: Sequence[object]) -> int:
    return max(1, -(-len(some) // 2))


def _draw_scale(canvas: Canvas, name: str, low: str, high: str, x: float, y: float, width: float) -> None:
    side = (width - STOPS * BOX) / 2
    canvas.setFont(BOLD, 8)
    canvas.drawCentredString(x + width / 2, y - 8, printable(name))
    for stop in range(STOPS):
        canvas.rect(x + side + stop * BOX, y - 10 - BOX, BOX, BOX)
    middle = x + side + (STOPS // 2) * BOX
    canvas.setLineWidth(1.2)
    canvas.rect(middle, y - 10 - BOX, BOX, BOX)
    canvas.setLineWidth(0.5)
    _aside(canvas, low, x, y - 10, side - 4, to_right=True)
    _aside(canvas, high, x + side + STOPS * BOX + 4, y - 10, side - 4, to_right=False)


def _aside(canvas: Canvas, words: str, x: float, y: float, width: float, *, to_right: bool) -> None:
    """The word at one end of a scale, in one line or two beside the boxes."""
    lines = simpleSplit(printable(words), TEXT, 7, width)[:2]
    canvas.setFont(TEXT, 7)
    start = y - 9 if len(lines) == 1 else y - 5
    for index, line in enumerate(lines):
        if to_right:
            canvas.drawRightString(x + width, start - index * 7.5, line)
        else:
            canvas.drawString(x, start - index * 7.5, line)


def _draw_questions(canvas: Canvas, form: SheetForm, column: float, top: float) -> float:
    """The questions in two columns, each row as high as its longer answers; where they end."""
    half = _half(form.questions)
    for down in range(half):
        row = form.questions[down::half]
        told = [_answers(answers, column) for _name, answers in row]
        for across, ((name, _asked), lines) in enumerate(zip(row, told, strict=True)):
            _draw_question(canvas, name, lines, across * (column + GAP), top, column)
        top -= QUESTION_ROW + (max(map(len, told), default=1) > 1) * ANSWER
    return top


def _answers(answers: Sequence[str], width: float) -> list[str]:
    """The answers with a box before each, no box parted from its words."""
    lines: list[str] = []
    for answer in answers:
        boxed = f"[  ] {printable(answer)}"
        longer = f"{lines[-1]}   {boxed}" if lines else boxed
        if lines and stringWidth(longer, TEXT, ANSWER) <= width:
            lines[-1] = longer
        else:
            lines.append(boxed)
    return lines


def _draw_question(canvas: Canvas, name: str, lines: Sequence[str], x: float, y: float, width: float) -> None:
    canvas.setFont(BOLD, 8)
    canvas.drawString(x, y - 9, printable(name))
    if not lines:
        start = stringWidth(printable(name), BOLD, 8) + 6
        canvas.line(x + start, y - 10, x + width, y - 10)
    for index, line in enumerate(lines[:2]):
        _fit(canvas, line, x, y - 17 - index * (ANSWER + 0.5), width, ANSWER)


def _draw_lines(canvas: Canvas, width: float, top: float) -> None:
    """As many lines to write on as the page has room for, at least two."""
    canvas.setFont(BOLD, 8)
    canvas.drawString(0, top - 8, printable(_("In the judge's own words")))
    count = max(2, int((top - 12 - FOOT) / LINE_ROW))
    for index in range(count):
        canvas.line(0, top - 12 - (index + 1) * LINE_ROW + 4, width, top - 12 - (index + 1) * LINE_ROW + 4)


def _draw_foot(canvas: Canvas, grades: Sequence[str], width: float) -> None:
    after = _label(canvas, _("Grade") if grades else _("This class is not graded"), 0, 44)
    _fit(canvas, "   ".join(f"[  ] {grade}" for grade in grades), after, 44, width - after, 8)
    canvas.rect(_label(canvas, pgettext("result", "Place"), 0, 14), 8, 40, 20)
    canvas.line(_label(canvas, _("Judge's signature"), width * 0.4, 14), 12, width, 12)


def _label(canvas: Canvas, words: str, x: float, y: float) -> float:
    """Where what belongs to the label may begin."""
    shown = printable(words)
    canvas.setFont(BOLD, 8)
    canvas.drawString(x, y, shown)
    return x + stringWidth(shown, BOLD, 8) + 8


def _fit(canvas: Canvas, words: str, x: float, y: float, width: float, size: float, font: str = TEXT) -> None:
    """The words on one line, smaller where they are too long; below six points they are cut."""
    shown = printable(words)
    wide = stringWidth(shown, font, size)
    fitted = max(6.0, min(size, size * width / wide)) if wide else size
    while shown and stringWidth(shown, font, fitted) > width:
        shown = shown[:-1]
    canvas.setFont(font, fitted)
    canvas.drawString(x, y, shown)
