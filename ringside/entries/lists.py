"""The list of a show's entries: searched, filtered, sorted and paged in the database, and written out."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from typing import Any

import tablib
from django.core.paginator import Page, Paginator
from django.db.models import Q, QuerySet
from django.utils.translation import gettext

from ringside.core import exports
from ringside.core.paging import page_asked
from ringside.entries.models import Entry
from ringside.entries.proofs.needs import proof_missing
from ringside.entries.reading.cells import guarded
from ringside.shows.models import Show
from scoring.standards import loader as standards

PER_PAGE = 100
ORDERS: dict[str, tuple[str, ...]] = {
    "number": ("number", "id"),
    "name": ("dog__name", "id"),
    "breed": ("show_class__show_breed__breed", "show_class__sex", "show_class__order", "number", "id"),
    "newest": ("-entered_at", "-id"),
}
# The headings are those that reading knows, so that what goes out comes back in.
HEADINGS = (
    "Number", "Name of dog", "Call name", "Breed", "Variety", "Sex", "Date of birth", "Studbook no.", "Microchip",
    "Sire", "Dam", "Breeder", "Owner", "E-mail", "Handler", "Class", "Titles", "Certificates", "Neutered",
)  # fmt: skip


@dataclass(frozen=True)
class Asked:
    """What a person asked the list for; anything unknown falls back to all entries by number."""

    text: str = ""
    breed: str = ""
    state: str = ""
    proof: str = ""
    order: str = "number"
    page: int = 1

    @classmethod
    def of(cls, given: Any) -> "Asked":
        order = given.get("order", "number")
        return cls(
            text=given.get("q", "").replace("\x00", "").strip()[:100],
            breed=given.get("breed", "") if given.get("breed") in standards.codes() else "",
            state=given.get("state", "") if given.get("state") in Entry.State.values else "",
            proof="missing" if given.get("proof") == "missing" else "",
            order=order if order in ORDERS else "number",
            page=page_asked(given),
        )


def entries_of(show: Show, asked: Asked) -> QuerySet[Entry]:
    found = Entry.objects.filter(show=show).select_related("dog", "show_class__show_breed")
    for word in asked.text.split()[:6]:
        matches = Q(dog__name__icontains=word) | Q(dog__call_name__icontains=word) | Q(dog__chip__startswith=word)
        matches |= Q(dog__owners__name__icontains=word) | Q(dog__studbook__icontains=word)
        if word.isdecimal() and len(word) < 10:
            matches |= Q(number=int(word))
        found = found.filter(pk__in=Entry.objects.filter(matches, show=show).values("pk"))
    if asked.breed:
        found = found.filter(show_class__show_breed__breed=asked.breed)
    if asked.state:
        found = found.filter(state=asked.state)
    if asked.proof:
        found = found.filter(proof_missing(show), state=Entry.State.ENTERED)
    return found.order_by(*ORDERS[asked.order]).prefetch_related("dog__owners", "dog__titles", "dog__certificates")


def page_of(show: Show, asked: Asked) -> Page[Entry]:
    return Paginator(entries_of(show, asked), PER_PAGE).get_page(asked.page)


def breeds_in(show: Show) -> list[tuple[str, str]]:
    codes = show.breeds.values_list("breed", flat=True).distinct()
    return sorted(((code, gettext(standards.load(code).name)) for code in set(codes)), key=lambda one: one[1])


def written(show: Show, asked: Asked, kind: str) -> bytes:
    """The list as "csv" (UTF-8 with its mark, semicolons) or "xlsx"; no cell starts a formula."""
    table = tablib.Dataset(headers=HEADINGS)
    for entry in entries_of(show, asked).iterator(chunk_size=500):
        table.append([guarded(cell) for cell in _cells(entry)])
    return exports.written(table, kind)


def _cells(entry: Entry) -> Iterator[str]:
    dog = entry.dog
    owners = list(dog.owners.all())
    yield str(entry.number or "")
    yield from (dog.name, dog.call_name, standards.load(dog.breed).name, dog.variety, dog.sex, _day(dog.born))
    yield from (dog.studbook, dog.chip, dog.sire, dog.dam, dog.breeder)
    yield " & ".join(person.name for person in owners)
    yield next((person.email for person in owners if person.email), "")
    yield entry.handler
    yield entry.show_class.code.replace("-", " ")
    yield ", ".join(title.code.replace("-", " ") for title in dog.titles.all())
    yield ", ".join(one.code for one in dog.certificates.all())
    yield "yes" if dog.neutered else "no"


def _day(day: date) -> str:
    return day.isoformat()
