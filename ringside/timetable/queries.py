"""What begins when: the breeds and parts of a show with their planned times, and the time of one class."""

from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, time

from ringside.entries.models import Entry
from ringside.shows.appointed import Part, appointments_of, is_undivided, parts_of
from ringside.shows.books import part_words, rules_of
from ringside.shows.models import Show, ShowBreed, ShowClass
from ringside.shows.queries import breed_title
from ringside.timetable.models import StartTime

Key = tuple[int, str, str]  # the breed's id, sex, class code


@dataclass(frozen=True, slots=True)
class Slot:
    """A breed or a part of it as the plan has it. `at` is None where no time is planned yet.

    `dogs` are those entered; best of breed of a divided breed has none of its own.
    """

    breed: ShowBreed
    part: Part
    title: str
    dogs: int
    at: time | None

    @property
    def key(self) -> Key:
        return self.breed.pk, self.part.sex, self.part.code

    @property
    def where(self) -> tuple[date, str]:
        """Day and ring, for sorting; what is not appointed yet comes last."""
        told = self.part.appointed
        return told.day or date.max, told.ring.name if told.ring else "\U0010ffff"


def slots_of(show: Show, with_empty: bool = False) -> list[Slot]:
    """What begins in each ring on each day, in planned order; what has no time yet after that, as the office has it.

    Breeds and parts without a dog are left out; `with_empty` has them too, as they are appointed before entries come.
    """
    dogs: dict[int, Counter[tuple[str, str]]] = defaultdict(Counter)
    entered = Entry.objects.filter(show=show, state=Entry.State.ENTERED)
    for breed_id, *part in entered.values_list("show_class__show_breed_id", "show_class__sex", "show_class__code"):
        dogs[breed_id][part[0], part[1]] += 1
    times = Starts(show).times
    breeds = ShowBreed.objects.filter(show=show).select_related("show", "judge", "ring", "awards_judged_by")
    found = [
        slot
        for breed in breeds.prefetch_related(appointments_of()).order_by("id")
        for slot in _slots(breed, dogs[breed.pk], times, with_empty)
    ]
    return sorted(found, key=lambda slot: (*slot.where, slot.at or time.max))


def _slots(
    breed: ShowBreed, counts: Mapping[tuple[str, str], int], times: Mapping[Key, time], with_empty: bool
) -> Iterator[Slot]:
    """`counts` are the dogs of each class by sex and code."""
    if not counts and not with_empty:
        return
    parts, book, name = parts_of(breed), rules_of(breed.show), breed_title(breed)
    if is_undivided(parts):
        yield Slot(breed, parts[-1], name, sum(counts.values()), times.get((breed.pk, "", "")))
        return
    apart = {(part.sex, part.code) for part in parts if part.code}
    for part in parts:
        of_sex = sum(n for (sex, code), n in counts.items() if sex == part.sex and (sex, code) not in apart)
        count = counts.get((part.sex, part.code), 0) if part.code else of_sex
        if count or with_empty or not part.sex:
            title = f"{name}, {part_words(book, part)}"
            yield Slot(breed, part, title, count, times.get((breed.pk, part.sex, part.code)))


class Starts:
    """The planned times of a show, for asking class by class without further queries."""

    def __init__(self, show: Show) -> None:
        planned = StartTime.objects.filter(show_breed__show=show)
        self.times: dict[Key, time] = {(one.show_breed_id, one.sex, one.code): one.at for one in planned}

    def of(self, show_class: ShowClass) -> time | None:
        """When the breed, or the part of it that the class belongs to, begins. Reads the breed's appointments."""
        breed = show_class.show_breed
        if is_undivided(parts_of(breed)):
            return self.times.get((breed.pk, "", ""))
        apart = {(one.sex, one.code) for one in breed.appointments.all() if one.code}
        code = show_class.code if (show_class.sex, show_class.code) in apart else ""
        return self.times.get((breed.pk, show_class.sex, code))
