"""Whether an edit speaks of things that are there: points of the standard, grades of the rules, dogs of the class."""

from collections.abc import Callable
from typing import Any

from ringside.entries.models import Entry
from ringside.ring.places import Place
from ringside.ring.reasons import reason
from ringside.shows.books import rules_of, standard_of
from scoring.bad_input import BadInput
from scoring.rules.award_card import offered
from scoring.sheet import Edit, field_kind
from scoring.sheet_fields import subject_of
from scoring.standards.model import Point
from scoring.standards.teeth import DOG_TEETH

POINT_KINDS = {
    "mark": "two-sided", "choice": "choice", "set": "set", "number": "number", "yes": "yes-no",
}  # fmt: skip


def check_meaning(edit: Edit, place: Place) -> None:
    """Raises BadInput with a sentence for whoever wrote the edit."""
    kind = field_kind(edit.field)
    if kind in POINT_KINDS or kind == "praise":
        _check_point(edit, place, kind)
    elif kind == "grade":
        _check_grade(edit, place)
    elif kind == "award":
        _check_award(edit, place)
    elif kind in NAMED:
        _check_entries(entries_named(edit), place)


def entries_named(edit: Edit) -> list[str]:
    """The entries that an edit of a class card or an award card speaks of."""
    kind = field_kind(edit.field)
    return NAMED[kind](edit) if kind in NAMED else []


def _check_point(edit: Edit, place: Place, kind: str) -> None:
    standard = standard_of(place.show_breed)
    point = standard.point(subject_of(edit.field))
    if point is None or kind not in ("praise", _field_of(point)):
        raise BadInput("unknown-code", reason("no-such-point", breed=standard.name), "field")
    if edit.value is not None and kind != "praise":
        _check_value(edit.value, point)


def _field_of(point: Point) -> str:
    return next(field for field, kind in POINT_KINDS.items() if kind == point.kind)


def _check_value(value: Any, point: Point) -> None:
    if point.kind == "choice" and point.option(value) is None:
        raise BadInput("unknown-code", reason("no-such-choice", point=point.name), "value")
    if point.kind == "set" and point.code == "teeth" and any(tooth not in DOG_TEETH for tooth in value):
        raise BadInput("unknown-code", reason("no-such-tooth"), "value")
    if point.kind == "number":
        low, high = point.least or 0, point.most or 10_000
        if not low <= value <= high:
            told = reason("number-outside", point=point.name, least=low, most=high, unit=point.unit)
            raise BadInput("out-of-range", told, "value")


def _check_grade(edit: Edit, place: Place) -> None:
    _check_entries([subject_of(edit.field)], place)
    assert place.show_class is not None
    grades = [grade.code for grade in rules_of(place.show_breed.show).grades_for(place.show_class.code)]
    if edit.value is not None and edit.value not in grades:
        raise BadInput("unknown-code", reason("no-such-grade"), "value")


def _check_entries(entries: list[str], place: Place) -> None:
    assert place.show_class is not None
    known = {str(pk) for pk in place.show_class.entries.values_list("pk", flat=True)}
    if unknown := [entry for entry in entries if entry not in known]:
        raise BadInput("unknown-code", reason("no-such-dog", entries=", ".join(unknown)), "value")


def _check_award(edit: Edit, place: Place) -> None:
    """An award of these rules, and a dog of this breed and sex. Whether it competes is a finding: the judge decides."""
    wanted = subject_of(edit.field)
    one = next((one for one in offered(rules_of(place.show_breed.show)) if one.code == wanted), None)
    if one is None:
        raise BadInput("unknown-code", reason("no-such-award"), "field")
    if not isinstance(edit.value, str):
        return
    entries = Entry.objects.filter(show_class__show_breed=place.show_breed)
    of_sex = entries.filter(show_class__sex=one.sex) if one.sex else entries
    if edit.value not in {str(pk) for pk in of_sex.values_list("pk", flat=True)}:
        raise BadInput("unknown-code", reason("no-such-dog-of-breed", sex=one.sex or "dog", entry=edit.value), "value")


NAMED: dict[str, Callable[[Edit], list[str]]] = {
    "presence": lambda edit: [subject_of(edit.field)],
    "grade": lambda edit: [subject_of(edit.field)],
    "reason": lambda edit: [subject_of(edit.field)],
    "award": lambda edit: [edit.value] if isinstance(edit.value, str) else [],
    "shortlist": lambda edit: edit.value or [],
    "places": lambda edit: edit.value or [],
}
