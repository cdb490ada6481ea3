"""The door `standards` has the members it is known for."""

import json

from scoring.__main__ import answer
from scoring.standards.loader import codes
from scoring.standards.teeth import DOG_TEETH

MEMBERS = {"code", "kind", "weight", "low", "high", "options"}


def test_every_standard_is_listed_with_its_points():
    listed = answer("standards", "{}")["standards"]
    assert [one["code"] for one in listed] == list(codes())
    for one in listed:
        assert set(one) == {"code", "name", "number", "points"}
        assert {frozenset(point) for point in one["points"]} == {frozenset(MEMBERS)}


def test_each_kind_of_point_tells_what_it_has():
    boxer = next(one for one in answer("standards", "{}")["standards"] if one["code"] == "boxer")
    points = {point["code"]: point for point in boxer["points"]}
    assert points["croup"] == {
        "code": "croup", "kind": "two-sided", "weight": 3.0, "low": "flat", "high": "steep", "options": None,
    }  # fmt: skip
    assert points["bite"]["options"] == ["scissor", "pincer", "undershot", "overshot", "wry"]
    assert points["teeth"]["options"] == list(DOG_TEETH)
    assert points["height"]["options"] is None
    assert points["testicles"]["kind"] == "yes-no"


def test_the_answer_is_json():
    assert json.loads(json.dumps(answer("standards", "{}"))) == answer("standards", "{}")
