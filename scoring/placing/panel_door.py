"""The door `panel`: the places several judges gave in, one order with its working out."""

from collections import Counter
from collections.abc import Mapping
from typing import Any

from scoring.bad_input import BadInput, a_list, an_int, an_object, join, one_of, value_of
from scoring.findings import Finding, warns
from scoring.placing.kemeny import kemeny
from scoring.placing.panel import Marks, borda, plain_number, shared_places, skating

METHODS = {"skating": skating, "borda": borda, "kemeny": kemeny}
MOST_ENTRIES = 100
MOST_JUDGES = 500
LOWEST_PLACE = 10_000


def panel(source: Mapping[str, Any]) -> dict[str, Any]:
    """One order from the places of several judges; the methods disagree, so `method` is printed on the result.

    See each method's function for its rule, source and limits. Besides `places`, `ties` and `working` it answers
    `method`, and `findings` with the warning `places-not-one-each` for a judge who did not give 1 to n once each.
    """
    method = one_of(value_of(source, "method"), METHODS, "method")
    marks = _read_marks(an_object(value_of(source, "marks"), "marks"))
    found = METHODS[method](marks)
    return {
        "method": method,
        "places": {entry: plain_number(place) for entry, place in shared_places(found.groups).items()},
        "ties": [sorted(group, key=list(marks).index) for group in found.groups if len(group) > 1],
        "working": list(found.working),
        "findings": [finding.as_json() for finding in _uneven(marks)],
    }


def _read_marks(source: Mapping[str, Any]) -> Marks:
    if len(source) > MOST_ENTRIES:
        raise BadInput("too-large", f"At most {MOST_ENTRIES} entries can be placed at once.", "marks")
    marks = {entry: _read_places(places, join("marks", entry)) for entry, places in source.items()}
    judges = {len(places) for places in marks.values()}
    if len(judges) > 1:
        fewest = min(marks, key=lambda entry: len(marks[entry]))
        raise BadInput("out-of-range", "Give every entry one place from each judge.", join("marks", fewest))
    return marks


def _read_places(value: Any, at: str) -> list[int]:
    places = [an_int(place, join(at, i), 1, LOWEST_PLACE) for i, place in enumerate(a_list(value, at, MOST_JUDGES))]
    if not places:
        raise BadInput("out-of-range", "Give the place from one judge or more.", at)
    return places


def _uneven(marks: Marks) -> list[Finding]:
    """Judges whose places are not 1 to n, each once."""
    return [
        warns(
            "places-not-one-each", judge=judge, repeated=sorted(place for place, n in Counter(column).items() if n > 1)
        )
        for judge, column in enumerate(zip(*marks.values(), strict=True), 1)
        if sorted(column) != list(range(1, len(marks) + 1))
    ]
