"""Checks lines of entries: every line with all of its findings. Reads no database: what is on record is passed in."""

from collections.abc import Sequence
from dataclasses import replace

from ringside.entries.checking.doubles import doubles
from ringside.entries.checking.lines import Dates, check_class, check_line
from ringside.entries.checking.records import Known, KnownDog, entered_already
from ringside.entries.checking.wanted import CheckedLine, ShowFacts, Wanted

__all__ = [
    "CheckedLine",
    "Dates",
    "Known",
    "KnownDog",
    "ShowFacts",
    "Wanted",
    "check_class",
    "check_line",
    "compare",
]


def compare(lines: Sequence[CheckedLine], known: Known, classes_per_dog: int | None) -> list[CheckedLine]:
    """The lines with what follows from the other lines and from the dogs on record added to them."""
    twice = doubles(lines, classes_per_dog)
    return [_compared(line, known, classes_per_dog, twice.get(line.line, [])) for line in lines]


def _compared(line: CheckedLine, known: Known, classes_per_dog: int | None, twice: Sequence[object]) -> CheckedLine:
    dog, found = known.of(line.values)
    entered = list(entered_already(dog, line.values, classes_per_dog)) if dog else []
    return replace(line, findings=(*line.findings, *twice, *found, *entered), dog_id=dog.id if dog else None)
