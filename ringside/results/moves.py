"""Why an entry may move to another class or be withdrawn, by the rules in force; and where it may move to."""

import tomllib
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from django.utils.text import capfirst
from django.utils.translation import gettext_lazy as _

from ringside.entries.models import Entry
from ringside.ring.queries import breed_said
from ringside.shows.books import class_name, rules_of
from ringside.shows.models import Show, ShowBreed, ShowClass
from scoring.rules.classes import ClassAnswer, Dog, Occasion, class_eligibility
from scoring.rules.rulebook import SEXES

WORDS = {
    "organiser-error": _("an error of the organiser or the printer"),
    "age": _("the age does not fit the class"),
    "sex": _("entered with the wrong sex"),
    "colour-variety": _("entered in the wrong colour variety"),
    "coat": _("entered with the wrong coat"),
    "working-proof-missing": _("the proof for the working class is missing"),
    "bitch-in-season": _("a bitch in season"),
    "ill-or-injured": _("the dog is ill or injured"),
    "died": _("the dog has died"),
    "judge-replaced": _("the judge was replaced"),
}


@dataclass(frozen=True, slots=True)
class Reason:
    """Why an entry may move or be withdrawn: under which `rules`, and how that is known."""

    code: str
    rules: tuple[str, ...]
    source: str
    verified: str
    sexes: tuple[str, ...] = SEXES

    @property
    def words(self) -> str:
        return str(WORDS[self.code])


@cache
def all_reasons(kind: str = "reason") -> tuple[Reason, ...]:
    """Every reason to move, or every "withdrawal"."""
    told = tomllib.loads(Path(__file__).with_name("moves.toml").read_text(encoding="utf-8"))[kind]
    lists = ({key: tuple(value) for key, value in row.items() if isinstance(value, list)} for row in told)
    return tuple(Reason(**{**row, **some}) for row, some in zip(told, lists, strict=True))


def reasons_for(show: Show) -> dict[str, Reason]:
    """The reasons that the show's governing body or one of its overlays allows, by code."""
    in_force = {show.rules, *show.overlays}
    return {reason.code: reason for reason in all_reasons() if in_force.intersection(reason.rules)}


def withdrawals_for(show: Show, sex: str) -> dict[str, Reason]:
    """The reasons for which an animal of this sex may be withdrawn once entries have closed, by code."""
    in_force = {show.rules, *show.overlays}
    return {
        reason.code: reason
        for reason in all_reasons("withdrawal")
        if in_force.intersection(reason.rules) and sex in reason.sexes
    }


def targets_of(show_class: ShowClass, sex: str) -> list[tuple[str, str]]:
    """The other classes of its breed's varieties that are open to an animal of this sex: "BREED:CLASS" and its name.

    A dog that stands in a class of the other sex was entered wrongly.
    """
    here, breed_here = (show_class.show_breed_id, show_class.code), show_class.show_breed
    breeds = ShowBreed.objects.filter(show=breed_here.show_id, breed=breed_here.breed).order_by("variety", "id")
    rules = rules_of(breed_here.show).classes
    return [
        (f"{breed.pk}:{rule.code}", f"{capfirst(class_name(rule))}, {breed_said(breed)}")
        for breed in breeds
        for rule in rules
        if (breed.pk, rule.code) != here and sex in rule.sexes
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
    occasion = Occasion(
        breed.appointed_for(entry.dog.sex, code).day or show.first_day, show.first_day, show.entries_close
    )
    book = rules_of(show)
    return class_eligibility(book, book.class_rule(code), told, occasion)
