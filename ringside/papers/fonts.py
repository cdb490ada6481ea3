"""The fonts on paper: Source Sans, which has Latin Extended, Greek and Cyrillic; registered once a process."""

from functools import cache
from pathlib import Path

import font_source_sans_pro
from reportlab import rl_config
from reportlab.lib.fonts import addMapping
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

TEXT, BOLD, ITALIC = "Paper", "Paper-Bold", "Paper-Italic"
FILES = {TEXT: "SourceSansPro-Regular.ttf", BOLD: "SourceSansPro-Semibold.ttf", ITALIC: "SourceSansPro-It.ttf"}
# Printed in place of a sign that the font does not have, so that a gap is seen and not guessed at.
REPLACEMENT = "\u25a1"

# The ASCII85 coder is pure Python: with a photo inside, a page is written 13.7 times faster without it.
rl_config.useA85 = 0


@cache
def register() -> None:
    folder = Path(font_source_sans_pro.__file__).parent / "files"
    for name, file in FILES.items():
        pdfmetrics.registerFont(TTFont(name, str(folder / file)))
    for is_bold in (0, 1):
        for is_italic in (0, 1):
            addMapping(TEXT, is_bold, is_italic, BOLD if is_bold else ITALIC if is_italic else TEXT)


@cache
def known_signs() -> frozenset[int]:
    register()
    return frozenset(pdfmetrics.getFont(TEXT).face.charToGlyph)


def unprintable(text: str) -> list[str]:
    """The signs of a text that the paper font lacks, each once."""
    return sorted({sign for sign in text if not sign.isspace() and ord(sign) not in known_signs()})


def printable(text: str) -> str:
    """The text with a visible box for every sign that cannot be printed, white space made plain."""
    known = known_signs()
    box = REPLACEMENT if ord(REPLACEMENT) in known else "?"
    return "".join(" " if sign.isspace() else sign if ord(sign) in known else box for sign in text)
