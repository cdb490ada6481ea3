"""What a show's books keep of a person. It stays when the person is forgotten: see `home/personal.py`."""

from typing import Any

from ringside.fees.models import FeeChange, Invoice, Membership, Payment, Terms
from ringside.fees.money import plain
from ringside.people.models import Account
from ringside.shows.models import Show


def kept_of_money(account: Account) -> dict[str, Any]:
    """As plain values: memberships, fees that differ with the reason, payments with those struck out, invoices."""
    mine = {"person__account": account}
    members = Membership.objects.filter(**mine).select_related("show").order_by("id")
    changes = FeeChange.objects.filter(entry__dog__owners__account=account).distinct()
    payments = Payment.objects.filter(**mine).select_related("show__fee_terms").order_by("day", "id")
    invoices = Invoice.objects.filter(**mine).select_related("show").order_by("issued_on", "id")
    return {
        "memberships": [{"show": one.show.name, "club": _club(one.show)} for one in members],
        "changed_fees": [
            _change(one) for one in changes.select_related("entry__show", "entry__dog").order_by("at", "id")
        ],
        "payments": [_payment(one) for one in payments],
        "invoices": [_invoice(one) for one in invoices],
    }


def _club(show: Show) -> str:
    terms = Terms.objects.filter(show=show).first()
    return terms.club if terms else ""


def _change(one: FeeChange) -> dict[str, Any]:
    return {
        "show": one.entry.show.name, "dog": one.entry.dog.name,
        "amount": None if one.amount is None else str(one.amount),
        "entered_on": one.entered_on.isoformat() if one.entered_on else None, "why": one.why, "note": one.note,
    }  # fmt: skip


def _payment(one: Payment) -> dict[str, Any]:
    return {
        "show": one.show.name, "money": str(one.get_kind_display()), "kind": one.kind,
        "amount": plain(one.amount, one.show.fee_terms.currency), "currency": one.show.fee_terms.currency,
        "day": one.day.isoformat(), "how": one.how, "reference": one.reference, "why": one.why, "note": one.note,
        "struck_out": one.struck_at is not None, "struck_why": one.struck_why,
    }  # fmt: skip


def _invoice(one: Invoice) -> dict[str, Any]:
    return {
        "show": one.show.name, "number": one.number, "issued_on": one.issued_on.isoformat(), "name": one.name,
        "lines": one.lines, "total": plain(one.total, one.currency), "paid": plain(one.paid, one.currency),
        "currency": one.currency,
    }  # fmt: skip
