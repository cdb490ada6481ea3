"""Catalogue numbers: from 1 without gaps, breed by breed, dogs before bitches, classes in the rules' order."""

from typing import Any

from django.db import transaction
from django.db.models import Max

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.entries.models import Entry
from ringside.shows.access import require
from ringside.shows.models import Show
from scoring.standards import loader as standards

BATCH = 500


@transaction.atomic
def number_entries(*, who: Any, show: Show) -> int:
    """Gives every entry its number, once. Returns how many numbers were given.

    Source: the international federation's show regulations (Italian edition, p. 8): numbering starts at 1, has no
    gaps, and lists dogs and bitches apart. Numbers given stay: entries after that follow behind the last number.
    """
    require(who, show, "number-entries")
    Show.objects.select_for_update().get(pk=show.pk)
    waiting = list(
        Entry.objects.filter(show=show, number=None, state=Entry.State.ENTERED).select_related(
            "dog", "show_class__show_breed"
        )
    )
    if not waiting:
        raise NotNow("Every entry has its number already; numbers stay as they are.")
    last = Entry.objects.filter(show=show).aggregate(last=Max("number"))["last"] or 0
    for number, entry in enumerate(sorted(waiting, key=catalogue_order), last + 1):
        entry.number = number
    Entry.objects.bulk_update(waiting, ["number"], batch_size=BATCH)
    record(who=who, doing="number-entries", show_id=show.pk, count=len(waiting))
    return len(waiting)


def catalogue_order(entry: Entry) -> tuple[Any, ...]:
    breed = entry.show_class.show_breed
    standard = standards.load(breed.breed)
    sex_rank = 0 if entry.show_class.sex == "dog" else 1
    name = entry.dog.name.casefold()
    return standard.group, standard.name, breed.variety, sex_rank, entry.show_class.order, name, entry.pk
