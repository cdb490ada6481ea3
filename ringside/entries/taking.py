"""Makes rows of checked lines: owners, dogs, what they hold, classes, entries; inside an action's transaction."""

from collections.abc import Sequence
from typing import Any

from ringside.dogs.models import Certificate, Dog, Ownership, Title
from ringside.entries.checking import CheckedLine, Wanted
from ringside.entries.models import Entry
from ringside.entries.reading.words import plain
from ringside.people.actions import person_for
from ringside.people.models import Person
from ringside.shows.appointing import with_parts_of
from ringside.shows.models import Show, ShowBreed, ShowClass
from scoring.rules.rulebook import SEXES, RuleBook

# What a line may add to a dog on record, where the record has nothing.
ADDED = ("call_name", "variety", "studbook", "chip", "sire", "dam", "breeder")
BATCH = 500
ENTERED = Entry.State.ENTERED


def enter(show: Show, book: RuleBook, lines: Sequence[CheckedLine]) -> list[Entry]:
    """One entry for each line, in their order."""
    dogs = _dogs(lines)
    people = _people(lines)
    _join(Ownership, [{"dog": dog, "person": person} for dog, person in zip(dogs, people, strict=True)])
    _join(Title, _held(lines, dogs, "titles"))
    _join(Certificate, _held(lines, dogs, "certificates"))
    classes = Classes(show, book)
    back = _withdrawn(show, dogs)
    entries = []
    for line, dog in zip(lines, dogs, strict=True):
        show_class = classes.of(line.values)
        entry = back.get((dog.pk, show_class.pk)) or Entry(show=show, dog=dog, show_class=show_class)
        entry.handler = line.values.handler
        entries.append(entry)
    Entry.objects.bulk_create([entry for entry in entries if not entry.pk], batch_size=BATCH)
    again = [entry for entry in back.values() if entry in entries]
    Entry.objects.bulk_update(again, ["state", "handler"], batch_size=BATCH)
    return entries


def _withdrawn(show: Show, dogs: Sequence[Dog]) -> dict[tuple[int, int], Entry]:
    """The withdrawn entries of dogs on record by dog and class: entered again, they come back."""
    found: dict[tuple[int, int], Entry] = {}
    ids = [dog.pk for dog in dogs]
    for at in range(0, len(ids), BATCH):
        some = Entry.objects.filter(show=show, dog__in=ids[at : at + BATCH], state=Entry.State.WITHDRAWN)
        found |= {(entry.dog_id, entry.show_class_id): entry for entry in some}
    for entry in found.values():
        entry.state = ENTERED
    return found


def place(show: Show, book: RuleBook, dog: Dog, codes: Sequence[str], handler: str = "") -> list[Entry]:
    """Entries of a dog on record in these classes; what it has in others moves into them, and the rest is withdrawn.

    Moving keeps what belongs to an entry, such as a payment.
    """
    classes = Classes(show, book)
    wanted = [classes.of(Wanted(breed=dog.breed, variety=dog.variety, sex=dog.sex, class_code=code)) for code in codes]
    has = {entry.show_class_id: entry for entry in Entry.objects.filter(show=show, dog=dog)}
    leaving = [entry for key, entry in has.items() if entry.state == ENTERED and key not in {one.pk for one in wanted}]
    for show_class in wanted:
        entry = has.get(show_class.pk)
        if entry is None:
            entry = leaving.pop() if leaving else Entry(show=show, dog=dog)
        entry.show_class, entry.state, entry.handler = show_class, ENTERED, handler
        entry.save()
    for entry in leaving:
        entry.state = Entry.State.WITHDRAWN
        entry.save(update_fields=["state"])
    return list(Entry.objects.filter(show=show, dog=dog, state=ENTERED).select_related("show_class").order_by("id"))


