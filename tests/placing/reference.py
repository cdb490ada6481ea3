"""The proposed order worked out slowly: every dog is compared with every other, nothing is sorted."""

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from scoring.standards.loader import load

GRADES = ("excellent", "very-good", "good", "sufficient")
FIFTHS = {0: Fraction(0), 1: Fraction(2, 10), 2: Fraction(5, 10), 3: Fraction(10, 10)}


def reference(asked: Mapping[str, Any]) -> tuple[dict[Any, int], set[frozenset[Any]]]:
    """The place of every entry that may be placed, and the groups that tie."""
    weights = {point.code: Fraction(point.weight) for point in load(asked["standard"]).two_sided}
    runners = [one for one in asked["sheets"] if one["presence"] == "present" and one["grade"] in GRADES]
    places = {one["entry"]: 1 + sum(beats(other, one, weights) for other in runners) for one in runners}
    tied = {
        frozenset(entry for entry, place in places.items() if place == shared)
        for shared in places.values()
        if list(places.values()).count(shared) > 1
    }
    return places, tied


def beats(one: Mapping[str, Any], other: Mapping[str, Any], weights: Mapping[str, Fraction]) -> bool:
    grades = GRADES.index(one["grade"]), GRADES.index(other["grade"])
    if grades[0] != grades[1]:
        return grades[0] < grades[1]
    total = lost(one, weights, None), lost(other, weights, None)
    if total[0] != total[1]:
        return total[0] < total[1]
    left = set(weights.values())
    while left:
        heaviest = max(left)
        left.remove(heaviest)
        here = lost(one, weights, heaviest), lost(other, weights, heaviest)
        if here[0] != here[1]:
            return here[0] < here[1]
    return False


def lost(one: Mapping[str, Any], weights: Mapping[str, Fraction], only: Fraction | None) -> Fraction:
    """Weight lost by the marks, at the points of one weight or at all."""
    parts = [
        weights[point] * FIFTHS[abs(mark)] for point, mark in one["marks"].items() if only in (None, weights[point])
    ]
    return sum(parts, Fraction(0))
