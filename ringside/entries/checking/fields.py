"""Each field of a line, read into the value that would be kept, with what stands against it."""

import re
from collections.abc import Mapping, Sequence
from datetime import date
from difflib import get_close_matches

from django.core.exceptions import ValidationError
from django.core.validators import validate_email

from ringside.entries.checking.texts import shown
from ringside.entries.checking.wanted import ShowFacts
from ringside.entries.reading.cells import is_wholly_lost
from ringside.entries.reading.dates import STYLES, could_be_either, read_date
from ringside.entries.reading.words import meaning_of, plain
from scoring.chip import check_chip, chip_number
from scoring.findings import Finding, notes, refuses, warns
from scoring.rules.rulebook import RuleBook
from scoring.standards.loader import load as load_standard
from scoring.standards.names import by_name, suggest

Findings = Sequence[Finding]
SEVERAL = re.compile(r"[,;/|&+\n]|\band\b|\bund\b|\bet\b|\by\b")
NONE_HELD = frozenset({"", "none", "no", "nein", "keine", "keiner", "non", "aucun", "ninguno", "0"})


def read_name(text: str) -> tuple[str, Findings]:
    if not text:
        return "", [refuses("name-missing", field="name")]
    if is_wholly_lost(text):
        return text, [refuses("name-lost", field="name", text=shown(text))]
    return text, []


def read_owner(text: str) -> tuple[str, Findings]:
    if not text:
        return "", [refuses("owner-missing", field="owner")]
    if is_wholly_lost(text):
        return text, [refuses("owner-lost", field="owner", text=shown(text))]
    return text, []


def read_breed(text: str, variety: str) -> tuple[str, str, Findings]:
    """The breed's code and the variety's."""
    if not text:
        return "", "", [refuses("breed-missing", field="breed")]
    standard = by_name(text)
    if standard is not None:
        code, found = read_variety(standard.code, variety)
        return standard.code, code, found
    close = suggest(text)
    if close:
        return "", "", [refuses("breed-unknown", field="breed", text=shown(text), suggestion=close.name)]
    return "", "", [refuses("breed-not-here", field="breed", text=shown(text))]


def read_variety(breed: str, text: str) -> tuple[str, Findings]:
    standard = load_standard(breed)
    known = {plain(word): variety.code for variety in standard.varieties for word in (variety.code, variety.name)}
    names = [variety.name for variety in standard.varieties]
    if not text and not names:
        return "", []
    if not text:
        return "", [notes("variety-missing", field="variety", breed=standard.name, known=names)]
    if not names:
        return "", [notes("variety-not-used", field="variety", breed=standard.name, text=shown(text))]
    if plain(text) in known:
        return known[plain(text)], []
    return "", [refuses("variety-unknown", field="variety", breed=standard.name, text=shown(text), known=names)]


def read_sex(text: str) -> tuple[str, Findings]:
    sex = meaning_of("sexes", text)
    if sex:
        return sex, []
    return "", [refuses("sex-unknown", field="sex", text=shown(text))] if text else [
        refuses("sex-missing", field="sex")
    ]


def read_born(text: str, facts: ShowFacts, style: str, doubtful: bool) -> tuple[date | None, Findings]:
    if not text:
        return None, [refuses("born-missing", field="born")]
    born = read_date(text, style, facts.last_day.year)
    if born is None:
        return None, [refuses("date-unreadable", field="born", text=shown(text), style=STYLES[style][0])]
    if facts.today < born <= facts.first_day:
        return born, [refuses("born-in-future", field="born", born=born.isoformat())]
    if doubtful and could_be_either(text):
        return born, [warns("date-could-be-either", field="born", text=shown(text), born=born.isoformat())]
    return born, []


def read_chip(text: str) -> tuple[str, Findings]:
    if not text:
        return "", [warns("chip-missing", field="chip")]
    chip = chip_number(text)
    found = [
        Finding(one.code, one.severity, {**one.facts, "chip": shown(chip), "field": "chip"}) for one in check_chip(chip)
    ]
    return chip, found


def read_email(text: str) -> tuple[str, Findings]:
    if not text:
        return "", [notes("email-missing", field="email")]
    try:
        validate_email(text)
    except ValidationError:
        return "", [refuses("email-invalid", field="email", text=shown(text))]
    return text, []


def read_class(text: str, book: RuleBook) -> tuple[str, Findings]:
    if not text:
        return "", [refuses("class-missing", field="class")]
    names = _class_names(book)
    code = names.get(plain(text)) or names.get(_without_class(text)) or meaning_of("classes", text)
    if code in names.values():
        return str(code), []
    offered = {"field": "class", "text": shown(text), "known_classes": list(book.class_order)}
    close = get_close_matches(plain(text), list(names), n=1, cutoff=0.72)
    if code or not close:
        return "", [refuses("class-not-offered", **offered)]
    return "", [refuses("class-unknown", suggestion=names[close[0]].replace("-", " "), **offered)]


def _class_names(book: RuleBook) -> dict[str, str]:
    return {plain(word): rule.code for rule in book.classes for word in (rule.code, rule.name)}


def _without_class(text: str) -> str:
    return re.sub(r"^(class|classe|clase)\s|\s(class|klasse)$", "", plain(text))


def read_titles(text: str, book: RuleBook) -> tuple[tuple[str, ...], Findings]:
    names = {plain(word): title.code for title in book.titles for word in (title.code, title.name)}
    codes, unknown = _several(text, names, "titles")
    found = [warns("title-unknown", field="titles", text=shown(", ".join(unknown)))] if unknown else []
    return codes, found


def read_certificates(text: str, book: RuleBook) -> tuple[tuple[str, ...], Findings]:
    names = {plain(word): paper.code for paper in book.documents for word in (paper.code, paper.name)}
    codes, unknown = _several(text, names, "certificates")
    found = [warns("certificate-unknown", field="certificates", text=shown(", ".join(unknown)))] if unknown else []
    return codes, found


def _several(text: str, names: Mapping[str, str], section: str) -> tuple[tuple[str, ...], list[str]]:
    """The codes that a list of words names, each once, and the words that name none."""
    parts = [part.strip() for part in ([text] if plain(text) in names else SEVERAL.split(text))]
    held = [part for part in parts if plain(part) not in NONE_HELD]
    codes = {part: names.get(plain(part)) or meaning_of(section, part) for part in held}
    return tuple(dict.fromkeys(code for code in codes.values() if code)), [part for part in held if not codes[part]]


def read_neutered(text: str) -> tuple[bool, Findings]:
    answer = meaning_of("answers", text) if text else "no"
    found = [] if answer else [refuses("neutered-unreadable", field="neutered", text=shown(text))]
    return answer == "yes", found
