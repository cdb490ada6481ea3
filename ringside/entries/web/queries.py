"""What an exhibitor sees of a show: own dogs, what they are entered in, what waits."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from django.db.models import Q
from django.utils.translation import gettext
from django.utils.translation import gettext_noop as _

from ringside.dogs.models import Dog
from ringside.entries.checking import CheckedLine, Dates, Wanted, check_line
from ringside.entries.models import Entry, EntryRequest
from ringside.entries.queries import facts_of
from ringside.entries.reading.cells import clean
from ringside.entries.reading.words import plain
from ringside.people.models import Account, Person
from ringside.shows.books import class_names
from ringside.shows.models import Show, ShowBreed
from ringside.shows.queries import breed_title
from scoring.findings import Finding, refuses, warns
from scoring.standards import loader as standards

ISO = Dates("yyyy-mm-dd")


@dataclass(frozen=True)
class OwnDog:
    """One of a person's dogs at a show: `entries` stand, `requests` wait or were decided, the last one sent first."""

    dog: Dog
    breed: str
    entries: tuple[Entry, ...]
    requests: tuple[EntryRequest, ...]


def dogs_of(account: Account, show: Show) -> list[OwnDog]:
    dogs = list(Dog.objects.filter(owners__account=account).distinct().order_by("name", "id"))
    entries = Entry.objects.filter(show=show, dog__in=dogs, state=Entry.State.ENTERED).select_related("show_class")
    sent = EntryRequest.objects.filter(show=show, dog__in=dogs).exclude(state=EntryRequest.State.TAKEN_BACK)
    requests = sent.order_by("-asked_at", "-id")
    return [
        OwnDog(
            dog,
            gettext(standards.load(dog.breed).name),
            tuple(one for one in entries if one.dog_id == dog.pk),
            tuple(one for one in requests if one.dog_id == dog.pk),
        )
        for dog in dogs
    ]


def requests_without_dog(account: Account, show: Show) -> list[EntryRequest]:
    """Entries of a dog that is not among the person's own, because the office asks about it first."""
    found = EntryRequest.objects.filter(show=show, account=account, dog=None)
    return list(found.exclude(state=EntryRequest.State.TAKEN_BACK).order_by("-asked_at", "-id"))


def owner_name(account: Account) -> str:
    """The name under which this person's dogs stand, or nothing where there is none yet."""
    return Person.objects.filter(account=account).order_by("id").values_list("name", flat=True).first() or ""


def check_dog(show: Show, texts: dict[str, str], today: date) -> CheckedLine:
    """What is to be said of a dog's facts, whatever its class."""
    facts = facts_of(show, today)
    line = check_line(1, {field: clean(text) for field, text in texts.items()}, facts, ISO)
    said = tuple(one for one in line.findings if one.facts.get("field") != "class")
    return CheckedLine(line.line, line.values, said)


def same_dogs(values: Wanted, account: Account, but: Dog | None = None) -> list[Finding]:
    """Dogs on record that this may be: an own one, or one of another owner, of which nothing is told."""
    found = []
    for what, condition in _alike(values):
        dogs = Dog.objects.filter(condition).exclude(pk=but.pk if but else None)
        if what == "name":
            dogs = [dog for dog in dogs if plain(dog.name) == plain(values.name)]
        for dog in dogs:
            own = dog.owners.filter(account=account).exists()
            found.append(_same(dog, what, own))
    return found[:1]


def _alike(values: Wanted) -> list[tuple[str, Q]]:
    alike = []
    if values.chip:
        alike.append(("chip", Q(chip=values.chip)))
    if values.born:
        alike.append(("name", Q(breed=values.breed, born=values.born)))
    if values.studbook:
        alike.append(("studbook", Q(breed=values.breed, studbook__iexact=values.studbook)))
    return alike


def _same(dog: Dog, what: str, own: bool) -> Finding:
    if own:
        return refuses("dog-is-yours-already", field="name", name=dog.name)
    words = {"chip": _("microchip"), "name": _("name and date of birth"), "studbook": _("studbook number")}
    return warns("dog-under-another-owner", field=what, what=words[what])


def breeds_judged(show: Show) -> list[dict[str, Any]]:
    """The breeds that have their judge, with day and judge, for the public page."""
    rows = ShowBreed.objects.filter(show=show, judge__isnull=False).select_related("judge").order_by("day", "id")
    told = [{"name": breed_title(row), "judge": row.judge.name if row.judge else "", "day": row.day} for row in rows]
    return sorted(told, key=lambda one: str(one["name"]))


def class_words(show: Show, codes: Sequence[str]) -> str:
    """Classes by name, for a sentence."""
    names = class_names(show)
    return ", ".join(names.get(code, code) for code in codes)
