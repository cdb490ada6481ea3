"""What a person sees of their own dogs."""

from dataclasses import dataclass
from typing import Any

from django.utils.safestring import SafeString, mark_safe

from ringside.drawings.outline import outline
from ringside.drawings.portrait import build_of
from ringside.drawings.svg import dog_svg
from ringside.entries.models import Entry
from ringside.papers.build import mark_lines
from ringside.papers.critique import MarkLine
from ringside.people.models import Account
from ringside.results.models import Critique, Placing
from ringside.results.queries import title_of
from ringside.shows.books import rules_of, standard_of
from ringside.shows.models import Ring

PLACES = {1: "first", 2: "second", 3: "third", 4: "fourth", 5: "fifth", 6: "sixth"}


@dataclass(frozen=True)
class OwnEntry:
    entry: Entry
    title: str
    result: str
    critique: Critique | None


def rings_of(user: Any) -> list[Ring]:
    """The rings where the person judges."""
    if not isinstance(user, Account):
        return []
    return list(Ring.objects.filter(breeds__judge__account=user).select_related("show").distinct().order_by("id"))


def entries_of(user: Any) -> list[OwnEntry]:
    """The entries of a person's own dogs, newest show first, with what is published of them."""
    entries = (
        Entry.objects.filter(dog__owners__account=user)
        .select_related("dog", "show", "show_class__show_breed__show", "show_class__publication", "placing")
        .order_by("-show__first_day", "number", "id")
        .distinct()
    )
    critiques = {
        one.entry_id: one
        for one in Critique.objects.filter(
            entry__in=entries, language="en", entry__show_class__publication__isnull=False
        )
    }
    return [
        OwnEntry(entry, title_of(entry.show_class), result_words(entry), critiques.get(entry.pk)) for entry in entries
    ]


def result_words(entry: Entry) -> str:
    """Grade and place in words, or why there is none yet."""
    if entry.state == Entry.State.WITHDRAWN:
        return "Withdrawn"
    placing: Placing | None = getattr(entry, "placing", None)
    if placing is None or not hasattr(entry.show_class, "publication"):
        return "Not judged yet, or not published yet"
    if placing.presence != "present":
        return placing.presence.capitalize()
    grades = {grade.code: grade.name for grade in rules_of(entry.show).grades_for(entry.show_class.code)}
    words = [grades[placing.grade]] if placing.grade in grades else []
    if placing.place:
        words.append(f"placed {PLACES.get(placing.place, placing.place)}")
    return ", ".join(words) or "Judged"


def languages_of(critique: Critique) -> list[Critique]:
    """The same critique in every language it was written out in, English first."""
    order = {"en": 0, "fr": 1, "de": 2, "es": 3}
    found = Critique.objects.filter(entry_id=critique.entry_id)
    return sorted(found, key=lambda one: order.get(one.language, 9))


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
    # Path data and codes of our own, titles escaped where the picture is made.
    svg = mark_safe(
        dog_svg(outline(build_of(critique.entry.dog.breed)), marks, praised, "The dog's outline with the judge's marks")
    )
    return Drawing(svg, lines)
