"""The classes of a show for one dog: which are open to it, and why the others are not."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import Any

from django.utils.text import capfirst
from django.utils.translation import gettext, ngettext

from ringside.core.sentences import sentence
from ringside.dogs.models import Dog
from ringside.entries.checking import ShowFacts, Wanted, check_class
from ringside.entries.checking.wanted import day_of
from ringside.shows.books import class_name, offered_classes
from ringside.shows.models import Show, ShowBreed
from scoring.findings import Finding, refuses
from scoring.rules.ages import completed_months, counting_day
from scoring.rules.rulebook import ClassRule, RuleBook
from scoring.standards import loader as standards

ASKED = ("least_months", "most_months", "titles", "documents")


@dataclass(frozen=True)
class Offer:
    """One class for one dog. `said` are sentences; `memory`: some of what it asks is not confirmed from a text."""

    code: str
    name: str
    ages: str
    is_open: bool
    said: tuple[str, ...]
    memory: bool


def wanted_of(dog: Dog, class_code: str = "") -> Wanted:
    """A dog on record as the checks know it."""
    told = ("name", "call_name", "breed", "variety", "sex", "born", "studbook", "chip", "sire", "dam", "breeder")
    fields: dict[str, Any] = {name: getattr(dog, name) for name in told}
    return Wanted(
        **fields,
        class_code=class_code,
        titles=tuple(title.code for title in dog.titles.all()),
        certificates=tuple(one.code for one in dog.certificates.all()),
        neutered=dog.neutered,
    )


def offers_for(values: Wanted, show: Show, facts: ShowFacts) -> list[Offer]:
    """Every class of the dog's sex that the show offers, in catalogue order."""
    return [_offer(rule, values, facts) for rule in offered_classes(show) if values.sex in rule.sexes]


def _offer(rule: ClassRule, values: Wanted, facts: ShowFacts) -> Offer:
    found = [one for one in check_class(replace(values, class_code=rule.code), facts) if one.code != "classes-open"]
    return Offer(
        code=rule.code,
        name=capfirst(class_name(rule)),
        ages=ages_of(rule),
        is_open=all(one.severity != "refuses" for one in found),
        said=tuple(sentence(one) for one in found),
        memory=partly_from_memory(rule),
    )


def ages_of(rule: ClassRule) -> str:
    """The ages a class takes, in words."""
    if rule.most_months is None:
        least = rule.least_months
        return gettext("{age} and over").format(age=in_words(least)) if least else gettext("any age")
    return gettext("{least} to {most} months").format(least=rule.least_months, most=rule.most_months)


def partly_from_memory(rule: ClassRule) -> bool:
    """Whether something that the class asks is not confirmed from a text."""
    return any(rule.provenance.of(key).verified == "memory" for key in ASKED if getattr(rule, key))


def age_told(values: Wanted, facts: ShowFacts) -> tuple[str, date] | None:
    """The dog's age in words and the day on which the rules count them."""
    if values.born is None:
        return None
    day = day_of(facts, values) or facts.first_day
    counted_on = counting_day(facts.book.age_day, day, facts.first_day)
    return in_words(completed_months(values.born, counted_on)), counted_on


def in_words(months: int) -> str:
    """An age as people say it: in months up to two years, then in years and months."""
    years, rest = divmod(months, 12)
    if years < 2:
        return _months(months)
    told = ngettext("{years} year", "{years} years", years).format(years=years)
    return gettext("{years} and {months}").format(years=told, months=_months(rest)) if rest else told


def _months(months: int) -> str:
    return ngettext("{months} month", "{months} months", months).format(months=months)


def findings_on(values: Wanted, classes: Sequence[str], show: Show, facts: ShowFacts) -> list[Finding]:
    """All that is to be said of a dog in these classes of this show."""
    return [*_choice(classes, show, facts.book), *_breed(values, show), *_each(values, classes, facts)]


def _choice(classes: Sequence[str], show: Show, book: RuleBook) -> Iterator[Finding]:
    unknown = set(classes) - {rule.code for rule in offered_classes(show)}
    if not classes or unknown:
        yield refuses("class-missing", field="class")
    if book.classes_per_dog is not None and len(classes) > book.classes_per_dog:
        yield refuses("too-many-classes", field="class", most=book.classes_per_dog, chosen=len(classes))


def _breed(values: Wanted, show: Show) -> Iterator[Finding]:
    """Once breeds have their judges, the show takes those breeds; before, any breed with a standard here."""
    judged = set(ShowBreed.objects.filter(show=show, judge__isnull=False).values_list("breed", flat=True))
    if judged and values.breed and values.breed not in judged:
        names = sorted(standards.load(code).name for code in judged)
        yield refuses("breed-not-at-show", field="breed", breed=standards.load(values.breed).name, known=names)


def _each(values: Wanted, classes: Sequence[str], facts: ShowFacts) -> Iterator[Finding]:
    for code in classes:
        if code in facts.book.class_order:
            yield from check_class(replace(values, class_code=code), facts)
