"""Catalogue numbers: one a dog, from 1 without gaps; by breed, dogs before bitches, classes in the rules' order."""

from collections.abc import Sequence
from typing import Any

from django.db import transaction

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.entries.models import Entry
from ringside.shows.access import require
from ringside.shows.models import Show
from scoring.standards import loader as standards

BATCH = 500


@transaction.atomic
def number_entries(*, who: Any, show: Show) -> int:
    """Gives every entry its dog's number. Returns how many entries got one.

    Source: the international federation's show regulations (Italian edition, p. 8): numbering starts at 1, has no
    gaps, and lists dogs and bitches apart. That a dog in several classes has one number: common practice, from memory.
    Numbers given stay: dogs that come after that follow behind the last number.
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
    give_numbers(show, sorted(waiting, key=catalogue_order))
    record(who=who, doing="number-entries", show_id=show.pk, count=len(waiting))
    return len(waiting)


def give_numbers(show: Show, entries: Sequence[Entry]) -> None:
    """Each entry gets the number that its dog has in the show, or the next free one, in the order of the entries.

    Nothing else writes a number, so one number never stands for two dogs. The caller holds the show's row.
    """
    given = Entry.objects.filter(show=show, number__isnull=False)
    # A dog may have two from before: it goes on under the lower one, and the other one is taken too.
    rows = list(given.order_by("-number").values_list("dog_id", "number"))
    numbers, last = dict(rows), rows[0][1] if rows else 0
    for entry in entries:
        if entry.dog_id not in numbers:
            last += 1
            numbers[entry.dog_id] = last
        entry.number = numbers[entry.dog_id]
    Entry.objects.bulk_update(entries, ["number"], batch_size=BATCH)


def dogs_without_number(show: Show) -> int:
    """How many dogs are entered in a class without a number yet."""
    waiting = Entry.objects.filter(show=show, number=None, state=Entry.State.ENTERED)
    return waiting.values("dog").distinct().count()


def entries_numbered(show: Show, number: int) -> list[Entry]:
    """The entries of the dog that has this number: those entered first, then by class."""
    found = Entry.objects.filter(show=show, number=number).select_related("show", "dog", "show_class__show_breed")
    return list(found.order_by("state", "show_class__order", "id"))


def catalogue_order(entry: Entry) -> tuple[Any, ...]:
    breed = entry.show_class.show_breed
    standard = standards.load(breed.breed)
    sex_rank = 0 if entry.show_class.sex == "dog" else 1
    name = entry.dog.name.casefold()
    return standard.group, standard.name, breed.variety, sex_rank, entry.show_class.order, name, entry.pk
