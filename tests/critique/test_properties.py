"""What must hold of the critique of any sheet, of any breed, in any language."""

import re
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scoring.critique.compose import compose
from scoring.critique.doors import critique, read_sheet
from scoring.critique.lexicon import LANGUAGES, keys_of, missing
from scoring.critique.table import compiled, in_order, sections, table_of
from scoring.rules import loader as rules
from scoring.standards.loader import all_standards, codes, load
from tests.critique.reading import marks_read
from tests.critique.sheets import EVERYTHING, assessed, sheets, words_at_least, words_at_most

EVERY_TABLE = [(breed, language) for breed in (*codes(), EVERYTHING.code) for language in LANGUAGES]
STRAY = re.compile(r"\s{2}|\s[,.;!?]|,,|\.\.|,\.|\.,|[(\[]\s|\s[)\]]|[{}<>|\[\]]|^\s|\s$")


def written(sheet):
    standard = load(sheet["standard"])
    return compose(standard, sheet["language"], read_sheet(sheet, standard))


def phrases_of(breed, language):
    """The phrases for a dog and those for a bitch."""
    table = table_of(EVERYTHING, language) if breed == EVERYTHING.code else compiled(breed, language)
    return table["phrases"].values()


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_point_of_the_vocabulary_has_words_before_a_breed_asks_for_it(language):
    assert missing(language, EVERYTHING) == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_point_end_and_step_of_every_breed_has_words(language):
    assert {standard.code: missing(language, standard) for standard in all_standards()} == {
        code: [] for code in codes()
    }


@pytest.mark.parametrize(("breed", "language"), EVERY_TABLE)
def test_no_two_things_that_can_be_said_are_said_in_the_same_words(breed, language):
    for phrases in phrases_of(breed, language):
        texts = [(wording, (code, key)) for code, said in phrases.items() for key in said for wording in said[key][:2]]
        first = {}
        twice = [(wording, at, first[wording]) for wording, at in texts if first.setdefault(wording, at) != at]
        assert twice == []


@pytest.mark.parametrize(("breed", "language"), EVERY_TABLE)
def test_a_phrase_holds_no_joint_of_a_sentence_that_would_hide_its_ends(breed, language):
    for phrases in phrases_of(breed, language):
        for code, said in phrases.items():
            for wording in (text for key in said for text in said[key][:2]):
                inside = wording.removesuffix(",") if code == "sex-type" else wording
                assert not re.search(r"[,.;:]", inside), wording


@pytest.mark.parametrize(("breed", "language"), EVERY_TABLE)
def test_each_phrase_is_clean_on_its_own(breed, language):
    for phrases in phrases_of(breed, language):
        for wording in (text for said in phrases.values() for pair in said.values() for text in pair[:2]):
            assert not STRAY.search(wording.replace("{}", "1")), wording


@pytest.mark.parametrize(("breed", "language"), EVERY_TABLE)
def test_eight_points_are_enough_for_40_words_and_twenty_are_not_too_many_for_120(breed, language):
    """The worst cases, not the likely ones: the eight briefest full wordings, the twenty longest short ones."""
    for phrases in phrases_of(breed, language):
        shortest = sorted(min(words_at_least(wording[1]) for wording in said.values()) for said in phrases.values())
        longest = sorted(
            (max(words_at_most(wording[0]) for wording in said.values()) for said in phrases.values()), reverse=True
        )
        joints, animal, lead, verdict = len(sections()) - 1, 1, 2, 4
        assert sum(shortest[:8]) >= 40
        assert sum(longest[-20:]) + joints + animal + lead + verdict <= 120


@given(sheets(least=8, most=20, praised=3))
def test_eight_to_twenty_assessed_points_give_40_to_120_words(sheet):
    text = critique(sheet)["text"]
    assert words_at_least(text) >= 40
    assert words_at_most(text) <= 120


@given(sheets(most=40, praised=8))
def test_a_text_has_no_missing_word_double_space_or_stray_sign(sheet):
    found = critique(sheet)
    assert found["text"] == " ".join(found["sentences"])
    assert not STRAY.search(re.sub(r"(?<=[a-zé]) : ", ": ", found["text"]))
    assert all(text[0] == text[0].upper() and text.endswith(".") for text in found["sentences"])


