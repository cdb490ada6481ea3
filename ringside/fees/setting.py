"""How a show charges: its terms, its fee table, who counts as a member; each change once."""

from typing import Any

from django.db import transaction

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.fees.models import FeeLine, Invoice, Membership, Payment, Terms
from ringside.people.models import Account, Person
from ringside.shows.access import require
from ringside.shows.models import Show


def locked_terms(show: Show) -> Terms:
    """The show's terms, made where there are none; their row is the lock under which money is booked."""
    Terms.objects.get_or_create(show=show)
    return Terms.objects.select_for_update().get(show=show)


@transaction.atomic
def set_terms(*, who: Account, show: Show, **fields: Any) -> Terms:
    """Currency, account and what invoices say. The currency stays once money or invoices are on record."""
    require(who, show, "set-fees")
    terms = locked_terms(show)
    changes_currency = fields.get("currency", terms.currency) != terms.currency
    if changes_currency and (Payment.objects.filter(show=show).exists() or Invoice.objects.filter(show=show).exists()):
        raise NotNow(
            "Payments or invoices of this show are in {currency} already: the currency cannot change any more.",
            currency=terms.currency,
        )
    for name, value in fields.items():
        setattr(terms, name, value)
    terms.save(update_fields=list(fields))
    record(who=who, doing="set-fee-terms", show_id=show.pk, fields=sorted(fields))
    return terms


@transaction.atomic
def add_line(*, who: Account, show: Show, **fields: Any) -> FeeLine:
    require(who, show, "set-fees")
    line = FeeLine.objects.create(show=show, **fields)
    record(who=who, doing="add-fee", show_id=show.pk, about=f"fee:{line.pk}", amount=str(line.amount))
    return line


@transaction.atomic
def change_line(*, who: Account, line: FeeLine, **fields: Any) -> None:
    """Changes a line; whoever is charged by it owes the new amount. Issued invoices stay as they are."""
    require(who, line.show, "set-fees")
    before = FeeLine.objects.get(pk=line.pk).amount
    for name, value in fields.items():
        setattr(line, name, value)
    line.save(update_fields=list(fields))
    detail = {"before": str(before), "amount": str(line.amount), "fields": sorted(fields)}
    record(who=who, doing="change-fee", show_id=line.show_id, about=f"fee:{line.pk}", **detail)


@transaction.atomic
def remove_line(*, who: Account, line: FeeLine) -> None:
    require(who, line.show, "set-fees")
    record(who=who, doing="remove-fee", show_id=line.show_id, about=f"fee:{line.pk}", amount=str(line.amount))
    line.delete()


@transaction.atomic
def set_member(*, who: Account, show: Show, person: Person, is_member: bool) -> None:
    require(who, show, "keep-payments")
    if is_member:
        Membership.objects.get_or_create(show=show, person=person)
    else:
        Membership.objects.filter(show=show, person=person).delete()
    record(who=who, doing="set-fee-member", show_id=show.pk, about=f"person:{person.pk}", member=is_member)
