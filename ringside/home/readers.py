"""Letting somebody read a dog's published critiques with their own sign-in, and taking it back.

It counts while the owner who gave it owns the dog; whoever buys the dog starts without readers.
"""

from datetime import date, timedelta
from typing import Any

from django.db import transaction
from django.db.models import F, Q, QuerySet
from django.http import Http404
from django.utils import timezone

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.dogs.models import Dog
from ringside.entries.consents.actions import agree_to_link, withdraw_link
from ringside.entries.consents.keeping import forget_named
from ringside.entries.models import Consent, Entry
from ringside.entries.own import owns
from ringside.home.models import Reader
from ringside.home.telling import tell_reader
from ringside.people.actions import account_for
from ringside.people.models import Account
from ringside.results.models import Critique

MOST_READERS = 10  # of one dog
# Each is a letter to somebody who has not asked for one: no more than this from one owner.
MOST_A_DAY = 20


@transaction.atomic
def let_read(*, by: Account, dog: Dog, email: str, kind: str, where: str) -> Reader:
    """Whoever has this address may read, and is told so; `where` is the page to sign in to."""
    if not owns(by, dog):
        raise Http404
    # One after another, for the owner and for the dog, so that two windows cannot pass the limits together.
    Account.objects.select_for_update().get(pk=by.pk)
    Dog.objects.select_for_update().get(pk=dog.pk)
    address = email.strip().lower()
    _require_new(by, dog, address)
    # Without an account no sign-in code is sent; it reads nothing until the code has come back.
    account = account_for(email=address)
    what = Consent.What.CRITIQUES_READER
    consent = agree_to_link(by=by, dog=dog, what=what, show=None, text=address)
    reader = Reader.objects.create(dog=dog, email=address, kind=kind, given_by=by, consent=consent)
    record(who=by, doing="let-read", about=f"dog:{dog.pk}")
    tell_reader(account=account, dog=dog.name, owner=consent.person.name if consent else by.email, where=where)
    return reader


def _require_new(by: Account, dog: Dog, address: str) -> None:
    standing = in_force(dog=dog)
    if address == by.email:
        raise NotNow("This is your own address: you read your dog's critiques already.")
    if dog.owners.filter(account__email=address).exists():
        raise NotNow("{email} belongs to an owner of this dog, who reads its critiques already.", email=address)
    if standing.filter(email=address).exists():
        raise NotNow("{email} may read this dog's critiques already: the address is in the list.", email=address)
    if standing.count() >= MOST_READERS:
        raise NotNow("At most {most} people read a dog's critiques: take one back first.", most=MOST_READERS)
    since = timezone.now() - timedelta(days=1)
    if Reader.objects.filter(given_by=by, given_at__gt=since).count() >= MOST_A_DAY:
        raise NotNow("You have let {most} people read since yesterday: go on tomorrow.", most=MOST_A_DAY)


@transaction.atomic
def take_back(*, by: Account, reader: Reader) -> None:
    """From now on the person reads nothing of the dog; whichever owner says so."""
    if not owns(by, reader.dog):
        raise Http404
    end_reading(by=by, reader=reader)


@transaction.atomic
def end_reading(*, by: Account, reader: Reader) -> None:
    """Called by what has asked whether this person may: as an owner, or as who agreed to it."""
    Reader.objects.filter(pk=reader.pk, withdrawn_at=None).update(withdrawn_at=timezone.now())
    withdraw_link(who=by, consent=reader.consent)
    record(who=by, doing="take-back-reading", about=f"dog:{reader.dog_id}")


def in_force(**about: Any) -> QuerySet[Reader]:
    """Those that count: not taken back, and given by somebody who owns the dog today."""
    found = Reader.objects.filter(withdrawn_at=None, dog__owners__account=F("given_by"), **about)
    return found.select_related("dog").distinct()


def access_own_reader(user: Any, reader_id: int) -> Reader:
    found = in_force(pk=reader_id).first()
    if found is None or not owns(user, found.dog):
        raise Http404
    return found


def access_reading(user: Any, entry_id: int) -> Entry:
    """An entry whose critique somebody lets this person read; 404 alike for whatever else there is."""
    found = Entry.objects.select_related("dog").filter(pk=entry_id).first()
    if found is None or not isinstance(user, Account) or not in_force(email=user.email, dog=found.dog).exists():
        raise Http404
    return found


def dogs_to_read(user: Account) -> list[Dog]:
    return list(Dog.objects.filter(readers__in=in_force(email=user.email)).distinct().order_by("name", "id"))


def entries_to_read(dogs: list[Dog]) -> QuerySet[Entry]:
    """The entries of these dogs that have a published critique: of the others a reader hears nothing."""
    published = Critique.objects.published().filter(entry__dog__in=dogs)
    return Entry.objects.filter(pk__in=published.values("entry"))


def let_read_since(day: date) -> QuerySet[Reader]:
    return in_force(given_at__date__gte=day)


def forget_readers(*, account: Account, addresses: set[str]) -> None:
    """Both ends: whom the person let read, and what others let the person read."""
    found = Reader.objects.filter(Q(given_by=account) | Q(email__in=addresses))
    forget_named(Consent.objects.filter(readers__in=found))
    found.delete()
