"""A show from the database as what the office's papers print."""

from collections import defaultdict
from collections.abc import Sequence
from datetime import date
from functools import cache
from typing import Any

from ringside.dogs.models import Ownership
from ringside.entries.models import Entry
from ringside.papers.programme import BreedList, ClassList, Exhibit, Programme, Scale, SheetForm
from ringside.results import queries
from ringside.ring.queries import breed_name
from ringside.shows.books import rules_of
from ringside.shows.models import Show, ShowBreed
from scoring.rules.ages import completed_months
from scoring.rules.rulebook import RuleBook
from scoring.standards import loader as standards
from scoring.standards.model import Point

BATCH = 200


def programme_of(show: Show, ring_id: int | None = None) -> Programme:
    """The whole show, or what is judged in one ring of it."""
    classes = [one for one in queries.classes_of(show) if ring_id is None or one.show_breed.ring_id == ring_id]
    owners = _owners(show)
    book = rules_of(show)
    by_breed: dict[int, list[ClassList]] = defaultdict(list)
    for start in range(0, len(classes), BATCH):
        for found in queries.compiled_many(classes[start : start + BATCH]):
            by_breed[found.show_class.show_breed_id].append(_class_list(found, book, owners))
    breeds = {one.show_breed_id: one.show_breed for one in classes}
    return Programme(
        show=", ".join(filter(None, (show.name, show.place))),
        days=days_of(show.first_day, show.last_day),
        breeds=[_breed_list(breed, by_breed[breed.pk], book) for breed in sorted(breeds.values(), key=_order)],
        withdrawn=_withdrawn(show, book, owners),
    )


def day_words(day: date | None) -> str:
    return f"{day.day} {day:%B} {day.year}" if day else ""


def days_of(first: date, last: date) -> str:
    return day_words(first) if first == last else f"{day_words(first)} to {day_words(last)}"


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


def _breed_list(breed: ShowBreed, classes: Sequence[ClassList], book: RuleBook) -> BreedList:
    return BreedList(
        group=f"Group {standards.load(breed.breed).group}",
        name=breed_name(breed),
        judge=breed.judge.name if breed.judge else "",
        ring=str(breed.ring) if breed.ring else "",
        day=day_words(breed.day),
        classes=classes,
        forms={sex: form_of(breed.breed, sex) for sex in ("dog", "bitch")},
        awards=tuple(_award_lines(book)),
    )


def _award_lines(book: RuleBook) -> list[str]:
    """The awards a breed's judge gives, those of each sex once for dogs and once for bitches."""
    lines = []
    for award in book.awards:
        if award.level == "sex":
            lines += [f"{award.name}, dogs", f"{award.name}, bitches"]
        elif award.level == "breed":
            lines.append(award.name)
    return lines


def _class_list(found: queries.Compiled, book: RuleBook, owners: dict[int, tuple[str, ...]]) -> ClassList:
    code, breed = found.show_class.code, found.show_class.show_breed
    rows = sorted(found.rows, key=lambda row: (row.entry.number or 10**9, row.entry.pk))
    day = breed.day or breed.show.first_day
    return ClassList(
        name=f"{book.class_rule(code).name} class",
        sex=found.show_class.sex,
        exhibits=[_exhibit(row.entry, day, owners, row) for row in rows],
        grades=tuple(grade.name for grade in book.grades_for(code)),
        is_published=found.state == "published",
    )


def _exhibit(entry: Entry, day: date, owners: dict[int, tuple[str, ...]], row: queries.Row | None = None) -> Exhibit:
    dog = entry.dog
    result = {} if row is None else _result(row)
    return Exhibit(
        number=str(entry.number or "no number"),
        name=dog.name,
        studbook=dog.studbook,
        born=day_words(dog.born),
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
        sex = "dogs" if entry.show_class.sex == "dog" else "bitches"
        title = f"{book.class_rule(entry.show_class.code).name} class, {sex}"
        found.append((breed_name(entry.show_class.show_breed), title, _exhibit(entry, show.first_day, owners)))
    return tuple(found)


@cache
def form_of(breed: str, sex: Any) -> SheetForm:
    """The breed's points as a judge's paper asks them."""
    points = [point for point in standards.load(breed).points if point.is_for(sex)]
    scales = tuple(Scale(p.name, p.low or "", p.high or "") for p in points if p.kind == "two-sided")
    return SheetForm(scales, tuple(_question(point) for point in points if point.kind != "two-sided"))


def _question(point: Point) -> tuple[str, tuple[str, ...]]:
    if point.kind == "yes-no":
        return point.name, ("yes", "no")
    if point.kind == "number":
        return f"{point.name} ({point.unit})", ()
    if point.code == "teeth":
        return "Missing teeth", ()
    return point.name, tuple(option.code.replace("-", " ") for option in point.options)
