"""The only ways by which an exhibitor's page gets a show, or an entry of its own that waits."""

from typing import Any

from django.http import Http404
from django.shortcuts import get_object_or_404

from ringside.entries.models import EntryRequest
from ringside.people.models import Account
from ringside.shows.models import Show


def access_open_show(slug: str) -> Show:
    """A show that takes, will take or took entries on the web; one that is only being set up is nobody's business."""
    found: Show = get_object_or_404(Show, slug=slug, entries_open__isnull=False)
    return found


def access_own_request(user: Any, slug: str, request_id: int) -> EntryRequest:
    if not isinstance(user, Account):
        raise Http404
    found: EntryRequest = get_object_or_404(
        EntryRequest.objects.select_related("show"), show__slug=slug, account=user, pk=request_id
    )
    return found
