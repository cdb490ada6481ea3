"""A breed's awards at the ring: what the tablet is told, what is refused with a sentence, who competes and why."""

from datetime import date

import pytest
from django.test import Client

from ringside.dogs.models import Dog
from ringside.entries.models import Entry
from ringside.ring.awards import CODES
from ringside.ring.models import Edit, Sheet
from ringside.shows.models import ShowClass
from tests.results.writing import Pen
from tests.ring.test_taking_edits import edit, take
from tests.shows_for_tests import SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


def another(show_class: ShowClass, number: int) -> Entry:
    breed = show_class.show_breed
    dog = Dog.objects.create(
        name=f"Dog {number}", breed=breed.breed, sex=show_class.sex, born=date(2022, 6, number % 28 + 1)
    )
    return Entry.objects.create(show=breed.show, show_class=show_class, dog=dog, number=number)


@pytest.fixture
def at() -> SmallShow:
    return small_show()


@pytest.fixture
def bitches(at) -> list[Entry]:
    one = ShowClass.objects.create(show_breed=at.show_class.show_breed, sex="bitch", code="open")
    return [another(one, 11), another(one, 12)]


def breed_sheet(at: SmallShow) -> str:
    return f"breed:{at.show_class.show_breed_id}"


def sign_class(at: SmallShow, entries: list[Entry], pen: Pen | None = None) -> Pen:
    """Everyone Excellent, placed in the order given, the card signed."""
    pen = pen or Pen(at)
    card = f"class:{entries[0].show_class_id}"
    pen.write(card, {f"grade.{entry.pk}": "excellent" for entry in entries})
    pen.write(card, {"places": [str(entry.pk) for entry in entries]})
    pen.sign(card)
    return pen


def told(at: SmallShow, path: str) -> dict:
    client = Client()
    client.force_login(at.accounts["judge"])
    return client.get(f"/ring/{at.ring.pk}/{path}").json()


def candidates(at: SmallShow) -> dict[str, dict]:
    answer = told(at, f"breeds/{at.show_class.show_breed_id}/candidates/")
    return {one["code"]: one for one in answer["awards"]}


def test_the_day_tells_each_breeds_awards_as_far_as_its_dogs_reach(at, bitches):
    [breed] = told(at, "day/")["breeds"]
    assert (breed["sheet"], breed["name"]) == (breed_sheet(at), "Boxer")
    assert breed["classes"] == [at.show_class.pk, bitches[0].show_class_id]
    named = [one["code"] for one in breed["awards"]]
    assert named == [
        "cacib-dog", "reserve-cacib-dog", "best-of-sex-dog", "cacib-bitch", "reserve-cacib-bitch", "best-of-sex-bitch",
        "best-of-breed", "best-opposite-sex",
    ]  # fmt: skip
    cacib = breed["awards"][0]
    assert (cacib["name"], cacib["level"], cacib["kind"], cacib["may_be_withheld"]) == (
        "CACIB", "sex", "certificate", True,
    )  # fmt: skip
    assert cacib["lines"][0]["places"] == [1]


def test_the_day_names_no_dog_in_its_awards(at, bitches):
    text = str(told(at, "day/")["breeds"])
    assert not any(entry.dog.name in text for entry in (*at.entries, *bitches))


def test_the_tablet_gets_the_words_of_what_it_finds_in_awards(at):
    assert set(CODES) <= set(told(at, "day/")["sentences"])


def test_an_award_goes_to_a_dog_or_is_withheld_or_is_taken_back(at):
    first = str(at.entries[0].pk)
    for number, value in enumerate((first, False, None), 1):
        before = (f"e{number - 1}",) if number > 1 else ()
        [answer] = take(at, edit(breed_sheet(at), "award.cacib-dog", value, number, replaces=before))
        assert answer.state == "applied"
        assert Sheet.objects.get(key=breed_sheet(at)).fields.get("award.cacib-dog") == value


@pytest.mark.parametrize(
    ("field", "value", "reason"),
    [
        ("award.cacib", "{dog}", "These rules give a breed no such award."),
        ("award.best-in-show", "{dog}", "These rules give a breed no such award."),
        ("award.challenge-dog", "{dog}", "These rules give a breed no such award."),
        ("award.cacib-bitch", "{dog}", "No bitch of this breed has the entry {dog}."),
        ("award.cacib-dog", "{bitch}", "No dog of this breed has the entry {bitch}."),
        ("award.best-of-breed", "{foreign}", "No dog of this breed has the entry {foreign}."),
        ("award.best-of-breed", "abc", "No dog of this breed has the entry abc."),
        ("award.best-of-breed", True, None),
        ("award.best-of-breed", ["{dog}"], None),
    ],
)
def test_an_award_of_other_rules_another_breed_or_sex_is_refused_with_a_sentence(at, bitches, field, value, reason):
    ids = {"dog": at.entries[0].pk, "bitch": bitches[0].pk, "foreign": at.other_entry.pk}
    filled = value.format(**ids) if isinstance(value, str) else value
    [answer] = take(at, edit(breed_sheet(at), field, filled))
    assert answer.state == "refused"
    assert answer.reason.endswith(".")
    assert reason is None or answer.reason == reason.format(**ids)


