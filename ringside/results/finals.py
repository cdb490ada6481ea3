"""Beyond the breed: the finals a show holds, who competes in each from the judges' signed awards, how each stands."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from django.utils.translation import gettext as _

from ringside.core.sentences import sentence
from ringside.entries.models import Entry
from ringside.results.models import AwardGiven, AwardsPublication, BreedGroup, Final, Finalist
from ringside.results.wording import group_name
from ringside.ring.awards import FIELD
from ringside.ring.models import Sheet
from ringside.ring.queries import breed_said
from ringside.shows.books import award_name, rules_of, standard_of
from ringside.shows.models import Show, ShowBreed
from scoring.findings import Finding
from scoring.rules.award_card import offered
from scoring.rules.finals import BreedWinner, Finals, check_final, feeders, finalists, finals_for
from scoring.rules.finals import Final as Offered
from scoring.rules.rulebook import RuleBook

Key = tuple[str, str]


@dataclass(frozen=True)
class Competing:
    """A dog that competes in a final, what lets it, and whether it did not come."""

    entry: Entry
    why: str
    is_absent: bool


@dataclass(frozen=True)
class Stands:
    """A final as it stands. `row` is there where the show holds it. `state` as of a class; `not held` without a row."""

    offered: Offered
    row: Final | None
    title: str
    competing: tuple[Competing, ...] = ()
    placed: tuple[tuple[int, Entry], ...] = ()
    waits_for: tuple[str, ...] = ()
    findings: tuple[str, ...] = ()

    @property
    def state(self) -> str:
        if self.row is None:
            return "not held"
        if self.row.published_at:
            return "published"
        if self.row.is_signed:
            return "signed"
        return "being judged" if self.placed or any(one.is_absent for one in self.competing) else "to come"

    @property
    def missing(self) -> list[str]:
        """What holds the final back from being published."""
        if self.row is None or self.row.published_at:
            return []
        lacks = self.missing_to_sign
        return lacks if self.row.is_signed else [*lacks, _("the judge's signature on the paper")]

    @property
    def missing_to_sign(self) -> list[str]:
        """What holds it back from being signed."""
        lacks = [_("{final} to be decided first").format(final=title) for title in self.waits_for]
        lacks += [] if self.row and self.row.judge else [_("the name of its judge")]
        present = [one for one in self.competing if not one.is_absent]
        if not self.placed and present and not self.offered.award.may_be_withheld:
            lacks.append(_("the places"))
        return lacks


@dataclass(frozen=True)
class ShowFinals:
    """All that a show's finals are made of, each fetched once."""

    show: Show
    book: RuleBook
    groups: Mapping[int, str | None]
    breeds: Mapping[int, ShowBreed]
    winners: Sequence[BreedWinner] = ()
    rows: Mapping[Key, Final] = field(default_factory=dict)
    places: Mapping[int, Sequence[Finalist]] = field(default_factory=dict)
    # By an entry's id; for all entries of one dog the one that stands for it.
    entries: Mapping[str, Entry] = field(default_factory=dict)

    @cached_property
    def offered(self) -> list[Offered]:
        return finals_for(self.book, {group for group in self.groups.values() if group})

    @cached_property
    def at(self) -> Finals:
        return Finals(self.winners, {key: list(self._in_order(row.pk)) for key, row in self.rows.items()})

    def _in_order(self, final_id: int) -> Iterator[str]:
        """The dogs from first place on, as far as no cancelled place leaves a gap."""
        placed = [one for one in self.places.get(final_id, ()) if one.place]
        yield from (self._key(one) for place, one in enumerate(placed, 1) if one.place == place)

    def _key(self, one: Finalist) -> str:
        return str(self.entries[str(one.entry_id)].pk)

    @cached_property
    def stands(self) -> list[Stands]:
        return [self.stand(one) for one in self.offered]

    def stand(self, one: Offered) -> Stands:
        row = self.rows.get(one.key)
        title = title_of_final(self.book, *one.key)
        if row is None:
            return Stands(one, None, title)
        absent = {self._key(each) for each in self.places.get(row.pk, ()) if each.place is None}
        competing = tuple(
            Competing(self.entries[each.entry], sentence(each.why), each.entry in absent)
            for each in finalists(self.book, one, self.at)
        )
        placed = tuple(
            (each.place, self.entries[str(each.entry_id)]) for each in self.places.get(row.pk, ()) if each.place
        )
        waits = tuple(title_of_final(self.book, *other.key) for other in self.undecided_feeders(one))
        findings = tuple(self.words(found) for found in check_final(self.book, one, self.at))
        return Stands(one, row, title, competing, placed, waits, findings)

    def undecided_feeders(self, one: Offered) -> list[Offered]:
        held = [other for other in self.offered if other.key in self.rows]
        return [other for other in feeders(self.book, one, held) if not self.is_decided(other)]

    def is_decided(self, one: Offered) -> bool:
        row = self.rows[one.key]
        return bool(row.is_signed or self.at.placed.get(one.key))

    def words(self, finding: Finding) -> str:
        entry = self.entries.get(finding.facts.get("entry", ""))
        numbered = {"entry": entry.number or entry.pk} if entry else {}
        return sentence(Finding(finding.code, finding.severity, {**finding.facts, **numbered}))


