"""Parts of a breed judged apart, and a judge replaced. Who signed a class stays its judge."""

from collections.abc import Iterable, Mapping
from datetime import date
from typing import Any

from django.db import transaction
from django.db.models import Q, QuerySet

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.people.actions import person_for
from ringside.people.models import Account, Person
from ringside.shows.access import require
from ringside.shows.appointed import appointments_of
from ringside.shows.models import Appointment, Ring, Role, Show, ShowBreed, ShowClass
from ringside.shows.queries import judges_of


def keep_judges(breeds: QuerySet[ShowBreed]) -> None:
    """Writes down who judged what is signed of these breeds, before their appointments change."""
    classes = ShowClass.objects.filter(show_breed__in=breeds, card__signed__isnull=False, judged_by=None)
    for one in classes.select_related("show_breed__judge").prefetch_related(appointments_of("show_breed__")):
        one.judged_by = one.appointed.judge
        one.save(update_fields=["judged_by"])
    awarded = breeds.filter(awards_card__signed__isnull=False, awards_judged_by=None)
    for breed in awarded.select_related("judge").prefetch_related(appointments_of()):
        breed.awards_judged_by = breed.appointed.judge
        breed.save(update_fields=["awards_judged_by"])


def let_judge(show: Show, judge: Person) -> None:
    """The judge may work in the show's rings; in which of them follows from the appointments."""
    if judge.account:
        Role.objects.get_or_create(show=show, account=judge.account, kind=Role.Kind.JUDGE)


def let_go(show: Show, judges: Iterable[Person | None]) -> None:
    """Those of them who are appointed nowhere in the show any more work in it no longer."""
    accounts = {judge.account_id for judge in judges if judge} - {None}
    still = Person.objects.filter(pk__in=judges_of(show), account__in=accounts).values_list("account_id", flat=True)
    Role.objects.filter(show=show, account__in=accounts - set(still), kind=Role.Kind.JUDGE).delete()


def following(whole: ShowBreed) -> QuerySet[ShowBreed]:
    """The varieties that are judged with their breed: those that nobody judges yet, or that are appointed alike."""
    alike = Q(judge=whole.judge, ring=whole.ring, day=whole.day) if whole.judge else Q(judge=None)
    varieties = ShowBreed.objects.filter(show=whole.show_id, breed=whole.breed).exclude(variety="")
    return varieties.filter(alike | Q(judge=None))


def with_parts_of(whole: ShowBreed, variety: ShowBreed) -> None:
    """Judges a variety with its breed in every part: who judges its bitches judges those of the variety."""
    parts = whole.appointments.order_by("id").values("sex", "code", "judge_id", "ring_id", "day")
    Appointment.objects.bulk_create([Appointment(show_breed=variety, **part) for part in parts])


def _with_part(show_breed: ShowBreed, sex: str, code: str) -> list[ShowBreed]:
    """The breed, and its varieties that follow it in this part too; a variety has none of its own."""
    varieties = following(show_breed).prefetch_related(appointments_of()) if not show_breed.variety else ()
    told = _told(show_breed, sex, code)
    return [show_breed, *(one for one in varieties if _told(one, sex, code) == told)]


def _told(unit: ShowBreed, sex: str, code: str) -> tuple[Any, ...]:
    own = [one for one in unit.appointments.all() if (one.sex, one.code) == (sex, code)]
    return tuple((one.judge_id, one.ring_id, one.day) for one in own)


