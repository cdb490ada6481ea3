"""What is only from memory is said where it is used; what was read is not called so."""

import pytest

from ringside.shows.known import notes_on_awards, notes_on_class, notes_on_groups, notes_on_points, notes_on_titles
from scoring.rules.loader import codes, load


@pytest.mark.parametrize("rules", codes())
def test_every_award_with_something_from_memory_has_its_note_and_no_other_has(rules):
    book = load(rules)
    for award in book.awards:
        cites = [award.provenance.whole, *award.provenance.but.values()]
        is_recalled = any(cite.verified == "memory" for cite in cites)
        assert bool(notes_on_awards(book, {award.code})) == is_recalled


def test_a_note_says_which_part_is_from_memory():
    fci = load("fci")
    assert notes_on_awards(fci, {"best-of-sex"}) == ["Best of sex: who competes"]
    assert notes_on_awards(fci, {"reserve-cacib"}) == ["Reserve CACIB: that the reserve moves up"]
    assert notes_on_awards(fci, {"cacib"}) == []


def test_classes_groups_points_and_titles_have_their_notes():
    assert notes_on_class(load("fci"), "open") == ["Grades of this class: the least grade for a place"]
    assert notes_on_groups(load("fci")) == []
    assert notes_on_groups(load("canada")) != []
    assert notes_on_points(load("canada")) == ["Points: in which count the dogs of each class stand"]
    assert notes_on_points(load("fci")) == notes_on_titles(load("fci")) == []
    assert notes_on_titles(load("australia")) == [
        "Australian champion: a condition that is shown and holds nothing back"
    ]
