"""The order that contradicts the judges least: Kemeny's rule, exact."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations, groupby, pairwise

from scoring.bad_input import BadInput
from scoring.placing.panel import Group, Marks, PanelOrder, Step

# How many judges place one entry ahead of another.
Ahead = Mapping[str, Mapping[str, int]]
MOST_TANGLED = 18


@dataclass(frozen=True, slots=True)
class _Best:
    """One best order of some entries, and the groups between which all best orders cut."""

    order: tuple[str, ...]
    groups: tuple[Group, ...]


def kemeny(marks: Marks) -> PanelOrder:
    """The order with the fewest disagreements: pairs of entries that a judge has the other way round, over all judges.

    Rule: an entry that no chain of majorities or even votes leads to goes first, so the class splits into parts that
    every best order keeps in sequence; each part is then solved exactly. Several best orders are a tie: a group is cut
    only where all of them cut, so some of a tied group may stand ahead of others of it in every best order.
    Source: Kemeny 1959, Daedalus 88:577-591; the split by majorities, Truchon 1998, cahier 9813, Universite Laval.
    Limits: a part that holds a cycle of majorities may hold 18 entries. Level places of a judge count on neither side.
    Raises BadInput `too-large` for a larger one.
    """
    ahead = {one: {other: _votes(marks[one], marks[other]) for other in marks} for one in marks}
    working: list[Step] = [_pair_step(ahead, one, other) for one, other in combinations(marks, 2)]
    order: list[str] = []
    groups: list[Group] = []
    for part in _parts(ahead):
        best = _best(ahead, part)
        order += best.order
        groups += best.groups
        several = any(len(group) > 1 for group in best.groups)
        told = [list(group) for group in best.groups]
        working.append({"step": "part", "entries": part, "best": list(best.order), "several": several, "order": told})
    working.append({"step": "disagreements", "total": disagreements(ahead, order)})
    return PanelOrder(tuple(groups), tuple(working))


def disagreements(ahead: Ahead, order: Sequence[str]) -> int:
    """How often a judge has a pair the other way round than this order."""
    return sum(ahead[behind][before] for before, behind in combinations(order, 2))


def _votes(one: Sequence[int], other: Sequence[int]) -> int:
    return sum(a < b for a, b in zip(one, other, strict=True))


def _pair_step(ahead: Ahead, one: str, other: str) -> Step:
    return {"step": "pair", "entries": [one, other], "judges": [ahead[one][other], ahead[other][one]]}


def _parts(ahead: Ahead) -> list[list[str]]:
    """Entries that chains of majorities or even votes lead round in a circle, each such part ahead of the next."""
    reach = _chains(ahead, lambda one, other: ahead[one][other] >= ahead[other][one])
    first = sorted(ahead, key=lambda entry: -len(reach[entry]))
    return [list(part) for _, part in groupby(first, key=lambda entry: len(reach[entry]))]


def _chains(entries: Iterable[str], leads: Callable[[str, str], bool]) -> dict[str, set[str]]:
    """All entries that each entry leads to through others (transitive closure, Warshall 1962, J ACM 9:11-12)."""
    reach = {one: {other for other in entries if one != other and leads(one, other)} for one in entries}
    for middle in entries:
        for one in entries:
            if middle in reach[one]:
                reach[one] |= reach[middle]
    return reach


def _best(ahead: Ahead, part: Sequence[str]) -> _Best:
    majorities = _chains(part, lambda one, other: ahead[one][other] > ahead[other][one])
    if not any(entry in majorities[entry] for entry in part):
        return _without_cycle(majorities, part)
    if len(part) > MOST_TANGLED:
        message = (
            f"The judges' majorities run in a circle through more than {MOST_TANGLED} entries; take another method."
        )
        raise BadInput("too-large", message, "marks")
    return _Tangle(ahead, part).best()


def _without_cycle(majorities: Mapping[str, set[str]], part: Sequence[str]) -> _Best:
    """Every order that follows the majorities is best: entries are cut apart where chains order all of both sides."""
    order = sorted(part, key=lambda entry: -len(majorities[entry]))
    cuts = [k for k in range(1, len(order)) if all(majorities[entry] >= set(order[k:]) for entry in order[:k])]
    return _Best(tuple(order), _cut(order, cuts))


def _cut(order: Sequence[str], cuts: Sequence[int]) -> tuple[Group, ...]:
    edges = [0, *cuts, len(order)]
    return tuple(tuple(order[start:end]) for start, end in pairwise(edges))


class _Tangle:
    """Exact search over sets of entries already placed (Held and Karp 1962, J SIAM 10:196-210, for orders).

    A set is a whole number with one bit for each entry.
    """

    def __init__(self, ahead: Ahead, part: Sequence[str]) -> None:
        self.part = part
        self.all = (1 << len(part)) - 1
        self.against = [self._votes_against(ahead, entry) for entry in part]

    def best(self) -> _Best:
        before, after = self._before(), self._after()
        least = before[self.all]
        through = [placed for placed in range(self.all + 1) if before[placed] + after[placed] == least]
        sizes = [placed.bit_count() for placed in through]
        cuts = [size for size in range(1, len(self.part)) if sizes.count(size) == 1]
        order = self._walk(after)
        return _Best(order, _cut(order, cuts))

    def _votes_against(self, ahead: Ahead, entry: str) -> list[int]:
        """For every set of entries, how many votes place one of them ahead of this entry."""
        votes = [0]
        for other in self.part:
            more = ahead[other][entry]
            votes += [each + more for each in votes]
        return votes

    def _steps(self, placed: int) -> list[tuple[int, int]]:
        """Each set that one more entry makes of this one, and the votes against putting that entry next."""
        rest = self.all ^ placed
        return [(placed | 1 << i, votes[rest]) for i, votes in enumerate(self.against) if rest >> i & 1]

    def _before(self) -> list[int]:
        """For every set, the fewest votes against any order that begins with it."""
        fewest = [0] + [-1] * self.all
        for placed in range(self.all):
            for then, votes in self._steps(placed):
                if fewest[then] < 0 or fewest[placed] + votes < fewest[then]:
                    fewest[then] = fewest[placed] + votes
        return fewest

    def _after(self) -> list[int]:
        """For every set, the fewest votes against any order of the entries outside it."""
        fewest = [0] * (self.all + 1)
        for placed in range(self.all - 1, -1, -1):
            fewest[placed] = min(fewest[then] + votes for then, votes in self._steps(placed))
        return fewest

    def _walk(self, after: Sequence[int]) -> tuple[str, ...]:
        order, placed = [], 0
        while placed != self.all:
            then = next(then for then, votes in self._steps(placed) if after[then] + votes == after[placed])
            order.append(self.part[(then ^ placed).bit_length() - 1])
            placed = then
        return tuple(order)
