"""The show-day desk: entries moved, withdrawn or added on the day, and what was reported; each with its reason."""

from collections.abc import Mapping
from datetime import date

from django.db import IntegrityError, transaction

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.core.sentences import sentence
from ringside.entries import by_hand
from ringside.entries.models import Entry
from ringside.entries.numbering import entries_numbered, give_numbers
from ringside.entries.taking import class_order
from ringside.people.models import Account
from ringside.results.day_changes import kept_title
from ringside.results.models import DayChange, Publication, Report
from ringside.results.moves import answer_for, reasons_for, withdrawals_for
from ringside.results.queries import title_of
from ringside.ring.models import Sheet
from ringside.shows.access import require
from ringside.shows.books import rules_of
from ringside.shows.models import Show, ShowBreed, ShowClass


@transaction.atomic
def move_entry(*, who: Account, entry: Entry, target: str, reason: str, note: str) -> ShowClass:
    """Puts the dog into another class of its breed, for a reason the rules allow. What was written on it stays."""
    require(who, entry.show, "change-entries")
    entry = _locked(entry)
    if reason not in reasons_for(entry.show):
        raise NotNow("The rules in force allow no move for this reason. An exhibitor's wish is none.")
    breed, code = _target(entry, target)
    _require_unjudged(entry, entry.show_class)
    answer = answer_for(entry, breed, code)
    if not answer.open:
        said = [sentence(finding) for finding in answer.findings if finding.severity == "refuses"]
        raise NotNow("This class is not open to the dog. {why}", why=" ".join(said))
    to_class = _class_of(breed, entry, code)
    _require_unjudged(entry, to_class)
    if to_class.appointed.ring != entry.show_class.appointed.ring and Sheet.objects.filter(entry=entry).exists():
        raise NotNow("The judge of the other ring has written on this dog already: it stays in that ring.")
    before = kept_title(entry.show_class)
    _move(entry, to_class)
    _note(who, entry, DayChange.Kind.MOVED, reason=reason, note=note, before=before, after=kept_title(to_class))
    return to_class


def _locked(entry: Entry) -> Entry:
    """The entry as it stands, once its show is nobody else's for this transaction."""
    Show.objects.select_for_update().get(pk=entry.show_id)
    return Entry.objects.select_related("show", "dog", "show_class__show_breed__show").get(pk=entry.pk)


def _target(entry: Entry, target: str) -> tuple[ShowBreed, str]:
    key, _, code = target.partition(":")
    breeds = ShowBreed.objects.filter(show=entry.show, breed=entry.show_class.show_breed.breed)
    breed = breeds.filter(pk=int(key)).first() if key.isdecimal() and len(key) < 18 else None
    if breed is None or code not in [rule.code for rule in rules_of(entry.show).classes]:
        raise NotNow("Choose the class to move to.")
    return breed, code


def _class_of(breed: ShowBreed, entry: Entry, code: str) -> ShowClass:
    order = class_order(rules_of(entry.show), entry.dog.sex, code)
    found, _ = ShowClass.objects.get_or_create(
        show_breed=breed, sex=entry.dog.sex, code=code, defaults={"order": order}
    )
    return found


def _require_unjudged(entry: Entry, show_class: ShowClass) -> None:
    card = Sheet.objects.filter(show_class=show_class).first()
    if Publication.objects.filter(show_class=show_class).exists() or (card and card.signed is not None):
        raise NotNow("{title} is signed already: nothing moves in or out of it any more.", title=title_of(show_class))
    if card and str(entry.pk) in (card.fields.get("places") or []):
        raise NotNow("The judge has placed this dog in its class. Ask the judge to take the place back first.")


def _move(entry: Entry, to_class: ShowClass) -> None:
    try:
        with transaction.atomic():
            entry.show_class = to_class
            entry.save(update_fields=["show_class"])
    except IntegrityError:
        raise NotNow("This dog is in that class already.") from None


@transaction.atomic
def withdraw_entry(*, who: Account, entry: Entry, reason: str, note: str = "") -> None:
    """Takes an entry out before it is judged, for a reason the rules allow.

    A dog that leaves the ring is neither absent nor withdrawn: the judge grades it as one that could not be judged
    (note of the Dutch judges' association, December 2016), so an entry that was judged cannot be withdrawn.
    """
    require(who, entry.show, "change-entries")
    entry = _locked(entry)
    if reason not in withdrawals_for(entry.show, entry.dog.sex):
        raise NotNow("The rules in force allow no withdrawal for this reason. A dog that stays away is absent.")
    if entry.state == Entry.State.WITHDRAWN:
        raise NotNow("This entry is withdrawn already.")
    _require_unjudged(entry, entry.show_class)
    if Sheet.objects.filter(entry=entry).exists():
        raise NotNow(
            "The judge has written on this dog, so it was in the ring. A dog that leaves the ring could not be judged, "
            "which is a grade that the judge gives with its reason."
        )
    entry.state = Entry.State.WITHDRAWN
    entry.save(update_fields=["state"])
    _note(who, entry, DayChange.Kind.WITHDRAWN, reason=reason, note=note, before=kept_title(entry.show_class))


@transaction.atomic
def take_back_withdrawal(*, who: Account, entry: Entry, note: str) -> None:
    """Puts a withdrawn entry back into its class, with its number, until the class is signed."""
    require(who, entry.show, "change-entries")
    entry = _locked(entry)
    if not note.strip():
        raise NotNow("Write down why the withdrawal is taken back.")
    if entry.state != Entry.State.WITHDRAWN:
        raise NotNow("This entry is not withdrawn.")
    _require_unjudged(entry, entry.show_class)
    entry.state = Entry.State.ENTERED
    entry.save(update_fields=["state"])
    _note(who, entry, DayChange.Kind.BACK, note=note, after=kept_title(entry.show_class))


@transaction.atomic
def add_at_ring(*, who: Account, show: Show, texts: Mapping[str, str], note: str, today: date) -> Entry:
    """A dog that the printer left out: entered on the day with its number or the next free one, and noted as such."""
    require(who, show, "change-entries")
    Show.objects.select_for_update().get(pk=show.pk)
    if not Entry.objects.filter(show=show, number__isnull=False).exists():
        raise NotNow("No dog has a catalogue number yet: give the numbers first.")
    if not note.strip():
        raise NotNow("Write down how the dog came to be left out: the governing body may ask.")
    entry = by_hand.enter(who=who, show=show, texts=texts, today=today)
    give_numbers(show, [entry])
    _note(who, entry, DayChange.Kind.ADDED, note=note, after=kept_title(entry.show_class))
    return entry


def _note(who: Account, entry: Entry, kind: str, **told: str) -> None:
    told = {name: value.strip()[:300] for name, value in told.items()}
    change = DayChange.objects.create(entry=entry, kind=kind, by=who, **told)
    record(who=who, doing=f"entry-{kind}", show_id=entry.show_id, about=f"entry:{entry.pk}", change=change.pk)


@transaction.atomic
def write_report(*, who: Account, show: Show, kind: str, number: int | None, text: str) -> Report:
    """Keeps a protest, an incident or a bite as it was told. Its words stay out of the audit."""
    require(who, show, "write-reports")
    entry = next(iter(entries_numbered(show, number)), None) if number else None
    if number and entry is None:
        raise NotNow("No dog of this show has the number {number}.", number=number)
    report = Report.objects.create(show=show, entry=entry, kind=kind, text=text, by=who)
    record(who=who, doing="write-report", show_id=show.pk, about=f"report:{report.pk}", kind=kind)
    return report
