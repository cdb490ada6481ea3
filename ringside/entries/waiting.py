"""Entries that wait: late, twice or in doubt. The secretary accepts or refuses each, with the reason kept."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date

from django.db import IntegrityError, transaction
from django.utils import timezone

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.core.sentences import sentence
from ringside.entries import queries, taking
from ringside.entries.checking import CheckedLine, Dates, ShowFacts, check_line, compare
from ringside.entries.models import Entry, EntryRequest
from ringside.entries.own import owns
from ringside.entries.reading.cells import clean
from ringside.entries.telling import tell_decision
from ringside.entries.web.offers import findings_on, wanted_of
from ringside.people.models import Account
from ringside.shows.access import require
from ringside.shows.models import Show
from scoring.findings import Finding, warns

WAITING = EntryRequest.State.WAITING


@dataclass(frozen=True)
class Looked:
    """A waiting entry with everything that is to be said of it now, and whether it can be accepted as it is."""

    request: EntryRequest
    doubts: tuple[str, ...]
    findings: tuple[tuple[str, str], ...]
    can_be_accepted: bool


def looked_at(request: EntryRequest, facts: ShowFacts) -> Looked:
    found = _findings(request, facts)
    said = tuple((one.severity, sentence(one)) for one in found)
    doubts = tuple(sentence(doubt) for doubt in request.doubts)
    return Looked(request, doubts, said, all(one.severity != "refuses" for one in found))


def _findings(request: EntryRequest, facts: ShowFacts) -> Sequence[Finding]:
    if request.dog is None:
        return [finding for line in _lines(request, facts) for finding in line.findings]
    return findings_on(wanted_of(request.dog), request.classes, request.show, facts)


def _lines(request: EntryRequest, facts: ShowFacts) -> list[CheckedLine]:
    """The typed dog in each of its classes, against the dogs on record and what is entered."""
    texts = {field: clean(text) for field, text in request.texts.items()}
    style = Dates("dd.mm.yyyy" if request.account is None else "yyyy-mm-dd")
    lines = [
        check_line(number, {**texts, "class": code}, facts, style) for number, code in enumerate(request.classes, 1)
    ]
    known = queries.known_dogs(request.show, [line.values for line in lines])
    several = facts.book.classes_per_dog
    return [replace(line, line=1) for line in compare(lines, known, several)]


@transaction.atomic
def put_aside(*, who: Account, show: Show, texts: Mapping[str, str], classes: Sequence[str], why: str) -> EntryRequest:
    """Keeps an entry that the office has typed in, for a decision: it takes no place and no number meanwhile."""
    require(who, show, "take-entries")
    if not why.strip():
        raise NotNow("Write down why this waits.")
    doubt = warns("sent-by-office", why=why.strip()[:300])
    request = EntryRequest.objects.create(show=show, texts=dict(texts), classes=list(classes), doubts=[doubt.as_json()])
    record(who=who, doing="put-entry-aside", show_id=show.pk, about=f"request:{request.pk}")
    return request


@transaction.atomic
def accept(*, who: Account, request: EntryRequest, reason: str, today: date, where: str = "") -> list[Entry]:
    """Makes the entry. It gets its number as every later entry does, behind those that are given.

    `where` is the address at which whoever sent it reads on.
    """
    request = _decide(who, request, EntryRequest.State.ACCEPTED, reason, where)
    facts = queries.facts_of(request.show, today)
    found = [one for one in _findings(request, facts) if one.severity == "refuses"]
    if found:
        raise NotNow(
            "This cannot be accepted as it is. {reasons}", reasons=" ".join(dict.fromkeys(map(sentence, found)))
        )
    try:
        with transaction.atomic():
            return _entered_when_sent(request, _enter(request, facts))
    except IntegrityError:
        raise NotNow("Somebody else has just entered this dog. Look at the list.") from None


def _enter(request: EntryRequest, facts: ShowFacts) -> list[Entry]:
    if request.dog is None:
        return taking.enter(request.show, facts.book, _lines(request, facts))
    if request.account and not owns(request.account, request.dog):
        raise NotNow("The dog is not under this owner any more: refuse the entry, or ask.")
    return taking.place(request.show, facts.book, request.dog, request.classes, request.texts.get("handler", ""))


def _entered_when_sent(request: EntryRequest, entries: list[Entry]) -> list[Entry]:
    """The day on which it was sent is the day it was entered on, by which fees go; how long it waited is no fault."""
    late = [entry for entry in entries if entry.entered_at > request.asked_at]
    for entry in late:
        entry.entered_at = request.asked_at
    Entry.objects.bulk_update(late, ["entered_at"])
    return entries


@transaction.atomic
def refuse(*, who: Account, request: EntryRequest, reason: str, where: str = "") -> None:
    """Refuses the entry; whoever sent it reads the reason."""
    _decide(who, request, EntryRequest.State.REFUSED, reason, where)


def _decide(who: Account, request: EntryRequest, state: EntryRequest.State, reason: str, where: str) -> EntryRequest:
    require(who, request.show, "decide-entries")
    show = Show.objects.select_for_update().get(pk=request.show_id)
    if not reason.strip():
        raise NotNow("Write down the reason: whoever sent the entry reads it, and the governing body may ask.")
    found = EntryRequest.objects.select_for_update(of=("self",)).select_related("dog", "account").get(pk=request.pk)
    if found.state != WAITING:
        raise NotNow("This entry is {state} already.", state=found.get_state_display())
    found.show, found.state, found.reason = show, state, reason.strip()[:300]
    found.decided_by, found.decided_at = who, timezone.now()
    found.save(update_fields=["state", "reason", "decided_by", "decided_at"])
    record(who=who, doing=f"entry-{state}", show_id=show.pk, about=f"request:{found.pk}")
    tell_decision(found, where)
    return found
