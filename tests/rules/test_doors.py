"""The doors answer every input with an answer or with BadInput, and never with anything else."""

import json
from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scoring.bad_input import BadInput
from scoring.rules.doors import classes, points, titles
from scoring.rules.loader import codes
from tests.rules.dogs import DAYS, door_dog

DOORS = {"classes": classes, "points": points, "titles": titles}
GOOD: dict[str, dict[str, Any]] = {
    "classes": {
        "rules": "fci",
        "shown_on": "2026-06-13",
        "first_day": "2026-06-13",
        "entries_close_on": "2026-05-01",
        "dog": door_dog(date(2024, 1, 1), titles=["national-champion"], certificates=["WCC"]),
    },
    "points": {
        "rules": "canada",
        "on": "2026-06-13",
        "breed": {"class_dogs": 3, "class_bitches": 7, "champion_dogs": 2, "champion_bitches": 1},
        "not_counted": {"class_dogs": 1},
        "results": [{"dog": "Amber", "sex": "dog", "wins": ["winners", "best-of-breed"]}],
        "group": {"Amber": {"place": 1, "breeds": 9}},
        "best_in_show": "Amber",
    },
    "titles": {
        "rules": "canada",
        "wins": [
            {
                "award": "winners",
                "date": "2026-06-13",
                "judge": "Judge A",
                "country": "Norland",
                "points": 3,
                "age_months": 20,
                "show": "morning",
            }
        ],
    },
}


def at(value: Any, path: tuple[str | int, ...]) -> Any:
    for step in path:
        value = value[step]
    return value


def changed(verb: str, path: tuple[str | int, ...], new: Any) -> dict[str, Any]:
    """A good input with one value changed."""
    copy: dict[str, Any] = json.loads(json.dumps(GOOD[verb]))
    at(copy, path[:-1])[path[-1]] = new
    return copy