def title_of_final(book: RuleBook, award: str, group: str) -> str:
    """ "Best in group: Hounds", "Best in show"."""
    name = award_name(book.award(award))
    if not group:
        return name
    names = {one.code: group_name(one) for one in book.groups}
    return _("{award}: {group}").format(award=name, group=names.get(group, group))


def groups_of(show: Show, breeds: Sequence[ShowBreed]) -> dict[int, str | None]:
    """The code of each breed's group: the office's word, else the rules'; None where neither names one."""
    book = rules_of(show)
    chosen = dict(BreedGroup.objects.filter(show_breed__show=show).values_list("show_breed_id", "group"))
    found: dict[int, str | None] = {}
    for breed in breeds:
        known = book.group_of(breed.breed, standard_of(breed).group)
        found[breed.pk] = chosen.get(breed.pk) or (known.code if known else None)
    return found


def finals_of(show: Show) -> ShowFinals:
    """The show's finals: the same number of queries however many breeds there are."""
    breeds = list(
        ShowBreed.objects.filter(show=show, classes__entries__state=Entry.State.ENTERED)
        .select_related("show")
        .distinct()
        .order_by("id")
    )
    groups = groups_of(show, breeds)
    holds = _holds(show, rules_of(show))
    rows = {(row.award, row.group): row for row in Final.objects.filter(show=show).select_related("judge", "show")}
    places: dict[int, list[Finalist]] = defaultdict(list)
    for one in Finalist.objects.filter(final__show=show).order_by("place", "id"):
        places[one.final_id].append(one)
    ids = {*holds, *(one.entry_id for some in places.values() for one in some)}
    found = Entry.objects.filter(pk__in=ids).select_related("dog", "show_class__show_breed")
    known = sorted(found.order_by("number", "id"), key=lambda entry: entry.pk not in holds)
    first: dict[int, Entry] = {}
    entries = {str(entry.pk): first.setdefault(entry.dog_id, entry) for entry in known}
    held: dict[Entry, set[str]] = defaultdict(set)
    for entry in known:
        held[first[entry.dog_id]] |= holds.get(entry.pk, set())
    winners = [
        BreedWinner(str(entry.pk), groups.get(entry.show_class.show_breed_id), frozenset(awards))
        for entry, awards in held.items()
        if awards
    ]
    return ShowFinals(
        show, rules_of(show), groups, {breed.pk: breed for breed in breeds}, winners, rows, places, entries
    )


def _holds(show: Show, book: RuleBook) -> dict[int, set[str]]:
    """The breed awards of each entry: as published, elsewhere as the judge signed them."""
    holds: dict[int, set[str]] = defaultdict(set)
    for row in AwardGiven.objects.filter(show_breed__show=show, entry__isnull=False):
        holds[row.entry_id or 0].add(row.award)
    published = AwardsPublication.objects.filter(show_breed__show=show).values("show_breed_id")
    codes = {one.code: one.award.code for one in offered(book)}
    signed = Sheet.objects.filter(show_breed__show=show, signed__isnull=False).exclude(show_breed_id__in=published)
    for fields in signed.values_list("signed", flat=True):
        for name, entry in (fields or {}).items():
            code = codes.get(name.removeprefix(FIELD))
            if code and isinstance(entry, str) and entry.isdecimal():
                holds[int(entry)].add(code)
    return holds


def breed_words(entry: Entry) -> str:
    return breed_said(entry.show_class.show_breed)


def finals_won(entries: Sequence[Entry]) -> dict[int, list[str]]:
    """The published places in finals of each entry, in words."""
    won: dict[int, list[str]] = defaultdict(list)
    rows = Finalist.objects.filter(entry__in=entries, place__isnull=False, final__published_at__isnull=False)
    for row in rows.select_related("final__show").order_by("final_id", "place"):
        title = title_of_final(rules_of(row.final.show), row.final.award, row.final.group)
        placed = _("{final}, place {place}").format(final=title, place=row.place)
        won[row.entry_id].append(title if row.place == 1 else placed)
    return won
