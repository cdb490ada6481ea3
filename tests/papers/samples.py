"""Invented critiques and results for the tests of papers."""

from pathlib import Path
from typing import Any

from ringside.core.tables import by_language
from ringside.drawings.outline import outline
from ringside.papers.critique import CritiquePaper, MarkLine
from ringside.papers.results import ResultLine, ResultsPaper

LABELS = by_language(Path(__file__).resolve().parents[2] / "ringside" / "papers" / "labels")
WORDS = (
    "Bitch of very good type and size, clearly feminine, with good substance for her age.",
    "Beautiful head with parallel planes, a well-marked stop and a strong muzzle; dark eyes, scissor bite.",
    "Good length of neck.",
    "Firm topline, the croup a touch steep with the tail set a little low.",
    "The chest should be deeper and the forechest more developed.",
    "Shoulder somewhat upright and upper arm short, so that the reach falls short of what the rear would give.",
    "Sound coming and going.",
    "Coat of correct texture and rich colour.",
    "Friendly and confident with people and with the dogs beside her in the ring.",
    "An easy mover who keeps her outline on the move, shown in fine condition and without any fuss.",
)
MARKS = (
    ("substance", "too light in bone", -1), ("condition", "slightly lean", -1), ("skull", "broad skull", 1),
    ("stop", "shallow stop", -1), ("muzzle-length", "good length of muzzle", 0), ("ear-set", "ears set high", 2),
    ("neck", "long neck", 1), ("withers", "withers too prominent", 1), ("topline", "firm topline", 0),
    ("loin", "loin too long", 2), ("croup", "croup steep", 2), ("chest-depth", "chest lacks depth", -1),
    ("forechest", "forechest lacking", -2), ("ribs", "flat ribs", -1), ("underline", "too tucked up", 1),
    ("tail-set", "tail set low", -1), ("tail-carriage", "tail too gay", 3), ("shoulder", "upright shoulder", -2),
    ("front-angulation", "front too straight", -2), ("upper-arm", "short upper arm", -3),
    ("pasterns", "sloping pasterns", 1), ("rear-angulation", "over-angulated rear", 1), ("hocks", "cow-hocked", 1),
    ("reach", "short reach", -1), ("drive", "good drive", 0),
)  # fmt: skip


def critique(marks: int = 25, **changes: Any) -> CritiquePaper:
    facts: dict[str, Any] = {
        "language": "en",
        "show": "Summer Show of the Valley Clubs, Lindenau",
        "day": "14 June 2026",
        "dog": "Aurora vom Stillen Grund",
        "about": ("No. 214, Hovawart, bitch, born 3 March 2024", "Open class, LN 24/01234"),
        "judge": "Marit Eikeland",
        "result": "Excellent, second place",
        "sentences": WORDS,
        "remark": "",
        "marks": tuple(MarkLine(point, words, mark, mark == 0) for point, words, mark in MARKS[:marks]),
        "signed": "Signed on 14 June 2026",
        "fingerprint": "0123456789abcdef" * 4,
        "drawing": outline(),
    }
    facts.update(changes)
    return CritiquePaper(**{"labels": LABELS[facts["language"]], **facts})


def results(count: int = 4, **changes: Any) -> ResultsPaper:
    facts: dict[str, Any] = {
        "show": "Summer Show of the Valley Clubs",
        "day": "14 June 2026",
        "title": "Hovawart, open class, bitches",
        "judge": "Judge: Marit Eikeland",
        "columns": ("Place", "No.", "Dog", "Grade"),
        "lines": [ResultLine(str(n), str(200 + n), f"Dog number {n}", "Excellent", "") for n in range(1, count + 1)],
        "pages": "Page {n} of {m}",
    }
    facts.update(changes)
    return ResultsPaper(**facts)
