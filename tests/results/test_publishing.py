"""From the signed card to readable results: what is missing is said, what is published stays, strangers see nothing."""

import pytest
from django.http import Http404
from django.test import Client

from ringside.core.denied import Denied, NotNow
from ringside.dogs.models import Dog
from ringside.entries.models import Entry
from ringside.results import actions, queries
from ringside.results.access import access_critique
from ringside.results.models import Critique, Placing
from ringside.ring import actions as ring
from ringside.ring.access import Worker
from ringside.shows.models import ShowClass
from scoring.merging import covers_for
from tests.shows_for_tests import SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


class Pen:
    def __init__(self, at: SmallShow) -> None:
        self.at, self.count = at, 0

    def write(self, sheet: str, **fields) -> None:
        answers = ring.take_edits(
            worker=Worker(self.at.ring, frozenset({"judge"}), self.at.accounts["judge"]),
            raw_edits=[self._edit(sheet, field.replace("__", "."), value) for field, value in fields.items()],
        )  # fmt: skip
        assert {answer.state for answer in answers} == {"applied"}, answers

    def sign(self, sheet: str) -> None:
        self.write(sheet, signature={"covers": list(covers_for(ring.edits_of(sheet)))})

    def _edit(self, sheet, field, value):
        self.count += 1
        return {
            "v": 1, "id": f"pen-{self.count}", "sheet": sheet, "field": field, "value": value, "replaces": [],
            "made_at": "2026-06-13T09:00:00Z", "device": "pen",
        }  # fmt: skip


@pytest.fixture
def at() -> SmallShow:
    return small_show()


@pytest.fixture
def judged(at) -> SmallShow:
    """All three dogs graded, two placed, the third disqualified with a reason; card and first two sheets signed."""
    pen, card = Pen(at), f"class:{at.show_class.pk}"
    first, second, third = (entry.pk for entry in at.entries)
    for pk in (first, second, third):
        pen.write(f"entry:{pk}", mark__croup=1, mark__topline=0, mark__reach=0, choice__bite="undershot")
    pen.write(card, **{f"grade.{first}": "excellent", f"grade.{second}": "very-good", f"grade.{third}": "disqualified"})
    pen.write(card, **{f"reason.{third}": "Snapped at the judge.", "places": [str(first), str(second)]})
    for key in (card, f"entry:{first}", f"entry:{second}"):
        pen.sign(key)
    return at


def test_a_class_nobody_has_judged_is_to_come(at):
    found = queries.compiled(at.show_class)
    assert (found.state, found.missing) == ("to come", ("places", "the judge's signature"))


def test_a_class_with_anything_missing_cannot_be_published_and_says_what(at):
    Pen(at).write(f"entry:{at.entries[0].pk}", mark__croup=1)
    with pytest.raises(
        NotNow, match="places; the judge's signature; number 1: grade; number 2: grade; number 3: grade"
    ):
        actions.publish_class(by=at.accounts["secretary"], show_class=at.show_class)
    assert Placing.objects.count() == 0


def test_a_disqualification_without_its_reason_is_missing(judged):
    card = f"class:{judged.show_class.pk}"
    third = judged.entries[2].pk
    row = next(row for row in queries.compiled(judged.show_class).rows if row.entry.pk == third)
    assert row.reason == "Snapped at the judge."
    pen = Pen(judged)
    pen.count = 100
    before = ring.models.Edit.objects.get(sheet=card, field=f"reason.{third}")
    edit = pen._edit(card, f"reason.{third}", "") | {"replaces": [before.pk]}
    ring.take_edits(worker=Worker(judged.ring, frozenset({"judge"}), judged.accounts["judge"]), raw_edits=[edit])
    assert "something was written after the signature" in " ".join(queries.compiled(judged.show_class).missing)


def test_publishing_writes_the_signed_places_grades_and_reasons(judged):
    actions.publish_class(by=judged.accounts["secretary"], show_class=judged.show_class)
    found = Placing.objects.order_by("entry__number").values_list("entry__number", "grade", "place", "reason")
    assert list(found) == [
        (1, "excellent", 1, ""), (2, "very-good", 2, ""), (3, "disqualified", None, "Snapped at the judge."),
    ]  # fmt: skip


def test_signed_critiques_are_frozen_in_four_languages_and_unsigned_ones_wait(judged):
    actions.publish_class(by=judged.accounts["secretary"], show_class=judged.show_class)
    assert sorted(Critique.objects.values_list("entry__number", "language")) == [
        (number, language) for number in (1, 2) for language in ("de", "en", "es", "fr")
    ]
    pen = Pen(judged)
    pen.count = 200
    pen.sign(f"entry:{judged.entries[2].pk}")
    assert actions.publish_critiques(by=judged.accounts["secretary"], show_class=judged.show_class) == 3
    assert "Snapped at the judge." in " ".join(Critique.objects.get(entry__number=3, language="en").sentences)


def test_a_frozen_critique_does_not_change_when_marks_change_later(judged):
    actions.publish_class(by=judged.accounts["secretary"], show_class=judged.show_class)
    before = Critique.objects.get(entry__number=1, language="en")
    pen = Pen(judged)
    pen.count = 300
    ring.take_edits(
        worker=Worker(judged.ring, frozenset({"judge"}), judged.accounts["judge"]),
        raw_edits=[pen._edit(f"entry:{judged.entries[0].pk}", "mark.drive", -2)],
    )  # fmt: skip
    actions.publish_critiques(by=judged.accounts["secretary"], show_class=judged.show_class)
    after = Critique.objects.get(entry__number=1, language="en")
    assert (after.sentences, after.fingerprint) == (before.sentences, before.fingerprint)


