"""From the breeds' winners over the groups to best in show, as trees that fill as the finals are judged."""

from collections.abc import Iterator

from django.utils.translation import gettext

from ringside.results.award_tree import Node
from ringside.results.finals import ShowFinals, Stands, breed_words
from scoring.rules.finals import Final, is_final


def final_trees(found: ShowFinals) -> list[Node]:
    """The finals of the show that are held, each with those that lead to it; best in show stands first in the rules."""
    held = {stand.offered.key: stand for stand in found.stands if stand.row}
    fed = {key for stand in held.values() for key in _feeding(found, stand.offered, held)}
    roots = [stand for key, stand in held.items() if key not in fed and not stand.offered.award.reserve_of]
    ordered = sorted(roots, key=lambda stand: stand.offered.award.level != "show")
    return [_node(found, stand, held) for stand in ordered]


def _feeding(found: ShowFinals, one: Final, held: dict[tuple[str, str], Stands]) -> list[tuple[str, str]]:
    codes = {code for line in one.award.candidates for code in line.winners_of}
    return [key for key in held if key[0] in codes and is_final(found.book.award(key[0]))]


def _node(found: ShowFinals, stand: Stands, held: dict[tuple[str, str], Stands]) -> Node:
    first = {entry for place, entry in stand.placed if place == 1}
    branches = [_node(found, held[key], held) for key in _feeding(found, stand.offered, held)]
    goes_on = [_with_way(branch, bool(first & set(branch.entries[:1]))) for branch in branches]
    leaves = list(_leaves(stand, first)) if not branches else []
    beside = [_alone(other) for other in held.values() if _hangs_on(other, stand)]
    state = "given" if stand.placed else "undecided"
    entries = tuple(entry for _, entry in stand.placed)
    return Node(stand.title, state, entries, branches=(*goes_on, *leaves), beside=tuple(beside))


def _hangs_on(other: Stands, stand: Stands) -> bool:
    return (other.offered.award.reserve_of, other.offered.group) == stand.offered.key


def _alone(stand: Stands) -> Node:
    return Node(stand.title, "given" if stand.placed else "undecided", tuple(entry for _, entry in stand.placed))


def _with_way(node: Node, wins: bool) -> Node:
    return Node(node.title, node.state, node.entries, wins, node.branches, node.beside)


def _leaves(stand: Stands, first: set[object]) -> Iterator[Node]:
    """The breed winners that compete; one that did not come says so."""
    for one in stand.competing:
        breed = breed_words(one.entry)
        title = gettext("{breed}, did not come").format(breed=breed) if one.is_absent else breed
        yield Node(title, "placed", (one.entry,), one.entry in first)
