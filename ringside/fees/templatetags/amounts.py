"""Amounts on pages, and the fee table on the page where dogs are entered."""

from decimal import Decimal
from typing import Any

from django import template

from ringside.fees.accounts import terms_of
from ringside.fees.money import money as worded
from ringside.fees.shown import table_shown
from ringside.shows.models import Show

register = template.Library()


@register.simple_tag
def money(amount: Decimal, currency: str) -> str:
    return worded(amount, currency)


@register.inclusion_tag("fees/public.html")
def fee_table(show: Show) -> dict[str, Any]:
    """What the show charges; nothing where it has no fee table."""
    lines = table_shown(show)
    asks_members = any(one.line.membership for one in lines)
    return {"lines": lines, "club": terms_of(show).club if asks_members else ""}
