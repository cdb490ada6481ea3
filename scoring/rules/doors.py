"""The doors `classes`, `points` and `titles`: plain values in, plain values out."""

from collections.abc import Mapping, Sequence
from datetime import date
from functools import cache
from typing import Any

from scoring.bad_input import (
    BadInput,
    a_bool,
    a_date,
    a_list,
    a_number,
    a_string,
    an_int,
    an_object,
    join,
    one_of,
    value_of,
)
from scoring.rules.classes import ClassAnswer, Dog, eligibility
from scoring.rules.loader import codes, load
from scoring.rules.points import GroupPlace, Result, Show, show_points
from scoring.rules.rulebook import SEXES, PointsRule, RuleBook, Sex
from scoring.rules.titles import TitleAnswer, Win, title_answers

MOST_DOGS = 100_000


def classes(source: Mapping[str, Any]) -> dict[str, Any]:
    """Which classes are open to a dog. Raises BadInput."""
    rules = a_rule_code(source)
    shown_on = a_date(value_of(source, "shown_on"), "shown_on")
    first_day = _optional_date(source, "first_day") or shown_on
    if first_day > shown_on:
        raise BadInput("out-of-range", "A dog is not shown before the first day of the show.", "first_day")
    dog = a_dog(an_object(value_of(source, "dog"), "dog"))
    closes_on = _optional_date(source, "entries_close_on")
    answers = eligibility(load(rules, shown_on), dog, shown_on, first_day, closes_on)
    return {"classes": [_class_json(answer) for answer in answers]}


def points(source: Mapping[str, Any]) -> dict[str, Any]:
    """The points of one breed at one show. Raises BadInput."""
    book, rule = a_book_with_points(source)
    show = a_show(source, book, rule)
    earned, why = show_points(book, show)
    return {"points": earned, "why": [finding.as_json() for finding in why]}


def titles(source: Mapping[str, Any]) -> dict[str, Any]:
    """Which titles a dog's wins gain. Raises BadInput."""
    book = load(a_rule_code(source))
    given = a_list(value_of(source, "wins"), "wins")
    wins = [a_win(an_object(win, join("wins", at)), book, join("wins", at)) for at, win in enumerate(given)]
    return {"titles": [_title_json(answer) for answer in title_answers(book, wins)]}


def a_rule_code(source: Mapping[str, Any]) -> str:
    return one_of(value_of(source, "rules"), codes(), "rules")


def a_dog(source: Mapping[str, Any]) -> Dog:
    return Dog(
        born=a_date(value_of(source, "born", "dog"), "dog.born"),
        sex=a_sex(value_of(source, "sex", "dog"), "dog.sex"),
        neutered=a_bool(value_of(source, "neutered", "dog"), "dog.neutered"),
        titles=_codes(source, "titles", title_codes()),
        certificates=_codes(source, "certificates", certificate_codes()),
    )


def a_sex(value: Any, at: str) -> Sex:
    return "dog" if one_of(value, SEXES, at) == "dog" else "bitch"


@cache
def title_codes() -> frozenset[str]:
    """The titles a dog may hold: those of every body, since a dog may be a champion elsewhere."""
    return frozenset(title.code for code in codes() for title in load(code).titles)


@cache
def certificate_codes() -> frozenset[str]:
    """The papers and certificates a dog may bring: those of every body."""
    books = [load(code) for code in codes()]
    papers = {document.code for book in books for document in book.documents}
    return frozenset(papers | {award.code for book in books for award in book.awards if award.kind == "certificate"})


def a_book_with_points(source: Mapping[str, Any]) -> tuple[RuleBook, PointsRule]:
    on = _optional_date(source, "on")
    counting = [code for code in codes() if load(code).points]
    book = load(one_of(value_of(source, "rules"), counting, "rules"), on)
    if book.points is None:
        raise BadInput("out-of-range", "These rules counted no points on that day.", "on")
    return book, book.points


