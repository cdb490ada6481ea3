"""The results of the whole show: every published class with its places, grades and absentees."""

from collections.abc import Iterator
from itertools import groupby

from reportlab.platypus import Spacer, Table
from reportlab.platypus.flowables import Flowable

from ringside.papers.page import write
from ringside.papers.programme import BreedList, ClassList, Exhibit, Programme
from ringside.papers.styles import LINE
from ringside.papers.tables import (
    CLASS,
    GROUP,
    NAME,
    NUMBER,
    TITLE,
    breed_heading,
    heading,
    ruled,
    text,
    together,
    width_of,
)

SHARES = (0.08, 0.1, 0.56, 0.26)


def show_results_pdf(programme: Programme, size: str = "A4") -> bytes:
    return write(list(_flow(programme, width_of(size))), heading(programme, "Results"), size)


def _flow(programme: Programme, width: float) -> Iterator[Flowable]:
    waiting = [f"{breed.name}, {one.title}" for breed in programme.breeds for one in breed.classes if _waits(one)]
    yield Spacer(1, 10)
    yield text("Results", TITLE)
    yield text(f"{programme.show}, {programme.days}", LINE)
    for group, breeds in groupby(programme.breeds, key=lambda breed: breed.group):
        before: list[Flowable] = [text(group, GROUP)]
        for breed in breeds:
            if any(one.is_published for one in breed.classes):
                yield from _breed(breed, before, width)
                before = []
    if waiting:
        yield text("Not published when this was printed", GROUP)
        yield from (text(words, LINE) for words in waiting)


def _waits(one: ClassList) -> bool:
    return bool(one.exhibits) and not one.is_published


def _breed(breed: BreedList, before: list[Flowable], width: float) -> Iterator[Flowable]:
    above = [*before, *breed_heading(breed)]
    for one in breed.classes:
        if one.is_published:
            yield from together([*above, text(one.title, CLASS)], _class(one, width), len(one.exhibits))
            above = []


def _class(one: ClassList, width: float) -> Table:
    """Placed dogs by their place, then the others by number; a dog that was not there says so."""
    ordered = sorted(one.exhibits, key=lambda dog: (dog.place is None, dog.place or 0))
    return ruled([_row(dog) for dog in ordered], [share * width for share in SHARES], heads=0)


def _row(dog: Exhibit) -> list[object]:
    told = dog.grade if dog.presence == "present" else dog.presence
    owners = [text(", ".join(dog.owners))] if dog.owners else []
    reason = [text(dog.reason)] if dog.reason and dog.presence == "present" else []
    return [
        text(str(dog.place or "")),
        text(dog.number, NUMBER),
        [text(dog.name, NAME), *owners],
        [text(told), *reason],
    ]
