"""What an exhibitor may do: keep an own dog, enter it, change that and withdraw until entries close."""

from collections.abc import Mapping, Sequence
from datetime import date

from django.db import IntegrityError, transaction

from ringside.core.audit import record
from ringside.core.denied import Denied, NotNow
from ringside.core.sentences import sentence
from ringside.dogs.models import Certificate, Dog, Ownership, Title
from ringside.entries import taking
from ringside.entries.checking import Wanted
from ringside.entries.handlers import readable
from ringside.entries.models import Entry, EntryRequest, Proof
from ringside.entries.own import owns
from ringside.entries.proofs.keeping import forget_proofs
from ringside.entries.queries import facts_of
from ringside.entries.web import queries
from ringside.entries.web.offers import findings_on, wanted_of
from ringside.entries.web.opening import Standing, closes_on, standing_of
from ringside.people.actions import person_for
from ringside.people.models import Account
from ringside.shows.books import rules_of
from ringside.shows.models import Show
from scoring.findings import Finding, warns
from scoring.rules.rulebook import RuleBook

ENTERED = Entry.State.ENTERED
# What a class and a catalogue rest on: fixed while the dog stands in a show that is still to come.
FIXED = ("name", "breed", "variety", "sex", "born")
FACTS = (*FIXED, "call_name", "studbook", "chip", "sire", "dam", "breeder", "neutered")
# One account cannot fill the catalogue or the disk. Ours, no source.
MOST_DOGS = 200
MOST_WAITING = 50


@transaction.atomic
def keep_dog(*, who: Account, show: Show, texts: Mapping[str, str], today: date, dog: Dog | None = None) -> Dog:
    """Adds an own dog, or changes what is kept of one. `show` says whose rules name the titles."""
    line = queries.check_dog(show, dict(texts), today)
    if line.refused or any(one.severity == "refuses" for one in queries.same_dogs(line.values, who, dog)):
        raise NotNow("This cannot be kept as it is: mend what is named.")
    changed = _changed(dog, line.values) if dog else list(FACTS)
    if dog is None:
        dog = _new_dog(who, line.values)
    else:
        _require_own(who, dog)
        _change(dog, line.values, changed, today)
    _hold(dog, line.values, rules_of(show))
    record(who=who, doing="keep-own-dog", about=f"dog:{dog.pk}", fields=changed)
    return dog


def _changed(dog: Dog, values: Wanted) -> list[str]:
    return [name for name in FACTS if getattr(dog, name) != getattr(values, name)]


def _new_dog(who: Account, values: Wanted) -> Dog:
    if Dog.objects.filter(owners__account=who).count() >= MOST_DOGS:
        raise NotNow(
            "{most} dogs are kept for you already: ask the show's secretary to enter this one.", most=MOST_DOGS
        )
    person = person_for(name=values.owner, email=who.email)
    dog = Dog(**{name: getattr(values, name) for name in FACTS})
    _save(dog)
    Ownership.objects.create(dog=dog, person=person)
    return dog


def _change(dog: Dog, values: Wanted, changed: Sequence[str], today: date) -> None:
    fixed = [name for name in changed if name in FIXED]
    standing = Entry.objects.filter(dog=dog, state=ENTERED, show__last_day__gte=today).select_related("show").first()
    judged = Entry.objects.filter(dog=dog, number__isnull=False).exists()
    if fixed and standing:
        raise NotNow(
            "Name, breed, sex and date of birth stay while the dog is entered in {show}. Withdraw it there "
            "first, or ask that show's office to correct them.",
            show=standing.show,
        )
    if fixed and judged:
        raise NotNow("This dog stands in a catalogue under these facts: ask that show's office to correct them.")
    for name in changed:
        setattr(dog, name, getattr(values, name))
    _save(dog)


def _save(dog: Dog) -> None:
    try:
        with transaction.atomic():
            dog.save()
    except IntegrityError:
        raise NotNow("Another dog with this microchip number has just been added: look at the number again.") from None


def _hold(dog: Dog, values: Wanted, book: RuleBook) -> None:
    """Titles and certificates as ticked; those that these rules do not know stay as they are."""
    for model, known, held in (
        (Title, [title.code for title in book.titles], values.titles),
        (Certificate, [paper.code for paper in book.documents], values.certificates),
    ):
        model.objects.filter(dog=dog, code__in=set(known) - set(held)).delete()
        rows = [model(dog=dog, code=code) for code in held]
        model.objects.bulk_create(rows, ignore_conflicts=True)


@transaction.atomic
def forget_dog(*, who: Account, dog: Dog) -> None:
    """Deletes an own dog that was never entered; one that was stands in a show's records, which others rely on."""
    _require_own(who, dog)
    if Entry.objects.filter(dog=dog).exists():
        raise NotNow("This dog was entered in a show, whose records keep it. What is kept of you can be deleted.")
    if dog.owners.exclude(account=who).exists():
        raise NotNow("This dog has another owner too, so it stays.")
    record(who=who, doing="forget-own-dog", about=f"dog:{dog.pk}")
    forget_proofs(Proof.objects.filter(dog=dog))
    dog.delete()


