"""The door `measure`: what it refuses, and that no geometry makes it."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scoring.__main__ import answer
from scoring.bad_input import BadInput
from scoring.measuring.landmarks import LANDMARKS, VIEWS
from tests.measuring.dogs import pictured

GOOD = pictured("standing-side").door_input()
numbers = st.one_of(
    st.floats(allow_nan=False, allow_infinity=False), st.integers(-3, 3), st.sampled_from([1e308, -1e308, 5e-324, 0.0])
)
places = st.lists(numbers, min_size=2, max_size=2)


def asked(**changes: object) -> dict:
    """What the door answers, through JSON that allows no infinity and no NaN."""
    found = answer("measure", json.dumps({**GOOD, **changes}))
    return json.loads(json.dumps(found, allow_nan=False))


@pytest.mark.parametrize(
    ("changes", "code", "at"),
    [
        ({"view": "above"}, "unknown-code", "view"),
        ({"view": 3}, "wrong-type", "view"),
        ({"landmarks": []}, "wrong-type", "landmarks"),
        ({"landmarks": {"knee": [1, 2]}}, "unknown-code", "landmarks.knee"),
        ({"landmarks": {"hock": [1]}}, "wrong-type", "landmarks.hock"),
        ({"landmarks": {"hock": [1, "2"]}}, "wrong-type", "landmarks.hock[1]"),
        ({"landmarks": {"hock": None}}, "wrong-type", "landmarks.hock"),
        ({"click_sd_px": True}, "wrong-type", "click_sd_px"),
        ({"click_sd_px": -1}, "out-of-range", "click_sd_px"),
        ({"ground": [[1, 2]]}, "wrong-type", "ground"),
        ({"ground": [[1, 2], 3]}, "wrong-type", "ground[1]"),
        ({"image": "large"}, "wrong-type", "image"),
        ({"withers_height_cm": "60"}, "wrong-type", "withers_height_cm"),
        ({"withers_height_sd_cm": []}, "wrong-type", "withers_height_sd_cm"),
        ({"standard": "no-such-breed"}, "unknown-code", "standard"),
        ({"standard": 144}, "wrong-type", "standard"),
    ],
)
def test_an_input_that_cannot_be_used_is_refused_at_its_place(changes, code, at):
    with pytest.raises(BadInput) as refused:
        asked(**changes)
    assert (refused.value.code, refused.value.at) == (code, at)


@pytest.mark.parametrize("key", ["view", "landmarks", "click_sd_px"])
def test_a_missing_key_is_refused(key):
    with pytest.raises(BadInput) as refused:
        answer("measure", json.dumps({name: value for name, value in GOOD.items() if name != key}))
    assert (refused.value.code, refused.value.at) == ("missing-key", key)


def test_nulls_stand_for_optional_keys_that_are_not_there():
    empty = {"ground": None, "image": None, "withers_height_cm": None, "withers_height_sd_cm": None, "standard": None}
    assert asked(**empty) == asked(ground=None)


def test_no_landmarks_at_all_withhold_every_value():
    assert {row["value"] for row in asked(landmarks={})["measurements"]} == {None}


@given(
    view=st.sampled_from(VIEWS),
    landmarks=st.dictionaries(st.sampled_from(sorted(LANDMARKS)), places),
    click_sd=st.floats(0, 1e308),
    ground=st.none() | st.lists(places, min_size=2, max_size=2),
    image=st.none() | places,
    height=st.none() | st.floats(0, 1e308),
)
def test_no_geometry_is_refused_and_every_answer_is_json(view, landmarks, click_sd, ground, image, height):
    found = asked(
        view=view, landmarks=landmarks, click_sd_px=click_sd, ground=ground, image=image, withers_height_cm=height
    )
    for row in found["measurements"]:
        assert set(row) == {"code", "value", "sd", "unit", "target", "reading"}
        assert (row["value"] is None) == (row["sd"] is None) == (row["reading"] == "withheld")
    withheld = [row["code"] for row in found["measurements"] if row["value"] is None]
    assert withheld == [one["facts"]["measurement"] for one in found["findings"] if one["severity"] == "refuses"]


@given(st.lists(st.sampled_from(sorted(LANDMARKS)), unique=True), st.sampled_from(VIEWS))
def test_landmarks_that_all_coincide_are_never_refused(names, view):
    found = asked(view=view, landmarks={name: [10, 10] for name in names})
    assert {row["value"] for row in found["measurements"]} == {None}
