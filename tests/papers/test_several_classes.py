"""Papers and letters for a dog in two classes: one card, one number, a line for each class."""

from datetime import time

import pytest
from django.core import mail
from django.test import Client

from ringside.entries.models import Entry
from ringside.entries.together import queries as together
from ringside.home.models import ClaimCode
from ringside.home.standing import standing_of
from ringside.notices import actions
from ringside.notices.queries import lacking
from ringside.papers.cards import Card, cards_pdf
from ringside.timetable.actions import plan_times
from tests.papers import reading
from tests.several_classes import british_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def at():
    return british_show()[0]


@pytest.fixture
def office(at) -> Client:
    client = Client()
    client.force_login(at.accounts["secretary"])
    return client


def printed(office: Client, code: str) -> str:
    return reading.text(office.get(f"/papers/show/small/{code}.pdf").content)


def test_one_number_card_a_dog_lists_its_classes(at, office):
    answer = office.post("/office/small/number-cards.pdf", {"codes": "all", "size": "A4"})
    [page] = reading.pages(answer.content)
    lines = page.splitlines()
    assert [line for line in lines if line.strip().isdecimal()] == ["1", "2", "3", "4"]
    first = lines[lines.index("Dog 1") : lines.index("Dog 2")]
    assert [line for line in first if "class" in line and "Boxer" in line] == [
        "Boxer, limit class, dogs", "Boxer, open class, dogs",
    ]  # fmt: skip
    assert page.count("claim code") == 4
    assert ClaimCode.objects.count() == 4


def test_a_card_with_many_classes_keeps_its_number_clear_of_them():
    titles = [f"Breed {at}, class {at}" for at in range(8)]
    card = Card("1234", "Dog", titles, "Ring 1", "ABCD EFGH")
    [page] = reading.pages(cards_pdf([card], "Show", "https://show.example/claim/"))
    assert all(title in page for title in titles)


def test_the_catalogue_has_the_dog_in_each_class_with_one_number_and_once_in_the_index(at, office):
    text = printed(office, "catalogue")
    assert text.count("1 Dog 1") == 2
    index = text[text.index("Index of exhibitors") :]
    assert "ada 1, 4" in " ".join(index.split())


@pytest.mark.parametrize("code", ["ring-sheets", "judges-book"])
def test_the_judge_and_the_steward_find_the_number_in_each_class(at, office, code):
    pages = reading.pages(office.get(f"/papers/show/small/{code}.pdf").content)
    text = "\n".join(pages)
    assert all(words in text for words in ("Limit", "Open"))
    assert [line.split()[0] for line in text.splitlines() if line.split()[:1] == ["1"]].count("1") >= 2


def test_absent_from_one_class_is_said_with_that_class(at, office):
    entry = Entry.objects.get(show_class__code="limit", number=1)
    Entry.objects.filter(pk=entry.pk).update(state="withdrawn")
    text = " ".join(printed(office, "absentees").split())
    assert "1 Dog 1 Boxer, Limit class, dogs" in text
    assert "Open class" not in text


def test_the_letter_names_the_dog_with_its_number_for_each_class_and_counts_it_once(at):
    for show_class in (at.show_class, at.other_class):
        plan_times(who=at.accounts["secretary"], show=at.show, times={(show_class.show_breed_id, "", ""): time(9)})
    actions.put_in_line(who=at.accounts["secretary"], show=at.show)
    actions.advance(who=at.accounts["secretary"], show=at.show, site="https://show.example/")
    [letter] = [letter for letter in mail.outbox if letter.to == ["cleo@small.example"]]
    assert "This dog is entered for you" in letter.body
    assert letter.body.count("Dog 3, number 3") == 2
    assert all(words in letter.body for words in ("Boxer, limit class, dogs", "Boxer, open class, dogs"))


def test_dogs_without_a_number_are_counted_and_not_their_entries(at, office):
    Entry.objects.update(number=None)
    assert dict(lacking(at.show))["number"] == 4
    assert "numbers not given" in standing_of(at.show, at.show.first_day)["papers"]
    assert "All 4 dogs" not in office.get("/papers/show/small/").content.decode()
    assert "Give 4 catalogue numbers" in office.get("/office/small/entries/").content.decode()
    office.post("/office/small/entries/number/")
    assert dict(lacking(at.show)).get("number") is None
    assert "All 4 dogs have their catalogue number" in office.get("/papers/show/small/").content.decode()


def test_a_group_takes_the_dog_of_a_number_once(at):
    entries, findings = together.named(at.show, "1\nDog 1\n2")
    assert [entry.number for entry in entries] == [1, 2]
    assert [one.code for one in findings] == ["member-twice"]
