"""Sign-in by code: used once, limited in tries, telling nobody which addresses are known."""

import pytest
from django.core import mail
from django.test import Client

from ringside.people.actions import account_for, person_for
from ringside.people.models import Account

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


def code_in(letter) -> str:
    return next(line for line in letter.body.splitlines() if line and " " not in line)


def asked(email: str) -> Client:
    client = Client()
    assert client.post("/sign-in/", {"email": email}).status_code == 302
    return client


def test_a_code_signs_in_whatever_the_case_of_the_address():
    account_for(email="Ada@Heath.example")
    client = asked("ADA@heath.example")
    assert client.post("/sign-in/code/", {"code": code_in(mail.outbox[0])}).status_code == 302
    assert client.get("/my-dogs/").status_code == 200


def test_a_code_is_good_for_one_use():
    account_for(email="ada@heath.example")
    client = asked("ada@heath.example")
    code = code_in(mail.outbox[0])
    client.post("/sign-in/code/", {"code": code})
    client.post("/sign-in/out/")
    client.post("/sign-in/code/", {"code": code})
    assert client.get("/my-dogs/").status_code == 302


def test_another_browser_cannot_use_the_code():
    account_for(email="ada@heath.example")
    asked("ada@heath.example")
    other = asked("ben@heath.example")
    other.post("/sign-in/code/", {"code": code_in(mail.outbox[0])})
    assert other.get("/my-dogs/").status_code == 302


def test_after_five_wrong_codes_the_right_one_is_refused():
    account_for(email="ada@heath.example")
    client = asked("ada@heath.example")
    for _ in range(5):
        client.post("/sign-in/code/", {"code": "WRONG1"})
    client.post("/sign-in/code/", {"code": code_in(mail.outbox[0])})
    assert client.get("/my-dogs/").status_code == 302


def test_an_unknown_address_gets_the_same_page_and_no_account():
    known, unknown = Client(), Client()
    account_for(email="ada@heath.example")
    answers = [
        known.post("/sign-in/", {"email": "ada@heath.example"}),
        unknown.post("/sign-in/", {"email": "x@y.example"}),
    ]
    assert len({(answer.status_code, answer.url) for answer in answers}) == 1
    assert Account.objects.count() == 1
    assert "no entry carries it" in mail.outbox[1].body


def test_one_address_is_one_account_and_one_person_by_name():
    assert person_for(name="Ada", email="ada@heath.example") == person_for(name="Ada", email="ADA@heath.example")
    assert Account.objects.count() == 1
