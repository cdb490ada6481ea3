"""Giving a consent and withdrawing it: on the web by the person, on a paper form by the office."""

from typing import Any

from django.db import transaction
from django.utils import timezone

from ringside.core.audit import record
from ringside.core.denied import Denied, NotNow
from ringside.dogs.models import Dog
from ringside.entries.consents.queries import exhibitors_of
from ringside.entries.consents.wording import latest
from ringside.entries.models import Consent
from ringside.people.models import Account, Person
from ringside.shows.access import require
from ringside.shows.models import Show

WEB, PAPER = Consent.Way.WEB, Consent.Way.PAPER
ADDRESS, PUBLIC = Consent.What.CATALOGUE_ADDRESS, Consent.What.CRITIQUES_PUBLIC
LONGEST_ADDRESS = 300


@transaction.atomic
def agree_to_address(*, who: Account, show: Show, person: Person, address: str, for_office: bool) -> Consent:
    """The catalogue of the show may print this address. Another address takes the place of the one before."""
    _require(who, show, person, for_office)
    lines = [" ".join(line.split()) for line in address.replace("\x00", "").splitlines()]
    told = ", ".join(line.rstrip(",") for line in lines if line)
    if not told:
        raise NotNow("Write the address as the catalogue is to print it.")
    if len(told) > LONGEST_ADDRESS:
        raise NotNow("An address has at most {most} signs: leave out what no letter needs.", most=LONGEST_ADDRESS)
    Show.objects.select_for_update().get(pk=show.pk)
    standing = in_force(show, person)
    if standing and standing.text == told:
        return standing
    way = PAPER if for_office else WEB
    if standing:
        _end(standing, way)
    return _give(who, person, ADDRESS, way, show=show, text=told)


def in_force(show: Show, person: Person) -> Consent | None:
    return Consent.objects.filter(show=show, person=person, what=ADDRESS, withdrawn_at=None).first()


def _require(who: Account, show: Show, person: Person, for_office: bool) -> None:
    if for_office:
        require(who, show, "take-entries")
    elif person.account_id != who.pk:
        raise Denied("You may not agree for somebody else.")
    if not exhibitors_of(show).filter(pk=person.pk).exists():
        raise NotNow("This person has no dog entered in this show.")


@transaction.atomic
def settle_critiques(*, who: Account, show: Show, allowed: bool) -> None:
    """Whether everybody may read the critiques of the person's dogs, at a show that makes its critiques public.

    Who says nothing leaves it to the show. A no to what nobody agreed to is kept as a consent that is withdrawn.
    """
    people = list(exhibitors_of(show).filter(account=who).order_by("id"))
    if not people:
        raise NotNow("No dog of yours is entered in this show yet.")
    Show.objects.select_for_update().get(pk=show.pk)
    for person in people:
        last = Consent.objects.filter(show=show, person=person, what=PUBLIC).order_by("id").last()
        if last and (last.withdrawn_at is None) == allowed:
            continue
        if allowed:
            _give(who, person, PUBLIC, WEB, show=show)
        elif last:
            withdraw_link(who=who, consent=last)
        else:
            told = {"wording": latest(PUBLIC), "way": WEB, "recorded_by": who}
            withdraw_link(
                who=who, consent=Consent.objects.create(person=person, what=PUBLIC, show=show, **told)
            )  # fmt: skip


def agree_to_link(*, by: Account, dog: Dog, what: str, show: Show | None, text: str = "") -> Consent | None:
    """An owner shares a critique or a photo, by a link or with whom `text` names; called by what makes the link."""
    person = Person.objects.filter(account=by, dogs=dog).order_by("id").first()
    return _give(by, person, what, WEB, show=show, dog=dog, text=text) if person else None


def _give(who: Account, person: Person, what: str, way: str, **about: Any) -> Consent:
    made = Consent.objects.create(
        person=person, what=what, wording=latest(what), given_at=timezone.now(), way=way, recorded_by=who, **about
    )
    _record(who, "give-consent", made)
    return made


@transaction.atomic
def withdraw_told(*, who: Account, consent: Consent, for_office: bool) -> None:
    """What is not to be printed or read any more; what is printed already cannot be called back."""
    if for_office:
        assert consent.show is not None
        require(who, consent.show, "take-entries")
    elif consent.person.account_id != who.pk:
        raise Denied("You may not withdraw what somebody else agreed to.")
    if consent.withdrawn_at is not None:
        raise NotNow("This is withdrawn already.")
    withdraw_link(who=who, consent=consent, way=PAPER if for_office else WEB)


def withdraw_link(*, who: Account, consent: Consent | None, way: str = WEB) -> None:
    """Writes down that it is withdrawn; called by what ends the link."""
    if consent is not None and consent.withdrawn_at is None:
        _end(consent, way)
        _record(who, "withdraw-consent", consent)


def _end(consent: Consent, way: str) -> None:
    consent.withdrawn_at, consent.withdrawn_way = timezone.now(), way
    consent.save(update_fields=["withdrawn_at", "withdrawn_way"])


def _record(who: Account, doing: str, consent: Consent) -> None:
    record(who=who, doing=doing, show_id=consent.show_id, about=f"person:{consent.person_id}", kind=consent.what)
