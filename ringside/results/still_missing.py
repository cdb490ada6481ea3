"""Everything that is still missing before a show's results are whole: one list, each with where it can be mended."""

from collections.abc import Iterator
from dataclasses import dataclass

from django.urls import reverse
from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from ringside.core.sentences import apart
from ringside.results.awards import BreedAwards, awards_of, breeds_of
from ringside.results.finals import Stands, finals_of
from ringside.results.queries import Compiled, classes_of, compiled_many
from ringside.results.wording import missing_of
from ringside.ring.advice import advice_on
from ringside.ring.queries import breed_said
from ringside.shows.models import Show

BATCH = 200


@dataclass(frozen=True, slots=True)
class Lack:
    """One thing that is missing. `kind` sorts the list; `address` is the page where it is seen and mended."""

    kind: str
    where: str
    words: str
    address: str


def lacks_of(show: Show) -> list[Lack]:
    """What is missing of begun classes, of awards and of finals; classes not begun are counted in one line."""
    return [*_of_classes(show), *_of_breeds(show), *_of_finals(show)]


def _of_classes(show: Show) -> Iterator[Lack]:
    classes = classes_of(show)
    not_begun = 0
    for start in range(0, len(classes), BATCH):
        for found in compiled_many(classes[start : start + BATCH]):
            not_begun += found.state == "to come"
            if found.state in ("being judged", "signed"):
                yield from _of_class(show, found)
    if not_begun:
        words = ngettext("{count} class not begun", "{count} classes not begun", not_begun).format(count=not_begun)
        yield Lack("class", _("Classes to come"), words, reverse("results:desk", args=[show.slug]))


def _of_class(show: Show, found: Compiled) -> Iterator[Lack]:
    address = reverse("results:class", args=[show.slug, found.show_class.pk])
    for words in found.missing:
        yield Lack("class", found.title, words, address)
    for row in found.rows:
        for words in row.missing:
            yield Lack("class", found.title, missing_of(row.entry.number, words), address)
    yield from _ties(found, address)
    if found.is_complete:
        yield Lack("class", found.title, _("ready, not published"), address)


def _ties(found: Compiled, address: str) -> Iterator[Lack]:
    """Dogs of a class not placed yet whose sheets are level: only the judge can break the tie."""
    if found.state != "being judged" or any(row.place for row in found.rows):
        return
    numbers = {str(row.entry.pk): str(row.entry.number) for row in found.rows}
    for tie in advice_on(found.show_class)["ties"]:
        tied = ", ".join(numbers.get(str(entry), str(entry)) for entry in tie)
        words = _("a tie by the sheets: numbers {numbers}; the judge breaks it").format(numbers=tied)
        yield Lack("tie", found.title, words, address)


def _of_breeds(show: Show) -> Iterator[Lack]:
    for found in awards_of(breeds_of(show)):
        if found.state == "published" or not found.card.awards:
            continue
        address = reverse("results:breed-awards", args=[show.slug, found.card.breed.pk])
        for words in found.card.findings:
            yield Lack("right", found.title, words, address)
        if found.state != "to come":
            yield from _of_awards(found, address)


def _of_awards(found: BreedAwards, address: str) -> Iterator[Lack]:
    where = _("{breed}: awards").format(breed=found.title)
    yield from (Lack("awards", where, words, address) for words in found.missing)
    if not found.missing:
        undecided = [line.words for line in found.lines if line.state == "undecided"]
        words = _("ready, not published")
        if undecided:
            words = _("ready, not published; undecided: {awards}").format(awards=apart(undecided))
        yield Lack("awards", where, words, address)


def _of_finals(show: Show) -> Iterator[Lack]:
    found = finals_of(show)
    for pk, group in found.groups.items():
        if group is None and found.book.groups:
            words = _("no group is known: its winners compete in none")
            yield Lack("finals", breed_said(found.breeds[pk]), words, reverse("results:groups", args=[show.slug]))
    for stand in found.stands:
        if stand.row and stand.state != "published":
            yield from _of_final(show, stand)


def _of_final(show: Show, stand: Stands) -> Iterator[Lack]:
    assert stand.row is not None
    address = reverse("results:final", args=[show.slug, stand.row.pk])
    for words in stand.findings:
        yield Lack("right", stand.title, words, address)
    for words in stand.missing or [_("ready, not published")]:
        yield Lack("finals", stand.title, words, address)
