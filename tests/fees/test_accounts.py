"""What exhibitors owe and have paid: by the table, by the secretary's word, in the list and in its files."""

import csv
import io
from datetime import date, datetime
from decimal import Decimal
from zoneinfo import ZoneInfo

import openpyxl
import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.utils import timezone

from ringside.core.denied import Denied, NotNow
from ringside.core.models import AuditLine
from ringside.dogs.models import Dog, Ownership
from ringside.entries.models import Entry
from ringside.fees import accounts, actions, invoicing, setting
from ringside.fees.models import Invoice, Membership, Payment
from ringside.fees.one import account_of
from ringside.home.claiming import attach, codes_for
from ringside.people.models import Person
from ringside.shows.models import ShowClass
from tests.fees.charged import ada_of, charging_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def at():
    return charging_show()


def office(at, name="secretary") -> Client:
    client = Client()
    client.force_login(at.accounts[name])
    return client


def pay(at, amount, kind="received", **more):
    told = {"day": date(2026, 5, 2), "how": "transfer", **more}
    return actions.record_payment(
        who=at.accounts["secretary"], show=at.show, person=ada_of(at), kind=kind, amount=Decimal(amount), **told
    )


def standing(at):
    found = account_of(at.show, ada_of(at))
    return found.owed, found.paid, found.state


def fees_of(at):
    return [str(line.amount) for line in account_of(at.show, ada_of(at)).lines]


def test_the_first_dog_costs_the_first_fee_and_each_further_one_the_next(at):
    assert fees_of(at) == ["40.00 EUR", "30.00 EUR", "30.00 EUR"]
    setting.set_member(who=at.accounts["secretary"], show=at.show, person=ada_of(at), is_member=True)
    assert fees_of(at) == ["30.00 EUR", "20.00 EUR", "20.00 EUR"]


def test_a_dog_in_a_second_class_pays_that_class_by_the_cheaper_line_and_is_no_further_dog(at):
    """As entry forms in Britain have it: a first class for each dog, every other class of the same dog for less."""
    breed = at.show_class.show_breed
    more = ShowClass.objects.create(show_breed=breed, sex="dog", code="working")
    Entry.objects.create(show=at.show, show_class=more, dog=at.entries[0].dog, number=9)
    assert fees_of(at) == ["40.00 EUR", "30.00 EUR", "30.00 EUR", "15.00 EUR"]


def test_who_enters_late_pays_the_late_fee_and_each_class_its_own(at):
    at.show.fee_lines.all().delete()
    told = {"who": at.accounts["secretary"], "show": at.show, "turn": "", "membership": ""}
    early, late = date(2026, 4, 30), date(2026, 5, 1)
    setting.add_line(**told, name="Early", amount=Decimal(30), classes=["open"], first_day=None, last_day=early)
    setting.add_line(**told, name="Late", amount=Decimal(45), classes=["open"], first_day=late, last_day=None)
    setting.add_line(**told, name="Puppies", amount=Decimal(15), classes=["puppy"], first_day=None, last_day=None)
    puppies = ShowClass.objects.create(show_breed=at.show_class.show_breed, sex="dog", code="puppy")
    Entry.objects.filter(pk=at.entries[0].pk).update(show_class=puppies)
    # Midnight of the first of May where the show is held is still April by the clock of the database.
    zone = ZoneInfo("Europe/Berlin")
    for entry, entered_at in (
        (at.entries[1], datetime(2026, 4, 30, 23, 30, tzinfo=zone)),
        (at.other_entry, datetime(2026, 5, 1, 0, 30, tzinfo=zone)),
    ):
        Entry.objects.filter(pk=entry.pk).update(entered_at=entered_at)
    with timezone.override("Europe/Berlin"):
        assert sorted(fees_of(at)) == ["15.00 EUR", "30.00 EUR", "45.00 EUR"]


def test_a_day_on_which_an_entry_counts_as_entered_decides_between_early_and_late(at):
    at.show.fee_lines.all().delete()
    told = {"who": at.accounts["secretary"], "show": at.show, "turn": "", "membership": "", "classes": []}
    setting.add_line(**told, name="Early", amount=Decimal(30), first_day=None, last_day=date(2020, 4, 30))
    setting.add_line(**told, name="Late", amount=Decimal(45), first_day=date(2020, 5, 1), last_day=None)
    actions.change_fee(
        who=told["who"], entry=at.entries[0], amount=None, entered_on=date(2020, 4, 1), why="other", note="By post"
    )
    assert fees_of(at) == ["30.00 EUR", "45.00 EUR", "45.00 EUR"]


def test_the_secretarys_amount_counts_with_its_reason_until_the_table_counts_again(at):
    told = {"who": at.accounts["secretary"], "entry": at.entries[0]}
    actions.change_fee(**told, amount=Decimal(0), entered_on=None, why="judge", note="")
    assert fees_of(at)[0] == "0.00 EUR"
    assert AuditLine.objects.get(doing="change-entry-fee").detail["why"] == "judge"
    actions.undo_fee_change(**told)
    assert fees_of(at)[0] == "40.00 EUR"
    with pytest.raises(NotNow):
        actions.undo_fee_change(**told)


