"""An entry that the secretary types in: checked by the same rules as a line of a file."""

from collections.abc import Mapping
from datetime import date
from typing import Any

from django.db import IntegrityError, transaction

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.entries import queries, taking
from ringside.entries.checking import CheckedLine, Dates, check_line, compare
from ringside.entries.models import Entry
from ringside.entries.reading.cells import clean
from ringside.shows.access import require
from ringside.shows.models import Show


def check(show: Show, texts: Mapping[str, str], today: date) -> CheckedLine:
    """What is to be said of an entry typed in, and what would be kept of it."""
    facts = queries.facts_of(show, today)
    line = check_line(1, {field: clean(text) for field, text in texts.items()}, facts, Dates("dd.mm.yyyy"))
    return compare([line], queries.known_dogs(show, [line.values]), facts.book.classes_per_dog)[0]


@transaction.atomic
def enter(*, who: Any, show: Show, texts: Mapping[str, str], today: date) -> Entry:
    """One entry. NotNow where something must be mended first."""
    require(who, show, "take-entries")
    Show.objects.select_for_update().get(pk=show.pk)
    line = check(show, texts, today)
    if line.refused:
        raise NotNow("This entry cannot be taken as it is: mend what is named.")
    try:
        with transaction.atomic():
            [entry] = taking.enter(show, queries.facts_of(show, today).book, [line])
    except IntegrityError:
        raise NotNow("Somebody else has just entered this dog. Look at the list.") from None
    record(who=who, doing="enter-by-hand", show_id=show.pk, about=f"entry:{entry.pk}")
    return entry
