"""Every language says everything the site says: no message missing, none left over, every fact of it kept."""

import re
from collections import Counter
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from django.conf import settings
from django.utils import formats, translation
from django.utils.formats import date_format

from ringside.core import tongues
from ringside.core.sentences import IF_KNOWN, SENTENCES, apart, sentence
from ringside.core.tables import by_language
from ringside.papers.build import language_name
from scoring.critique.lexicon import LANGUAGES

BASE = Path(settings.BASE)
FACT = re.compile(r"%\(\w+\)s|\{\w*\}|</?\w+")
TRANSLATED = tongues.translated()


@pytest.fixture(scope="module")
def wanted():
    return tongues.messages()


@pytest.mark.parametrize("language", TRANSLATED)
def test_no_message_is_missing_left_over_or_doubtful(language, wanted):
    catalog = tongues.catalog_of(language)
    known, said = ({(one.context, one.id) for one in found if one.id} for found in (catalog, wanted))
    assert said - known == set(), "run `manage.py tongues` and write what is new"
    assert known - said == set(), "run `manage.py tongues`: nothing says these any more"
    assert tongues.lacking_in(catalog) == []
    assert not catalog.obsolete


@pytest.mark.parametrize("language", TRANSLATED)
def test_a_translation_keeps_every_fact_and_every_tag(language):
    for one in tongues.catalog_of(language):
        if not one.id:
            continue
        plural = isinstance(one.id, tuple)
        english, told = (one.id[-1], one.string[-1]) if plural else (one.id, one.string)
        assert Counter(FACT.findall(told)) == Counter(FACT.findall(english)), english


@pytest.mark.parametrize("language", TRANSLATED)
def test_what_a_sentence_leaves_out_where_a_fact_is_not_known_is_the_same(language):
    with translation.override(language):
        for english in SENTENCES.values():
            told = translation.gettext(english)
            parts = [sorted(sorted(FACT.findall(part)) for part in IF_KNOWN.findall(text)) for text in (english, told)]
            assert parts[0] == parts[1], english


@pytest.mark.parametrize("language", TRANSLATED)
def test_a_message_ends_as_the_english_one_does(language):
    """A sentence stays a sentence, a label a label; no doubled or outer spaces."""
    for one in tongues.catalog_of(language):
        if not one.id or isinstance(one.id, tuple):
            continue
        # A colon and the like alone have their French space before them.
        assert one.string == one.string.strip(" \n")
        assert "  " not in one.string
        assert one.string.endswith(".") == one.id.endswith("."), one.id


def shape(words: Any) -> Any:
    """What two languages' tables have in common: keys within keys, how long each list is, the facts in each text."""
    if isinstance(words, dict):
        return {key: shape(value) for key, value in words.items()}
    return [shape(one) for one in words] if isinstance(words, list) else sorted(FACT.findall(words))


def test_a_language_of_the_site_has_all_its_files():
    codes = {code for code, _ in settings.LANGUAGES}
    assert codes == set(LANGUAGES) == {"en", *TRANSLATED}
    for room in ("results/letter_words", "entries/letter_words", "papers/labels", "papers/measured_words"):
        told = by_language(BASE / "ringside" / room)
        assert set(told) == codes
        for code, words in told.items():
            assert shape(words) == shape(told["en"]), f"{room}/{code}.toml"
    assert {path.parent.name for path in BASE.glob("ringside/formats/*/formats.py")} == codes


# The words of the federation's show regulations in its languages (class of 15 to 24 months, best grade). Common
# practice of the national federations' schedules; from memory.
TRADE = {
    "fr": ("classe intermédiaire", "classe ouverte", "Excellent", "femelles"),
    "de": ("Zwischenklasse", "Offene Klasse", "Vorzüglich", "Hündinnen"),
    "es": ("clase intermedia", "clase abierta", "Excelente", "hembras"),
}


@pytest.mark.parametrize("language", TRANSLATED)
def test_the_trades_own_words_are_used(language):
    with translation.override(language):
        told = (
            translation.pgettext("class", "intermediate"),
            translation.pgettext("class", "open"),
            translation.gettext("Excellent"),
            translation.gettext("bitches"),
        )
    assert told == TRADE[language]


@pytest.mark.parametrize("language", [code for code, _ in settings.LANGUAGES])
@pytest.mark.parametrize("pattern", ["MONTH_DAY_FORMAT"])
def test_no_two_months_are_written_alike(pattern, language):
    with translation.override(language):
        told = {date_format(date(2026, month, 13), pattern).split(" ", 1)[1] for month in range(1, 13)}
    assert len(told) == 12


# Source: Unicode CLDR 44, abbreviated months (fr "juin", "juil."; es "jun"); abbreviated weekdays as Django has them.
@pytest.mark.parametrize(
    ("language", "june"), [("en", "Sat 13 Jun"), ("fr", "sam 13 juin"), ("de", "Sa 13. Jun"), ("es", "sáb 13 jun")]
)
def test_a_day_of_a_show_is_short_as_in_the_language(language, june):
    with translation.override(language):
        assert date_format(date(2026, 6, 13), "MONTH_DAY_FORMAT") == june


@pytest.mark.parametrize(
    ("language", "day", "number"),
    # Source: Unicode CLDR 44, long date and decimal sign of each language (de "d. MMMM y", es "d 'de' MMMM 'de' y").
    [
        ("en", "13 June 2026", "1.5"),
        ("fr", "13 juin 2026", "1,5"),
        ("de", "13. Juni 2026", "1,5"),
        ("es", "13 de junio de 2026", "1,5"),
    ],
)
def test_days_and_numbers_are_written_as_in_the_language(language, day, number):
    finding = {"code": "born-differs-from-record", "facts": {"born": "2026-06-13"}}
    with translation.override(language):
        assert day in sentence(finding)
        assert formats.localize(1.5) == number


@pytest.mark.parametrize(
    ("language", "told"),
    # A French semicolon has a narrow space before it: common practice of its typography.
    [("en", "a, b; c; d"), ("fr", "a, b\u202f; c\u202f; d"), ("de", "a, b; c; d"), ("es", "a, b; c; d")],
)
def test_parts_of_a_list_stand_apart_as_in_the_language(language, told):
    with translation.override(language):
        assert apart(["a, b", "c", "d"]) == told
        assert (apart([]), apart(["{a}"])) == ("", "{a}")


@pytest.mark.parametrize("reader", [code for code, _ in settings.LANGUAGES])
def test_a_paper_names_the_judges_languages_in_its_own(reader):
    # Source: Unicode CLDR 44, names of languages.
    german = {"en": "German", "fr": "allemand", "de": "Deutsch", "es": "alemán"}
    assert language_name("de", reader) == german[reader]
    assert all(language_name(code, reader) != code for code in german)
