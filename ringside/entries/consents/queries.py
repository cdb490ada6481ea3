"""Who agreed to what, for the person, the office and the catalogue."""

from collections import defaultdict
from typing import Any

from django.db.models import Q, QuerySet

from ringside.dogs.models import Ownership
from ringside.entries.consents.wording import words_of
from ringside.entries.models import Consent, Entry
from ringside.people.models import Account, Person
from ringside.shows.models import Show

ADDRESS, PUBLIC = Consent.What.CATALOGUE_ADDRESS, Consent.What.CRITIQUES_PUBLIC


def exhibitors_of(show: Show) -> QuerySet[Person]:
    """The owners of the dogs that are entered in the show."""
    entered = Entry.objects.filter(show=show, state=Entry.State.ENTERED).values("dog")
    return Person.objects.filter(pk__in=Ownership.objects.filter(dog__in=entered).values("person"))


def addresses_for(show: Show, account: Account) -> list[tuple[Person, Consent | None, str]]:
    """The names under which a person shows there, each with what it agreed to and the address it wrote last."""
    people = exhibitors_of(show).filter(account=account).order_by("name", "id")
    given = Consent.objects.filter(person__account=account, what=ADDRESS).order_by("given_at", "id")
    last = {one.person_id: one.text for one in given if one.text}
    standing = {one.person_id: one for one in given if one.show_id == show.pk and one.withdrawn_at is None}
    return [(person, standing.get(person.pk), last.get(person.pk, "")) for person in people]


def addresses_of(show: Show) -> dict[str, str]:
    """By an exhibitor's name: the address that the catalogue may print.

    The catalogue lists exhibitors by name: where several of one name show, an address stands there only if all of them
    agreed to the same one.
    """
    told = {one.person_id: one.text for one in Consent.objects.filter(show=show, what=ADDRESS, withdrawn_at=None)}
    found: dict[str, set[str]] = defaultdict(set)
    for key, name in exhibitors_of(show).values_list("pk", "name") if told else ():
        found[name].add(told.get(key, ""))
    return {name: next(iter(texts)) for name, texts in found.items() if len(texts) == 1 and "" not in texts}


def said_of_critiques(show: Show, account: Account) -> Consent | None:
    """What a person said last about the critiques of own dogs at a show that makes them public; None: nothing."""
    return Consent.objects.filter(show=show, person__account=account, what=PUBLIC).order_by("id").last()


def dogs_kept_private(show: Show) -> frozenset[int]:
    """The dogs of which an owner said that not everybody may read their critiques, though the show lets everybody."""
    said = Consent.objects.filter(show=show, what=PUBLIC).order_by("id")
    last = dict(said.values_list("person", "withdrawn_at"))
    against = [person for person, withdrawn_at in last.items() if withdrawn_at is not None]
    return frozenset(Ownership.objects.filter(person__in=against).values_list("dog", flat=True) if against else ())


def consents_of(account: Account) -> QuerySet[Consent]:
    """All that a person agreed to, the newest first; what was recorded without its moment last."""
    found = Consent.objects.filter(person__account=account).select_related("person", "show", "dog")
    return found.order_by("withdrawn_at", "-given_at", "-id")


def consents_on(entry: Entry) -> list[tuple[Consent, str]]:
    """What the owners of an entry's dog agreed to for its show, in the words they agreed to."""
    of_dog = Q(dog=None) | Q(dog=entry.dog_id)
    found = Consent.objects.filter(of_dog, show=entry.show_id, person__in=entry.dog.owners.all())
    ordered = found.select_related("person", "recorded_by").order_by("person__name", "given_at", "id")
    return [(one, words_of(one.what, one.wording)) for one in ordered]


def as_kept(one: Consent) -> dict[str, Any]:
    """A consent as plain values, for the person's file."""
    moments = {"given_at": one.given_at, "withdrawn_at": one.withdrawn_at}
    return {
        "id": one.pk,
        "name": one.person.name,
        "what": one.get_what_display(),
        "words": words_of(one.what, one.wording),
        "wording": one.wording,
        "show": one.show.name if one.show else None,
        "dog": one.dog.name if one.dog else None,
        "text": one.text,
        "way": one.get_way_display(),
        "withdrawn_way": one.get_withdrawn_way_display(),
        **{name: at.isoformat(timespec="seconds") if at else None for name, at in moments.items()},
    }
