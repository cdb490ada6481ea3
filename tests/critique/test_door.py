"""The door `critique`: what it says of hand-made sheets, and how it refuses what it cannot read."""

import io
import json

import pytest

from scoring.__main__ import main
from scoring.bad_input import BadInput
from scoring.critique.doors import critique
from scoring.critique.lexicon import MissingWord, load
from tests.critique.cases import SHEETS, composed

WAYS = "ways-of-moving"
GOOD = {"standard": "boxer", "language": "en", "sex": "dog", "marks": {"croup": 1}}


def told(**said):
    return critique({**GOOD, **said})


def through_the_command_line(sheet):
    answer = io.StringIO()
    return main(["critique"], io.StringIO(json.dumps(sheet)), answer), json.loads(answer.getvalue())


def test_a_sheet_becomes_sentences_and_their_text():
    code, found = through_the_command_line({**GOOD, "grade": "excellent", "place": 1})
    assert code == 0
    assert found["sentences"] == ["Dog with croup slightly steeper than the standard asks.", "Excellent, placed first."]
    assert found["text"] == " ".join(found["sentences"])


def test_an_undershot_bite_is_a_virtue_in_the_boxer_and_disqualifies_the_rottweiler():
    assert "undershot as a Boxer's should be" in told(choices={"bite": "undershot"})["text"]
    rottweiler = told(standard="rottweiler", choices={"bite": "undershot"})["text"]
    assert "underjaw projects (disqualifying fault)" in rottweiler


def test_praise_takes_the_place_of_what_is_merely_right():
    text = told(marks={"croup": 0, "neck": 0}, praise=["neck", "topline"])["text"]
    assert "neck that could hardly be bettered" in text
    assert "Topline that could hardly be bettered" in text


def test_praise_beside_a_fault_says_both():
    assert (
        told(praise=["croup"])["text"] == "Dog with croup slightly steeper than the standard asks (otherwise pleasing)."
    )


def test_a_point_of_the_other_sex_is_not_said():
    assert told(sex="bitch", marks={}, yes={"testicles": True})["text"] == ""


def test_a_sheet_that_says_nothing_is_an_empty_text():
    assert told(marks={}) == {"sentences": [], "text": ""}


def test_no_missing_tooth_is_only_said_where_the_mouth_was_looked_at():
    assert "dentition" not in told()["text"]
    assert "dentition complete" in told(teeth_missing=[])["text"]
    assert "dentition complete" in told(sets={"teeth": []})["text"]


def test_a_reason_ends_with_one_stop_and_keeps_its_own():
    assert told(marks={}, grade="disqualified", reason="bites.")["text"] == "Disqualified: bites."
    assert told(marks={}, grade="disqualified", reason="  bites  ")["text"] == "Disqualified: bites."
    assert told(marks={}, reason="why?")["text"] == "Reason: why?"
    assert told(marks={}, reason="  ")["text"] == ""


def test_a_grave_fault_is_said_in_full_before_what_is_right():
    marks = {"topline": 3, "stop": 0, "skull": 0, "lips": 0, "croup": 0, "neck": 0, "drive": 0, "reach": 0, "feet": 0}
    text = told(marks=marks)["text"]
    assert "Topline far more roached than acceptable" in text


def test_each_sentence_knows_the_points_it_speaks_of():
    found = composed(SHEETS["a good Boxer dog"], "en")
    assert found.spans[0] == ("substance", "proportions", "muscle")
    assert found.spans[-1] == ()
    assert len(found.spans) == len(found.sentences)


def test_a_long_section_is_two_sentences():
    found = composed(SHEETS["a long head in two sentences, no general point"], "en")
    assert [len(span) for span in found.spans] == [4, 4]


def test_a_language_without_a_lexicon_has_no_words():
    with pytest.raises(MissingWord):
        load("it")


@pytest.mark.parametrize(
    ("change", "code", "at"),
    [
        ({"standard": "unknown-breed"}, "unknown-code", "standard"),
        ({"standard": 7}, "wrong-type", "standard"),
        ({"language": "it"}, "unknown-code", "language"),
        ({"sex": "male"}, "unknown-code", "sex"),
        ({"sex": None}, "wrong-type", "sex"),
        ({"marks": []}, "wrong-type", "marks"),
        ({"marks": {"wings": 1}}, "unknown-code", "marks.wings"),
        ({"marks": {"bite": 1}}, "wrong-type", "marks.bite"),
        ({"marks": {"croup": 4}}, "out-of-range", "marks.croup"),
        ({"marks": {"croup": 1.0}}, "wrong-type", "marks.croup"),
        ({"marks": {"croup": True}}, "wrong-type", "marks.croup"),
        ({"choices": {"bite": "crooked"}}, "unknown-code", "choices.bite"),
        ({"praise": ["wings"]}, "unknown-code", "praise[0]"),
        ({"praise": "croup"}, "wrong-type", "praise"),
        ({"teeth_missing": [111]}, "unknown-code", "teeth_missing[0]"),
        ({"numbers": {"height": 500}}, "out-of-range", "numbers.height"),
        ({"yes": {"testicles": "yes"}}, "wrong-type", "yes.testicles"),
        ({"sets": {"croup": []}}, "unknown-code", "sets.croup"),
        ({"sets": {"ways-of-moving": ["flying"]}}, "unknown-code", "sets.ways-of-moving[0]"),
        ({"sets": {"ways-of-moving": [{"side": "left"}]}}, "missing-key", "sets.ways-of-moving[0].way"),
        (
            {"sets": {"ways-of-moving": [{"way": "pacing", "side": "up"}]}},
            "unknown-code",
            "sets.ways-of-moving[0].side",
        ),
        (
            {"sets": {"ways-of-moving": [{"way": "pacing", "degree": 4}]}},
            "out-of-range",
            "sets.ways-of-moving[0].degree",
        ),
        ({"grade": "splendid"}, "unknown-code", "grade"),
        ({"reason": 1}, "wrong-type", "reason"),
        ({"place": 0}, "out-of-range", "place"),
    ],
)
def test_what_cannot_be_read_is_refused_with_its_place(change, code, at):
    with pytest.raises(BadInput) as refused:
        critique({**GOOD, **change})
    assert (refused.value.code, refused.value.at) == (code, at)


@pytest.mark.parametrize("key", ["standard", "language", "sex", "marks"])
def test_a_required_key_must_be_there(key):
    code, found = through_the_command_line({name: value for name, value in GOOD.items() if name != key})
    assert (code, found["error"]["code"], found["error"]["at"]) == (2, "missing-key", key)
