"""What a person sees of their own dogs, and of those that others let them read of."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from django.db.models import QuerySet
from django.utils.safestring import SafeString, mark_safe
from django.utils.translation import get_language, gettext
from django.utils.translation import gettext_lazy as _

from ringside.dogs.models import Dog
from ringside.drawings.outline import outline
from ringside.drawings.portrait import build_of
from ringside.drawings.svg import dog_svg
from ringside.entries.models import Entry
from ringside.home import readers
from ringside.papers.build import mark_lines
from ringside.papers.critique import MarkLine
from ringside.people.models import Account, languages
from ringside.results.award_corrections import award_changes_of
from ringside.results.finals import finals_won
from ringside.results.models import AwardGiven, Critique, Placing
from ringside.results.queries import title_of
from ringside.shows.appointed import rings_of_judge
from ringside.shows.books import award_name, grade_name, rules_of, standard_of
from ringside.shows.models import Ring

PLACES = {
    1: _("placed first"),
    2: _("placed second"),
    3: _("placed third"),
    4: _("placed fourth"),
    5: _("placed fifth"),
    6: _("placed sixth"),
}
PRESENCES = {"absent": _("Absent"), "excused": _("Excused"), "withdrawn": _("Withdrawn")}


@dataclass(frozen=True)
class OwnEntry:
    entry: Entry
    title: str
    result: str
    critique: Critique | None
    awards: list[str]
    changes: list[str]


def rings_of(user: Any) -> list[Ring]:
    """The rings where the person judges."""
    if not isinstance(user, Account):
        return []
    return rings_of_judge(user)


def entries_of(user: Any, dog: Dog | None = None) -> list[OwnEntry]:
    """The entries of a person's own dogs, or of one of them, newest show first, with what is published of them."""
    of_dog = {"dog": dog} if dog else {}
    return _told_of(Entry.objects.filter(dog__owners__account=user, **of_dog))


def others_to_read(user: Account) -> list[tuple[Dog, list[OwnEntry]]]:
    """The dogs of others that the person may read of, each with its published critiques."""
    dogs = readers.dogs_to_read(user)
    told = _told_of(readers.entries_to_read(dogs))
    return [(dog, [one for one in told if one.entry.dog_id == dog.pk]) for dog in dogs]


def _told_of(wanted: QuerySet[Entry]) -> list[OwnEntry]:
    entries = (
        wanted.select_related("dog", "show", "show_class__show_breed__show", "show_class__publication", "placing")
        .order_by("-show__first_day", "number", "id")
        .distinct()
    )
    critiques = in_readers_language(Critique.objects.published().filter(entry__in=entries))
    awards, changes = awards_won(entries), award_changes_of(entries)
    return [
        OwnEntry(
            entry,
            title_of(entry.show_class),
            result_words(entry),
            critiques.get(entry.pk),
            awards.get(entry.pk, []),
            changes.get(entry.pk, []),
        )
        for entry in entries
    ]


def in_readers_language(published: QuerySet[Critique]) -> dict[int, Critique]:
    """By entry; the reader's language over English, in which every critique is written out."""
    codes = dict.fromkeys(("en", get_language()))
    return {one.entry_id: one for code in codes for one in published.filter(language=code)}


def awards_won(entries: Iterable[Entry]) -> dict[int, list[str]]:
    """The names of the published awards that each entry won, in the order they are given; finals after the breed's."""
    entries = list(entries)
    names: dict[int, list[str]] = {}
    rows = AwardGiven.objects.filter(entry__in=entries, show_breed__awards_publication__isnull=False)
    for row in rows.select_related("show_breed__show").order_by("id"):
        known = {award.code: award_name(award) for award in rules_of(row.show_breed.show).awards}
        names.setdefault(row.entry_id or 0, []).append(known.get(row.award, row.award))
    for entry_id, won in finals_won(entries).items():
        names.setdefault(entry_id, []).extend(won)
    return names


def result_words(entry: Entry) -> str:
    """Grade and place in words, or why there is none yet."""
    if entry.state == Entry.State.WITHDRAWN:
        return gettext("Withdrawn")
    placing: Placing | None = getattr(entry, "placing", None)
    if placing is None or not hasattr(entry.show_class, "publication"):
        return gettext("Not judged yet, or not published yet")
    if placing.presence != "present":
        return str(PRESENCES.get(placing.presence, placing.presence.capitalize()))
    grades = {grade.code: grade_name(grade) for grade in rules_of(entry.show).grades_for(entry.show_class.code)}
    words = [grades[placing.grade]] if placing.grade in grades else []
    if placing.place:
        words.append(str(PLACES.get(placing.place) or gettext("placed {place}").format(place=placing.place)))
    return ", ".join(words) or gettext("Judged")


def languages_of(critique: Critique) -> list[Critique]:
    """The same critique in every language it was written out in, English first."""
    order = [code for code, _ in languages()]
    return sorted(Critique.objects.filter(entry_id=critique.entry_id), key=lambda one: order.index(one.language))


@dataclass(frozen=True)
class Drawing:
    """The outline with the judge's marks, and what each mark says, by its side of what is asked."""

    svg: SafeString
    lines: list[MarkLine]


def drawing_of(critique: Critique) -> Drawing | None:
    """None where the judge marked no point."""
    lines = mark_lines(critique, standard_of(critique.entry.show_class.show_breed))
    if not lines:
        return None
    marks = {line.point: line.mark for line in lines}
    praised = {line.point for line in lines if line.is_praised}
    title = gettext("The dog's outline with the judge's marks")
    # Path data and codes of our own, titles escaped where the picture is made.
    svg = mark_safe(dog_svg(outline(build_of(critique.entry.dog.breed)), marks, praised, title))
    return Drawing(svg, lines)
