"""The door `standards`: every breed standard and the points it describes."""

from collections.abc import Mapping
from typing import Any

from scoring.standards.loader import all_standards
from scoring.standards.model import BreedStandard, Point
from scoring.standards.teeth import DOG_TEETH


def standards(_: Mapping[str, Any]) -> dict[str, Any]:
    return {"standards": [standard_as_json(standard) for standard in all_standards()]}


def standard_as_json(standard: BreedStandard) -> dict[str, Any]:
    return {
        "code": standard.code,
        "name": standard.name,
        "number": standard.number,
        "points": [point_as_json(point) for point in standard.points],
    }


def point_as_json(point: Point) -> dict[str, Any]:
    """Only a two-sided point has weight and ends, only a choice or set has options; the rest is null."""
    return {
        "code": point.code,
        "kind": point.kind,
        "weight": None if point.weight is None else float(point.weight),
        "low": point.low,
        "high": point.high,
        "options": options_of(point),
    }


def options_of(point: Point) -> list[Any] | None:
    if point.code == "teeth":
        return list(DOG_TEETH)
    return [option.code for option in point.options] or None
