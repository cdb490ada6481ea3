"""The ring page in other languages: every sentence, name and finding is there, with the same facts, and nothing more.

The grades and the page's class and award names are compared with the FCI's own words (Show Regulations, German, French
and Spanish editions), which stand here from memory.
"""

import json
import re
from pathlib import Path

import pytest
from django.utils import translation

from ringside.core.sentences import SENTENCES
from ringside.core.spoken import SAID
from ringside.ring import awards
from ringside.ring.advice import CODES
from ringside.ring.phrases import names_in
from ringside.shows.books import class_name
from scoring.critique.lexicon import LANGUAGES
from scoring.rules import loader as books
from scoring.standards.loader import all_standards, every_breed, vocabulary
from scoring.standards.translated import languages

PAGE = Path(__file__).resolve().parents[2] / "static" / "ring"
CALL = re.compile(r"(?<![\w.])t\(\s*(?=[^\s\"])")
FACT = re.compile(r"\{(\w+)\}")
EVERY_LANGUAGE = pytest.mark.parametrize("language", languages())


def module_texts() -> dict[str, str]:
    return {path.name: path.read_text(encoding="utf-8") for path in sorted(PAGE.glob("*.js"))}


def keys() -> set[str]:
    return {json.loads(found[1]) for text in module_texts().values() for found in SAID.finditer(text)}


def words_of(language: str) -> dict:
    return json.loads((PAGE / "words" / f"{language}.json").read_text(encoding="utf-8"))


def forms(said: str | dict[str, str]) -> list[str]:
    return [said] if isinstance(said, str) else list(said.values())


def test_every_language_of_the_critique_is_one_of_the_page_too():
    assert sorted(languages()) == sorted(set(LANGUAGES) - {"en"})


def test_every_sentence_is_written_out_where_it_is_said():
    calls = {
        name: [text[found.start() : found.start() + 60] for found in CALL.finditer(text)]
        for name, text in module_texts().items()
        if name != "say.js"
    }
    assert {name: found for name, found in calls.items() if found} == {}


@EVERY_LANGUAGE
def test_every_sentence_of_the_page_is_in_the_language_with_the_same_facts_and_none_is_left_over(language):
    said = words_of(language)["said"]
    assert sorted(keys() - set(said)) == []
    assert sorted(set(said) - keys()) == []
    for sentence, words in said.items():
        assert isinstance(words, dict) == ("|" in sentence), sentence
        for form in forms(words):
            assert form.strip(), sentence
            assert set(FACT.findall(form)) == set(FACT.findall(sentence)), sentence


@EVERY_LANGUAGE
def test_every_finding_the_tablet_may_get_is_in_the_language_with_the_same_facts(language):
    findings = words_of(language)["findings"]
    assert set(findings) == {*CODES, *awards.CODES}
    for code, sentence in findings.items():
        assert set(FACT.findall(sentence)) == set(FACT.findall(SENTENCES[code])), code
        assert sentence.count("[") == SENTENCES[code].count("["), code


def every_point():
    """Points with their options, of the vocabulary and of every shipped standard."""
    for code, point in vocabulary().items():
        options = point.get("options", [])
        yield code, point["section"], "low" in point, [] if isinstance(options, str) else options
    for standard in all_standards():
        for point in standard.points:
            yield point.code, point.section, point.low is not None, [one.code for one in point.options]
    for code, point in every_breed()["points"].items():
        yield code, vocabulary()[code]["section"], "low" in vocabulary()[code], list(point.get("options", ()))


@EVERY_LANGUAGE
def test_every_section_point_end_option_breed_and_variety_has_a_name(language):
    names = names_in(language)
    for code, section, has_ends, options in every_point():
        assert names["sections"][section]
        assert len(names["points"][code]) == (3 if has_ends else 1), code
        assert all(names["points"][code])
        assert set(options) <= set(names["options"].get(code, {})), code
    for standard in all_standards():
        assert names["breeds"][standard.name]
        assert all(names["breeds"][f"{standard.name}, {one.name}"] for one in standard.varieties)


def every_book():
    for code in books.codes():
        for overlay in (None, *books.overlay_codes(code)):
            yield books.load(code, overlays=(overlay,) if overlay else ())


@EVERY_LANGUAGE
def test_every_class_grade_and_award_of_every_book_has_a_name_and_no_two_of_a_book_the_same(language):
    names = names_in(language)
    used: dict[str, set[str]] = {"classes": set(), "grades": set(), "awards": set()}
    for book in every_book():
        for part, seen in used.items():
            codes = [one.code for one in getattr(book, part)]
            told = [names[part][code] for code in codes]
            assert all(told)
            assert len(set(told)) == len(told), (book.code, part)
            seen.update(codes)
    assert {part: set(names[part]) for part in used} == used


@EVERY_LANGUAGE
def test_a_class_is_called_the_same_on_the_tablet_and_on_every_page(language):
    names = names_in(language)["classes"]
    with translation.override(language):
        for book in every_book():
            for rule in book.classes:
                assert class_name(rule) == names[rule.code], (book.code, rule.code)


@pytest.mark.parametrize(
    ("language", "part", "said"),
    [
        ("de", "grades", {"excellent": "Vorzüglich", "very-good": "Sehr gut", "good": "Gut", "sufficient": "Genügend"}),
        ("fr", "grades", {"excellent": "Excellent", "very-good": "Très bon", "good": "Bon", "sufficient": "Suffisant"}),
        ("es", "grades", {"excellent": "Excelente", "very-good": "Muy bueno", "good": "Bueno"}),
        ("de", "classes", {"open": "Offene Klasse", "intermediate": "Zwischenklasse", "junior": "Jugendklasse"}),
        ("fr", "classes", {"open": "classe ouverte", "intermediate": "classe intermédiaire"}),
        ("es", "classes", {"open": "clase abierta", "intermediate": "clase intermedia", "champion": "clase campeones"}),
    ],
)  # fmt: skip
def test_the_federations_words_are_used(language, part, said):
    assert said.items() <= names_in(language)[part].items()
    assert names_in(language)["awards"]["cacib"] == "CACIB"


@EVERY_LANGUAGE
def test_the_names_of_a_language_are_there_for_everybody_and_of_no_other(language, client):
    assert client.get(f"/ring/words/{language}/").json() == names_in(language)
    assert client.get("/ring/words/xx/").status_code == 404
    assert client.get("/ring/words/en/").status_code == 404
