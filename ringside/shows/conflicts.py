"""What stands against judges' appointments while they can change: own dogs, dogs handled, too many dogs, two rings.

Names are compared as papers write them, so a namesake is found too: the secretary decides what a finding means.
"""

import re
import tomllib
from calendar import monthrange
from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

from django.db.models import Prefetch, Q
from django.utils.translation import gettext as _
from django.utils.translation import gettext_noop

from ringside.people.models import Person
from ringside.shows.appointed import appointments_of, parts_of
from ringside.shows.models import Ring, Show, ShowBreed, ShowClass
from scoring.findings import Finding, warns
from scoring.standards.names import plain

# The words of judge-limits.toml, as they are translated.
LIMIT_WORDS = (gettext_noop("with a written critique for each dog"),)
JOINED = re.compile(r"\s*(?:&|/|;|,|\+|\band\b|\bund\b|\bet\b|\by\b)\s*")


@dataclass(frozen=True, slots=True)
class Limit:
    """The most dogs a judge may judge on a day, by one governing body."""

    rules: tuple[str, ...]
    dogs: int
    words: str
    source: str
    verified: str


@cache
def _told() -> dict[str, Any]:
    return tomllib.loads(Path(__file__).with_name("judge-limits.toml").read_text(encoding="utf-8"))


@cache
def limits() -> tuple[Limit, ...]:
    return tuple(Limit(**{**row, "rules": tuple(row["rules"])}) for row in _told()["limit"])


@dataclass(frozen=True, slots=True)
class Judged:
    """What one judge is appointed to: a class with dogs, or a breed that has none yet."""

    judge: Person
    ring: Ring | None
    day: date | None
    class_id: int | None


@dataclass(frozen=True, slots=True)
class Handled:
    """That a dog was, or is to be, handled at a show: by whom, and the day by which the show counts."""

    handler: str
    show: str
    day: date


def findings_on_judges(show: Show) -> list[Finding]:
    """Everything at once, in the order of severity: own and handled dogs, too many dogs, two rings."""
    judged = list(_judged(show))
    dogs = _entered(show)
    return [*_own_dogs(judged, dogs, _handled(show)), *_too_many(show, judged, dogs), *_two_rings(judged)]


def _judged(show: Show) -> Iterator[Judged]:
    breeds = ShowBreed.objects.filter(show=show).select_related("judge", "ring", "awards_judged_by")
    classes = ShowClass.objects.select_related("judged_by").order_by("-sex", "order", "id")
    for breed in breeds.prefetch_related(appointments_of(), Prefetch("classes", classes)).order_by("id"):
        of_breed = [(part.appointed, None) for part in parts_of(breed)]
        for one in breed.classes.all():
            one.show_breed = breed
        of_classes = [(one.appointed, one.pk) for one in breed.classes.all()]
        for told, class_id in [*of_breed, *of_classes]:
            if told.judge:
                yield Judged(told.judge, told.ring, told.day, class_id)


def _own_dogs(judged: list[Judged], dogs: dict[int, list[Any]], handled: dict[int, list[Handled]]) -> Iterator[Finding]:
    for one in judged:
        for dog, number, name, breeder, owners in dogs.get(one.class_id or 0, []):
            facts = {"judge": one.judge.name, "dog": name, "number": number or _("not numbered yet")}
            if any(_is_same(one.judge, owner) for owner in owners):
                yield warns("judge-owns-dog", **facts)
            elif _is_named(one.judge, breeder):
                yield warns("judge-bred-dog", **facts)
            elif found := next((told for told in handled[dog] if _is_named(one.judge, told.handler)), None):
                yield warns("judge-handles-dog", **facts, show=found.show, day=found.day.isoformat())


def _is_named(judge: Person, text: str) -> bool:
    return _name(judge.name) in map(_name, JOINED.split(text))


