"""The core's advice on a class: merit, a proposed order, and findings where sheets and decisions disagree."""

from typing import Any

from ringside.entries.models import Entry
from ringside.ring.models import Sheet
from ringside.shows.books import rules_of
from ringside.shows.models import ShowClass
from scoring.placing.doors import place_under

# What the advice on a class may say; the tablet gets the words of these.
CODES = (
    "placed-without-right", "too-many-places", "places-not-in-order", "grade-not-used", "reason-missing",
    "disqualifying-fault-not-acted-on", "placed-below-required-grade", "grade-inversion", "order-against-merit",
    "unequal-assessment",
)  # fmt: skip
PLURAL = {"mark": "marks", "choice": "choices", "number": "numbers", "yes": "yes"}


def advice_on(show_class: ShowClass) -> dict[str, Any]:
    """The answer of the core's `place` for this class as it stands, entries by their id as text."""
    return place_under(rules_of(show_class.show_breed.show), question_of(show_class))


def question_of(show_class: ShowClass) -> dict[str, Any]:
    card = Sheet.objects.filter(show_class=show_class).first()
    decided: dict[str, Any] = card.fields if card else {}
    entries = show_class.entries.filter(state=Entry.State.ENTERED).select_related("dog").order_by("number", "id")
    sheets = {sheet.entry_id: sheet.fields for sheet in Sheet.objects.filter(entry__in=entries)}
    return {
        "standard": show_class.show_breed.breed,
        "sheets": [
            sheet_json(entry, sheets.get(entry.pk, {}), decided)
            for entry in entries
            if sheets.get(entry.pk) or _is_decided(entry, decided)
        ],
    }


def _is_decided(entry: Entry, decided: dict[str, Any]) -> bool:
    """Whether anything is said of the dog; one that nobody has looked at yet is no sheet to compare with."""
    key = str(entry.pk)
    return key in (decided.get("places") or []) or any(name.endswith(f".{key}") for name in decided)


def sheet_json(entry: Entry, fields: dict[str, Any], decided: dict[str, Any]) -> dict[str, Any]:
    """One dog's sheet as the core's doors take it."""
    key = str(entry.pk)
    places = decided.get("places") or []
    sheet: dict[str, Any] = {"entry": key, "sex": entry.dog.sex, **content_of(fields)}
    sheet["presence"] = decided.get(f"presence.{key}") or "present"
    for name in ("grade", "reason"):
        if decided.get(f"{name}.{key}"):
            sheet[name] = decided[f"{name}.{key}"]
    if key in places:
        sheet["judge_place"] = places.index(key) + 1
    return sheet


def content_of(fields: dict[str, Any]) -> dict[str, Any]:
    """Marks, choices, teeth, numbers and yes-or-no of a sheet's fields, by point."""
    content: dict[str, Any] = {"marks": {}, "choices": {}, "numbers": {}, "yes": {}}
    for field, value in fields.items():
        kind, _, point = field.partition(".")
        if kind in PLURAL:
            content[PLURAL[kind]][point] = value
    if fields.get("set.teeth") is not None:
        # An empty list says that the teeth were looked at and are all there; without one they were not.
        content["teeth_missing"] = fields["set.teeth"]
    return content
