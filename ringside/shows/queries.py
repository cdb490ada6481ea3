"""The shows a person works for, and how far a show is set up."""

from dataclasses import dataclass
from typing import Any

from django.db.models import Count

from ringside.shows.may import MAY
from ringside.shows.models import Role, Show, ShowBreed
from scoring.standards import loader as standards


def shows_of(user: Any) -> list[Show]:
    """The shows in whose office the person may work, newest first."""
    kinds = MAY["see-office"][1]
    return list(Show.objects.filter(roles__account=user, roles__kind__in=kinds).distinct().order_by("-first_day", "id"))


@dataclass(frozen=True)
class Appointment:
    breed: ShowBreed
    name: str
    dogs: int


def appointments_of(show: Show) -> list[Appointment]:
    rows = (
        ShowBreed.objects.filter(show=show)
        .select_related("judge", "ring")
        .annotate(dogs=Count("classes__entries"))
        .order_by("day", "ring__name", "id")
    )
    return [Appointment(row, standards.load(row.breed).name, row.dogs) for row in rows]


def roles_in(show: Show) -> list[Role]:
    return list(Role.objects.filter(show=show).select_related("account").order_by("kind", "account__email", "id"))
