"""Why an entry may move to another class, by the rules in force; and where it may move to."""

import tomllib
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from ringside.entries.models import Entry
from ringside.ring.queries import breed_name
from ringside.shows.books import rules_of
from ringside.shows.models import Show, ShowBreed
from scoring.rules.classes import ClassAnswer, Dog, Occasion, class_eligibility


@dataclass(frozen=True, slots=True)
class Reason:
    code: str
    words: str
    rules: tuple[str, ...]
    source: str
    verified: str


@cache
def all_reasons() -> tuple[Reason, ...]:
    told = tomllib.loads(Path(__file__).with_name("moves.toml").read_text(encoding="utf-8"))
    return tuple(Reason(**{**row, "rules": tuple(row["rules"])}) for row in told["reason"])


def reasons_for(show: Show) -> dict[str, Reason]:
    """The reasons that the show's governing body or one of its overlays allows, by code."""
    in_force = {show.rules, *show.overlays}
    return {reason.code: reason for reason in all_reasons() if in_force.intersection(reason.rules)}


def targets_of(entry: Entry) -> list[tuple[str, str]]:
    """The other classes of the breed and its varieties in this show: "BREED:CLASS" and its name."""
    here = (entry.show_class.show_breed_id, entry.show_class.code)
    breeds = ShowBreed.objects.filter(show=entry.show, breed=entry.show_class.show_breed.breed).order_by(
        "variety", "id"
    )
    rules = rules_of(entry.show).classes
    return [
        (f"{breed.pk}:{rule.code}", f"{rule.name}, {breed_name(breed)}")
        for breed in breeds
        for rule in rules
        if (breed.pk, rule.code) != here and entry.dog.sex in rule.sexes
    ]


def answer_for(entry: Entry, breed: ShowBreed, code: str) -> ClassAnswer:
    """Whether the class is open to the dog on its day, and why not."""
    show, dog = entry.show, entry.dog
    told = Dog(
        dog.born,
        "dog" if dog.sex == "dog" else "bitch",
        dog.neutered,
        frozenset(dog.titles.values_list("code", flat=True)),
        frozenset(dog.certificates.values_list("code", flat=True)),
    )
    occasion = Occasion(breed.day or show.first_day, show.first_day, show.entries_close_on)
    book = rules_of(show)
    return class_eligibility(book, book.class_rule(code), told, occasion)
