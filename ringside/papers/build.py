"""From frozen critiques in the database to papers."""

import tomllib
from functools import cache
from pathlib import Path
from typing import Any

from django.utils import formats, translation

from ringside.drawings.outline import outline
from ringside.drawings.portrait import build_of
from ringside.papers.critique import CritiquePaper, MarkLine
from ringside.results.models import Critique
from ringside.ring.queries import breed_name
from ringside.shows.books import rules_of, standard_of
from scoring.critique.lexicon import load, pair
from scoring.standards.model import BreedStandard

# The federation's English writes the day before the month.
DATES = {"en": "en-gb"}


@cache
def labels() -> dict[str, dict[str, Any]]:
    return tomllib.loads(Path(__file__).with_name("labels.toml").read_text(encoding="utf-8"))


def paper_for(critique: Critique) -> CritiquePaper:
    """One critique in its own language. Names are as the dog's papers have them now, marks as they were signed."""
    words = labels()[critique.language]
    entry = critique.entry
    breed = entry.show_class.show_breed
    with translation.override(DATES.get(critique.language, critique.language)):
        return CritiquePaper(
            language=critique.language,
            show=", ".join(filter(None, (breed.show.name, breed.show.place))),
            day=formats.date_format(breed.day or breed.show.first_day, "DATE_FORMAT"),
            dog=entry.dog.name,
            about=_about(critique, words),
            judge=breed.judge.name if breed.judge else "",
            result=_result(critique),
            sentences=tuple(critique.sentences),
            remark=critique.paper.get("remark", ""),
            marks=tuple(mark_lines(critique, standard_of(breed))),
            signed=words["signed"].format(date=formats.date_format(critique.signed_at, "DATE_FORMAT")),
            fingerprint=critique.fingerprint,
            labels=words,
            drawing=outline(build_of(breed.breed)),
        )


def _about(critique: Critique, words: dict[str, Any]) -> tuple[str, ...]:
    entry, breed = critique.entry, critique.entry.show_class.show_breed
    class_name = rules_of(breed.show).class_rule(entry.show_class.code).name
    dog = entry.dog
    born = f"{words['born']} {formats.date_format(dog.born, 'DATE_FORMAT')}"
    first = f"{words['number']} {entry.number}, {breed_name(breed)}, {words['sex'][dog.sex]}, {born}"
    return first, ", ".join(filter(None, (words["class"].format(name=class_name), dog.studbook)))


def _result(critique: Critique) -> str:
    told = load(critique.language)
    grade, place = critique.paper.get("grade"), critique.paper.get("place")
    said = [told["grades"][grade]] if grade in told["grades"] else []
    if place:
        said.append(told["places"].get(str(place), told["places"]["further"].format(place)))
    result = ", ".join(said)
    return result[:1].upper() + result[1:]


def mark_lines(critique: Critique, standard: BreedStandard) -> list[MarkLine]:
    """The marks in the standard's order, each in the short words of the critique's language."""
    marks, praised = critique.paper["marks"], set(critique.paper["praise"])
    words = load(critique.language)
    sex = critique.paper["sex"]
    lines = []
    for point in standard.two_sided:
        if point.code in marks or point.code in praised:
            key = "praise" if point.code in praised and not marks.get(point.code) else str(marks.get(point.code, 0))
            said = pair(words, standard.code, point, key, sex)[0].rstrip(",")
            lines.append(MarkLine(point.code, said, marks.get(point.code, 0), point.code in praised))
    return lines
