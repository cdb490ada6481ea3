"""A show from the database as what the office's papers print."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date
from functools import cache
from typing import Any

from django.utils import translation
from django.utils.text import capfirst
from django.utils.translation import get_language
from django.utils.translation import gettext as _

from ringside.dogs.models import Ownership
from ringside.entries.consents.queries import addresses_of
from ringside.entries.models import Entry
from ringside.papers.groups import groups_on_paper
from ringside.papers.page import show_days
from ringside.papers.programme import BreedList, ClassList, Exhibit, FinalList, Programme, Scale, SheetForm
from ringside.results import queries
from ringside.results.award_corrections import award_corrections_of
from ringside.results.awards import BreedAwards, awards_of
from ringside.results.corrections import corrections_of
from ringside.results.finals import breed_words, finals_of
from ringside.results.models import Correction
from ringside.results.points import points_of
from ringside.ring.awards import award_words, class_words
from ringside.ring.queries import breed_said
from ringside.ring.wording import names_of
from ringside.shows.books import class_name, grade_name, rules_of
from ringside.shows.models import Appointed, Show, ShowBreed, ShowClass
from scoring.rules.ages import completed_months
from scoring.rules.award_card import offered
from scoring.rules.rulebook import RuleBook
from scoring.standards import loader as standards
from scoring.standards.model import Point

BATCH = 200


def programme_of(show: Show, ring_id: int | None = None) -> Programme:
    """The whole show, or what is judged in one ring of it; in the language that is active."""
    every = queries.classes_of(show)
    classes = [one for one in every if ring_id is None or one.ring_now == ring_id]
    owners = _owners(show)
    book = rules_of(show)
    by_breed: dict[int, list[ClassList]] = defaultdict(list)
    for start in range(0, len(classes), BATCH):
        for found in queries.compiled_many(classes[start : start + BATCH]):
            by_breed[found.show_class.show_breed_id].append(_class_list(found, book, owners))
    breeds = {one.show_breed_id: one.show_breed for one in every if _is_in(one.show_breed, by_breed, ring_id)}
    given = _given(list(breeds.values()))
    points = _points(show)
    return Programme(
        show=show.name_and_place,
        days=show_days(show),
        breeds=[
            replace(
                _breed_list(breed, by_breed[breed.pk], book, given[breed.pk], ring_id), points=points.get(breed.pk, ())
            )
            for breed in sorted(breeds.values(), key=_order)
        ],
        withdrawn=_withdrawn(show, book, owners),
        finals=_finals(show) if ring_id is None else (),
        corrections=_corrections(show) if ring_id is None else (),
        groups=groups_on_paper(show) if ring_id is None else (),
        addresses=addresses_of(show) if ring_id is None else {},
    )


def _points(show: Show) -> dict[int, tuple[tuple[str, str, int], ...]]:
    return {
        found.breed.pk: tuple((str(one.entry.number or ""), one.entry.dog.name, one.points) for one in found.earned)
        for found in points_of(show)
    }


def _finals(show: Show) -> tuple[FinalList, ...]:
    """The published finals, best in show first, then as the rules name them."""
    published = [one for one in finals_of(show).stands if one.row and one.row.published_at]
    ordered = sorted(published, key=lambda one: one.offered.award.level != "show")
    return tuple(
        FinalList(
            stand.title,
            stand.row.judge.name if stand.row and stand.row.judge else "",
            tuple((str(place), str(dog.number or ""), dog.dog.name, breed_words(dog)) for place, dog in stand.placed),
        )
        for stand in ordered
    )


def _corrections(show: Show) -> tuple[tuple[str, str, str, str], ...]:
    changed = Correction.objects.filter(entry__show=show).values_list("entry__show_class", flat=True)
    classes = ShowClass.objects.filter(pk__in=changed).select_related("show_breed__show").order_by("id")
    of_classes = [(one, told) for one in classes for told in corrections_of(one)]
    named = [
        (
            _("{title}, number {number}").format(title=queries.title_of(one), number=told.correction.entry.number),
            told.before,
            told.after,
            told.correction.why,
        )
        for one, told in of_classes
    ]
    awards = [(one.what, one.before, one.after, one.correction.why) for one in award_corrections_of(show)]
    return (*named, *awards)


def _is_in(breed: ShowBreed, by_breed: Mapping[int, Any], ring_id: int | None) -> bool:
    """Whether a class of the breed is among those printed, or its best of breed is judged in the ring."""
    return breed.pk in by_breed or _is_awarded_in(breed, ring_id)


def _is_awarded_in(breed: ShowBreed, ring_id: int | None) -> bool:
    ring = breed.appointed.ring
    return ring_id is None or (ring is not None and ring.pk == ring_id)


def _owners(show: Show) -> dict[int, tuple[str, ...]]:
    found: dict[int, list[str]] = defaultdict(list)
    rows = Ownership.objects.filter(dog__entries__show=show).order_by("person__name", "id").distinct()
    for dog, name in rows.values_list("dog_id", "person__name"):
        if name not in found[dog]:
            found[dog].append(name)
    return {dog: tuple(names) for dog, names in found.items()}


def _order(breed: ShowBreed) -> tuple[Any, ...]:
    standard = standards.load(breed.breed)
    return standard.group, standard.name, breed.variety, breed.pk


Given = tuple[tuple[str, str, str], ...]


def _given(breeds: Sequence[ShowBreed]) -> dict[int, Given]:
    """The published awards of each breed: name, number and dog."""
    return {found.card.breed.pk: _given_in(found) if found.state == "published" else () for found in awards_of(breeds)}


def _given_in(found: BreedAwards) -> Given:
    return tuple((line.words, str(line.entry.number or ""), line.entry.dog.name) for line in found.given if line.entry)


def _breed_list(
    breed: ShowBreed, classes: Sequence[ClassList], book: RuleBook, given: Given, ring_id: int | None
) -> BreedList:
    judge, ring, day = _where(breed.appointed)
    return BreedList(
        group=_("Group {number}").format(number=standards.load(breed.breed).group),
        name=breed_said(breed),
        judge=judge,
        ring=ring,
        day=day,
        classes=classes,
        forms={sex: form_of(breed.breed, sex, get_language() or "en") for sex in ("dog", "bitch")},
        awards=tuple(map(award_words, offered(book))) if _is_awarded_in(breed, ring_id) else (),
        given=given,
    )


def _where(told: Appointed) -> tuple[str, str, date | None]:
    """Judge, ring and day; empty where not known yet."""
    ring = capfirst(_("ring {name}").format(name=told.ring.name)) if told.ring else ""
    return told.judge.name if told.judge else "", ring, told.day


def _class_list(found: queries.Compiled, book: RuleBook, owners: dict[int, tuple[str, ...]]) -> ClassList:
    code, told = found.show_class.code, found.show_class.appointed
    judge, ring, of_day = _where(told)
    rows = sorted(found.rows, key=lambda row: (row.entry.number or 10**9, row.entry.pk))
    day = told.day or found.show_class.show_breed.show.first_day
    return ClassList(
        name=capfirst(_("{name} class").format(name=class_name(book.class_rule(code)))),
        sex=found.show_class.sex,
        exhibits=[_exhibit(row.entry, day, owners, row) for row in rows],
        grades=tuple(map(grade_name, book.grades_for(code))),
        is_published=found.state == "published",
        judge=judge,
        ring=ring,
        day=of_day,
    )


def _exhibit(entry: Entry, day: date, owners: dict[int, tuple[str, ...]], row: queries.Row | None = None) -> Exhibit:
    dog = entry.dog
    result = {} if row is None else _result(row)
    return Exhibit(
        number=str(entry.number or _("no number yet")),
        name=dog.name,
        studbook=dog.studbook,
        born=dog.born,
        months=completed_months(dog.born, day),
        sire=dog.sire,
        dam=dog.dam,
        breeder=dog.breeder,
        owners=owners.get(dog.pk, ()),
        **result,
    )


def _result(row: queries.Row) -> dict[str, Any]:
    return {"presence": row.presence, "grade": row.grade_name, "place": row.place, "reason": row.reason}


def _withdrawn(show: Show, book: RuleBook, owners: dict[int, tuple[str, ...]]) -> tuple[tuple[str, str, Exhibit], ...]:
    entries = Entry.objects.filter(show=show, state=Entry.State.WITHDRAWN).select_related(
        "dog", "show_class__show_breed"
    )
    found = []
    for entry in entries.order_by("number", "id"):
        title = class_words(book, entry.show_class)
        found.append((breed_said(entry.show_class.show_breed), title, _exhibit(entry, show.first_day, owners)))
    return tuple(found)


@cache
def form_of(breed: str, sex: Any, language: str) -> SheetForm:
    """The breed's points as a judge's paper asks them, in the language."""
    points = [point for point in standards.load(breed).points if point.is_for(sex)]
    with translation.override(language):
        scales = tuple(_scale(point) for point in points if point.kind == "two-sided")
        return SheetForm(scales, tuple(_question(point) for point in points if point.kind != "two-sided"))


def _scale(point: Point) -> Scale:
    name, low, high, _options = names_of(point)
    return Scale(capfirst(name), low, high)


def _question(point: Point) -> tuple[str, tuple[str, ...]]:
    name, _low, _high, options = names_of(point)
    name = capfirst(name)
    if point.kind == "yes-no":
        return name, (_("yes"), _("no"))
    if point.kind == "number":
        return f"{name} ({point.unit})", ()
    return name, tuple(options[option.code] for option in point.options if point.code != "teeth")
