"""What an entry costs by a show's own fee table, and how an exhibitor's account stands.

A show sets its own fees; no figure of a governing body is in here. Amounts are decimals in the show's currency.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal
from itertools import product
from typing import Literal

from scoring.findings import Finding, refuses

# Which of an exhibitor's entries: of the first dog, of another dog, of a dog that is in another class already.
Turn = Literal["first-dog", "further-dog", "further-class"]
TURNS: tuple[Turn, ...] = ("first-dog", "further-dog", "further-class")
# What a line may ask of it: one turn, or a dog's first class whichever dog of the exhibitor's it is.
Asked = Turn | Literal["first-class"]
Standing = Literal["nothing owed", "owes", "partly paid", "paid", "to refund"]
ZERO = Decimal(0)


@dataclass(frozen=True, slots=True)
class FeeLine:
    """One line of the table. No classes, no turn, None for `for_members`, no first or last day: it asks nothing there.

    Both days belong to the line. `code` names the line in findings.
    """

    code: str
    amount: Decimal
    classes: frozenset[str] = frozenset()
    turn: Asked | None = None
    for_members: bool | None = None
    first_day: date | None = None
    last_day: date | None = None


@dataclass(frozen=True, slots=True)
class Charge:
    """An entry as the fee table sees it; `day` is the day it was entered on."""

    class_code: str
    turn: Turn
    is_member: bool
    day: date


@dataclass(frozen=True, slots=True)
class Fee:
    """What an entry costs, and by which line; or why that is not settled: then `amount` is None."""

    amount: Decimal | None
    line: str = ""
    finding: Finding | None = None


def fits(line: FeeLine, charge: Charge) -> bool:
    """Whether a line is meant for an entry: everything that the line asks is so."""
    return (
        (not line.classes or charge.class_code in line.classes)
        and (line.turn in (None, charge.turn) or (line.turn == "first-class" and charge.turn != "further-class"))
        and line.for_members in (None, charge.is_member)
        and (line.first_day is None or line.first_day <= charge.day)
        and (line.last_day is None or charge.day <= line.last_day)
    )


def fee_of(table: Iterable[FeeLine], charge: Charge) -> Fee:
    """The one line that fits an entry.

    Rule: exactly one line fits. A show that charges by its own table must not guess: where none fits, or more than
    one, nothing is charged and the finding says why. Common practice of entry forms, no source.
    Returns: the fee; its finding is `fee-missing` or `fee-not-clear` where the amount is None.
    """
    found = [line for line in table if fits(line, charge)]
    if len(found) == 1:
        return Fee(found[0].amount, found[0].code)
    facts = {"class": charge.class_code, "turn": charge.turn, "member": charge.is_member, "day": charge.day.isoformat()}
    if not found:
        return Fee(None, finding=refuses("fee-missing", **facts))
    return Fee(None, finding=refuses("fee-not-clear", **facts, lines=[line.code for line in found]))


def turns(dogs: Sequence[object]) -> list[Turn]:
    """The turn of each of one exhibitor's entries, given their dogs in the order they were entered.

    Rule: the first entry is that of the first dog; a dog that comes again is in another class; every other dog is a
    further one. Withdrawn entries keep their turn, so that no other entry's fee changes by a withdrawal.
    """
    seen: set[object] = set()
    found: list[Turn] = []
    for dog in dogs:
        found.append("further-class" if dog in seen else "further-dog" if seen else "first-dog")
        seen.add(dog)
    return found


def table_findings(table: Sequence[FeeLine], classes: Sequence[str], first: date, last: date) -> list[Finding]:
    """What is open in a fee table before anybody enters: entries that no line fits, or that several fit.

    Limits: every class, turn and membership is tried from `first` to `last` (both included) on each day on which a
    line begins to count or has just ended; between those days nothing changes.
    Returns: a finding for each turn, membership and day, with all the classes it concerns.
    """
    found = []
    for day, is_member, turn in product(_turning_days(table, first, last), (False, True), TURNS):
        fees = {code: fee_of(table, Charge(code, turn, is_member, day)).finding for code in classes}
        for kind in ("fee-missing", "fee-not-clear"):
            some = [code for code, finding in fees.items() if finding and finding.code == kind]
            if some:
                facts = {"classes": some, "turn": turn, "member": is_member, "day": day.isoformat()}
                found.append(refuses(f"{kind}-in-table", **facts))
    return found


def _turning_days(table: Iterable[FeeLine], first: date, last: date) -> list[date]:
    days = {first}
    for line in table:
        days |= {line.first_day} if line.first_day else set()
        days |= {line.last_day + timedelta(days=1)} if line.last_day and line.last_day < date.max else set()
    return sorted(day for day in days if first <= day <= last)


def total(amounts: Iterable[Decimal]) -> Decimal:
    return sum(amounts, ZERO)


def standing(owed: Decimal, paid: Decimal) -> Standing:
    """How an account stands, in a word. `paid` is what came in less what was paid back."""
    if paid > owed:
        return "to refund"
    if owed == ZERO:
        return "nothing owed"
    if paid == owed:
        return "paid"
    return "partly paid" if paid > ZERO else "owes"
