"""Finds a standard by the name people write: exactly, or the closest by spelling."""

from difflib import get_close_matches
from functools import lru_cache
from unicodedata import combining, normalize

from scoring.standards.loader import all_standards, load
from scoring.standards.model import BreedStandard

# Two spellings of one letter: both are brought to the plain letter.
SPELT_OUT = (("ae", "a"), ("oe", "o"), ("ue", "u"))
CLOSE_ENOUGH = 0.72


def by_name(text: str) -> BreedStandard | None:
    """The standard of that name, native name or abbreviation, whatever its case, spaces, hyphens and umlauts."""
    code = _names().get(plain(text))
    return load(code) if code else None


def suggest(text: str) -> BreedStandard | None:
    """The standard whose name is closest in spelling, or None where nothing is close: a question, not an answer."""
    close = get_close_matches(plain(text), list(_names()), n=1, cutoff=CLOSE_ENOUGH)
    return load(_names()[close[0]]) if close else None


def plain(text: str) -> str:
    """Letters and digits only, without accents: "Deutscher Schäferhund" is "deutscherschaferhund"."""
    letters = (sign for sign in normalize("NFKD", text.casefold()) if not combining(sign) and sign.isalnum())
    word = "".join(letters)
    for spelt, letter in SPELT_OUT:
        word = word.replace(spelt, letter)
    return word


@lru_cache(maxsize=1)
def _names() -> dict[str, str]:
    return {
        plain(name): standard.code
        for standard in all_standards()
        for name in (standard.code, standard.name, *standard.also)
    }
