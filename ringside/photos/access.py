"""The only ways by which a page gets a dog to photograph, or a photo.

The dog's owners change and share; the office of a show where the dog is entered reads. Its judge reads nothing of a dog
before the breed and its awards are signed, but what was photographed in the ring itself; then the catalogue number,
never the name.
"""

import uuid
from dataclasses import dataclass
from typing import Any

from django.db.models import QuerySet
from django.http import Http404
from django.utils.translation import gettext

from ringside.dogs.models import Dog
from ringside.entries.models import Entry
from ringside.people.models import Account
from ringside.photos.models import Photo
from ringside.photos.queries import finished_breeds
from ringside.ring.places import place_of
from ringside.shows.may import MAY
from ringside.shows.models import Ring, Role

OFFICE = MAY["see-office"][1]


@dataclass(frozen=True, slots=True)
class Reader:
    """How somebody may use a dog's photos, and by what name they know the dog."""

    name: str
    may_change: bool = False


def access_dog(user: Any, dog_id: int) -> tuple[Dog, Reader]:
    dog = Dog.objects.filter(pk=dog_id).first()
    reader = reader_of(user, dog) if dog else None
    if dog is None or reader is None:
        raise Http404
    return dog, reader


def own_dog(user: Any, dog_id: int) -> Dog:
    """A dog whose photos this person may add to and change."""
    dog, reader = access_dog(user, dog_id)
    if not reader.may_change:
        raise Http404
    return dog


def access_photo(user: Any, public_id: uuid.UUID) -> tuple[Photo, Reader]:
    photo = Photo.objects.select_related("dog", "entry__show_class").filter(public_id=public_id).first()
    reader = reader_of(user, photo.dog) if photo else None
    if photo is None or reader is None or not is_open(photo):
        raise Http404
    return photo, reader


def is_open(photo: Photo) -> bool:
    """What was taken in a ring stays there until the breed and its awards are signed."""
    return photo.ring_id is None or photo.entry is None or is_finished(photo.entry)


def is_finished(entry: Entry) -> bool:
    return finished_breeds().filter(pk=entry.show_class.show_breed_id).exists()


def access_entry(ring: Ring, entry_id: int) -> Entry:
    """A dog that is shown in this ring."""
    place = place_of(f"entry:{entry_id}")
    if place is None or place.entry is None or place.ring != ring:
        raise Http404
    return place.entry


def access_ring_photo(ring: Ring, public_id: uuid.UUID) -> Photo:
    """What those who work at a ring may read: photos taken there, and of its finished breeds all photos of the day."""
    photo = Photo.objects.select_related("dog", "entry__show_class").filter(public_id=public_id).first()
    if photo is None or photo.entry is None or photo not in ring_photos(ring, photo.entry):
        raise Http404
    return photo


def ring_photos(ring: Ring, entry: Entry) -> QuerySet[Photo]:
    access_entry(ring, entry.pk)
    found = Photo.objects.filter(entry=entry).select_related("dog").order_by("-uploaded_at", "id")
    return found if is_finished(entry) else found.filter(ring=ring)


def own_photo(user: Any, public_id: uuid.UUID) -> Photo:
    photo, reader = access_photo(user, public_id)
    if not reader.may_change:
        raise Http404
    return photo


def shared_photo(token: str) -> Photo:
    photo = Photo.objects.select_related("dog").filter(share_token=token).first()
    if photo is None:
        raise Http404
    return photo


def reader_of(user: Any, dog: Dog) -> Reader | None:
    """None for whoever has nothing to do with the dog."""
    if not isinstance(user, Account):
        return None
    if dog.owners.filter(account=user).exists():
        return Reader(dog.name, may_change=True)
    roles = Role.objects.filter(account=user, show__entries__dog=dog)
    if roles.filter(kind__in=OFFICE).exists():
        return Reader(dog.name)
    judged = roles.filter(kind=Role.Kind.JUDGE).values("show")
    entries = Entry.objects.filter(dog=dog, show__in=judged, show_class__show_breed__in=finished_breeds())
    found = entries.select_related("show_class__show_breed__judge").order_by("id")
    entry = next((one for one in found if _judges(user, one)), None)
    return Reader(number_words(entry)) if entry else None


def number_words(entry: Entry) -> str:
    if entry.number is None:
        return gettext("A dog without a number yet")
    return gettext("Number {number}").format(number=entry.number)


def _judges(user: Account, entry: Entry) -> bool:
    judge = entry.show_class.appointed.judge
    return judge is not None and judge.account_id == user.pk
