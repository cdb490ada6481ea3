"""Ids within texts: where a sheet's key, a field's name or a value names an entry, it is written with the new id."""

import re
from collections.abc import Callable, Mapping
from typing import Any

from scoring.sheet import field_kind
from scoring.sheet_fields import ABOUT_AN_ENTRY, subject_of

ENTRY = "entries.entry"
KEYS = {
    "entry": ENTRY, "class": "shows.showclass", "breed": "shows.showbreed", "ring": "shows.ring",
    "role": "shows.role", "file": "entries.entryfile", "report": "results.report", "pairing": "ring.pairing",
    "tablet": "ring.tablet", "show": "shows.show", "dog": "dogs.dog", "request": "entries.entryrequest",
    "group": "entries.groupentry", "final": "results.final", "fee": "fees.feeline", "payment": "fees.payment",
    "invoice": "fees.invoice", "person": "people.person",
}  # fmt: skip
# Members of an audit line's details that are ids: one, or a list of them.
IN_DETAIL = {
    "entries": ENTRY, "failed": "people.account", "change": "results.daychange", "request": "home.correctionrequest",
    "corrections": "results.correction",
}  # fmt: skip
GONE = "gone-"
NAMED = re.compile(r"\b([a-z]+):(\d{1,18})\b")


class Ids:
    """Old id to new id, table by table."""

    def __init__(self) -> None:
        self.known: dict[str, dict[Any, Any]] = {}

    def add(self, table: str, old: Any, new: Any) -> None:
        self.known.setdefault(table, {})[old] = new

    def get(self, table: str, old: Any) -> Any:
        return self.known.get(table, {}).get(old)

    def text(self, table: str, old: str) -> str:
        """The new id as text; a number that names nothing of this show says so, and never names another thing."""
        if not (old.isascii() and old.isdecimal() and len(old) <= 18):
            return old
        new = self.get(table, int(old))
        return GONE + old if new is None else str(new)


def _key(ids: Ids, value: Any, _: Mapping[str, Any]) -> Any:
    return NAMED.sub(lambda found: _named(ids, found), value) if isinstance(value, str) else value


def _named(ids: Ids, found: re.Match[str]) -> str:
    word, number = found.groups()
    return f"{word}:{ids.text(KEYS[word], number)}" if word in KEYS else found.group()


def _field(ids: Ids, value: Any, _: Mapping[str, Any]) -> Any:
    if not isinstance(value, str) or field_kind(value) not in ABOUT_AN_ENTRY:
        return value
    return f"{field_kind(value)}.{ids.text(ENTRY, subject_of(value))}"


def _value(ids: Ids, value: Any, row: Mapping[str, Any]) -> Any:
    """What an edit of this field holds: `shortlist` and `places` list entries, an award goes to one."""
    kind = field_kind(str(row["field"]))
    if kind in ("shortlist", "places") and isinstance(value, list):
        return [ids.text(ENTRY, one) if isinstance(one, str) else one for one in value]
    return ids.text(ENTRY, value) if kind == "award" and isinstance(value, str) else value


def _settled(ids: Ids, value: Any, row: Mapping[str, Any]) -> Any:
    if not isinstance(value, dict):
        return value
    return {_field(ids, name, row): _value(ids, one, {"field": name}) for name, one in value.items()}


def _field_list(ids: Ids, value: Any, row: Mapping[str, Any]) -> Any:
    return [_field(ids, name, row) for name in value] if isinstance(value, list) else value


def _detail(ids: Ids, value: Any, _: Mapping[str, Any]) -> Any:
    if not isinstance(value, dict):
        return value
    return {name: _numbers(ids, IN_DETAIL[name], one) if name in IN_DETAIL else one for name, one in value.items()}


def _numbers(ids: Ids, table: str, value: Any) -> Any:
    if isinstance(value, list):
        return [_numbers(ids, table, one) for one in value]
    if isinstance(value, bool) or not isinstance(value, int):
        return value
    new = ids.get(table, value)
    return f"{GONE}{value}" if new is None else new


def _paper(_: Ids, value: Any, row: Mapping[str, Any]) -> Any:
    """A signed critique keeps the id under which it was signed: its printed fingerprint is made with it."""
    return {**value, "signed_as": value.get("signed_as", row["entry"])} if isinstance(value, dict) else value


Translator = Callable[[Ids, Any, Mapping[str, Any]], Any]
TRANSLATED: dict[str, Translator] = {
    "core.auditline.scope": _key,
    "core.auditline.about": _key,
    "core.auditline.detail": _detail,
    "ring.edit.sheet": _key,
    "ring.edit.field": _field,
    "ring.edit.value": _value,
    "ring.sheet.key": _key,
    "ring.sheet.fields": _settled,
    "ring.sheet.signed": _settled,
    "ring.sheet.disputed": _field_list,
    "ring.sheet.incomplete": _field_list,
    "results.critique.paper": _paper,
}
# JSON that names no row of the database.
PLAIN_JSON = frozenset({
    "shows.show.overlays", "entries.entryfile.other_sheets", "entries.entryfile.headings",
    "entries.entryfile.columns", "entries.entryline.cells", "entries.entryline.mended", "entries.entryline.findings",
    "ring.edit.replaces", "ring.sheet.held", "results.critique.sentences", "results.correction.before",
    "results.correction.after", "photos.photo.landmarks", "photos.photo.ground", "photos.photo.measured",
    "shows.show.classes_offered", "entries.entryterms.groups", "entries.entryrequest.texts",
    "entries.entryrequest.classes", "entries.entryrequest.doubts", "fees.feeline.classes", "fees.invoice.lines",
    "fees.invoice.pay_to", "notices.notice.told",
})  # fmt: skip


def translated(ids: Ids, name: str, value: Any, row: Mapping[str, Any]) -> Any:
    """The value of a field named "room.model.field" with its new ids."""
    translate = TRANSLATED.get(name)
    return translate(ids, value, row) if translate else value
