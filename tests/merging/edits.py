"""Edits for tests: written short, and drawn by hypothesis."""

from collections.abc import Sequence
from typing import Any

from hypothesis import strategies as st

from scoring.sheet import Edit

UNSAID = {"v": 1, "sheet": "entry:1", "replaces": [], "made_at": "2026-06-13T09:30:00Z", "device": "tablet-1"}


def raw(**said: Any) -> dict[str, Any]:
    """An edit as JSON, with what is not said filled in."""
    return {**UNSAID, "id": "a", "field": "mark.croup", "value": 1, **said}


def edit(edit_id: str, field: str, value: Any, replaces: Sequence[str] = ()) -> Edit:
    return Edit(1, edit_id, "entry:1", field, value, tuple(replaces), "2026-06-13T09:30:00Z", "tablet-1")


# Few ids, so that edits often name each other; the last two never arrive.
IDS = [*"abcdefgh"]
NAMES = [*IDS, "x", "y"]
FIELDS = ["mark.croup", "set.missing", "signature"]

names = st.lists(st.sampled_from(NAMES), max_size=4)
covers = st.lists(st.sampled_from(NAMES), max_size=5)
plain_values = st.one_of(st.none(), st.booleans(), st.integers(-1, 1), st.sampled_from([1.0, "1"]))
set_values = st.lists(plain_values, max_size=3)
signatures = st.one_of(
    st.none(),
    covers,
    st.builds(lambda covered, aside: {"covers": covered, "aside": aside}, st.none() | covers, covers),
    st.sampled_from(["signed", True, {}, {"covers": "a"}, {"covers": ["a"], "aside": None}]),
)
values = {"mark.croup": plain_values, "set.missing": set_values, "signature": signatures}


@st.composite
def edit_sets(draw: st.DrawFn) -> list[Edit]:
    """Edits of one sheet, each id once; they replace each other in cycles and across fields, and name unknown ids."""
    chosen = draw(st.lists(st.sampled_from(IDS), unique=True, max_size=len(IDS)))
    return [_drawn(draw, edit_id) for edit_id in chosen]


def _drawn(draw: st.DrawFn, edit_id: str) -> Edit:
    field = draw(st.sampled_from(FIELDS))
    return edit(edit_id, field, draw(values[field]), draw(names))


# Whole numbers that a browser knows exactly, and every finite float.
numbers = st.integers(-(2**53) + 1, 2**53 - 1) | st.floats(allow_nan=False, allow_infinity=False)
texts = st.text(st.characters(exclude_categories=["Cs"]), max_size=8)
json_values = st.recursive(
    st.none() | st.booleans() | numbers | texts,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(texts, inner, max_size=4),
    max_leaves=12,
)
