"""One entry of a class as the judge's sheet and card show it."""

from dataclasses import dataclass

from scoring.findings import Finding
from scoring.placing.assessment import Assessment
from scoring.placing.faults import faults_of
from scoring.placing.merit import Merit, merit_of
from scoring.rules.rulebook import Grade, RuleBook
from scoring.standards.model import BreedStandard

EntryId = str | int
PRESENT = "present"
PUPPY = "puppy"
# These bar a dog from a place under every body, also one that gives no grades.
BARRED = ("disqualified", "cannot-be-judged")


@dataclass(frozen=True, slots=True)
class Judged:
    """`place` is the judge's, where given; `merit` and `faults` follow from the assessment."""

    entry: EntryId
    assessment: Assessment
    merit: Merit
    faults: tuple[Finding, ...]
    presence: str = PRESENT
    grade: str | None = None
    reason: str | None = None
    place: int | None = None


def judge(
    standard: BreedStandard,
    entry: EntryId,
    assessment: Assessment,
    presence: str = PRESENT,
    grade: str | None = None,
    reason: str | None = None,
    place: int | None = None,
) -> Judged:
    merit, faults = merit_of(standard, assessment.marks), faults_of(standard, assessment)
    return Judged(entry, assessment, merit, faults, presence, grade, reason, place)


def grade_in(rules: RuleBook, code: str | None) -> Grade | None:
    """The grade in these rules; None for no grade and for one these rules do not give."""
    return next((grade for grade in rules.grades if grade.code == code), None)


def may_still_grow(rules: RuleBook, grade: str | None) -> bool:
    """Whether the grade is one that only puppies are given, so that a puppy's size is not yet held against it."""
    scales = [scale.code for scale in rules.scales if grade in scale.grades]
    return scales == [PUPPY]


def has_right_to_place(rules: RuleBook, judged: Judged) -> bool:
    """Whether the dog may be placed at all: it was present and is neither disqualified nor not to be judged."""
    grade = grade_in(rules, judged.grade)
    barred = judged.grade in BARRED or (grade is not None and not grade.may_be_placed)
    return judged.presence == PRESENT and not barred


def id_order(entry: EntryId) -> tuple[bool, int, str]:
    """A settled order of entry ids: numbers by size, then strings."""
    return (False, entry, "") if isinstance(entry, int) else (True, 0, entry)
