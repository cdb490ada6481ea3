"""Classes of invented dogs, as the door `place` takes them, and strategies that make many."""

from typing import Any

from hypothesis import strategies as st

from scoring.placing.doors import place
from scoring.standards.loader import load

STANDARDS = ("boxer", "hovawart", "german-shepherd-dog", "dachshund")
ADULT_GRADES = ("excellent", "very-good", "good", "sufficient", "disqualified", "cannot-be-judged")
PRESENCES = ("present", "present", "present", "absent", "excused", "withdrawn")


def two_sided(standard: str) -> list[str]:
    return [point.code for point in load(standard).two_sided]


def marks_of(standard: str) -> st.SearchStrategy[dict[str, int]]:
    return st.dictionaries(st.sampled_from(two_sided(standard)), st.integers(-3, 3), max_size=8)


@st.composite
def classes(draw: st.DrawFn, placed: bool = True) -> dict[str, Any]:
    """A class of up to seven dogs, some of them alike so that ties come about."""
    standard = draw(st.sampled_from(STANDARDS))
    kinds = draw(st.lists(marks_of(standard), min_size=1, max_size=4))
    sheets = [
        {
            "entry": draw(st.sampled_from([number, f"no-{number}"])),
            "sex": draw(st.sampled_from(["dog", "bitch"])),
            "presence": draw(st.sampled_from(PRESENCES)),
            "grade": draw(st.sampled_from(ADULT_GRADES)),
            "reason": draw(st.sampled_from([None, "invented"])),
            "marks": draw(st.sampled_from(kinds)),
            "judge_place": draw(st.one_of(st.none(), st.integers(1, 6))) if placed else None,
        }
        for number in range(draw(st.integers(0, 7)))
    ]
    return {"rules": "fci", "standard": standard, "sheets": sheets}


def sheet(entry: Any, grade: str | None = None, judge_place: int | None = None, **more: Any) -> dict[str, Any]:
    return {"entry": entry, "grade": grade, "judge_place": judge_place, "marks": {}, **more}


def answered(*sheets: dict[str, Any], standard: str = "boxer", rules: str = "fci") -> dict[str, Any]:
    return place({"rules": rules, "standard": standard, "sheets": list(sheets)})


def found(answer: dict[str, Any], code: str) -> list[dict[str, Any]]:
    """The facts of every finding of that code."""
    return [finding["facts"] for finding in answer["findings"] if finding["code"] == code]
