"""Where a device sends a photo with its marks; safe to send again."""

import hashlib
import uuid

from django.http import HttpRequest, HttpResponse, JsonResponse
from django.urls import reverse
from django.utils.timezone import localdate
from django.views.decorators.http import require_POST

from ringside.core.denied import Denied
from ringside.core.intake import too_many_bytes
from ringside.core.receiving import ByteLimit, takes_file
from ringside.core.sentences import sentence
from ringside.people.models import Account
from ringside.photos import actions
from ringside.photos.access import access_entry, own_dog
from ringside.photos.intake import PHOTO
from ringside.photos.models import Photo
from ringside.photos.told import read_told
from ringside.ring.access import access_worker


@takes_file(PHOTO.most_bytes)
@require_POST
def send(request: HttpRequest, dog_id: int, public_id: uuid.UUID, limit: ByteLimit) -> HttpResponse:
    if not isinstance(request.user, Account):
        raise Denied("Sign in again; the photo and its marks are kept on this device.", status=401)
    text, content = _sent(request, limit)
    photo = actions.keep_photo(
        by=request.user,
        dog=own_dog(request.user, dog_id),
        public_id=public_id,
        told=read_told(text, localdate()),
        content=content,
    )
    return _kept(photo, text, reverse("photos:reading", args=[photo.public_id]))


@takes_file(PHOTO.most_bytes)
@require_POST
def send_from_ring(
    request: HttpRequest, ring_id: int, entry_id: int, photo_id: uuid.UUID, limit: ByteLimit
) -> HttpResponse:
    worker = access_worker(request, ring_id, "take-photos")
    text, content = _sent(request, limit)
    photo = actions.keep_ring_photo(
        worker=worker,
        entry=access_entry(worker.ring, entry_id),
        public_id=photo_id,
        told=read_told(text, localdate()),
        content=content,
    )
    return _kept(photo, text, reverse("ring-photos:reading", args=[ring_id, photo.public_id]))


def _sent(request: HttpRequest, limit: ByteLimit) -> tuple[str, bytes | None]:
    """What a device tells of the photo, and the picture where it comes along."""
    text, file = request.POST.get("told", ""), request.FILES.get("photo")
    if limit.is_over:
        raise Denied(sentence(too_many_bytes(PHOTO)), status=413)
    return text, file.read() if file else None


def _kept(photo: Photo, text: str, address: str) -> JsonResponse:
    """A device forgets what it holds only when an answer names this photo and this very text."""
    digest = hashlib.sha256(text.encode()).hexdigest()
    return JsonResponse({"id": str(photo.public_id), "digest": digest, "address": address})
