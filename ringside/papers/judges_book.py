"""The judge's book: each judge's classes by number, with room for grade, place and notes, awards and signature."""

from collections.abc import Iterator
from datetime import date
from itertools import groupby

from django.utils.translation import gettext, ngettext, pgettext_lazy
from django.utils.translation import gettext_lazy as _
from reportlab.platypus import KeepTogether, Spacer, Table
from reportlab.platypus.flowables import Flowable

from ringside.papers.page import Heading, write_book
from ringside.papers.programme import BreedList, ClassList, Programme
from ringside.papers.styles import LINE, SMALL
from ringside.papers.tables import (
    BIG_NUMBER,
    CLASS,
    GROUP,
    breed_heading,
    dogs_words,
    head_of,
    heading,
    ruled,
    text,
    together,
    width_of,
)

COLUMNS = (_("Number"), _("Grade"), pgettext_lazy("result", "Place"), _("Notes"))
SHARES = (0.12, 0.2, 0.1, 0.58)


def judges_book_pdf(programme: Programme, size: str = "A4") -> bytes:
    """One part for each judge, listed in the file's contents and numbered from its own first page."""
    return write_book(_parts(programme, size), heading(programme, gettext("Judges' books")), size)


def _parts(programme: Programme, size: str) -> Iterator[tuple[list[Flowable], Heading]]:
    apart = [part for breed in programme.breeds for part in breed.parts]
    ordered = sorted(apart, key=lambda breed: (breed.judge, breed.day or date.max, breed.ring))
    parts = [(judge, list(breeds)) for judge, breeds in groupby(ordered, key=lambda breed: breed.judge)]
    if not parts:
        yield [text(gettext("No breed yet."))], heading(programme, gettext("Judges' books"))
    for judge, breeds in parts:
        name = judge or gettext("no judge yet")
        title = gettext("Judge's book, {name}").format(name=name)
        yield list(_judge(name, breeds, width_of(size))), heading(programme, title)


def _judge(name: str, breeds: list[BreedList], width: float) -> Iterator[Flowable]:
    dogs, count = sum(breed.dogs for breed in breeds), len(breeds)
    breeds_told = ngettext("{breeds} breed or variety", "{breeds} breeds and varieties", count).format(breeds=count)
    yield Spacer(1, 6)
    yield text(name, GROUP)
    yield text(f"{dogs_words(dogs)}, {breeds_told}", LINE)
    for breed in breeds:
        above = breed_heading(breed)
        for one in breed.classes:
            told = gettext("Grades: {grades}").format(grades=", ".join(one.grades))
            grades = [text(told, SMALL)] if one.grades else []
            before = [*above, text(one.title, CLASS), *grades]
            yield from together(before, _class(one, width), len(one.exhibits))
            above = []
        yield from _awards(breed, width, above)


def _class(one: ClassList, width: float) -> Table:
    rows = [[text(exhibit.number, BIG_NUMBER), "", "", ""] for exhibit in one.exhibits]
    return ruled([head_of(COLUMNS), *rows], [share * width for share in SHARES], boxed=True)


def _awards(breed: BreedList, width: float, above: list[Flowable]) -> Iterator[Flowable]:
    """A line for each award of the breed, and one to sign on. A number, or a stroke where it is not given.

    Who judges classes only, and not best of breed, signs them.
    """
    sign = ruled([[text(gettext("Judge's signature")), ""]], [width * 0.3, width * 0.7], heads=0)
    if not breed.awards:
        yield KeepTogether([*above, Spacer(1, 26), sign])
        return
    rows = [head_of((_("Award"), _("Number"))), *([text(award), ""] for award in breed.awards)]
    table = ruled(rows, [width * 0.75, width * 0.25], boxed=True)
    yield KeepTogether(
        [*above, text(gettext("{breed}: awards").format(breed=breed.name), CLASS), table, Spacer(1, 26), sign]
    )
