"""One exhibitor's account at one show: entries with their fees, payments, invoices, how it stands."""

from dataclasses import dataclass
from decimal import Decimal
from typing import Any

from django.core.paginator import Page, Paginator
from django.db.models import Q
from django.http import Http404
from django.utils.formats import date_format
from django.utils.translation import gettext as _

from ringside.core.sentences import sentence
from ringside.dogs.models import Ownership
from ringside.entries.models import Entry
from ringside.fees import charging
from ringside.fees.accounts import Balance, paid_by, terms_of
from ringside.fees.charging import first_of
from ringside.fees.models import FeeChange, Invoice, Membership, Payment, Terms
from ringside.fees.money import money, plain
from ringside.people.models import Account, Person
from ringside.shows.books import class_names
from ringside.shows.models import Show
from scoring.fees import ZERO

SHOWS_PER_PAGE = 10


@dataclass(frozen=True)
class Line:
    """An entry with its fee; `amount` is empty and `open` says why where it is not settled."""

    entry: Entry
    class_name: str
    fee: str
    amount: str
    open: str
    change: FeeChange | None

    @property
    def is_withdrawn(self) -> bool:
        return self.entry.state == Entry.State.WITHDRAWN

    @property
    def changed(self) -> list[str]:
        """How the fee differs from the table, in sentences."""
        if self.change is None:
            return []
        told = [_("Changed: {why}.").format(why=self.change.get_why_display())]
        if self.change.entered_on:
            told.append(_("Counts as entered on {day}.").format(day=date_format(self.change.entered_on)))
        return [*told, *filter(None, [self.change.note])]


@dataclass(frozen=True)
class OneAccount(Balance):
    show: Show
    person: Person
    terms: Terms
    is_member: bool
    lines: list[Line]
    payments: list[tuple[Payment, str]]
    invoices: list[tuple[Invoice, str]]
    owed: Decimal
    paid: Decimal

    @property
    def still_owed_plain(self) -> str:
        """As it is typed into the next payment; nothing where nothing is owed."""
        return plain(self.still_owed, self.terms.currency) if self.still_owed else ""

    @property
    def figures(self) -> list[tuple[str, str]]:
        """Fees, paid, and what is still to pay or to go back, in words."""
        told = [(_("Fees"), self.owed), (_("Paid"), self.paid), (_("Still to pay"), self.still_owed)]
        if self.to_refund:
            told[-1] = (_("To refund"), self.to_refund)
        return [(name, money(amount, self.terms.currency)) for name, amount in told]


def person_at(show: Show, person_id: int) -> Person:
    """An exhibitor of this show: owns an entered dog, paid, or got an invoice; anybody else is not found."""
    concerned = Q(dogs__entries__show=show) | Q(payments__show=show) | Q(invoices__show=show)
    found = Person.objects.filter(concerned, pk=person_id).first()
    if found is None:
        raise Http404
    return found


def account_of(show: Show, person: Person) -> OneAccount:
    terms = terms_of(show)
    charged = charging.charged(show, [person.pk]).get(person.pk, [])
    payments = Payment.objects.filter(show=show, person=person).select_related("by", "struck_by").order_by("day", "id")
    invoices = Invoice.objects.filter(show=show, person=person).order_by("-number")
    return OneAccount(
        show, person, terms, Membership.objects.filter(show=show, person=person).exists(),
        _lines(show, charged, terms.currency), [(one, money(one.amount, terms.currency)) for one in payments],
        [(one, money(one.total, one.currency)) for one in invoices], charging.owed(charged),
        paid_by(show, person).get(person.pk, ZERO),
    )  # fmt: skip


def _lines(show: Show, charged: list[charging.Charged], currency: str) -> list[Line]:
    ids = [one.entry_id for one in charged]
    rows = Entry.objects.select_related("dog", "show_class").in_bulk(ids)
    changes = {one.entry_id: one for one in FeeChange.objects.filter(entry__in=ids).select_related("by")}
    names = class_names(show)
    found = []
    for one in charged:
        entry, fee = rows[one.entry_id], one.fee
        code = entry.show_class.code
        amount = "" if fee.amount is None else money(fee.amount, currency)
        why = sentence(fee.finding) if fee.finding else ""
        found.append(Line(entry, names.get(code, code), fee.line, amount, why, changes.get(entry.pk)))
    return found


def line_of(entry: Entry, payer: int | None) -> Line:
    """One entry with its fee as it stands, among the others of whoever is charged for it."""
    show = entry.show
    charged = charging.charged(show, [payer]) if payer else charging.charged(show)
    [own] = [one for one in charged[payer] if one.entry_id == entry.pk]
    return _lines(show, [own], terms_of(show).currency)[0]


@dataclass(frozen=True)
class AccountsPage:
    accounts: list[OneAccount]
    pages: Page[Any]


def accounts_of(account: Account, number: int) -> AccountsPage:
    """What the signed-in person owes or paid, newest show first, ten a page; shows that charge nothing are left out."""
    people = {one.pk: one for one in Person.objects.filter(account=account)}
    payers = first_of(Ownership.objects.filter(dog__owners__in=people))
    entered = Entry.objects.filter(dog__owners__in=people).values_list("show", "dog")
    pairs = {(show, payers[dog]) for show, dog in entered if payers[dog] in people}
    for table in (Payment, Invoice):
        pairs |= set(table.objects.filter(person__in=people).values_list("show", "person"))
    shows = Show.objects.filter(pk__in={show for show, _payer in pairs})
    told = shows.filter(Q(fee_lines__isnull=False) | Q(payments__isnull=False)).distinct().in_bulk()
    known = [(told[show], people[person]) for show, person in pairs if show in told]
    known.sort(key=lambda pair: (pair[0].first_day, pair[0].pk, pair[1].pk), reverse=True)
    page = Paginator(known, SHOWS_PER_PAGE).get_page(number)
    return AccountsPage([account_of(show, person) for show, person in page], page)


def may_read(user: object, invoice: Invoice) -> bool:
    """Whether the invoice is the signed-in person's own."""
    return isinstance(user, Account) and invoice.person.account_id == user.pk
