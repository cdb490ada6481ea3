"""The words of exports: which heading, sex, class, title or month a word stands for."""

import re
import tomllib
from collections.abc import Mapping, Sequence
from functools import cache
from pathlib import Path
from unicodedata import combining, normalize

from django.utils.translation import gettext_noop as _

WORDS = Path(__file__).with_name("words.toml")

# The fields of an entry, in the order of an entry form, with the words a page uses.
FIELDS: Mapping[str, str] = {
    "name": _("registered name"),
    "call_name": _("call name"),
    "breed": _("breed"),
    "variety": _("variety"),
    "sex": _("sex"),
    "born": _("date of birth"),
    "studbook": _("studbook number"),
    "chip": _("microchip"),
    "sire": _("sire"),
    "dam": _("dam"),
    "breeder": _("breeder"),
    "owner": _("owner"),
    "email": _("owner's e-mail"),
    "handler": _("handler"),
    "class": _("class"),
    "titles": _("titles"),
    "certificates": _("certificates"),
    "neutered": _("neutered"),
}
NEEDED = ("name", "breed", "sex", "born", "owner", "class")


def plain(text: str) -> str:
    """Small letters and digits without accents, one space between words: "E-Mail:" is "e mail"."""
    letters = (sign for sign in normalize("NFKD", text.casefold()) if not combining(sign))
    return " ".join(re.findall(r"[^\W_]+", "".join(letters)))


@cache
def _meanings(section: str) -> Mapping[str, str]:
    with WORDS.open("rb") as file:
        table: Mapping[str, Sequence[str]] = tomllib.load(file)[section]
    return {plain(word): meaning for meaning, words in table.items() for word in words}


def field_of(heading: str) -> str | None:
    """The field a column's heading stands for."""
    known = _meanings("headings")
    return known.get(plain(heading)) or known.get(plain(re.sub(r"\(.*?\)|\[.*?\]", " ", heading)))


def meaning_of(section: str, text: str) -> str | None:
    """What a word means in a section of words.toml: sexes, answers, classes, titles, certificates or months."""
    return _meanings(section).get(plain(text))


def columns_of(headings: Sequence[str]) -> dict[str, int]:
    """Which column holds which field, by its heading; the first of two columns for one field counts."""
    found: dict[str, int] = {}
    for index, heading in enumerate(headings):
        field = field_of(heading)
        if field and field not in found:
            found[field] = index
    return found
