"""What may be done with a photo: kept with its marks, marked again, shared, withdrawn, deleted."""

import secrets
import uuid
from collections.abc import Mapping
from datetime import date

from django.core.files.base import ContentFile
from django.db import transaction

from ringside.core.audit import record
from ringside.core.denied import Denied
from ringside.core.intake import take
from ringside.dogs.models import Dog
from ringside.entries.consents.actions import agree_to_link, withdraw_link
from ringside.entries.models import Consent, Entry
from ringside.people.models import Account
from ringside.photos.access import is_finished, reader_of
from ringside.photos.intake import PHOTO
from ringside.photos.measured import LEAST_SD_PX, click_sd_px, measured
from ringside.photos.models import Photo, Steadiness
from ringside.photos.told import Told
from ringside.ring.access import Worker
from ringside.shows.may import may
from ringside.shows.models import Ring
from scoring.bad_input import BadInput
from scoring.measuring.photo import Place
from scoring.measuring.repeats import own_click_sd

NOT_UNDERSTOOD = 422
# One account cannot fill the disk; a dog followed once a week for five years stays below. Ours, no source.
MOST_OF_A_DOG = 300


@transaction.atomic
def keep_photo(*, by: Account, dog: Dog, public_id: uuid.UUID, told: Told, content: bytes | None) -> Photo:
    """Keeps a photo under the id that its device gave it, with its marks; the same id again only marks it again."""
    _require_owner(by, dog)
    photo = _photo(by, dog, public_id, content, None)
    photo.entry = _entry_on(dog, told.taken_on)
    _mark(photo, by, told)
    photo.save()
    record(who=by, doing="mark-photo", about=f"photo:{photo.public_id}", landmarks=len(told.landmarks))
    return photo


@transaction.atomic
def keep_ring_photo(*, worker: Worker, entry: Entry, public_id: uuid.UUID, told: Told, content: bytes | None) -> Photo:
    """Keeps a photo that was taken in the ring, under the dog's entry; a paired tablet has no account of its own."""
    _require_ring(worker, entry)
    photo = _photo(worker.account, entry.dog, public_id, content, worker.ring)
    photo.entry = entry
    _mark(photo, worker.account, told)
    photo.save()
    _record_ring(worker, "mark-photo", photo, landmarks=len(told.landmarks))
    return photo


@transaction.atomic
def delete_ring_photo(*, worker: Worker, photo: Photo) -> None:
    """Those who work at the ring take back what was taken there, until the breed is finished."""
    if photo.entry is None or photo.ring_id != worker.ring.pk or is_finished(photo.entry):
        raise Denied("The breed is finished: only the dog's owner may delete its photos now.")
    _require_ring(worker, photo.entry)
    _record_ring(worker, "delete-photo", photo)
    _delete(photo)


def _require_ring(worker: Worker, entry: Entry) -> None:
    if not may(worker.roles, "take-photos"):
        raise Denied("Only those who judge, steward or write in the ring take photos there.")
    if entry.show_class.appointed.ring != worker.ring:
        raise Denied("This dog is shown in another ring: take the photo there.")


def _record_ring(worker: Worker, doing: str, photo: Photo, **detail: int) -> None:
    pairing = worker.pairing and worker.pairing.pk
    record(
        who=worker.account, doing=doing, show_id=worker.ring.show_id, about=f"photo:{photo.public_id}",
        pairing=pairing, **detail,
    )  # fmt: skip


def _photo(by: Account | None, dog: Dog, public_id: uuid.UUID, content: bytes | None, ring: Ring | None) -> Photo:
    """The photo kept under this id already, or a new one; never one of another dog or from elsewhere."""
    photo = Photo.objects.select_for_update(of=("self",)).select_related("dog").filter(public_id=public_id).first()
    if photo is None:
        photo = _new_photo(by, dog, public_id, content)
        photo.ring = ring
    elif photo.dog_id != dog.pk:
        raise Denied("This photo is kept under another dog already: take it again.")
    elif photo.ring != ring:
        raise Denied("This photo was taken in the ring: only those who work there mark it.")
    return photo


