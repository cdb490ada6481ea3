"""The shared cases, reasoned by hand from the rules of merging, by Python."""

import json
from pathlib import Path
from typing import Any

import pytest

from scoring import merging
from scoring.bad_input import BadInput
from scoring.sheet import read_edit
from tests.merging import reference
from tests.merging.edits import raw

CASES = json.loads((Path(__file__).parent / "cases.json").read_text(encoding="utf-8"))["cases"]
LISTS = ("disputed", "incomplete", "held", "aside", "signed_by", "pending")
MERGING = [pytest.param(case, id=case["name"]) for case in CASES if "merged" in case]
REFUSED = [pytest.param(case, id=case["name"]) for case in CASES if "refused" in case]


def expected(case: dict[str, Any]) -> dict[str, Any]:
    return {**{name: [] for name in LISTS}, **case["merged"]}


def by_ids(merged: merging.Merged) -> dict[str, Any]:
    fields = {field: [edit.id for edit in live] for field, live in merged.fields.items()}
    return {"fields": fields, **{name: list(getattr(merged, name)) for name in LISTS}}


@pytest.mark.parametrize("case", MERGING)
def test_a_case_merges_as_reasoned(case: dict[str, Any]) -> None:
    edits = [read_edit(raw(**said)) for said in case["edits"]]
    assert by_ids(merging.merge(edits, case.get("left_out", ()))) == expected(case)


@pytest.mark.parametrize("case", REFUSED)
def test_a_case_is_refused_as_reasoned(case: dict[str, Any]) -> None:
    edits = [read_edit(raw(**said)) for said in case["edits"]]
    with pytest.raises(BadInput) as refusal:
        merging.merge(edits)
    assert refusal.value.code == case["refused"]


def in_reach_of_the_reference(case: dict[str, Any]) -> bool:
    drawn = {"mark.croup", "mark.bite", "mark.hock", "set.missing", "signature"}
    return all(said["field"] in drawn and said.get("v", 1) == 1 for said in case["edits"])


@pytest.mark.parametrize("case", [param for param in MERGING if in_reach_of_the_reference(param.values[0])])
def test_the_slow_reference_agrees_with_the_cases(case: dict[str, Any]) -> None:
    edits = {said["id"]: read_edit(raw(**said)) for said in case["edits"]}
    assert reference.merged(list(edits.values()), case.get("left_out", ())) == expected(case)
