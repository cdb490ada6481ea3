"""What holds for any ratings, what degenerate ratings answer, and what cannot be used."""

import json
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scoring.__main__ import answer
from scoring.agreement.doors import STATISTICS, agreement
from scoring.bad_input import BadInput

SEVERAL = ["kendall-w", "icc-2-1", "icc-3-1", "krippendorff-alpha"]
REQUESTS = [
    {"statistic": "kappa"},
    *({"statistic": "weighted-kappa", "weights": weights} for weights in ("linear", "quadratic")),
    *({"statistic": statistic} for statistic in SEVERAL),
    *({"statistic": "krippendorff-alpha", "level": level} for level in ("ordinal", "interval")),
]
any_number = st.one_of(st.integers(-3, 3), st.floats(-1e9, 1e9), st.sampled_from([5e-324, -1e-300, 0.1, 1e9]))
two_judges = st.lists(st.lists(st.one_of(st.none(), any_number), min_size=2, max_size=2), max_size=9)


def is_usable(found):
    value, interval = found["value"], found["interval"]
    assert found["method"]
    if value is None:
        assert interval is None
        assert "No value" in found["method"]
        return True
    assert math.isfinite(value)
    if interval is None:
        assert "No interval" in found["method"]
        return True
    low, high = interval
    return low <= high and low - 1e-9 <= value <= high + 1e-9


@pytest.mark.parametrize("request_", REQUESTS)
@given(ratings=two_judges)
def test_any_ratings_of_two_judges_get_a_usable_answer(request_, ratings):
    assert is_usable(agreement({**request_, "ratings": ratings}))


@pytest.mark.parametrize("request_", REQUESTS)
@given(
    ratings=st.lists(st.lists(st.integers(-3, 3), min_size=2, max_size=2), min_size=3, max_size=9), order=st.randoms()
)
def test_the_order_of_the_dogs_changes_nothing(request_, ratings, order):
    shuffled = list(ratings)
    order.shuffle(shuffled)
    one, other = (agreement({**request_, "ratings": each}) for each in (ratings, shuffled))
    assert other["value"] == (None if one["value"] is None else pytest.approx(one["value"], abs=1e-12))
    assert other["interval"] == (None if one["interval"] is None else pytest.approx(one["interval"], abs=1e-9))


@pytest.mark.parametrize("request_", REQUESTS)
@given(ratings=st.lists(st.lists(st.integers(-3, 3), min_size=2, max_size=2), min_size=3, max_size=9))
def test_swapping_the_judges_changes_nothing(request_, ratings):
    one, other = (agreement({**request_, "ratings": each}) for each in (ratings, [row[::-1] for row in ratings]))
    assert other["value"] == (None if one["value"] is None else pytest.approx(one["value"], abs=1e-12))


@pytest.mark.parametrize("request_", REQUESTS)
@given(dogs=st.lists(st.integers(-3, 3), min_size=2, max_size=9).filter(lambda dogs: len(set(dogs)) > 1))
def test_judges_who_agree_on_every_dog_reach_one(request_, dogs):
    assert agreement({**request_, "ratings": [[each, each] for each in dogs]})["value"] == pytest.approx(1)


def test_more_dogs_than_a_hundred_are_left_out_in_groups():
    ratings = [[i % 7, (i + i % 3) % 7, i % 5] for i in range(250)]
    low, high = agreement({"statistic": "krippendorff-alpha", "level": "interval", "ratings": ratings})["interval"]
    assert low < high


@pytest.mark.parametrize("request_", REQUESTS)
@pytest.mark.parametrize(
    "ratings",
    [
        [],
        [[]],
        [[], []],
        [[1], [2], [3]],
        [[None, None], [None, None]],
        [[None, 1], [2, None]],
        [[2, 2], [2, 2], [2, 2]],
        [[0.1, 0.1], [0.1, 0.1], [0.1, 0.1]],
    ],
)
def test_ratings_that_hold_no_answer_say_why(request_, ratings):
    found = agreement({**request_, "ratings": ratings})
    assert (found["value"], found["interval"]) == (None, None)
    assert "No value" in found["method"]


def test_dogs_with_a_gap_are_left_out_and_counted():
    whole = [[9, 2, 5], [6, 1, 3], [8, 4, 6]]
    with_gap = agreement({"statistic": "icc-2-1", "ratings": [*whole, [7, None, 2]]})
    assert with_gap["value"] == agreement({"statistic": "icc-2-1", "ratings": whole})["value"]
    assert "left out for a gap: 1" in with_gap["method"]


def test_a_matrix_meets_ratings_that_skip_a_category_by_number():
    weights = [[0, 1, 4], [1, 0, 1], [4, 1, 0]]
    ratings = [[1, 1], [1, 3], [3, 3], [3, 1], [1, 1]]
    found = agreement({"statistic": "weighted-kappa", "weights": weights, "ratings": ratings})
    assert found["value"] == pytest.approx(agreement({"statistic": "kappa", "ratings": ratings})["value"])


@pytest.mark.parametrize(
    ("source", "code", "at"),
    [
        ({}, "missing-key", "statistic"),
        ({"statistic": "kappa"}, "missing-key", "ratings"),
        ({"statistic": "guess", "ratings": []}, "unknown-code", "statistic"),
        ({"statistic": 7, "ratings": []}, "wrong-type", "statistic"),
        ({"statistic": "krippendorff-alpha", "level": "ratio", "ratings": []}, "unknown-code", "level"),
        ({"statistic": "weighted-kappa", "weights": "cubic", "ratings": []}, "unknown-code", "weights"),
        ({"statistic": "weighted-kappa", "weights": 3, "ratings": []}, "wrong-type", "weights"),
        ({"statistic": "weighted-kappa", "weights": [[0, 1]], "ratings": []}, "out-of-range", "weights[0]"),
        ({"statistic": "weighted-kappa", "weights": [[1]], "ratings": [[1, 1]]}, "out-of-range", "weights[0][0]"),
        ({"statistic": "weighted-kappa", "weights": [[0]], "ratings": [[1, 7]]}, "out-of-range", "weights"),
        ({"statistic": "weighted-kappa", "ratings": [["good", "good"]]}, "wrong-type", "ratings[0][0]"),
        ({"statistic": "kappa", "ratings": [[1, 2, 3]]}, "out-of-range", "ratings"),
        ({"statistic": "kappa", "ratings": [[1, 2], [1]]}, "out-of-range", "ratings[1]"),
        ({"statistic": "kappa", "ratings": {"a": 1}}, "wrong-type", "ratings"),
        ({"statistic": "kappa", "ratings": [1, 2]}, "wrong-type", "ratings[0]"),
        ({"statistic": "icc-2-1", "ratings": [[1, True]]}, "wrong-type", "ratings[0][1]"),
        ({"statistic": "icc-2-1", "ratings": [[1, 1e300]]}, "out-of-range", "ratings[0][1]"),
        ({"statistic": "kendall-w", "ratings": [[1] * 60_000]}, "too-large", "ratings"),
    ],
)
def test_input_that_cannot_be_used_is_refused_at_its_place(source, code, at):
    with pytest.raises(BadInput) as refused:
        agreement(source)
    assert (refused.value.code, refused.value.at) == (code, at)


@pytest.mark.parametrize("statistic", STATISTICS)
def test_every_statistic_answers_through_the_command_line_door(statistic):
    found = answer("agreement", json.dumps({"statistic": statistic, "ratings": [[1, 2], [2, 2], [3, 1], [4, 4]]}))
    assert {"value", "interval", "method"} <= set(found)
    json.dumps(found, allow_nan=False)
