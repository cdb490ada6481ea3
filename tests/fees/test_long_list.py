"""The accounts at 30,000 entries: searched, filtered, paged, billed, at the same cost however many there are."""

from datetime import date
from decimal import Decimal

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext

from ringside.core.models import AuditLine
from ringside.fees.models import Invoice, Payment
from tests.fees.charged import ada_of, charging_show
from tests.many_entries import asked, enter, people
from tests.shows_for_tests import SmallShow

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]

MANY = 30_000
PAGE = "/office/small/fees/"
QUESTIONS = ["", "q=vale+77", "q=1100", "show=owes&order=most", "show=paid", "page=100", "show=owes&q=heath&page=3"]


@pytest.fixture
def at() -> SmallShow:
    return charging_show()


def add(at: SmallShow, count: int, start: int) -> None:
    """Every exhibitor enters two dogs; every fourth has paid both."""
    owners = people(count // 2)
    enter(at, [one for one in owners for _ in range(2)], start)
    told = {"kind": "received", "amount": Decimal(70), "day": date(2026, 5, 2), "how": "cash"}
    Payment.objects.bulk_create([Payment(show=at.show, person=one, **told) for one in owners[::4]])


def test_the_accounts_take_as_few_questions_at_30_000_entries_as_at_a_hundred_and_forty(at):
    client = Client()
    client.force_login(at.accounts["secretary"])
    add(at, 140, start=1000)
    few = {query: asked(client, f"{PAGE}?{query}")[0] for query in QUESTIONS}
    add(at, MANY, start=2000)
    many = {query: asked(client, f"{PAGE}?{query}") for query in QUESTIONS}
    assert {query: count for query, (count, _) in many.items()} == few
    assert max(few.values()) <= 32  # the left column asks ten of them
    assert "15072 exhibitors" in many[""][1]
    assert "Page 100 of 151" in many["page=100"][1]
    assert "Nora Vale 50<" in many["q=1100"][1]
    assert f"{18 + MANY // 8} exhibitors" in many["show=paid"][1]
    assert all(words.count("<tr><td>") <= 100 for _, words in many.values())


def test_everybody_who_owes_and_has_no_invoice_gets_one_under_numbers_without_gaps(at):
    add(at, 2000, start=1000)
    office = Client()
    office.force_login(at.accounts["secretary"])
    ada = ada_of(at)
    office.post(f"/office/small/fees/exhibitors/{ada.pk}/invoice/")
    with CaptureQueriesContext(connection) as queries:
        page = office.post("/office/small/fees/invoices/", follow=True).content.decode()
    assert "1001 invoices are made." in page
    # Written 500 at a time; SQLite takes fewer values in one statement.
    assert len(queries) < 64
    found = Invoice.objects.order_by("number")
    assert list(found.values_list("number", flat=True)) == list(range(1, 1003))
    assert found.values("person").distinct().count() == 1002
    assert sorted(found[1:].values_list("name", flat=True)) == list(found[1:].values_list("name", flat=True))
    paid = found.get(person__name="Nora Vale 4")
    assert (paid.total, paid.paid, [line["amount"] for line in paid.lines]) == (70, 70, ["40.00", "30.00"])
    line = AuditLine.objects.get(doing="issue-invoices")
    assert line.detail == {"count": 1001, "number": 2}
    again = office.post("/office/small/fees/invoices/", follow=True).content.decode()
    assert "Everybody whose fees are decided has an invoice." in again
    assert Invoice.objects.count() == 1002


def test_who_has_a_fee_that_is_not_settled_gets_no_invoice_with_the_others(at):
    at.show.fee_lines.filter(turn="further-dog").delete()
    office = Client()
    office.force_login(at.accounts["secretary"])
    office.post("/office/small/fees/invoices/")
    assert Invoice.objects.count() == 1
    assert not Invoice.objects.filter(person=ada_of(at)).exists()
