"""Setting a show up: bad input gets a sentence, rights are kept, nothing typed is lost."""

import pytest
from django.test import Client

from ringside.core.denied import Denied
from ringside.core.models import AuditLine
from ringside.people.models import Account
from ringside.shows import actions
from ringside.shows.may import MAY
from ringside.shows.models import Role, Show, ShowBreed
from tests.shows_for_tests import small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]

GOOD = {
    "name": "Heath Show", "place": "Heath", "rules": "fci", "first_day": "2026-06-13", "last_day": "2026-06-14",
    "entries_close": "2026-05-17",
}  # fmt: skip


@pytest.fixture
def owner() -> Client:
    account = Account.objects.create_user("owner@heath.example", runs_site=True)
    client = Client()
    client.force_login(account)
    return client


@pytest.fixture
def at():
    return small_show()


def signed_in(account: Account) -> Client:
    client = Client()
    client.force_login(account)
    return client


def test_whoever_starts_a_show_owns_it_and_is_its_secretary(owner):
    assert owner.post("/office/new/", GOOD).url == "/office/heath-show/"
    assert sorted(Role.objects.values_list("kind", flat=True)) == ["owner", "secretary"]
    assert AuditLine.objects.filter(doing="start-show").count() == 1


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"last_day": "2026-06-12"}, "The last day lies before the first."),
        ({"last_day": "2027-06-12"}, "A show lasts 10 days at the most"),
        ({"entries_close": "2026-06-20"}, "Entries close before the show begins."),
        ({"first_day": "soon"}, "Enter a valid date."),
        ({"rules": "mine"}, "Select a valid choice."),
        ({"name": "展覧会"}, "at least one plain letter or digit"),
        ({"name": "x" * 400}, "at most 120 characters"),
    ],
)
def test_a_form_that_cannot_be_says_why_and_keeps_what_was_typed(owner, change, words):
    page = owner.post("/office/new/", {**GOOD, **change}).content.decode()
    assert words in page
    assert 'value="Heath"' in page
    assert not Show.objects.exists()


def test_two_shows_of_one_name_are_refused_with_a_way_out(owner):
    owner.post("/office/new/", GOOD)
    assert "Add the year, for example." in owner.post("/office/new/", GOOD).content.decode()


def test_nobody_else_starts_shows():
    client = signed_in(Account.objects.create_user("guest@heath.example"))
    assert client.post("/office/new/", GOOD).status_code == 403
    with pytest.raises(Denied):
        actions.start_show(who=Account.objects.get(email="guest@heath.example"), name="X")


def test_an_appointed_judge_may_work_in_the_ring(at):
    office = signed_in(at.accounts["secretary"])
    office.post("/office/small/appoint/", {
        "breed": "rottweiler", "judge_name": "Nia Velvetine", "judge_email": "nia@small.example", "ring": "3",
        "day": "2026-06-13",
    })  # fmt: skip
    breed = ShowBreed.objects.get(breed="rottweiler")
    judge = signed_in(Account.objects.get(email="nia@small.example"))
    assert judge.get(f"/ring/{breed.ring_id}/").status_code == 200
    assert judge.get(f"/ring/{at.ring.pk}/").status_code == 403


def test_a_day_outside_the_show_is_refused_in_words(at):
    office = signed_in(at.accounts["secretary"])
    page = office.post("/office/small/appoint/", {
        "breed": "boxer", "judge_name": "Nia", "judge_email": "nia@small.example", "ring": "1", "day": "2026-07-01",
    }).content.decode()  # fmt: skip
    assert "The show runs from 13 June 2026 to 13 June 2026." in page
    assert 'value="Nia"' in page


def test_a_secretary_cannot_lock_herself_out(at):
    office = signed_in(at.accounts["secretary"])
    own = Role.objects.get(account=at.accounts["secretary"])
    assert office.post(f"/office/small/roles/{own.pk}/take/").status_code == 403
    assert Role.objects.filter(pk=own.pk).exists()


PAGES = {
    "/office/small/": "see-office",
    "/office/small/details/": "change-show",
    "/office/small/entries/": "see-office",
    "/office/small/entries/new/": "take-entries",
    "/office/small/results/": "see-office",
    "/office/small/results/{class}/": "see-office",
    "/ring/{ring}/": "see-ring",
    "/ring/{ring}/day/": "see-ring",
    "/ring/{ring}/edits/": "see-ring",
    "/ring/{ring}/classes/{class}/advice/": "see-ring",
}


@pytest.mark.parametrize("address", PAGES)
def test_each_page_opens_to_the_roles_of_the_table_and_to_nobody_else(at, address):
    place = address.replace("{class}", str(at.show_class.pk)).replace("{ring}", str(at.ring.pk))
    for name in ("secretary", "assistant", "steward", "writer", "judge"):
        expected = 200 if name in MAY[PAGES[address]][1] else 403
        assert signed_in(at.accounts[name]).get(place).status_code == expected, name
    assert signed_in(at.accounts["stranger"]).get(place).status_code == 404
    assert signed_in(at.accounts["ada"]).get(place).status_code == 404
    assert Client().get(place).status_code in (302, 401)


def test_the_tablet_is_told_in_json_to_sign_in_again(at):
    answer = Client().get(f"/ring/{at.ring.pk}/edits/", headers={"accept": "application/json"})
    assert answer.status_code == 401
    assert "everything written on it is kept" in answer.json()["error"]


@pytest.mark.parametrize(
    ("body", "status"),
    [(b"{", 400), (b"[]", 400), (b'{"edits": 3}', 400), (b'{"edits": []}', 200), (b"[" * 9000, 400), (b"\xff", 400)],
)
def test_a_batch_that_cannot_be_read_is_refused_whole_with_a_sentence(at, body, status):
    judge = signed_in(at.accounts["judge"])
    headers = {"accept": "application/json"}
    answer = judge.post(f"/ring/{at.ring.pk}/edits/", body, content_type="application/json", headers=headers)
    assert answer.status_code == status
    if status != 200:
        assert (
            answer.json()["error"].endswith("nothing was taken from this batch.")
            or "not JSON" in answer.json()["error"]
        )
