"""The accounts of a show's exhibitors: searched, filtered, added up, paged, and written out."""

from collections import defaultdict
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

import tablib
from django.core.paginator import Page, Paginator
from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from ringside.core import exports
from ringside.core.paging import page_asked
from ringside.entries.models import Entry
from ringside.entries.reading.cells import guarded
from ringside.fees import charging
from ringside.fees.models import Invoice, Membership, Payment, Terms
from ringside.people.models import Person
from ringside.shows.models import Show
from scoring.fees import ZERO, standing, total

PER_PAGE = 100
FILTERS = {
    "all": _("All"),
    "owes": _("Still to pay"),
    "paid": _("Paid"),
    "refund": _("To refund"),
    "open": _("Fee not decided"),
}
STANDINGS = {
    "nothing owed": _("nothing owed"),
    "owes": _("owes"),
    "partly paid": _("partly paid"),
    "paid": _("paid"),
    "to refund": _("to refund"),
}
# The list as a file says the same whoever takes it away: in English, as the files of results do.
HEADINGS = (
    "Exhibitor", "E-mail", "Member", "Entries", "Fees", "Paid", "Still to pay", "To refund", "State", "Not decided",
    "Invoice", "Currency",
)  # fmt: skip


class Balance:
    """How what is owed and what is paid stand to each other."""

    owed: Decimal
    paid: Decimal

    @property
    def still_owed(self) -> Decimal:
        return max(self.owed - self.paid, ZERO)

    @property
    def to_refund(self) -> Decimal:
        return max(self.paid - self.owed, ZERO)

    @property
    def state(self) -> str:
        return standing(self.owed, self.paid)

    @property
    def state_words(self) -> str | Promise:
        return STANDINGS[self.state]


@dataclass(frozen=True)
class Account(Balance):
    """One exhibitor at one show. `paid` is what came in less what went back; `open` counts entries without a fee."""

    person_id: int
    name: str
    email: str
    is_member: bool
    entries: int
    owed: Decimal
    paid: Decimal
    open: int
    invoice: int | None

    def is_in(self, shown: str) -> bool:
        match shown:
            case "owes":
                return self.still_owed > 0
            case "paid":
                return self.state == "paid" and not self.open
            case "refund":
                return self.to_refund > 0
            case "open":
                return self.open > 0
            case _:
                return True


@dataclass(frozen=True)
class Totals:
    owed: Decimal
    paid: Decimal
    still_owed: Decimal
    to_refund: Decimal


@dataclass(frozen=True)
class Asked:
    """What a person asked the list for; anything unknown falls back to all accounts by name."""

    text: str = ""
    shown: str = "all"
    order: str = "name"
    page: int = 1

    @classmethod
    def of(cls, given: Any) -> "Asked":
        shown = given.get("show", "all")
        return cls(
            text=given.get("q", "").replace("\x00", "").strip()[:100],
            shown=shown if shown in FILTERS else "all",
            order="most" if given.get("order") == "most" else "name",
            page=page_asked(given),
        )


def terms_of(show: Show) -> Terms:
    """The show's terms; as they begin where nobody has set them yet."""
    return Terms.objects.filter(show=show).first() or Terms(show=show)


def found(show: Show, text: str) -> list[Account]:
    """The accounts that a search finds, by name. The same number of queries for every show.

    Each is a plain join, put together here: a database that has not counted its rows yet, as after an import, takes
    minutes over subqueries of thirty thousand entries.
    """
    by_payer, paid = charging.charged(show), paid_by(show)
    members = set(Membership.objects.filter(show=show).values_list("person_id", flat=True))
    invoices = dict(Invoice.objects.filter(show=show).order_by("number").values_list("person_id", "number"))
    accounts = []
    for person_id, name, email in _searched(show, _people(show), text):
        entries = by_payer.get(person_id, [])
        if entries or person_id in paid or person_id in invoices:
            accounts.append(
                Account(
                    person_id, name, email, person_id in members, len(entries), charging.owed(entries),
                    paid.get(person_id, ZERO), len(charging.unsettled(entries)), invoices.get(person_id),
                )
            )  # fmt: skip
    return accounts


