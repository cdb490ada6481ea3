"""The page that a printed code leads to: what the signed version says, of the signed version alone."""

import io

import pypdf
import pytest
from django.test import Client

from ringside.results.models import Critique, Publication
from tests.home.published import published, told_by

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def shown():
    return published()


def check(fingerprint: str):
    return Client().get(f"/check/{fingerprint}/")


def test_the_paper_leads_to_the_page_that_says_what_was_signed(shown):
    critique = shown.critique(1, "de")
    content = shown.client("ada").get(f"/papers/critiques/{critique.pk}.pdf").content
    text = " ".join(pypdf.PdfReader(io.BytesIO(content)).pages[0].extract_text().split())
    assert f"http://testserver/check/{critique.fingerprint[:16]}/" in text
    page = check(critique.fingerprint[:16]).content.decode()
    for told in ("Dog 1", "Boxer, open class, dogs", "Vorzüglich, erster Platz", "Small Show", critique.fingerprint):
        assert told in page


def test_it_says_nothing_of_owners_numbers_or_what_the_judge_wrote(shown):
    critique = shown.critique(1)
    page = check(critique.fingerprint[:16]).content.decode()
    assert "ada" not in told_by(page)
    assert critique.sentences[0] not in page


def test_a_fingerprint_that_nothing_has_and_one_that_is_too_short_are_not_found(shown):
    fingerprint = shown.critique(1).fingerprint
    assert check("0" * 16).status_code == 404
    assert check(fingerprint[:15]).status_code == 404
    assert check("%").status_code == 404


def test_a_critique_of_a_class_that_is_not_published_is_not_found(shown):
    fingerprint = shown.critique(1).fingerprint
    Publication.objects.all().delete()
    assert check(fingerprint[:16]).status_code == 404


def test_a_critique_changed_behind_the_signature_is_not_the_signed_version(shown):
    critique = shown.critique(1)
    Critique.objects.filter(pk=critique.pk).update(sentences=["The best dog of all."])
    assert check(critique.fingerprint[:16]).status_code == 404