def _new_photo(by: Account | None, dog: Dog, public_id: uuid.UUID, content: bytes | None) -> Photo:
    if content is None:
        raise Denied("The picture itself has not come: send the photo again.", NOT_UNDERSTOOD)
    if Photo.objects.filter(dog=dog).count() >= MOST_OF_A_DOG:
        raise Denied("This dog has {most} photos already: delete one that is no longer needed.", most=MOST_OF_A_DOG)
    taken = take(content, PHOTO)
    photo = Photo(public_id=public_id, dog=dog, width=taken.width, height=taken.height, uploaded_by=by)
    photo.file.save("", ContentFile(taken.content), save=False)
    return photo


def _mark(photo: Photo, by: Account | None, told: Told) -> None:
    if told.image != (photo.width, photo.height):
        raise Denied("The points were set on a picture of another size: mark the photo again.", NOT_UNDERSTOOD)
    photo.view, photo.taken_on, photo.withers_height_cm = told.view, told.taken_on, told.withers_height_cm
    photo.landmarks, photo.ground = dict(told.landmarks), told.ground
    photo.click_sd_px = click_sd_px(_steadiness(by, photo.width, told), photo.width)
    try:
        photo.measured = measured(photo)
    except BadInput as error:
        raise Denied("The marks were not understood: {error}", NOT_UNDERSTOOD, error=error) from None


def _entry_on(dog: Dog, day: date | None) -> Entry | None:
    """The entry of the dog in a show of that day."""
    if day is None:
        return None
    shown = Entry.objects.filter(dog=dog, show__first_day__lte=day, show__last_day__gte=day)
    return shown.order_by("id").first()


def _steadiness(by: Account | None, width: int, told: Told) -> Steadiness | None:
    """How steadily this person clicks: found anew where the landmarks were marked twice, else as it is known.

    A paired tablet is nobody in particular, so that its two markings count for the one photo.
    """
    own = own_click_sd(_places(told.landmarks), told.again) if told.again else None
    if own is None:
        return Steadiness.objects.filter(account=by).first() if by else None
    found = {"sd_of_width": max(own.sd_px, LEAST_SD_PX) / width, "landmarks": own.landmarks}
    if by is None:
        return Steadiness(**found)
    return Steadiness.objects.update_or_create(account=by, defaults=found)[0]


def _places(landmarks: Mapping[str, list[float]]) -> dict[str, Place]:
    return {name: (x, y) for name, (x, y) in landmarks.items()}


@transaction.atomic
def delete_photo(*, by: Account, photo: Photo) -> None:
    _require_owner(by, photo.dog)
    record(who=by, doing="delete-photo", about=f"photo:{photo.public_id}")
    withdraw_link(who=by, consent=photo.consent)
    _delete(photo)


def _delete(photo: Photo) -> None:
    file = photo.file
    photo.delete()
    transaction.on_commit(lambda: file.storage.delete(file.name))


@transaction.atomic
def share_photo(*, by: Account, photo: Photo) -> str:
    """The token of the page that anybody may read who is given its address; the same until it is withdrawn."""
    _require_owner(by, photo.dog)
    if photo.share_token is None:
        photo.share_token = secrets.token_urlsafe(32)
        show = photo.entry.show if photo.entry else None
        photo.consent = agree_to_link(by=by, dog=photo.dog, what=Consent.What.PHOTO_LINK, show=show)
        photo.save(update_fields=["share_token", "consent"])
        record(who=by, doing="share-photo", about=f"photo:{photo.public_id}")
    return photo.share_token


@transaction.atomic
def withdraw_share(*, by: Account, photo: Photo) -> None:
    _require_owner(by, photo.dog)
    end_share(by=by, photo=photo)


@transaction.atomic
def end_share(*, by: Account, photo: Photo) -> None:
    """Called by what has asked whether this person may: as an owner, or as who agreed to it."""
    withdraw_link(who=by, consent=photo.consent)
    photo.share_token = photo.consent = None
    photo.save(update_fields=["share_token", "consent"])
    record(who=by, doing="withdraw-photo", about=f"photo:{photo.public_id}")


def _require_owner(by: Account, dog: Dog) -> None:
    reader = reader_of(by, dog)
    if reader is None or not reader.may_change:
        raise Denied("Only the dog's owners may change its photos.")
