"""A breed is found by the names people write."""

import pytest

from scoring.standards.loader import all_standards
from scoring.standards.names import by_name, plain, suggest


@pytest.mark.parametrize(
    ("written", "code"),
    [
        ("Boxer", "boxer"),
        ("  boxer ", "boxer"),
        ("german-shepherd-dog", "german-shepherd-dog"),
        ("GERMAN SHEPHERD DOG", "german-shepherd-dog"),
        ("Deutscher Schäferhund", "german-shepherd-dog"),
        ("Deutscher Schaeferhund", "german-shepherd-dog"),
        ("deutscher schaferhund", "german-shepherd-dog"),
        ("GSD", "german-shepherd-dog"),
        ("Bernese Mountain-Dog", "bernese-mountain-dog"),
        ("Berner Sennenhund", "bernese-mountain-dog"),
        ("BMD", "bernese-mountain-dog"),
        ("Teckel", "dachshund"),
        ("Doberman Pinscher", "dobermann"),
    ],
)
def test_a_breed_is_found_whatever_its_spelling(written, code):
    assert by_name(written).code == code


@pytest.mark.parametrize("written", ["", "Unicorn", "Boxerr", "mountain dog"])
def test_a_name_that_is_none_is_not_guessed(written):
    assert by_name(written) is None


@pytest.mark.parametrize(
    ("written", "code"),
    [
        ("Hovavart", "hovawart"),
        ("Boxerr", "boxer"),
        ("Rotweiler", "rottweiler"),
        ("German Sheperd Dog", "german-shepherd-dog"),
        ("Bernese Moutain Dog", "bernese-mountain-dog"),
        ("Deutscher Sch\N{REPLACEMENT CHARACTER}ferhund", "german-shepherd-dog"),
    ],
)
def test_a_misspelt_name_gets_a_suggestion(written, code):
    assert suggest(written).code == code


@pytest.mark.parametrize("written", ["", "???", "Unicorn"])
def test_a_name_close_to_nothing_gets_none(written):
    assert suggest(written) is None


def test_no_name_belongs_to_two_breeds():
    names = [(plain(name), one.code) for one in all_standards() for name in {one.code, one.name, *one.also}]
    owners = {}
    for name, code in names:
        assert owners.setdefault(name, code) == code
