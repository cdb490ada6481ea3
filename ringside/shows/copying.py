"""An earlier show as the start of a new one: days shifted; rings, judges, breeds, classes, settings; no entries."""

from datetime import date, timedelta

from django.db import transaction
from django.dispatch import Signal

from ringside.core.audit import record
from ringside.people.models import Account
from ringside.shows.access import require
from ringside.shows.actions import start_show
from ringside.shows.appointed import appointments_of
from ringside.shows.appointing import let_judge
from ringside.shows.models import Appointment, Ring, Show, ShowBreed, ShowClass

# For the rooms that come after this one, each of which copies what it keeps of a show itself. Receivers take `source`,
# `show` and `by`, the days by which every day moves; one that fails stops the copy.
show_copied = Signal()
SETTINGS = ("place", "rules", "overlays", "classes_offered", "critiques_public")


@transaction.atomic
def copy_show(*, who: Account, source: Show, name: str, first_day: date) -> Show:
    """The new show; whoever copies is its owner and secretary, and its judges may work in it."""
    require(who, source, "change-show")
    by = first_day - source.first_day
    days = {field: shifted(getattr(source, field), by) for field in ("entries_open", "entries_close")}
    told = {field: getattr(source, field) for field in SETTINGS}
    show = start_show(who=who, name=name, first_day=first_day, last_day=source.last_day + by, **days, **told)
    rings = {
        ring.pk: Ring.objects.create(show=show, name=ring.name, place=ring.place)
        for ring in source.rings.order_by("id")
    }
    found = ShowBreed.objects.filter(show=source).select_related("judge__account")
    for breed in found.prefetch_related(appointments_of(), "classes").order_by("id"):
        _copy_breed(show, breed, rings, by)
    show_copied.send(Show, source=source, show=show, by=by)
    record(who=who, doing="copy-show", show_id=show.pk, about=f"show:{source.pk}")
    return show


def _copy_breed(show: Show, breed: ShowBreed, rings: dict[int, Ring], by: timedelta) -> None:
    new = ShowBreed.objects.create(
        show=show, breed=breed.breed, variety=breed.variety, judge=breed.judge, ring=rings.get(breed.ring_id or 0),
        day=shifted(breed.day, by),
    )  # fmt: skip
    classes = [ShowClass(show_breed=new, sex=c.sex, code=c.code, order=c.order) for c in breed.classes.all()]
    ShowClass.objects.bulk_create(classes)
    for one in breed.appointments.all():
        Appointment.objects.create(
            show_breed=new, sex=one.sex, code=one.code, judge=one.judge, ring=rings.get(one.ring_id or 0),
            day=shifted(one.day, by),
        )  # fmt: skip
    for judge in filter(None, (breed.judge, *(one.judge for one in breed.appointments.all()))):
        let_judge(show, judge)


def shifted(day: date | None, by: timedelta) -> date | None:
    return day + by if day else None
