"""The demo shows' fees: their tables, invoices, what came in, a refund, and accounts that are still open."""

from datetime import datetime, time
from decimal import Decimal
from typing import Any

from django.utils import timezone

from ringside.entries.models import Entry
from ringside.fees import actions, setting
from ringside.fees.charging import charged
from ringside.fees.invoicing import issue_missing
from ringside.fees.models import Invoice
from ringside.fees.one import account_of
from ringside.people.models import Account, Person
from ringside.shows.books import rules_of
from ringside.shows.models import Show

TERMS = ("currency", "club", "issuer", "account_holder", "iban", "pay_by", "note")


def set_fees(show: Show, who: Account | None, told: dict[str, Any]) -> None:
    assert who is not None
    setting.set_terms(who=who, show=show, **{name: told[name] for name in TERMS if name in told})
    puppies = told.get("puppies", [])
    others = [rule.code for rule in rules_of(show).classes if rule.code not in puppies] if puppies else []
    classes = {"puppies": puppies, "others": others, "all": []}
    for line in told["lines"]:
        setting.add_line(
            who=who, show=show, name=line["name"], amount=Decimal(line["amount"]), turn=line["turn"],
            membership=line.get("membership", ""), classes=classes[line.get("for", "others")],
            first_day=line.get("first_day"), last_day=line.get("last_day"),
        )  # fmt: skip


def charge(show: Show, people: dict[str, Person], told: dict[str, Any]) -> None:
    """The judged show, as it stands in its last week: nearly everybody has paid, one was paid back, some owe."""
    who = people["secretary"].account
    assert who is not None
    set_fees(show, who, told)
    _enter_earlier(show, told)
    exhibitors = {one.name: one for one in Person.objects.filter(dogs__entries__show=show)}
    for name in told["members"]:
        setting.set_member(who=who, show=show, person=exhibitors[name], is_member=True)
    issue_missing(who=who, show=show)
    Invoice.objects.filter(show=show).update(issued_on=told["invoiced_on"])
    for paid in told["payments"]:
        _receive(who, show, exhibitors[paid["person"]], paid)
    _pay_back(who, show, exhibitors[told["refund"]["person"]], told["refund"])


def _enter_earlier(show: Show, told: dict[str, Any]) -> None:
    """The demo's file is read today: its first half came in early, the other late."""
    keys = list(Entry.objects.filter(show=show).order_by("id").values_list("pk", flat=True))
    half = len(keys) // 2
    for some, day in zip((keys[:half], keys[half:]), told["entered_on"], strict=True):
        at = timezone.make_aware(datetime.combine(day, time(12)))
        Entry.objects.filter(pk__in=some).update(entered_at=at)


def _receive(who: Account, show: Show, person: Person, told: dict[str, Any]) -> None:
    amount = account_of(show, person).owed if told["amount"] == "all" else Decimal(told["amount"])
    actions.record_payment(
        who=who, show=show, person=person, kind="received", amount=amount, day=told["day"], how=told["how"],
        reference=told.get("reference", ""),
    )  # fmt: skip


def _pay_back(who: Account, show: Show, person: Person, told: dict[str, Any]) -> None:
    """The fee of the person's last entry."""
    last = charged(show, [person.pk])[person.pk][-1]
    assert last.fee.amount is not None
    entry = Entry.objects.select_related("show").get(pk=last.entry_id)
    about = {"why": told["why"], "note": told["note"]}
    actions.change_fee(who=who, entry=entry, amount=Decimal(0), entered_on=None, **about)
    actions.record_payment(
        who=who, show=show, person=person, kind="refunded", amount=last.fee.amount, day=told["day"], how=told["how"],
        **about,
    )  # fmt: skip
