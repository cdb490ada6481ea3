"""Several judges place the same class: one order out of theirs, and each step of how it was reached."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby
from typing import Any

Marks = Mapping[str, Sequence[int]]
Step = dict[str, Any]
Group = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class PanelOrder:
    """Best first; a group of more than one is a tie. `working` holds one object for each step, in order."""

    groups: tuple[Group, ...]
    working: tuple[Step, ...]


def shared_places(groups: Sequence[Group]) -> dict[str, Fraction]:
    """The place of every entry; those of a tie share the mean of the places they take up, such as 2 1/2."""
    places: dict[str, Fraction] = {}
    taken = 0
    for group in groups:
        places.update(dict.fromkeys(group, Fraction(2 * taken + len(group) + 1, 2)))
        taken += len(group)
    return places


def skating(marks: Marks) -> PanelOrder:
    """The order by majority of judges.

    Rule: column by column from first place down, count each entry's marks at or above the column. A majority of the
    judges places an entry (rule 5); of several in one column the larger majority goes first (6); of equal ones the
    smaller sum of those marks, and then the next column for the tied alone (7); where nobody has a majority the next
    column is taken in (8). Tied to the end is a tie.
    Source: the Skating System of competitive dancing, rules 5 to 8.
    Limits: rule 4 wants each judge to place every entry once; marks that do otherwise are counted as they stand.
    """
    columns = sorted({place for places in marks.values() for place in places})
    majority = _judges(marks) // 2 + 1
    working: list[Step] = [{"step": "majority", "judges": _judges(marks), "needed": majority}]
    groups: list[Group] = []
    waiting = list(marks)
    for i, column in enumerate(columns):
        ready = [entry for entry in waiting if _count(marks[entry], column) >= majority]
        waiting = [entry for entry in waiting if entry not in ready]
        groups += _settle(marks, ready, columns[i:], working)
        if waiting and not ready:
            working.append({"step": "no-majority", "rule": 8, "column": column})
    return PanelOrder(tuple(groups), tuple(working))


def _settle(
    marks: Marks, ready: Sequence[str], columns: Sequence[int], working: list[Step], *, again: bool = False
) -> list[Group]:
    """Rules 5 to 7 for the entries that reach a majority in the first of these columns; `again` for the tied of one."""
    if not ready:
        return []
    if not columns:
        working.append({"step": "tied-to-the-end", "rule": 7, "entries": list(ready)})
        return [tuple(ready)]
    column = columns[0]
    count = {entry: _count(marks[entry], column) for entry in ready}
    total = {entry: _sum(marks[entry], column) for entry in ready}
    order = _grouped(ready, lambda entry: (-count[entry], total[entry]))
    told = {"column": column, "counts": count, "sums": total, "order": [list(group) for group in order]}
    working.append({**_reason(list(count.values()), again), **told})
    groups: list[Group] = []
    for tied in order:
        groups += [tied] if len(tied) == 1 else _settle(marks, tied, columns[1:], working, again=True)
    return groups


def _reason(counts: Sequence[int], again: bool) -> Step:
    if again:
        return {"step": "next-column", "rule": 7}
    if len(counts) == 1:
        return {"step": "only-majority", "rule": 5}
    if len(set(counts)) == len(counts):
        return {"step": "larger-majority", "rule": 6}
    return {"step": "equal-majority", "rule": 7}


def borda(marks: Marks) -> PanelOrder:
    """The order by points: from each judge, one for every entry placed behind, half for every one placed level.

    Source: de Borda 1781, Memoire sur les elections au scrutin; half points for level entries: common practice, no
    source.
    Limits: depends on who else is entered. Equal points are a tie.
    """
    columns = list(zip(*marks.values(), strict=True))
    points = {
        entry: [_behind(column, place) for column, place in zip(columns, places, strict=True)]
        for entry, places in marks.items()
    }
    total = {entry: sum(given, Fraction(0)) for entry, given in points.items()}
    groups = _grouped(list(marks), lambda entry: -total[entry])
    working = [_points_step(entry, points[entry]) for group in groups for entry in group]
    return PanelOrder(tuple(groups), tuple(working))


def _points_step(entry: str, points: Sequence[Fraction]) -> Step:
    total = plain_number(sum(points, Fraction(0)))
    return {"step": "points", "entry": entry, "points": [plain_number(each) for each in points], "total": total}


def plain_number(value: Fraction) -> int | float:
    """Whole where it is whole, so that a place reads 2 and a shared one 2.5."""
    return int(value) if value.denominator == 1 else float(value)


def _behind(column: Sequence[int], place: int) -> Fraction:
    level = sum(other == place for other in column) - 1
    return sum(other > place for other in column) + Fraction(level, 2)


def _judges(marks: Marks) -> int:
    return len(next(iter(marks.values()), ()))


def _count(places: Sequence[int], column: int) -> int:
    return sum(place <= column for place in places)


def _sum(places: Sequence[int], column: int) -> int:
    return sum(place for place in places if place <= column)


def _grouped(entries: Sequence[str], key: Callable[[str], Any]) -> list[Group]:
    return [tuple(group) for _, group in groupby(sorted(entries, key=key), key)]
