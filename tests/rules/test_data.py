"""The rule books hold together: every value has a source, and every code that is used is one that exists."""

import tomllib
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest

from scoring.rules.loader import DATA, codes, load, overlay_codes, sources
from scoring.rules.rulebook import RuleBook
from scoring.rules.titles import NEEDS
from scoring.standards.loader import all_standards

CITE = {"source", "verified", "but", "note", "since", "until"}
# What a record may hold beside its sources; anything else is a slip of the pen.
KNOWN = {
    "classes": {
        *("code", "name", "least_months", "most_months", "last_day", "sexes", "titles", "documents", "neutered"),
        *("certificates", "champions_elsewhere", "places", "scale", "win_limit"),
    },
    "grades": {"code", "name", "needs_reason", "may_be_placed", "abbreviation"},
    "scales": {"code", "grades", "least_for_place"},
    "awards": {
        *("code", "name", "level", "kind", "may_be_withheld", "candidates", "places", "reserve_of", "moves_up"),
    },
    "groups": {"code", "name", "breeds"},
    "titles": {"code", "name", "routes"},
    "documents": {"code", "name"},
    "competitions": {"code", "name", "least", "most", "same", "one_of_each", "least_years", "most_years"},
}
BOOKS = [(code, ()) for code in codes()] + [(code, (one,)) for code in codes() for one in overlay_codes(code)]
FILES = sorted(DATA.rglob("*.toml"))
UNCITED = {"code", "name", "note", "edition", "over", "routes", "since", "until"}


def read(path: Path) -> dict[str, Any]:
    return tomllib.loads(path.read_text(encoding="utf-8"))


def records(table: Mapping[str, Any]) -> Iterator[tuple[str, Mapping[str, Any]]]:
    for kind in KNOWN:
        for record in table.get(kind, []):
            yield kind, record


def cites(value: Any) -> Iterator[Mapping[str, Any]]:
    """Every table that names a source, at any depth."""
    if isinstance(value, dict):
        if "source" in value:
            yield value
        for inner in value.values():
            yield from cites(inner)
    if isinstance(value, list):
        for inner in value:
            yield from cites(inner)


@pytest.fixture(params=BOOKS, ids=lambda book: "-".join([book[0], *book[1]]))
def book(request: pytest.FixtureRequest) -> RuleBook:
    code, overlays = request.param
    return load(code, overlays=overlays)


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_record_holds_only_values_that_are_read(path: Path) -> None:
    strangers = [(kind, record["code"], set(record) - KNOWN[kind] - CITE) for kind, record in records(read(path))]
    assert [stranger for stranger in strangers if stranger[2]] == []


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_every_source_is_named_and_says_how_it_was_checked(path: Path) -> None:
    unknown = [cite for cite in cites(read(path)) if cite["source"] not in sources()]
    assert unknown == []
    assert {cite["verified"] for cite in cites(read(path))} <= {"read", "derived", "memory"}


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_memory_is_never_passed_off_as_read(path: Path) -> None:
    marked = {(cite["source"] == "MEMORY", cite["verified"] == "memory") for cite in cites(read(path))}
    assert marked <= {(True, True), (False, False)}


@pytest.mark.parametrize("path", [path for path in FILES if path.parent != DATA], ids=lambda path: path.stem)
def test_an_overlay_gives_a_source_for_every_value_it_changes(path: Path) -> None:
    table = read(path)
    parts = [table, *(record for _, record in records(table) if "source" not in record)]
    changed = [(part["code"], set(part) - UNCITED - {"but", *KNOWN} - set(part.get("but", {}))) for part in parts]
    assert [change for change in changed if change[1]] == []


def test_every_source_that_is_listed_is_used() -> None:
    written = " ".join(path.read_text(encoding="utf-8") for path in FILES)
    assert [key for key in sources() if key not in written] == []


def test_codes_are_unique(book: RuleBook) -> None:
    for kind in (book.classes, book.grades, book.scales, book.awards, book.titles, book.documents, book.groups):
        listed = [record.code for record in kind]
        assert listed == list(dict.fromkeys(listed))


def test_classes_use_codes_that_exist(book: RuleBook) -> None:
    titles, papers = {title.code for title in book.titles}, {paper.code for paper in book.documents}
    awards, scales = {award.code for award in book.awards}, {scale.code for scale in book.scales}
    for rule in book.classes:
        assert set(rule.titles) <= titles
        assert set(rule.documents) <= papers
        assert set(rule.certificates) <= awards
        assert rule.scale is None or rule.scale in scales
        assert rule.most_months is None or rule.least_months < rule.most_months


def test_scales_use_grades_that_exist_best_first(book: RuleBook) -> None:
    for scale in book.scales:
        ranks = [book.grade(code).rank for code in scale.grades]
        assert ranks == sorted(ranks)
        assert scale.least_for_place is None or scale.least_for_place in scale.grades


