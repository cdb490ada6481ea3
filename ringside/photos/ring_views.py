"""Photos from the ring: the page that a tablet keeps, what the ring's own photos read, and the mark they propose."""

import uuid
from typing import Any

from django.http import FileResponse, HttpRequest, HttpResponse, JsonResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.cache import cache_control
from django.views.decorators.csrf import ensure_csrf_cookie
from django.views.decorators.http import require_GET, require_POST

from ringside.photos import actions
from ringside.photos.access import access_entry, access_ring_photo, is_finished, number_words, ring_photos
from ringside.photos.bearing import bearings
from ringside.photos.marking import of_any_dog, tongues
from ringside.photos.measured import reading_of
from ringside.photos.models import Photo
from ringside.photos.pages import picture_of, reading_page
from ringside.ring.access import access_worker


@require_GET
@cache_control(no_cache=True)
def shell(request: HttpRequest) -> HttpResponse:
    """The marking page without any ring, dog or person in it: which dog it is stands in its address."""
    return render(request, "photos/ring_mark.html", {"page": {**of_any_dog(), "tongues": tongues()}})


@require_GET
@ensure_csrf_cookie
def mark(request: HttpRequest, ring_id: int) -> HttpResponse:
    access_worker(request, ring_id, "take-photos")
    return shell(request)


@require_GET
def readings(request: HttpRequest, ring_id: int, entry_id: int) -> JsonResponse:
    """What the photos of a dog read beside its marks; before the breed is finished, of this ring's own photos only."""
    worker = access_worker(request, ring_id, "take-photos")
    photos = ring_photos(worker.ring, access_entry(worker.ring, entry_id))
    return JsonResponse({"photos": [_photo_json(photo, ring_id) for photo in photos]})


def _photo_json(photo: Photo, ring_id: int) -> dict[str, Any]:
    rows = [
        {
            "point": one.point, "mark": one.mark, "name": one.row.name, "value": one.row.value,
            "interval": one.row.interval, "reading": one.row.reading, "target": one.row.target,
            "rule": one.row.is_rule_of_thumb,
        }
        for one in bearings(reading_of(photo))
    ]  # fmt: skip
    address = reverse("ring-photos:reading", args=[ring_id, photo.public_id])
    return {"address": address, "view": photo.get_view_display(), "rows": rows}


@require_GET
@ensure_csrf_cookie
def reading(request: HttpRequest, ring_id: int, photo_id: uuid.UUID) -> HttpResponse:
    worker = access_worker(request, ring_id, "take-photos")
    photo = access_ring_photo(worker.ring, photo_id)
    assert photo.entry
    page = reading_page(photo, number_words(photo.entry), reverse("ring-photos:picture", args=[ring_id, photo_id]))
    back = f"{reverse('ring:page', args=[ring_id])}#class={photo.entry.show_class_id}&dog={photo.entry_id}"
    may_delete = photo.ring_id == ring_id and not is_finished(photo.entry)
    page |= {"ring": worker.ring, "back": back, "number": photo.entry.number or "?", "may_delete": may_delete}
    return render(request, "photos/ring_reading.html", page)


@require_GET
def picture(request: HttpRequest, ring_id: int, photo_id: uuid.UUID) -> FileResponse:
    worker = access_worker(request, ring_id, "take-photos")
    return picture_of(access_ring_photo(worker.ring, photo_id))


@require_POST
def delete(request: HttpRequest, ring_id: int, photo_id: uuid.UUID) -> HttpResponse:
    worker = access_worker(request, ring_id, "take-photos")
    actions.delete_ring_photo(worker=worker, photo=access_ring_photo(worker.ring, photo_id))
    return redirect("ring:page", ring_id)
