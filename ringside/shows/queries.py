"""The shows a person works for, and how far a show is set up."""

from dataclasses import dataclass
from typing import Any

from django.db.models import Count, QuerySet
from django.utils.text import capfirst
from django.utils.translation import gettext

from ringside.core.models import AuditLine
from ringside.people.models import Person
from ringside.shows.appointed import appointments_of, parts_of
from ringside.shows.books import part_words, rules_of
from ringside.shows.may import MAY, doing_words
from ringside.shows.models import Appointed, Appointment, Ring, Role, Show, ShowBreed, ShowClass
from scoring.standards import loader as standards


def shows_of(user: Any) -> list[Show]:
    """The shows in whose office the person may work, newest first."""
    kinds = MAY["see-office"][1]
    return list(Show.objects.filter(roles__account=user, roles__kind__in=kinds).distinct().order_by("-first_day", "id"))


@dataclass(frozen=True)
class BreedLine:
    breed: ShowBreed
    name: str
    variety: str
    dogs: int
    parts: int


def breed_lines(show: Show) -> list[BreedLine]:
    rows = (
        ShowBreed.objects.filter(show=show)
        .select_related("judge", "ring")
        .annotate(dogs=Count("classes__entries", distinct=True), parts=Count("appointments", distinct=True))
        .order_by("day", "ring__name", "id")
    )
    return [BreedLine(row, *breed_names(row), row.dogs, row.parts) for row in rows]


def breed_names(breed: ShowBreed) -> tuple[str, str]:
    """The breed and its variety (empty where it has none) in the reader's language."""
    standard = standards.load(breed.breed)
    variety = next((gettext(one.name) for one in standard.varieties if one.code == breed.variety), "")
    return gettext(standard.name), variety


def breed_title(breed: ShowBreed) -> str:
    return ", ".join(filter(None, breed_names(breed)))


@dataclass(frozen=True)
class PartLine:
    """A part with who judges it: "Dogs", "Bitches, open class", "Best of breed". `own` is what it is given apart."""

    key: str  # "sex:class", either may be empty
    words: str
    told: Appointed
    own: Appointment | None


def part_lines(breed: ShowBreed) -> list[PartLine]:
    book = rules_of(breed.show)
    own = {(one.sex, one.code): one for one in breed.appointments.all()}
    return [
        PartLine(f"{one.sex}:{one.code}", capfirst(part_words(book, one)), one.appointed, own.get((one.sex, one.code)))
        for one in parts_of(breed)
    ]


def judges_of(show: Show) -> list[int]:
    """Whoever is appointed anywhere in the show."""
    of_breeds = ShowBreed.objects.filter(show=show, judge__isnull=False).values_list("judge", flat=True)
    of_parts = Appointment.objects.filter(show_breed__show=show, judge__isnull=False).values_list("judge", flat=True)
    return sorted({*of_breeds, *of_parts})


def judges_in(show: Show) -> list[Person]:
    return list(Person.objects.filter(pk__in=judges_of(show)).order_by("name", "id"))


def rings_of_person(show: Show, judge: Person) -> list[Ring]:
    """The rings where the judge is appointed: their papers bear the judge's name."""
    breeds = ShowBreed.objects.filter(show=show).select_related("judge", "ring").prefetch_related(appointments_of())
    told = [part.appointed for breed in breeds for part in parts_of(breed)]
    found = {one.ring.pk: one.ring for one in told if one.ring and one.judge and one.judge.pk == judge.pk}
    return sorted(found.values(), key=lambda ring: (ring.name, ring.pk))


def signed_by(show: Show, judge: Person) -> int:
    """How many classes the judge has signed; they stay the judge's."""
    signed = ShowClass.objects.filter(show_breed__show=show, card__signed__isnull=False)
    classes = signed.select_related("judged_by", "show_breed__judge").prefetch_related(appointments_of("show_breed__"))
    told = [one.appointed.judge for one in classes]
    return sum(1 for one in told if one and one.pk == judge.pk)


def roles_in(show: Show) -> list[Role]:
    return list(Role.objects.filter(show=show).select_related("account").order_by("kind", "account__email", "id"))


@dataclass(frozen=True)
class Doing:
    """One line of the table of rights: what it is, and for each role in order whether it may."""

    words: str
    allowed: tuple[bool, ...]


def rights_table() -> tuple[list[str], list[Doing]]:
    """The names of the roles, and every doing with who may do it, straight from the table that decides."""
    kinds = list(Role.Kind)
    doings = [Doing(doing_words(doing), tuple(kind in roles for kind in kinds)) for doing, (_, roles) in MAY.items()]
    return [str(kind.label) for kind in kinds], doings


def audit_of(show: Show) -> QuerySet[AuditLine]:
    return AuditLine.objects.filter(scope=f"show:{show.pk}").select_related("who").order_by("-at", "-id")
