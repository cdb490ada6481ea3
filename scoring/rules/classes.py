"""Which classes a dog may be entered in: one function for each clause, every answer with its reasons."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any

from scoring.findings import Finding, notes, refuses
from scoring.rules.ages import completed_months, completes_on, counting_day
from scoring.rules.rulebook import AgeDay, ClassRule, RuleBook, Sex


@dataclass(frozen=True, slots=True)
class Dog:
    """What an entry form says of a dog. `titles` are confirmed; `certificates` are enclosed."""

    born: date
    sex: Sex
    neutered: bool = False
    titles: frozenset[str] = frozenset()
    certificates: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Occasion:
    """The days of one show that rules speak of."""

    shown_on: date
    first_day: date
    entries_close_on: date | None = None


@dataclass(frozen=True, slots=True)
class ClassAnswer:
    """Whether a class is open to a dog, and why. It is open where nothing refuses."""

    class_code: str
    findings: tuple[Finding, ...]

    @property
    def open(self) -> bool:
        return all(finding.severity != "refuses" for finding in self.findings)


@dataclass(frozen=True, slots=True)
class _Case:
    book: RuleBook
    rule: ClassRule
    dog: Dog
    occasion: Occasion

    def day_of(self, age_day: AgeDay) -> date:
        return counting_day(age_day, self.occasion.shown_on, self.occasion.first_day)


def eligibility(
    book: RuleBook, dog: Dog, shown_on: date, first_day: date | None = None, entries_close_on: date | None = None
) -> list[ClassAnswer]:
    """Every class of the book, in catalogue order, with whether it is open to the dog and why.

    Rule: a class is open where no clause refuses; notes and warnings leave it open.
    Source: the rule book, each value with its own.
    Limits: what a dog has already won, its breed and its registration are not looked at.
    Arguments: `first_day` is the show's first day, by default the day the dog is shown.
    """
    occasion = Occasion(shown_on, first_day or shown_on, entries_close_on)
    return [class_eligibility(book, rule, dog, occasion) for rule in book.classes]


def class_eligibility(book: RuleBook, rule: ClassRule, dog: Dog, occasion: Occasion) -> ClassAnswer:
    """One class's answer; rule and limits as `eligibility`."""
    case = _Case(book, rule, dog, occasion)
    answers = (clause(case) for clause in CLAUSES)
    return ClassAnswer(rule.code, tuple(finding for finding in answers if finding))


def check_born(case: _Case) -> Finding | None:
    born, shown_on = case.dog.born, case.occasion.shown_on
    return refuses("not-born-yet", born=_iso(born), shown_on=_iso(shown_on)) if born > shown_on else None


def check_least_age(case: _Case) -> Finding | None:
    """The least age must be completed on the day the rules count it."""
    least, counted_on = case.rule.least_months, case.day_of(case.book.age_day)
    completes = completes_on(case.dog.born, least)
    if case.dog.born > case.occasion.shown_on or (completes and completes <= counted_on):
        return None
    return refuses(
        "too-young",
        least_months=least,
        first_possible_on=_iso(_show_day(completes, case.book.age_day)),
        **_age_facts(case, "least_months", counted_on),
    )


def check_most_age(case: _Case) -> Finding | None:
    """The most age must not be passed; on the last day itself the text decides, or leaves an open question."""
    most, counted_on = case.rule.most_months, case.day_of(case.book.upper_age_day)
    completes = None if most is None else completes_on(case.dog.born, most)
    if completes is None or counted_on < completes:
        return None
    if counted_on == completes and case.rule.last_day == "included":
        return None
    facts = {"most_months": most, **_age_facts(case, "most_months", counted_on)}
    if counted_on == completes and case.rule.last_day == "open-question":
        return notes("upper-bound-open-question", **facts)
    last = completes - timedelta(days=1) if case.rule.last_day == "excluded" else completes
    return refuses("too-old", last_possible_on=_iso(_show_day(last, case.book.upper_age_day)), **facts)


def check_sex(case: _Case) -> Finding | None:
    if case.dog.sex in case.rule.sexes:
        return None
    return refuses("wrong-sex", sex=case.dog.sex, sexes=list(case.rule.sexes))


def check_neutered(case: _Case) -> Finding | None:
    if case.dog.neutered and case.rule.neutered == "barred":
        return refuses("neutered-not-allowed")
    if not case.dog.neutered and case.rule.neutered == "required":
        return refuses("not-neutered")
    return None


def check_title(case: _Case) -> Finding | None:
    """One of the titles must be confirmed by the day entries close."""
    wanted, closes_on = case.rule.titles, case.occasion.entries_close_on
    if not wanted:
        return None
    by = {} if closes_on is None else {"confirmed_by": _iso(closes_on)}
    held = [title for title in wanted if title in case.dog.titles]
    if not held:
        return refuses("title-missing", any_of=list(wanted), **by)
    return notes("title-due-by-closing", titles=held, **by) if by else None


def check_documents(case: _Case) -> Finding | None:
    missing = [document for document in case.rule.documents if document not in case.dog.certificates]
    return refuses("certificate-missing", certificates=missing) if missing else None


def check_champion_elsewhere(case: _Case) -> Finding | None:
    """Some bodies send a confirmed champion to the champion class; how strictly is the rule book's."""
    severity = case.rule.champions_elsewhere
    meant = [rule.code for rule in case.book.classes if case.dog.titles.intersection(rule.titles)]
    if severity == "allowed" or not meant:
        return None
    return Finding("champion-must-use-champion-class", severity, {"classes": meant})


def check_win_limit(case: _Case) -> Finding | None:
    return notes("win-limit-not-checked") if case.rule.win_limit else None


CLAUSES: Sequence[Callable[[_Case], Finding | None]] = (
    check_born,
    check_least_age,
    check_most_age,
    check_sex,
    check_neutered,
    check_title,
    check_documents,
    check_champion_elsewhere,
    check_win_limit,
)


def _age_facts(case: _Case, value: str, counted_on: date) -> dict[str, Any]:
    return {
        "completed_months": max(0, completed_months(case.dog.born, counted_on)),
        "counted_on": _iso(counted_on),
        "verified": case.rule.provenance.of(value).verified,
    }


def _show_day(counted: date | None, age_day: AgeDay) -> date | None:
    """The day of a show whose age is counted on the given day."""
    if counted is None or not age_day.startswith("day-before"):
        return counted
    return None if counted == date.max else counted + timedelta(days=1)


def _iso(day: date | None) -> str | None:
    return day.isoformat() if day else None
