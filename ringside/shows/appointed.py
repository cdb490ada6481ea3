"""Who judges what, asked of the database: the classes of a ring, the rings of a judge.

What one class is appointed to is `ShowClass.appointed`; here the same answer is made for many at once.
"""

from dataclasses import dataclass
from typing import Any

from django.db.models import BigIntegerField, DateField, F, Field, OuterRef, Prefetch, QuerySet, Subquery
from django.db.models.functions import Coalesce

from ringside.people.models import Account
from ringside.shows.models import Appointed, Appointment, Ring, Show, ShowBreed, ShowClass


def appointments_of(path: str = "") -> "Prefetch[Any, Any, Any]":
    """What `appointed` reads, fetched for all breeds at the end of a path such as "show_breed__"."""
    return Prefetch(f"{path}appointments", Appointment.objects.select_related("judge", "ring"))


def with_appointed(classes: QuerySet[ShowClass]) -> QuerySet[ShowClass]:
    """The classes with `ring_now` and `day_now`, for filters and order."""
    return classes.annotate(ring_now=_of_class("ring_id", BigIntegerField()), day_now=_of_class("day", DateField()))


def _of_class(name: str, kind: "Field[Any, Any]") -> Coalesce:
    own = Appointment.objects.filter(show_breed=OuterRef("show_breed"), sex=OuterRef("sex"))
    of_class, of_sex = own.filter(code=OuterRef("code")), own.filter(code="")
    wider = [Subquery(one.values(name)[:1], output_field=kind) for one in (of_class, of_sex)]
    return Coalesce(*wider, F(f"show_breed__{name}"), output_field=kind)


def classes_in(ring: Ring) -> QuerySet[ShowClass]:
    return with_appointed(ShowClass.objects.filter(show_breed__show=ring.show_id)).filter(ring_now=ring.pk)


def breeds_awarded_in(ring: Ring) -> QuerySet[ShowBreed]:
    """The breeds whose best of breed is judged in the ring."""
    best = Appointment.objects.filter(show_breed=OuterRef("pk"), sex="", code="").values("ring_id")[:1]
    return (
        ShowBreed.objects.filter(show=ring.show_id)
        .alias(ring_now=Coalesce(Subquery(best), F("ring_id"), output_field=BigIntegerField()))
        .filter(ring_now=ring.pk)
    )


def days_of(show: Show) -> list[tuple[Any, ...]]:
    """The days that are set, as (id, breed, variety, sex, class, day); sex and class are empty for a whole breed."""
    breeds = ShowBreed.objects.filter(show=show, day__isnull=False).order_by("id")
    parts = Appointment.objects.filter(show_breed__show=show, day__isnull=False).exclude(sex="").order_by("id")
    of_breeds = [(*row[:3], "", "", row[3]) for row in breeds.values_list("id", "breed", "variety", "day")]
    return [
        *of_breeds,
        *parts.values_list("id", "show_breed__breed", "show_breed__variety", "sex", "code", "day"),
    ]


@dataclass(frozen=True, slots=True)
class Part:
    """A part of a breed and what it is appointed to: a sex, a class of it, or best of breed (both empty)."""

    sex: str
    code: str
    appointed: Appointed


def parts_of(breed: ShowBreed) -> list[Part]:
    """Both sexes, the classes with an appointment of their own, best of breed; each with what holds for it."""
    apart = sorted({(one.sex, one.code) for one in breed.appointments.all() if one.code}, reverse=True)
    keys = [("dog", ""), ("bitch", ""), *apart, ("", "")]
    return [Part(sex, code, breed.appointed_for(sex, code)) for sex, code in keys]


def is_undivided(parts: list[Part]) -> bool:
    """Whether one judge judges all of the breed in one ring on one day."""
    return len({part.appointed for part in parts}) == 1


def rings_of_judge(account: Account, show: Show | None = None) -> list[Ring]:
    """The rings where somebody is appointed, in one show or in all; two queries however many breeds."""
    breeds = ShowBreed.objects.filter(judge__account=account) | ShowBreed.objects.filter(
        appointments__judge__account=account
    )
    breeds = breeds.filter(show=show) if show else breeds
    told = breeds.distinct().select_related("judge", "ring__show").prefetch_related(appointments_of())
    found = {ring.pk: ring for breed in told for ring in _rings_in(breed, account)}
    return [found[pk] for pk in sorted(found)]


def _rings_in(breed: ShowBreed, account: Account) -> list[Ring]:
    found = [Appointed(breed.judge, breed.ring, breed.day), *(part.appointed for part in parts_of(breed))]
    return [one.ring for one in found if one.ring and one.judge and one.judge.account_id == account.pk]
