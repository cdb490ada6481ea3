"""One set of styles for every paper, on A4 and US Letter; black on white first."""

from reportlab.lib.colors import Color, HexColor
from reportlab.lib.enums import TA_LEFT
from reportlab.lib.pagesizes import A4, LETTER
from reportlab.lib.styles import ParagraphStyle
from reportlab.lib.units import mm

from ringside.papers.fonts import BOLD, TEXT, register

register()

SIZES = {"A4": A4, "letter": LETTER}
MARGIN = 18 * mm
INK: Color = HexColor("#1a1d1b")
QUIET: Color = HexColor("#4a4f4b")
HAIRLINE: Color = HexColor("#8d8a80")


def style(name: str, size: float, leading: float, font: str = TEXT, **more: object) -> ParagraphStyle:
    return ParagraphStyle(name, fontName=font, fontSize=size, leading=leading, textColor=INK, alignment=TA_LEFT, **more)


DOG = style("dog", 22, 26, BOLD, spaceAfter=2)
LINE = style("line", 10.5, 14)
SMALL = style("small", 8, 10.5)
HEAD = style("head", 10.5, 14, BOLD, spaceBefore=10, spaceAfter=3)
# 11 on 15 points, at most 70 characters a line of ordinary prose: MEASURE is how wide that is.
WORDS = style("words", 11, 15, spaceAfter=6)
OWN = style("own", 11, 15, leftIndent=10, spaceAfter=6)
RESULT = style("result", 13, 17, BOLD)
MEASURE = 70 * 11 * 0.4
