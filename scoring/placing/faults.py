"""Where a dog departs from its standard in choices, teeth, numbers and yes/no: faults, by the standard's own word."""

from collections.abc import Iterator
from decimal import Decimal
from typing import Any

from scoring.findings import Finding, notes, warns
from scoring.placing.assessment import TEETH, Assessment
from scoring.standards.model import FAULTS, STANDINGS, BreedStandard, Point, Size, Standing, TeethClause, Verified

DISQUALIFYING = "disqualifying-fault"


def faults_of(standard: BreedStandard, assessment: Assessment) -> tuple[Finding, ...]:
    """Findings `fault`, `serious-fault` and `disqualifying-fault`, in the order of the standard's points.

    Rule: what the standard asks or tolerates answers nothing. Limits: a fault lowers no merit and sets no grade; the
    judge weighs it. A range that differs by sex is not asked of a dog whose sex is not known, the lower end of a
    range not of one that may still grow. Besides, `not-for-this-sex` notes an answer to a point of the other sex,
    and `size-class` notes the size a number puts the dog in.
    """
    return tuple(finding for point in standard.points for finding in _faults_at(point, standard, assessment))


def disqualifying(findings: tuple[Finding, ...]) -> tuple[Finding, ...]:
    return tuple(finding for finding in findings if finding.code == DISQUALIFYING)


def _faults_at(point: Point, standard: BreedStandard, said: Assessment) -> Iterator[Finding]:
    if not point.is_for(said.sex):
        if point.code in said.yes:
            yield notes("not-for-this-sex", point=point.code, sex=said.sex)
    elif point.code == TEETH:
        yield from _teeth(standard, said)
    elif point.kind == "two-sided":
        yield from _mark(point, said)
    elif point.kind == "number":
        yield from _number(point, standard, said)
    elif point.kind == "yes-no":
        yield from _no(point, said)
    elif point.kind == "choice":
        yield from _choice(point, said)


def _fault(
    point: str, found: Any, standing: Standing, source: str, verified: Verified, **facts: Any
) -> Iterator[Finding]:
    if standing in FAULTS:
        severity = notes if standing == "fault" else warns
        yield severity(standing, point=point, found=found, source=source, verified=verified, **facts)


def _choice(point: Point, said: Assessment) -> Iterator[Finding]:
    option = point.option(said.choices.get(point.code, ""))
    if option:
        yield from _fault(point.code, option.code, option.standing, option.source, option.verified)


def _mark(point: Point, said: Assessment) -> Iterator[Finding]:
    for fault in point.mark_faults:
        if said.marks.get(point.code) == fault.mark:
            yield from _fault(point.code, fault.mark, fault.standing, fault.source, fault.verified)


def _no(point: Point, said: Assessment) -> Iterator[Finding]:
    if said.yes.get(point.code) is False and point.when_no:
        no = point.when_no
        yield from _fault(point.code, False, no.standing, no.source, no.verified)


def _teeth(standard: BreedStandard, said: Assessment) -> Iterator[Finding]:
    """The worst of the clauses that the missing teeth meet; the first where several are as bad."""
    if not standard.teeth:
        return
    missing = set(said.teeth_missing) - standard.teeth.not_counted
    met = [clause for clause in standard.teeth.clauses if _meets(missing, clause)]
    if met:
        worst = max(met, key=lambda clause: STANDINGS.index(clause.standing))
        found = sorted(missing)
        yield from _fault(TEETH, found, worst.standing, worst.source, worst.verified, clause=worst.code)


def _meets(missing: set[int], clause: TeethClause) -> bool:
    return len(missing & clause.teeth) >= clause.at_least and len(missing) >= clause.in_all


def _number(point: Point, standard: BreedStandard, said: Assessment) -> Iterator[Finding]:
    value = said.numbers.get(point.code)
    if value is None:
        return
    for band in standard.size_bands:
        if band.point == point.code and band.holds(value):
            facts = {"found": value, "size": band.size, "source": band.source, "verified": band.verified}
            yield notes("size-class", point=point.code, **facts)
    if size := standard.size(point.code, said.sex):
        yield from _outside(size, value, said)


def _outside(size: Size, value: float, said: Assessment) -> Iterator[Finding]:
    """How the value stands by the farthest limit it passes; a value on a limit has not passed it."""
    outside = _how_far(size, value)
    if value < size.low and not said.grown:
        return
    passed = [beyond for beyond in size.beyond if outside > Decimal(str(beyond.more_than))]
    if passed:
        last = passed[-1]
        facts = {"low": size.low, "high": size.high, "unit": size.unit, "outside": float(outside)}
        yield from _fault(size.point, value, last.standing, last.source, last.verified, **facts)


def _how_far(size: Size, value: float) -> Decimal:
    """How far outside the range, in decimals as written: 63.1 is 0.1 over 63, not a hair less."""
    over = Decimal(str(value)) - Decimal(str(size.high))
    under = Decimal(str(size.low)) - Decimal(str(value))
    return max(over, under, Decimal(0))
