"""The server's side of the ring: per-edit answers, no loss, no doubling, rights, holds and settled rows."""

import re
from pathlib import Path
from typing import Any

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.django import TestCase

from ringside.core.sentences import SENTENCES
from ringside.ring import actions
from ringside.ring.access import Worker
from ringside.ring.advice import CODES
from ringside.ring.models import Edit, Mark, Sheet
from scoring.merging import covers_for, merge, settled
from scoring.placing import class_findings
from scoring.standards import loader as standards
from tests.shows_for_tests import SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


def edit(sheet: str, field: str, value: Any, number: int = 1, replaces: tuple[str, ...] = (), v: int = 1) -> dict:
    return {
        "v": v, "id": f"e{number}", "sheet": sheet, "field": field, "value": value, "replaces": list(replaces),
        "made_at": "2026-06-13T09:00:00Z", "device": "tablet-1",
    }  # fmt: skip


def take(at: SmallShow, *edits: Any, role: str = "judge") -> list[actions.Answer]:
    return actions.take_edits(worker=Worker(at.ring, frozenset({role}), at.accounts[role]), raw_edits=edits)


@pytest.fixture
def at() -> SmallShow:
    return small_show()


def sheet_of(at: SmallShow, index: int = 0) -> str:
    return f"entry:{at.entries[index].pk}"


def test_a_mark_becomes_a_row_that_can_be_asked_for_across_a_breed(at):
    take(at, edit(sheet_of(at), "mark.croup", 2), edit(sheet_of(at, 1), "mark.croup", -1, number=2))
    found = Mark.objects.filter(point="croup", sheet__entry__dog__breed="boxer").values_list("mark", flat=True)
    assert sorted(found) == [-1, 2]


def test_the_same_edit_sent_twice_is_taken_once(at):
    one = edit(sheet_of(at), "mark.croup", 2)
    first, second = take(at, one), take(at, one)
    assert [a.state for a in first + second] == ["applied", "applied"]
    assert Edit.objects.count() == 1


def test_each_edit_more_of_a_sheet_asks_whether_it_is_known_and_is_written_and_nothing_else(at):
    points = [point.code for point in standards.load("boxer").points if point.kind == "two-sided" and not point.sex]
    marks = [edit(sheet_of(at), f"mark.{code}", 1, number) for number, code in enumerate(points, start=1)]
    with CaptureQueriesContext(connection) as few:
        take(at, *marks[:2])
    with CaptureQueriesContext(connection) as many:
        take(at, *marks[2:])
    assert len(many) - len(few) == 2 * (len(marks) - 4)


def test_the_same_id_with_other_content_is_refused_and_the_first_is_kept(at):
    take(at, edit(sheet_of(at), "mark.croup", 2))
    [answer] = take(at, edit(sheet_of(at), "mark.croup", 1))
    assert (answer.state, answer.reason) == ("refused", "Another edit has this id already; it was kept.")
    assert Edit.objects.get().value == 2


def test_a_refused_edit_does_not_block_the_others(at):
    answers = take(at, "no edit", {}, edit(sheet_of(at), "mark.nonsense", 2, 7), edit(sheet_of(at), "mark.croup", 1, 8))
    assert [a.state for a in answers] == ["refused", "refused", "refused", "applied"]
    assert all(a.reason for a in answers[:3])


def test_two_devices_that_disagree_are_both_kept(at):
    take(at, edit(sheet_of(at), "mark.croup", 2))
    [answer] = take(at, edit(sheet_of(at), "mark.croup", -1, number=2))
    assert answer.state == "disputed"
    assert Sheet.objects.get().disputed == ["mark.croup"]
    assert Mark.objects.count() == 0


def test_one_edit_that_replaces_both_settles_a_dispute(at):
    take(at, edit(sheet_of(at), "mark.croup", 2), edit(sheet_of(at), "mark.croup", -1, number=2))
    take(at, edit(sheet_of(at), "mark.croup", 1, number=3, replaces=("e1", "e2")))
    assert [mark.mark for mark in Mark.objects.all()] == [1]


@pytest.mark.parametrize(
    ("role", "field", "value", "state"),
    [
        ("steward", "mark.croup", 1, "refused"),
        ("writer", "mark.croup", 1, "applied"),
        ("judge", "mark.croup", 1, "applied"),
        ("secretary", "mark.croup", 1, "refused"),
        ("writer", "signature", {"covers": []}, "refused"),
        ("steward", "signature", {"covers": []}, "refused"),
        ("judge", "signature", {"covers": []}, "applied"),
    ],
)
def test_each_role_writes_only_what_it_may_on_a_sheet(at, role, field, value, state):
    assert [a.state for a in take(at, edit(sheet_of(at), field, value), role=role)] == [state]


@pytest.mark.parametrize(("role", "state"), [("steward", "applied"), ("writer", "applied"), ("judge", "applied")])
def test_presence_is_marked_by_whoever_stands_at_the_ring(at, role, state):
    presence = edit(f"class:{at.show_class.pk}", f"presence.{at.entries[0].pk}", "absent")
    assert [a.state for a in take(at, presence, role=role)] == [state]