def test_a_change_without_words_for_another_reason_is_refused_on_the_page(at):
    address = f"/office/small/fees/entries/{at.entries[0].pk}/"
    page = office(at).post(address, {"amount": "5", "why": "other"}).content.decode()
    assert "Write the reason down" in page
    assert office(at).post(address, {"amount": "5", "why": "other", "note": "Agreed"}).status_code == 302
    assert fees_of(at)[0] == "5.00 EUR"


def test_payments_and_refunds_move_the_balance(at):
    assert standing(at) == (100, 0, "owes")
    pay(at, "60")
    assert standing(at) == (100, 60, "partly paid")
    pay(at, "50")
    assert standing(at) == (100, 110, "to refund")
    pay(at, "10", "refunded", why="other", note="Paid twice")
    assert standing(at) == (100, 100, "paid")


def test_no_more_goes_back_than_came_in_and_never_without_a_reason(at):
    received = pay(at, "20")
    with pytest.raises(NotNow, match="no more than that"):
        pay(at, "20.01", "refunded", why="cancelled")
    with pytest.raises(NotNow, match="why"):
        pay(at, "5", "refunded")
    pay(at, "5", "refunded", why="cancelled")
    with pytest.raises(NotNow, match="strike the refund out first"):
        actions.strike_payment(who=at.accounts["secretary"], payment=received, why="Wrong person")


def test_a_line_typed_wrongly_is_struck_out_and_stays_to_be_seen(at):
    payment = pay(at, "60")
    answer = office(at).post(f"/office/small/fees/payments/{payment.pk}/strike/", {"why": "Typed twice"}, follow=True)
    assert "Typed twice" in answer.content.decode()
    assert standing(at) == (100, 0, "owes")
    assert Payment.objects.count() == 1


def test_the_page_keeps_what_was_typed_when_it_refuses(at):
    sent = {"kind": "refunded", "amount": "12,00", "day": "2026-05-02", "how": "cash", "why": "judge", "note": "Bank"}
    page = office(at).post(f"/office/small/fees/exhibitors/{ada_of(at).pk}/", sent).content.decode()
    assert "no more than that can go back" in page
    assert 'value="12,00"' in page
    assert not Payment.objects.exists()


def test_the_assistant_may_not_book_money(at):
    with pytest.raises(Denied):
        actions.record_payment(
            who=at.accounts["assistant"], show=at.show, person=ada_of(at), kind="received", amount=Decimal(1),
            day=date(2026, 5, 2), how="cash",
        )  # fmt: skip


def listed(at, **given):
    asked = accounts.Asked.of(given)
    return accounts.listed(accounts.found(at.show, asked.text), asked)


def test_the_list_is_searched_filtered_and_added_up(at):
    pay(at, "110")
    everybody = listed(at)
    assert sum(one.entries for one in everybody) == Entry.objects.count()
    assert [one.name for one in listed(at, show="refund")] == [ada_of(at).name]
    assert [one.name for one in listed(at, q="4")] == [ada_of(at).name]
    assert listed(at, q="nobody at all") == []
    totals = accounts.totals(everybody)
    assert totals.owed - totals.paid == totals.still_owed - totals.to_refund
    assert totals.to_refund == 10


def test_entries_without_an_owner_are_said_to_be_charged_to_nobody(at):
    assert "Nobody is charged" not in office(at).get("/office/small/fees/").content.decode()
    Ownership.objects.filter(dog=at.other_entry.dog).delete()
    assert "Nobody is charged for 1 entry" in office(at).get("/office/small/fees/").content.decode()


def test_the_list_takes_the_same_queries_for_more_exhibitors(at):
    client = office(at)

    def queries() -> int:
        with CaptureQueriesContext(connection) as caught:
            assert client.get("/office/small/fees/").status_code == 200
        return len(caught)

    queries()
    before = queries()
    for number in range(20, 50):
        person = Person.objects.create(name=f"Owner {number}")
        dog = Dog.objects.create(name=f"Dog {number}", breed="boxer", sex="dog", born=date(2022, 5, 1))
        Ownership.objects.create(dog=dog, person=person)
        Entry.objects.create(show=at.show, show_class=at.show_class, dog=dog, number=number)
    assert queries() == before


def test_the_files_hold_the_list_with_amounts_as_numbers_and_no_formula(at):
    Person.objects.filter(pk=ada_of(at).pk).update(name="=Ada")
    pay(at, "60.50")
    content = office(at).get("/office/small/fees/list.csv").content.decode("utf-8-sig")
    row = next(row for row in csv.DictReader(io.StringIO(content), delimiter=";") if row["Entries"] == "3")
    assert (row["Exhibitor"], row["Fees"], row["Paid"], row["Still to pay"]) == ("'=Ada", "100.00", "60.50", "39.50")
    sheet = openpyxl.load_workbook(io.BytesIO(office(at).get("/office/small/fees/list.xlsx").content)).active
    cells = next(cells for cells in sheet.iter_rows(values_only=True) if cells[0] == "'=Ada")
    assert cells[4:7] == (100, 60.5, 39.5)


