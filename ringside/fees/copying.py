"""An earlier show's fees as the start of a new one's: the terms and the table, days shifted; nobody's membership."""

from datetime import timedelta
from typing import Any

from ringside.fees.models import FeeLine, Terms
from ringside.shows.copying import shifted
from ringside.shows.models import Show

TERMS = ("currency", "club", "issuer", "account_holder", "iban", "bic", "note")
LINE = ("name", "classes", "turn", "membership", "amount")


def copy_fees(*, source: Show, show: Show, by: timedelta, **_: Any) -> None:
    """Takes over what the source charges; invoices begin at 1 again, and who is a member is asked each year."""
    terms = Terms.objects.filter(show=source).first()
    if terms:
        told = {name: getattr(terms, name) for name in TERMS}
        Terms.objects.create(show=show, pay_by=shifted(terms.pay_by, by), **told)
    for line in FeeLine.objects.filter(show=source).order_by("id"):
        told = {name: getattr(line, name) for name in LINE}
        days = {name: shifted(getattr(line, name), by) for name in ("first_day", "last_day")}
        FeeLine.objects.create(show=show, **told, **days)