Named = tuple[int, str, str]


def _people(show: Show) -> list[Named]:
    """Owners of entered dogs, and whoever paid or got an invoice: key, name, address; by name."""
    ways: tuple[dict[str, Any], ...] = (
        {"dogs__entries__show": show},
        {"payments__show": show},
        {"invoices__show": show},
    )
    rows = [Person.objects.filter(**way).values_list("pk", "name", "email").distinct() for way in ways]
    return sorted(set().union(*rows), key=lambda one: (one[1], one[0]))


def _searched(show: Show, people: list[Named], text: str) -> list[Named]:
    """Those with every word in the name, the address, the name of a dog they are charged for, or as its number."""
    words = [word.casefold() for word in text.split()[:6]]
    if not words:
        return people
    known: dict[int, list[str]] = {key: [name.casefold(), email.casefold()] for key, name, email in people}
    numbers: dict[int, set[str]] = defaultdict(set)
    payers = charging.payers_of(show)
    for dog, name, number in Entry.objects.filter(show=show).values_list("dog_id", "dog__name", "number"):
        if dog in payers:
            known[payers[dog]].append(name.casefold())
            numbers[payers[dog]].add(str(number))
    return [
        one
        for one in people
        if all(word in numbers[one[0]] or any(word in told for told in known[one[0]]) for word in words)
    ]


def without_owner(show: Show) -> int:
    """How many entries nobody can be charged for."""
    return Entry.objects.filter(show=show, dog__owners=None).count()


def paid_by(show: Show, person: Person | None = None) -> dict[int, Decimal]:
    """What came in less what went back, by person; struck out lines do not count. Exact: added up as decimals."""
    rows = Payment.objects.filter(show=show, struck_at=None, **({"person": person} if person else {}))
    found: dict[int, Decimal] = defaultdict(Decimal)
    for payment in rows.only("person_id", "kind", "amount"):
        found[payment.person_id] += payment.signed
    return dict(found)


def how_many_owe(show: Show) -> int:
    """How many of those who are charged have still to pay, without their names: asked on every page of the office."""
    paid = paid_by(show)
    by_payer = charging.charged(show).items()
    return sum(charging.owed(of) > paid.get(payer, ZERO) for payer, of in by_payer if payer is not None)


def listed(accounts: list[Account], asked: Asked) -> list[Account]:
    shown = [account for account in accounts if account.is_in(asked.shown)]
    if asked.order == "most":
        shown.sort(key=lambda one: (-one.still_owed, -one.to_refund, one.name.casefold(), one.person_id))
    return shown


def counts(accounts: list[Account]) -> list[tuple[str, str | Promise, int]]:
    return [(code, name, sum(one.is_in(code) for one in accounts)) for code, name in FILTERS.items()]


def totals(accounts: list[Account]) -> Totals:
    return Totals(
        total(one.owed for one in accounts),
        total(one.paid for one in accounts),
        total(one.still_owed for one in accounts),
        total(one.to_refund for one in accounts),
    )


def to_bill(accounts: list[Account]) -> int:
    """How many owe, have no invoice yet, and have every fee settled."""
    return sum(one.invoice is None and one.owed > ZERO and not one.open for one in accounts)


def page_of(accounts: list[Account], asked: Asked) -> Page[Account]:
    return Paginator(accounts, PER_PAGE).get_page(asked.page)


def written(accounts: list[Account], currency: str, kind: str) -> bytes:
    """The list as "csv" (UTF-8 with its mark, semicolons) or "xlsx", amounts as numbers; no cell starts a formula."""
    table = tablib.Dataset(headers=HEADINGS)
    for one in accounts:
        table.append(
            [
                guarded(one.name), guarded(one.email), "yes" if one.is_member else "no", one.entries, one.owed,
                one.paid, one.still_owed, one.to_refund, one.state, one.open, one.invoice or "", currency,
            ]
        )  # fmt: skip
    return exports.written(table, kind)
