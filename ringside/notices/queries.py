"""Who is to be told what: the exhibitors of a show with their dogs, and what became of each one's e-mail."""

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, time

from ringside.dogs.models import Ownership
from ringside.entries.models import Entry
from ringside.notices.models import Notice
from ringside.people.models import Account
from ringside.shows.appointed import appointments_of
from ringside.shows.models import Appointed, Show
from ringside.timetable.queries import Starts


@dataclass(frozen=True, slots=True)
class Dog:
    """An entered dog with where and when it is judged in one class; None where that is not known yet."""

    entry: Entry
    appointed: Appointed
    at: time | None

    @property
    def facts(self) -> list[str]:
        """Number, day, ring and time as texts: what an exhibitor is told anew when it changes."""
        day, ring = self.appointed.day, self.appointed.ring
        told = (self.entry.number, day and day.isoformat(), ring and ring.name, self.at and f"{self.at:%H:%M}")
        return [str(one or "") for one in told]

    @property
    def is_complete(self) -> bool:
        return all(self.facts)


@dataclass(frozen=True, slots=True)
class Recipient:
    """An exhibitor with all dogs of one show, in the order in which they are judged. Without `account`: by paper."""

    name: str
    account: Account | None
    dogs: tuple[Dog, ...]

    @property
    def facts(self) -> list[list[str]]:
        return [dog.facts for dog in self.dogs]


@dataclass(frozen=True, slots=True)
class Standing:
    """An exhibitor with an address and how far the e-mail is: to tell, changed, waiting, told, failed."""

    recipient: Recipient
    notice: Notice | None

    @property
    def state(self) -> str:
        notice = self.notice
        if notice is None:
            return "to tell"
        if notice.state != Notice.State.SENT:
            return str(notice.state)
        return "told" if notice.told == self.recipient.facts else "changed"

    @property
    def is_due(self) -> bool:
        """Not told yet, not reached, or told something that is not so any more."""
        return self.state in ("to tell", "changed", "failed")


def dogs_of(show: Show, accounts: Collection[int] | None = None) -> list[Dog]:
    """Every entered dog, or those of these accounts, as it is judged: by day, time and number."""
    starts, entered = Starts(show), Entry.objects.filter(show=show, state=Entry.State.ENTERED)
    if accounts is not None:
        entered = entered.filter(dog__in=Ownership.objects.filter(person__account__in=accounts).values("dog"))
    found = (
        entered.select_related("dog", "show_class__show_breed__show", "show_class__judged_by")
        .select_related("show_class__show_breed__judge", "show_class__show_breed__ring")
        .prefetch_related(appointments_of("show_class__show_breed__"), "dog__owners__account")
    )
    dogs = [Dog(entry, entry.show_class.appointed, starts.of(entry.show_class)) for entry in found]
    return sorted(dogs, key=_order)


def _order(dog: Dog) -> tuple[date, time, int, int]:
    return dog.appointed.day or date.max, dog.at or time.max, dog.entry.number or 10**9, dog.entry.pk


def recipients_of(show: Show, dogs: Sequence[Dog] | None = None) -> tuple[list[Recipient], list[Recipient]]:
    """Those who can be written to, by name, and those who cannot: no owner of the dog has an address.

    `dogs`, here and below: those of the show, where they have been read already.
    """
    by_account: dict[Account, list[Dog]] = {}
    by_name: dict[str, list[Dog]] = {}
    for dog in dogs_of(show) if dogs is None else dogs:
        accounts = {owner.account for owner in dog.entry.dog.owners.all() if owner.account}
        for account in accounts:
            by_account.setdefault(account, []).append(dog)
        if not accounts:
            by_name.setdefault(_names(dog), []).append(dog)
    reached = [Recipient(_name_of(account, dogs), account, tuple(dogs)) for account, dogs in by_account.items()]
    by_paper = [Recipient(name, None, tuple(dogs)) for name, dogs in by_name.items()]
    return _sorted(reached), _sorted(by_paper)


def _sorted(found: Iterable[Recipient]) -> list[Recipient]:
    return sorted(found, key=lambda one: (one.name.casefold(), one.name, one.account.pk if one.account else 0))


def _names(dog: Dog) -> str:
    return ", ".join(sorted({owner.name for owner in dog.entry.dog.owners.all()}))


def _name_of(account: Account, dogs: Sequence[Dog]) -> str:
    owners = (owner for dog in dogs for owner in dog.entry.dog.owners.all())
    return ", ".join(sorted({owner.name for owner in owners if owner.account_id == account.pk}))


def standings_of(show: Show, dogs: Sequence[Dog] | None = None) -> tuple[list[Standing], list[Recipient]]:
    """How far each e-mail is; and who is told on paper."""
    reached, by_paper = recipients_of(show, dogs)
    notices = {notice.account_id: notice for notice in Notice.objects.filter(show=show)}
    return [Standing(one, notices.get(one.account.pk)) for one in reached if one.account], by_paper


def to_print(show: Show) -> list[Recipient]:
    """Who needs a letter on paper: no address, or the e-mail could not be sent."""
    standings, by_paper = standings_of(show)
    return _sorted([*by_paper, *(one.recipient for one in standings if one.state == "failed")])


def lacking(show: Show, dogs: Sequence[Dog] | None = None) -> Iterator[tuple[str, int]]:
    """What the dogs lack to be told of, and of how many dogs: "number", "day", "ring", "time"."""
    facts = [(dog.entry.dog_id, dog.facts) for dog in (dogs_of(show) if dogs is None else dogs)]
    for index, name in enumerate(("number", "day", "ring", "time")):
        if lack := {dog for dog, told in facts if not told[index]}:
            yield name, len(lack)
