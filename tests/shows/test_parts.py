"""Parts of a breed judged apart, a judge replaced on the day, and what follows the appointments everywhere.

That a breed's sexes and classes may have different judges, and best of breed one of its own, is common practice.
"""

from datetime import timedelta

import pytest
from django.test import Client

from ringside.core.denied import NotNow
from ringside.core.models import AuditLine
from ringside.dogs.models import Ownership
from ringside.papers.gathering import programme_of
from ringside.people.models import Account, Person
from ringside.ring.board import classes_on
from ringside.ring.models import Sheet
from ringside.ring.places import place_of
from ringside.ring.queries import day_of
from ringside.shows import appointing
from ringside.shows.appointed import classes_in, rings_of_judge
from ringside.shows.conflicts import findings_on_judges
from ringside.shows.models import Ring, Role, Show, ShowBreed, ShowClass
from tests.shows_for_tests import FIRST_DAY, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def at():
    return small_show()


def appoint(at, sex="", code="", ring="", name="Nia Velvetine", day=None):
    email = "nia@small.example" if name else ""
    appointing.appoint_part(
        who=at.accounts["secretary"], show_breed=at.show_class.show_breed, sex=sex, code=code, judge_name=name,
        judge_email=email, ring=ring, day=day,
    )  # fmt: skip


def class_of(at):
    return ShowClass.objects.get(pk=at.show_class.pk)


def sign(at):
    places = [str(at.entries[0].pk)]
    Sheet.objects.create(key=f"class:{at.show_class.pk}", ring=at.ring, show_class=at.show_class,
                         fields={"places": places}, signed={"places": places})  # fmt: skip


def test_a_class_is_judged_as_its_sex_and_its_sex_as_its_breed_where_nothing_else_is_said(at):
    assert class_of(at).appointed.judge.name == "judge"
    appoint(at, "dog", ring="2")
    assert (class_of(at).appointed.judge.name, class_of(at).appointed.ring.name) == ("Nia Velvetine", "2")
    appoint(at, "dog", "open", ring="3", name="")
    assert (class_of(at).appointed.judge.name, class_of(at).appointed.ring.name) == ("Nia Velvetine", "3")
    appoint(at, "bitch", ring="4")
    assert class_of(at).appointed.ring.name == "3"


def test_nothing_given_makes_the_part_as_its_breed_again(at):
    appoint(at, "dog", ring="2")
    appoint(at, "dog", name="")
    assert (class_of(at).appointed.judge.name, class_of(at).appointed.ring) == ("judge", at.ring)


def test_best_of_breed_has_a_judge_and_a_ring_of_its_own(at):
    appoint(at, ring="3")
    breed = ShowBreed.objects.get(pk=at.show_class.show_breed_id)
    assert (breed.appointed.judge.name, breed.appointed.ring.name) == ("Nia Velvetine", "3")
    assert class_of(at).appointed.ring == at.ring
    assert place_of(f"breed:{breed.pk}").ring.name == "3"
    assert place_of(f"class:{at.show_class.pk}").ring == at.ring


def test_the_database_and_the_class_itself_answer_alike(at):
    other = ShowClass.objects.create(show_breed=at.show_class.show_breed, sex="bitch", code="open")
    for part in (("dog", ""), ("dog", "open"), ("bitch", "")):
        appoint(at, *part, ring="".join(part)[:20])
        for one in ShowClass.objects.filter(pk__in=[other.pk, at.show_class.pk, at.other_class.pk]):
            rings = [ring for ring in Ring.objects.all() if one in classes_in(ring)]
            assert rings == [one.appointed.ring]


def test_board_tablet_and_papers_follow_the_class(at):
    appoint(at, "dog", "open", ring="3")
    third = Ring.objects.get(name="3")
    assert [one["title"] for one in classes_on(third)] == ["Boxer, dogs, open class"]
    assert classes_on(at.ring) == []
    assert [one["id"] for one in day_of(third)["classes"]] == [at.show_class.pk]
    assert day_of(at.ring)["classes"] == []
    [breed] = programme_of(at.show, third.pk).breeds
    assert (breed.where(breed.classes[0])[:2], breed.awards) == (("Nia Velvetine", "Ring 3"), ())
    [breed] = programme_of(at.show, at.ring.pk).breeds
    assert breed.classes == []
    assert breed.awards


def test_the_ring_of_best_of_breed_hears_what_was_signed_in_the_other_ring(at):
    appoint(at, ring="3")
    third = Ring.objects.get(name="3")
    [breed] = day_of(third)["breeds"]
    [elsewhere] = breed["elsewhere"]
    assert (elsewhere["signed"], elsewhere["standings"]) == (False, [])
    sign(at)
    [elsewhere] = day_of(third)["breeds"][0]["elsewhere"]
    assert elsewhere["signed"]
    assert [one["place"] for one in elsewhere["standings"]] == [1, None, None]


