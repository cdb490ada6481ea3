"""Which fields a sheet has and what each may hold.

`entry:ID` is a judge's critique of one entry, `class:ID` what is decided in a class, `breed:ID` what is decided in a
breed. Whether the breed's standard knows the point and the rules know the grade is asked of those, not here.
"""

import re
from collections.abc import Callable, Collection, Mapping
from typing import Any

from scoring import bad_input
from scoring.bad_input import BadInput, join
from scoring.sheet import Edit, check_id, field_kind

STEPS = 3
LARGEST_NUMBER = 10_000
MOST_MEMBERS = 1000
PRESENCES = ("present", "absent", "excused", "withdrawn")
CODE = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
LANGUAGE = re.compile(r"[a-z]{2}")

FIELDS_OF: Mapping[str, Collection[str]] = {
    "entry": ("mark", "praise", "choice", "set", "number", "yes", "remark", "text", "signature"),
    "class": ("presence", "grade", "reason", "shortlist", "places", "signature"),
    "breed": ("award", "signature"),
}
ABOUT_A_CODE = frozenset({"mark", "praise", "choice", "set", "number", "yes", "award"})
ABOUT_AN_ENTRY = frozenset({"presence", "grade", "reason"})


def check_edit(edit: Edit, at: str = "") -> None:
    """Refuses an edit whose sheet, field or value is none that this program knows.

    Raises BadInput with a sentence for the person who made the edit and the path to the member.
    """
    check_field(edit.sheet, edit.field, at)
    validate_value(edit.field, edit.value, join(at, "value"))


def check_field(sheet: str, field: str, at: str = "") -> None:
    card = split_sheet(sheet, join(at, "sheet"))[0]
    if field_kind(field) not in FIELDS_OF[card]:
        message = f'A sheet "{card}" has no field "{field[:60]}". Known: {", ".join(FIELDS_OF[card])}.'
        raise BadInput("unknown-code", message, join(at, "field"))
    _check_subject(field, join(at, "field"))


def split_sheet(sheet: str, at: str = "sheet") -> tuple[str, str]:
    """("entry", "17") for "entry:17". Raises BadInput for anything but entry:ID, class:ID and breed:ID."""
    card, _, subject = sheet.partition(":")
    bad_input.one_of(card, FIELDS_OF, at)
    return card, check_id(subject, at)


def subject_of(field: str) -> str:
    """What a field is about: the point, the entry, the language or the award; empty for a field that stands alone."""
    return field.partition(".")[2]


def validate_value(field: str, value: Any, at: str = "value") -> None:
    """Refuses a value that the field cannot hold; null, which empties it, always fits.

    Raises BadInput with a sentence for the person who made the edit.
    """
    if value is None:
        return
    kind = field_kind(field)
    if kind not in CHECKS:
        raise BadInput("unknown-code", f'There is no field "{field[:60]}".', at)
    CHECKS[kind](value, at)


def _check_subject(field: str, at: str) -> None:
    kind, subject = field_kind(field), subject_of(field)
    if kind in ABOUT_A_CODE:
        _code(subject, at)
    elif kind in ABOUT_AN_ENTRY:
        check_id(subject, at)
    elif kind == "text" and not LANGUAGE.fullmatch(subject):
        raise BadInput("unknown-code", "Name the language by two small letters, such as text.en.", at)


def _code(value: Any, at: str) -> None:
    if not CODE.fullmatch(bad_input.a_string(value, at)):
        raise BadInput("unknown-code", "Give a code of small letters and digits joined by hyphens here.", at)


def _mark(value: Any, at: str) -> None:
    if isinstance(value, bool) or not isinstance(value, int) or abs(value) > STEPS:
        raise BadInput("out-of-range", f"A mark is a whole number from -{STEPS} to {STEPS}, or empty.", at)


def _number(value: Any, at: str) -> None:
    bad_input.a_number(value, at, low=0, high=LARGEST_NUMBER)


def _presence(value: Any, at: str) -> None:
    bad_input.one_of(value, PRESENCES, at)


def _set(value: Any, at: str) -> None:
    """Teeth by number, codes, or small objects of codes and numbers (a way of moving with its side and degree)."""
    for index, member in enumerate(bad_input.a_list(value, at, MOST_MEMBERS)):
        here = join(at, index)
        if isinstance(member, dict):
            for name, part in member.items():
                _code(name, here)
                _code_or_whole(part, join(here, name))
        else:
            _code_or_whole(member, here)


def _code_or_whole(value: Any, at: str) -> None:
    if isinstance(value, str):
        _code(value, at)
    else:
        bad_input.an_int(value, at)


def _entries(value: Any, at: str) -> None:
    _ids(value, at)
    twice = {entry for entry in value if value.count(entry) > 1}
    if twice:
        raise BadInput("out-of-range", f"Name each entry once; named twice: {', '.join(sorted(twice))}.", at)


def _award(value: Any, at: str) -> None:
    """The entry that gets the award; false says that the judge withholds it."""
    if value is not False:
        check_id(value, at)


def _signature(value: Any, at: str) -> None:
    if isinstance(value, dict):
        if value.get("covers") is not None:
            _ids(value["covers"], join(at, "covers"))
        elif "covers" not in value:
            raise BadInput("missing-key", 'Give "covers", the ids of the edits that are signed.', join(at, "covers"))
        _ids(value.get("aside", []), join(at, "aside"))
    else:
        _ids(value, at)


def _ids(value: Any, at: str) -> None:
    for index, entry in enumerate(bad_input.a_list(value, at, MOST_MEMBERS)):
        check_id(entry, join(at, index))


CHECKS: Mapping[str, Callable[[Any, str], object]] = {
    "mark": _mark,
    "praise": bad_input.a_bool,
    "choice": _code,
    "set": _set,
    "number": _number,
    "yes": bad_input.a_bool,
    "remark": bad_input.a_string,
    "text": bad_input.a_string,
    "signature": _signature,
    "presence": _presence,
    "grade": _code,
    "reason": bad_input.a_string,
    "shortlist": _entries,
    "places": _entries,
    "award": _award,
}
