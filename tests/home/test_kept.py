"""What is kept of a person: their own and nothing else, to take away, and to be forgotten."""

from datetime import UTC, datetime

import pytest
from django.test import Client, override_settings

from ringside.core.models import AuditLine
from ringside.entries.models import Entry, EntryFile, EntryLine
from ringside.home.kept import kept_of
from ringside.people.models import Account, Person
from ringside.results.actions import publish_class
from ringside.results.models import Placing, Publication
from tests.papers import reading
from tests.results.writing import Pen, judge_and_sign
from tests.shows_for_tests import small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]
ADA = "ada@small.example"


@pytest.fixture
def at():
    found = small_show()
    pen = Pen(found)
    for entry in found.entries:
        pen.write(f"entry:{entry.pk}", {"mark.croup": 1, "remark": f"Words on dog {entry.number}"})
        pen.sign(f"entry:{entry.pk}")
    judge_and_sign(found)
    publish_class(by=found.accounts["secretary"], show_class=found.show_class)
    return found


@pytest.fixture
def ada(at) -> Client:
    client = Client()
    client.force_login(at.accounts["ada"])
    return client


def test_the_page_shows_the_persons_own_and_nothing_of_others(ada):
    page = ada.get("/my-dogs/kept/").content.decode()
    for own in ("ada", "Dog 1", "Dog 4", "Boxer, open class, dogs, number 1. Excellent, placed first."):
        assert own in page
    for other in ("Dog 2", "Dog 3", "ben", "cleo"):
        assert other not in page


@pytest.mark.parametrize(
    ("language", "born", "since"),
    [
        ("en", "1 May 2022", "1 June 2026"),
        ("de", "1. Mai 2022", "1. Juni 2026"),
        ("es", "1 de mayo de 2022", "1 de junio de 2026"),
    ],
)
def test_the_page_says_days_in_the_readers_language(at, ada, language, born, since):
    Account.objects.filter(email=ADA).update(joined_at=datetime(2026, 5, 31, 23, 30, tzinfo=UTC))
    with override_settings(TIME_ZONE="Europe/Oslo"):
        page = ada.get("/my-dogs/kept/", headers={"accept-language": language}).content.decode()
    assert born in page
    assert since in page


def test_the_file_holds_account_people_dogs_entries_and_published_critiques(ada):
    answer = ada.get("/my-dogs/kept.json")
    assert "attachment" in answer["Content-Disposition"]
    told = answer.json()
    assert told["account"]["email"] == ADA
    assert told["people"] == [{"name": "ada", "email": ADA, "country": ""}]
    assert [dog["name"] for dog in told["dogs"]] == ["Dog 1", "Dog 4"]
    assert {entry["dog"]: entry["result"] for entry in told["entries"]} == {
        "Dog 1": "Excellent, placed first", "Dog 4": "Not judged yet, or not published yet",
    }  # fmt: skip
    assert sorted(one["language"] for one in told["critiques"]) == ["de", "en", "es", "fr"]
    assert {one["remark"] for one in told["critiques"]} == {"Words on dog 1"}


def test_what_is_not_published_is_not_in_the_file(at):
    Publication.objects.all().delete()
    told = kept_of(at.accounts["ada"])
    assert told["critiques"] == []
    assert {entry["result"] for entry in told["entries"]} == {"Not judged yet, or not published yet"}


def test_forgetting_deletes_address_and_account_and_leaves_the_name_in_the_results(at, ada):
    answer = ada.post("/my-dogs/forget/", {"email": "ADA@small.example "}, follow=True)
    assert "are deleted" in answer.content.decode()
    assert not Account.objects.filter(email=ADA).exists()
    assert Person.objects.get(name="ada").email == ""
    assert not Person.objects.filter(email__icontains="ada@").exists()
    assert Placing.objects.get(entry=at.entries[0]).place == 1
    assert Entry.objects.filter(dog__owners__name="ada").count() == 2
    office = Client()
    office.force_login(at.accounts["secretary"])
    assert "ada" in reading.text(office.get("/papers/show/small/results.pdf").content)
    assert ADA not in str(list(AuditLine.objects.values_list("detail", "about")))
    assert ada.get("/my-dogs/").status_code == 302


def test_forgetting_takes_the_address_out_of_clubs_files(at, ada):
    file = EntryFile.objects.create(show=at.show, name="a.csv", content=ADA.encode(), digest="d", kind="csv",
                                    date_style="dd.mm.yyyy")  # fmt: skip
    kept = EntryLine.objects.create(file=file, line=1, cells=["Dog 1", "Ada@Small.example"], mended={"email": ADA})
    other = EntryLine.objects.create(file=file, line=2, cells=["Dog 2", "ben@small.example"])
    ada.post("/my-dogs/forget/", {"email": ADA})
    kept.refresh_from_db()
    other.refresh_from_db()
    file.refresh_from_db()
    assert (kept.cells, kept.mended) == (["Dog 1", ""], {"email": ""})
    assert other.cells == ["Dog 2", "ben@small.example"]
    assert bytes(file.content) == b""


def test_another_address_typed_deletes_nothing(at, ada):
    assert ada.post("/my-dogs/forget/", {"email": "ben@small.example"}).status_code == 409
    assert Account.objects.filter(email=ADA).exists()


@pytest.mark.parametrize("name", ["secretary", "judge", "steward"])
def test_who_still_works_for_a_show_gives_the_role_up_first(at, name):
    client = Client()
    client.force_login(at.accounts[name])
    answer = client.post("/my-dogs/forget/", {"email": f"{name}@small.example"})
    assert answer.status_code == 409
    assert "take your role away first" in " ".join(answer.content.decode().split())
    assert Account.objects.filter(email=f"{name}@small.example").exists()


def test_a_stranger_is_asked_to_sign_in(at):
    for address in ("/my-dogs/kept/", "/my-dogs/kept.json"):
        assert Client().get(address).status_code == 302
    assert Client().post("/my-dogs/forget/", {"email": ADA}).status_code == 302
    assert Account.objects.filter(email=ADA).exists()