def test_a_judge_reaches_the_rings_of_every_part_and_no_other(at):
    appoint(at, "dog", "open", ring="3")
    nia = Account.objects.get(email="nia@small.example")
    assert [ring.name for ring in rings_of_judge(nia, at.show)] == ["3"]
    client = Client()
    client.force_login(nia)
    assert client.get(f"/ring/{Ring.objects.get(name='3').pk}/").status_code == 200
    assert client.get(f"/ring/{at.ring.pk}/").status_code == 403


def test_the_age_is_counted_on_the_day_of_the_class(at):
    Show.objects.update(last_day=FIRST_DAY + timedelta(days=1))
    appoint(at, "dog", "open", day=FIRST_DAY + timedelta(days=1), name="")
    assert day_of(at.ring)["classes"][0]["day"] == "2026-06-14"


def test_own_dogs_are_looked_for_among_the_dogs_of_the_part(at):
    Ownership.objects.create(dog=at.entries[1].dog, person=Person.objects.create(name="Nia Velvetine"))
    appoint(at, "bitch", ring="1")
    assert findings_on_judges(at.show) == []
    appoint(at, "dog", "open", ring="1")
    assert [finding.code for finding in findings_on_judges(at.show)] == ["judge-owns-dog"]


def replace(at, name="Nia Velvetine"):
    appointing.replace_judge(
        who=at.accounts["secretary"], show=at.show, judge=Person.objects.get(name="judge"), name=name,
        email=f"{name.split()[0].lower()}@small.example", why="ill",
    )  # fmt: skip


def test_a_signed_class_keeps_its_judge_and_the_others_get_the_new_one(at):
    other = ShowClass.objects.create(show_breed=at.show_class.show_breed, sex="bitch", code="open")
    sign(at)
    replace(at)
    assert class_of(at).appointed.judge.name == "judge"
    assert ShowClass.objects.get(pk=other.pk).appointed.judge.name == "Nia Velvetine"
    line = AuditLine.objects.get(doing="replace-judge")
    assert line.detail["why"] == "ill"
    assert "Velvetine" not in repr(line.detail)


def test_a_judge_replaced_twice_leaves_each_their_signed_classes(at):
    sign(at)
    replace(at)
    appointing.replace_judge(
        who=at.accounts["secretary"], show=at.show, judge=Person.objects.get(name="Nia Velvetine"), name="Ola Quill",
        email="ola@small.example", why="delayed",
    )  # fmt: skip
    assert class_of(at).appointed.judge.name == "judge"
    assert class_of(at).show_breed.judge.name == "Ola Quill"


def test_the_new_judge_is_let_into_the_ring_and_the_old_one_no_longer(at):
    replace(at)
    for name, status in (("nia@small.example", 200), ("judge@small.example", 404)):
        client = Client()
        client.force_login(Account.objects.get(email=name))
        assert client.get(f"/ring/{at.ring.pk}/").status_code == status
    assert not Role.objects.filter(account=at.accounts["judge"]).exists()


def test_a_judge_cannot_be_replaced_by_the_same_or_once_gone(at):
    with pytest.raises(NotNow):
        replace(at, "judge")
    replace(at)
    with pytest.raises(NotNow):
        replace(at, "Ola Quill")


def test_the_page_says_what_stands_against_the_new_judge_and_what_to_print_again(at):
    Ownership.objects.create(dog=at.entries[1].dog, person=Person.objects.create(name="Nia Velvetine"))
    office = Client()
    office.force_login(at.accounts["secretary"])
    judge = Person.objects.get(name="judge")
    sent = {"name": "Nia Velvetine", "email": "nia@small.example", "why": "ill"}
    page = office.post(f"/office/small/judges/{judge.pk}/replace/", sent).content.decode()
    assert "Dog 2" in page
    assert f"judges-book.pdf?ring={at.ring.pk}" in page


def test_the_pages_of_a_breed_and_of_the_classes_take_what_is_typed(at):
    office = Client()
    office.force_login(at.accounts["secretary"])
    breed = at.show_class.show_breed_id
    sent = {"part": "bitch:", "judge_name": "Nia Velvetine", "judge_email": "", "ring": "3", "day": ""}
    page = office.post(f"/office/small/breeds/{breed}/", sent).content.decode()
    assert "Give the judge&#x27;s e-mail too" in page
    assert 'value="Nia Velvetine"' in page
    office.post(f"/office/small/breeds/{breed}/", {**sent, "judge_email": "nia@small.example"})
    assert "Nia Velvetine" in office.get(f"/office/small/breeds/{breed}/").content.decode()
    office.post("/office/small/classes/", {"classes": ["open", "junior"]})
    assert sorted(Show.objects.get().classes_offered) == ["junior", "open"]
