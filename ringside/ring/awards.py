"""A breed's awards at the ring: what the tablet needs to know of them, and how they stand from signed class cards."""

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass, field
from typing import Any

from ringside.core.sentences import listed, sentence
from ringside.entries.models import Entry
from ringside.ring.models import Sheet
from ringside.shows.books import rules_of
from ringside.shows.models import ShowBreed, ShowClass
from scoring.findings import Finding
from scoring.rules.award_card import Card, Offered, check_card, competing, waits_for, within_reach
from scoring.rules.awards import Standing
from scoring.rules.rulebook import Candidates, RuleBook, Sex

# The findings of an award card that the tablet says by itself.
CODES = ("award-without-right", "award-not-to-be-withheld")
FIELD = "award."
SEXES = {"dog": "dogs", "bitch": "bitches"}
ORDINALS = {1: "first", 2: "second", 3: "third", 4: "fourth"}
Classes = Collection[tuple[Sex, str]]


@dataclass(frozen=True)
class BreedCard:
    """A breed's awards as they stand. `classes` are those with dogs in them; `entries` are by their id as text."""

    breed: ShowBreed
    book: RuleBook
    classes: list[ShowClass] = field(default_factory=list)
    entries: dict[str, Entry] = field(default_factory=dict)
    class_cards: Mapping[int, Sheet] = field(default_factory=dict)
    sheet: Sheet | None = None

    @property
    def awards(self) -> list[Offered]:
        return within_reach(self.book, {(one.sex, one.code) for one in self.classes})

    @property
    def card(self) -> Card:
        """The standings of the classes signed so far, and what is settled on the award card."""
        fields = self.sheet.fields if self.sheet else {}
        decided = {name.removeprefix(FIELD): value for name, value in fields.items() if name.startswith(FIELD)}
        return Card([one for of_class in self.classes for one in self._standings(of_class)], decided)

    def _standings(self, show_class: ShowClass) -> Iterable[Standing]:
        signed = self.signed(show_class)
        places = signed.get("places") or []
        barred = {grade.code for grade in self.book.grades if not grade.may_be_placed}
        for key, entry in self.entries.items():
            grade = signed.get(f"grade.{key}")
            is_there = signed.get(f"presence.{key}") in (None, "present") and grade not in barred
            if entry.show_class_id == show_class.pk and signed and is_there:
                place = places.index(key) + 1 if key in places else None
                yield Standing(key, show_class.sex, show_class.code, place, grade)

    def signed(self, show_class: ShowClass) -> dict[str, Any]:
        """The signed decisions of a class; nothing where it is not signed."""
        card = self.class_cards.get(show_class.pk)
        found: dict[str, Any] = (card.signed if card else None) or {}
        return found

    @property
    def unsigned(self) -> list[ShowClass]:
        cards = {pk for pk, card in self.class_cards.items() if card.signed is not None}
        return [one for one in self.classes if one.pk not in cards]

    @property
    def findings(self) -> list[str]:
        """What does not go with the rules in what is decided, in words."""
        return [self.words(finding) for finding in check_card(self.book, self.card)]

    def words(self, finding: Finding) -> str:
        """A finding in words, with the catalogue number for the entry."""
        entry = self.entries.get(finding.facts.get("entry", ""))
        numbered = {"entry": entry.number or entry.pk} if entry else {}
        return sentence(Finding(finding.code, finding.severity, {**finding.facts, **numbered}))


def cards_of(breeds: Sequence[ShowBreed]) -> list[BreedCard]:
    """The award cards of several breeds of one show: the same number of queries however many there are."""
    entries = Entry.objects.filter(show_class__show_breed__in=breeds, state=Entry.State.ENTERED)
    order = ("-show_class__sex", "show_class__order", "show_class_id", "number", "id")  # dogs before bitches
    sheets = Sheet.objects.filter(show_class__show_breed__in=breeds)
    class_cards = {sheet.show_class_id: sheet for sheet in sheets if sheet.show_class_id}
    own = {sheet.show_breed_id: sheet for sheet in Sheet.objects.filter(show_breed__in=breeds)}
    cards = {
        one.pk: BreedCard(one, rules_of(one.show), class_cards=class_cards, sheet=own.get(one.pk)) for one in breeds
    }
    for entry in entries.select_related("dog", "show_class").order_by(*order):
        card = cards[entry.show_class.show_breed_id]
        card.entries[str(entry.pk)] = entry
        if entry.show_class not in card.classes:
            card.classes.append(entry.show_class)
    return list(cards.values())


