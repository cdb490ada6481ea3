"""Where a sheet's key leads: the entry, class or breed it is about, and the ring it is judged in."""

from dataclasses import dataclass

from ringside.entries.models import Entry
from ringside.shows.models import Ring, ShowBreed, ShowClass
from scoring.sheet_fields import split_sheet


@dataclass(frozen=True, slots=True)
class Place:
    """One sheet's subject. `show_class` is None for a breed's award card, `entry` for all but a dog's sheet."""

    key: str
    show_breed: ShowBreed
    show_class: ShowClass | None = None
    entry: Entry | None = None

    @property
    def ring(self) -> Ring | None:
        return self.show_breed.ring


def place_of(key: str) -> Place | None:
    """The subject of a sheet's key; None where there is no such entry, class or breed."""
    card, subject = split_sheet(key)
    if not subject.isdecimal() or len(subject) > 18:
        return None
    return {"entry": _of_entry, "class": _of_class, "breed": _of_breed}[card](key, int(subject))


def _of_entry(key: str, entry_id: int) -> Place | None:
    entry = Entry.objects.select_related("dog", "show_class__show_breed__ring__show").filter(pk=entry_id).first()
    return entry and Place(key, entry.show_class.show_breed, entry.show_class, entry)


def _of_class(key: str, class_id: int) -> Place | None:
    found = ShowClass.objects.select_related("show_breed__ring__show").filter(pk=class_id).first()
    return found and Place(key, found.show_breed, found)


def _of_breed(key: str, breed_id: int) -> Place | None:
    found = ShowBreed.objects.select_related("ring__show").filter(pk=breed_id).first()
    return found and Place(key, found)