def test_a_dog_that_does_not_compete_may_get_an_award_and_that_is_said(at):
    sign_class(at, list(at.entries))
    third = str(at.entries[2].pk)
    [answer] = take(at, edit(breed_sheet(at), "award.cacib-dog", third, 90))
    assert answer.state == "applied"
    findings = told(at, f"breeds/{at.show_class.show_breed_id}/candidates/")["findings"]
    assert findings == [
        "Number 3 has the CACIB and does not compete for it under these rules: look again. The judge decides."
    ]


@pytest.mark.parametrize(("role", "state"), [("judge", "applied"), ("writer", "applied"), ("steward", "refused")])
def test_awards_are_decided_by_the_judge_or_the_judges_writer(at, role, state):
    [answer] = take(at, edit(breed_sheet(at), "award.cacib-dog", str(at.entries[0].pk)), role=role)
    assert answer.state == state


def test_the_awards_of_a_breed_of_another_ring_are_held(at):
    other = at.other_class.show_breed_id
    [answer] = take(at, edit(f"breed:{other}", "award.cacib-dog", str(at.other_entry.pk)))
    assert (answer.state, Edit.objects.get().state) == ("held", "held")


def test_nobody_competes_from_a_class_that_is_not_signed(at, bitches):
    pen = Pen(at)
    pen.write(
        f"class:{at.show_class.pk}", {f"grade.{at.entries[0].pk}": "excellent", "places": [str(at.entries[0].pk)]}
    )
    answer = told(at, f"breeds/{at.show_class.show_breed_id}/candidates/")
    assert answer["awards"][0]["candidates"] == []
    assert answer["missing"] == ["Open class, dogs: not signed", "Open class, bitches: not signed"]


def test_who_competes_is_told_with_number_and_reason(at):
    # French rules on the CACIB and its reserve, club copy: the second of the winner's class joins for the reserve.
    first, second, third = at.entries
    pen = sign_class(at, [second, first, third])
    assert candidates(at)["cacib-dog"]["candidates"] == [
        {"entry": str(second.pk), "number": 2, "reason": "Competes from the open class, place 1, excellent."}
    ]
    assert candidates(at)["reserve-cacib-dog"]["waits_for"] == ["cacib-dog"]
    pen.write(breed_sheet(at), {"award.cacib-dog": str(second.pk)})
    found = candidates(at)
    assert found["reserve-cacib-dog"]["candidates"] == [
        {
            "entry": str(first.pk),
            "number": 1,
            "reason": "Competes as the second of the open class, which the winner of the CACIB won.",
        }
    ]
    assert found["best-of-sex-dog"]["candidates"][0]["reason"] == "Competes as the winner of CACIB."
    assert found["cacib-dog"]["decided"] == str(second.pk)


@pytest.mark.parametrize("field", ["presence.{}", "grade.{}"])
def test_a_dog_that_was_absent_or_disqualified_does_not_compete(at, field):
    pen, card = Pen(at), f"class:{at.show_class.pk}"
    first, second, _ = at.entries
    pen.write(card, {f"grade.{entry.pk}": "excellent" for entry in at.entries})
    gone = {"presence.{}": "absent", "grade.{}": "disqualified"}[field]
    pen.write(card, {field.format(first.pk): gone, "places": [str(first.pk), str(second.pk)]})
    pen.sign(card)
    assert candidates(at)["cacib-dog"]["candidates"] == []


def test_a_withdrawn_dog_does_not_compete_and_keeps_the_number_in_what_is_said(at):
    pen = sign_class(at, list(at.entries))
    pen.write(breed_sheet(at), {"award.cacib-dog": str(at.entries[0].pk)})
    Entry.objects.filter(pk=at.entries[0].pk).update(state="withdrawn")
    answer = told(at, f"breeds/{at.show_class.show_breed_id}/candidates/")
    assert answer["awards"][0]["candidates"] == []
    assert answer["findings"][0].startswith("Number 1 has the CACIB")


def test_a_stranger_is_not_told_who_competes(at):
    client = Client()
    address = f"/ring/{at.ring.pk}/breeds/{at.show_class.show_breed_id}/candidates/"
    assert client.get(address).status_code == 401
    client.force_login(at.accounts["stranger"])
    assert client.get(address).status_code == 404


def test_a_breed_of_another_ring_is_not_found(at):
    client = Client()
    client.force_login(at.accounts["judge"])
    address = f"/ring/{at.ring.pk}/breeds/{at.other_class.show_breed_id}/candidates/"
    assert client.get(address).status_code == 404
