"""The fonts on paper: Source Sans, which has Latin Extended, Greek and Cyrillic; registered once a process."""

import re
import unicodedata
from functools import cache
from pathlib import Path

import font_source_sans_pro
from reportlab import rl_config
from reportlab.lib.fonts import addMapping
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

# No italic: the font's italics have neither Greek nor Cyrillic, and a judge's words must not lose their letters.
TEXT, BOLD = "Paper", "Paper-Bold"
FILES = {TEXT: "SourceSansPro-Regular.ttf", BOLD: "SourceSansPro-Semibold.ttf"}
# Printed in place of a sign that the font does not have, so that a gap is seen and not guessed at.
REPLACEMENT = "\u25ca"
KEPT_SPACE = re.compile(r" (?=[:;!?»])|(?<=«) ")
UNSEEN = frozenset({"Cc", "Cf", "Cs"})

# The ASCII85 coder is pure Python: with a photo inside, a page is written 13.7 times faster without it.
rl_config.useA85 = 0


@cache
def register() -> None:
    folder = Path(font_source_sans_pro.__file__).parent / "files"
    for name, file in FILES.items():
        pdfmetrics.registerFont(TTFont(name, str(folder / file)))
    for is_bold in (0, 1):
        for is_italic in (0, 1):
            addMapping(TEXT, is_bold, is_italic, BOLD if is_bold else TEXT)


@cache
def known_signs() -> frozenset[int]:
    register()
    return frozenset(pdfmetrics.getFont(TEXT).face.charToGlyph)


def unprintable(text: str) -> list[str]:
    """The signs of a text that the paper font lacks, each once: whoever prints should know before."""
    known = known_signs()
    return sorted({sign for sign in plain(text) if not sign.isspace() and ord(sign) not in known})


def printable(text: str) -> str:
    """The text with a visible lozenge for every sign that cannot be printed, white space made plain.

    A space before a French colon, or inside French quotes, does not break: no line begins with the sign.
    """
    known = known_signs()
    shown = "".join(" " if sign.isspace() else sign if ord(sign) in known else REPLACEMENT for sign in plain(text))
    return KEPT_SPACE.sub("\u00a0", shown)


def plain(text: str) -> str:
    """Accents joined to their letters; without what only steers a screen: controls, marks of direction, half signs."""
    joined = unicodedata.normalize("NFC", text)
    return "".join(sign for sign in joined if sign.isspace() or unicodedata.category(sign) not in UNSEEN)
