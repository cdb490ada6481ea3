"""The only ways by which a page gets a file of entries, one of its lines, or an entry."""

from typing import Any

from django.shortcuts import get_object_or_404

from ringside.entries.models import Entry, EntryFile, EntryLine, EntryRequest
from ringside.shows.access import access_show


def access_file(user: Any, slug: str, file_id: int, doing: str = "take-entries") -> EntryFile:
    show = access_show(user, slug, doing)
    found: EntryFile = get_object_or_404(
        EntryFile.objects.defer("content").select_related("show"), show=show, pk=file_id
    )
    return found


def access_line(user: Any, slug: str, file_id: int, line: int, doing: str = "take-entries") -> EntryLine:
    file = access_file(user, slug, file_id, doing)
    found: EntryLine = get_object_or_404(EntryLine.objects.select_related("entry"), file=file, line=line)
    found.file = file
    return found


def access_entry(user: Any, slug: str, entry_id: int, doing: str = "take-entries") -> Entry:
    show = access_show(user, slug, doing)
    entries = Entry.objects.select_related("show", "dog", "show_class__show_breed").prefetch_related(
        "dog__owners", "dog__titles", "dog__certificates"
    )
    found: Entry = get_object_or_404(entries, show=show, pk=entry_id)
    return found


def access_request(user: Any, slug: str, request_id: int, doing: str = "see-office") -> EntryRequest:
    show = access_show(user, slug, doing)
    found: EntryRequest = get_object_or_404(
        EntryRequest.objects.select_related("show", "dog", "account"), show=show, pk=request_id
    )
    return found
