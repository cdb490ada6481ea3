"""What an edit says, in the reader's words, for the office: of which dog or class, and what was written."""

from collections.abc import Mapping
from typing import Any

from django.utils.translation import get_language, gettext
from django.utils.translation import gettext_lazy as _

from ringside.dogs.wording import SEXES
from ringside.entries.models import Entry
from ringside.ring.awards import award_words
from ringside.ring.places import Place, place_of
from ringside.ring.queries import breed_said
from ringside.shows.books import class_name, grade_name, rules_of, standard_of
from scoring.rules.award_card import offered
from scoring.sheet import field_kind
from scoring.sheet_fields import subject_of
from scoring.standards.model import Point
from scoring.standards.translated import languages, words

DEGREES = ("", _("a little {end}"), _("clearly {end}"), _("far {end}"))
OF_A_DOG = {
    "presence": _("presence of number {number}: {value}"),
    "grade": _("grade of number {number}: {value}"),
    "reason": _("reason of number {number}: {value}"),
}
LISTS = {"places": _("places: {numbers}"), "shortlist": _("shortlist: {numbers}")}
PRESENCES = {"present": _("present"), "absent": _("absent"), "excused": _("excused")}
FIELDS = {"remark": _("remark"), "text": _("own text")}


def in_words(edit: Mapping[str, Any]) -> tuple[str, str]:
    """Whom an edit is about and what it says. It may be of a newer page or no edit at all: then as it stands."""
    sheet, field, value = str(edit.get("sheet", "")), str(edit.get("field", "")), edit.get("value")
    place = place_of(sheet)
    if place is None:
        return sheet or gettext("an edit that cannot be read"), _plain_pair(field, value)
    return _subject(place), _said(place, field, value)


def _subject(place: Place) -> str:
    breed = breed_said(place.show_breed)
    if place.entry:
        return gettext("Number {number}").format(number=place.entry.number or place.entry.pk)
    if place.show_class:
        name = class_name(rules_of(place.show_breed.show).class_rule(place.show_class.code))
        sex = SEXES[place.show_class.sex]
        return gettext("{breed}, {sex}, {name} class").format(breed=breed, sex=sex, name=name)
    return gettext("{breed}, awards").format(breed=breed)


def _said(place: Place, field: str, value: Any) -> str:
    kind, about = field_kind(field), subject_of(field)
    if kind == "signature":
        return gettext("the signature")
    if kind in OF_A_DOG:
        return str(OF_A_DOG[kind]).format(number=_numbers([about]), value=_decided(place, kind, value))
    if kind in LISTS:
        return str(LISTS[kind]).format(numbers=_numbers(value) if isinstance(value, list) else gettext("none"))
    if kind == "award":
        given = _numbers([value]) if isinstance(value, str) else _value(value, gettext("withheld"))
        return _pair(_award(place, about), given)
    point = standard_of(place.show_breed).point(about)
    if point is None:
        return _pair(str(FIELDS.get(kind) or _plain(field)), _value(value))
    name, low, high, options = names_of(point)
    return _pair(name, _of_point(point, low, high, options, value))


def _pair(name: str, value: str) -> str:
    return gettext("{name}: {value}").format(name=name, value=value)


def _plain_pair(field: str, value: Any) -> str:
    return _pair(_plain(field), _value(value)) if field else _value(value)


def names_of(point: Point) -> tuple[str, str, str, Mapping[str, str]]:
    """A point's name, its two ends and its options by code, in the reader's language."""
    language = get_language() or "en"
    if language not in languages():
        options = {one.code: one.code.replace("-", " ") for one in point.options}
        return point.name, point.low or "", point.high or "", options
    told = words(language)
    name, low, high, *_rest = [*told["points"][point.code], "", ""]
    return name, low, high, told["options"].get(point.code, {})


def _of_point(point: Point, low: str, high: str, options: Mapping[str, str], value: Any) -> str:
    if point.kind == "two-sided" and not isinstance(value, bool):
        if value == 0:
            return gettext("as the standard asks")
        if value in (-3, -2, -1, 1, 2, 3):
            return str(DEGREES[abs(value)]).format(end=low if value < 0 else high)
    return options.get(value, value) if isinstance(value, str) else _value(value)


def _decided(place: Place, kind: str, value: Any) -> str:
    if kind == "presence" and isinstance(value, str) and value in PRESENCES:
        return str(PRESENCES[value])
    if kind != "grade" or place.show_class is None:
        return _value(value)
    grades = rules_of(place.show_breed.show).grades_for(place.show_class.code)
    return next((grade_name(grade) for grade in grades if grade.code == value), _value(value))


def _award(place: Place, code: str) -> str:
    there = offered(rules_of(place.show_breed.show))
    return next((award_words(one) for one in there if one.code == code), _plain(code))


def _numbers(keys: list[Any]) -> str:
    wanted = [int(key) for key in map(str, keys) if key.isdecimal() and len(key) <= 18]
    found = Entry.objects.filter(pk__in=wanted).values_list("pk", "number")
    numbers = {str(key): str(number or key) for key, number in found}
    return ", ".join(numbers.get(str(key), str(key)) for key in keys) or gettext("none")


def _plain(code: str) -> str:
    return code.replace(".", " ").replace("-", " ")


def _value(value: Any, when_no: str = "") -> str:
    if value is None:
        return gettext("nothing")
    if isinstance(value, bool):
        return gettext("yes") if value else when_no or gettext("no")
    if isinstance(value, list):
        return ", ".join(map(str, value)) or gettext("none")
    return str(value) if not isinstance(value, dict) else gettext("something this server does not know")
