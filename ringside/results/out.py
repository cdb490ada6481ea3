"""Results and entries of a show as other programs read them: CSV, Excel, and JSON with a schema of its own.

The schemas lie beside this file, in schema/. No cell of a table starts a formula.
"""

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import tablib
from django.utils import translation

from ringside.core import exports
from ringside.entries.lists import Asked, entries_of
from ringside.entries.models import Entry
from ringside.entries.reading.cells import guarded
from ringside.results import queries
from ringside.results.models import Correction
from ringside.results.out_awards import awards_json
from ringside.ring.queries import breed_name
from ringside.shows.books import rules_of
from ringside.shows.models import Show

VERSION = 2
RESULTS_VERSION = 2
BATCH = 200
HEADINGS = (
    "Day", "Ring", "Judge", "Breed", "Sex", "Class", "Number", "Name of dog", "Studbook no.", "Presence", "Grade",
    "Place", "Reason", "Corrected",
)  # fmt: skip


def schema(name: str) -> dict[str, Any]:
    """The JSON schema of "results" or "entries"."""
    path = Path(__file__).with_name("schema") / f"{name}.schema.json"
    found: dict[str, Any] = json.loads(path.read_text(encoding="utf-8"))
    return found


def published_classes(show: Show) -> Iterator[queries.Compiled]:
    classes = queries.classes_of(show)
    for start in range(0, len(classes), BATCH):
        some = queries.compiled_many(classes[start : start + BATCH])
        yield from (found for found in some if found.state == "published")


# A file says the same whoever takes it away.
@translation.override("en")
def results_table(show: Show, kind: str) -> bytes:
    """Every published result as "csv" (UTF-8 with its mark, semicolons) or "xlsx"."""
    table = tablib.Dataset(headers=HEADINGS)
    for result in _results(show):
        table.append([guarded("" if cell is None else str(cell)) for cell in _cells(result)])
    return exports.written(table, kind)


def _cells(result: dict[str, Any]) -> list[Any]:
    names = ("day", "ring", "judge", "breed_name", "sex", "class_name", "number", "dog", "studbook", "presence")
    told = [result[name] for name in names]
    return [*told, result["grade_name"], result["place"], result["reason"], "yes" if result["corrected"] else "no"]


@translation.override("en")
def results_json(show: Show) -> dict[str, Any]:
    return {
        "format": "ringside-results",
        "version": RESULTS_VERSION,
        "show": show_json(show),
        **awards_json(show),
        "results": list(_results(show)),
    }


def _results(show: Show) -> Iterator[dict[str, Any]]:
    corrected = set(Correction.objects.filter(entry__show=show).values_list("entry_id", flat=True))
    for found in published_classes(show):
        yield from (_result(found, row, row.entry.pk in corrected) for row in found.rows)


def show_json(show: Show) -> dict[str, Any]:
    days = {"first_day": show.first_day.isoformat(), "last_day": show.last_day.isoformat()}
    return {"name": show.name, "place": show.place, "rules": show.rules, "overlays": list(show.overlays), **days}


def _result(found: queries.Compiled, row: queries.Row, is_corrected: bool) -> dict[str, Any]:
    show_class = found.show_class
    breed, told = show_class.show_breed, show_class.appointed
    return {
        "day": told.day.isoformat() if told.day else None,
        "ring": told.ring.name if told.ring else None,
        "judge": told.judge.name if told.judge else None,
        "breed": breed.breed,
        "variety": breed.variety or None,
        "breed_name": breed_name(breed),
        "sex": show_class.sex,
        "class": show_class.code,
        "class_name": rules_of(breed.show).class_rule(show_class.code).name,
        "number": row.entry.number,
        "dog": row.entry.dog.name,
        "studbook": row.entry.dog.studbook,
        "presence": row.presence,
        "grade": row.grade or None,
        "grade_name": row.grade_name or None,
        "place": row.place,
        "reason": row.reason or None,
        "corrected": is_corrected,
    }


def entries_json(show: Show) -> dict[str, Any]:
    entries = entries_of(show, Asked()).iterator(chunk_size=500)
    return {
        "format": "ringside-entries",
        "version": VERSION,
        "show": show_json(show),
        "entries": [_entry(entry) for entry in entries],
    }


def _entry(entry: Entry) -> dict[str, Any]:
    dog = entry.dog
    return {
        "number": entry.number,
        "state": entry.state,
        "breed": dog.breed,
        "variety": dog.variety or None,
        "class": entry.show_class.code,
        "handler": entry.handler,
        "dog": {
            "name": dog.name,
            "call_name": dog.call_name,
            "sex": dog.sex,
            "born": dog.born.isoformat(),
            "studbook": dog.studbook,
            "chip": dog.chip,
            "sire": dog.sire,
            "dam": dog.dam,
            "breeder": dog.breeder,
            "neutered": dog.neutered,
            "titles": [title.code for title in dog.titles.all()],
            "certificates": [one.code for one in dog.certificates.all()],
        },
        "owners": [{"name": person.name, "email": person.email} for person in dog.owners.all()],
    }