def paths(value: Any, so_far: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    """The path to every value of a JSON value."""
    steps = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    return [path for step, inner in steps for path in [(*so_far, step), *paths(inner, (*so_far, step))]]


EVERYWHERE = [(verb, path) for verb, source in GOOD.items() for path in paths(source)]
OPTIONAL = {
    "first_day",
    "entries_close_on",
    "on",
    "not_counted",
    "group",
    "best_in_show",
    "points",
    "age_months",
    "show",
}


@pytest.mark.parametrize("verb", DOORS)
def test_a_good_input_is_answered_in_json(verb: str) -> None:
    assert json.loads(json.dumps(DOORS[verb](GOOD[verb]))) == DOORS[verb](GOOD[verb])


@pytest.mark.parametrize(("verb", "path"), EVERYWHERE)
def test_a_value_of_a_wrong_type_is_refused_with_its_place(verb: str, path: tuple[str | int, ...]) -> None:
    wrong = [17] if not isinstance(at(GOOD[verb], path), list) else 17
    with pytest.raises(BadInput) as refused:
        DOORS[verb](changed(verb, path, wrong))
    assert refused.value.code == "wrong-type"
    assert str(path[-1]) in refused.value.at


@pytest.mark.parametrize(("verb", "path"), EVERYWHERE)
def test_a_missing_key_is_refused_where_it_is_not_optional(verb: str, path: tuple[str | int, ...]) -> None:
    inside_counts = path[0] in ("breed", "not_counted") and len(path) == 2
    if isinstance(path[-1], int) or path[-1] in OPTIONAL or inside_counts or path == ("group", "Amber"):
        return
    copy = json.loads(json.dumps(GOOD[verb]))
    del at(copy, path[:-1])[path[-1]]
    with pytest.raises(BadInput) as refused:
        DOORS[verb](copy)
    assert refused.value.code == "missing-key"


@pytest.mark.parametrize(
    ("verb", "path", "new", "code"),
    [
        ("classes", ("rules",), "nowhere", "unknown-code"),
        ("classes", ("dog", "sex"), "female", "unknown-code"),
        ("classes", ("dog", "titles"), ["world-champion-of-all"], "unknown-code"),
        ("classes", ("dog", "certificates"), ["XYZ"], "unknown-code"),
        ("classes", ("dog", "born"), "2026-02-30", "bad-date"),
        ("classes", ("shown_on",), "2026-02-30", "bad-date"),
        ("classes", ("shown_on",), "13.06.2026", "bad-date"),
        ("classes", ("entries_close_on",), "2026-13-01", "bad-date"),
        ("classes", ("first_day",), "2026-06-14", "out-of-range"),
        ("classes", ("dog", "neutered"), 0, "wrong-type"),
        ("points", ("rules",), "fci", "unknown-code"),
        ("points", ("breed", "puppies"), 3, "unknown-code"),
        ("points", ("breed", "class_dogs"), -1, "out-of-range"),
        ("points", ("breed", "class_dogs"), 3.0, "wrong-type"),
        ("points", ("breed", "class_dogs"), True, "wrong-type"),
        ("points", ("not_counted", "class_dogs"), 4, "out-of-range"),
        ("points", ("not_counted", "dogs"), 1, "unknown-code"),
        ("points", ("results", 0, "wins"), ["best-in-moonlight"], "unknown-code"),
        ("points", ("group", "Basil"), {"place": 1, "breeds": 3}, "unknown-code"),
        ("points", ("group", "Amber"), {"place": 0, "breeds": 3}, "out-of-range"),
        ("points", ("group", "Amber"), {"place": 1, "breeds": 0}, "out-of-range"),
        ("points", ("best_in_show",), "Basil", "unknown-code"),
        ("points", ("results",), [{"dog": "Amber", "sex": "dog", "wins": []}] * 2, "id-reused"),
        ("titles", ("wins", 0, "award"), "cacib", "unknown-code"),
        ("titles", ("wins", 0, "date"), "2026-02-30", "bad-date"),
        ("titles", ("wins", 0, "judge"), "  ", "out-of-range"),
        ("titles", ("wins", 0, "points"), -1, "out-of-range"),
        ("titles", ("wins", 0, "age_months"), -1, "out-of-range"),
    ],
)
def test_a_value_that_cannot_be_is_refused_with_its_code(
    verb: str, path: tuple[str | int, ...], new: Any, code: str
) -> None:
    with pytest.raises(BadInput) as refused:
        DOORS[verb](changed(verb, path, new))
    assert refused.value.code == code
    assert refused.value.at


@pytest.mark.parametrize("rules", codes())
@given(born=DAYS, shown_on=DAYS, days_before=st.integers(0, 3))
def test_no_dates_of_the_calendar_are_too_much(rules: str, born: date, shown_on: date, days_before: int) -> None:
    first_day = date.fromordinal(max(1, shown_on.toordinal() - days_before))
    source = {
        "rules": rules,
        "shown_on": shown_on.isoformat(),
        "first_day": first_day.isoformat(),
        "dog": door_dog(born),
    }
    for row in classes(source)["classes"]:
        assert row["open"] == all(finding["severity"] != "refuses" for finding in row["findings"])


@pytest.mark.parametrize("rules", codes())
@pytest.mark.parametrize("born", ["0001-01-01", "9999-12-31", "9990-12-31"])
@pytest.mark.parametrize("shown_on", ["0001-01-01", "9999-12-31"])
def test_the_ends_of_the_calendar_are_answered(rules: str, born: str, shown_on: str) -> None:
    answer = classes({"rules": rules, "shown_on": shown_on, "dog": door_dog(date.fromisoformat(born))})
    assert json.dumps(answer)


@given(DAYS, DAYS)
def test_titles_are_answered_for_every_date(one: date, other: date) -> None:
    wins = [{"award": "cacib", "date": day.isoformat(), "judge": "A", "country": "B"} for day in (one, other)]
    assert json.dumps(titles({"rules": "fci", "wins": wins}))


LEAVES = st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=8) | st.sampled_from(codes())
ANYTHING = st.recursive(LEAVES, lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=6), inner))


@given(st.sampled_from(EVERYWHERE), ANYTHING)
def test_anything_in_the_place_of_a_value_is_answered_or_refused(
    where: tuple[str, tuple[str | int, ...]], new: Any
) -> None:
    verb, path = where
    try:
        answer = DOORS[verb](changed(verb, path, new))
    except BadInput as refused:
        answer = refused.as_json()
    assert json.dumps(answer, allow_nan=False)
