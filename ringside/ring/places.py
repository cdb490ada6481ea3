"""Where a sheet's key leads: the entry, class or breed it is about, and the ring it is judged in."""

from dataclasses import dataclass

from ringside.entries.models import Entry
from ringside.people.models import Person
from ringside.shows.appointed import appointments_of
from ringside.shows.models import Ring, ShowBreed, ShowClass
from scoring.bad_input import BadInput
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
        return (self.show_class or self.show_breed).appointed.ring

    @property
    def judge(self) -> Person | None:
        """Who is appointed now, whoever signed the class before."""
        part = (self.show_class.sex, self.show_class.code) if self.show_class else ()
        return self.show_breed.appointed_for(*part).judge


def place_of(key: str) -> Place | None:
    """The subject of a sheet's key; None where there is no such entry, class or breed, or no such kind of sheet."""
    try:
        card, subject = split_sheet(key)
    except BadInput:
        return None
    if not subject.isdecimal() or len(subject) > 18:
        return None
    return {"entry": _of_entry, "class": _of_class, "breed": _of_breed}[card](key, int(subject))


def _of_entry(key: str, entry_id: int) -> Place | None:
    breed = "show_class__show_breed__"
    entries = Entry.objects.select_related("dog", f"{breed}ring", f"{breed}judge", f"{breed}show")
    entry = entries.prefetch_related(appointments_of(breed)).filter(pk=entry_id).first()
    return entry and Place(key, entry.show_class.show_breed, entry.show_class, entry)


def _of_class(key: str, class_id: int) -> Place | None:
    classes = ShowClass.objects.select_related("show_breed__ring", "show_breed__judge", "show_breed__show")
    found = classes.prefetch_related(appointments_of("show_breed__")).filter(pk=class_id).first()
    return found and Place(key, found.show_breed, found)


def _of_breed(key: str, breed_id: int) -> Place | None:
    breeds = ShowBreed.objects.select_related("ring", "judge", "show").prefetch_related(appointments_of())
    found = breeds.filter(pk=breed_id).first()
    return found and Place(key, found)
