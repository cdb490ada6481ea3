"""The words of every finding: code to sentence, in one place. A sentence says what is so, and what to do about it.

Templates are filled from a finding's facts. Facts named in CODES are codes of the rules and lose their hyphens; days
are written out. Other rooms add their codes under a heading of their own.
"""

import re
from collections.abc import Iterable, Mapping
from datetime import date
from typing import Any

from scoring.findings import Finding

SENTENCES: dict[str, str] = {
    # Classes and ages: scoring.rules.classes
    "not-born-yet": "Born {born}, after the show: correct the date of birth.",
    "too-young": "Too young for this class: {completed_months} months old on {counted_on}, at least {least_months} "
    "are asked. Open from {first_possible_on}.",
    "too-old": "Too old for this class: {completed_months} months old on {counted_on}, at most {most_months} are "
    "allowed. The last possible day was {last_possible_on}.",
    "upper-bound-open-question": "Completes {most_months} months on {counted_on} itself: the rules leave open whether "
    "the class still takes a dog on that day, so it does here.",
    "wrong-sex": "This class is not for a {sex}.",
    "neutered-not-allowed": "Neutered dogs cannot be entered in this class under these rules.",
    "not-neutered": "This class is for neutered dogs only.",
    "title-missing": "This class asks for a confirmed title ({any_of}), and none is named: add the title, or choose "
    "another class.",
    "title-due-by-closing": "The title {titles} must be confirmed by {confirmed_by}.",
    "certificate-missing": "This class asks for {certificates}, and none is named: add the certificate, or choose "
    "another class.",
    "champion-must-use-champion-class": "This dog is a champion: the rules may send it to {classes}.",
    "win-limit-not-checked": "What a dog of this class may have won already is limited: check it with the owner.",
}

CODES = frozenset({"any_of", "class", "classes", "open_classes", "sex", "sexes", "titles", "known_classes"})
ISO_DAY = re.compile(r"\d{4}-\d{2}-\d{2}")


def sentence(finding: Finding | Mapping[str, Any]) -> str:
    """The words for a finding, or for one kept as JSON. A code without words says itself, so that nothing is hidden."""
    code, facts = (finding.code, finding.facts) if isinstance(finding, Finding) else (finding["code"], finding["facts"])
    template = SENTENCES.get(code)
    if template is None:
        return f"{code.replace('-', ' ').capitalize()}."
    return template.format_map(_Words({key: _worded(key, value) for key, value in facts.items()}))


class _Words(dict[str, str]):
    """A fact that a finding left out is a gap in a sentence, never an error on a page."""

    def __missing__(self, key: str) -> str:
        return "…"


def _worded(key: str, value: Any) -> str:
    if isinstance(value, str):
        return _day(value) if ISO_DAY.fullmatch(value) else _plain(key, value)
    if isinstance(value, Iterable):
        return listed(_plain(key, str(item)) for item in value)
    return "…" if value is None else str(value)


def _plain(key: str, value: str) -> str:
    return value.replace("-", " ") if key in CODES else value


def _day(text: str) -> str:
    try:
        day = date.fromisoformat(text)
    except ValueError:
        return text
    return f"{day.day} {day:%B} {day.year}"


def listed(words: Iterable[str]) -> str:
    """Words as a list: "a, b and c"."""
    *most, last = list(words) or ["…"]
    return f"{', '.join(most)} and {last}" if most else last
