"""The judge's book: each judge's classes by number, with room for grade, place and notes, awards and signature."""

from collections.abc import Iterator
from itertools import groupby

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
    heading,
    ruled,
    text,
    together,
    width_of,
)

COLUMNS = ("Number", "Grade", "Place", "Notes")
SHARES = (0.12, 0.2, 0.1, 0.58)


def judges_book_pdf(programme: Programme, size: str = "A4") -> bytes:
    """One part for each judge, listed in the file's contents and numbered from its own first page."""
    return write_book(_parts(programme, size), heading(programme, "Judges' books"), size)


def _parts(programme: Programme, size: str) -> Iterator[tuple[list[Flowable], Heading]]:
    ordered = sorted(programme.breeds, key=lambda breed: (breed.judge, breed.day, breed.ring))
    parts = [(judge, list(breeds)) for judge, breeds in groupby(ordered, key=lambda breed: breed.judge)]
    if not parts:
        yield [text("No breed yet.")], heading(programme, "Judges' books")
    for judge, breeds in parts:
        name = judge or "no judge yet"
        yield list(_judge(name, breeds, width_of(size))), heading(programme, f"Judge's book, {name}")


def _judge(name: str, breeds: list[BreedList], width: float) -> Iterator[Flowable]:
    dogs = sum(breed.dogs for breed in breeds)
    yield Spacer(1, 6)
    yield text(name, GROUP)
    yield text(f"{dogs} dogs in {len(breeds)} {'breed' if len(breeds) == 1 else 'breeds'}.", LINE)
    for breed in breeds:
        above = breed_heading(breed)
        for one in breed.classes:
            grades = [text(f"Grades: {', '.join(one.grades)}", SMALL)] if one.grades else []
            before = [*above, text(one.title, CLASS), *grades]
            yield from together(before, _class(one, width), len(one.exhibits))
            above = []
        yield from _awards(breed, width)


def _class(one: ClassList, width: float) -> Table:
    head = [text(word) for word in COLUMNS]
    rows = [[text(exhibit.number, BIG_NUMBER), "", "", ""] for exhibit in one.exhibits]
    return ruled([head, *rows], [share * width for share in SHARES], boxed=True)


def _awards(breed: BreedList, width: float) -> Iterator[Flowable]:
    """A line for each award of the breed, and one to sign on. A number, or a stroke where it is not given."""
    rows = [[text("Award"), text("Number")], *([text(award), ""] for award in breed.awards)]
    table = ruled(rows, [width * 0.75, width * 0.25], boxed=True)
    sign = ruled([[text("Judge's signature"), ""]], [width * 0.3, width * 0.7], heads=0)
    yield KeepTogether([text(f"{breed.name}: awards", CLASS), table, Spacer(1, 26), sign])
