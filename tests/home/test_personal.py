"""Everything that leads to a person is known; photos, links and requests are told and forgotten; old addresses go."""

import re
from datetime import UTC, date, datetime, timedelta

import pytest
from django.core.files.storage import default_storage
from django.core.management import call_command
from django.db import models
from django.test import Client

from ringside.fees.models import Membership
from ringside.fees.one import account_of
from ringside.home.forgetting import forget_contact, forget_old_contacts
from ringside.home.kept import kept_of
from ringside.home.models import CorrectionRequest, Reader, Share
from ringside.home.personal import LEADS_TO_A_PERSON
from ringside.home.whole.tables import own_models
from ringside.people.models import Account, Person
from ringside.photos.models import Photo, Steadiness
from ringside.results.models import Correction, Critique, Placing
from tests.home.whole.full_show import full_show
from tests.shows_for_tests import FIRST_DAY

TODAY = date(2030, 1, 1)


def test_every_link_to_a_person_says_what_becomes_of_it():
    found = {
        f"{model._meta.label_lower}.{field.name}"
        for model in own_models()
        for field in model._meta.concrete_fields
        if isinstance(field, models.ForeignKey) and field.related_model in (Account, Person)
    }
    assert found - LEADS_TO_A_PERSON.keys() == set(), "Add a line for each to ringside/home/personal.py."
    assert LEADS_TO_A_PERSON.keys() - found == set()


@pytest.fixture
def at(db):
    found = full_show()
    Steadiness.objects.create(account=found.accounts["ada"], sd_of_width=0.002, landmarks=8)
    return found


@pytest.mark.both_databases
def test_the_file_holds_photos_links_requests_and_how_steadily_one_marks(at):
    told = kept_of(at.accounts["ada"])
    assert [(one["dog"], one["shared"]) for one in told["photos"]] == [("Dog 1", True)]
    assert [one["dog"] for one in told["shares"]] == ["Dog 1"]
    assert [(one["dog"], one["email"]) for one in told["readers"]] == [("Dog 1", "stranger@small.example")]
    assert [one["text"] for one in told["requests"]] == ["Dogg 1"]
    assert [one["landmarks"] for one in told["marking"]] == [8]
    other = kept_of(at.accounts["ben"])
    assert [other[name] for name in ("photos", "shares", "readers", "reads", "requests", "marking", "claims")] == [
        []
    ] * 7


def test_no_day_on_the_page_stands_as_the_file_has_it(at):
    client = Client()
    client.force_login(at.accounts["ada"])
    assert "2026-06-13" in client.get("/my-dogs/kept.json").content.decode()
    page = client.get("/my-dogs/kept/").content.decode()
    assert "13 June 2026" in page
    assert re.findall(r"\d{4}-\d{2}-\d{2}", page) == []


@pytest.mark.both_databases
def test_forgetting_takes_photos_links_and_requests_along_and_leaves_results(at, django_capture_on_commit_callbacks):
    kept = default_storage.listdir("photos")[1]
    name = Photo.objects.get().file.name.rpartition("/")[2]
    assert name in kept
    with django_capture_on_commit_callbacks(execute=True):
        forget_contact(who=at.accounts["ada"], typed="ada@small.example")
    assert not Photo.objects.exists()
    assert name not in default_storage.listdir("photos")[1]
    assert not Share.objects.filter(withdrawn_at=None).exists()
    assert not Reader.objects.exists()
    assert not CorrectionRequest.objects.exists()
    assert not Steadiness.objects.exists()
    assert Placing.objects.filter(entry=at.entries[0]).exists()
    assert Critique.objects.filter(entry=at.entries[0]).count() == 4
    assert Correction.objects.exists()


def long_ago(*names) -> None:
    emails = [f"{name}@small.example" for name in names]
    Account.objects.filter(email__in=emails).update(joined_at=datetime(2026, 1, 1, tzinfo=UTC), last_login=None)


@pytest.mark.both_databases
def test_after_the_set_time_addresses_go_and_results_stay(at):
    long_ago("ada", "ben", "cleo", "judge", "secretary")
    Account.objects.filter(email="cleo@small.example").update(last_login=datetime(2029, 12, 1, tzinfo=UTC))
    # Beside Ada and Ben somebody who never had to do with a show.
    assert forget_old_contacts(days=365, today=TODAY) == 3
    left = set(Account.objects.values_list("email", flat=True))
    assert {"ada@small.example", "ben@small.example"} & left == set()
    assert {"cleo@small.example", "judge@small.example", "secretary@small.example"} <= left
    assert Person.objects.get(name="ada").email == ""
    assert Placing.objects.filter(entry__in=at.entries).count() == 3


@pytest.mark.both_databases
def test_a_shows_books_are_in_the_persons_file_and_stay_with_the_name_after_the_set_time(at):
    """The address goes; payments, invoices, memberships and changed fees stay: the law asks for a show's books."""
    told = kept_of(at.accounts["ada"])
    assert [(one["amount"], one["kind"], one["struck_out"]) for one in told["payments"]] == [
        ("40.50", "received", False), ("4.00", "received", True), ("10.50", "refunded", False),
    ]  # fmt: skip
    assert [(one["number"], one["total"]) for one in told["invoices"]] == [(1, "81.00"), (2, "70.50")]
    assert told["memberships"] == [{"show": "Small Show", "club": "Small Club"}]
    assert [(one["amount"], one["note"]) for one in told["changed_fees"]] == [("30.00", "Agreed")]
    long_ago("ada")
    assert forget_old_contacts(days=365, today=TODAY) > 0
    owner = Person.objects.get(name="ada")
    assert (owner.email, owner.account) == ("", None)
    assert (owner.payments.count(), owner.invoices.count()) == (3, 2)
    assert Membership.objects.filter(person=owner).exists()
    assert account_of(at.show, owner).paid == 30


@pytest.mark.both_databases
@pytest.mark.parametrize(("days_after", "gone"), [(365, 0), (366, 3)])
def test_the_time_counts_from_the_last_day_of_the_last_show(at, days_after, gone):
    long_ago("ada", "ben", "cleo")
    assert forget_old_contacts(days=365, today=FIRST_DAY + timedelta(days=days_after)) == gone


@pytest.mark.both_databases
def test_the_command_says_how_many_it_forgot(db, capsys):
    call_command("forget_contacts")
    assert "0 addresses" in capsys.readouterr().out
