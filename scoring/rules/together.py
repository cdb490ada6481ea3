"""Dogs that compete together, and young handlers: whether a brace, a group or a handler fits the rules."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from scoring.findings import Finding, refuses, warns
from scoring.rules.ages import completed_months
from scoring.rules.rulebook import Competition, Sex


@dataclass(frozen=True, slots=True)
class Member:
    """One dog of a group, as its entry names it. Names are as written; empty where the record has none."""

    name: str
    breed: str
    variety: str
    sex: Sex
    owners: frozenset[str]
    breeder: str
    sire: str
    dam: str


def group_findings(rule: Competition, members: Sequence[Member]) -> list[Finding]:
    """Everything that speaks against these dogs as one group.

    Rule: the number of dogs, what they must share, and one of each sex where asked; each from the rule book with its
    source. Names are compared whatever their case and spaces.
    Limits: a name is all that is known of a breeder, an owner or a parent: namesakes pass, and a name written in two
    ways is told as two. What is not on record warns and refuses nothing.
    """
    return [*_count(rule, members), *_sexes(rule, members), *_shared(rule, members)]


def handler_findings(rule: Competition, born: date | None, first_day: date) -> list[Finding]:
    """Whether a handler has the age, in completed years on the show's first day, both years of the span included.

    Source: the rule book. Limits: that the first day counts is from memory, to be confirmed by each body's text.
    """
    if born is None:
        return [refuses("handler-age-missing", field="born", name=rule.name)]
    years = completed_months(born, first_day) // 12
    facts = {"field": "born", "name": rule.name, "years": max(0, years), "counted_on": first_day.isoformat()}
    if rule.least_years is not None and years < rule.least_years:
        return [refuses("handler-too-young", least_years=rule.least_years, **facts)]
    if rule.most_years is not None and years > rule.most_years:
        return [refuses("handler-too-old", most_years=rule.most_years, **facts)]
    return []


def _count(rule: Competition, members: Sequence[Member]) -> Iterator[Finding]:
    facts = {"field": "members", "name": rule.name, "have": len(members)}
    if len(members) < rule.least:
        yield refuses("group-too-small", least=rule.least, **facts)
    if rule.most is not None and len(members) > rule.most:
        yield refuses("group-too-large", most=rule.most, **facts)


def _sexes(rule: Competition, members: Sequence[Member]) -> Iterator[Finding]:
    if rule.one_of_each and sorted(member.sex for member in members) != ["bitch", "dog"]:
        yield refuses("group-one-of-each", field="members", name=rule.name)


def _shared(rule: Competition, members: Sequence[Member]) -> Iterator[Finding]:
    for what in rule.same:
        if what == "parent":
            yield from _parent(rule, members)
        elif what == "owner":
            yield from _owner(rule, members)
        else:
            yield from _alike(rule, members, what)


def _alike(rule: Competition, members: Sequence[Member], what: str) -> Iterator[Finding]:
    named = {member.name: getattr(member, what) for member in members}
    unknown = [name for name, value in named.items() if not value and what == "breeder"]
    if unknown:
        yield warns("group-unknown", field="members", name=rule.name, what=what, dogs=unknown)
    known = {_plain(value): value for name, value in named.items() if name not in unknown}
    if len(known) > 1:
        words = sorted(value or "none" for value in known.values())
        yield refuses("group-differs", field="members", name=rule.name, what=what, found=words)


def _owner(rule: Competition, members: Sequence[Member]) -> Iterator[Finding]:
    owners = [frozenset(map(_plain, member.owners)) for member in members]
    if owners and not frozenset.intersection(*owners):
        words = sorted({owner for member in members for owner in member.owners})
        yield refuses("group-differs", field="members", name=rule.name, what="owner", found=words)


def _parent(rule: Competition, members: Sequence[Member]) -> Iterator[Finding]:
    for side in ("sire", "dam"):
        parents = [_plain(getattr(member, side)) for member in members]
        if parents and parents[0] and set(parents) == {parents[0]}:
            return
    unknown = [member.name for member in members if not (member.sire and member.dam)]
    if unknown:
        yield warns("group-unknown", field="members", name=rule.name, what="parents", dogs=unknown)
    elif members:
        yield refuses("group-no-common-parent", field="members", name=rule.name)


def _plain(name: str) -> str:
    return " ".join(name.casefold().split())
