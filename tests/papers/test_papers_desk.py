"""The papers of a show in the database, behind the office's door."""

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext

from ringside.dogs.models import Dog
from ringside.entries.models import Entry
from ringside.papers.desk_views import PAPERS
from ringside.papers.gathering import form_of, programme_of
from ringside.shows.models import ShowBreed, ShowClass
from scoring.standards import loader as standards
from tests.papers import reading
from tests.shows_for_tests import small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def at():
    return small_show()


@pytest.fixture
def office(at) -> Client:
    client = Client()
    client.force_login(at.accounts["secretary"])
    return client


@pytest.mark.parametrize("code", PAPERS)
def test_every_paper_is_printed_from_the_desk(at, office, code):
    page = office.get("/papers/show/small/").content.decode()
    assert f"/papers/show/small/{code}.pdf" in page
    answer = office.get(f"/papers/show/small/{code}.pdf?size=letter")
    assert answer["Content-Type"] == "application/pdf"
    assert "Small Show" in reading.text(answer.content)


def test_the_catalogue_has_the_dogs_of_the_database_in_order(at, office):
    text = reading.text(office.get("/papers/show/small/catalogue.pdf").content)
    places = [text.index(f"{entry.number} {entry.dog.name}") for entry in (*at.entries, at.other_entry)]
    assert places == sorted(places)
    assert "Owner: ada" in text
    assert "small.example" not in text


def test_a_withdrawn_dog_leaves_the_catalogue_and_stands_among_the_absentees(at, office):
    Entry.objects.filter(pk=at.entries[1].pk).update(state="withdrawn")
    assert "Dog 2" not in reading.text(office.get("/papers/show/small/catalogue.pdf").content)
    assert "Dog 2 Boxer, Open class, dogs withdrawn" in reading.text(
        office.get("/papers/show/small/absentees.pdf").content
    )


def test_the_papers_of_one_ring_hold_that_ring_alone(at, office):
    text = reading.text(office.get(f"/papers/show/small/ring-sheets.pdf?ring={at.ring.pk}").content)
    assert "Boxer" in text
    assert "Hovawart" not in text
    assert office.get("/papers/show/small/ring-sheets.pdf?ring=999999").status_code == 404
    assert office.get("/papers/show/small/ring-sheets.pdf?ring=x").status_code == 404


def test_a_paper_that_does_not_exist_is_not_found(at, office):
    assert office.get("/papers/show/small/menu.pdf").status_code == 404


@pytest.mark.parametrize("name", ["steward", "writer", "judge"])
def test_who_does_not_work_in_the_office_prints_nothing(at, name):
    client = Client()
    client.force_login(at.accounts[name])
    assert client.get("/papers/show/small/catalogue.pdf").status_code == 403


def test_a_judges_sheet_asks_every_point_of_the_standard_that_its_sex_has():
    for standard in standards.all_standards():
        form = form_of(standard.code, "bitch", "en")
        asked = len(form.scales) + len(form.questions)
        assert asked == sum(point.is_for("bitch") for point in standard.points)


def test_a_show_is_gathered_with_the_same_queries_however_many_classes(at):
    few = _queries(at)
    for code in ("junior", "intermediate", "veteran"):
        breed = ShowBreed.objects.create(show=at.show, breed="rottweiler", variety=code, ring=at.ring)
        one = ShowClass.objects.create(show_breed=breed, sex="dog", code=code)
        dog = Dog.objects.create(name=code, breed="rottweiler", sex="dog", born=at.entries[0].dog.born)
        Entry.objects.create(show=at.show, show_class=one, dog=dog)
    assert _queries(at) == few


def _queries(at) -> int:
    with CaptureQueriesContext(connection) as seen:
        programme_of(at.show)
    return len(seen)
