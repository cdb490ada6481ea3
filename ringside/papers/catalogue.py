"""The catalogue: breeds by group and name, dogs before bitches, classes in order; exhibitors by name at the end."""

from collections import defaultdict
from collections.abc import Iterator, Mapping
from itertools import groupby

from django.utils.translation import gettext as _
from django.utils.translation import ngettext, pgettext_lazy
from reportlab.platypus import KeepTogether, Paragraph, Spacer, Table
from reportlab.platypus.flowables import Flowable, PageBreak

from ringside.papers import styles
from ringside.papers.groups import groups_in_catalogue
from ringside.papers.page import day_words, write
from ringside.papers.programme import BreedList, ClassList, Exhibit, Programme
from ringside.papers.tables import (
    GROUP,
    NAME,
    NUMBER,
    TITLE,
    SectionHeading,
    breed_heading,
    class_heading,
    dogs_words,
    heading,
    ruled,
    text,
    together,
    width_of,
)

NUMBER_WIDTH = 42.0
BORN = {"dog": pgettext_lazy("dog", "born {day}"), "bitch": pgettext_lazy("bitch", "born {day}")}


def catalogue_pdf(programme: Programme, size: str = "A4") -> bytes:
    return write(list(_flow(programme, width_of(size))), heading(programme, _("Catalogue")), size)


def _flow(programme: Programme, width: float) -> Iterator[Flowable]:
    dogs = sum(breed.dogs for breed in programme.breeds)
    yield Spacer(1, 10)
    yield text(programme.show, TITLE)
    count = len(programme.breeds)
    breeds_told = ngettext("{breeds} breed or variety", "{breeds} breeds and varieties", count).format(breeds=count)
    yield text(", ".join(filter(None, (programme.days, dogs_words(dogs), breeds_told))), styles.LINE)
    for group, breeds in groupby(programme.breeds, key=lambda breed: breed.group):
        before: list[Flowable] = [text(group, GROUP)]
        for breed in breeds:
            yield from _breed(breed, before, width)
            before = []
    yield from groups_in_catalogue(programme, width)
    yield from _index(programme, width)


def _breed(breed: BreedList, before: list[Flowable], width: float) -> Iterator[Flowable]:
    """The breed's heading stays with its first class."""
    above = [*before, *breed_heading(breed)]
    for one in breed.classes:
        yield from together([*above, class_heading(breed, one)], _class(one, width), len(one.exhibits) * 3 // 2)
        above = []
    if above:
        yield KeepTogether(above)


def _class(one: ClassList, width: float) -> Table:
    rows = [[text(exhibit.number, NUMBER), _told(exhibit, one.sex)] for exhibit in one.exhibits]
    return ruled(rows, [NUMBER_WIDTH, width - NUMBER_WIDTH], heads=0)


def _told(exhibit: Exhibit, sex: str) -> list[Paragraph]:
    born = str(BORN[sex]).format(day=day_words(exhibit.born)) if exhibit.born else ""
    said = [
        ", ".join(filter(None, (exhibit.studbook, born))),
        " × ".join((exhibit.sire or _("sire not named"), exhibit.dam or _("dam not named"))),
        _("Breeder: {name}").format(name=exhibit.breeder or _("not named")),
        _("Owner: {name}").format(name=", ".join(exhibit.owners) or _("not named")),
    ]
    return [text(exhibit.name, NAME), text(f"{'. '.join(filter(None, said))}.")]


def _index(programme: Programme, width: float) -> Iterator[Flowable]:
    """Who shows which numbers, with the address of those who agreed to have it printed."""
    numbers = index_of_exhibitors(programme)
    if not numbers:
        return
    yield PageBreak()
    yield SectionHeading(_("Index of exhibitors"), GROUP)
    rows = [[_exhibitor(name, programme.addresses), text(", ".join(found))] for name, found in numbers]
    for start in range(0, len(rows), 100):
        yield ruled(rows[start : start + 100], [width * 0.6, width * 0.4], heads=0)


def _exhibitor(name: str, addresses: Mapping[str, str]) -> list[Paragraph]:
    return [text(name), *([text(addresses[name])] if name in addresses else [])]


def index_of_exhibitors(programme: Programme) -> list[tuple[str, list[str]]]:
    found: dict[str, list[str]] = defaultdict(list)
    for *_place, exhibit in programme.exhibits():
        for owner in exhibit.owners:
            if exhibit.number not in found[owner]:
                found[owner].append(exhibit.number)
    return sorted(found.items(), key=lambda one: (one[0].casefold(), one[0]))
