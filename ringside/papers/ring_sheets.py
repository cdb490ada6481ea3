"""The steward's ring sheets: numbers with boxes to write in who is there, the grade and the place. Numbers only."""

from collections.abc import Iterator
from itertools import groupby

from reportlab.platypus import Spacer, Table
from reportlab.platypus.flowables import Flowable

from ringside.papers.page import Heading, write_book
from ringside.papers.programme import BreedList, ClassList, Programme
from ringside.papers.styles import LINE
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

COLUMNS = ("Number", "Present", "Absent", "Grade", "Place", "Reason, or what the judge says")
SHARES = (0.11, 0.1, 0.1, 0.2, 0.09, 0.4)


def ring_sheets_pdf(programme: Programme, size: str = "A4") -> bytes:
    """One part for each ring and day, each numbered from its own first page."""
    whole = heading(programme, "Ring sheets")
    return write_book(_parts(programme, size), whole, size)


def _parts(programme: Programme, size: str) -> Iterator[tuple[list[Flowable], Heading]]:
    width = width_of(size)
    ordered = sorted(programme.breeds, key=_where)  # stable: the breeds stay in their order within a ring
    parts = [(where, list(breeds)) for where, breeds in groupby(ordered, key=_where)]
    if not parts:
        yield [text("No breed yet.")], heading(programme, "Ring sheets")
    for (day, ring), breeds in parts:
        title = ", ".join(filter(None, (ring or "No ring yet", day)))
        yield list(_ring(title, breeds, width)), heading(programme, f"Ring sheets, {title}")


def _where(breed: BreedList) -> tuple[str, str]:
    return breed.day, breed.ring


def _ring(title: str, breeds: list[BreedList], width: float) -> Iterator[Flowable]:
    yield Spacer(1, 6)
    yield text(title, GROUP)
    yield text("Absent is who never came into the ring. Who leaves it is not absent: ask the judge.", LINE)
    for breed in breeds:
        above = breed_heading(breed)
        for one in breed.classes:
            yield from together([*above, text(one.title, CLASS)], _class(one, width), len(one.exhibits))
            above = []


def _class(one: ClassList, width: float) -> Table:
    head = [text(word) for word in COLUMNS]
    rows = [[text(exhibit.number, BIG_NUMBER), *[""] * (len(COLUMNS) - 1)] for exhibit in one.exhibits]
    return ruled([head, *rows], [share * width for share in SHARES], boxed=True)