def test_an_invoice_is_numbered_without_gaps_and_frozen(at):
    secretary, ada = at.accounts["secretary"], ada_of(at)
    first = invoicing.issue_invoice(who=secretary, show=at.show, person=ada)
    with pytest.raises(NotNow, match="nothing has changed"):
        invoicing.issue_invoice(who=secretary, show=at.show, person=ada)
    pay(at, "40")
    second = invoicing.issue_invoice(who=secretary, show=at.show, person=ada)
    at.show.fee_lines.update(amount=99)
    first.refresh_from_db()
    assert [one.number for one in Invoice.objects.order_by("number")] == [1, 2]
    assert (first.total, first.paid, second.still_owed, second.replaces) == (100, 0, 60, first)
    assert [line["amount"] for line in first.lines] == ["40.00", "30.00", "30.00"]


def test_invoices_that_replace_each_other_can_be_deleted_with_their_show(at):
    secretary, ada = at.accounts["secretary"], ada_of(at)
    invoicing.issue_invoice(who=secretary, show=at.show, person=ada)
    pay(at, "40")
    invoicing.issue_invoice(who=secretary, show=at.show, person=ada)
    Invoice.objects.filter(show=at.show).delete()
    assert not Invoice.objects.exists()


def test_no_invoice_goes_out_while_a_fee_is_not_settled(at):
    at.show.fee_lines.filter(turn="further-dog").delete()
    answer = office(at).post(f"/office/small/fees/exhibitors/{ada_of(at).pk}/invoice/", follow=True)
    assert "is not decided yet" in answer.content.decode()
    assert not Invoice.objects.exists()


def test_money_goes_along_when_a_claim_puts_another_person_in_the_owners_place(at):
    old = Person.objects.create(name="Ben Reed")
    Ownership.objects.filter(dog=at.entries[0].dog).update(person=old)
    secretary = at.accounts["secretary"]
    told = {"who": secretary, "show": at.show, "person": old}
    actions.record_payment(**told, kind="received", amount=Decimal(40), day=date(2026, 5, 2), how="cash")
    setting.set_member(**told, is_member=True)
    invoicing.issue_invoice(**told)
    codes_for(entries=[at.entries[0]])
    attach(account=at.accounts["stranger"], entry_id=at.entries[0].pk)
    new = at.entries[0].dog.owners.get()
    assert new != old
    assert {Payment.objects.get().person, Invoice.objects.get().person, Membership.objects.get().person} == {new}


def test_a_namesakes_money_stays_where_they_still_own_an_entered_dog(at):
    old = Person.objects.create(name="Ben Reed")
    Ownership.objects.filter(dog__in=[at.entries[0].dog, at.other_entry.dog]).update(person=old)
    actions.record_payment(
        who=at.accounts["secretary"], show=at.show, person=old, kind="received", amount=Decimal(40),
        day=date(2026, 5, 2), how="cash",
    )  # fmt: skip
    codes_for(entries=[at.entries[0]])
    attach(account=at.accounts["stranger"], entry_id=at.entries[0].pk)
    assert Payment.objects.get().person == old


def test_an_exhibitor_sees_their_own_account_and_no_other(at):
    pay(at, "25")
    page = office(at, "ada").get("/my-dogs/owed/").content.decode()
    assert "Small Show" in page
    assert "75.00 EUR" in page
    assert "75.00 EUR" not in office(at, "stranger").get("/my-dogs/owed/").content.decode()
    made = invoicing.issue_invoice(who=at.accounts["secretary"], show=at.show, person=ada_of(at))
    address = f"/papers/invoices/{made.pk}.pdf"
    assert office(at, "ada").get(address).content.startswith(b"%PDF")
    assert office(at, "stranger").get(address).status_code == 404
    assert office(at, "steward").get(address).status_code == 404


def test_payments_are_among_what_is_kept_and_stay_without_the_address_when_a_person_is_forgotten(at):
    pay(at, "25")
    invoicing.issue_invoice(who=at.accounts["secretary"], show=at.show, person=ada_of(at))
    client = office(at, "ada")
    kept = client.get("/my-dogs/kept.json").json()
    assert [one["amount"] for one in kept["payments"]] == ["25.00"]
    assert [one["total"] for one in kept["invoices"]] == ["100.00"]
    client.post("/my-dogs/forget/", {"email": "ada@small.example"})
    assert Payment.objects.get().person.email == ""
    assert Invoice.objects.get().name
    assert "@" not in str(Invoice.objects.values().get())