def test_a_class_is_published_once(judged):
    actions.publish_class(by=judged.accounts["secretary"], show_class=judged.show_class)
    with pytest.raises(NotNow, match="published already"):
        actions.publish_class(by=judged.accounts["secretary"], show_class=judged.show_class)


@pytest.mark.parametrize("role", ["assistant", "steward", "writer", "judge"])
def test_only_owner_and_secretary_publish(judged, role):
    with pytest.raises(Denied, match="publish results"):
        actions.publish_class(by=judged.accounts[role], show_class=judged.show_class)


def test_an_exhibitor_reads_own_dogs_only(judged):
    actions.publish_class(by=judged.accounts["secretary"], show_class=judged.show_class)
    critique = Critique.objects.get(entry__number=1, language="en")
    assert access_critique(judged.accounts["ada"], critique.pk) == critique
    for stranger in ("ben", "cleo", "stranger", "steward"):
        with pytest.raises(Http404):
            access_critique(judged.accounts[stranger], critique.pk)
    assert [one.entry.number for one in queries.critiques_for(judged.accounts["ada"])] == [1]


def test_nothing_is_readable_before_publishing(judged):
    assert queries.critiques_for(judged.accounts["ada"]) == []
    assert Critique.objects.count() == 0


def test_findings_speak_of_catalogue_numbers(judged):
    pen, card = Pen(judged), f"class:{judged.show_class.pk}"
    pen.count = 400
    places = ring.models.Edit.objects.get(sheet=card, field="places")
    first, second = (str(entry.pk) for entry in judged.entries[:2])
    signature = ring.models.Edit.objects.get(sheet=card, field="signature")
    edit = pen._edit(card, "places", [second, first]) | {"replaces": [places.pk]}
    sign = pen._edit(card, "signature", {"covers": [edit["id"]]}) | {"replaces": [signature.pk]}
    covers = [e.pk for e in ring.models.Edit.objects.filter(sheet=card).exclude(field__in=["places", "signature"])]
    sign["value"]["covers"] += covers
    ring.take_edits(worker=Worker(judged.ring, frozenset({"judge"}), judged.accounts["judge"]), raw_edits=[edit, sign])
    assert (
        "The grades of numbers 2 and 1 do not go with their places: very good and excellent."
        in queries.compiled(judged.show_class).words
    )


def test_the_desk_costs_the_same_number_of_queries_however_many_classes(judged, django_assert_max_num_queries):
    client = Client()
    client.force_login(judged.accounts["secretary"])
    with django_assert_max_num_queries(15):
        assert client.get("/office/small/results/").status_code == 200
    for code in ("junior", "intermediate", "champion", "veteran"):
        one = ShowClass.objects.create(show_breed=judged.show_class.show_breed, sex="dog", code=code)
        dog = Dog.objects.create(name=f"More {code}", breed="boxer", sex="dog", born="2022-01-01")
        Entry.objects.create(show=judged.show, show_class=one, dog=dog)
    with django_assert_max_num_queries(15):
        assert client.get("/office/small/results/").status_code == 200


def test_a_class_signed_without_any_place_can_be_published(at):
    pen, card = Pen(at), f"class:{at.show_class.pk}"
    pen.write(card, **{f"grade.{entry.pk}": "good" for entry in at.entries})
    assert "places" in queries.compiled(at.show_class).missing
    pen.sign(card)
    actions.publish_class(by=at.accounts["secretary"], show_class=at.show_class)
    assert set(Placing.objects.values_list("place", flat=True)) == {None}


def test_a_club_with_a_rule_of_its_own_gets_its_own_advice(at):
    at.show.overlays = ["germany"]
    at.show.save()
    at.show_class.refresh_from_db()
    pen, card = Pen(at), f"class:{at.show_class.pk}"
    pen.write(card, **{f"grade.{at.entries[0].pk}": "good", "places": [str(at.entries[0].pk)]})
    # Source: VDH show regulations, section 19 (least grade for a place is Very Good).
    words = " ".join(queries.compiled(ShowClass.objects.get(pk=at.show_class.pk)).words)
    assert "the rules ask very good at least for a place" in words


@pytest.mark.parametrize("rules", ["canada", "united-kingdom", "australia"])
def test_a_critique_under_a_body_without_grades_is_published_with_its_place(rules):
    at = small_show()
    at.show.rules = rules
    at.show.save()
    first, second, _ = (entry.pk for entry in at.entries)
    pen, card = Pen(at), f"class:{at.show_class.pk}"
    pen.write(f"entry:{first}", mark__croup=1)
    pen.write(card, places=[str(first), str(second)])
    for key in (card, f"entry:{first}"):
        pen.sign(key)
    actions.publish_class(by=at.accounts["secretary"], show_class=at.show_class)
    critique = Critique.objects.get(language="en")
    assert (critique.paper["grade"], critique.paper["place"]) == (None, 1)
    assert critique.sentences[-1].startswith("Placed first")


def test_an_absent_dog_with_a_signed_sheet_holds_no_publication_up(at):
    first, second, third = (entry.pk for entry in at.entries)
    pen, card = Pen(at), f"class:{at.show_class.pk}"
    pen.write(f"entry:{third}", mark__croup=1)
    pen.write(card, **{f"grade.{first}": "excellent", f"grade.{second}": "good", f"presence.{third}": "absent"})
    pen.write(card, places=[str(first)])
    for key in (card, f"entry:{third}"):
        pen.sign(key)
    actions.publish_class(by=at.accounts["secretary"], show_class=at.show_class)
    assert Placing.objects.get(entry=third).presence == "absent"
