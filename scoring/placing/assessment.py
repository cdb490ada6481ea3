"""What one sheet says of one dog, read against the breed's standard."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, cast

from scoring.bad_input import BadInput, a_bool, a_list, a_number, an_int, an_object, join, one_of, value_of
from scoring.standards.model import MOST_STEPS, BreedStandard, Kind, Point, Sex
from scoring.standards.teeth import DOG_TEETH

SEXES: tuple[Sex, ...] = ("dog", "bitch")
TEETH = "teeth"


@dataclass(frozen=True, slots=True)
class Assessment:
    """The judge's reading of one dog. What is not in here was not assessed. `grown` False: may still grow."""

    sex: Sex | None
    marks: Mapping[str, int] = field(default_factory=dict)
    choices: Mapping[str, str] = field(default_factory=dict)
    teeth_missing: tuple[int, ...] = ()
    numbers: Mapping[str, float] = field(default_factory=dict)
    yes: Mapping[str, bool] = field(default_factory=dict)
    grown: bool = True


def read_assessment(source: Mapping[str, Any], standard: BreedStandard, at: str = "") -> Assessment:
    """The assessment in one JSON object: `marks`, and `sex`, `choices`, `teeth_missing`, `numbers`, `yes` if given.

    Raises BadInput: unknown-code for a point or option the standard does not have, wrong-type for a point of
    another kind, out-of-range for a mark beyond 3 steps or a number no dog can have.
    """
    value_of(source, "marks", at)
    return Assessment(
        sex=_sex(source, at),
        marks={
            point.code: _mark(value, here) for point, value, here in _said(source, "marks", "two-sided", standard, at)
        },
        choices={
            point.code: one_of(value, [option.code for option in point.options], here)
            for point, value, here in _said(source, "choices", "choice", standard, at)
        },
        teeth_missing=_teeth(source, standard, at),
        numbers={
            point.code: a_number(value, here, point.least, point.most)
            for point, value, here in _said(source, "numbers", "number", standard, at)
        },
        yes={point.code: a_bool(value, here) for point, value, here in _said(source, "yes", "yes-no", standard, at)},
    )


def _sex(source: Mapping[str, Any], at: str) -> Sex | None:
    sex = value_of(source, "sex", at, None)
    return None if sex is None else cast(Sex, one_of(sex, SEXES, join(at, "sex")))


def _said(
    source: Mapping[str, Any], key: str, kind: Kind, standard: BreedStandard, at: str
) -> list[tuple[Point, Any, str]]:
    """The points that a member of the input speaks of, each with its value and the path to it."""
    here = join(at, key)
    given = an_object(value_of(source, key, at, {}), here)
    return [(_point(standard, code, kind, join(here, code)), value, join(here, code)) for code, value in given.items()]


def _point(standard: BreedStandard, code: str, kind: Kind, at: str) -> Point:
    point = standard.point(code)
    if point is None:
        raise BadInput("unknown-code", f'The standard of the {standard.name} has no point "{code[:60]}".', at)
    if point.kind != kind:
        raise BadInput("wrong-type", f'The point "{code}" is of the kind {point.kind}, not {kind}.', at)
    return point


def _mark(value: Any, at: str) -> int:
    return an_int(value, at, -MOST_STEPS, MOST_STEPS)


def _teeth(source: Mapping[str, Any], standard: BreedStandard, at: str) -> tuple[int, ...]:
    """The missing teeth in order, each once."""
    here = join(at, "teeth_missing")
    given = a_list(value_of(source, "teeth_missing", at, []), here)
    if given and standard.point(TEETH) is None:
        raise BadInput("unknown-code", f"The standard of the {standard.name} does not speak of teeth.", here)
    return tuple(sorted({_tooth(value, join(here, index)) for index, value in enumerate(given)}))


def _tooth(value: Any, at: str) -> int:
    tooth = an_int(value, at)
    if tooth not in DOG_TEETH:
        raise BadInput("unknown-code", "Give the modified Triadan number of an adult dog's tooth, 101 to 411.", at)
    return tooth
