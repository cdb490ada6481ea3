"""Which encoding a text file is in: told by its first bytes, by being valid UTF-8, or by how its words would look."""

import codecs
import re
from unicodedata import normalize

from django.utils.translation import gettext_noop as _

from ringside.entries.reading.problem import NotReadable

# Code: what a page calls it. The one-byte ones stand in the order in which a tie is decided.
ENCODINGS: dict[str, str] = {
    "utf-8": "UTF-8",
    "utf-16-le": _("UTF-16, little end first"),
    "utf-16-be": _("UTF-16, big end first"),
    "cp1252": _("Western European (Windows-1252)"),
    "cp1250": _("Central European (Windows-1250)"),
    "cp1257": _("Baltic (Windows-1257)"),
    "cp1251": _("Cyrillic (Windows-1251)"),
    "cp1253": _("Greek (Windows-1253)"),
    "mac_roman": _("Western European (old Macintosh)"),
    "cp850": _("Western European (DOS)"),
    "cp852": _("Central European (DOS)"),
}
ONE_BYTE = tuple(code for code in ENCODINGS if not code.startswith("utf"))
MARKS = ((codecs.BOM_UTF8, "utf-8"), (codecs.BOM_UTF16_LE, "utf-16-le"), (codecs.BOM_UTF16_BE, "utf-16-be"))
VOWELS = frozenset("aeiouyøæœıаеёиоуыэюяіїєαεηιουω")
RARE_INSIDE = frozenset("ìùÌÙ")
QUOTES = frozenset("’‘")
WORD_WITH_HIGH = re.compile(r"[^\W\d_]*[^\x00-\x7f\s][^\s\x00-\x40]*")
SAMPLE = 200_000


def decode(content: bytes, encoding: str = "") -> tuple[str, str]:
    """The text and its encoding. Raises NotReadable for bytes that are no text, or not in the encoding asked for."""
    for mark, code in MARKS:
        if content.startswith(mark) and encoding in ("", code):
            return _decoded(content[len(mark) :], code), code
    chosen = encoding or _without_mark(content)
    return _decoded(content, chosen), chosen


def _decoded(content: bytes, encoding: str) -> str:
    try:
        text = content.decode(encoding)
    except UnicodeDecodeError as error:
        raise NotReadable("not-in-this-encoding", encoding=ENCODINGS[encoding], at=error.start) from None
    if "\x00" in text:
        raise NotReadable("zero-bytes-in-file")
    return text


def _without_mark(content: bytes) -> str:
    if b"\x00" in content:
        return _wide(content)
    try:
        content.decode("utf-8")
    except UnicodeDecodeError:
        return min(ONE_BYTE, key=lambda code: (oddness(content[:SAMPLE], code), ONE_BYTE.index(code)))
    return "utf-8"


def _wide(content: bytes) -> str:
    """UTF-16 without its mark: in mostly Latin text one byte of each pair is zero."""
    even, odd = content[::2].count(0), content[1::2].count(0)
    if max(even, odd) * 4 < len(content) // 2 or len(content) % 2:
        raise NotReadable("zero-bytes-in-file")
    return "utf-16-be" if even > odd else "utf-16-le"


def oddness(content: bytes, encoding: str) -> float:
    """How unlike words the text would look in a one-byte encoding: 0 is best.

    Signs that are no letters inside words, capitals after small letters, two alphabets in one word, and vowels and
    consonants heaped together speak against an encoding. Ours, no source; the page shows the guess for correction.
    """
    try:
        text = content.decode(encoding)
    except UnicodeDecodeError:
        return float("inf")
    return sum(_oddness(word) for word in set(WORD_WITH_HIGH.findall(text)))


def _oddness(word: str) -> float:
    alphabets = {_alphabet(sign) for sign in word if sign.isalpha()}
    total = 3.0 * (len(alphabets) - 1 if alphabets else 1)
    for at, sign in enumerate(word):
        if not sign.isascii():
            total += _odd_here(word[at - 1 : at] if at else "", sign, word[at + 1 : at + 2])
    return total


def _odd_here(before: str, sign: str, after: str) -> float:
    if sign in QUOTES:
        return 0
    if not sign.isalpha():
        return 3
    neighbours = [_is_vowel(letter) for letter in (before, after) if letter.isalpha()]
    alike = bool(neighbours) and all(vowel == _is_vowel(sign) for vowel in neighbours)
    capital_inside = before.islower() and sign.isupper()
    return alike + 2 * capital_inside + (sign in RARE_INSIDE and after.isalpha())


def _is_vowel(letter: str) -> bool:
    return normalize("NFKD", letter.casefold())[:1] in VOWELS


def _alphabet(letter: str) -> str:
    if "\u0370" <= letter <= "\u03ff" and letter not in "µ":
        return "Greek"
    return "Cyrillic" if "\u0400" <= letter <= "\u04ff" else "Latin"