def test_awards_name_classes_grades_and_awards_that_exist(book: RuleBook) -> None:
    grades, awards = {grade.code for grade in book.grades}, {award.code for award in book.awards}
    for line in (line for award in book.awards for line in award.candidates):
        assert set(line.classes) <= set(book.class_order)
        assert set(line.grades) <= grades
        assert {*line.winners_of, line.second_to, line.other_sex_than} - {None} <= awards


def test_every_class_competes_for_the_certificates_it_names_and_no_other(book: RuleBook) -> None:
    certificates = {award.code for award in book.awards if award.kind == "certificate"}
    named = {(rule.code, certificate) for rule in book.classes for certificate in rule.certificates}
    competing = {
        (class_code, award.code)
        for award in book.awards
        if award.code in certificates
        for line in award.candidates
        for class_code in line.classes
    }
    assert competing == named


def test_titles_ask_for_what_can_be_checked(book: RuleBook) -> None:
    awards = {award.code for award in book.awards}
    for route in (route for title in book.titles for route in title.routes):
        assert {need.kind for need in route.needs} <= set(NEEDS)
        assert {*route.counts_from, *route.once_a_show} <= awards
        assert {award for need in route.needs for award in need.awards} <= awards


def test_points_count_what_they_name(book: RuleBook) -> None:
    if book.points is None:
        return
    counted = {count for win in book.points.wins for counts in win.counts.values() for count in counts}
    assert counted == set(book.points.counts)
    assert {win.code for win in book.points.wins} <= {award.code for award in book.awards}
    assert set(book.points.counted) == set(book.points.counts)
    classes = [code for count in book.points.counted.values() for code in count.classes]
    assert {*classes, *book.points.no_points_from} <= set(book.class_order)


def test_a_breed_belongs_to_one_group_and_a_reserve_to_an_award_that_exists(book: RuleBook) -> None:
    breeds = [breed for group in book.groups for breed in group.breeds]
    assert len(breeds) == len(set(breeds))
    assert book.groups_by_standard or set(breeds) == {standard.code for standard in all_standards()}
    reserves = {award.reserve_of for award in book.awards} - {None}
    assert reserves <= {award.code for award in book.awards}
    assert all(award.kind == "reserve" and award.reserve_of for award in book.awards if award.moves_up)


def test_a_body_or_an_overlay_that_is_not_here_is_a_key_error() -> None:
    for code, overlays in (("nowhere", ()), ("fci", ("nowhere",)), ("canada", ("germany",))):
        with pytest.raises(KeyError):
            load(code, overlays=overlays)


def test_the_fci_uses_its_published_grades() -> None:
    # FCI dog shows, article 6; puppy grades: VDH Zuchtschau-Ordnung.
    fci = load("fci")
    adult = ["excellent", "very-good", "good", "sufficient", "disqualified", "cannot-be-judged"]
    puppy = ["very-promising", "promising", "less-promising", "disqualified", "cannot-be-judged"]
    assert adult == [grade.code for grade in fci.grades_for("open")]
    assert puppy == [grade.code for grade in fci.grades_for("puppy")]


def test_grades_that_bar_from_a_place_ask_for_a_reason() -> None:
    # FCI dog shows, article 6: the reason of a disqualification must stand in the judge's report; Dutch judges'
    # association, December 2016: "cannot be judged" with its reason.
    barred = {grade.code for grade in load("fci").grades if grade.needs_reason and not grade.may_be_placed}
    assert barred == {"disqualified", "cannot-be-judged"}


def test_the_german_member_places_four_dogs_of_at_least_very_good() -> None:
    # VDH Zuchtschau-Ordnung, section 19.
    german = load("fci", overlays=("germany",))
    assert (german.places, german.least_grade_for_place) == (4, "very-good")
    assert [german.meets_least_grade(code) for code in ("excellent", "very-good", "good", "disqualified")] == [
        *(True, True, False, False)
    ]
    assert german.scales[0].provenance.of("least_for_place").verified == "read"


def test_the_german_member_has_an_honour_class_without_a_cacib() -> None:
    # Class lists of a German and a Czech breed club.
    german = load("fci", overlays=("germany",))
    assert german.class_rule("honour").certificates == ()
    assert german.class_order.index("champion") < german.class_order.index("honour")
    assert "honour" not in load("fci").class_order


def test_the_norwegian_member_places_five_puppies_and_four_adults() -> None:
    # Norwegian Kennel Club regulation summaries.
    norwegian = load("fci", overlays=("norway",))
    assert (norwegian.places_for("puppy"), norwegian.places_for("open")) == (5, 4)


def test_bodies_without_grades_answer_with_none() -> None:
    for code in ("canada", "united-kingdom", "australia"):
        assert load(code).grades_for("open") == ()
        assert load(code).least_grade_for("open") is None
        assert not load(code).is_graded("open")


def test_overlays_leave_the_code_and_say_their_name() -> None:
    german = load("fci", overlays=("germany",))
    assert (german.code, german.overlays) == ("fci", ("germany",))
    assert german.name.endswith(", Germany")
