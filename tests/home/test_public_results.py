"""Published results for everybody, and critiques only where the show makes them public."""

import pytest
from django.test import Client

from ringside.results.models import Placing, Publication
from ringside.shows.models import Show
from tests.home.published import published, told_by
from tests.papers import reading

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def made():
    return published()


def test_everybody_reads_places_and_grades_but_no_owner(made):
    page = Client().get("/results/small/").content.decode()
    assert "Dog 1" in page
    assert "Judge judge" in page
    assert "ada" not in told_by(page)
    assert "/critiques/" not in page


def test_a_class_that_is_not_published_is_not_there(made):
    Publication.objects.all().delete()
    page = Client().get("/results/small/").content.decode()
    assert "No class is published yet" in page
    assert "Dog 1" not in page


def test_critiques_are_read_by_everybody_only_where_the_show_makes_them_public(made):
    address = f"/critiques/{made.critique(1).pk}/"
    assert Client().get(address).url.startswith("/sign-in/")
    assert Client().get(f"/papers{address[:-1]}.pdf").url.startswith("/sign-in/")
    Show.objects.update(critiques_public=True)
    assert address in Client().get("/results/small/").content.decode()
    page = Client().get(address)
    assert page.status_code == 200
    assert "Make a link" not in page.content.decode()
    assert Client().get(f"/papers{address[:-1]}.pdf").status_code == 200


def test_the_page_costs_the_same_queries_however_many_dogs(made, django_assert_max_num_queries):
    with django_assert_max_num_queries(8):
        Client().get("/results/small/")


def test_a_critique_open_to_everybody_is_read_in_the_readers_language(made):
    Show.objects.update(critiques_public=True)
    for asked, language in (("fr", "fr"), ("en", "en"), ("it", "en")):
        page = Client(headers={"accept-language": asked}).get("/results/small/").content.decode()
        assert f"/critiques/{made.critique(1, language).pk}/" in page
        assert page.count("/critiques/") == 2


def test_a_dog_that_was_not_judged_is_said_in_the_readers_language(made):
    Placing.objects.filter(entry=made.at.entries[1]).update(presence="absent", grade="", place=None)
    Placing.objects.filter(entry=made.at.entries[2]).update(presence="withdrawn", grade="", place=None)
    page = Client(headers={"accept-language": "de"}).get("/results/small/").content.decode()
    assert "nicht erschienen" in page
    assert "zurückgezogen" in page
    assert "absent" not in page
    office, address = made.client("secretary"), f"/papers/results/small/{made.at.show_class.pk}.pdf"
    printed = reading.text(office.get(address, headers={"accept-language": "de"}).content)
    assert "nicht erschienen" in printed
    assert "zurückgezogen" in printed
