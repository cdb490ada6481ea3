"""Correcting what is published: kept with who, when and why; shown wherever the result is shown."""

import pytest
from django.test import Client
from django.utils import timezone

from ringside.core.denied import Denied, NotNow
from ringside.core.models import AuditLine
from ringside.results import corrections
from ringside.results.actions import publish_class
from ringside.results.corrections import Result
from ringside.results.models import Correction, Critique, Placing
from tests.papers import reading
from tests.results.writing import judge_and_sign
from tests.shows_for_tests import small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def at():
    found = small_show()
    judge_and_sign(found)
    publish_class(by=found.accounts["secretary"], show_class=found.show_class)
    return found


@pytest.fixture
def office(at) -> Client:
    client = Client()
    client.force_login(at.accounts["secretary"])
    return client


def correct(at, results, why="The judge mixed two numbers up.", who="secretary"):
    return corrections.correct_class(who=at.accounts[who], show_class=at.show_class, results=results, why=why)


def swapped(at):
    return {
        at.entries[0].pk: Result(grade="very-good", place=2),
        at.entries[1].pk: Result(grade="excellent", place=1),
    }


def test_two_dogs_change_places_and_both_corrections_are_kept(at):
    made = correct(at, swapped(at))
    assert len(made) == 2
    assert {one.entry_id: one.place for one in Placing.objects.all()} == {
        at.entries[0].pk: 2, at.entries[1].pk: 1, at.entries[2].pk: None,
    }  # fmt: skip
    first = Correction.objects.get(entry=at.entries[0])
    assert (first.before["place"], first.after["place"]) == (1, 2)
    assert first.by == at.accounts["secretary"]
    assert AuditLine.objects.filter(doing="correct-results").count() == 1


def test_a_correction_shows_on_the_page_the_paper_and_the_files(at, office):
    correct(at, swapped(at))
    page = office.get(f"/office/small/results/{at.show_class.pk}/").content.decode()
    assert "Corrected after publishing" in page
    assert "Excellent, place 1" in page
    assert "The judge mixed two numbers up." in page
    text = reading.text(office.get("/papers/show/small/results.pdf").content)
    assert text.index("Dog 2") < text.index("Dog 1")
    told = office.get("/office/small/results/out/results.json").json()["results"]
    assert [(one["number"], one["place"], one["corrected"]) for one in told] == [
        (2, 1, True), (1, 2, True), (3, None, False),
    ]  # fmt: skip


def test_the_exhibitor_reads_that_the_result_was_corrected(at):
    critique = Critique.objects.create(
        entry=at.entries[0], language="en", sentences=["Good."], fingerprint="f" * 64, signed_at=timezone.now(),
        paper={"standard": "boxer", "sex": "dog", "marks": {}, "praise": []},
    )  # fmt: skip
    correct(at, swapped(at))
    client = Client()
    client.force_login(at.accounts["ada"])
    page = client.get(f"/critiques/{critique.pk}/").content.decode()
    assert "Very Good, placed second" in page
    assert "The judge mixed two numbers up." in page


def test_the_page_corrects_and_keeps_what_was_typed_where_the_why_is_missing(at, office):
    form = {}
    for row in Placing.objects.all():
        form |= {f"presence_{row.entry_id}": "present", f"grade_{row.entry_id}": row.grade,
                 f"place_{row.entry_id}": row.place or "", f"reason_{row.entry_id}": ""}  # fmt: skip
    form[f"grade_{at.entries[2].pk}"] = "very-good"
    address = f"/office/small/results/{at.show_class.pk}/correct/"
    assert "This field is required." in office.post(address, form).content.decode()
    answer = office.post(address, {**form, "why": "Misread."}, follow=True).content.decode()
    assert "1 result is corrected." in answer
    assert Placing.objects.get(entry=at.entries[2]).grade == "very-good"


@pytest.mark.parametrize(
    ("result", "words"),
    [
        (Result(grade="excellent", place=1), "each is given once"),
        (Result(grade="excellent", place=5), "without a gap"),
        (Result(grade="superb"), "no such grade"),
        (Result("gone"), "no such grade"),
        (Result("absent", place=3), "cannot be placed"),
        (Result(grade="disqualified"), "needs its reason"),
        (Result(grade="disqualified", place=3, reason="Bit."), "cannot be placed"),
    ],
)
def test_a_correction_that_no_rule_allows_is_refused_and_nothing_is_written(at, result, words):
    with pytest.raises(NotNow, match=words):
        correct(at, {at.entries[2].pk: result})
    assert not Correction.objects.exists()
    assert Placing.objects.get(entry=at.entries[2]).grade == "good"


def test_a_correction_needs_a_why_a_change_and_a_published_class(at):
    with pytest.raises(NotNow, match="why"):
        correct(at, swapped(at), " ")
    with pytest.raises(NotNow, match="Nothing is changed"):
        correct(at, {})
    with pytest.raises(NotNow, match="not published yet"):
        corrections.correct_class(who=at.accounts["secretary"], show_class=at.other_class, results={}, why="x")


def test_only_owner_and_secretary_correct(at):
    with pytest.raises(Denied):
        correct(at, swapped(at), who="assistant")
