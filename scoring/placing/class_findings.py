"""Where the judge's grades and places disagree with the rules or with the judge's own sheets.

The judge's word is law: what the sheets say against it only warns or notes. Only what the rules themselves forbid
refuses: a place without the right to one, more places than there are, one place given twice, a reason not given.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from itertools import combinations

from scoring.findings import Finding, notes, refuses, warns
from scoring.placing.faults import disqualifying
from scoring.placing.judged import BARRED, PRESENT, EntryId, Judged, grade_in, has_right_to_place, id_order
from scoring.rules.rulebook import RuleBook
from scoring.standards.model import BreedStandard

MOST_LISTED = 1000


def class_findings(rules: RuleBook, standard: BreedStandard, sheets: Iterable[Judged]) -> tuple[Finding, ...]:
    """Everything there is to say of a class; the order of `sheets` does not matter."""
    shown = sorted(sheets, key=lambda judged: (judged.place is None, judged.place or 0, id_order(judged.entry)))
    placed = [judged for judged in shown if judged.place is not None]
    entitled = [judged for judged in placed if has_right_to_place(rules, judged)]
    return (
        *placed_without_right(rules, placed),
        *too_many_places(rules, placed),
        *places_not_in_order(placed),
        *grade_not_used(rules, shown),
        *reason_missing(rules, shown),
        *disqualifying_fault_not_acted_on(shown),
        *placed_below_required_grade(rules, entitled),
        *grade_inversions(rules, entitled),
        *order_against_merit(entitled),
        *unequal_assessment(rules, standard, shown),
    )


def placed_without_right(rules: RuleBook, placed: Sequence[Judged]) -> Iterator[Finding]:
    """A dog that was not present, is disqualified or could not be judged has a place."""
    for judged in placed:
        if not has_right_to_place(rules, judged):
            facts = {"place": judged.place, "presence": judged.presence, "grade": judged.grade}
            yield refuses("placed-without-right", entry=judged.entry, **facts)


def too_many_places(rules: RuleBook, placed: Sequence[Judged]) -> Iterator[Finding]:
    """The judge placed more dogs, or further down, than the rules give places."""
    lowest = max((place_of(judged) for judged in placed), default=0)
    given = max(len(placed), lowest)
    if given > rules.places:
        beyond = [judged.entry for judged in placed if place_of(judged) > rules.places]
        yield refuses("too-many-places", given=given, most=rules.places, beyond=beyond)


def places_not_in_order(placed: Sequence[Judged]) -> Iterator[Finding]:
    """A place given twice refuses; a place left out only warns, since some bodies let a judge withhold one."""
    counts = Counter(place_of(judged) for judged in placed)
    twice = sorted(place for place, count in counts.items() if count > 1)
    left_out = sorted(set(range(1, min(max(counts, default=0), MOST_LISTED) + 1)) - set(counts))
    if twice:
        yield refuses("places-not-in-order", twice=twice, left_out=left_out)
    elif left_out:
        yield warns("places-not-in-order", twice=[], left_out=left_out)


def grade_not_used(rules: RuleBook, shown: Sequence[Judged]) -> Iterator[Finding]:
    """The judge gave a grade these rules do not have. Limits: what bars a dog everywhere may be said everywhere."""
    for judged in shown:
        if judged.grade not in (None, *BARRED) and grade_in(rules, judged.grade) is None:
            yield warns("grade-not-used", entry=judged.entry, grade=judged.grade, rules=rules.code)


def reason_missing(rules: RuleBook, shown: Sequence[Judged]) -> Iterator[Finding]:
    """A grade that must be explained has no reason.

    Source: FCI Regulations for Dog Shows, art. 6: the reason for a disqualification is in the judge's report; Dutch
    judges' association, December 2016: the same for a dog that cannot be judged.
    """
    for judged in shown:
        grade = grade_in(rules, judged.grade)
        needed = grade.needs_reason if grade else judged.grade in BARRED
        if needed and not (judged.reason or "").strip():
            yield refuses("reason-missing", entry=judged.entry, grade=judged.grade)


def disqualifying_fault_not_acted_on(shown: Sequence[Judged]) -> Iterator[Finding]:
    """A dog whose sheet holds a disqualifying fault has another grade, or a place.

    Limits: a dog without grade and place is not finished, one that was not present not judged; neither is spoken of.
    Dutch judges' association, December 2016: such a dog is disqualified, not left as "cannot be judged".
    """
    for judged in shown:
        finished = judged.grade is not None or judged.place is not None
        faults = disqualifying(judged.faults)
        if faults and finished and judged.presence == PRESENT and judged.grade != "disqualified":
            points = [fault.facts["point"] for fault in faults]
            facts = {"points": points, "grade": judged.grade, "place": judged.place}
            yield warns("disqualifying-fault-not-acted-on", entry=judged.entry, **facts)


def placed_below_required_grade(rules: RuleBook, entitled: Sequence[Judged]) -> Iterator[Finding]:
    """A placed dog has less than the grade that the rules ask for a place, where they ask one."""
    for judged in entitled:
        grade = grade_in(rules, judged.grade)
        if grade and not rules.meets_least_grade(grade.code):
            facts = {"place": judged.place, "grade": grade.code, "least": _least_grade_beside(rules, grade.code)}
            yield warns("placed-below-required-grade", entry=judged.entry, **facts)


def grade_inversions(rules: RuleBook, entitled: Sequence[Judged]) -> Iterator[Finding]:
    """Each pair of placed dogs of which the better placed has the lesser grade."""
    for better, lesser in _pairs(entitled):
        first, second = grade_in(rules, better.grade), grade_in(rules, lesser.grade)
        if first and second and first.rank > second.rank:
            grades = {"grades": [first.code, second.code]}
            yield warns("grade-inversion", **_pair(better, lesser), **grades)


def order_against_merit(entitled: Sequence[Judged]) -> Iterator[Finding]:
    """Each pair of placed dogs of one grade, or both without, of which the better placed has the lesser merit."""
    for better, lesser in _pairs(entitled):
        if better.grade == lesser.grade and better.merit.value < lesser.merit.value:
            merits = [float(better.merit.value), float(lesser.merit.value)]
            yield notes("order-against-merit", **_pair(better, lesser), merits=merits)


def unequal_assessment(rules: RuleBook, standard: BreedStandard, shown: Sequence[Judged]) -> Iterator[Finding]:
    """Points that some sheets of the class mark and others do not, so that their merits do not compare.

    Limits: only sheets of dogs that may be placed; the others need not be finished.
    """
    sheets = [judged for judged in shown if has_right_to_place(rules, judged)]
    counts = Counter(point for judged in sheets for point in judged.assessment.marks)
    unequal = [point.code for point in standard.two_sided if 0 < counts[point.code] < len(sheets)]
    if unequal:
        missing = [{"entry": judged.entry, "points": _unmarked(judged, unequal)} for judged in sheets]
        yield warns("unequal-assessment", points=unequal, missing=[row for row in missing if row["points"]])


def _least_grade_beside(rules: RuleBook, grade: str) -> str | None:
    """The least grade for a place in the scale that holds this grade: adults and puppies have their own."""
    return next((scale.least_for_place for scale in rules.scales if grade in scale.grades), None)


def place_of(judged: Judged) -> int:
    return judged.place or 0


def _unmarked(judged: Judged, points: Sequence[str]) -> list[str]:
    return [point for point in points if point not in judged.assessment.marks]


def _pairs(entitled: Sequence[Judged]) -> Iterator[tuple[Judged, Judged]]:
    """Every two dogs of which the first is placed better; `entitled` is in the order of places."""
    return ((one, other) for one, other in combinations(entitled, 2) if place_of(one) < place_of(other))


def _pair(better: Judged, lesser: Judged) -> dict[str, list[EntryId | int | None]]:
    return {"entries": [better.entry, lesser.entry], "places": [better.place, lesser.place]}
