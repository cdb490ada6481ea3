"""From frozen critiques in the database to papers."""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from babel import Locale
from django.urls import reverse
from django.utils import formats, translation
from django.utils.text import capfirst

from ringside.core.tables import by_language
from ringside.drawings.outline import outline
from ringside.drawings.portrait import build_of
from ringside.papers.critique import CritiquePaper, MarkLine
from ringside.papers.figures import figure_for
from ringside.results.models import Critique
from ringside.results.wording import result_in
from ringside.ring.queries import breed_said
from ringside.shows.books import class_name, rules_of, standard_of
from scoring.critique.lexicon import load, pair
from scoring.standards.model import BreedStandard

# So many digits of the fingerprint are printed and lead to the page that checks a paper: 2^64 are not guessed.
DIGITS = 16


def labels() -> Mapping[str, Any]:
    return by_language(Path(__file__).with_name("labels"))


def check_address(critique: Critique, site: str) -> str:
    """Where a paper of the critique can be checked; `site` is the address of the site's front page."""
    return site.rstrip("/") + reverse("home:check", args=[critique.fingerprint[:DIGITS]])


def paper_for(critique: Critique, check_url: str = "", *, with_photo: bool = False) -> CritiquePaper:
    """One critique in its own language. Names are as the dog's papers have them now, marks as they were signed.

    `check_url` is the address that tells whether the paper is the signed version. `with_photo` adds the measured photo
    of the day where there is one: only for whoever may see the dog's photos.
    """
    words = labels()[critique.language]
    entry = critique.entry
    breed, told = entry.show_class.show_breed, entry.show_class.appointed
    with translation.override(critique.language):
        return CritiquePaper(
            language=critique.language,
            show=breed.show.name_and_place,
            day=formats.date_format(told.day or breed.show.first_day, "DATE_FORMAT"),
            dog=entry.dog.name,
            about=_about(critique, words),
            judge=critique.signed_by.name if critique.signed_by else "",
            result=_result(critique),
            sentences=tuple(critique.sentences),
            whose=whose_words(critique),
            remark=critique.paper.get("remark", ""),
            marks=tuple(mark_lines(critique, standard_of(breed))),
            signed=words["signed"].format(date=formats.date_format(critique.signed_at, "DATE_FORMAT")),
            fingerprint=critique.fingerprint,
            labels=words,
            drawing=outline(build_of(breed.breed)),
            check_url=check_url,
            measured=figure_for(entry, critique.language) if with_photo else None,
        )


def _result(critique: Critique) -> str:
    told = critique.paper
    return result_in(critique.language, told["sex"], told.get("grade"), told.get("place"))


def _about(critique: Critique, words: dict[str, Any]) -> tuple[str, ...]:
    entry, breed = critique.entry, critique.entry.show_class.show_breed
    name = capfirst(class_name(rules_of(breed.show).class_rule(entry.show_class.code)))
    dog = entry.dog
    born = f"{words['born'][dog.sex]} {formats.date_format(dog.born, 'DATE_FORMAT')}"
    first = f"{words['number']} {entry.number}, {breed_said(breed)}, {words['sex'][dog.sex]}, {born}"
    return first, ", ".join(filter(None, (words["class"].format(name=name), dog.studbook)))


def whose_words(critique: Critique) -> str:
    """Plainly, whether the text is the judge's own or written from the marks, and where the judge's own text is."""
    words = labels()[critique.language]
    own = critique.paper.get("texts", {})
    if critique.language in own:
        return str(words["whose_own"])
    if own:
        languages = ", ".join(language_name(code, critique.language) for code in sorted(own))
        return str(words["whose_translated"].format(languages=languages))
    return str(words["whose_marks"])


def language_name(code: str, reader: str) -> str:
    """A language's name in the reader's: "German", "Deutsch". Source: the Unicode CLDR, as babel carries it."""
    return str(Locale.parse(code).get_language_name(reader))


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
