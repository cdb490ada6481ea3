"""From a sheet to sentences: choose the phrases, order them as a standard does, join them.

The tablet does the same with the same table in static/ring/compose.js; tests/critique/cases.json holds both together.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from scoring.critique.said import Phrase, Sheet, Table, listed, phrases
from scoring.critique.table import compiled
from scoring.standards.model import BreedStandard

GENERAL, SEX_TYPE = "general", "sex-type"
SPACES = re.compile(r"[ \t\r\n]+")
ENDS = (".", "!", "?", "…")

Sentence = tuple[str, tuple[str, ...]]


@dataclass(frozen=True, slots=True)
class Critique:
    """`spans` names for each sentence the points it speaks of; the sentence of grade and place speaks of none."""

    sentences: tuple[str, ...]
    spans: tuple[tuple[str, ...], ...]

    @property
    def text(self) -> str:
        return " ".join(self.sentences)


@dataclass(frozen=True, slots=True)
class Worded:
    """A phrase in the wording chosen for this text."""

    point: str
    section: str
    text: str


def compose(standard: BreedStandard, language: str, sheet: Sheet) -> Critique:
    """The critique of one sheet in one language, the same for the same sheet.

    Rule: every point the sheet assesses is said once, by section in the order of a standard; a mark of 0 as a virtue,
    any other as a fault of its degree; then grade, place and reason. What matters most is said in full first, until
    the text is long enough, so that 8 to 20 points give 40 to 120 words.
    Source: the order of sections of the FCI's standards; length and tense common practice, no source.
    Limits: a point that the standard asks only of the other sex is not said. A reason is quoted, not translated.
    Raises UnknownStandard, MissingWord.
    """
    table = compiled(standard.code, language)
    said = [*body(table, sheet), *closing(table, sheet)]
    return Critique(tuple(text for text, _ in said), tuple(points for _, points in said))


def at_length(said: Sequence[Phrase], limits: Mapping[str, int]) -> list[Worded]:
    """Each phrase in its short wording, and in its full one as long as the text has room for what matters."""
    words = sum(_words(phrase.short) for phrase in said)
    in_full = set()
    for index in sorted(range(len(said)), key=lambda index: -said[index].matters):
        if words < limits["enough"] or (said[index].matters >= limits["grave"] and words < limits["room"]):
            in_full.add(index)
            words += _words(said[index].full) - _words(said[index].short)
    return [
        Worded(phrase.point, phrase.section, phrase.full if index in in_full else phrase.short)
        for index, phrase in enumerate(said)
    ]


def _words(text: str) -> int:
    return len(text.split(" "))


def body(table: Table, sheet: Sheet) -> Iterator[Sentence]:
    """The sentences on the dog: its sex and general points first, then one a section, or more where it is long."""
    worded = at_length(phrases(table, sheet), table["limits"])
    first = True
    for section, found in groupby(worded, key=lambda phrase: phrase.section):
        for part in _parts(list(found), table["limits"]["longest"]):
            yield _sentence(table, sheet, section, part, first), tuple(dict.fromkeys(phrase.point for phrase in part))
            first = False


def _parts(found: list[Worded], longest: int) -> Iterator[list[Worded]]:
    """A long list in as few parts as will do, the earlier ones not shorter than the later."""
    count = -(-len(found) // longest)
    size, more = divmod(len(found), count)
    start = 0
    for index in range(count):
        end = start + size + (index < more)
        yield found[start:end]
        start = end


def _sentence(table: Table, sheet: Sheet, section: str, part: list[Worded], first: bool) -> str:
    if section == GENERAL:
        return sentence(_on_the_animal(table, sheet, part))
    words = table["sections"][sheet.assessment.sex][section]
    return sentence(words["opening" if first else "lead"] + listed(table, [phrase.text for phrase in part], "last"))


def _on_the_animal(table: Table, sheet: Sheet, part: list[Worded]) -> str:
    """The word for the animal, told by its sex type where that was assessed, then what is said of it."""
    subject = next((phrase.text for phrase in part if phrase.point == SEX_TYPE), table["subject"][sheet.assessment.sex])
    rest = [phrase.text for phrase in part if phrase.point != SEX_TYPE]
    return f"{subject} {listed(table, rest)}" if rest else subject.removesuffix(",")


def closing(table: Table, sheet: Sheet) -> Iterator[Sentence]:
    """Grade and place, then the judge's reason as given."""
    verdict = table["comma"].join(_verdict(table, sheet))
    reason = SPACES.sub(" ", sheet.reason or "").strip(" ")
    if reason:
        yield sentence(f"{verdict}{table['colon']}{reason}" if verdict else table["reason"] + reason), ()
    elif verdict:
        yield sentence(verdict), ()


def _verdict(table: Table, sheet: Sheet) -> Iterator[str]:
    sex = sheet.assessment.sex
    if sheet.grade:
        yield table["grades"][sex][sheet.grade]
    if sheet.place:
        places = table["places"][sex]
        yield places.get(str(sheet.place), places["further"].replace("{}", str(sheet.place)))


def sentence(text: str) -> str:
    """A capital to begin with, and a full stop unless the judge's own words already end it."""
    return text[:1].upper() + text[1:] + ("" if text.endswith(ENDS) else ".")