@transaction.atomic
def take_appointment_away(*, who: Account, show_breed: ShowBreed) -> bool:
    """Undoes an appointment made by mistake, with its parts; whether the breed is gone from the show altogether.

    A breed that no dog was entered in goes; otherwise it waits for its judge again, and its varieties that follow it
    too. A variety is judged with its breed again.
    """
    show = show_breed.show
    require(who, show, "change-show")
    units = [show_breed, *(following(show_breed) if show_breed.judge and not show_breed.variety else ())]
    if _is_begun(units):
        raise NotNow("Something of this breed is written or signed already. Appoint another judge instead.")
    judges = [one.judge for unit in units for one in (unit, *unit.appointments.select_related("judge"))]
    wider = ShowBreed.objects.filter(show=show, breed=show_breed.breed, variety="").exclude(pk=show_breed.pk).first()
    told = {"judge": wider and wider.judge, "ring": wider and wider.ring, "day": wider and wider.day}
    ShowBreed.objects.filter(pk__in=[unit.pk for unit in units]).update(**told)
    Appointment.objects.filter(show_breed__in=units).delete()
    if wider:
        with_parts_of(wider, show_breed)
    is_gone = not show_breed.classes.filter(entries__isnull=False).exists()
    record(who=who, doing="take-appointment-away", show_id=show.pk, about=f"breed:{show_breed.pk}")
    if is_gone:
        show_breed.delete()
    let_go(show, judges)
    return is_gone


def _is_begun(units: Iterable[ShowBreed]) -> bool:
    of_classes = Q(card__isnull=False) | Q(entries__sheet__isnull=False)
    classes = ShowClass.objects.filter(of_classes, show_breed__in=units)
    return classes.exists() or any(hasattr(unit, "awards_card") for unit in units)


@transaction.atomic
def appoint_part(
    *, who: Account, show_breed: ShowBreed, sex: str, code: str, judge_name: str, judge_email: str, ring: str,
    day: date | None,
) -> None:  # fmt: skip
    """Gives a sex, a class or best of breed a judge, ring or day of its own; nothing given: as the breed again.

    Varieties that are judged with their breed go along, but for those whose part was set apart otherwise.
    """
    show = show_breed.show
    require(who, show, "change-show")
    units = _with_part(show_breed, sex, code)
    keep_judges(ShowBreed.objects.filter(pk__in=[unit.pk for unit in units]))
    parts = Appointment.objects.filter(show_breed__in=units, sex=sex, code=code)
    before = [one.judge for one in parts.select_related("judge")]
    if not (judge_name or ring or day):
        parts.delete()
    else:
        judge = person_for(name=judge_name.strip(), email=judge_email.strip().lower()) if judge_name else None
        place = Ring.objects.get_or_create(show=show, name=ring.strip())[0] if ring else None
        told: Mapping[str, Any] = {"judge": judge, "ring": place, "day": day}
        for unit in units:
            Appointment.objects.update_or_create(show_breed=unit, sex=sex, code=code, defaults=told)
        if judge:
            let_judge(show, judge)
    let_go(show, before)
    about = {"sex": sex, "class": code, "ring": ring, "day": day.isoformat() if day else ""}
    record(who=who, doing="appoint-part", show_id=show.pk, about=f"breed:{show_breed.pk}", **about)


@transaction.atomic
def replace_judge(*, who: Account, show: Show, judge: Person, name: str, email: str, why: str) -> Person:
    """Another judge for everything of the show that this judge has not signed; rings and days stay.

    A tablet paired with the ring goes on; the new judge's account is let into it, the old one's no longer.
    """
    require(who, show, "change-show")
    new = person_for(name=name.strip(), email=email.strip().lower())
    if new.pk == judge.pk:
        raise NotNow("This is the same judge. Name the one who judges instead.")
    breeds = ShowBreed.objects.filter(show=show)
    parts = Appointment.objects.filter(show_breed__show=show, judge=judge)
    if not parts.exists() and not breeds.filter(judge=judge).exists():
        raise NotNow("This judge is not appointed any more.")
    keep_judges(breeds)
    changed = breeds.filter(judge=judge).update(judge=new) + parts.update(judge=new)
    let_judge(show, new)
    if judge.account_id:
        Role.objects.filter(show=show, account=judge.account_id, kind=Role.Kind.JUDGE).delete()
    people = {"person": judge.pk, "new_person": new.pk, "why": why}
    record(who=who, doing="replace-judge", show_id=show.pk, about=f"show:{show.pk}", appointments=changed, **people)
    return new
