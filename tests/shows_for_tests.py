"""A small show for tests: two breeds, two rings, a judge each, dogs in two classes. Everybody is invented."""

from dataclasses import dataclass
from datetime import date

from ringside.dogs.models import Dog, Ownership
from ringside.entries.models import Entry
from ringside.people.actions import person_for
from ringside.people.models import Account, Person
from ringside.shows.models import Ring, Role, Show, ShowBreed, ShowClass

FIRST_DAY = date(2026, 6, 13)


@dataclass(frozen=True)
class SmallShow:
    show: Show
    ring: Ring
    other_ring: Ring
    show_class: ShowClass
    other_class: ShowClass
    entries: tuple[Entry, ...]
    other_entry: Entry
    accounts: dict[str, Account]


def small_show() -> SmallShow:
    show = Show.objects.create(slug="small", name="Small Show", rules="fci", first_day=FIRST_DAY, last_day=FIRST_DAY)
    judge, other_judge = _person("judge"), _person("other-judge")
    ring, other_ring = (Ring.objects.create(show=show, name=name) for name in "12")
    boxer = ShowBreed.objects.create(show=show, breed="boxer", judge=judge, ring=ring, day=FIRST_DAY)
    hovawart = ShowBreed.objects.create(show=show, breed="hovawart", judge=other_judge, ring=other_ring, day=FIRST_DAY)
    classes = [ShowClass.objects.create(show_breed=breed, sex="dog", code="open") for breed in (boxer, hovawart)]
    owners = [_person(name) for name in ("ada", "ben", "cleo")]
    entries = tuple(_entry(classes[0], number, owner) for number, owner in enumerate(owners, 1))
    accounts = {name: _account(name) for name in ("secretary", "assistant", "steward", "writer", "stranger")}
    accounts |= {person.name: person.account for person in (judge, other_judge, *owners)}
    for name, kind in [(n, n) for n in ("secretary", "assistant", "steward", "writer", "judge")] + [
        ("other-judge", "judge")
    ]:
        Role.objects.create(show=show, account=accounts[name], kind=kind)
    return SmallShow(
        show, ring, other_ring, classes[0], classes[1], entries, _entry(classes[1], 4, owners[0]), accounts
    )


def _person(name: str) -> Person:
    return person_for(name=name, email=f"{name}@small.example")


def _account(name: str) -> Account:
    return Account.objects.create_user(f"{name}@small.example")


def _entry(show_class: ShowClass, number: int, owner: Person) -> Entry:
    dog = Dog.objects.create(
        name=f"Dog {number}", breed=show_class.show_breed.breed, sex="dog", born=date(2022, 5, number)
    )
    Ownership.objects.create(dog=dog, person=owner)
    return Entry.objects.create(show=show_class.show_breed.show, show_class=show_class, dog=dog, number=number)
