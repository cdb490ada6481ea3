"""Braces, groups and young handlers: each rule holds, and each break of it is named."""

from dataclasses import replace
from datetime import date

import pytest

from scoring.rules.loader import load
from scoring.rules.together import Member, group_findings, handler_findings

ONE = Member("Ada", "boxer", "", "bitch", frozenset({"Nora Vale"}), "Odo Heath", "Sol", "Luna")
TWO = replace(ONE, name="Ben", sex="dog", owners=frozenset({"nora  vale", "Tam Reed"}))
THREE = replace(ONE, name="Cleo", sex="dog", sire="Mars")


def codes(rule: str, *members: Member, rules: str = "fci") -> list[str]:
    return [one.code for one in group_findings(load(rules).competition(rule), members)]


def test_a_dog_and_a_bitch_of_one_breed_and_owner_make_a_brace_however_the_name_is_spaced():
    assert codes("brace", ONE, TWO) == []


@pytest.mark.parametrize(
    ("members", "code"),
    [
        ((ONE,), "group-too-small"),
        ((ONE, TWO, THREE), "group-too-large"),
        ((ONE, replace(TWO, sex="bitch")), "group-one-of-each"),
        ((ONE, replace(TWO, breed="hovawart")), "group-differs"),
        ((ONE, replace(TWO, variety="brindle")), "group-differs"),
        ((ONE, replace(TWO, owners=frozenset({"Tam Reed"}))), "group-differs"),
    ],
)
def test_what_breaks_a_brace_is_named(members, code):
    assert code in codes("brace", *members)


def test_a_breeders_group_needs_one_breeder_and_not_one_owner():
    strangers = [replace(one, owners=frozenset({one.name})) for one in (ONE, TWO, THREE)]
    assert codes("breeders-group", *strangers) == []
    assert codes("breeders-group", ONE, TWO, replace(THREE, breeder="Ida North")) == ["group-differs"]


def test_what_the_record_lacks_warns_and_refuses_nothing():
    found = group_findings(load("fci").competition("breeders-group"), [ONE, TWO, replace(THREE, breeder="")])
    assert [(one.code, one.severity) for one in found] == [("group-unknown", "warns")]


def test_progeny_share_the_sire_or_the_dam():
    assert codes("progeny-group", ONE, TWO, THREE) == []
    assert codes("progeny-group", ONE, TWO, replace(THREE, dam="Venus")) == ["group-no-common-parent"]
    assert codes("progeny-group", ONE, TWO, replace(THREE, dam="")) == ["group-unknown"]


@pytest.mark.parametrize(
    ("code", "born", "found"),
    [
        # Source: Danish Kennel Club, course of judging: junior handling in the groups 10-13 and 14-17 years.
        ("junior-handling-younger", date(2016, 6, 13), []),
        ("junior-handling-younger", date(2016, 6, 14), ["handler-too-young"]),
        ("junior-handling-younger", date(2012, 6, 14), []),
        ("junior-handling-younger", date(2012, 6, 13), ["handler-too-old"]),
        ("junior-handling-older", date(2012, 6, 13), []),
        ("junior-handling-older", date(2008, 6, 13), ["handler-too-old"]),
        ("junior-handling-older", None, ["handler-age-missing"]),
    ],
)
def test_danish_handlers_compete_by_their_years_on_the_first_day(code, born, found):
    rule = load("fci", overlays=("denmark",)).competition(code)
    assert rule.provenance.of("least_years").verified == "read"
    assert [one.code for one in handler_findings(rule, born, date(2026, 6, 13))] == found


def test_what_is_from_memory_says_so():
    assert {one.provenance.whole.verified for one in load("fci").competitions} == {"memory"}
