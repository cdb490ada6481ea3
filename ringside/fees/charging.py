"""What each entry of a show costs: the entries as the fee table sees them, and the secretary's changes on top."""

from collections import defaultdict
from collections.abc import Callable, Collection, Iterable
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from functools import cache, partial
from typing import Any

from django.db.models import QuerySet
from django.utils import timezone

from ringside.dogs.models import Ownership
from ringside.entries.models import Entry
from ringside.fees.models import FeeChange, FeeLine, Membership
from ringside.shows.books import rules_of
from ringside.shows.models import Show
from scoring import fees
from scoring.fees import Charge, Fee, Turn
from scoring.findings import Finding


@dataclass(frozen=True)
class Charged:
    """One entry with what it costs. `changed` is the secretary's change, where there is one."""

    entry_id: int
    charge: Charge
    fee: Fee
    changed: tuple[Decimal | None, date | None] | None = None


def payers_of(show: Show, people: Collection[int] | None = None) -> dict[int, int]:
    """Who is charged for each dog of the show: the first owner on record; of all dogs, or of those of these people."""
    owners = Ownership.objects.filter(dog__entries__show=show)
    return first_of(owners if people is None else owners.filter(dog__owners__in=people))


def first_of(owners: QuerySet[Ownership]) -> dict[int, int]:
    """The first owner of each dog."""
    found: dict[int, int] = {}
    for dog, person in owners.order_by("id").values_list("dog_id", "person_id"):
        found.setdefault(dog, person)
    return found


def table_of(show: Show) -> list[fees.FeeLine]:
    return [core_line(line) for line in FeeLine.objects.filter(show=show).order_by("id")]


def core_line(line: FeeLine) -> fees.FeeLine:
    turn: Any = line.turn or None
    for_members = {"member": True, "other": False}.get(line.membership)
    return fees.FeeLine(
        line.name, line.amount, frozenset(line.classes), turn, for_members, line.first_day, line.last_day
    )


def charged(show: Show, people: Collection[int] | None = None) -> dict[int | None, list[Charged]]:
    """Every entry's fee by payer, in the order they were entered; of these people, or of all. Five queries."""
    payers, zone = payers_of(show, people), timezone.get_current_timezone()
    entries = Entry.objects.filter(show=show)
    if people is not None:
        entries = entries.filter(dog__in=[dog for dog, payer in payers.items() if payer in people])
    by_payer = defaultdict(list)
    rows = entries.order_by("entered_at", "id").values_list("pk", "dog_id", "show_class__code", "entered_at")
    for entry, dog, code, at in rows:
        by_payer[payers.get(dog)].append((entry, dog, code, at.astimezone(zone).date()))
    members = set(Membership.objects.filter(show=show).values_list("person_id", flat=True))
    changes = changes_of(show)
    table = table_of(show)
    # Thirty thousand entries ask the table a few dozen questions.
    price = cache(partial(fees.fee_of, table))
    return {payer: _charged_one(rows, price, payer in members, changes) for payer, rows in by_payer.items()}


def changes_of(show: Show) -> dict[int, tuple[Decimal | None, date | None]]:
    rows = FeeChange.objects.filter(entry__show=show).values_list("entry_id", "amount", "entered_on")
    return {entry: (amount, day) for entry, amount, day in rows}


# An entry, its dog, the code of its class, the day it was entered on.
Row = tuple[int, int, str, date]


def _charged_one(
    rows: Iterable[Row],
    price: Callable[[Charge], Fee],
    is_member: bool,
    changes: dict[int, tuple[Decimal | None, date | None]],
) -> list[Charged]:
    """One payer's entries, which know each other: which dog is the first."""
    known = list(rows)
    turns = fees.turns([dog for _, dog, _, _ in known])
    return [_one(row, turn, price, is_member, changes.get(row[0])) for row, turn in zip(known, turns, strict=True)]


def _one(
    row: Row,
    turn: Turn,
    price: Callable[[Charge], Fee],
    is_member: bool,
    changed: tuple[Decimal | None, date | None] | None,
) -> Charged:
    entry_id, _, code, entered_on = row
    amount, day = changed or (None, None)
    charge = Charge(code, turn, is_member, day or entered_on)
    return Charged(entry_id, charge, price(charge) if amount is None else Fee(amount), changed)


def owed(of: Iterable[Charged]) -> Decimal:
    """What is settled of these entries; those whose fee is open add nothing."""
    return fees.total(one.fee.amount for one in of if one.fee.amount is not None)


def unsettled(of: Iterable[Charged]) -> list[Charged]:
    return [one for one in of if one.fee.amount is None]


def findings_on_table(show: Show, today: date) -> list[Finding]:
    """Gaps and overlaps of the fee table, from the day entries open to the day they close; none while it is empty."""
    table = table_of(show)
    if not table:
        return []
    first = show.entries_open or min(today, show.first_day)
    last = show.entries_close or show.first_day
    codes = [rule.code for rule in rules_of(show).classes]
    return fees.table_findings(table, codes, min(first, last), last)
