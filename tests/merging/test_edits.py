"""What an edit must look like to be taken in."""

from typing import Any

import pytest

from scoring.bad_input import BadInput
from scoring.sheet import Edit, field_kind, parse_edit
from scoring.sheet_fields import check_edit, split_sheet, subject_of
from tests.merging.edits import raw

NESTED: Any = None
for _ in range(120):
    NESTED = [NESTED]


def refusal(said: Any, at: str = "") -> tuple[str, str]:
    with pytest.raises(BadInput) as refused:
        check_edit(parse_edit(said, at), at)
    return refused.value.code, refused.value.at


def test_an_edit_is_read_as_it_was_written() -> None:
    said = raw(replaces=["b", "c"], value=-3)
    expected = Edit(1, "a", "entry:1", "mark.croup", -3, ("b", "c"), "2026-06-13T09:30:00Z", "tablet-1")
    assert (parse_edit(said), parse_edit(said).as_json()) == (expected, said)


def test_what_the_server_stamps_is_not_read_from_an_edit() -> None:
    assert parse_edit(raw(seq=9, by="another judge")) == parse_edit(raw())


@pytest.mark.parametrize("member", ["v", "id", "sheet", "field", "value", "replaces", "made_at", "device"])
def test_every_member_of_an_edit_must_be_there(member: str) -> None:
    said = raw()
    del said[member]
    assert refusal(said, "edits[3]") == ("missing-key", f"edits[3].{member}")


@pytest.mark.parametrize(
    ("said", "code", "at"),
    [
        ({"v": "1"}, "wrong-type", "v"),
        ({"v": 0}, "out-of-range", "v"),
        ({"id": ""}, "out-of-range", "id"),
        ({"id": "a" * 65}, "out-of-range", "id"),
        ({"id": "a b"}, "out-of-range", "id"),
        ({"id": "ä"}, "out-of-range", "id"),
        ({"id": 7}, "wrong-type", "id"),
        ({"device": "a/b"}, "out-of-range", "device"),
        ({"replaces": "b"}, "wrong-type", "replaces"),
        ({"replaces": ["b", 7]}, "wrong-type", "replaces[1]"),
        ({"replaces": ["b", "c d"]}, "out-of-range", "replaces[1]"),
        ({"replaces": ["b"] * 1001}, "too-large", "replaces"),
        ({"field": "mark." + "a" * 96}, "too-large", "field"),
        ({"field": "remark", "value": "a" * 19_999}, "too-large", "value"),
        ({"field": "number.height", "value": 2**53}, "out-of-range", "value"),
        ({"value": float("inf")}, "out-of-range", ""),
        ({"value": NESTED}, "too-large", ""),
        ({"field": "remark", "value": "\ud83d"}, "wrong-type", ""),
        ({"made_at": "yesterday"}, "bad-date", "made_at"),
        ({"made_at": "2026-06-13T09:30:00"}, "bad-date", "made_at"),
        ({"made_at": "2026-06-13"}, "bad-date", "made_at"),
    ],
)
def test_an_edit_outside_the_limits_is_refused_at_its_place(said: dict[str, Any], code: str, at: str) -> None:
    assert refusal(raw(**said)) == (code, at)


@pytest.mark.parametrize("said", [None, 7, "edit", []])
def test_what_is_no_object_is_no_edit(said: Any) -> None:
    assert refusal(said, "edits[0]") == ("wrong-type", "edits[0]")


