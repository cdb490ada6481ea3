"""What the office's papers share: plain text, ruled tables, headings that keep their class together."""

from collections.abc import Iterable, Sequence
from typing import Any
from xml.sax.saxutils import escape

from django.utils.translation import get_language, gettext, ngettext
from django.utils.translation import gettext_noop as _
from reportlab.platypus import CondPageBreak, KeepTogether, Paragraph, Table
from reportlab.platypus.flowables import Flowable

from ringside.core.sentences import colon
from ringside.papers import styles
from ringside.papers.fonts import BOLD, TEXT, printable
from ringside.papers.page import Heading, day_words
from ringside.papers.programme import BreedList, ClassList, Programme

PAGES = _("Page {n} of {m}")
TITLE = styles.style("title", 20, 24, BOLD, spaceAfter=4)
GROUP = styles.style("group", 15, 19, BOLD, spaceBefore=12, spaceAfter=4)
BREED = styles.style("breed", 13, 16, BOLD, spaceBefore=10, spaceAfter=1)
CLASS = styles.style("class", 10.5, 13, BOLD, spaceBefore=7, spaceAfter=2)
BODY = styles.style("body", 9, 11.5)
NAME = styles.style("name", 9.5, 12, BOLD)
NUMBER = styles.style("number", 10.5, 12, BOLD)
BIG_NUMBER = styles.style("big-number", 13, 16, BOLD)
# A class of at most this many lines is never parted by a page's end; a longer one repeats its headings.
KEPT_TOGETHER = 24


class SectionHeading(Paragraph):
    """A heading that leaves its words to the foot of the page."""

    def __init__(self, words: str, style: Any) -> None:
        super().__init__(escape(printable(words)), style)
        self.section = words

    def draw(self) -> None:
        self.canv.enter_section(self.section, self.height)
        super().draw()


def text(words: str, style: Any = BODY) -> Paragraph:
    """A paragraph of plain text: whatever it holds is printed, nothing in it is markup."""
    return Paragraph(escape(printable(words)), style)


def head_of(columns: Iterable[object]) -> list[Paragraph]:
    """A table's head in the reader's language."""
    return [text(str(words)) for words in columns]


def width_of(size: str) -> float:
    return styles.SIZES[size][0] - 2 * styles.MARGIN


def heading(programme: Programme, title: str, right: str = "") -> Heading:
    return Heading(
        title=colon(title, programme.show),
        author="",
        subject=programme.days,
        language=get_language() or "en",
        left=colon(programme.show, title),
        right=right or programme.days,
        pages=gettext(PAGES),
    )


def breed_heading(breed: BreedList) -> list[Flowable]:
    told = [dogs_words(breed.dogs), judge_words(breed.judge), breed.ring, day_words(breed.day)]
    return [SectionHeading(breed.name, BREED), text(", ".join(filter(None, told)))]


def dogs_words(count: int) -> str:
    return ngettext("{dogs} dog", "{dogs} dogs", count).format(dogs=count)


def judge_words(name: str) -> str:
    return gettext("judge {name}").format(name=name) if name else gettext("no judge yet")


def class_heading(breed: BreedList, one: ClassList) -> Paragraph:
    """The class, with its judge, ring and day where they are not those of its breed."""
    judge, ring, day = breed.where(one)
    told = (
        (judge_words(judge), judge != breed.judge),
        (ring, ring != breed.ring),
        (day_words(day), day != breed.day),
    )
    return text(", ".join([one.title, *(words for words, is_apart in told if is_apart)]), CLASS)


def ruled(rows: Sequence[Sequence[Any]], widths: Sequence[float], *, boxed: bool = False, heads: int = 1) -> Table:
    """A table with a line under each row, or with all its boxes to write in."""
    line = ("GRID" if boxed else "LINEBELOW", (0, 0), (-1, -1), 0.4, styles.HAIRLINE)
    rules = [
        ("FONT", (0, 0), (-1, -1), TEXT),  # else the table asks for a font that is not in the file
        line,
        ("VALIGN", (0, 0), (-1, -1), "MIDDLE" if boxed else "TOP"),
        ("LEFTPADDING", (0, 0), (-1, -1), 4 if boxed else 0),
        ("RIGHTPADDING", (0, 0), (-1, -1), 4),
        ("TOPPADDING", (0, 0), (-1, -1), 2),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 3),
    ]
    return Table(list(rows), colWidths=list(widths), style=rules, repeatRows=heads, splitInRow=1)


def together(before: Sequence[Flowable], table: Table, lines: int) -> list[Flowable]:
    """The heading and its table on one page; where the class is too long for that, heading and first lines are."""
    if lines <= KEPT_TOGETHER:
        return [KeepTogether([*before, table])]
    return [CondPageBreak(140), *before, table]