def candidates_json(found: BreedCard) -> dict[str, Any]:
    """Who competes for each award of the breed and why, what is decided, and what is missing for it."""
    return {
        "awards": [_competing_json(found, one) for one in found.awards],
        "findings": found.findings,
        "missing": [f"{class_words(found.book, one)}: not signed" for one in found.unsigned],
    }


def _competing_json(found: BreedCard, one: Offered) -> dict[str, Any]:
    competitors = [
        {"entry": each.entry, "number": found.entries[each.entry].number, "reason": found.words(each.why)}
        for each in competing(found.book, one, found.card)
    ]
    waits = [other.code for other in waits_for(found.book, one, found.card)]
    told = {"code": one.code, "award": one.award.code, "sex": one.sex, "name": one.award.name}
    return {**told, "decided": found.card.decided.get(one.code), "candidates": competitors, "waits_for": waits}


def breed_json(breed: ShowBreed, book: RuleBook, name: str) -> dict[str, Any]:
    """A breed on the tablet: its classes with dogs, and the awards those could come to compete for, as data."""
    classes = [one for one in breed.classes.all() if one.entries.all()]
    reach = {(one.sex, one.code) for one in classes}
    return {
        "id": breed.pk,
        "sheet": f"breed:{breed.pk}",
        "name": name,
        "classes": [one.pk for one in classes],
        "awards": [award_json(one, book, reach) for one in within_reach(book, reach)],
    }


def award_json(one: Offered, book: RuleBook, classes: Classes) -> dict[str, Any]:
    award = one.award
    told = {"code": one.code, "award": award.code, "sex": one.sex, "name": award.name}
    rules = {"level": award.level, "kind": award.kind, "may_be_withheld": award.may_be_withheld}
    lines = [{name: value for name, value in asdict(line).items() if value} for line in award.candidates]
    return {**told, **rules, "competes": who_competes(book, one, classes), "lines": lines}


def who_competes(book: RuleBook, one: Offered, classes: Classes) -> str:
    """One sentence on who competes, naming only those of these classes that have dogs."""
    there = {code for sex, code in classes if one.sex in (None, sex)}
    present = [code for code in book.class_order if code in there]
    phrases = [phrase for line in one.award.candidates if (phrase := _phrase(book, line, present))]
    words = "; or ".join(phrases)
    return f"{words[:1].upper()}{words[1:]}." if words else ""


def _phrase(book: RuleBook, line: Candidates, present: Sequence[str]) -> str:
    who = _who(book, line, present)
    if not who:
        return ""
    graded = f", with {listed((book.grade(code).name for code in line.grades), 'or')}" if line.grades else ""
    other = f", of the sex that the {book.award(line.other_sex_than).name} is not" if line.other_sex_than else ""
    return f"{who}{graded}{other}"


def _who(book: RuleBook, line: Candidates, present: Sequence[str]) -> str:
    if line.second_to:
        return f"the second of the class that the winner of the {book.award(line.second_to).name} won"
    if line.winners_of:
        return f"whoever has the {listed((book.award(code).name for code in line.winners_of), 'or')}"
    named = [book.class_rule(code).name.lower() for code in present if code in line.classes]
    placed = listed((ORDINALS.get(place, str(place)) for place in line.places), "or")
    return f"the {placed if line.places else 'dogs'} of the {listed(named, 'or')} class" if named else ""


def class_words(book: RuleBook, show_class: ShowClass) -> str:
    return f"{book.class_rule(show_class.code).name} class, {SEXES[show_class.sex]}"
