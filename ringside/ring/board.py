"""The public board of a ring: which class, which number, placings as signed. Numbers only, no name of dog or person."""

import time
from typing import Any

from django.core.cache import cache
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404
from django.template.loader import render_to_string
from django.utils.translation import get_language, gettext
from django.utils.translation import gettext_lazy as _
from django.views.decorators.cache import cache_control
from django.views.decorators.http import condition, require_GET

from ringside.dogs.wording import SEXES
from ringside.entries.models import Entry
from ringside.ring.models import Edit, Sheet
from ringside.ring.queries import breed_said
from ringside.shows.appointed import classes_in
from ringside.shows.books import class_name, grade_name, rules_of
from ringside.shows.models import Ring, ShowClass

# Entries move and are withdrawn without an edit: a page lives no longer than this.
KEPT_SECONDS = 60
LOOKED_AT = 20
PARTS = {"being judged": _("Now in the ring"), "signed": _("Signed by the judge"), "to come": _("To come")}


def state_of(request: HttpRequest, ring_id: int) -> str | None:
    """Changes with every edit of the ring and every minute: one number to look up, however many people ask."""
    sequence = Ring.objects.filter(pk=ring_id).values_list("sequence", flat=True).first()
    return None if sequence is None else f'"{_key(ring_id, sequence)}"'


def _key(ring_id: int, sequence: int) -> str:
    return f"board-{ring_id}-{get_language()}-{sequence}-{int(time.time() // KEPT_SECONDS)}"


@require_GET
@cache_control(public=True, max_age=3)
@condition(etag_func=state_of)
def board(request: HttpRequest, ring_id: int) -> HttpResponse:
    ring = get_object_or_404(Ring.objects.select_related("show"), pk=ring_id)
    key = _key(ring.pk, ring.sequence)
    page = cache.get(key)
    if page is None:
        context = {"ring": ring, "parts": parts_of(ring), "now": now_in(ring), "language": get_language()}
        page = render_to_string("ring/board.html", context)
        cache.set(key, page, KEPT_SECONDS)
    return HttpResponse(page)


def parts_of(ring: Ring) -> list[tuple[str, list[dict[str, Any]]]]:
    """What is judged now first, then what is signed, the latest on top, then what is to come; empty parts left out."""
    classes = classes_on(ring)
    by_state = {state: [one for one in classes if one["state"] == state] for state in PARTS}
    by_state["signed"].sort(key=lambda one: one["signed_at"], reverse=True)
    return [(PARTS[state], found) for state, found in by_state.items() if found]


def classes_on(ring: Ring) -> list[dict[str, Any]]:
    """The classes of the ring with dogs in them, in their order, each with its state and its signed places."""
    found = classes_in(ring).filter(entries__state=Entry.State.ENTERED).distinct()
    classes = found.select_related("show_breed__show").order_by("day_now", "show_breed_id", "-sex", "order", "id")
    cards = {sheet.show_class_id: sheet for sheet in Sheet.objects.filter(show_class__in=found)}
    entries = Entry.objects.filter(show_class__in=found, state=Entry.State.ENTERED)
    numbers = dict(entries.values_list("pk", "number"))
    touched = set(Sheet.objects.filter(entry__show_class__in=found).values_list("entry__show_class_id", flat=True))
    return [_class_on(one, cards.get(one.pk), numbers, one.pk in touched) for one in classes]


def _class_on(one: ShowClass, card: Sheet | None, numbers: dict[int, int | None], is_touched: bool) -> dict[str, Any]:
    signed = card.signed if card else None
    grades = {grade.code: grade_name(grade) for grade in rules_of(one.show_breed.show).grades_for(one.code)}
    placed = [
        {"number": numbers.get(int(key)), "grade": grades.get(signed.get(f"grade.{key}", ""), "")}
        for key in (signed or {}).get("places", [])
        if signed is not None
    ]
    rule = class_name(rules_of(one.show_breed.show).class_rule(one.code))
    title = gettext("{breed}, {sex}, {name} class").format(
        breed=breed_said(one.show_breed), sex=SEXES[one.sex], name=rule
    )
    state = "signed" if signed is not None else "being judged" if card or is_touched else "to come"
    return {
        "title": title,
        "state": state,
        "signed_at": card and card.signed_at,
        "placed": placed,
    }


def now_in(ring: Ring) -> int | None:
    """The number of the dog that was written on last."""
    latest = (
        Edit.objects.filter(ring=ring, sheet__startswith="entry:").order_by("-sequence").values_list("sheet", flat=True)
    )
    keys = [key.partition(":")[2] for key in latest[:LOOKED_AT]]
    found = Entry.objects.filter(pk__in=[int(key) for key in keys if key.isdecimal()]).values_list("pk", "number")
    numbers = dict(found)
    return next((numbers[int(key)] for key in keys if key.isdecimal() and int(key) in numbers), None)
