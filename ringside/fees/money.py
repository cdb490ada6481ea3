"""Amounts of money in words and digits."""

import tomllib
from decimal import Decimal
from functools import cache
from pathlib import Path

from django.utils.formats import number_format


@cache
def digits() -> dict[str, int]:
    """How many digits follow the point, by currency."""
    told = tomllib.loads(Path(__file__).with_name("currencies.toml").read_text(encoding="utf-8"))
    found: dict[str, int] = told["digits"]
    return found


def plain(amount: Decimal, currency: str) -> str:
    """Digits with a point: "12.50", and "1250" where the currency has no smaller unit."""
    return f"{amount:.{digits().get(currency, 2)}f}"


def money(amount: Decimal, currency: str) -> str:
    """As the reader's language writes amounts: "1,250.00 EUR", "1.250,00 EUR"."""
    told = number_format(amount, digits().get(currency, 2), use_l10n=True, force_grouping=True)
    return f"{told} {currency}"
