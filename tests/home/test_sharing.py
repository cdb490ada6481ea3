"""Sharing a critique: only its owner shares, only the link reads, and a withdrawn link leads nowhere."""

import html

import pytest
from django.test import Client

from ringside.home.models import Share
from ringside.results.models import Publication
from tests.home.published import published, told_by

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def shown():
    return published()


def share(shown, name: str = "ada", number: int = 1):
    return shown.client(name).post(f"/critiques/{shown.critique(number).pk}/share/")


def test_whoever_has_the_link_reads_the_critique_without_signing_in(shown):
    assert share(shown).status_code == 302
    answer = Client().get(f"/shared/{Share.objects.get().token}/")
    page = html.unescape(answer.content.decode())
    assert shown.critique(1).sentences[0] in page
    assert answer.headers["X-Robots-Tag"] == "noindex, nofollow"
    assert answer.headers["Cache-Control"] == "private, no-store"


def test_the_shared_page_says_nothing_of_the_owner(shown):
    share(shown)
    page = Client().get(f"/shared/{Share.objects.get().token}/").content.decode()
    assert "ada" not in told_by(page)
    assert "@" not in page


def test_the_shared_page_is_read_in_each_language(shown):
    share(shown)
    token = Share.objects.get().token
    for language in ("en", "fr", "de", "es"):
        page = html.unescape(Client().get(f"/shared/{token}/?in={language}").content.decode())
        assert shown.critique(1, language).sentences[0] in page


def test_a_withdrawn_link_leads_nowhere_and_a_new_one_is_another(shown):
    share(shown)
    first = Share.objects.get()
    shown.client("ada").post(f"/shares/{first.pk}/withdraw/")
    assert Client().get(f"/shared/{first.token}/").status_code == 404
    share(shown)
    assert Share.objects.get(withdrawn_at=None).token != first.token


def test_sharing_twice_gives_the_same_link(shown):
    share(shown)
    share(shown)
    assert Share.objects.count() == 1


@pytest.mark.parametrize("name", ["ben", "cleo", "stranger", "secretary", "judge"])
def test_nobody_but_the_owner_shares_or_withdraws(shown, name):
    assert share(shown, name).status_code == 404
    share(shown)
    found = Share.objects.get()
    assert shown.client(name).post(f"/shares/{found.pk}/withdraw/").status_code == 404
    assert Client().get(f"/shared/{found.token}/").status_code == 200


def test_a_guessed_link_and_one_of_a_class_taken_back_lead_nowhere(shown):
    share(shown)
    token = Share.objects.get().token
    assert Client().get(f"/shared/{token[:-1]}x/").status_code == 404
    assert Client().get(f"/shared/{token[:20]}/").status_code == 404
    Publication.objects.all().delete()
    assert Client().get(f"/shared/{token}/").status_code == 404


def test_one_exhibitor_reaches_nothing_of_another_by_address(shown):
    ada = shown.client("ada")
    dog, entry = shown.at.entries[1].dog_id, shown.at.entries[1].pk
    for language in ("en", "fr", "de", "es"):
        critique = shown.critique(2, language).pk
        assert ada.get(f"/critiques/{critique}/").status_code == 404
        assert ada.get(f"/papers/critiques/{critique}.pdf").status_code == 404
        assert ada.post(f"/critiques/{critique}/share/").status_code == 404
    assert ada.get(f"/my-dogs/{dog}/").status_code == 404
    assert ada.get(f"/my-dogs/entries/{entry}/correction/").status_code == 404
    assert ada.post(f"/my-dogs/entries/{entry}/correction/", {"kind": "name", "text": "x"}).status_code == 404
