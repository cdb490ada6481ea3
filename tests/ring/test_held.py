"""Edits that do not count: held until somebody decides, left out, refused. None is dropped, none is waited for."""

from typing import Any

import pytest
from django.test import Client

from ringside.core.denied import Denied, NotNow
from ringside.ring import held, queries
from ringside.ring.access import Worker
from ringside.ring.actions import take_edits
from ringside.ring.models import Edit, Mark, Sheet
from ringside.ring.wording import in_words
from ringside.shows.models import ShowClass
from tests.ring.test_taking_edits import edit, sheet_of, take
from tests.shows_for_tests import SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def at() -> SmallShow:
    return small_show()


def card_of(at: SmallShow) -> str:
    return f"class:{at.show_class.pk}"


def move(at: SmallShow, index: int = 0) -> None:
    other, _ = ShowClass.objects.get_or_create(show_breed=at.show_class.show_breed, sex="dog", code="champion")
    at.entries[index].show_class = other
    at.entries[index].save()


def withdraw(at: SmallShow, index: int = 0) -> None:
    at.entries[index].state = "withdrawn"
    at.entries[index].save()


def held_mark(at: SmallShow) -> Edit:
    withdraw(at)
    take(at, edit(sheet_of(at), "mark.croup", 2))
    at.entries[0].state = "entered"
    at.entries[0].save()
    return Edit.objects.get()


def judge(at: SmallShow) -> Worker:
    return Worker(at.ring, frozenset({"judge"}), at.accounts["judge"])


@pytest.mark.parametrize(
    ("field", "value"), [("grade.{0}", "good"), ("presence.{0}", "absent"), ("reason.{0}", "Lame."),
                         ("places", ["{1}", "{0}"]), ("shortlist", ["{0}"])],
)  # fmt: skip
@pytest.mark.parametrize(("gone", "reason"), [(move, "moved to another class"), (withdraw, "withdrawn")])
def test_what_was_decided_of_a_dog_moved_or_withdrawn_is_held(at, gone, reason, field, value):
    keys = [entry.pk for entry in at.entries]
    gone(at)
    said = [one.format(*keys) for one in value] if isinstance(value, list) else value
    [answer] = take(at, edit(card_of(at), field.format(*keys), said))
    assert answer.state == "held"
    assert reason in answer.reason
    assert answer.reason.startswith("Number 1 was")


def test_a_correction_made_before_the_answer_does_not_wait_for_what_is_held(at):
    keys = [str(entry.pk) for entry in at.entries]
    move(at)
    answers = take(
        at, edit(card_of(at), "places", keys, number=1), edit(card_of(at), "places", keys[1:], 2, replaces=("e1",))
    )
    assert [answer.state for answer in answers] == ["held", "applied"]
    card = Sheet.objects.get(key=card_of(at))
    assert (card.fields["places"], card.incomplete) == (keys[1:], [])


def test_a_correction_does_not_wait_for_what_was_refused(at):
    grade = f"grade.{at.entries[0].pk}"
    answers = take(
        at, edit(card_of(at), grade, "good", 2, replaces=("e1",)), edit(card_of(at), grade, "brilliant", number=1)
    )
    assert [answer.state for answer in answers] == ["applied", "refused"]
    card = Sheet.objects.get(key=card_of(at))
    assert (card.fields, card.incomplete) == ({grade: "good"}, [])


def test_a_signature_waits_for_what_is_held_and_a_new_one_does_not(at):
    keys = [str(entry.pk) for entry in at.entries]
    move(at)
    take(at, edit(card_of(at), "places", keys, number=1), edit(card_of(at), "signature", {"covers": ["e1"]}, number=2))
    assert Sheet.objects.get(key=card_of(at)).signed is None
    take(at, edit(card_of(at), "places", keys[1:], 3, replaces=("e1",)),
         edit(card_of(at), "signature", {"covers": ["e3"]}, 4, replaces=("e2",)))  # fmt: skip
    assert Sheet.objects.get(key=card_of(at)).signed == {"places": keys[1:]}


def test_a_newer_pages_kind_of_sheet_is_held_and_blocks_nothing(at):
    answers = take(at, edit("litter:" + "9" * 60, "x", 1, v=2), edit(sheet_of(at), "mark.croup", 1, number=2))
    assert [answer.state for answer in answers] == ["held", "applied"]


def test_a_held_edit_of_another_ring_leaves_that_rings_sheet_alone(at):
    key = f"entry:{at.other_entry.pk}"
    own = Worker(at.other_ring, frozenset({"judge"}), at.accounts["other-judge"])
    take_edits(worker=own, raw_edits=[edit(key, "mark.croup", 1)])
    take(at, edit(key, "mark.croup", 2, number=2))
    assert Sheet.objects.get(key=key).ring == at.other_ring


def test_every_tablet_hears_what_does_not_count_and_why(at):
    held_mark(at)
    [told] = queries.edits_since(at.ring, 0)
    assert (told["state"], told["reason"]) == ("held", "Number 1 was withdrawn.")


