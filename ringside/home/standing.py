"""Where a show stands: what each stage of it still lacks, in a few words, for the left column of every office page.

Asked on every page, so it counts in the database, by the same number of queries for a show of any size.
"""

from collections.abc import Iterator
from datetime import date
from typing import Any

from django.db.models import Count, IntegerField, Q, QuerySet, Subquery, Value
from django.db.models.functions import Coalesce
from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from ringside.entries.models import Entry, EntryLine, EntryRequest
from ringside.fees.accounts import how_many_owe
from ringside.fees.models import FeeChange, FeeLine
from ringside.home.models import CorrectionRequest
from ringside.ring.models import Edit, Tablet
from ringside.shows.appointed import appointments_of, parts_of
from ringside.shows.models import Appointment, Show, ShowBreed, ShowClass

MOST = 2  # of one stage: the column is narrow, and its page says the rest


def standing_of(show: Show, today: date) -> dict[str, list[str]]:
    """What is lacking by stage. A stage that lacks nothing, or whose time has not come, says nothing."""
    counts = _counts(show)
    found = {
        "set_up": _set_up(show, counts),
        "entries": _entries(counts),
        "fees": _fees(show, counts),
        "papers": _numbers(counts["dogs"], counts["unnumbered"]),
        "day": _day(counts),
        "results": _results(show, counts, has_begun=today >= show.first_day),
    }
    return {stage: list(words)[:MOST] for stage, words in found.items()}


def _counts(show: Show) -> dict[str, int]:
    """All that is merely counted, in one query."""
    entered = Entry.objects.filter(show=show, state=Entry.State.ENTERED)
    breeds = ShowBreed.objects.filter(show=show)
    asked: dict[str, QuerySet[Any]] = {
        "breeds": breeds,
        "to_decide": EntryRequest.objects.filter(show=show, state=EntryRequest.State.WAITING),
        "lines": EntryLine.objects.filter(file__show=show, state=EntryLine.State.WAITING),
        "fee_lines": FeeLine.objects.filter(show=show),
        "fee_changes": FeeChange.objects.filter(entry__show=show),
        "held": Edit.objects.filter(ring__show=show, state=Edit.State.HELD),
        "unsent": Tablet.objects.filter(ring__show=show, unsent__gt=0, lost_at=None),
        "awards": breeds.filter(awards_card__signed__isnull=False, awards_publication=None),
        "requests": CorrectionRequest.objects.filter(entry__show=show, closed_at=None),
    }
    counts = {name: _count(rows) for name, rows in asked.items()}
    counts["dogs"] = _count(entered, "dog")
    counts["unnumbered"] = _count(entered.filter(number=None), "dog")
    row = Show.objects.filter(pk=show.pk).annotate(**{f"n_{name}": count for name, count in counts.items()})
    return dict(zip(counts, row.values_list(*(f"n_{name}" for name in counts)).get(), strict=True))


def _count(rows: "QuerySet[Any]", what: str = "pk") -> Coalesce:
    counted = rows.order_by().values(all=Value(1)).annotate(n=Count(what, distinct=what != "pk")).values("n")
    return Coalesce(Subquery(counted, output_field=IntegerField()), 0)


def _set_up(show: Show, counts: dict[str, int]) -> Iterator[str]:
    if not counts["breeds"]:
        yield _("no breed yet")
    off = Q(day__lt=show.first_day) | Q(day__gt=show.last_day)
    apart = Appointment.objects.filter(off, show_breed__show=show).values("show_breed")
    open_ones = Q(judge=None) | Q(ring=None) | Q(day=None) | off | Q(pk__in=apart)
    breeds = ShowBreed.objects.filter(open_ones, show=show)
    rows = breeds.select_related("judge", "ring").prefetch_related(appointments_of())
    told = [[part.appointed for part in parts_of(breed)] for breed in rows]
    if count := sum(any(one.judge is None for one in parts) for parts in told):
        yield ngettext("{count} breed without a judge", "{count} breeds without a judge", count).format(count=count)
    if count := sum(any(one.ring is None or not _is_of(show, one.day) for one in parts) for parts in told):
        words = ngettext("{count} breed without ring or day", "{count} breeds without ring or day", count)
        yield words.format(count=count)


def _is_of(show: Show, day: date | None) -> bool:
    """A day on which the show no longer is, since its dates were changed, is none."""
    return day is not None and show.first_day <= day <= show.last_day


def _entries(counts: dict[str, int]) -> Iterator[str]:
    if count := counts["to_decide"]:
        yield ngettext("{count} to decide", "{count} to decide", count).format(count=count)
    if count := counts["lines"]:
        yield ngettext("{count} line not taken in", "{count} lines not taken in", count).format(count=count)
    if not counts["dogs"]:
        yield _("no dog yet")


def _fees(show: Show, counts: dict[str, int]) -> Iterator[str]:
    """What each owes follows from the fee table, entry by entry: asked only where there are fees."""
    has_fees = counts["fee_lines"] or counts["fee_changes"]
    if count := how_many_owe(show) if has_fees else 0:
        yield ngettext("{count} unpaid", "{count} unpaid", count).format(count=count)


def _numbers(dogs: int, unnumbered: int) -> Iterator[str]:
    if dogs and unnumbered == dogs:
        yield _("numbers not given")
    elif count := unnumbered:
        yield ngettext("{count} dog without a number", "{count} dogs without a number", count).format(count=count)


def _day(counts: dict[str, int]) -> Iterator[str]:
    if count := counts["held"]:
        yield ngettext("{count} held to decide", "{count} held to decide", count).format(count=count)
    if count := counts["unsent"]:
        yield ngettext("{count} tablet not sent", "{count} tablets not sent", count).format(count=count)


def _results(show: Show, counts: dict[str, int], has_begun: bool) -> Iterator[str]:
    """Before the first day a class that is not signed lacks nothing."""
    signed = Q(card__signed__isnull=False)
    classes = ShowClass.objects.filter(show_breed__show=show, entries__state=Entry.State.ENTERED).aggregate(
        every=Count("pk", distinct=True),
        signed=Count("pk", distinct=True, filter=signed | Q(publication__isnull=False)),
        ready=Count("pk", distinct=True, filter=signed & Q(publication__isnull=True)),
    )
    if count := classes["ready"] + counts["awards"]:
        yield ngettext("{count} to publish", "{count} to publish", count).format(count=count)
    if count := counts["requests"]:
        yield ngettext("{count} request open", "{count} requests open", count).format(count=count)
    if (has_begun or classes["signed"]) and (count := classes["every"] - classes["signed"]):
        yield ngettext("{count} class not signed", "{count} classes not signed", count).format(count=count)
