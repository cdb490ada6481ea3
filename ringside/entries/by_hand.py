"""An entry that the secretary types in: checked by the same rules as a line of a file, in one class or several."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date
from typing import Any

from django.db import IntegrityError, transaction
from django.db.models import Q, QuerySet

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.dogs.models import Dog
from ringside.entries import queries, taking
from ringside.entries.checking import CheckedLine, Dates, check_line, compare
from ringside.entries.models import Entry
from ringside.entries.reading.cells import clean
from ringside.people.models import Account
from ringside.shows.access import require
from ringside.shows.books import rules_of
from ringside.shows.may import MAY
from ringside.shows.models import Role, Show
from scoring.findings import Finding, refuses
from scoring.standards import loader as standards

STYLE = Dates("dd.mm.yyyy")
MOST_FOUND = 20
COPIED = ("name", "call_name", "variety", "sex", "studbook", "chip", "sire", "dam", "breeder")


def check(show: Show, texts: Mapping[str, str], today: date) -> CheckedLine:
    """What is to be said of an entry typed in, and what would be kept of it: of the first class, where several."""
    return check_each(show, texts, today)[0]


def check_each(show: Show, texts: Mapping[str, str], today: date) -> list[CheckedLine]:
    """One checked line for each class that is named, with commas between; each with what is said of all."""
    facts = queries.facts_of(show, today)
    cleaned = {field: clean(text) for field, text in texts.items()}
    classes = classes_in(cleaned.get("class", ""))
    alone = [check_line(at, {**cleaned, "class": code}, facts, STYLE) for at, code in enumerate(classes, 1)]
    most = facts.book.classes_per_dog
    known = queries.known_dogs(show, [line.values for line in alone])
    lines = [compare([line], known, most)[0] for line in alone]
    if most is None or len(lines) <= most:
        return lines
    too_many = refuses("too-many-classes", field="class", most=most, chosen=len(lines))
    return [replace(line, findings=(*line.findings, too_many)) for line in lines]


def classes_in(text: str) -> list[str]:
    """The classes that a cell names, each once; one empty class where it names none."""
    return list(dict.fromkeys(part.strip() for part in text.split(",") if part.strip())) or [""]


def findings_of(lines: Sequence[CheckedLine]) -> list[Finding]:
    """Everything that is said of the lines, each once."""
    said: dict[str, Finding] = {}
    for finding in (finding for line in lines for finding in line.findings):
        said.setdefault(repr(finding), finding)
    return list(said.values())


@transaction.atomic
def enter(*, who: Any, show: Show, texts: Mapping[str, str], today: date) -> Entry:
    """One entry, in the first class that is named. NotNow where something must be mended first."""
    first = classes_in(texts.get("class", ""))[0]
    return enter_each(who=who, show=show, texts={**texts, "class": first}, today=today)[0]


@transaction.atomic
def enter_each(*, who: Any, show: Show, texts: Mapping[str, str], today: date) -> list[Entry]:
    """An entry in each class that is named: in all of them or, where one cannot be, in none."""
    require(who, show, "take-entries")
    Show.objects.select_for_update().get(pk=show.pk)
    lines = check_each(show, texts, today)
    if any(line.refused for line in lines):
        raise NotNow("This entry cannot be taken as it is: mend what is named.")
    try:
        with transaction.atomic():
            entries = taking.enter(show, rules_of(show), lines)
    except IntegrityError:
        raise NotNow("Somebody else has just entered this dog. Look at the list.") from None
    for entry in entries:
        record(who=who, doing="enter-by-hand", show_id=show.pk, about=f"entry:{entry.pk}")
    return entries


def dogs_like(user: Account, text: str) -> list[Dog]:
    """Dogs on record by number or a part of the name, of the shows in whose office this person works; no others."""
    words = text.replace("\x00", "").split()[:6]
    if not words:
        return []
    found = _on_record_for(user)
    for word in words:
        found = found.filter(Q(name__icontains=word) | Q(studbook__icontains=word) | Q(chip=word))
    return list(found.order_by("name", "id")[:MOST_FOUND])


def _on_record_for(user: Account) -> QuerySet[Dog]:
    """The dogs of the shows in whose office this person works, each once."""
    shows = Role.objects.filter(account=user, kind__in=MAY["take-entries"][1]).values("show")
    return Dog.objects.filter(entries__show__in=shows).distinct()


def texts_of(user: Account, dog_id: int, show: Show) -> dict[str, str]:
    """What is on record of such a dog, as the form's first values; nothing where it is not one of those."""
    dog = _on_record_for(user).filter(pk=dog_id).first()
    if dog is None:
        return {}
    owner = dog.owners.order_by("id").first()
    known = {title.code for title in rules_of(show).titles}
    return {
        **{field: getattr(dog, field) for field in COPIED},
        "breed": standards.load(dog.breed).name,
        "born": f"{dog.born:%d.%m.%Y}",
        "owner": owner.name if owner else "",
        "email": owner.email if owner else "",
        "titles": ", ".join(title.code for title in dog.titles.all() if title.code in known),
        "certificates": ", ".join(one.code for one in dog.certificates.all()),
        "neutered": "yes" if dog.neutered else "no",
    }
