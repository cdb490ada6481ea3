"""Setting a show up: each change once, with its permission, its transaction and its audit line."""

from datetime import date
from typing import Any

from django.db import transaction
from django.utils.text import slugify

from ringside.core.audit import record
from ringside.core.denied import Denied
from ringside.people.actions import account_for, person_for
from ringside.people.models import Account
from ringside.shows.access import require
from ringside.shows.appointing import following, keep_judges, let_go, let_judge
from ringside.shows.models import Ring, Role, Show, ShowBreed


@transaction.atomic
def start_show(*, who: Account, **fields: Any) -> Show:
    """A new show; whoever starts it is its secretary and owner."""
    if not who.runs_site:
        raise Denied("You may not start shows on this site. Whoever runs it can let you.")
    show = Show.objects.create(slug=slugify(fields["name"])[:60], **fields)
    for kind in (Role.Kind.OWNER, Role.Kind.SECRETARY):
        Role.objects.create(show=show, account=who, kind=kind)
    record(who=who, doing="start-show", show_id=show.pk)
    return show


@transaction.atomic
def change_show(*, who: Account, show: Show, **fields: Any) -> None:
    require(who, show, "change-show")
    for name, value in fields.items():
        setattr(show, name, value)
    show.save(update_fields=list(fields))
    record(who=who, doing="change-show", show_id=show.pk, fields=sorted(fields))


@transaction.atomic
def appoint(
    *, who: Account, show: Show, breed: str, judge_name: str, judge_email: str, ring: str, day: date, variety: str = ""
) -> ShowBreed:
    """Gives a breed, or one variety of it, its judge, ring and day, and the judge the right to work in that ring.

    Varieties that are judged with their breed go along with it; those appointed apart stay.
    """
    require(who, show, "change-show")
    judge = person_for(name=judge_name.strip(), email=judge_email.strip().lower())
    place, _ = Ring.objects.get_or_create(show=show, name=ring.strip())
    units = ShowBreed.objects.filter(show=show, breed=breed)
    keep_judges(units)
    before = units.filter(variety=variety).select_related("judge", "ring").first()
    with_breed = following(before) if before else units.filter(judge=None)
    along = [] if variety else list(with_breed.values_list("pk", flat=True))
    told = {"judge": judge, "ring": place, "day": day}
    appointed, _ = ShowBreed.objects.update_or_create(show=show, breed=breed, variety=variety, defaults=told)
    units.filter(pk__in=along).update(**told)
    let_judge(show, judge)
    let_go(show, [before.judge] if before else [])
    record(who=who, doing="appoint", show_id=show.pk, about=f"breed:{appointed.pk}", ring=place.name)
    return appointed


@transaction.atomic
def give_role(*, who: Account, show: Show, email: str, kind: str) -> Role:
    require(who, show, "change-show")
    role, _ = Role.objects.get_or_create(show=show, account=account_for(email=email), kind=kind)
    record(who=who, doing="give-role", show_id=show.pk, about=f"role:{role.pk}", kind=kind)
    return role


@transaction.atomic
def take_role(*, who: Account, show: Show, role_id: int) -> None:
    require(who, show, "change-show")
    role = Role.objects.filter(show=show, pk=role_id).first()
    if role is None:
        return
    if role.account_id == who.pk and role.kind in (Role.Kind.OWNER, Role.Kind.SECRETARY):
        raise Denied("You cannot take this role from yourself: the show would be left without you.")
    record(who=who, doing="take-role", show_id=show.pk, about=f"role:{role.pk}", kind=role.kind)
    role.delete()