def _handled(show: Show) -> dict[int, list[Handled]]:
    """Who handled each entered dog at this show, then at those that ended lately, the last of them first.

    Rule: a judge does not judge a dog that they handled in the twelve months before the show; the months and how well
    they are known are in judge-limits.toml. A show counts by its last day, the day one year before this show's first
    day among them. Limits: shows of this site, and handlers that their entries name.
    """
    lately = Q(last_day__gte=_months_before(show.first_day, _told()["handled"]["months"]), last_day__lte=show.first_day)
    here = Q(entries__dog__entries__show=show, entries__dog__entries__state="entered")
    rows = Show.objects.filter(here, Q(pk=show.pk) | lately, entries__state="entered", entries__handler__gt="")
    handled: dict[int, list[Handled]] = defaultdict(list)
    told = rows.order_by("-last_day", "-pk").values_list("entries__dog", "entries__handler", "name", "last_day", "pk")
    for dog, handler, name, day, pk in told.distinct():
        one = Handled(handler, name, show.first_day if pk == show.pk else day)
        handled[dog].insert(0 if pk == show.pk else len(handled[dog]), one)
    return handled


def _months_before(day: date, months: int) -> date:
    """The same day so many months earlier, or the last one of a shorter month."""
    year, month = divmod(day.year * 12 + day.month - 1 - months, 12)
    return date(year, month + 1, min(day.day, monthrange(year, month + 1)[1]))


def _entered(show: Show) -> dict[int, list[tuple[int, Any, str, str, list[Person]]]]:
    """The dogs entered in each class: id, number, name, breeder, owners."""
    rows = ShowClass.objects.filter(show_breed__show=show, entries__state="entered").values_list(
        "pk", "entries__number", "entries__dog", "entries__dog__name", "entries__dog__breeder"
    )
    owners: dict[int, list[Person]] = defaultdict(list)
    found = Person.objects.filter(dogs__entries__show=show).distinct()
    for dog, person in found.values_list("dogs", "pk"):
        owners[dog].append(person)
    people = Person.objects.in_bulk({pk for pks in owners.values() for pk in pks})
    entered: dict[int, list[Any]] = defaultdict(list)
    for class_id, number, dog, name, breeder in rows.order_by("entries__number", "entries__id"):
        entered[class_id].append((dog, number, name, breeder, [people[pk] for pk in owners[dog]]))
    return entered


def _is_same(judge: Person, owner: Person) -> bool:
    """One person on record, one account, or one name as papers write it."""
    if judge.pk == owner.pk or (judge.account_id and judge.account_id == owner.account_id):
        return True
    return _name(judge.name) == _name(owner.name)


def _name(text: str) -> str:
    return plain(text)


def _too_many(show: Show, judged: Iterable[Judged], entered: dict[int, list[Any]]) -> Iterator[Finding]:
    """The day's limit of the governing body, where one is known."""
    limit = next((one for one in limits() if show.rules in one.rules), None)
    if limit is None:
        return
    dogs: dict[tuple[str, date], int] = defaultdict(int)
    for one in judged:
        if one.day:
            dogs[one.judge.name, one.day] += len(entered.get(one.class_id or 0, []))
    for (judge, day), count in dogs.items():
        if count > limit.dogs:
            known = _("from memory, to be confirmed") if limit.verified == "memory" else limit.source
            yield warns(
                "over-days-limit", judge=judge, day=day.isoformat(), dogs=count, most=limit.dogs, how=_(limit.words),
                known=known,
            )  # fmt: skip


def _two_rings(judged: Iterable[Judged]) -> Iterator[Finding]:
    rings: dict[tuple[str, date], list[str]] = defaultdict(list)
    for one in judged:
        if one.day and one.ring and str(one.ring) not in rings[one.judge.name, one.day]:
            rings[one.judge.name, one.day].append(str(one.ring))
    for (judge, day), names in rings.items():
        if len(names) > 1:
            yield warns("judge-in-two-rings", judge=judge, day=day.isoformat(), rings=names)
