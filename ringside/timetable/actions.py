"""Writing the day's plan down."""

from collections.abc import Mapping
from datetime import time

from django.db import transaction

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.people.models import Account
from ringside.shows.access import require
from ringside.shows.models import Show
from ringside.timetable.models import StartTime
from ringside.timetable.queries import Key, slots_of


@transaction.atomic
def plan_times(*, who: Account, show: Show, times: Mapping[Key, time | None]) -> int:
    """Sets the times named, takes those away that are named with None; how many changed. Others stay."""
    require(who, show, "change-show")
    Show.objects.select_for_update().get(pk=show.pk)
    before = {slot.key: slot.at for slot in slots_of(show)}
    if unknown := times.keys() - before.keys():
        raise NotNow("{count} of these breeds or parts are not in the show any more: load the page again.",
                     count=len(unknown))  # fmt: skip
    changed = {key: at for key, at in times.items() if before[key] != at}
    for (breed_id, sex, code), at in changed.items():
        part = {"show_breed_id": breed_id, "sex": sex, "code": code}
        if at is None:
            StartTime.objects.filter(**part).delete()
        else:
            StartTime.objects.update_or_create(**part, defaults={"at": at})
    if changed:
        record(who=who, doing="plan-times", show_id=show.pk, count=len(changed))
    return len(changed)