def a_show(source: Mapping[str, Any], book: RuleBook, rule: PointsRule) -> Show:
    entered = counts(an_object(value_of(source, "breed"), "breed"), rule, "breed")
    not_counted = counts(an_object(value_of(source, "not_counted", default={}), "not_counted"), rule, "not_counted")
    for count, number in not_counted.items():
        if number > entered.get(count, 0):
            raise BadInput("out-of-range", "No more dogs can be left out than were entered.", f"not_counted.{count}")
    results = some_results(a_list(value_of(source, "results"), "results"), rule)
    dogs = [result.dog for result in results]
    best = value_of(source, "best_in_show", default=None)
    return Show(
        entered=entered,
        results=results,
        not_counted=not_counted,
        group=group_places(an_object(value_of(source, "group", default={}), "group"), dogs),
        best_in_show=None if best is None else one_of(best, dogs, "best_in_show"),
    )


def counts(source: Mapping[str, Any], rule: PointsRule, at: str) -> dict[str, int]:
    """Dogs by what is counted; a count that is not given is none."""
    for name in source:
        one_of(name, rule.counts, join(at, name[:60]))
    return {name: an_int(number, join(at, name), 0, MOST_DOGS) for name, number in source.items()}


def some_results(given: Sequence[Any], rule: PointsRule) -> list[Result]:
    found: dict[str, Result] = {}
    for index, value in enumerate(given):
        at = join("results", index)
        result = a_result(an_object(value, at), rule, at)
        if result.dog in found:
            raise BadInput("id-reused", "Give each dog once, with all its wins.", join(at, "dog"))
        found[result.dog] = result
    return list(found.values())


def a_result(source: Mapping[str, Any], rule: PointsRule, at: str) -> Result:
    known = [win.code for win in rule.wins]
    wins = a_list(value_of(source, "wins", at), join(at, "wins"))
    return Result(
        dog=a_string(value_of(source, "dog", at), join(at, "dog")),
        sex=a_sex(value_of(source, "sex", at), join(at, "sex")),
        wins=tuple(one_of(win, known, join(join(at, "wins"), index)) for index, win in enumerate(wins)),
    )


def group_places(source: Mapping[str, Any], dogs: Sequence[str]) -> dict[str, GroupPlace]:
    places: dict[str, GroupPlace] = {}
    for dog, value in source.items():
        at = join("group", one_of(dog, dogs, "group"))
        placed = an_object(value, at)
        place = an_int(value_of(placed, "place", at), join(at, "place"), 1, MOST_DOGS)
        places[dog] = GroupPlace(place, an_int(value_of(placed, "breeds", at), join(at, "breeds"), 1, MOST_DOGS))
    return places


def a_win(source: Mapping[str, Any], book: RuleBook, at: str) -> Win:
    earned, age = value_of(source, "points", at, None), value_of(source, "age_months", at, None)
    show = value_of(source, "show", at, None)
    return Win(
        award=one_of(value_of(source, "award", at), [award.code for award in book.awards], join(at, "award")),
        won_on=a_date(value_of(source, "date", at), join(at, "date")),
        judge=a_name(value_of(source, "judge", at), join(at, "judge")),
        country=a_name(value_of(source, "country", at), join(at, "country")),
        points=None if earned is None else an_int(earned, join(at, "points"), 0, MOST_DOGS),
        age_months=None if age is None else a_number(age, join(at, "age_months"), 0, 1200),
        show=None if show is None else a_name(show, join(at, "show")),
    )


def a_name(value: Any, at: str) -> str:
    """Words that tell one judge, country or show from another; blank would make strangers one."""
    text = a_string(value, at)
    if not text.strip():
        raise BadInput("out-of-range", "Give a name here.", at)
    return text


def _codes(source: Mapping[str, Any], key: str, known: frozenset[str]) -> frozenset[str]:
    at = join("dog", key)
    given = a_list(value_of(source, key, "dog"), at)
    return frozenset(one_of(code, known, join(at, index)) for index, code in enumerate(given))


def _optional_date(source: Mapping[str, Any], key: str) -> date | None:
    value = value_of(source, key, default=None)
    return None if value is None else a_date(value, key)


def _class_json(answer: ClassAnswer) -> dict[str, Any]:
    findings = [finding.as_json() for finding in answer.findings]
    return {"class": answer.class_code, "open": answer.open, "findings": findings}


def _title_json(answer: TitleAnswer) -> dict[str, Any]:
    missing = [finding.as_json() for finding in answer.missing]
    return {"title": answer.title, "gained": answer.gained, "missing": missing}
