"""The phrase table of one breed in one language: all that Python and the tablet need to write a critique.

Nothing in it is left to decide but which phrases, in which of their two wordings, in which order.
"""

import tomllib
from functools import lru_cache
from importlib.resources import files
from typing import Any

from scoring.critique.lexicon import PRAISE, SEXES, Words, keys_of, load, pair, spoken, step_of
from scoring.placing.merit import loss_steps
from scoring.standards.loader import load as load_standard
from scoring.standards.model import FAULTS, BreedStandard, Point, Sex, Standing
from scoring.standards.teeth import DOG_TEETH

# How much a phrase matters decides which are said in full first: thousandths of a whole loss at a point of mean weight.
OF_LOSS, OF_PRAISE, OF_RIGHT = 1000, 100, 10
OF_STANDING: dict[Standing, int] = {
    "asked": 10,
    "tolerated": 10,
    "fault": 200,
    "serious-fault": 600,
    "disqualifying-fault": 1000,
}
OF_MISSING_TEETH = 200

# Words of the text before the grade: below `enough` more phrases are said in full, a phrase that matters as much as
# `grave` is said in full up to `room`. `longest`: phrases in one sentence.
LIMITS = {"enough": 40, "room": 80, "grave": 500, "longest": 6}


@lru_cache(maxsize=64)
def compiled(standard_code: str, language: str) -> dict[str, Any]:
    """The phrase table as JSON holds it; the same object each time, not to be changed.

    Raises UnknownStandard, and MissingWord where the lexicon lacks a word that a sheet of this breed can ask for.
    """
    return table_of(load_standard(standard_code), language)


def table_of(standard: BreedStandard, language: str) -> dict[str, Any]:
    """The phrase table of a standard. Raises MissingWord."""
    words = load(language)
    return {
        "standard": standard.code,
        "language": language,
        "points": [{"code": point.code, "section": point.section, "sex": point.sex} for point in in_order(standard)],
        "phrases": {sex: _phrases(words, standard, sex) for sex in SEXES},
        "sections": _by_sex(words, _sections),
        "subject": _by_sex(words, lambda words, sex: spoken(words["subject"], sex)),
        "grades": _by_sex(words, lambda words, sex: _each(words["grades"], sex)),
        "places": _by_sex(words, lambda words, sex: _each(words["places"], sex)),
        "teeth": {str(tooth): _tooth(words, tooth) for tooth in DOG_TEETH},
        "sides": words["sides"],
        "praised": words["patterns"]["praised"],
        "praised_fault": words["patterns"]["praised-fault"],
        "comma": words["comma"],
        "and": words["and"],
        "last": words["last"],
        "colon": words["colon"],
        "decimal": words["decimal"],
        "reason": words["reason"],
        "limits": LIMITS,
    }


@lru_cache(maxsize=1)
def sections() -> tuple[str, ...]:
    """The sections of a published standard, in its order."""
    text = files("scoring.standards").joinpath("vocabulary.toml").read_text(encoding="utf-8")
    return tuple(tomllib.loads(text)["sections"])


def in_order(standard: BreedStandard) -> list[Point]:
    """The points by section, in the order of a published standard; within a section in this standard's order."""
    return sorted(standard.points, key=lambda point: sections().index(point.section))


def _by_sex(words: Words, told: Any) -> dict[str, Any]:
    return {sex: told(words, sex) for sex in SEXES}


def _each(table: Words, sex: Sex) -> dict[str, str]:
    return {key: spoken(text, sex) for key, text in table.items()}


def _sections(words: Words, sex: Sex) -> dict[str, dict[str, str]]:
    """The words before a section's list: `lead`, and `opening` where the critique starts with it; ends are spaced."""
    told = words["sections"]
    return {
        section: {key: _spaced(text, sex) for key, text in told.get(section, told["any"]).items()}
        for section in sections()
    }


def _spaced(text: str, sex: Sex) -> str:
    return spoken(text, sex) + " " if text else ""


def _tooth(words: Words, tooth: int) -> list[str]:
    quadrant, position = divmod(tooth, 100)
    told = words["teeth"]
    full = told["full"].replace("{name}", told["names"][position - 1]).replace("{place}", told["places"][quadrant - 1])
    return [str(tooth), full.replace("{number}", str(tooth))]


def _phrases(words: Words, standard: BreedStandard, sex: Sex) -> dict[str, dict[str, list[Any]]]:
    """For each point and each thing said of it: short and full wording, how much it matters, whether it is a fault."""
    return {
        point.code: {key: _phrase(words, standard, point, key, sex) for key in keys_of(point)}
        for point in standard.points
        if point.is_for(sex)
    }


def _phrase(words: Words, standard: BreedStandard, point: Point, key: str, sex: Sex) -> list[Any]:
    label = words["standing"].get(standing_of(point, key), "")
    short, full = pair(words, standard.code, point, key, sex)
    return [labelled(short, label), labelled(full, label), matters(standard, point, key), is_fault(point, key)]


def labelled(text: str, label: str) -> str:
    """A note goes behind the text, but before a closing comma of the text's own."""
    if not label:
        return text
    return f"{text[:-1]} {label}," if text.endswith(",") else f"{text} {label}"


def is_fault(point: Point, key: str) -> bool:
    if point.kind == "two-sided":
        return key not in ("0", PRAISE)
    return key in ("one", "several", "no") or standing_of(point, key) in FAULTS


def standing_of(point: Point, key: str) -> Standing | None:
    """How the standard stands to what a key says; None where it says nothing about it."""
    if point.kind == "two-sided":
        return next((fault.standing for fault in point.mark_faults if str(fault.mark) == key), None)
    if key == "no" and point.when_no:
        return point.when_no.standing
    option = point.option(key.partition("/")[0])
    return option.standing if option else None


def matters(standard: BreedStandard, point: Point, key: str) -> int:
    """How much a phrase matters: a fault by its loss and its point's weight, before praise, before what is right."""
    worth = _worth(standard, point)
    if key == PRAISE:
        return round(OF_PRAISE * worth)
    standing = standing_of(point, key)
    by_standing = OF_STANDING[standing] if standing else 0
    if point.kind == "two-sided":
        loss = float(loss_steps()[0 if key == "0" else step_of(key)])
        return max(by_standing, round(OF_LOSS * worth * loss) or round(OF_RIGHT * worth))
    if key in ("one", "several"):
        return OF_MISSING_TEETH
    return by_standing or OF_RIGHT


def _worth(standard: BreedStandard, point: Point) -> float:
    """The point's weight over the standard's mean weight; 1 for a point without weight."""
    weights = [float(other.weight or 0) for other in standard.two_sided]
    mean = sum(weights) / len(weights) if weights else 0
    return float(point.weight) / mean if point.weight and mean else 1.0
