"""The ring page and the two addresses it speaks with."""

import json
from typing import Any

from django.contrib.auth.views import redirect_to_login
from django.http import Http404, HttpRequest, HttpResponse, JsonResponse
from django.shortcuts import get_object_or_404, render
from django.views.decorators.csrf import ensure_csrf_cookie
from django.views.decorators.gzip import gzip_page
from django.views.decorators.http import require_GET, require_http_methods

from ringside.core.denied import Denied
from ringside.core.sentences import SENTENCES
from ringside.ring import actions, awards, queries, tablets
from ringside.ring.access import access_worker
from ringside.ring.advice import CODES, advice_on
from ringside.shows.models import Ring, ShowBreed, ShowClass


@require_GET
@ensure_csrf_cookie
def page(request: HttpRequest, ring_id: int) -> HttpResponse:
    try:
        access_worker(request, ring_id)
    except Denied as denied:
        if denied.status != 401:
            raise
        return redirect_to_login(request.get_full_path())
    return render(request, "ring/ring.html")


@require_GET
@gzip_page
def day(request: HttpRequest, ring_id: int) -> JsonResponse:
    """What the page shows of the day, and the words of findings."""
    worker = access_worker(request, ring_id)
    ring = worker.ring
    return JsonResponse(
        {
            **queries.day_of(ring),
            "roles": sorted(worker.roles),
            "sentences": {code: SENTENCES[code] for code in (*CODES, *awards.CODES) if code in SENTENCES},
        }
    )


@require_http_methods(["GET", "POST"])
@gzip_page
def edits(request: HttpRequest, ring_id: int) -> JsonResponse:
    """POST takes a batch and answers per edit; both tell what is new since the sequence the tablet has."""
    worker = access_worker(request, ring_id)
    answers: list[dict[str, str]] = []
    since = request.GET.get("since", "0")
    if request.method == "POST":
        batch = _batch(request)
        since = batch.get("since", 0)
        taken = actions.take_edits(worker=worker, raw_edits=batch["edits"])
        answers = [answer.as_json() for answer in taken]
        tablets.note(worker=worker, device=batch.get("device"), unsent=_whole(batch.get("unsent", 0)))
    new = queries.edits_since(worker.ring, _whole(since))
    sequence = max([_whole(since), *(edit["seq"] for edit in new)])
    return JsonResponse({"answers": answers, "edits": new, "sequence": sequence})


@require_GET
def advice(request: HttpRequest, ring_id: int, class_id: int) -> JsonResponse:
    worker = access_worker(request, ring_id)
    return JsonResponse(advice_on(_class_in(worker.ring, class_id)))


@require_GET
def candidates(request: HttpRequest, ring_id: int, breed_id: int) -> JsonResponse:
    """Who competes for each award of a breed, from the class cards signed and the awards given so far."""
    worker = access_worker(request, ring_id)
    breed = get_object_or_404(ShowBreed.objects.select_related("show"), pk=breed_id, ring=worker.ring)
    [found] = awards.cards_of([breed])
    return JsonResponse(awards.candidates_json(found))


def _class_in(ring: Ring, class_id: int) -> ShowClass:
    found = ShowClass.objects.select_related("show_breed__show").filter(pk=class_id, show_breed__ring=ring).first()
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
        raise Denied(f"Send at most {actions.MOST_EDITS} edits at once; nothing was taken from this batch.", status=413)
    return batch


def _whole(value: Any) -> int:
    """The sequence a tablet claims to have; anything that is no number starts it from the beginning."""
    text = str(value)
    return int(text) if text.isdecimal() and len(text) <= 15 else 0
