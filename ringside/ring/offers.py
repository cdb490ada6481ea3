"""What the tablet is told of a breed's awards: their rules as data; the page says in words who competes."""

from dataclasses import asdict
from typing import Any

from ringside.shows.models import ShowBreed
from scoring.rules.award_card import Offered, within_reach
from scoring.rules.rulebook import RuleBook


def breed_json(breed: ShowBreed, book: RuleBook, name: str) -> dict[str, Any]:
    """A breed on the tablet: its classes with dogs in the ring of its awards, and the awards they may compete for."""
    classes = [one for one in breed.classes.all() if one.entries.all()]
    here = breed.appointed.ring
    reach = {(one.sex, one.code) for one in classes}
    return {
        "id": breed.pk,
        "sheet": f"breed:{breed.pk}",
        "name": name,
        "classes": [one.pk for one in classes if one.appointed.ring == here],
        "awards": [award_json(one) for one in within_reach(book, reach)],
    }


def award_json(one: Offered) -> dict[str, Any]:
    award = one.award
    told = {"code": one.code, "award": award.code, "sex": one.sex, "name": award.name}
    rules = {"level": award.level, "kind": award.kind, "may_be_withheld": award.may_be_withheld}
    lines = [{name: value for name, value in asdict(line).items() if value} for line in award.candidates]
    return {**told, **rules, "lines": lines}
