"""The ring page and the two addresses it speaks with."""

import json
from typing import Any

from django.contrib import messages
from django.contrib.auth.views import redirect_to_login
from django.db import transaction
from django.http import Http404, HttpRequest, HttpResponse, JsonResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.utils.translation import gettext
from django.views.decorators.csrf import ensure_csrf_cookie
from django.views.decorators.gzip import gzip_page
from django.views.decorators.http import require_GET, require_http_methods, require_POST

from ringside.core.denied import Denied, NotNow
from ringside.core.packing import packed
from ringside.core.sentences import SENTENCES
from ringside.ring import actions, awards, held, queries, tablets
from ringside.ring.access import SESSION_KEY, access_worker
from ringside.ring.adopting import adopt
from ringside.ring.advice import CODES, advice_on
from ringside.ring.shell import words
from ringside.shows.appointed import breeds_awarded_in, classes_in
from ringside.shows.models import Ring, ShowClass


@require_GET
@ensure_csrf_cookie
def page(request: HttpRequest, ring_id: int) -> HttpResponse:
    try:
        access_worker(request, ring_id)
    except Denied as denied:
        if denied.status != 401:
            raise
        return _let_in_again(request)
    return render(request, "ring/ring.html", {"words": words()})


def _let_in_again(request: HttpRequest) -> HttpResponse:
    """Whoever was paired pairs again, whoever signed in signs in again."""
    if SESSION_KEY not in request.session:
        return redirect_to_login(request.get_full_path())
    told = gettext("This tablet's pairing has ended. What is written on it is kept: pair it again to send it.")
    messages.info(request, told)
    return redirect("ring:pair")


@require_GET
@packed
def day(request: HttpRequest, ring_id: int) -> HttpResponse:
    """What the page shows of the day, and the words of findings."""
    worker = access_worker(request, ring_id)
    ring = worker.ring
    adopt(ring=ring)
    return JsonResponse(
        {
            **queries.day_of(ring),
            "roles": sorted(worker.roles),
            "sentences": {code: SENTENCES[code] for code in (*CODES, *awards.CODES) if code in SENTENCES},
        }
    )


# The page is kept without a token; the cookie that holds it comes with the news.
@require_http_methods(["GET", "POST"])
@ensure_csrf_cookie
@gzip_page
def edits(request: HttpRequest, ring_id: int) -> JsonResponse:
    """POST takes a batch and answers per edit; both tell what is new since the sequence the tablet has."""
    worker = access_worker(request, ring_id)
    answers: list[dict[str, str]] = []
    since = request.GET.get("since", "0")
    if request.method == "POST":
        batch = _batch(request)
        since = batch.get("since", 0)
        with transaction.atomic():  # one wait for the disk
            taken = actions.take_edits(worker=worker, raw_edits=batch["edits"])
            tablets.note(worker=worker, device=batch.get("device"), unsent=_whole(batch.get("unsent", 0)))
        answers = [answer.as_json() for answer in taken]
    else:
        tablets.see(worker=worker, device=request.GET.get("device"))
    new = queries.edits_since(worker.ring, _whole(since))
    sequence = max([_whole(since), *(edit["seq"] for edit in new)])
    return JsonResponse({"answers": answers, "edits": new, "sequence": sequence})


@require_GET
def advice(request: HttpRequest, ring_id: int, class_id: int) -> JsonResponse:
    worker = access_worker(request, ring_id)
    return JsonResponse(advice_on(_class_in(worker.ring, class_id)))


@require_POST
def decide_held(request: HttpRequest, ring_id: int, edit_id: str) -> JsonResponse:
    """The judge's word on an edit that was held: it counts, or it is left out."""
    worker = access_worker(request, ring_id, "decide-held-edits")
    edit = held.held_by(worker.ring, edit_id)
    if edit is None:
        raise NotNow("This was decided already.")
    decide = held.take_in if request.POST.get("counts") == "yes" else held.leave_out
    decide(worker=worker, edit=edit)
    return JsonResponse({"decided": edit.pk})


@require_GET
def candidates(request: HttpRequest, ring_id: int, breed_id: int) -> JsonResponse:
    """Who competes for each award of a breed, from the class cards signed and the awards given so far."""
    worker = access_worker(request, ring_id)
    breed = get_object_or_404(breeds_awarded_in(worker.ring).select_related("show"), pk=breed_id)
    [found] = awards.cards_of([breed])
    return JsonResponse(awards.candidates_json(found))


def _class_in(ring: Ring, class_id: int) -> ShowClass:
    found = classes_in(ring).select_related("show_breed__show").filter(pk=class_id).first()
    if found is None:
        raise Http404
    return found


def _batch(request: HttpRequest) -> dict[str, Any]:
    try:
        batch = json.loads(request.body)
    except (ValueError, RecursionError):
        raise Denied("The batch is not JSON; nothing was taken from it.", status=400) from None
    if not isinstance(batch, dict) or not isinstance(batch.get("edits"), list):
        raise Denied('Send {"edits": [...], "since": number}; nothing was taken from this batch.', status=400)
    if len(batch["edits"]) > actions.MOST_EDITS:
        raise Denied(
            "Send at most {most} edits at once; nothing was taken from this batch.", status=413, most=actions.MOST_EDITS
        )
    return batch


def _whole(value: Any) -> int:
    """The sequence a tablet claims to have; anything that is no number starts it from the beginning."""
    text = str(value)
    return int(text) if text.isdecimal() and len(text) <= 15 else 0
