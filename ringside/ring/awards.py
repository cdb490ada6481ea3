"""A breed's awards as they stand: who competes from the signed class cards, what is decided, what is to be said."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

from django.utils.text import capfirst
from django.utils.translation import gettext

from ringside.core.sentences import sentence
from ringside.dogs.wording import SEXES
from ringside.entries.models import Entry
from ringside.ring.models import Sheet
from ringside.shows.books import award_name, class_name, rules_of
from ringside.shows.models import Ring, ShowBreed, ShowClass
from scoring.findings import Finding
from scoring.rules.award_card import Card, Offered, check_card, competing, waits_for, within_reach
from scoring.rules.awards import Standing
from scoring.rules.rulebook import RuleBook

# The findings of an award card that the tablet says by itself.
CODES = ("award-without-right", "award-not-to-be-withheld")
FIELD = "award."


@dataclass(frozen=True)
class BreedCard:
    """A breed's awards as they stand.

    `classes` are those with dogs in them; `entries` all of the breed by their id as text, withdrawn ones too;
    `signed` the decisions of the classes signed so far, by the class's id; `decided` as `award_card.Card` has it;
    `cancelled` the published awards that were taken from their dog later, `passed_on` those that went to a reserve,
    each with that entry.
    """

    breed: ShowBreed
    book: RuleBook
    classes: list[ShowClass] = field(default_factory=list)
    entries: dict[str, Entry] = field(default_factory=dict)
    signed: Mapping[int, Mapping[str, Any]] = field(default_factory=dict)
    decided: Mapping[str, str | bool] = field(default_factory=dict)
    sheet: Sheet | None = None
    cancelled: frozenset[str] = frozenset()
    passed_on: frozenset[tuple[str, str]] = frozenset()

    @cached_property
    def awards(self) -> list[Offered]:
        return within_reach(self.book, {(one.sex, one.code) for one in self.classes})

    @cached_property
    def card(self) -> Card:
        return Card([one for of_class in self.classes for one in self._standings(of_class)], self.decided)

    def _standings(self, show_class: ShowClass) -> Iterable[Standing]:
        """Every dog of a signed class that stood there and was not sent out."""
        signed = self.signed.get(show_class.pk)
        if signed is None:
            return
        places = signed.get("places") or []
        barred = {grade.code for grade in self.book.grades if not grade.may_be_placed}
        for key, entry in self.entries.items():
            grade = signed.get(f"grade.{key}") or None
            is_there = entry.state == Entry.State.ENTERED and signed.get(f"presence.{key}") in (None, "present")
            if entry.show_class_id == show_class.pk and is_there and grade not in barred:
                place = places.index(key) + 1 if key in places else None
                yield Standing(key, show_class.sex, show_class.code, place, grade, str(entry.dog_id))

    @property
    def unsigned(self) -> list[ShowClass]:
        return [one for one in self.classes if one.pk not in self.signed]

    @property
    def findings(self) -> list[str]:
        """What does not go with the rules in what is decided, in words."""
        return [self.words(one) for one in check_card(self.book, self.card) if not self._is_passed_on(one)]

    def _is_passed_on(self, finding: Finding) -> bool:
        """Whether it speaks of the entry that the rules gave a cancelled award to."""
        return (finding.facts.get("award"), finding.facts.get("entry")) in self.passed_on

    def words(self, finding: Finding) -> str:
        """A finding in words, with the catalogue number for the entry."""
        entry = self.entries.get(finding.facts.get("entry", ""))
        numbered = {"entry": entry.number or entry.pk} if entry else {}
        return sentence(Finding(finding.code, finding.severity, {**finding.facts, **numbered}))


def cards_of(breeds: Sequence[ShowBreed]) -> list[BreedCard]:
    """The award cards of several breeds of one show: the same number of queries however many there are."""
    class_cards = Sheet.objects.filter(show_class__show_breed__in=breeds, signed__isnull=False)
    signed = {card.show_class_id: card.signed for card in class_cards if card.show_class_id and card.signed is not None}
    own = {sheet.show_breed_id: sheet for sheet in Sheet.objects.filter(show_breed__in=breeds)}
    cards = {breed.pk: _card(breed, signed, own.get(breed.pk)) for breed in breeds}
    entries = Entry.objects.filter(show_class__show_breed__in=breeds).select_related("dog", "show_class")
    # Dogs before bitches, classes in the order of the catalogue.
    for entry in entries.order_by("-show_class__sex", "show_class__order", "show_class_id", "number", "id"):
        card = cards[entry.show_class.show_breed_id]
        card.entries[str(entry.pk)] = entry
        if entry.state == Entry.State.ENTERED and entry.show_class not in card.classes:
            card.classes.append(entry.show_class)
    return list(cards.values())


def _card(breed: ShowBreed, signed: Mapping[int, Mapping[str, Any]], sheet: Sheet | None) -> BreedCard:
    fields = sheet.fields if sheet else {}
    decided = {name.removeprefix(FIELD): value for name, value in fields.items() if name.startswith(FIELD)}
    return BreedCard(breed, rules_of(breed.show), signed=signed, decided=decided, sheet=sheet)


def standings_elsewhere(breeds: Sequence[ShowBreed], ring: Ring) -> dict[int, list[dict[str, Any]]]:
    """By the breed's id: its classes with dogs that are judged in another ring than its awards, as signed so far."""
    apart = [breed for breed in breeds if any(one.appointed.ring != ring for one in breed.classes.all())]
    return {
        card.breed.pk: [_elsewhere(card, one) for one in card.classes if _is_apart(card.breed, one, ring)]
        for card in (cards_of(apart) if apart else [])
    }


