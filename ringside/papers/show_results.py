"""The results of the whole show: published classes with places and grades, published awards."""

from collections.abc import Iterator
from itertools import groupby

from django.utils.translation import gettext as _
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
    class_heading,
    head_of,
    heading,
    judge_words,
    ruled,
    text,
    together,
    width_of,
)
from ringside.results.wording import presence_words

SHARES = (0.08, 0.1, 0.56, 0.26)


def show_results_pdf(programme: Programme, size: str = "A4") -> bytes:
    return write(list(_flow(programme, width_of(size))), heading(programme, _("Results")), size)


def _flow(programme: Programme, width: float) -> Iterator[Flowable]:
    waiting = [f"{breed.name}, {one.title}" for breed in programme.breeds for one in breed.classes if _waits(one)]
    yield Spacer(1, 10)
    yield text(_("Results"), TITLE)
    yield text(f"{programme.show}, {programme.days}", LINE)
    for group, breeds in groupby(programme.breeds, key=lambda breed: breed.group):
        before: list[Flowable] = [text(group, GROUP)]
        for breed in breeds:
            if breed.given or any(one.is_published for one in breed.classes):
                yield from _breed(breed, before, width)
                before = []
    yield from _finals(programme, width)
    yield from _corrections(programme, width)
    if waiting:
        yield text(_("Not published when this was printed"), GROUP)
        yield from (text(words, LINE) for words in waiting)


def _finals(programme: Programme, width: float) -> Iterator[Flowable]:
    before: list[Flowable] = [text(_("Finals"), GROUP)]
    for final in programme.finals:
        rows = [
            [text(place), text(number, NUMBER), text(dog, NAME), text(breed)]
            for place, number, dog, breed in final.placed
        ]
        above = [*before, text(final.title, CLASS), text(judge_words(final.judge))]
        if rows:
            table = ruled(rows, [share * width for share in (0.08, 0.1, 0.52, 0.3)], heads=0)
            yield from together(above, table, len(rows))
        else:
            yield from (*above, text(_("No dog was placed.")))
        before = []


def _corrections(programme: Programme, width: float) -> Iterator[Flowable]:
    """What was changed after publishing, at the end: a copy printed earlier says something else."""
    if not programme.corrections:
        return
    yield text(_("Corrected after publishing"), GROUP)
    head = head_of((_("What"), _("It was"), _("It is"), _("Why")))
    rows = [[text(words) for words in row] for row in programme.corrections]
    yield ruled([head, *rows], [share * width for share in (0.34, 0.2, 0.2, 0.26)])


def _waits(one: ClassList) -> bool:
    return bool(one.exhibits) and not one.is_published


def _breed(breed: BreedList, before: list[Flowable], width: float) -> Iterator[Flowable]:
    above = [*before, *breed_heading(breed)]
    for one in breed.classes:
        if one.is_published:
            yield from together([*above, class_heading(breed, one)], _class(one, width), len(one.exhibits))
            above = []
    if breed.given:
        rows = [[text(award), text(number, NUMBER), text(dog, NAME)] for award, number, dog in breed.given]
        table = ruled(rows, [width * 0.34, width * 0.1, width * 0.56], heads=0)
        yield from together([*above, text(_("Awards"), CLASS)], table, len(rows))
        above = []
    if breed.points:
        rows = [[text(number, NUMBER), text(dog, NAME), text(str(points))] for number, dog, points in breed.points]
        table = ruled(rows, [width * 0.1, width * 0.56, width * 0.34], heads=0)
        yield from together([*above, text(_("Points of this show"), CLASS)], table, len(rows))


def _class(one: ClassList, width: float) -> Table:
    """Placed dogs by their place, then the others by number; a dog that was not there says so."""
    ordered = sorted(one.exhibits, key=lambda dog: (dog.place is None, dog.place or 0))
    return ruled([_row(dog) for dog in ordered], [share * width for share in SHARES], heads=0)


def _row(dog: Exhibit) -> list[object]:
    told = dog.grade if dog.presence == "present" else presence_words(dog.presence)
    owners = [text(", ".join(dog.owners))] if dog.owners else []
    reason = [text(dog.reason)] if dog.reason and dog.presence == "present" else []
    return [
        text(str(dog.place or "")),
        text(dog.number, NUMBER),
        [text(dog.name, NAME), *owners],
        [text(told), *reason],
    ]