def test_a_steward_cannot_place(at):
    [answer] = take(at, edit(f"class:{at.show_class.pk}", "places", [str(at.entries[0].pk)]), role="steward")
    assert answer.state == "refused"


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("mark.croup", 4), ("mark.croup", True), ("mark.croup", "2"), ("mark.bite", 1), ("choice.bite", "sideways"),
        ("set.teeth", [111]),
        ("remark", "zero \x00 sign"), ("number.height", 900), ("mark.__proto__", 1), ("nonsense", 1),
    ],
)  # fmt: skip
def test_a_value_that_the_standard_does_not_know_is_refused_with_a_sentence(at, field, value):
    [answer] = take(at, edit(sheet_of(at), field, value))
    assert answer.state == "refused"
    assert answer.reason.endswith(".")


@pytest.mark.parametrize(
    ("field", "value"),
    [("grade.{}", "brilliant"), ("grade.999999", "excellent"), ("places", ["999999"]), ("shortlist", ["x y"])],
)
def test_a_class_card_refuses_unknown_grades_and_dogs(at, field, value):
    [answer] = take(at, edit(f"class:{at.show_class.pk}", field.format(at.entries[0].pk), value))
    assert answer.state == "refused"


def test_a_sheet_of_another_ring_is_held_not_dropped(at):
    [answer] = take(at, edit(f"entry:{at.other_entry.pk}", "mark.croup", 1))
    assert (answer.state, answer.reason) == ("held", "This dog or class is judged in another ring.")
    assert Edit.objects.get().state == "held"


def test_a_withdrawn_dogs_edit_is_held(at):
    at.entries[0].state = "withdrawn"
    at.entries[0].save()
    assert [a.state for a in take(at, edit(sheet_of(at), "mark.croup", 1))] == ["held"]


def test_an_edit_of_a_newer_format_is_held(at):
    assert [a.state for a in take(at, edit(sheet_of(at), "mark.croup", 1, v=2))] == ["held"]


def test_what_comes_after_the_signature_is_held(at):
    take(at, edit(sheet_of(at), "mark.croup", 1))
    take(at, edit(sheet_of(at), "signature", {"covers": ["e1"]}, number=2))
    [answer] = take(at, edit(sheet_of(at), "mark.topline", 2, number=3))
    assert answer.state == "held"
    sheet = Sheet.objects.get()
    assert (sheet.signed, sheet.held) == ({"mark.croup": 1}, ["e3"])


def test_the_ring_numbers_its_edits_without_gaps(at):
    for number in range(1, 6):
        take(at, edit(sheet_of(at), "mark.croup", 1, number=number, replaces=(f"e{number - 1}",) if number > 1 else ()))
    assert list(Edit.objects.order_by("sequence").values_list("sequence", flat=True)) == [1, 2, 3, 4, 5]


def test_two_clubs_rings_do_not_share_numbers(at):
    take(at, edit(sheet_of(at), "mark.croup", 1))
    other = edit(f"entry:{at.other_entry.pk}", "mark.croup", 1, number=9)
    actions.take_edits(
        worker=Worker(at.other_ring, frozenset({"judge"}), at.accounts["other-judge"]), raw_edits=[other]
    )
    assert sorted(Edit.objects.values_list("ring__name", "sequence")) == [("1", 1), ("2", 1)]


class AnyOrder(TestCase):
    """Whatever batches the edits come in, and however often, the rows say what the core's merge says."""

    @given(
        st.lists(st.tuples(st.sampled_from(["mark.croup", "mark.topline"]), st.integers(-3, 3)), max_size=6),
        st.randoms(use_true_random=False),
    )
    def test_any_order_and_repetition_gives_the_same_sheet(self, said, random):
        at = small_show()
        key = sheet_of(at)
        edits = [
            edit(
                key, field, value, number=n, replaces=tuple(f"e{m}" for m in range(n) if said[m][0] == field and m % 2)
            )
            for n, (field, value) in enumerate(said)
        ]
        sent = [*edits, *random.sample(edits, len(edits) // 2)]
        random.shuffle(sent)
        while sent:
            size = random.randint(1, 3)
            take(at, *sent[:size])
            sent = sent[size:]
        merged = merge(actions.edits_of(key))
        marks = {f"mark.{m.point}": m.mark for m in Mark.objects.filter(sheet__key=key)}
        assert marks == {f: v for f, v in settled(merged).items() if v is not None}
        assert covers_for(actions.edits_of(key)) == tuple(sorted(e.id for live in merged.fields.values() for e in live))


def test_the_tablet_gets_words_for_everything_the_advice_can_say():
    source = Path(class_findings.__file__).read_text(encoding="utf-8")
    said = set(re.findall(r'(?:refuses|warns|notes)\("([a-z-]+)"', source))
    assert said == set(CODES)
    assert said <= set(SENTENCES)