@given(sheets(most=40, praised=8))
def test_no_sentence_stands_twice_in_a_critique(sheet):
    found = critique(sheet)["sentences"]
    assert len(found) == len(set(found))


@given(sheets(most=40, praised=8))
def test_every_assessed_point_is_said_once_and_nothing_else_is(sheet):
    spoken = [point for span in written(sheet).spans for point in span]
    assert sorted(spoken) == sorted(assessed(sheet))


@given(sheets(most=40, praised=8))
def test_points_are_said_in_the_order_of_the_standard(sheet):
    order = [point.code for point in in_order(load(sheet["standard"]))]
    places = [order.index(point) for span in written(sheet).spans for point in span]
    assert places == sorted(places)


@given(sheets(most=30))
def test_a_mark_is_read_back_as_it_was_set(sheet):
    assert marks_read(critique(sheet)["sentences"], sheet["language"]) == sheet["marks"]


@pytest.mark.parametrize(("breed", "language"), EVERY_TABLE)
def test_every_mark_is_read_back_from_both_its_wordings(breed, language):
    standard = EVERYTHING if breed == EVERYTHING.code else load(breed)
    two_sided = {point.code for point in standard.two_sided}
    for phrases in phrases_of(breed, language):
        said = {(code, key): pair for code in phrases for key, pair in phrases[code].items() if key != "praise"}
        for (code, key), (short, full, *_) in said.items():
            expected = {code: int(key)} if code in two_sided else {}
            assert (marks_read([short], language), marks_read([full], language)) == (expected, expected)


@given(sheets(most=20, praised=3), st.randoms(use_true_random=False))
def test_the_same_sheet_gives_the_same_text_in_whatever_order_it_is_told(sheet, random):
    shuffled = {key: _shuffled(value, random) for key, value in sheet.items()}
    assert critique(shuffled) == critique(sheet)


def _shuffled(value, random):
    if isinstance(value, dict):
        return dict(random.sample(sorted(value.items(), key=str), len(value)))
    return random.sample(value, len(value)) if isinstance(value, list) else value


@given(sheets(most=20, reason=st.text(st.characters(exclude_categories=["C", "Z"]), min_size=1, max_size=60)))
def test_a_reason_is_quoted_as_it_was_given(sheet):
    text = critique(sheet)["text"]
    assert sheet["reason"].lower() in text.lower()


@given(sheets(least=1, most=20))
def test_a_heavier_mark_at_a_heavier_point_matters_more(sheet):
    standard = load(sheet["standard"])
    phrases = compiled(standard.code, sheet["language"])["phrases"]["dog"]
    for heavier in standard.two_sided:
        for lighter in standard.two_sided:
            if heavier.weight > lighter.weight and not (heavier.mark_faults or lighter.mark_faults):
                assert phrases[heavier.code]["3"][2] >= phrases[lighter.code]["3"][2]


def test_every_kind_of_point_has_something_to_say():
    kinds = {point.kind: keys_of(point) for standard in all_standards() for point in standard.points}
    assert kinds.keys() == {"two-sided", "choice", "set", "number", "yes-no"}
    assert all(kinds.values())


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_word_that_is_missing_is_named(language):
    boxer = load("boxer")
    bite = boxer.point("bite")
    strange = replace(bite, options=(*bite.options, replace(bite.options[0], code="tooth-gap")))
    assert missing(language, replace(boxer, points=(strange,))) == ["bite.tooth-gap"]


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_grade_of_every_rule_book_has_words(language):
    words = compiled("boxer", language)["grades"]
    books = [rules.load(code, overlays=over) for code in rules.codes() for over in [(), *overlays_of(code)]]
    given = {grade.code for book in books for grade in book.grades}
    assert given <= words["dog"].keys() == words["bitch"].keys()


def overlays_of(code):
    return [(overlay,) for overlay in rules.overlay_codes(code)]
