"""Every standard's file is whole: nothing in it is without a source, a standing or a place in the vocabulary."""

from itertools import pairwise

import pytest

from scoring.standards.loader import all_standards, codes, load, read_standard, vocabulary
from scoring.standards.model import STANDINGS, UnknownStandard
from scoring.standards.teeth import DOG_TEETH, teeth_named

EVERY_STANDARD = pytest.mark.parametrize("standard", all_standards(), ids=codes())
VERIFIED = {"read", "derived", "memory"}


def proofs(standard):
    """Everything in a standard that names a source."""
    yield standard
    yield from (*standard.varieties, *standard.size_bands, *standard.points, *standard.figures)
    for size in standard.sizes:
        yield from (size, *size.beyond)
    for point in standard.points:
        yield from (*point.options, *point.mark_faults)
        if point.when_no:
            yield point.when_no
    if standard.teeth:
        yield from standard.teeth.clauses
    if standard.scale:
        yield standard.scale


@EVERY_STANDARD
def test_a_standard_is_found_under_its_own_code(standard):
    assert load(standard.code) is standard


@EVERY_STANDARD
def test_everything_names_a_source_that_the_standard_lists(standard):
    sources = dict(standard.sources)
    assert {one.source for one in proofs(standard)} <= set(sources)
    assert all(sources.values())


@EVERY_STANDARD
def test_everything_says_how_well_it_is_known(standard):
    assert {one.verified for one in proofs(standard)} <= VERIFIED


@EVERY_STANDARD
def test_nothing_known_from_memory_names_a_source_that_was_read(standard):
    sources = dict(standard.sources)
    from_memory = {one.source for one in proofs(standard) if one.verified == "memory"}
    assert all("from memory" in sources[source] for source in from_memory)


@EVERY_STANDARD
def test_nothing_read_names_a_source_from_memory(standard):
    sources = dict(standard.sources)
    read = {one.source for one in proofs(standard) if one.verified == "read"}
    assert not [source for source in read if "from memory" in sources[source]]


@EVERY_STANDARD
def test_every_point_is_in_the_vocabulary_and_each_comes_once(standard):
    points = [point.code for point in standard.points]
    assert set(points) <= set(vocabulary())
    assert len(points) == len(set(points))
    assert 20 <= len(points) <= 32


@EVERY_STANDARD
def test_the_points_follow_the_sections_of_a_published_standard(standard):
    order = [*dict.fromkeys(told["section"] for told in vocabulary().values())]
    places = [order.index(point.section) for point in standard.points]
    assert places == sorted(places)


@EVERY_STANDARD
def test_every_point_says_in_one_sentence_what_is_asked(standard):
    for point in standard.points:
        assert point.asks.endswith(".")
        assert point.asks[:-1].replace("1.7", "").replace("1.8", "").replace("1.5", "").count(".") == 0


@EVERY_STANDARD
def test_a_two_sided_point_has_a_weight_and_two_ends(standard):
    for point in standard.two_sided:
        assert point.weight > 0
        assert point.weight_source in ("ours", standard.scale and standard.scale.source)
        assert point.low
        assert point.high
    assert all(point.weight is None for point in standard.points if point.kind != "two-sided")


@EVERY_STANDARD
def test_every_option_of_the_vocabulary_has_a_standing_and_one_is_asked(standard):
    for point in standard.points:
        if point.kind == "choice":
            assert [option.code for option in point.options] == list(vocabulary()[point.code]["options"])
            assert {option.standing for option in point.options} <= set(STANDINGS)
            assert "asked" in {option.standing for option in point.options}


@EVERY_STANDARD
def test_a_range_has_its_ends_the_right_way_round(standard):
    for size in standard.sizes:
        assert size.low < size.high
        if size.ideal_low is not None:
            assert size.low <= size.ideal_low <= size.ideal_high <= size.high
        assert [one.more_than for one in size.beyond] == sorted(one.more_than for one in size.beyond)
    assert all(figure.low <= figure.high for figure in standard.figures)


@EVERY_STANDARD
def test_a_worse_excess_never_stands_better(standard):
    for size in standard.sizes:
        ranks = [STANDINGS.index(one.standing) for one in size.beyond]
        assert ranks == sorted(ranks)


@EVERY_STANDARD
def test_teeth_clauses_belong_to_a_standard_that_looks_at_teeth(standard):
    assert (standard.teeth is not None) == (standard.point("teeth") is not None)


@EVERY_STANDARD
def test_the_bands_of_a_size_leave_no_gap(standard):
    bands = standard.size_bands
    assert all(lower.up_to == higher.over for lower, higher in pairwise(bands))
    if bands:
        assert {band.size for band in bands} == {variety.size for variety in standard.varieties}


def test_a_dog_has_forty_two_teeth():
    # Merck veterinary manual: 2 x (I 3/3, C 1/1, P 4/4, M 2/3); 20 above, 22 below; 111 and 211 do not exist
    assert len(DOG_TEETH) == 42
    assert [sum(tooth // 100 in jaw for tooth in DOG_TEETH) for jaw in ((1, 2), (3, 4))] == [20, 22]
    assert not {111, 211} & set(DOG_TEETH)


def test_first_premolars_and_last_molars_are_the_published_numbers():
    # Merck veterinary manual: P1 is 105, 205, 305, 405; M3 is 311 and 411
    assert teeth_named(["p1"]) == {105, 205, 305, 405}
    assert teeth_named(["m3"]) == {311, 411}
    groups = {"incisors": 12, "canines": 4}
    assert {group: len(teeth_named([group])) for group in groups} == groups
    assert len(teeth_named(["p1", "p2", "p3", "p4"])) == 16
    assert len(teeth_named(["m1", "m2", "m3"])) == 10


def test_an_unknown_standard_is_refused_with_the_known_ones_named():
    with pytest.raises(UnknownStandard, match="boxer"):
        load("unicorn")


def test_an_option_without_a_standing_is_refused():
    text = """
code = "x"
name = "X"
authority = "none"
number = 0
group = 1
edition = 2000-01-01
source = "s"
verified = "read"
colours = []
[sources]
s = "invented"
[points.bite]
asks = "Scissor."
options.scissor = "asked"
"""
    with pytest.raises(ValueError, match="no standing for pincer"):
        read_standard(text)
    with pytest.raises(ValueError, match="wonderful is not a standing"):
        read_standard(text.replace('"asked"', '"wonderful"'))
