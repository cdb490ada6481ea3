"""A sheet is what its edits say: critique sheets, class cards and award cards, each a set of edits of its fields.

Here: one edit, what its JSON must look like, and when two values of a field are the same value.
"""

import re
from collections.abc import Hashable, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from scoring import bad_input, canonical
from scoring.bad_input import BadInput, join, value_of

FORMAT = 1
MOST_REPLACED = 1000
LONGEST_FIELD = 100
LONGEST_VALUE = 20_000
ID = re.compile(r"[A-Za-z0-9_-]{1,64}")
KINDS_WITH_SUBJECT = frozenset(
    {"mark", "praise", "choice", "set", "number", "yes", "text", "presence", "grade", "reason", "award"}
)
KINDS_ALONE = frozenset({"remark", "signature", "shortlist", "places"})
UNORDERED = frozenset({"set", "shortlist"})


@dataclass(frozen=True, slots=True)
class Edit:
    """One change of one field of one sheet, made on one device.

    `v` is the format's version, `replaces` the ids of the edits whose values this one takes the place of. `made_at`
    and `device` are the tablet's claims; who wrote the edit is stamped by the server and is no part of it.
    """

    v: int
    id: str
    sheet: str
    field: str
    value: Any
    replaces: tuple[str, ...]
    made_at: str
    device: str

    def as_json(self) -> dict[str, Any]:
        return {
            "v": self.v,
            "id": self.id,
            "sheet": self.sheet,
            "field": self.field,
            "value": self.value,
            "replaces": list(self.replaces),
            "made_at": self.made_at,
            "device": self.device,
        }


def parse_edit(raw: Any, at: str = "") -> Edit:
    """The edit in one JSON value, within the limits that keep it the same on the server and on every tablet.

    Limits: id and device 1 to 64 of A-Z a-z 0-9 _ -, field at most 100 characters, value at most 20,000 characters
    of canonical JSON with whole numbers up to 2^53 - 1, at most 1,000 ids replaced, `made_at` an ISO 8601 time with
    its offset. Members that are not the edit's own (a server's `seq`, `by`) are left out. Whether the field is one
    the sheet has is asked of `sheet_fields.check_edit`.
    Raises BadInput with the path to the member.
    """
    edit = read_edit(raw, at)
    check_id(edit.id, join(at, "id"))
    check_id(edit.device, join(at, "device"))
    for index, replaced in enumerate(edit.replaces):
        check_id(replaced, join(join(at, "replaces"), index))
    _at_most(len(edit.replaces), MOST_REPLACED, "ids", join(at, "replaces"))
    _at_most(len(edit.sheet), LONGEST_FIELD, "characters", join(at, "sheet"))
    _at_most(len(edit.field), LONGEST_FIELD, "characters", join(at, "field"))
    canonical.check_whole_numbers(edit.value, join(at, "value"))
    _at_most(len(canonical.text(edit.value)), LONGEST_VALUE, "characters", join(at, "value"))
    _check_time(edit.made_at, join(at, "made_at"))
    return edit


def read_edit(raw: Any, at: str = "") -> Edit:
    """The edit in one JSON value, its members of the right types and its value sound JSON, without further limits.

    Raises BadInput with the path to the member.
    """
    source = bad_input.an_object(raw, at)
    edit = Edit(
        v=bad_input.an_int(value_of(source, "v", at), join(at, "v"), low=1),
        id=_text(source, "id", at),
        sheet=_text(source, "sheet", at),
        field=_text(source, "field", at),
        value=value_of(source, "value", at),
        replaces=_replaces(source, at),
        made_at=_text(source, "made_at", at),
        device=_text(source, "device", at),
    )
    canonical.check_sound(edit.as_json(), at)
    return edit


def check_id(value: Any, at: str) -> str:
    text = bad_input.a_string(value, at)
    if not ID.fullmatch(text):
        raise BadInput("out-of-range", "Give an id of 1 to 64 letters, digits, _ or -.", at)
    return text


def digest(edit: Edit) -> str:
    """SHA-256, in hex, of the edit's eight members as canonical JSON: the same on the server and on a tablet.

    A later format may add members, but these eight keep their meaning and alone enter the digest.
    """
    return canonical.digest(edit.as_json())


def field_kind(field: str) -> str:
    """What a field holds: `mark.croup` is a "mark", `places` are "places"; a field we do not know is "other"."""
    kind, dot, subject = field.partition(".")
    if (kind in KINDS_WITH_SUBJECT and subject) or (kind in KINDS_ALONE and not dot):
        return kind
    return "other"


def same_content(one: Edit, other: Edit) -> bool:
    return comparable(one.as_json()) == comparable(other.as_json())


def value_key(field: str, value: Any) -> Hashable:
    """A key that is equal for equal values of a field.

    Rule: `set.*` and `shortlist` are unordered and hold each member once, as are the ids a signature covers; every
    other list is ordered. True and false are no numbers, 1 and 1.0 are one number, null is a value like any other.
    """
    kind = field_kind(field)
    if kind in UNORDERED and isinstance(value, list):
        return ("set", frozenset(comparable(member) for member in value))
    if kind == "signature":
        return _signature_key(value)
    return comparable(value)


def comparable(value: Any) -> Hashable:
    if isinstance(value, bool):
        return ("truth", value)
    if isinstance(value, dict):
        return ("object", frozenset((name, comparable(member)) for name, member in value.items()))
    if isinstance(value, list):
        return ("list", tuple(comparable(member) for member in value))
    itself: Hashable = value
    return itself


def _signature_key(value: Any) -> Hashable:
    """A plain list of ids says the same as an object that covers them; the lists in it are unordered."""
    said = {"covers": value} if isinstance(value, list) else value
    if not isinstance(said, dict):
        return comparable(said)
    return ("object", frozenset((name, _unordered(member)) for name, member in said.items()))


def _unordered(value: Any) -> Hashable:
    return frozenset(comparable(member) for member in value) if isinstance(value, list) else comparable(value)


def _text(source: Mapping[str, Any], key: str, at: str) -> str:
    return bad_input.a_string(value_of(source, key, at), join(at, key))


def _replaces(source: Mapping[str, Any], at: str) -> tuple[str, ...]:
    here = join(at, "replaces")
    listed = bad_input.a_list(value_of(source, "replaces", at), here)
    return tuple(bad_input.a_string(replaced, join(here, index)) for index, replaced in enumerate(listed))


def _at_most(length: int, most: int, what: str, at: str) -> None:
    if length > most:
        raise BadInput("too-large", f"Give at most {most:,} {what} here.", at)


def _check_time(value: str, at: str) -> None:
    try:
        offset = datetime.fromisoformat(value).utcoffset() if len(value) <= 40 else None
    except ValueError:
        offset = None
    if offset is None:
        raise BadInput("bad-date", "Give a time with its offset, such as 2026-06-13T09:30:00Z.", at)