def test_the_judge_takes_a_held_edit_in_and_every_tablet_hears_of_it(at):
    held.take_in(worker=judge(at), edit=held_mark(at))
    assert Mark.objects.get().mark == 2
    assert [(told["state"], told["seq"]) for told in queries.edits_since(at.ring, 1)] == [("taken", 2)]


def test_the_judge_leaves_a_held_edit_out_and_it_stays_on_record(at):
    held.leave_out(worker=judge(at), edit=held_mark(at))
    assert (Edit.objects.get().state, Mark.objects.count(), held.held_in(at.show)) == ("left-out", 0, [])
    assert [answer.state for answer in take(at, edit(sheet_of(at), "mark.croup", 2))] == ["held"]


def test_a_held_edit_is_decided_once(at):
    waiting = held_mark(at)
    held.leave_out(worker=judge(at), edit=waiting)
    with pytest.raises(NotNow, match="decided already"):
        held.take_in(worker=judge(at), edit=waiting)


def test_a_breed_given_another_ring_brings_what_is_written_with_it(at):
    take(at, edit(sheet_of(at), "mark.croup", 2), edit(sheet_of(at), "mark.stop", 1, number=2))
    breed = at.show_class.show_breed
    breed.ring = at.other_ring
    breed.save()
    office = Client()
    office.force_login(at.accounts["secretary"])
    office.get(f"/ring/{at.other_ring.pk}/day/")
    at.other_ring.refresh_from_db()
    assert [told["id"] for told in queries.edits_since(at.other_ring, 0)] == ["e1", "e2"]
    assert (Sheet.objects.get().ring, at.other_ring.sequence) == (at.other_ring, 2)
    [late] = take(at, edit(sheet_of(at), "mark.croup", 1, 3, replaces=("e1",)))
    assert (late.state, Mark.objects.get(point="croup").mark) == ("held", 2)


@pytest.mark.parametrize("role", ["writer", "steward"])
def test_who_only_writes_does_not_decide_on_held_edits(at, role):
    with pytest.raises(Denied):
        held.take_in(worker=Worker(at.ring, frozenset({role}), at.accounts[role]), edit=held_mark(at))


def test_the_judge_does_not_decide_for_another_ring(at):
    take(at, edit(f"entry:{at.other_entry.pk}", "mark.croup", 2))
    with pytest.raises(Denied, match="not of your ring"):
        held.take_in(worker=judge(at), edit=Edit.objects.get())


def test_the_ring_page_decides_with_one_request(at):
    tablet = Client(headers={"accept": "application/json"})
    tablet.force_login(at.accounts["judge"])
    address = f"/ring/{at.ring.pk}/held/{held_mark(at).pk}/"
    assert tablet.post(address, {"counts": "yes"}).json() == {"decided": "e1"}
    assert tablet.post(address, {"counts": "no"}).status_code == 409
    assert Edit.objects.get().state == "taken"


def test_the_office_leaves_out_what_it_was_shown_in_words(at):
    waiting = held_mark(at)
    office = Client()
    office.force_login(at.accounts["secretary"])
    page = office.get("/office/small/rings/").content.decode()
    assert "Number 1" in page
    assert "croup: clearly steep" in page
    office.post(f"/office/small/rings/held/{waiting.pk}/", {"counts": "no"})
    assert Edit.objects.get().state == "left-out"


def test_a_token_comes_with_the_news(at):
    tablet = Client()
    tablet.force_login(at.accounts["judge"])
    assert "csrftoken" in tablet.get(f"/ring/{at.ring.pk}/edits/").cookies


@pytest.mark.parametrize(
    ("sheet", "field", "value", "words"),
    [
        ("card", "places", ["{1}", "{0}"], ("boxer", "places: 2, 1")),
        ("card", "grade.{0}", "very-good", ("boxer", "grade of number 1: Very Good")),
        ("entry", "mark.croup", 0, ("Number 1", "croup: as the standard asks")),
        ("entry", "mark.croup", -1, ("Number 1", "croup: a little flat")),
        ("entry", "praise.croup", True, ("Number 1", "croup: yes")),
        ("entry", "remark", "Fine.", ("Number 1", "remark: Fine.")),
        ("entry", "signature", {"covers": []}, ("Number 1", "the signature")),
        ("litter:5", "x.y", 3, ("litter:5", "x y: 3")),
        ("", "", None, ("an edit that cannot be read", "nothing")),
    ],
)
def test_the_office_reads_an_edit_in_words(at, sheet: str, field: str, value: Any, words: tuple[str, str]):
    keys = [entry.pk for entry in at.entries]
    named = {"card": card_of(at), "entry": sheet_of(at)}.get(sheet, sheet)
    said = [one.format(*keys) for one in value] if isinstance(value, list) else value
    about, what = in_words({"sheet": named, "field": field.format(*keys), "value": said})
    assert (words[0].lower() in about.lower(), what) == (True, words[1])
