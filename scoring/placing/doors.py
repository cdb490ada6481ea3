"""The doors `merit` and `place`."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from scoring.bad_input import BadInput, a_date, a_list, a_string, an_int, an_object, join, one_of, value_of
from scoring.placing.assessment import read_assessment
from scoring.placing.class_findings import class_findings
from scoring.placing.class_order import propose
from scoring.placing.faults import faults_of
from scoring.placing.judged import PRESENT, EntryId, Judged, judge, may_still_grow
from scoring.placing.merit import merit_of
from scoring.rules.loader import codes as rules_codes
from scoring.rules.loader import load as load_rules
from scoring.rules.rulebook import RuleBook
from scoring.sheet_fields import PRESENCES
from scoring.standards.loader import codes as standard_codes
from scoring.standards.loader import load as load_standard
from scoring.standards.model import BreedStandard

MOST_SHEETS = 500
LARGEST_PLACE = 10_000


def merit(source: Mapping[str, Any]) -> dict[str, Any]:
    standard = _standard(source)
    value_of(source, "sex")
    assessment = read_assessment(source, standard)
    found = merit_of(standard, assessment.marks)
    return {
        "merit": float(found.value),
        "lost": [{"point": lost.point, "mark": lost.mark, "loss": float(lost.loss)} for lost in found.lost],
        "findings": [finding.as_json() for finding in faults_of(standard, assessment)],
    }


def place(source: Mapping[str, Any]) -> dict[str, Any]:
    return place_under(_rules(source), source)


def place_under(rules: RuleBook, source: Mapping[str, Any]) -> dict[str, Any]:
    """The same under a rule book at hand, whose overlays no door can name."""
    standard = _standard(source)
    sheets = _sheets(source, rules, standard)
    proposal = propose(rules, standard, sheets)
    return {
        "proposed": [
            {"entry": proposed.entry, "place": proposed.place, "merit": float(proposed.merit)}
            for proposed in proposal.order
        ],
        "ties": [list(tie) for tie in proposal.ties],
        "findings": [finding.as_json() for finding in class_findings(rules, standard, sheets)],
    }


def _standard(source: Mapping[str, Any]) -> BreedStandard:
    return load_standard(one_of(value_of(source, "standard"), standard_codes(), "standard"))


def _rules(source: Mapping[str, Any]) -> RuleBook:
    code = one_of(value_of(source, "rules"), rules_codes(), "rules")
    on = value_of(source, "on", default=None)
    return load_rules(code, None if on is None else a_date(on, "on"))


def _sheets(source: Mapping[str, Any], rules: RuleBook, standard: BreedStandard) -> list[Judged]:
    given = a_list(value_of(source, "sheets"), "sheets", MOST_SHEETS)
    sheets = [_sheet(value, rules, standard, join("sheets", index)) for index, value in enumerate(given)]
    seen: set[EntryId] = set()
    for index, sheet in enumerate(sheets):
        if sheet.entry in seen:
            raise BadInput("id-reused", "Give one sheet an entry.", join(join("sheets", index), "entry"))
        seen.add(sheet.entry)
    return sheets


def _sheet(value: Any, rules: RuleBook, standard: BreedStandard, at: str) -> Judged:
    source = an_object(value, at)
    grade, reason, judge_place = (value_of(source, key, at, None) for key in ("grade", "reason", "judge_place"))
    grade = None if grade is None else one_of(grade, _known_grades(), join(at, "grade"))
    return judge(
        standard,
        _entry(value_of(source, "entry", at), join(at, "entry")),
        replace(read_assessment(source, standard, at), grown=not may_still_grow(rules, grade)),
        one_of(value_of(source, "presence", at, PRESENT), PRESENCES, join(at, "presence")),
        grade,
        None if reason is None else a_string(reason, join(at, "reason")),
        None if judge_place is None else an_int(judge_place, join(at, "judge_place"), 1, LARGEST_PLACE),
    )


def _entry(value: Any, at: str) -> EntryId:
    """An entry is named by a string or by its number."""
    return an_int(value, at) if isinstance(value, int) else a_string(value, at)


def _known_grades() -> set[str]:
    """The grades of all bodies: one that these rules do not use is answered with a finding, not refused."""
    return {grade.code for code in rules_codes() for grade in load_rules(code).grades}
