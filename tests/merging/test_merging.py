"""Merging against a slow reference, and what must hold whatever the edits are."""

from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from scoring.merging import covers_for, merge, replaces_for, settled
from scoring.sheet import Edit
from tests.merging import reference
from tests.merging.edits import NAMES, edit, edit_sets
from tests.merging.test_cases import by_ids


@given(edit_sets())
def test_merging_agrees_with_the_slow_reference(edits: list[Edit]) -> None:
    assert by_ids(merge(edits)) == reference.merged(edits)


@given(edit_sets(), st.lists(st.sampled_from(NAMES)))
def test_leaving_edits_out_agrees_with_the_slow_reference(edits: list[Edit], left_out: list[str]) -> None:
    assert by_ids(merge(edits, left_out)) == reference.merged(edits, left_out)


@given(edit_sets(), st.data())
def test_any_order_and_any_repetition_give_the_same_sheet(edits: list[Edit], data: st.DataObject) -> None:
    again = data.draw(st.lists(st.sampled_from(edits), max_size=6)) if edits else []
    assert merge(data.draw(st.permutations(edits + again))) == merge(edits)


@given(edit_sets())
def test_every_edit_is_live_replaced_held_or_set_aside(edits: list[Edit]) -> None:
    merged = merge(edits)
    live = {edit.id for of_field in merged.fields.values() for edit in of_field}
    named = {name for edit in edits for name in edit.replaces}
    assert {edit.id for edit in edits} <= live | named | {*merged.held, *merged.aside}


@given(edit_sets())
def test_a_field_of_known_edits_is_never_left_empty(edits: list[Edit]) -> None:
    unsigned = [edit for edit in edits if edit.field != "signature"]
    assert merge(unsigned).fields.keys() == {edit.field for edit in unsigned}


@given(edit_sets())
def test_an_edit_that_names_all_it_has_seen_settles_its_field(edits: list[Edit]) -> None:
    unsigned = [edit for edit in edits if edit.field != "signature"]
    seen = replaces_for(unsigned, "mark.croup")
    after = merge([*unsigned, edit("new", "mark.croup", 3, seen)])
    assert [edit.id for edit in after.fields["mark.croup"]] == ["new"]


@given(edit_sets())
def test_a_new_signature_leaves_nothing_held(edits: list[Edit]) -> None:
    whole = [edit for edit in edits if not edit.replaces or {*edit.replaces} <= {other.id for other in edits}]
    signature = edit("new", "signature", {"covers": list(covers_for(whole, ())), "aside": []})
    ordinary = [edit for edit in whole if edit.field != "signature"]
    assert merge([*ordinary, signature]).held == ()


@given(edit_sets())
def test_signing_changes_no_value(edits: list[Edit]) -> None:
    ordinary = [edit for edit in edits if edit.field != "signature"]
    before, signature = merge(ordinary), edit("new", "signature", list(covers_for(ordinary)))
    signed = merge([*ordinary, signature])
    assert {**before.fields, "signature": (signature,)} == signed.fields


def test_a_settled_sheet_leaves_out_what_is_disputed_or_waits() -> None:
    edits = [edit("a", "mark.croup", 1), edit("b", "mark.croup", 2), edit("c", "mark.bite", 0, ["x"])]
    assert settled(merge([*edits, edit("d", "remark", None)])) == {"remark": None}


def test_a_new_edit_names_what_its_own_unsent_chain_replaced() -> None:
    edits = [edit("a", "remark", "1"), edit("b", "remark", "2", ["a"]), edit("c", "remark", "3", ["b"])]
    assert replaces_for(edits, "remark", {"b", "c"}) == ("a", "b", "c")


def test_a_new_edit_names_no_more_than_the_live_edit_once_the_chain_is_sent() -> None:
    edits = [edit("a", "remark", "1"), edit("b", "remark", "2", ["a"]), edit("c", "remark", "3", ["b"])]
    assert replaces_for(edits, "remark") == ("c",)


def test_a_new_edit_names_a_held_one_that_its_device_has_seen() -> None:
    edits = [edit("a", "remark", "1"), edit("s", "signature", ["a"]), edit("b", "remark", "2", ["a"])]
    assert replaces_for(edits, "remark") == ("b",)


def test_a_new_signature_leaves_out_what_is_set_aside_now() -> None:
    edits = [edit("a", "remark", "1"), edit("b", "remark", "2", ["a"])]
    aside = edit("s", "signature", {"covers": ["a"], "aside": ["b"]})
    assert (covers_for([*edits, aside]), covers_for([*edits, aside], ())) == (("a",), ("b",))


def test_ten_thousand_edits_in_a_row_merge() -> None:
    chain: list[Any] = [edit("0", "remark", "0")]
    chain += [edit(str(n), "remark", str(n), [str(n - 1)]) for n in range(1, 10_000)]
    assert [edit.id for edit in merge(chain).fields["remark"]] == ["9999"]
