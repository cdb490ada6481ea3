"""Entries that wait for the secretary: what the pages say of them, to whoever sent them and to whoever decides."""

import re

import pytest

from ringside.entries import waiting
from ringside.entries.models import EntryRequest
from ringside.entries.web import queries
from tests.entries.test_web import LATE, by_the_office, choose, own_dog, page

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


def test_a_dog_sent_again_after_a_refusal_waits_on_the_page_of_own_dogs(at, dora):
    dog = own_dog(at, dora)
    first = choose(at, dora, dog, "open", today=LATE)
    waiting.refuse(who=at.accounts["secretary"], request=first, reason="The catalogue is printed.")
    second = choose(at, dora, dog, "open", today=LATE)
    [own] = queries.dogs_of(dora, at.show)
    assert [one.pk for one in own.requests] == [second.pk, first.pk]
    words = page(dora).get("/enter/small/dogs/").content.decode()
    assert "<strong>Waits for the secretary</strong>" in words
    assert "<strong>Refused</strong>" not in words


def test_who_decides_second_is_told_that_it_is_decided_already(at, dora):
    secretary = at.accounts["secretary"]
    request = choose(at, dora, own_dog(at, dora), "open", today=LATE)
    waiting.refuse(who=secretary, request=request, reason="The catalogue is printed.")
    sent = {"do": "accept", "reason": "Post was late."}
    answer = page(secretary).post(f"/office/small/entries/waiting/{request.pk}/decide/", sent)
    assert answer.status_code == 409
    assert "This entry is refused already." in answer.content.decode()


def test_what_is_wrong_with_a_decision_on_a_later_page_is_said_beside_it(at):
    for number in range(26):
        EntryRequest.objects.create(show=at.show, texts=by_the_office(at, name=f"Late {number}"), classes=["open"])
    office = page(at.accounts["secretary"])
    words = office.get("/office/small/entries/waiting/?page=2").content.decode()
    [address] = re.findall(r'action="(/office/small/entries/waiting/[^"]*)"', words)
    words = office.post(address, {"do": "refuse", "reason": ""}).content.decode()
    assert "Late 25" in words
    assert "Write down why it is accepted or refused." in words
