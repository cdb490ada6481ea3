"""The catalogue: breeds by group and name, dogs before bitches, classes in order; exhibitors by name at the end."""

from collections import defaultdict
from collections.abc import Iterator
from itertools import groupby

from reportlab.platypus import KeepTogether, Paragraph, Spacer, Table
from reportlab.platypus.flowables import Flowable, PageBreak

from ringside.papers import styles
from ringside.papers.page import write
from ringside.papers.programme import BreedList, ClassList, Exhibit, Programme
from ringside.papers.tables import (
    CLASS,
    GROUP,
    NAME,
    NUMBER,
    TITLE,
    SectionHeading,
    breed_heading,
    heading,
    ruled,
    text,
    together,
    width_of,
)

NUMBER_WIDTH = 42.0


def catalogue_pdf(programme: Programme, size: str = "A4") -> bytes:
    return write(list(_flow(programme, width_of(size))), heading(programme, "Catalogue"), size)


def _flow(programme: Programme, width: float) -> Iterator[Flowable]:
    dogs = sum(breed.dogs for breed in programme.breeds)
    yield Spacer(1, 10)
    yield text(programme.show, TITLE)
    yield text(f"{programme.days}. {dogs} dogs of {len(programme.breeds)} breeds and varieties.", styles.LINE)
    for group, breeds in groupby(programme.breeds, key=lambda breed: breed.group):
        before: list[Flowable] = [text(group, GROUP)]
        for breed in breeds:
            yield from _breed(breed, before, width)
            before = []
    yield from _index(programme, width)


def _breed(breed: BreedList, before: list[Flowable], width: float) -> Iterator[Flowable]:
    """The breed's heading stays with its first class."""
    above = [*before, *breed_heading(breed)]
    for one in breed.classes:
        yield from together([*above, text(one.title, CLASS)], _class(one, width), len(one.exhibits) * 3 // 2)
        above = []
    if above:
        yield KeepTogether(above)


def _class(one: ClassList, width: float) -> Table:
    rows = [[text(exhibit.number, NUMBER), _told(exhibit)] for exhibit in one.exhibits]
    return ruled(rows, [NUMBER_WIDTH, width - NUMBER_WIDTH], heads=0)


def _told(exhibit: Exhibit) -> list[Paragraph]:
    papers = ", ".join(filter(None, (exhibit.studbook, f"born {exhibit.born}" if exhibit.born else "")))
    parents = f"{exhibit.sire or 'sire not named'} × {exhibit.dam or 'dam not named'}"
    breeder = f"Breeder: {exhibit.breeder or 'not named'}"
    owners = f"Owner: {', '.join(exhibit.owners) or 'not named'}"
    return [text(exhibit.name, NAME), text(f"{papers}. {parents}. {breeder}. {owners}.")]


def _index(programme: Programme, width: float) -> Iterator[Flowable]:
    """Who shows which numbers. No address: nobody has agreed to one yet."""
    numbers = index_of_exhibitors(programme)
    if not numbers:
        return
    yield PageBreak()
    yield SectionHeading("Index of exhibitors", GROUP)
    rows = [[text(name), text(", ".join(found))] for name, found in numbers]
    for start in range(0, len(rows), 100):
        yield ruled(rows[start : start + 100], [width * 0.6, width * 0.4], heads=0)


def index_of_exhibitors(programme: Programme) -> list[tuple[str, list[str]]]:
    found: dict[str, list[str]] = defaultdict(list)
    for _, _, exhibit in programme.exhibits():
        for owner in exhibit.owners:
            found[owner].append(exhibit.number)
    return sorted(found.items(), key=lambda one: (one[0].casefold(), one[0]))