@pytest.mark.parametrize(
    ("sheet", "field", "value"),
    [
        ("entry:17", "mark.croup", -3),
        ("entry:17", "mark.croup", None),
        ("entry:17", "praise.head", True),
        ("entry:17", "choice.bite", "scissors"),
        ("entry:17", "set.missing-teeth", [105, 205]),
        ("entry:17", "set.moving", [{"way": "crossing", "side": "front", "degree": 2}, "paddling"]),
        ("entry:17", "number.height", 61.5),
        ("entry:17", "yes.testicles", False),
        ("entry:17", "remark", "Shown in good coat."),
        ("entry:17", "text.de", "Ein Rüde von gutem Adel."),
        ("entry:17", "signature", ["a", "b"]),
        ("entry:17", "signature", {"covers": ["a"], "aside": ["b"]}),
        ("entry:17", "signature", {"covers": None, "aside": ["b"]}),
        ("class:4", "presence.17", "absent"),
        ("class:4", "grade.17", "very-good"),
        ("class:4", "reason.17", "Lame."),
        ("class:4", "shortlist", ["17", "18"]),
        ("class:4", "places", ["18", "17"]),
        ("class:4", "places", []),
        ("breed:2", "award.best-of-breed", "17"),
        ("breed:2", "award.best-of-breed", False),
    ],
)
def test_a_field_takes_the_values_it_is_for(sheet: str, field: str, value: Any) -> None:
    check_edit(parse_edit(raw(sheet=sheet, field=field, value=value)))


@pytest.mark.parametrize(
    ("sheet", "field", "value", "code", "at"),
    [
        ("dog:17", "mark.croup", 1, "unknown-code", "sheet"),
        ("entry", "mark.croup", 1, "out-of-range", "sheet"),
        ("entry:1:2", "mark.croup", 1, "out-of-range", "sheet"),
        ("entry:17", "places", [], "unknown-code", "field"),
        ("class:4", "mark.croup", 1, "unknown-code", "field"),
        ("breed:2", "grade.17", "good", "unknown-code", "field"),
        ("entry:17", "mark", 1, "unknown-code", "field"),
        ("entry:17", "mark.", 1, "unknown-code", "field"),
        ("entry:17", "mark.Croup", 1, "unknown-code", "field"),
        ("entry:17", "text.english", "x", "unknown-code", "field"),
        ("class:4", "grade.a b", "good", "out-of-range", "field"),
        ("entry:17", "mark.croup", 4, "out-of-range", "value"),
        ("entry:17", "mark.croup", True, "out-of-range", "value"),
        ("entry:17", "mark.croup", 0.5, "out-of-range", "value"),
        ("entry:17", "choice.bite", "Scissors!", "unknown-code", "value"),
        ("entry:17", "set.missing-teeth", 105, "wrong-type", "value"),
        ("entry:17", "set.missing-teeth", [105, 2.5], "wrong-type", "value[1]"),
        ("entry:17", "set.moving", [{"way": None}], "wrong-type", "value[0].way"),
        ("entry:17", "number.height", "61", "wrong-type", "value"),
        ("entry:17", "number.height", -1, "out-of-range", "value"),
        ("entry:17", "yes.testicles", 1, "wrong-type", "value"),
        ("entry:17", "remark", 1, "wrong-type", "value"),
        ("entry:17", "signature", "me", "wrong-type", "value"),
        ("entry:17", "signature", {"aside": []}, "missing-key", "value.covers"),
        ("entry:17", "signature", {"covers": [1]}, "wrong-type", "value.covers[0]"),
        ("class:4", "presence.17", "late", "unknown-code", "value"),
        ("class:4", "shortlist", ["17", "17"], "out-of-range", "value"),
        ("class:4", "places", [17], "wrong-type", "value[0]"),
        ("breed:2", "award.best-of-breed", True, "wrong-type", "value"),
    ],
)
def test_a_field_refuses_what_it_is_not_for(sheet: str, field: str, value: Any, code: str, at: str) -> None:
    assert refusal(raw(sheet=sheet, field=field, value=value)) == (code, at)


@pytest.mark.parametrize(
    ("field", "kind"),
    [("mark.croup", "mark"), ("places", "places"), ("places.1", "other"), ("mark", "other"), ("", "other")],
)
def test_a_field_says_its_kind(field: str, kind: str) -> None:
    assert field_kind(field) == kind


def test_sheets_and_fields_say_what_they_are_about() -> None:
    assert (split_sheet("class:4"), subject_of("grade.17"), subject_of("places")) == (("class", "4"), "17", "")
