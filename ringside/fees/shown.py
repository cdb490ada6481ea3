"""The fee table as it is read: by the office, and by whoever is about to enter a dog."""

from dataclasses import dataclass

from ringside.fees.accounts import terms_of
from ringside.fees.models import FeeLine
from ringside.fees.money import money
from ringside.shows.books import class_names
from ringside.shows.models import Show


@dataclass(frozen=True)
class ShownLine:
    """A line with its amount and its classes in words; no classes for every class."""

    line: FeeLine
    amount: str
    classes: str


def table_shown(show: Show) -> list[ShownLine]:
    currency, names = terms_of(show).currency, class_names(show)
    return [
        ShownLine(line, money(line.amount, currency), ", ".join(names.get(code, code) for code in line.classes))
        for line in FeeLine.objects.filter(show=show).order_by("id")
    ]
