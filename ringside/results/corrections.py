"""Correcting what is published: every change is kept with who made it, when and why, and shows on the results."""

from collections.abc import Mapping
from dataclasses import asdict, dataclass
from typing import Any

from django.db import transaction
from django.utils.translation import gettext as _

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.people.models import Account
from ringside.results.models import Correction, Placing, Publication
from ringside.results.wording import presence_words
from ringside.shows.access import require
from ringside.shows.books import grade_name, rules_of
from ringside.shows.models import ShowClass

PRESENCES = ("present", "absent", "excused", "withdrawn")


@dataclass(frozen=True, slots=True)
class Result:
    """One dog's published result. `grade` is a code of the rules, or empty; `place` counts from 1."""

    presence: str = "present"
    grade: str = ""
    place: int | None = None
    reason: str = ""


@transaction.atomic
def correct_class(*, who: Account, show_class: ShowClass, results: Mapping[int, Result], why: str) -> list[Correction]:
    """Writes the class's results as they should read; a `Correction` for each dog whose result changes."""
    show = show_class.show_breed.show
    require(who, show, "correct-results")
    ShowClass.objects.select_for_update().get(pk=show_class.pk)
    if not Publication.objects.filter(show_class=show_class).exists():
        raise NotNow("This class is not published yet: what the judge wrote is changed at the ring.")
    if not why.strip():
        raise NotNow("Write down why the result is corrected: it shows beside the result.")
    placings = list(Placing.objects.filter(show_class=show_class).order_by("id"))
    after = {placing.entry_id: results.get(placing.entry_id, result_of(placing)) for placing in placings}
    check_results(show_class, list(after.values()))
    changed = [placing for placing in placings if result_of(placing) != after[placing.entry_id]]
    if not changed:
        raise NotNow("Nothing is changed.")
    made = [_correction(who, placing, after[placing.entry_id], why) for placing in changed]
    _write(changed, after)
    record(
        who=who, doing="correct-results", show_id=show.pk, about=f"class:{show_class.pk}",
        corrections=[correction.pk for correction in made],
    )  # fmt: skip
    return made


def result_of(placing: Placing) -> Result:
    return Result(placing.presence, placing.grade, placing.place, placing.reason)


def check_results(show_class: ShowClass, results: list[Result]) -> None:
    """What a signed result obeys, one that is typed in or corrected obeys too.

    Rule: known grades, with their reason where they need one; places from 1 without gaps, none without right. NotNow.
    """
    book = rules_of(show_class.show_breed.show)
    grades = {grade.code: grade for grade in book.grades_for(show_class.code)}
    places = sorted(result.place for result in results if result.place)
    if places != list(range(1, len(places) + 1)):
        raise NotNow("Places run from 1 without a gap, and each is given once.")
    for result in results:
        if result.presence not in PRESENCES or (result.grade and result.grade not in grades):
            raise NotNow("This class has no such grade.")
        barred = result.grade in grades and not grades[result.grade].may_be_placed
        if result.place and (result.presence != "present" or barred):
            raise NotNow("A dog that was not there, or whose grade bars it from a place, cannot be placed.")
        if result.grade and grades[result.grade].needs_reason and not result.reason.strip():
            raise NotNow("{name} needs its reason, for the report.", name=grade_name(grades[result.grade]))


def _correction(who: Account, placing: Placing, after: Result, why: str) -> Correction:
    return Correction.objects.create(
        entry_id=placing.entry_id, why=why.strip()[:300], before=asdict(result_of(placing)), after=asdict(after), by=who
    )


def _write(changed: list[Placing], after: Mapping[int, Result]) -> None:
    """Takes all places away first: two dogs that change places would else hold the same one for a moment."""
    Placing.objects.filter(pk__in=[placing.pk for placing in changed]).update(place=None)
    for placing in changed:
        told: dict[str, Any] = asdict(after[placing.entry_id])
        Placing.objects.filter(pk=placing.pk).update(**told)


@dataclass(frozen=True, slots=True)
class Told:
    """A correction in words, as the results page says it."""

    correction: Correction
    before: str
    after: str


def corrections_of(show_class: ShowClass) -> list[Told]:
    rules = rules_of(show_class.show_breed.show)
    grades = {grade.code: grade_name(grade) for grade in rules.grades_for(show_class.code)}
    found = Correction.objects.filter(entry__show_class=show_class).select_related("entry__dog", "by")
    return [Told(one, words(one.before, grades), words(one.after, grades)) for one in found.order_by("at", "id")]


def words(result: Mapping[str, Any], grades: Mapping[str, str]) -> str:
    """A result in words: "Excellent, place 2"."""
    if result["presence"] != "present":
        return presence_words(result["presence"])
    place = _("place {place}").format(place=result["place"]) if result["place"] else _("no place")
    return ", ".join([*([grades.get(result["grade"], result["grade"])] if result["grade"] else []), place])
