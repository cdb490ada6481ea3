"""The shared cases again, and drawn ones, by the tablet's script in Chromium."""

import hashlib
import json
from collections.abc import Collection
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from playwright.sync_api import Page

from scoring.canonical import text
from scoring.merging import covers_for, merge, replaces_for, settled
from scoring.sheet import Edit, digest, field_kind, read_edit, value_key
from tests.merging.edits import IDS, NAMES, edit, edit_sets, json_values, raw
from tests.merging.test_cases import CASES, by_ids, expected

pytestmark = pytest.mark.browser


def as_json(edits: list[Edit], left_out: Collection[str] = ()) -> list[dict[str, Any]]:
    """As the server tells a tablet: what is left out comes with its state, also where it came first."""
    known = [edit.as_json() for edit in edits]
    more = [raw(id=name) for name in {*left_out} - {edit.id for edit in edits}]
    return [{**said, "state": "held" if said["id"] in left_out else "taken"} for said in [*known, *more]]


def test_every_case_merges_as_reasoned(tablet: Page) -> None:
    read = [([read_edit(raw(**said)) for said in case["edits"]], case.get("left_out", ())) for case in CASES]
    given_edits = [as_json(*case) for case in read]
    answers = tablet.evaluate("(all) => all.map((edits) => JSON.stringify(tablet.merged(edits)))", given_edits)
    found = {case["name"]: json.loads(answer) for case, answer in zip(CASES, answers, strict=True)}
    assert found == {c["name"]: {"refused": c["refused"]} if "refused" in c else expected(c) for c in CASES}


def test_the_tablet_merges_whatever_is_drawn_as_the_server_does(tablet: Page) -> None:
    @given(edit_sets(), st.just([]) | st.lists(st.sampled_from(NAMES)))
    def agree(edits: list[Edit], left_out: list[str]) -> None:
        told, merged = as_json(edits, left_out), merge(edits, left_out)
        assert tablet.evaluate("(edits) => tablet.merged(edits)", told) == by_ids(merged)
        assert tablet.evaluate("(e) => Object.fromEntries(tablet.settled(tablet.merge(e)))", told) == settled(merged)

    agree()


def test_the_tablet_names_what_a_new_edit_replaces_and_covers_as_the_server_does(tablet: Page) -> None:
    script = "([e, unsent]) => [tablet.replacesFor(e, 'mark.croup', new Set(unsent)), tablet.coversFor(e)]"

    @given(edit_sets(), st.lists(st.sampled_from(IDS)), st.just([]) | st.lists(st.sampled_from(NAMES)))
    def agree(edits: list[Edit], unsent: list[str], left_out: list[str]) -> None:
        counted = [edit for edit in edits if edit.id not in left_out]
        named = tablet.evaluate(script, [as_json(edits, left_out), unsent])
        assert named == [list(replaces_for(counted, "mark.croup", unsent)), list(covers_for(counted))]

    agree()


@pytest.mark.parametrize("secure", [True, False])
def test_the_tablet_digests_an_edit_as_the_server_does(tablet: Page, secure: bool) -> None:
    if not secure:
        tablet.evaluate("() => Object.defineProperty(crypto, 'subtle', { value: undefined })")

    @given(json_values)
    def agree(value: Any) -> None:
        written = edit("a", "note", value, ["b"])
        assert tablet.evaluate("(e) => tablet.digest(JSON.parse(e))", json.dumps(written.as_json())) == digest(written)

    agree()


def test_the_tablet_writes_numbers_as_the_server_does(tablet: Page) -> None:
    @given(st.lists(st.floats(allow_nan=False, allow_infinity=False), max_size=50))
    def agree(numbers: list[float]) -> None:
        assert tablet.evaluate("(text) => JSON.stringify(JSON.parse(text))", json.dumps(numbers)) == text(numbers)

    agree()


def test_the_tablets_own_sha_256_agrees_with_the_library_at_every_length(tablet: Page) -> None:
    contents = [bytes(range(length)) for length in range(200)]
    script = "(all) => all.map((bytes) => tablet.sha256(Uint8Array.from(bytes)))"
    expected_digests = [hashlib.sha256(content).hexdigest() for content in contents]
    assert tablet.evaluate(script, [list(content) for content in contents]) == expected_digests


def test_a_fresh_id_is_one_that_the_server_takes(tablet: Page) -> None:
    ids = tablet.evaluate("() => Array.from({ length: 500 }, tablet.newId)")
    assert len({*ids}) == 500
    assert all(len(name) == 22 and name.replace("-", "").replace("_", "").isalnum() for name in ids)


def test_the_tablet_knows_the_same_kinds_and_the_same_equal_values(tablet: Page) -> None:
    script = """async ([field, one, other]) => {
        const { fieldKind, valueKey } = await import("/static/ring/fields.js");
        return [fieldKind(field), valueKey(field, one) === valueKey(field, other)];
    }"""
    fields = st.sampled_from(
        ["places", "set.teeth", "set.", "shortlist", "signature", "mark", "mark.a.b", "", "text.de"]
    )
    few = st.lists(st.sampled_from([0, 1, True, False, None, "1", [1], [True], {"a": [0, 1]}]), max_size=3)

    @given(fields, few | few.map(lambda ids: {"covers": ids}), few)
    def agree(field: str, one: Any, other: Any) -> None:
        same = value_key(field, one) == value_key(field, other)
        assert tablet.evaluate(script, [field, one, other]) == [field_kind(field), same]

    agree()
