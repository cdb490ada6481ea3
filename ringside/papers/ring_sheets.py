"""The steward's ring sheets: numbers with boxes to write in who is there, the grade and the place. Numbers only."""

from collections.abc import Iterator
from datetime import date
from itertools import groupby

from django.utils.text import capfirst
from django.utils.translation import gettext, pgettext_lazy
from django.utils.translation import gettext_lazy as _
from reportlab.platypus import Spacer, Table
from reportlab.platypus.flowables import Flowable

from ringside.papers.groups import group_sheets, title_of_groups
from ringside.papers.page import Heading, day_words, write_book
from ringside.papers.programme import BreedList, ClassList, Programme
from ringside.papers.styles import LINE
from ringside.papers.tables import (
    BIG_NUMBER,
    CLASS,
    GROUP,
    breed_heading,
    head_of,
    heading,
    ruled,
    text,
    together,
    width_of,
)

COLUMNS = (
    _("Number"), pgettext_lazy("box", "Present"), pgettext_lazy("box", "Absent"), _("Grade"),
    pgettext_lazy("result", "Place"), _("Reason, or what the judge says"),
)  # fmt: skip
SHARES = (0.11, 0.1, 0.1, 0.2, 0.09, 0.4)


def ring_sheets_pdf(programme: Programme, size: str = "A4") -> bytes:
    """One part for each ring and day, each numbered from its own first page."""
    whole = heading(programme, gettext("Ring sheets"))
    return write_book(_parts(programme, size), whole, size)


def _parts(programme: Programme, size: str) -> Iterator[tuple[list[Flowable], Heading]]:
    width = width_of(size)
    breeds_here = [part for breed in programme.breeds for part in breed.parts if part.classes]
    ordered = sorted(breeds_here, key=_where)  # stable: the breeds stay in their order within a ring
    parts = [(where, list(breeds)) for where, breeds in groupby(ordered, key=_where)]
    if not parts:
        yield [text(gettext("No breed yet."))], heading(programme, gettext("Ring sheets"))
    for (_day, ring), breeds in parts:
        title = ", ".join(filter(None, (ring or capfirst(gettext("no ring yet")), day_words(breeds[0].day))))
        yield list(_ring(title, breeds, width)), heading(programme, ", ".join((gettext("Ring sheets"), title)))
    if programme.groups:
        sheets = list(group_sheets(programme, width))
        yield sheets, heading(programme, ", ".join((gettext("Ring sheets"), title_of_groups())))


def _where(breed: BreedList) -> tuple[date, str]:
    return breed.day or date.max, breed.ring


def _ring(title: str, breeds: list[BreedList], width: float) -> Iterator[Flowable]:
    yield Spacer(1, 6)
    yield text(title, GROUP)
    rule = gettext("Absent is who never came into the ring. Who leaves it is not absent: ask the judge.")
    yield text(rule, LINE)
    for breed in breeds:
        above = breed_heading(breed)
        for one in breed.classes:
            yield from together([*above, text(one.title, CLASS)], _class(one, width), len(one.exhibits))
            above = []


def _class(one: ClassList, width: float) -> Table:
    rows = [[text(exhibit.number, BIG_NUMBER), *[""] * (len(COLUMNS) - 1)] for exhibit in one.exhibits]
    return ruled([head_of(COLUMNS), *rows], [share * width for share in SHARES], boxed=True)
