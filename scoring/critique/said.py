"""What one sheet says, phrase by phrase, taken from the phrase table of the breed and language."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from scoring.critique.lexicon import PLAIN, PRAISE
from scoring.critique.table import labelled
from scoring.placing.assessment import TEETH, Assessment

Table = Mapping[str, Any]
WAYS = "ways-of-moving"
SIDES = ("left", "right", "both")


@dataclass(frozen=True, slots=True)
class Way:
    """One faulty way of moving; without a degree it is said plainly."""

    way: str
    side: str | None = None
    degree: int = PLAIN


@dataclass(frozen=True, slots=True)
class Sheet:
    """What the judge says of one dog. `teeth_seen`: the mouth was looked at, so that no missing tooth is a virtue.

    `ways` is None where the ways of moving were not assessed. `reason` is the judge's own words, kept as given.
    """

    assessment: Assessment
    praise: frozenset[str] = frozenset()
    teeth_seen: bool = False
    ways: tuple[Way, ...] | None = None
    grade: str | None = None
    reason: str | None = None
    place: int | None = None


@dataclass(frozen=True, slots=True)
class Phrase:
    """One thing said of a point, in both wordings. `matters` decides which phrases are said in full first."""

    point: str
    section: str
    short: str
    full: str
    matters: int
    fault: bool


def phrases(table: Table, sheet: Sheet) -> list[Phrase]:
    """What the sheet says in the order of the table's points: one phrase a point, one for each way of moving."""
    spoken = table["phrases"][sheet.assessment.sex]
    here = [point for point in table["points"] if point["code"] in spoken]
    return [phrase for point in here for phrase in _of_point(table, spoken[point["code"]], point, sheet)]


def _of_point(table: Table, spoken: Table, point: Table, sheet: Sheet) -> list[Phrase]:
    code, section = point["code"], point["section"]
    praised, said = code in sheet.praise, list(_told(table, code, sheet))
    if praised and [key for key, _ in said] in ([], ["0"]):
        said, praised = [(PRAISE, ("", ""))], False
    found = [_phrase(code, section, spoken[key], filling) for key, filling in said]
    return [*found[:-1], _praised(table, found[-1])] if praised else found


def _phrase(code: str, section: str, wording: Sequence[Any], filling: tuple[str, str]) -> Phrase:
    short, full, matters, fault = wording
    return Phrase(code, section, _filled(short, filling[0]), _filled(full, filling[1]), matters, fault)


def _filled(wording: str, filling: str) -> str:
    """A number or a list of teeth goes in its place, a side goes behind."""
    if "{}" in wording:
        return wording.replace("{}", filling)
    return f"{wording} {filling}" if filling else wording


def _praised(table: Table, phrase: Phrase) -> Phrase:
    """A point that is praised and has something else said of it: the praise is a note behind."""
    note = table["praised_fault" if phrase.fault else "praised"]
    short, full = labelled(phrase.short, note), labelled(phrase.full, note)
    return Phrase(phrase.point, phrase.section, short, full, phrase.matters, phrase.fault)


def _told(table: Table, code: str, sheet: Sheet) -> Iterator[tuple[str, tuple[str, str]]]:
    """The keys of a point's phrases, each with what fills the short and the full wording."""
    said = sheet.assessment
    if code in said.marks:
        yield str(said.marks[code]), ("", "")
    elif code in said.choices:
        yield said.choices[code], ("", "")
    elif code in said.numbers:
        yield "said", (number(said.numbers[code], table["decimal"]),) * 2
    elif code in said.yes:
        yield "yes" if said.yes[code] else "no", ("", "")
    elif code == TEETH and sheet.teeth_seen:
        yield _teeth(table, said.teeth_missing)
    elif code == WAYS and sheet.ways is not None:
        yield from _ways(table, sheet.ways)


def number(value: float, decimal: str) -> str:
    """63.0 is 63, 63.5 is 63,5 where the language writes a comma; never rounded."""
    return repr(float(value)).removesuffix(".0").replace(".", decimal)


def _teeth(table: Table, missing: Sequence[int]) -> tuple[str, tuple[str, str]]:
    named = [table["teeth"][str(tooth)] for tooth in missing]
    key = ("none", "one", "several")[min(len(named), 2)]
    return key, (listed(table, [short for short, _ in named]), listed(table, [full for _, full in named]))


def _ways(table: Table, ways: Sequence[Way]) -> Iterator[tuple[str, tuple[str, str]]]:
    if not ways:
        yield "none", ("", "")
    for way in ways:
        side = table["sides"][way.side] if way.side else ""
        yield f"{way.way}/{way.degree}", (side, side)


def listed(table: Table, parts: Sequence[str], last: str = "and") -> str:
    """One, two and three: commas between, and before the last the language's "and", or what closes a list there."""
    if len(parts) < 2:
        return "".join(parts)
    return f"{table['comma'].join(parts[:-1])}{table[last]}{parts[-1]}"
