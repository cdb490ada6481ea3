"""What a tablet needs for a day in one ring, and what is new since it last asked."""

import re
from dataclasses import replace
from datetime import date
from functools import cache
from typing import Any

from django.db.models import Prefetch, Q
from django.utils.translation import gettext

from ringside.drawings.outline import outline
from ringside.drawings.portrait import build_of
from ringside.entries.models import Entry
from ringside.ring import models
from ringside.ring.awards import standings_elsewhere
from ringside.ring.offers import breed_json
from ringside.shows.appointed import appointments_of, breeds_awarded_in, classes_in
from ringside.shows.books import rules_of
from ringside.shows.models import Ring, ShowBreed, ShowClass
from scoring.critique.table import compiled
from scoring.rules.ages import completed_months
from scoring.rules.rulebook import Grade, RuleBook
from scoring.standards import loader as standards
from scoring.standards.model import BreedStandard, Point

FRACTION = re.compile(r"-?\d+\.\d+")


def day_of(ring: Ring) -> dict[str, Any]:
    """Everything the ring page shows before the first edit: classes with their dogs by number, standards, grades.

    The judge sees numbers only: no names, parents, breeder, owner or titles leave the server here.
    """
    book = rules_of(ring.show)
    breeds = _breeds(ring)
    awarded = [breed for breed in breeds if breed.appointed.ring == ring]
    elsewhere = standings_elsewhere(awarded, ring)
    classes = [(one, breed) for breed in breeds for one in breed.classes.all() if one.appointed.ring == ring]
    classes.sort(key=lambda pair: pair[0].appointed.day or date.min)  # stable: the breeds stay in their order
    codes = sorted({breed.breed for breed in breeds})
    return {
        "ring": {"id": ring.pk, "name": ring.name},
        "show": {"name": ring.show.name, "rules": book.name, "places": book.places},
        "breeds": [
            {**breed_json(breed, book, breed_name(breed)), "elsewhere": elsewhere.get(breed.pk, [])}
            for breed in awarded
        ],
        "classes": [_class_json(show_class, breed, book) for show_class, breed in classes],
        "drawings": {code: drawing_json(code) for code in codes},
        "phrases": {code: compiled(code, "en") for code in codes},
        "standards": {code: standard_json(standards.load(code)) for code in codes},
    }


def _breeds(ring: Ring) -> list[ShowBreed]:
    """The breeds of which a class or best of breed is judged in the ring, with all of their classes."""
    entries = Entry.objects.filter(state=Entry.State.ENTERED).select_related("dog").order_by("number", "id")
    classes = ShowClass.objects.order_by("-sex", "order", "id").prefetch_related(Prefetch("entries", entries))
    here = Q(classes__in=classes_in(ring)) | Q(pk__in=breeds_awarded_in(ring))
    found = ShowBreed.objects.filter(show=ring.show_id).filter(here).distinct().order_by("day", "id")
    found = found.select_related("show", "judge", "ring", "awards_judged_by")
    return list(found.prefetch_related(appointments_of(), Prefetch("classes", classes)))


def _class_json(show_class: ShowClass, breed: ShowBreed, book: RuleBook) -> dict[str, Any]:
    rule, day = book.class_rule(show_class.code), show_class.appointed.day
    grades = book.grades_for(show_class.code)
    return {
        "id": show_class.pk,
        "sheet": f"class:{show_class.pk}",
        "breed": breed.breed,
        "breed_name": breed_name(breed),
        "day": day and day.isoformat(),
        "sex": show_class.sex,
        "code": show_class.code,
        "name": rule.name,
        "grades": [_grade_json(grade) for grade in grades],
        "entries": [_entry_json(entry, day or breed.show.first_day) for entry in show_class.entries.all()],
    }


def _grade_json(grade: Grade) -> dict[str, Any]:
    told = {"code": grade.code, "name": grade.name}
    return {**told, "needs_reason": grade.needs_reason, "may_be_placed": grade.may_be_placed}


def _entry_json(entry: Entry, day: date) -> dict[str, Any]:
    return {
        "id": entry.pk,
        "sheet": f"entry:{entry.pk}",
        "number": entry.number,
        "sex": entry.dog.sex,
        "months": completed_months(entry.dog.born, day),
    }


def breed_name(breed: ShowBreed) -> str:
    standard = standards.load(breed.breed)
    variety = next((one.name for one in standard.varieties if one.code == breed.variety), "")
    return f"{standard.name}, {variety}" if variety else standard.name


def breed_said(breed: ShowBreed) -> str:
    """The breed and its variety in the reader's language."""
    standard = standards.load(breed.breed)
    varieties = [one.name for one in standard.varieties if one.code == breed.variety]
    return ", ".join(gettext(name) for name in (standard.name, *varieties))


def standard_json(standard: BreedStandard) -> dict[str, Any]:
    return {"name": standard.name, "points": [_point_json(point) for point in standard.points]}


def _point_json(point: Point) -> dict[str, Any]:
    told = {
        "code": point.code,
        "section": point.section,
        "kind": point.kind,
        "name": point.name,
        "asks": point.asks,
        "low": point.low,
        "high": point.high,
        "unit": point.unit,
        "least": point.least,
        "most": point.most,
        "sex": point.sex,
        "options": [{"code": o.code, "name": o.code.replace("-", " "), "standing": o.standing} for o in point.options],
    }
    return {name: value for name, value in told.items() if value not in (None, [])}


@cache
def drawing_json(breed: str) -> dict[str, Any]:
    """The outline of a dog of the breed as path data, with a place for each point."""
    # Without the long coat's fringe, which is half of the ink and nothing a mark is set on.
    drawn = outline(replace(build_of(breed), fringe=0.0))
    points = {point.code for point in standards.load(breed).points}
    return {
        "width": drawn.width,
        "height": drawn.height,
        "under": [_coarse(stroke.path) for stroke in drawn.under],
        "under_shade": _coarse(drawn.under_shade),
        "body": [_coarse(path) for path in drawn.body],
        "strokes": [_coarse(stroke.path) for stroke in drawn.strokes],
        "shade": _coarse(drawn.shade),
        "places": {code: [round(x), round(y)] for code, (x, y) in drawn.places.items() if code in points},
    }


def _coarse(path: str) -> str:
    """Path data in whole units: finer than a tablet shows, and a third of it less to send over a field's network."""
    return FRACTION.sub(lambda number: str(round(float(number[0]))), path)


def edits_since(ring: Ring, since: int) -> list[dict[str, Any]]:
    """The ring's edits with a sequence above `since`, in that order, as the tablets read them.

    Those that do not count come too, with their state: a tablet must not count them either, nor wait for them.
    """
    rows = models.Edit.objects.filter(ring=ring, sequence__gt=since).order_by("sequence")
    return [_edit_json(row) for row in rows]


def _edit_json(row: models.Edit) -> dict[str, Any]:
    told = {"reason": row.reason} if row.reason else {}
    return {
        "v": row.version,
        "id": row.id,
        "sheet": row.sheet,
        "field": row.field,
        "value": row.value,
        "replaces": row.replaces,
        "made_at": row.made_at,
        "device": row.device,
        "seq": row.sequence,
        "by": row.role,
        "state": row.state,
        **told,
    }
