"""A critique is of the dog that was there, and names the judge who signed it."""

import pytest
from django.http import Http404
from django.test import Client

from ringside.home.kept import kept_of
from ringside.home.reading import reading_of
from ringside.home.sharing import share_entry
from ringside.papers.build import paper_for
from ringside.people.models import Person
from ringside.results import actions, queries
from ringside.results.access import access_critique
from ringside.results.award_actions import publish_awards
from ringside.results.corrections import Result, correct_class
from ringside.results.models import Critique
from ringside.results.out_awards import awards_json
from ringside.ring.models import Edit
from ringside.shows import appointing
from tests.results.writing import Pen, judge_and_sign
from tests.shows_for_tests import SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def at() -> SmallShow:
    """The sheets of all three dogs are signed, the class is not judged."""
    found = small_show()
    for entry in found.entries:
        sign(found, entry)
    return found


def sign(at: SmallShow, entry) -> None:
    pen = Pen(at)
    pen.write(f"entry:{entry.pk}", {"mark.croup": 1})
    pen.sign(f"entry:{entry.pk}")


def publish(at: SmallShow) -> None:
    actions.publish_class(by=at.accounts["secretary"], show_class=at.show_class)


def judge_with_the_third_absent(at: SmallShow, presence: str = "absent") -> None:
    pen, card = Pen(at), f"class:{at.show_class.pk}"
    first, second, third = (entry.pk for entry in at.entries)
    pen.write(card, {f"grade.{first}": "excellent", f"grade.{second}": "good", f"presence.{third}": presence})
    pen.write(card, {"places": [str(first)]})
    pen.sign(card)


def written() -> set[int]:
    return set(Critique.objects.values_list("entry__number", flat=True))


def test_of_a_dog_marked_absent_nothing_is_published_though_its_sheet_was_signed(at):
    judge_with_the_third_absent(at)
    publish(at)
    assert written() == {1, 2}
    assert actions.publish_critiques(by=at.accounts["secretary"], show_class=at.show_class) == 2


def test_a_dog_that_was_excused_was_in_the_ring_and_keeps_its_critique(at):
    judge_with_the_third_absent(at, "excused")
    publish(at)
    assert written() == {1, 2, 3}


def test_a_result_corrected_to_absent_takes_its_critique_from_every_reader(at):
    judge_and_sign(at)
    publish(at)
    third, owner = at.entries[2], at.accounts["cleo"]
    critique = Critique.objects.get(entry=third, language="en")
    link = f"/shared/{share_entry(by=owner, entry=third).token}/"
    check = f"/check/{critique.fingerprint[:16]}/"
    assert [Client().get(one).status_code for one in (link, check)] == [200, 200]
    correct_class(
        who=at.accounts["secretary"], show_class=at.show_class, results={third.pk: Result("absent")}, why="Not there"
    )
    with pytest.raises(Http404):
        access_critique(owner, critique.pk)
    assert queries.critiques_for(owner) == []
    assert kept_of(owner)["critiques"] == []
    assert [Client().get(one).status_code for one in (link, check)] == [404, 404]


def replace(at: SmallShow) -> None:
    appointing.replace_judge(
        who=at.accounts["secretary"], show=at.show, judge=Person.objects.get(name="judge"), name="Nia Velvetine",
        email="nia@small.example", why="ill",
    )  # fmt: skip


def test_who_signed_a_critique_stays_under_it_when_another_judge_takes_over(at):
    replace(at)
    at.accounts["judge"] = Person.objects.get(name="Nia Velvetine").account
    Pen(at).sign(f"entry:{at.entries[1].pk}")
    judge_and_sign(at)
    publish(at)
    told = {one.entry.number: one for one in Critique.objects.filter(language="en")}
    assert {number: paper_for(one).judge for number, one in told.items()} == {
        1: "judge", 2: "Nia Velvetine", 3: "judge",
    }  # fmt: skip
    assert reading_of(told[1])["judge"].name == "judge"
    page = Client()
    page.force_login(at.accounts["ada"])
    assert "Nia Velvetine" not in page.get(f"/critiques/{told[1].pk}/").content.decode()


def test_who_signed_the_awards_stays_beside_them_in_the_file_when_another_judge_takes_over(at):
    judge_and_sign(at)
    publish(at)
    breed = at.show_class.show_breed
    pen, card = Pen(at), f"breed:{breed.pk}"
    pen.write(card, {"award.cacib-dog": str(at.entries[0].pk)})
    pen.sign(card)
    publish_awards(by=at.accounts["secretary"], show_breed=breed)
    replace(at)
    assert {line["judge"] for line in awards_json(at.show)["awards"]} == {"judge"}


def test_only_a_signature_says_who_judged(at):
    assert set(Edit.objects.filter(field="signature").values_list("judge__name", flat=True)) == {"judge"}
    assert set(Edit.objects.exclude(field="signature").values_list("judge", flat=True)) == {None}


def test_an_old_critique_names_the_judge_of_its_class(at):
    judge_and_sign(at)
    publish(at)
    Critique.objects.update(judge=None)
    assert paper_for(Critique.objects.get(entry=at.entries[0], language="de")).judge == "judge"
