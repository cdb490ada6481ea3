"""The measured photo on a critique: for owner and office, beside the marks and on the paper; never on a shared page."""

import pytest

from ringside.home.sharing import share_entry
from ringside.papers.measured import words
from ringside.results.models import Critique
from tests.access.places import Places
from tests.papers.reading import text
from tests.photos.sending import kept_photo, signed_in

pytestmark = [pytest.mark.django_db]


@pytest.fixture
def at() -> Places:
    return Places()


@pytest.fixture
def critique(at):
    found = Critique.objects.get()
    found.entry.show.critiques_public = True
    found.entry.show.save()
    kept_photo(at.accounts["exhibitor"], found.entry.dog, taken_on=found.entry.show.first_day.isoformat())
    return found


@pytest.mark.parametrize(("who", "sees"), [("exhibitor", True), ("secretary", True), ("stranger", False)])
def test_owner_and_office_see_it_beside_the_marks_and_on_the_paper(at, critique, who, sees):
    client = signed_in(at.accounts[who])
    page = client.get(f"/critiques/{critique.pk}/").content.decode()
    assert ("The measured photo" in page) is sees
    assert ("On the photo: slope of the croup" in page) is sees
    assert ("for a vet" in page) is sees
    for size in ("A4", "letter"):
        answer = client.get(f"/papers/critiques/{critique.pk}.pdf?size={size}")
        assert (words()["en"]["names"]["croup-slope"] in text(answer.content)) is sees


def test_a_shared_critique_shows_no_photo(at, critique):
    share = share_entry(by=at.accounts["exhibitor"], entry=critique.entry)
    page = signed_in(None).get(f"/shared/{getattr(share, 'token', share)}/")
    assert page.status_code == 200
    assert "On the photo" not in page.content.decode()
