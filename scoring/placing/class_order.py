"""The order the sheets propose for a class. The judge places; a tie stays a tie until the judge breaks it."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby

from scoring.placing.judged import EntryId, Judged, grade_in, has_right_to_place, id_order
from scoring.rules.rulebook import RuleBook
from scoring.standards.model import BreedStandard

Key = tuple[int, Fraction, tuple[Fraction, ...]]


@dataclass(frozen=True, slots=True)
class Proposed:
    entry: EntryId
    place: int
    merit: Fraction


@dataclass(frozen=True, slots=True)
class Proposal:
    """Entries in order; tied ones share the place and stand together in `ties`, each in the order of their ids."""

    order: tuple[Proposed, ...]
    ties: tuple[tuple[EntryId, ...], ...]


def propose(rules: RuleBook, standard: BreedStandard, sheets: Iterable[Judged]) -> Proposal:
    """The order of all entries that have a right to a place, best first.

    Rule: grade as the rules rank it, then merit, then what is lost at the heaviest points, weight by weight; points
    of one weight are taken together, since nothing says which of them goes first. What is still equal is a tie: the
    tied share the place, and the next place counts them all (1, 1, 3).
    Source: ours; the grades' order is the body's.
    Limits: the order goes on past the number of places the rules give, and past the grade they ask for a place, so
    that the judge sees where every dog would stand. Ungraded dogs come after graded ones.
    The order of `sheets` does not matter.
    """
    keyed = [(_key(rules, standard, judged), judged) for judged in sheets if has_right_to_place(rules, judged)]
    keyed.sort(key=lambda pair: (pair[0], id_order(pair[1].entry)))
    order: list[Proposed] = []
    ties: list[tuple[EntryId, ...]] = []
    for _, group in groupby(keyed, key=lambda pair: pair[0]):
        equal = [judged for _, judged in group]
        place = len(order) + 1
        order += [Proposed(judged.entry, place, judged.merit.value) for judged in equal]
        if len(equal) > 1:
            ties.append(tuple(judged.entry for judged in equal))
    return Proposal(tuple(order), tuple(ties))


def _key(rules: RuleBook, standard: BreedStandard, judged: Judged) -> Key:
    grade = grade_in(rules, judged.grade)
    rank = len(rules.grades) if grade is None else grade.rank
    return rank, -judged.merit.value, _losses_by_weight(judged, points_by_weight(standard))


def _losses_by_weight(judged: Judged, levels: Sequence[Sequence[str]]) -> tuple[Fraction, ...]:
    return tuple(sum((judged.merit.loss_at(point) for point in level), Fraction(0)) for level in levels)


def points_by_weight(standard: BreedStandard) -> list[list[str]]:
    """The two-sided points in groups of one weight, the heaviest first."""
    weights = sorted({point.weight for point in standard.two_sided if point.weight is not None}, reverse=True)
    return [[point.code for point in standard.two_sided if point.weight == weight] for weight in weights]
