"""What an English-speaking judge would check before signing. Common practice of ring critiques, no source.

- The animal is "dog" or "bitch", never "male", "female" or "animal".
- British spelling; a compound is hyphened before its noun ("well-laid croup") and open after it ("well muscled").
- Short adjectives compare with -er, long ones with "more"; a noun in the plural takes no "a".
- Degrees: slightly, plain, much too (badly, severely, far); never two degrees in one phrase.
- Present tense; the gait is told by a verb, the rest by noun phrases; the last two of a list are joined by "and".
- One tooth "is" missing in the singular, several in the plural.
"""

import re

import pytest

from tests.critique.sheets import EVERYTHING
from tests.critique.writing import everything_said, full, short, write


def test_the_animal_is_a_dog_or_a_bitch():
    assert write("en", marks={"substance": 0}) == "Dog of exactly the right substance."
    assert write("en", sex="bitch", marks={"substance": 0}) == "Bitch of exactly the right substance."
    assert not [text for text in everything_said("en") if re.search(r"\b(fe)?male\b|\banimal\b", text)]


def test_sex_type_is_named_for_each_sex():
    assert short("en", "sex-type", "clear") == "masculine dog"
    assert short("en", "sex-type", "clear", "bitch") == "feminine bitch"
    assert (short("en", "sex-type", "reversed"), short("en", "sex-type", "reversed", "bitch")) == (
        "bitchy dog",
        "doggy bitch",
    )


def test_spelling_is_british():
    assert not [text for text in everything_said("en") if re.search(r"\bcolor|\bgray\b|muscled?r|favor", text)]


def test_a_compound_is_hyphened_before_its_noun_and_open_after_it():
    assert short("en", "croup", 0) == "well-laid croup"
    assert short("en", "muscle", 0) == "well muscled"


def test_short_adjectives_compare_with_er_and_long_ones_with_more():
    assert full("en", "croup", 1) == "croup slightly steeper than the standard asks"
    assert full("en", "withers", 1).startswith("withers slightly more prominent than")
    assert not [text for text in everything_said("en") if re.search(r"more (short|long|steep|flat|broad|deep)\b", text)]


@pytest.mark.parametrize("mark", [-3, -2, -1, 1, 2, 3])
def test_a_phrase_has_one_degree(mark):
    degrees = r"slight|rather|clear|much too|severe|bad|gross|\bfar\b"
    for point in EVERYTHING.two_sided:
        for text in (short("en", point.code, mark), full("en", point.code, mark)):
            assert len(re.findall(degrees, text)) <= 1, text


def test_the_three_degrees_of_a_steep_croup():
    assert [short("en", "croup", mark) for mark in (1, 2, 3)] == [
        "slightly steep croup",
        "steep croup",
        "croup much too steep",
    ]


def test_the_text_is_in_the_present_tense():
    assert not [text for text in everything_said("en") if re.search(r"\b(was|were|had|will|moved|showed)\b", text)]


def test_the_gait_has_a_verb_and_a_list_ends_with_and():
    text = write("en", marks={"substance": 0, "skull": 0, "stop": 0, "reach": 0, "drive": -1})
    assert re.search(r"Moves with .* and .*\.$", text)


def test_one_tooth_is_singular_and_several_are_plural():
    assert "105 (P1 upper right) missing" in write("en", teeth_missing=[105])
    assert write("en", teeth_missing=[105]).startswith("Dog with tooth ")
    assert write("en", teeth_missing=[205, 105]).startswith("Dog with teeth 105 ")


def test_grade_place_and_reason_end_the_text():
    assert write("en", grade="excellent", place=1) == "Excellent, placed first."
    assert write("en", grade="disqualified", reason="bites") == "Disqualified: bites."
