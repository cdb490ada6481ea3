"""The fee table of a show: set on a page, refused in words, what is open in it said before anybody enters."""

from datetime import date

import pytest
from django.test import Client

from ringside.core.models import AuditLine
from ringside.fees.models import FeeLine, Payment, Terms
from ringside.shows.models import Show
from tests.fees.charged import charging_show
from tests.shows_for_tests import small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]
SET_UP = "/office/small/fees/set-up/"
TERMS = {"currency": "EUR", "account_holder": "Small Club", "iban": "de89 3704 0044 0532 0130 00", "bic": ""}


def signed_in(at, name="secretary") -> Client:
    client = Client()
    client.force_login(at.accounts[name])
    return client


def test_a_line_typed_on_the_page_is_in_the_table_with_an_audit_line():
    at = small_show()
    sent = {"name": "Entry", "amount": "32,50", "last_day": "2026-05-01", "classes": ["open", "puppy"]}
    answer = signed_in(at).post(f"{SET_UP}new/", sent, follow=True)
    line = FeeLine.objects.get()
    assert (str(line.amount), set(line.classes)) == ("32.50", {"open", "puppy"})
    assert line.last_day.isoformat() == "2026-05-01"
    assert "32.50 EUR" in answer.content.decode()
    assert AuditLine.objects.get(doing="add-fee").detail == {"amount": "32.50"}


def test_a_line_is_changed_and_removed():
    at = charging_show()
    line = FeeLine.objects.get(name="first-dog other")
    client = signed_in(at)
    client.post(f"{SET_UP}{line.pk}/", {"name": "First dog", "amount": "45", "turn": "first-dog"})
    line.refresh_from_db()
    assert (line.name, line.amount, line.membership) == ("First dog", 45, "")
    client.post(f"{SET_UP}{line.pk}/remove/")
    assert not FeeLine.objects.filter(pk=line.pk).exists()
    assert set(AuditLine.objects.filter(about=f"fee:{line.pk}").values_list("doing", flat=True)) == {
        "add-fee", "change-fee", "remove-fee",
    }  # fmt: skip


def test_an_amount_without_smaller_units_stands_in_the_form_as_it_may_be_sent_again():
    at = charging_show()
    Terms.objects.update(currency="JPY")
    line, client = FeeLine.objects.get(name="first-dog other"), signed_in(at)
    assert 'name="amount" value="40"' in client.get(f"{SET_UP}{line.pk}/").content.decode()
    client.post(f"/office/small/fees/entries/{at.entries[0].pk}/", {"amount": "1500", "why": "judge"})
    page = client.get(f"/office/small/fees/entries/{at.entries[0].pk}/").content.decode()
    assert 'name="amount" value="1500"' in page


@pytest.mark.parametrize(
    ("sent", "words"),
    [
        ({"name": "first-dog other", "amount": "1"}, "There is a fee of this name already."),
        ({"name": "New", "amount": "-1"}, "greater than or equal to 0"),
        ({"name": "New", "amount": "1.234"}, "no more than 2 decimal places"),
        ({"name": "New", "amount": "NaN"}, "Enter a number."),
        ({"name": "New", "amount": "1", "first_day": "2026-05-02", "last_day": "2026-05-01"}, "lies before the first"),
    ],
)
def test_what_cannot_be_is_refused_in_words_and_stays_typed(sent, words):
    page = signed_in(charging_show()).post(f"{SET_UP}new/", sent).content.decode()
    assert words in page
    assert f'value="{sent["amount"]}"' in page
    assert FeeLine.objects.count() == 5


def test_gaps_and_overlaps_of_the_table_are_said_on_the_page():
    at = charging_show()
    assert "Not decided yet" not in signed_in(at).get(SET_UP).content.decode()
    FeeLine.objects.get(name="further-class").delete()
    FeeLine.objects.create(show=at.show, name="Also", amount=1, turn="first-dog", membership="member")
    page = signed_in(at).get(SET_UP).content.decode()
    assert "No fee fits further class" in page
    assert "Several fees fit first dog, member: yes" in page


def test_the_account_number_is_kept_joined_and_one_with_wrong_digits_is_refused():
    at = small_show()
    signed_in(at).post(SET_UP, TERMS)
    assert Terms.objects.get().iban == "DE89370400440532013000"
    page = signed_in(at).post(SET_UP, {**TERMS, "iban": "DE89370400440532013001"}).content.decode()
    assert "its check digits do not fit" in page
    page = signed_in(at).post(SET_UP, {**TERMS, "bic": "ABC"}).content.decode()
    assert "is no bank" in page
    page = signed_in(at).post(SET_UP, {**TERMS, "account_holder": ""}).content.decode()
    assert "Write whose account this is" in page
    assert Terms.objects.get().account_holder == "Small Club"


def test_the_currency_stays_once_money_is_on_record():
    at = charging_show()
    person = at.entries[0].dog.owners.get()
    Payment.objects.create(show=at.show, person=person, kind="received", amount=1, day="2026-05-01", how="cash")
    page = signed_in(at).post(SET_UP, {**TERMS, "currency": "CHF"}).content.decode()
    assert "the currency cannot change any more" in page
    assert Terms.objects.get().currency == "EUR"


def test_whoever_is_about_to_enter_reads_the_fees_first_and_nobody_does_where_there_are_none():
    at = charging_show()
    Show.objects.update(entries_open=date(2020, 1, 1), entries_close=at.show.first_day)
    page = Client().get("/enter/small/").content.decode()
    assert "40.00 EUR" in page
    assert "Members are those of Small Club." in page
    assert "DE89" not in page
    at.show.fee_lines.all().delete()
    assert 'id="fees"' not in Client().get("/enter/small/").content.decode()


def test_the_assistant_sees_accounts_and_may_not_set_fees():
    at = charging_show()
    assert signed_in(at, "assistant").get("/office/small/fees/").status_code == 200
    assert signed_in(at, "assistant").get(SET_UP).status_code == 403
    assert signed_in(at, "steward").get("/office/small/fees/").status_code == 403
