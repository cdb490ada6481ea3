"""The number card's code: card and address both proved, once, limited in tries, and nothing of anybody else's."""

import io
from datetime import timedelta

import pypdf
import pytest
from django.core import mail
from django.core.cache import cache
from django.test import Client
from django.utils import timezone

from ringside.dogs.models import Dog, Ownership
from ringside.entries.models import Entry
from ringside.fees.charging import payers_of
from ringside.home import claiming
from ringside.home.models import ClaimCode
from ringside.people.models import Account, Person
from ringside.shows.models import Show
from tests.home.published import published

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def shown():
    cache.clear()
    shown = published()
    Show.objects.update(first_day=timezone.localdate(), last_day=timezone.localdate())
    # Dog 1 came without an address; its owner has a namesake with another dog, without an address too.
    Ownership.objects.filter(dog=shown.at.entries[0].dog).delete()
    nameless = Person.objects.create(name="Ada Heath")
    namesakes = Dog.objects.create(name="Other", breed="boxer", sex="dog", born="2022-01-01")
    for dog in (shown.at.entries[0].dog, namesakes):
        Ownership.objects.create(dog=dog, person=nameless)
    return shown


def code_for(entry: Entry) -> str:
    return claiming.codes_for(entries=[entry])[entry.pk]


def type_in(client: Client, number: int, code: str, email: str = "new@heath.example"):
    return client.post("/claim/", {"number": number, "code": code, "email": email})


def sign_in(client: Client, email: str = "new@heath.example") -> None:
    client.post("/sign-in/", {"email": email, "next": "/claim/finish/"})
    code = next(line for line in mail.outbox[-1].body.splitlines() if line and " " not in line)
    client.post("/sign-in/code/", {"code": code})


def claimed(shown, email: str = "new@heath.example") -> Client:
    client = Client()
    assert type_in(client, 1, code_for(shown.at.entries[0]), email).status_code == 200
    sign_in(client, email)
    assert client.post("/claim/finish/").status_code == 302
    return client


def test_card_and_address_together_bring_the_dog_its_owner(shown):
    client = claimed(shown)
    page = client.get("/my-dogs/").content.decode()
    assert "Dog 1" in page
    assert client.get(f"/critiques/{shown.critique(1).pk}/").status_code == 200


def test_who_claims_stands_in_the_first_owners_place_and_is_charged_for_the_dog(shown):
    dog = shown.at.entries[0].dog
    Ownership.objects.create(dog=dog, person=Person.objects.create(name="Ben Moor"))
    claimed(shown)
    assert [one.person.name for one in Ownership.objects.filter(dog=dog).order_by("id")] == ["Ada Heath", "Ben Moor"]
    assert payers_of(shown.at.show)[dog.pk] == Person.objects.get(email="new@heath.example").pk


def test_a_namesake_without_an_address_gives_nothing_away(shown):
    page = claimed(shown).get("/my-dogs/").content.decode()
    assert "Other" not in page
    assert Ownership.objects.filter(dog__name="Other").count() == 1
    assert list(shown.at.entries[0].dog.owners.values_list("name", "email")) == [("Ada Heath", "new@heath.example")]


def test_the_code_alone_attaches_nobody(shown):
    client = Client()
    type_in(client, 1, code_for(shown.at.entries[0]))
    assert client.post("/claim/finish/").status_code == 302
    assert not shown.at.entries[0].dog.owners.filter(account__isnull=False).exists()


def test_another_signed_in_account_cannot_finish_the_claim(shown):
    client = shown.client("cleo")
    type_in(client, 1, code_for(shown.at.entries[0]))
    client.post("/claim/finish/")
    assert not shown.at.entries[0].dog.owners.filter(account__isnull=False).exists()


def test_a_code_is_used_once(shown):
    code = code_for(shown.at.entries[0])
    claimed(shown)
    assert type_in(Client(), 1, code, "second@heath.example").status_code == 403
    assert claiming.codes_for(entries=[shown.at.entries[0]]) == {}


def test_two_who_typed_the_same_code_are_one_owner(shown):
    code, first, second = code_for(shown.at.entries[0]), Client(), Client()
    type_in(first, 1, code)
    type_in(second, 1, code, "second@heath.example")
    sign_in(first)
    sign_in(second, "second@heath.example")
    assert first.post("/claim/finish/").status_code == 302
    assert second.post("/claim/finish/").status_code == 409
    assert list(shown.at.entries[0].dog.owners.values_list("email", flat=True)) == ["new@heath.example"]


def test_the_code_of_one_dog_opens_no_other(shown):
    assert type_in(Client(), 2, code_for(shown.at.entries[0])).status_code == 403
    assert not Account.objects.filter(email="new@heath.example").exists()


def test_wrong_codes_are_limited_for_a_number_whatever_the_address_they_come_from(shown):
    code = code_for(shown.at.entries[0])
    for count in range(claiming.MOST_WRONG_FOR_NUMBER):
        answer = Client(REMOTE_ADDR=f"10.0.0.{count}").post(
            "/claim/", {"number": 1, "code": "AAAAAAAA", "email": "new@heath.example"}
        )
        assert answer.status_code == 403
    assert type_in(Client(), 1, code).status_code == 429
    assert ClaimCode.objects.get().tries == claiming.MOST_WRONG_FOR_NUMBER


def test_wrong_codes_are_limited_from_one_address(shown):
    for number in range(100, 100 + claiming.MOST_WRONG_FROM_ADDRESS):
        type_in(Client(), number, "AAAAAAAA")
    assert type_in(Client(), 1, code_for(shown.at.entries[0])).status_code == 429


def test_a_code_ends_two_months_after_the_show(shown):
    code = code_for(shown.at.entries[0])
    past = timezone.localdate() - claiming.GOOD_FOR - timedelta(days=1)
    Show.objects.update(first_day=past, last_day=past)
    assert type_in(Client(), 1, code).status_code == 403


def test_a_code_is_taken_as_it_is_typed(shown):
    code = code_for(shown.at.entries[0])
    assert type_in(Client(), 1, f" {code[:4].lower()}-{code[4:]} ").status_code == 200


def test_the_cards_carry_codes_for_dogs_without_an_address_only(shown):
    answer = shown.client("secretary").post("/office/small/number-cards.pdf", {"codes": "missing", "size": "A4"})
    pages = pypdf.PdfReader(io.BytesIO(answer.content)).pages
    text = " ".join(page.extract_text() for page in pages)
    code = code_for(shown.at.entries[0])
    assert len(pages) == 1
    assert f"{code[:4]} {code[4:]}" in text
    assert text.count("claim code") == 1
    assert ClaimCode.objects.count() == 1


def test_a_card_printed_again_carries_the_same_code(shown):
    assert code_for(shown.at.entries[0]) == code_for(shown.at.entries[0])
