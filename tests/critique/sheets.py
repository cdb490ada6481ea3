"""Random sheets of every breed, as the door takes them, and how a text's words are counted."""

import re
from dataclasses import replace
from decimal import Decimal

from hypothesis import strategies as st

from scoring.standards.loader import codes, load, vocabulary
from scoring.standards.model import Option, Point
from scoring.standards.teeth import DOG_TEETH

LANGUAGES = ("en", "fr", "de", "es")
GRADES = ("excellent", "very-good", "good", "sufficient", "very-promising", "promising", "less-promising")
SIDES = st.sampled_from([None, "left", "right", "both"])
MARKS = st.sampled_from([0, 0, 0, -1, 1, -1, 1, -2, 2, -3, 3])


def every_point():
    """Every point of the vocabulary, each option a mere fault."""
    proof = {"source": "none", "verified": "memory"}
    for code, told in vocabulary().items():
        options = () if told.get("options") == "triadan" else told.get("options", ())
        yield Point(
            code=code,
            section=told["section"],
            kind=told["kind"],
            name=told["name"],
            asks="",
            weight=Decimal(told["weight"]) if "weight" in told else None,
            options=tuple(Option(option, "fault", **proof) for option in options),
            sex=told.get("sex"),
            **proof,
        )


EVERYTHING = replace(load("boxer"), code="every-point", points=tuple(every_point()))


@st.composite
def sheets(draw, least=0, most=20, praised=0, reason=None):
    """A sheet with `least` to `most` assessed points, at most `praised` of them praised."""
    standard = load(draw(st.sampled_from(codes())))
    sex = draw(st.sampled_from(["dog", "bitch"]))
    points = [point for point in standard.points if point.is_for(sex)]
    assessed = draw(st.lists(st.sampled_from(points), min_size=least, max_size=most, unique=True))
    sheet = {"standard": standard.code, "language": draw(st.sampled_from(LANGUAGES)), "sex": sex}
    sheet |= {"marks": {}, "choices": {}, "numbers": {}, "yes": {}, "sets": {}, "praise": []}
    for point in assessed:
        _assess(draw, sheet, point)
    if praised and assessed:
        chosen = draw(st.lists(st.sampled_from(assessed), max_size=praised, unique=True))
        sheet["praise"] = [point.code for point in chosen]
    sheet["grade"] = draw(st.sampled_from([None, *GRADES]))
    sheet["place"] = draw(st.sampled_from([None, None, 1, 2, 3, 4, 11]))
    return sheet | ({} if reason is None else {"reason": draw(reason)})


def _assess(draw, sheet, point):
    match point.kind:
        case "two-sided":
            sheet["marks"][point.code] = draw(MARKS)
        case "choice":
            sheet["choices"][point.code] = draw(st.sampled_from(point.options)).code
        case "number":
            sheet["numbers"][point.code] = draw(st.integers(int(2 * point.least), int(2 * point.most))) / 2
        case "yes-no":
            sheet["yes"][point.code] = draw(st.booleans())
        case "set" if point.code == "teeth":
            sheet["teeth_missing"] = draw(st.lists(st.sampled_from(DOG_TEETH), max_size=2, unique=True))
        case "set":
            sheet["sets"][point.code] = draw(st.lists(_ways(point), max_size=1))


def _ways(point):
    codes_of_ways = st.sampled_from([option.code for option in point.options])
    told = st.fixed_dictionaries({"way": codes_of_ways, "side": SIDES, "degree": st.sampled_from([1, 2, 3])})
    return codes_of_ways | told


def assessed(sheet):
    """The points that a sheet speaks of."""
    spoken = {**sheet["marks"], **sheet["choices"], **sheet["numbers"], **sheet["yes"], **sheet["sets"]}
    return {*spoken, *sheet["praise"], *(["teeth"] if "teeth_missing" in sheet else [])}


def words_at_least(text):
    """Words as spaces part them: "well-laid" and "d'ossature" are one."""
    return len(text.split())


def words_at_most(text):
    """Words as letters make them: "well-laid" and "d'ossature" are two."""
    return len(re.findall(r"\w+", text))