@transaction.atomic
def choose_classes(
    *, who: Account, show: Show, dog: Dog, classes: Sequence[str], today: date, handler: str = ""
) -> list[Entry] | EntryRequest:
    """Enters the dog in these classes, or puts it into them instead of others. Late, the entry waits for a decision."""
    show = _locked(show)
    _require_own(who, dog)
    standing = standing_of(show, today)
    if standing in (Standing.NOT_YET, Standing.OVER):
        raise NotNow("This show takes no entries now.")
    _require_fit(wanted_of(dog), classes, show, today)
    handler = readable(handler)
    entered = Entry.objects.filter(show=show, dog=dog, state=ENTERED)
    if standing is Standing.LATE:
        if entered.exists():
            raise NotNow("Entries are closed: only the office can move a dog now, for the reasons the rules allow.")
        return _wait(who, show, dog, {"handler": handler} if handler else {}, classes, [late(show)])
    if entered.filter(number__isnull=False).exists():
        raise NotNow("This dog has its catalogue number already: ask the show's office.")
    entries = taking.place(show, rules_of(show), dog, classes, handler)
    record(who=who, doing="enter-own-dog", show_id=show.pk, about=f"dog:{dog.pk}", classes=list(classes))
    return entries


def late(show: Show) -> Finding:
    return warns("entered-late", closed=closes_on(show).isoformat())


def _locked(show: Show) -> Show:
    return Show.objects.select_for_update().get(pk=show.pk)


def _require_own(who: Account, dog: Dog) -> None:
    if not owns(who, dog):
        raise Denied("You may not enter a dog of somebody else.")


def _require_fit(values: Wanted, classes: Sequence[str], show: Show, today: date) -> None:
    found = findings_on(values, classes, show, facts_of(show, today))
    said = [sentence(one) for one in found if one.severity == "refuses"]
    if said:
        raise NotNow(" ".join(said))


@transaction.atomic
def ask_for_dog(
    *, who: Account, show: Show, texts: Mapping[str, str], classes: Sequence[str], today: date
) -> EntryRequest:
    """A dog that is on record under another owner: the entry waits until the office has asked."""
    show = _locked(show)
    standing = standing_of(show, today)
    if standing in (Standing.NOT_YET, Standing.OVER):
        raise NotNow("This show takes no entries now.")
    line = queries.check_dog(show, dict(texts), today)
    if line.refused:
        raise NotNow("This cannot be sent as it is: mend what is named.")
    _require_fit(line.values, classes, show, today)
    doubts = [*queries.same_dogs(line.values, who), *([late(show)] if standing is Standing.LATE else [])]
    return _wait(who, show, None, texts, classes, doubts)


def _wait(
    who: Account,
    show: Show,
    dog: Dog | None,
    texts: Mapping[str, str],
    classes: Sequence[str],
    doubts: Sequence[Finding],
) -> EntryRequest:
    waiting = EntryRequest.objects.filter(show=show, account=who, state=EntryRequest.State.WAITING)
    if dog is not None and waiting.filter(dog=dog).exists():
        raise NotNow("This dog's entry waits for the secretary already.")
    if waiting.count() >= MOST_WAITING:
        raise NotNow("Many of your entries wait for the secretary already: ask the show's office.")
    request = EntryRequest.objects.create(
        show=show,
        account=who,
        dog=dog,
        texts=dict(texts),
        classes=list(classes),
        doubts=[one.as_json() for one in doubts],
    )
    record(who=who, doing="ask-for-entry", show_id=show.pk, about=f"request:{request.pk}")
    return request


@transaction.atomic
def withdraw(*, who: Account, show: Show, dog: Dog, today: date) -> int:
    """Withdraws the dog from all its classes, and what waits for it. Until entries close, and without a reason."""
    show = _locked(show)
    _require_own(who, dog)
    waiting = EntryRequest.objects.filter(show=show, dog=dog, account=who, state=EntryRequest.State.WAITING)
    taken_back = waiting.update(state=EntryRequest.State.TAKEN_BACK)
    entered = Entry.objects.filter(show=show, dog=dog, state=ENTERED)
    if entered.exists() and standing_of(show, today) is not Standing.OPEN:
        raise NotNow("Entries are closed: ask the show's office to withdraw the dog, with the reason.")
    if entered.filter(number__isnull=False).exists():
        raise NotNow("This dog has its catalogue number already: ask the show's office to withdraw it.")
    withdrawn = entered.update(state=Entry.State.WITHDRAWN)
    record(who=who, doing="withdraw-own-dog", show_id=show.pk, about=f"dog:{dog.pk}", entries=withdrawn)
    return int(withdrawn + taken_back)


@transaction.atomic
def take_back(*, who: Account, request: EntryRequest) -> None:
    """Takes back an entry that still waits."""
    waiting = EntryRequest.objects.filter(pk=request.pk, account=who, state=EntryRequest.State.WAITING)
    if not waiting.update(state=EntryRequest.State.TAKEN_BACK):
        raise NotNow("The secretary has decided on this entry already.")
    record(who=who, doing="take-back-request", show_id=request.show_id, about=f"request:{request.pk}")