def _is_apart(breed: ShowBreed, one: ShowClass, ring: Ring) -> bool:
    return breed.appointed_for(one.sex, one.code).ring != ring


def _elsewhere(card: BreedCard, one: ShowClass) -> dict[str, Any]:
    keys = [key for key, entry in card.entries.items() if entry.show_class_id == one.pk]
    standings = [each for each in card.card.standings if each.entry in keys]
    return {
        "code": one.code,
        "sex": one.sex,
        "name": card.book.class_rule(one.code).name,
        "signed": one.pk in card.signed,
        "entries": [{"id": card.entries[key].pk, "number": card.entries[key].number} for key in keys],
        "standings": [
            {
                "entry": each.entry,
                "sex": each.sex,
                "class_code": each.class_code,
                "place": each.place,
                "grade": each.grade,
                "dog": _number(card.entries[each.entry]),
            }
            for each in standings
        ],
    }


def _number(entry: Entry) -> str | None:
    """What the page knows a dog by: its catalogue number."""
    return None if entry.number is None else str(entry.number)


def candidates_json(found: BreedCard) -> dict[str, Any]:
    """Who competes for each award of the breed and why, what is decided, and what is missing for it."""
    return {
        "awards": [_competing_json(found, one) for one in found.awards],
        "findings": found.findings,
        "missing": [
            gettext("{title}: not signed").format(title=class_words(found.book, one)) for one in found.unsigned
        ],
    }


def _competing_json(found: BreedCard, one: Offered) -> dict[str, Any]:
    competitors = [
        {"entry": each.entry, "number": found.entries[each.entry].number, "reason": found.words(each.why)}
        for each in competing(found.book, one, found.card)
    ]
    waits = [other.code for other in waits_for(found.book, one, found.card)]
    told = {"code": one.code, "award": one.award.code, "sex": one.sex, "name": one.award.name}
    return {**told, "decided": found.decided.get(one.code), "candidates": competitors, "waits_for": waits}


def class_words(book: RuleBook, show_class: ShowClass) -> str:
    """ "Open class, dogs", in the reader's language."""
    name, sex = class_name(book.class_rule(show_class.code)), SEXES[show_class.sex]
    return capfirst(gettext("{name} class, {sex}").format(name=name, sex=sex))


def award_words(one: Offered) -> str:
    """ "CACIB, dogs", "Best of breed", in the reader's language."""
    name = award_name(one.award)
    return f"{name}, {SEXES[one.sex]}" if one.sex else name
