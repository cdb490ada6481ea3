"""What a show offers beside its classes, and the dogs that may be named for it."""

from collections.abc import Sequence

from django.db.models import Prefetch, QuerySet
from django.utils.translation import gettext

from ringside.entries.models import Entry, EntryTerms, GroupEntry
from ringside.people.models import Account
from ringside.shows.books import rules_of
from ringside.shows.models import Show
from scoring.findings import Finding, refuses
from scoring.rules.rulebook import Competition
from scoring.rules.together import Member


def offered(show: Show) -> list[Competition]:
    """The group competitions of the rules that this show offers, in the rules' order."""
    codes = EntryTerms.objects.filter(show=show).values_list("groups", flat=True).first() or []
    return [one for one in rules_of(show).competitions if one.code in codes]


def entered_dogs(show: Show, account: Account | None = None) -> QuerySet[Entry]:
    """The entries that may stand in a group: all of the show, or a person's own."""
    found = Entry.objects.filter(show=show, state=Entry.State.ENTERED)
    if account is not None:
        found = found.filter(dog__owners__account=account).distinct()
    return found.select_related("dog", "show_class").prefetch_related("dog__owners").order_by("number", "id")


def groups_of(show: Show, account: Account | None = None) -> list[tuple[GroupEntry, str]]:
    """The show's group entries, or a person's own, with the competition's name."""
    found = GroupEntry.objects.filter(show=show).select_related("account").order_by("code", "entered_at", "id")
    if account is not None:
        found = found.filter(account=account)
    names = {one.code: gettext(one.name) for one in rules_of(show).competitions}
    members = Prefetch("members", Entry.objects.select_related("dog").order_by("number", "id"))
    return [(one, names.get(one.code, one.code)) for one in found.prefetch_related(members)]


def named(show: Show, text: str) -> tuple[list[Entry], list[Finding]]:
    """The entries that lines of numbers or names mean, and the lines that mean none. A dog counts once."""
    entries: dict[int, Entry] = {}
    found: list[Finding] = []
    for line in [line.strip() for line in text.splitlines() if line.strip()][:20]:
        entry = _entry_for(show, line)
        if entry is None:
            found.append(refuses("member-unknown", field="members", text=line[:60]))
        elif entry.dog_id in {one.dog_id for one in entries.values()}:
            found.append(refuses("member-twice", field="members", text=line[:60]))
        else:
            entries[entry.pk] = entry
    return list(entries.values()), found


def _entry_for(show: Show, line: str) -> Entry | None:
    if line.isdecimal() and len(line) < 9:
        return entered_dogs(show).filter(number=int(line)).first()
    return entered_dogs(show).filter(dog__name__iexact=line).first()


def members_of(entries: Sequence[Entry]) -> list[Member]:
    """The entries as the rules look at them."""
    return [
        Member(
            name=entry.dog.name,
            breed=entry.dog.breed,
            variety=entry.dog.variety,
            sex="dog" if entry.dog.sex == "dog" else "bitch",
            owners=frozenset(person.name for person in entry.dog.owners.all()),
            breeder=entry.dog.breeder,
            sire=entry.dog.sire,
            dam=entry.dog.dam,
        )
        for entry in entries
    ]
