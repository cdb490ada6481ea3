"""Beyond the breed: the finals of the groups and of the show, who competes in each, and what is to be said of them."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass

from scoring.findings import Finding, notes, warns
from scoring.rules.rulebook import Award, Candidates, RuleBook


@dataclass(frozen=True, slots=True)
class Final:
    """One final: an award beyond the breed, in one group of breeds, or in the whole show (`group` empty)."""

    award: Award
    group: str = ""

    @property
    def key(self) -> tuple[str, str]:
        return self.award.code, self.group


@dataclass(frozen=True, slots=True)
class BreedWinner:
    """An entry that won awards in its breed, and the group its breed belongs to; None where that is not known."""

    entry: str
    group: str | None
    holds: frozenset[str]


@dataclass(frozen=True, slots=True)
class Finals:
    """What stands so far: who won in the breeds, and the places of each final judged, first to last."""

    winners: Sequence[BreedWinner]
    placed: Mapping[tuple[str, str], Sequence[str]]


@dataclass(frozen=True, slots=True)
class Finalist:
    """An entry that competes in a final, and what lets it."""

    entry: str
    why: Finding


def is_final(award: Award) -> bool:
    """Whether an award is given in a group or in the show, by a judge, to dogs that compete for it there."""
    return award.level in ("group", "show") and bool(award.candidates)


def finals_for(book: RuleBook, groups: Collection[str]) -> list[Final]:
    """The finals that breeds of these groups can lead to: each group's first, in the rules' order, then the show's."""
    awards = [award for award in book.awards if is_final(award)]
    of_groups = [
        Final(award, group.code)
        for group in book.groups
        if group.code in groups
        for award in awards
        if award.level == "group"
    ]
    return [*of_groups, *(Final(award) for award in awards if award.level == "show" and groups)]


def finalists(book: RuleBook, final: Final, at: Finals) -> list[Finalist]:
    """Who competes in a final, each once, with the reason.

    Rule: an entry competes where a line of the award's candidates takes it. Winners of a breed award compete in the
    final of their own group, or all together in the show's; winners of the groups are the first of each group's final.
    The dog that has the award does not compete for its reserve; the dog second to it in its group may.
    Source: the rule book's awards, each with its own.
    Limits: a winner that does not come to the final is not replaced by another of its breed or group.
    """
    taken = set(at.placed.get((final.award.reserve_of or "", final.group), ())[:1])
    found: dict[str, Finalist] = {}
    for line in final.award.candidates:
        for one in _of_line(book, line, final, at):
            if one.entry not in taken:
                found.setdefault(one.entry, one)
    return list(found.values())


def _of_line(book: RuleBook, line: Candidates, final: Final, at: Finals) -> Iterator[Finalist]:
    for code in line.winners_of:
        if is_final(book.award(code)):
            yield from _group_winners(code, at)
        else:
            yield from _breed_winners(code, final, at)
    if line.second_to:
        yield from _second_in_group(book, line.second_to, final, at)


def _breed_winners(code: str, final: Final, at: Finals) -> Iterator[Finalist]:
    for winner in at.winners:
        if code in winner.holds and final.group in ("", winner.group):
            yield Finalist(winner.entry, notes("competes-as-winner", entry=winner.entry, holds=[code]))


def _group_winners(code: str, at: Finals) -> Iterator[Finalist]:
    for (award, group), places in at.placed.items():
        if award == code and places:
            facts = {"holds": [code], "group": group}
            yield Finalist(places[0], notes("competes-as-winner", entry=places[0], **facts))


def _second_in_group(book: RuleBook, host: str, final: Final, at: Finals) -> Iterator[Finalist]:
    """The dog second in the group that the winner of `host` came from."""
    best = at.placed.get((host, final.group), ())[:1]
    led_there = {code for line in book.award(host).candidates for code in line.winners_of}
    for (award, _), places in at.placed.items():
        if award in led_there and len(places) > 1 and best and places[0] == best[0]:
            yield Finalist(places[1], notes("competes-as-second-in-group", entry=places[1], to=host))


def feeders(book: RuleBook, final: Final, held: Sequence[Final]) -> list[Final]:
    """The other finals on whose winners it depends who competes in this one."""
    lines = final.award.candidates
    named = {code for line in lines for code in (*line.winners_of, line.second_to, final.award.reserve_of)}
    return [one for one in held if one.award.code in named and one.key != final.key]


def check_final(book: RuleBook, final: Final, at: Finals) -> Iterator[Finding]:
    """What does not go with the rules in the places of a final; the judge's word stands all the same.

    Rule: only dogs that compete are placed, no more of them than the rules place.
    Source: the rule book's awards, each with its own.
    """
    places = at.placed.get(final.key, ())
    competing = {one.entry for one in finalists(book, final, at)}
    for entry in places:
        if entry not in competing:
            yield warns("award-without-right", award=final.award.code, entry=entry)
    if len(places) > final.award.places:
        yield warns("too-many-places", given=len(places), most=final.award.places)
