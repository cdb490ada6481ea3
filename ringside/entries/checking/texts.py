"""What can be wrong with any cell: formulas, a spreadsheet's errors, letters lost or garbled, too much of it."""

from collections.abc import Iterator, Mapping

from ringside.entries.reading.cells import has_lost_letters, is_error, is_formula, is_wholly_lost, mended_letters
from ringside.entries.reading.words import FIELDS, NEEDED
from scoring.findings import Finding, refuses, warns

# As long as the database keeps them.
MOST = {
    "name": 160,
    "call_name": 60,
    "studbook": 60,
    "sire": 160,
    "dam": 160,
    "breeder": 120,
    "owner": 120,
    "email": 254,
    "handler": 120,
}
NAMES = ("name", "call_name", "sire", "dam", "breeder", "owner", "handler")
SHOWN = 60


def shown(text: str) -> str:
    """As much of a cell as a sentence can hold."""
    return text if len(text) <= SHOWN else f"{text[:SHOWN]}…"


def check_texts(texts: Mapping[str, str]) -> list[Finding]:
    """What is wrong with the cells as text, whatever they mean."""
    found = [finding for field, text in texts.items() for finding in _check(field, text)]
    return [*found, *_letters(texts)]


def _check(field: str, text: str) -> Iterator[Finding]:
    facts = {"field": field, "what": FIELDS[field], "text": shown(text)}
    if is_formula(text):
        yield refuses("formula-text", **facts)
    elif is_error(text):
        yield refuses("spreadsheet-error", **facts)
    if len(text) > MOST.get(field, SHOWN * 10):
        yield refuses("text-too-long", most=MOST.get(field, SHOWN * 10), **facts)


def _letters(texts: Mapping[str, str]) -> Iterator[Finding]:
    given = {field: texts.get(field, "") for field in NAMES}
    lost = {field: text for field, text in given.items() if has_lost_letters(text) and not _says_more(field, text)}
    if lost:
        yield warns("letters-lost", fields=list(lost), texts=[shown(text) for text in lost.values()])
    for field, text in given.items():
        meant = mended_letters(text)
        if meant:
            yield warns("letters-garbled", field=field, text=shown(text), meant=shown(meant))


def _says_more(field: str, text: str) -> bool:
    """A needed name of which nothing is left has a finding of its own."""
    return field in NEEDED and is_wholly_lost(text)
