"""Invoices: one exhibitor's, or those of everybody who has none yet; numbered without gaps, frozen, audited."""

from collections.abc import Iterable, Mapping
from decimal import Decimal

from django.db import transaction
from django.utils import timezone

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.entries.models import Entry
from ringside.fees import charging
from ringside.fees.accounts import paid_by
from ringside.fees.models import Invoice, Terms
from ringside.fees.money import plain
from ringside.fees.setting import locked_terms
from ringside.people.models import Account, Person
from ringside.shows.access import require
from ringside.shows.models import Show
from scoring.fees import ZERO

BATCH = 500


@transaction.atomic
def issue_invoice(*, who: Account, show: Show, person: Person) -> Invoice:
    """The account as it stands today, frozen under the show's next number; it replaces the last one."""
    require(who, show, "keep-payments")
    terms = locked_terms(show)
    charged = charging.charged(show, [person.pk]).get(person.pk, [])
    if not charged:
        raise NotNow("This exhibitor has no entry to send an invoice for.")
    if charging.unsettled(charged):
        raise NotNow("A fee of this account is not decided yet: mend the fee table, or give the entry its amount.")
    last = Invoice.objects.filter(show=show, person=person).order_by("-number").first()
    rows = Entry.objects.filter(pk__in=[one.entry_id for one in charged]).select_related("dog", "show_class").in_bulk()
    invoice = _frozen(who, terms, person, charged, rows, paid_by(show, person).get(person.pk, ZERO))
    _refuse_twice(last, invoice)
    invoice.replaces = last
    invoice.save()
    terms.save(update_fields=["last_invoice"])
    detail = {"number": invoice.number, "total": plain(invoice.total, terms.currency)}
    record(who=who, doing="issue-invoice", show_id=show.pk, about=f"invoice:{invoice.pk}", **detail)
    return invoice


@transaction.atomic
def issue_missing(*, who: Account, show: Show) -> int:
    """An invoice for everybody who owes, has none yet and whose fees are all settled; by name; how many they were.

    The same number of queries for every show, but for the invoices written in batches.
    """
    require(who, show, "keep-payments")
    terms = locked_terms(show)
    waiting = _without_invoice(show)
    people = sorted(
        Person.objects.filter(dogs__entries__show=show).distinct().in_bulk().values(),
        key=lambda one: (one.name, one.pk),
    )
    rows = Entry.objects.filter(show=show).select_related("dog", "show_class").in_bulk()
    paid = paid_by(show)
    made = [
        _frozen(who, terms, one, waiting[one.pk], rows, paid.get(one.pk, ZERO)) for one in people if one.pk in waiting
    ]
    if not made:
        raise NotNow("Everybody whose fees are decided has an invoice.")
    Invoice.objects.bulk_create(made, batch_size=BATCH)
    terms.save(update_fields=["last_invoice"])
    record(who=who, doing="issue-invoices", show_id=show.pk, count=len(made), number=made[0].number)
    return len(made)


def _without_invoice(show: Show) -> dict[int, list[charging.Charged]]:
    has = set(Invoice.objects.filter(show=show).values_list("person_id", flat=True))
    return {
        payer: charged
        for payer, charged in charging.charged(show).items()
        if payer is not None and payer not in has and not charging.unsettled(charged) and charging.owed(charged) > ZERO
    }


def _frozen(
    who: Account,
    terms: Terms,
    person: Person,
    charged: Iterable[charging.Charged],
    rows: Mapping[int, Entry],
    paid: Decimal,
) -> Invoice:
    """The invoice under the next number, not kept yet; the terms, which the caller holds locked, count it."""
    known = list(charged)
    terms.last_invoice += 1
    return Invoice(
        show_id=terms.show_id, number=terms.last_invoice, person=person, name=person.name,
        issued_on=timezone.localdate(), by=who, currency=terms.currency,
        lines=[_line(one, rows[one.entry_id], terms.currency) for one in known], total=charging.owed(known), paid=paid,
        pay_to=_pay_to(terms),
    )  # fmt: skip


def _line(one: charging.Charged, entry: Entry, currency: str) -> dict[str, object]:
    """An entry as an invoice freezes it, in no language: `Invoice.lines`."""
    return {
        "number": entry.number,
        "dog": entry.dog.name,
        "class": entry.show_class.code,
        "withdrawn": entry.state == Entry.State.WITHDRAWN,
        "fee": one.fee.line,
        "amount": plain(one.fee.amount or ZERO, currency),
    }


def _pay_to(terms: Terms) -> dict[str, str]:
    names = ("issuer", "account_holder", "iban", "bic", "note")
    return {
        **{name: getattr(terms, name) for name in names},
        "pay_by": terms.pay_by.isoformat() if terms.pay_by else "",
    }


def _refuse_twice(last: Invoice | None, new: Invoice) -> None:
    told = ("name", "currency", "lines", "total", "paid", "pay_to")
    if last and all(getattr(last, name) == getattr(new, name) for name in told):
        raise NotNow("Invoice {number} says the same: nothing has changed since.", number=last.number)