def _dogs(lines: Sequence[CheckedLine]) -> list[Dog]:
    """The dog of each line: the one on record, or a new one; two lines of one dog share it."""
    on_record = Dog.objects.in_bulk([line.dog_id for line in lines if line.dog_id])
    new: dict[tuple[Any, ...], Dog] = {}
    found = []
    for line in lines:
        dog = on_record.get(line.dog_id) if line.dog_id else new.setdefault(_identity(line.values), _dog(line.values))
        if line.dog_id:
            _add_to(dog, line.values)
        found.append(dog)
    Dog.objects.bulk_create(new.values(), batch_size=BATCH)
    return found


def _identity(values: Wanted) -> tuple[Any, ...]:
    return plain(values.name), values.breed, values.born, values.chip


def _dog(values: Wanted) -> Dog:
    fields = {field: getattr(values, field) for field in (*ADDED, "name", "breed", "sex", "born", "neutered")}
    return Dog(**fields)


def _add_to(dog: Dog, values: Wanted) -> None:
    """Fills the record's gaps; what the record has is changed on the dog's own page only."""
    gaps = [field for field in ADDED if getattr(values, field) and not getattr(dog, field)]
    for field in gaps:
        setattr(dog, field, getattr(values, field))
    if values.neutered and not dog.neutered:
        dog.neutered = True
        gaps.append("neutered")
    if gaps:
        dog.save(update_fields=gaps)


def _people(lines: Sequence[CheckedLine]) -> list[Person]:
    known: dict[tuple[str, str], Person] = {}
    for line in lines:
        key = (line.values.owner, line.values.email.lower())
        if key not in known:
            known[key] = person_for(name=key[0], email=key[1])
    return [known[line.values.owner, line.values.email.lower()] for line in lines]


def _held(lines: Sequence[CheckedLine], dogs: Sequence[Dog], kind: str) -> list[dict[str, Any]]:
    return [
        {"dog": dog, "code": code} for line, dog in zip(lines, dogs, strict=True) for code in getattr(line.values, kind)
    ]


def _join(model: Any, rows: Sequence[dict[str, Any]]) -> None:
    model.objects.bulk_create([model(**row) for row in rows], batch_size=BATCH, ignore_conflicts=True)


class Classes:
    """The show's classes by what they are, made where they are missing, in the rules' order: dogs, then bitches."""

    def __init__(self, show: Show, book: RuleBook) -> None:
        self.show, self.book = show, book
        self.breeds = {(breed.breed, breed.variety): breed for breed in ShowBreed.objects.filter(show=show)}
        classes = ShowClass.objects.filter(show_breed__show=show)
        self.classes = {(one.show_breed_id, one.sex, one.code): one for one in classes}

    def of(self, values: Wanted) -> ShowClass:
        breed = self.breeds.get((values.breed, values.variety)) or self._new_breed(values)
        return self.classes.get((breed.pk, values.sex, values.class_code)) or self._new_class(breed, values)

    def _new_breed(self, values: Wanted) -> ShowBreed:
        """Judged with its breed and in its parts, until the office appoints it apart."""
        whole = self.breeds.get((values.breed, ""))
        told = {"judge_id": whole.judge_id, "ring_id": whole.ring_id, "day": whole.day} if whole else {}
        made = ShowBreed.objects.create(show=self.show, breed=values.breed, variety=values.variety, **told)
        if whole:
            with_parts_of(whole, made)
        self.breeds[values.breed, values.variety] = made
        return made

    def _new_class(self, breed: ShowBreed, values: Wanted) -> ShowClass:
        order = class_order(self.book, values.sex, values.class_code)
        made = ShowClass.objects.create(show_breed=breed, sex=values.sex, code=values.class_code, order=order)
        self.classes[breed.pk, values.sex, values.class_code] = made
        return made


def class_order(book: RuleBook, sex: Any, code: str) -> int:
    """The class's place in its breed, from 1: all classes of dogs in the rules' order, then all of bitches."""
    return SEXES.index(sex) * len(book.class_order) + book.class_order.index(code) + 1
