"""A fact that is wrong: the owner asks, the office sees a count, answers once, the owner reads the answer."""

import pytest

from ringside.home.asking import MOST_OPEN
from ringside.home.models import CorrectionRequest
from tests.home.published import published

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]
DESK, REQUESTS = "/office/small/results/", "/office/small/requests/"


@pytest.fixture
def shown():
    return published()


def ask(shown, text: str = "The name is Dog One."):
    entry = shown.at.entries[0]
    return shown.client("ada").post(f"/my-dogs/entries/{entry.pk}/correction/", {"kind": "name", "text": text})


def test_a_request_reaches_the_results_desk_with_a_count(shown):
    assert "open)" not in shown.client("secretary").get(DESK).content.decode()
    assert ask(shown).status_code == 302
    assert "Requests (1 open)" in shown.client("secretary").get(DESK).content.decode()
    assert "The name is Dog One." in shown.client("secretary").get(REQUESTS).content.decode()


def test_the_answer_closes_it_and_its_owner_reads_it(shown):
    ask(shown)
    found = CorrectionRequest.objects.get()
    shown.client("secretary").post(f"{REQUESTS}{found.pk}/answer/", {"answer": "Corrected."})
    assert "Answer: Corrected." in shown.client("ada").get(f"/my-dogs/{shown.at.entries[0].dog_id}/").content.decode()
    assert "open)" not in shown.client("secretary").get(DESK).content.decode()
    again = shown.client("secretary").post(f"{REQUESTS}{found.pk}/answer/", {"answer": "Again."})
    assert again.status_code == 409


def test_the_judges_opinion_is_no_kind_of_request(shown):
    entry = shown.at.entries[0]
    shown.client("ada").post(f"/my-dogs/entries/{entry.pk}/correction/", {"kind": "opinion", "text": "Unfair."})
    assert CorrectionRequest.objects.count() == 0


def test_an_assistant_reads_requests_and_may_not_answer(shown):
    ask(shown)
    found = CorrectionRequest.objects.get()
    assert shown.client("assistant").get(REQUESTS).status_code == 200
    assert shown.client("assistant").post(f"{REQUESTS}{found.pk}/answer/", {"answer": "x"}).status_code == 403


def test_requests_about_one_entry_do_not_pile_up(shown):
    for count in range(MOST_OPEN):
        assert ask(shown, f"Wrong {count}.").status_code == 302
    assert ask(shown).status_code == 409
    assert CorrectionRequest.objects.count() == MOST_OPEN


def test_what_somebody_types_is_text_on_the_office_page(shown):
    ask(shown, "<script>alert(1)</script>")
    assert "<script>alert" not in shown.client("secretary").get(REQUESTS).content.decode()
