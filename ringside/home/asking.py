"""Asking for a fact to be corrected, and answering."""

from django.db import transaction
from django.http import Http404
from django.utils import timezone

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.entries.models import Entry
from ringside.entries.own import owns
from ringside.home.models import CorrectionRequest
from ringside.people.models import Account
from ringside.shows.access import require
from ringside.shows.models import Show

MOST_OPEN = 5


@transaction.atomic
def ask_correction(*, by: Account, entry: Entry, kind: str, text: str) -> CorrectionRequest:
    """A request that the show's office sees; nothing is changed by it."""
    if not owns(by, entry.dog):
        raise Http404
    if CorrectionRequest.objects.filter(entry=entry, closed_at=None).count() >= MOST_OPEN:
        raise NotNow("The office has several requests about this entry already. Wait for its answer.")
    made = CorrectionRequest.objects.create(
        entry=entry, kind=CorrectionRequest.Kind(kind), text=text.strip(), asked_by=by
    )
    record(who=by, doing="ask-correction", show_id=entry.show_id, about=f"entry:{entry.pk}", kind=kind)
    return made


@transaction.atomic
def answer_request(*, by: Account, request: CorrectionRequest, answer: str) -> None:
    """Closes the request with the office's answer, which its owner reads beside the critique."""
    require(by, request.entry.show, "correct-results")
    if not answer.strip():
        raise NotNow("Write the answer: the owner reads it.")
    found = CorrectionRequest.objects.select_for_update().get(pk=request.pk)
    if found.closed_at:
        raise NotNow("This request is answered already.")
    CorrectionRequest.objects.filter(pk=request.pk).update(
        answer=answer.strip(), closed_at=timezone.now(), closed_by=by
    )
    show_id, about = request.entry.show_id, f"entry:{request.entry_id}"
    record(who=by, doing="answer-correction-request", show_id=show_id, about=about, request=request.pk)


def requests_of(show: Show) -> list[CorrectionRequest]:
    """Open ones first, the oldest of them on top; then the answered, the newest on top."""
    found = CorrectionRequest.objects.filter(entry__show=show).select_related("entry__dog", "entry__show_class")
    is_open = list(found.filter(closed_at=None).order_by("asked_at", "id"))
    return [*is_open, *found.filter(closed_at__isnull=False).order_by("-closed_at", "-id")]


def open_requests(show: Show) -> int:
    return CorrectionRequest.objects.filter(entry__show=show, closed_at=None).count()
