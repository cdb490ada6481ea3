"""Which language a page is in: the account's, else the browser's cookie, else what the browser asks for."""

import pytest
from django.test import Client
from django.utils import translation

from ringside.people.models import Account
from ringside.results import out
from ringside.results.actions import publish_class
from tests.results.writing import judge_and_sign
from tests.shows_for_tests import small_show

pytestmark = pytest.mark.django_db


@pytest.fixture(autouse=True)
def english_again():
    yield
    translation.activate("en")


def language_of(client: Client, path: str = "/", **headers: str) -> str:
    answer = client.get(path, headers=headers)
    assert f'<html lang="{answer.headers["Content-Language"]}">' in answer.content.decode()
    return answer.headers["Content-Language"]


@pytest.mark.parametrize(
    ("asked", "got"), [("de-AT,de;q=0.9", "de"), ("fr", "fr"), ("es-MX", "es"), ("cs,en;q=0.5", "en"), ("cs", "en")]
)
def test_a_stranger_reads_what_the_browser_asks_for(asked, got):
    assert language_of(Client(), **{"accept-language": asked}) == got


def test_a_choice_holds_in_the_browser_and_leads_back_to_the_page():
    client = Client()
    answer = client.post("/sign-in/language/", {"language": "fr", "next": "/claim/"})
    assert (answer.status_code, answer.headers["Location"]) == (302, "/claim/")
    assert language_of(client, **{"accept-language": "de"}) == "fr"


def test_a_choice_leads_to_no_other_site():
    answer = Client().post("/sign-in/language/", {"language": "fr", "next": "https://elsewhere.example/"})
    assert "elsewhere" not in answer.headers["Location"]


def test_an_accounts_choice_holds_on_every_device_and_for_its_letters():
    ada = small_show().accounts["ada"]
    client, other = Client(), Client(headers={"accept-language": "es"})
    for one in (client, other):
        one.force_login(ada)
    client.post("/sign-in/language/", {"language": "de", "next": "/my-dogs/"})
    assert Account.objects.get(pk=ada.pk).language == "de"
    assert language_of(other, "/my-dogs/") == "de"
    assert "Meine Hunde" in other.get("/my-dogs/").content.decode()


def test_a_language_that_does_not_exist_changes_nothing():
    ada = small_show().accounts["ada"]
    client = Client()
    client.force_login(ada)
    client.post("/sign-in/language/", {"language": "xx", "next": "/"})
    assert Account.objects.get(pk=ada.pk).language == ""
    assert language_of(client) == "en"


def test_a_board_is_kept_apart_for_each_language():
    ring = small_show().ring
    pages = {
        code: Client().get(f"/ring/{ring.pk}/board/", headers={"accept-language": code}).content.decode()
        for code in ("en", "de", "fr", "es")
    }
    for code, words in {
        "en": "open class",
        "de": "Offene Klasse",
        "fr": "classe ouverte",
        "es": "clase abierta",
    }.items():
        assert words in pages[code]
        assert f'<html lang="{code}">' in pages[code]


def test_a_refusal_is_said_in_the_readers_language():
    stranger = small_show().accounts["stranger"]
    client = Client(headers={"accept-language": "de"})
    client.force_login(stranger)
    answer = client.get("/office/new/")
    assert answer.status_code == 403
    assert "Sie dürfen auf dieser Seite keine Ausstellung anlegen." in answer.content.decode()


def test_a_file_of_results_says_the_same_whoever_takes_it_away():
    at = small_show()
    judge_and_sign(at)
    publish_class(by=at.accounts["secretary"], show_class=at.show_class)
    english = out.results_json(at.show)
    assert {one["grade_name"] for one in english["results"]} > {"Excellent"}
    with translation.override("de"):
        assert out.results_json(at.show) == english
