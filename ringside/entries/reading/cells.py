"""One cell: taken as text, its surroundings removed, and what can be wrong with any text."""

import re
from unicodedata import category, normalize

# A text may begin with apostrophes of its own before such a sign: it is guarded by one more.
GUARDED = re.compile(r"'(?='*[=+\-@\t\r])")
NEEDS_GUARD = re.compile(r"'*[=+\-@\t\r]")
FORMULA = ("=", "+", "-", "@", "\t", "\r")
BLANKS = frozenset({"-", "–", "—", "/", "n/a", "N/A", "n.a."})
JOINERS = frozenset("\u200c\u200d")
LOST = re.compile(r"\ufffd|\?{2,}|\?+(?=\w)|\?(?=\s+\w)")
ERRORS = re.compile(r"#(N/A|REF!|VALUE!|NAME\?|DIV/0!|NUM!|NULL!)")


def clean(text: str) -> str:
    """The cell as it should be kept: composed letters, single spaces, no invisible signs, blank where it says "-".

    The guard that an export puts before a formula's first sign is taken off; a leading tab stays, for it is a finding,
    and a leading carriage return, which a workbook would give back as another sign, becomes one.
    """
    text = text[1:] if GUARDED.match(text) else text
    if text.startswith(("\t", "\r")):
        return "\t" + _tidy(text)
    tidy = _tidy(text)
    return "" if tidy in BLANKS else tidy


def _tidy(text: str) -> str:
    kept = (sign for sign in normalize("NFC", text) if sign in JOINERS or category(sign) != "Cf")
    return " ".join("".join(" " if category(sign) == "Cc" else sign for sign in kept).split())


def is_formula(text: str) -> bool:
    """Whether a spreadsheet would run this text: OWASP's list of first signs for CSV injection."""
    return text.startswith(FORMULA)


def guarded(text: str) -> str:
    """The text as an export writes it, so that no spreadsheet runs it; reading takes the guard off again."""
    return f"'{text}" if NEEDS_GUARD.match(text) else text


def is_error(text: str) -> bool:
    return ERRORS.fullmatch(text) is not None


def has_lost_letters(text: str) -> bool:
    """Whether letters were replaced before the file came here: "V?ra", "?eleny", or the replacement sign."""
    return LOST.search(text) is not None


def is_wholly_lost(text: str) -> bool:
    """Whether nothing readable is left: "?????? ???????"."""
    return has_lost_letters(text) and not any(sign.isalnum() for sign in text)


def mended_letters(text: str) -> str | None:
    """What a doubly encoded text was meant to be: "VÄ›ra" is "Věra"; None where it is not garbled."""
    if text.isascii():
        return None
    try:
        meant = text.encode("cp1252").decode("utf-8")
    except UnicodeError:
        return None
    return meant if meant != text else None
