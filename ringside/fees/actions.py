"""Fees that differ from the table, payments and refunds; each change once, audited."""

from datetime import date
from decimal import Decimal
from typing import Any

from django.db import transaction
from django.utils import timezone

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.entries.models import Entry
from ringside.fees.accounts import paid_by
from ringside.fees.models import FeeChange, Invoice, Membership, Payment
from ringside.fees.money import money
from ringside.fees.setting import locked_terms
from ringside.people.models import Account, Person
from ringside.shows.access import require
from ringside.shows.models import Show
from scoring.fees import ZERO


@transaction.atomic
def change_fee(
    *, who: Account, entry: Entry, amount: Decimal | None, entered_on: date | None, why: str, note: str
) -> None:
    """Another amount for an entry, or another day on which it counts as entered; the reason is kept beside it."""
    require(who, entry.show, "keep-payments")
    if amount is None and entered_on is None:
        raise NotNow("Write the amount that this entry costs, or the day on which it counts as entered.")
    values = {"amount": amount, "entered_on": entered_on, "why": why, "note": note.strip(), "by": who}
    FeeChange.objects.update_or_create(entry=entry, defaults=values)
    detail = {"amount": _told(amount), "entered_on": _told(entered_on), "why": why}
    record(who=who, doing="change-entry-fee", show_id=entry.show_id, about=f"entry:{entry.pk}", **detail)


def _told(value: Any) -> str | None:
    return None if value is None else str(value)


@transaction.atomic
def undo_fee_change(*, who: Account, entry: Entry) -> None:
    """The fee table counts for the entry again."""
    require(who, entry.show, "keep-payments")
    if not FeeChange.objects.filter(entry=entry).delete()[0]:
        raise NotNow("The fee table counts for this entry already.")
    record(who=who, doing="undo-entry-fee", show_id=entry.show_id, about=f"entry:{entry.pk}")


@transaction.atomic
def record_payment(
    *,
    who: Account,
    show: Show,
    person: Person,
    kind: str,
    amount: Decimal,
    day: date,
    how: str,
    why: str = "",
    reference: str = "",
    note: str = "",
) -> Payment:
    """Money that came in, or went back for a reason; no more goes back than came in."""
    require(who, show, "keep-payments")
    terms = locked_terms(show)
    if kind == Payment.Kind.REFUNDED:
        paid = paid_by(show, person).get(person.pk, ZERO)
        if not why:
            raise NotNow("Choose why the money goes back.")
        if amount > paid:
            raise NotNow(
                "{paid} came in from this exhibitor: no more than that can go back.", paid=money(paid, terms.currency)
            )
    payment = Payment.objects.create(
        show=show, person=person, kind=kind, amount=amount, day=day, how=how, reference=reference.strip(),
        why=why if kind == Payment.Kind.REFUNDED else "", note=note.strip(), by=who,
    )  # fmt: skip
    detail = {"kind": kind, "amount": str(amount), "why": payment.why}
    record(who=who, doing="record-payment", show_id=show.pk, about=f"payment:{payment.pk}", **detail)
    return payment


@transaction.atomic
def strike_payment(*, who: Account, payment: Payment, why: str) -> None:
    """A line that was typed wrongly no longer counts; it stays to be seen, with the reason."""
    require(who, payment.show, "keep-payments")
    locked_terms(payment.show)
    payment.refresh_from_db()
    if payment.struck_at:
        raise NotNow("This line is struck out already.")
    if not why.strip():
        raise NotNow("Write why the line is struck out.")
    paid = paid_by(payment.show, payment.person).get(payment.person_id, ZERO)
    if paid - payment.signed < ZERO:
        raise NotNow("More would have gone back than came in: strike the refund out first.")
    payment.struck_at, payment.struck_by, payment.struck_why = timezone.now(), who, why.strip()
    payment.save(update_fields=["struck_at", "struck_by", "struck_why"])
    detail = {"kind": payment.kind, "amount": str(payment.amount)}
    record(who=who, doing="strike-payment", show_id=payment.show_id, about=f"payment:{payment.pk}", **detail)


@transaction.atomic
def follow(*, old: Person, new: Person) -> None:
    """Money goes along when another person takes the place of one as an owner.

    `old` may stand for namesakes: the accounts of shows where it still owns an entered dog stay with it.
    """
    stays = Entry.objects.filter(dog__owners=old).values("show")
    shows = set(Payment.objects.filter(person=old).exclude(show__in=stays).values_list("show", flat=True))
    shows |= set(Invoice.objects.filter(person=old).exclude(show__in=stays).values_list("show", flat=True))
    members = set(Membership.objects.filter(person=old).exclude(show__in=stays).values_list("show", flat=True))
    Payment.objects.filter(person=old, show__in=shows).update(person=new)
    Invoice.objects.filter(person=old, show__in=shows).update(person=new)
    for show_id in sorted(members):
        Membership.objects.get_or_create(show_id=show_id, person=new)
    Membership.objects.filter(person=old, show__in=members).delete()
