"""Which of one field's edits stand when some of them replace others."""

from collections.abc import Collection, Iterable, Mapping, Set

from scoring.sheet import Edit

Edits = Mapping[str, Edit]
Arrows = Mapping[str, Collection[str]]


def live_edits(edits: Edits, counted: Set[str]) -> tuple[Edit, ...]:
    """The live ones of one field's edits, in the order of their ids, where only the counted ones count.

    Rule: an edit is live unless another one replaces it that is not on a cycle with it. An edit that does not count
    hands on what it replaces: whoever replaces it replaces that too.
    """
    standing = sorted(edit_id for edit_id in edits if edit_id in counted)
    arrows = {edit_id: replaced_by(edit_id, edits, counted) for edit_id in standing}
    cycle = cycles(arrows)
    dead = {older for newer, replaced in arrows.items() for older in replaced if cycle[older] != cycle[newer]}
    return tuple(edits[edit_id] for edit_id in arrows if edit_id not in dead)


def replaced_by(newer: str, edits: Edits, counted: Set[str]) -> set[str]:
    """The counted edits that this one replaces, itself or through edits that do not count."""
    found: set[str] = set()
    seen, waiting = {newer}, [newer]
    while waiting:
        for older in known_replaced(edits[waiting.pop()], edits):
            if older not in seen:
                seen.add(older)
                (found.add if older in counted else waiting.append)(older)
    return found


def replaced_closure(ids: Iterable[str], edits: Edits) -> set[str]:
    """These edits and everything they replace, step by step, within their fields; unknown ids are left out."""
    found: set[str] = set()
    waiting = [edit_id for edit_id in ids if edit_id in edits]
    while waiting:
        edit_id = waiting.pop()
        if edit_id not in found:
            found.add(edit_id)
            waiting.extend(known_replaced(edits[edit_id], edits))
    return found


def known_replaced(edit: Edit, edits: Edits) -> list[str]:
    """The ids this edit replaces: replacing only counts within a field."""
    return [older for older in edit.replaces if older in edits and edits[older].field == edit.field]


def cycles(arrows: Arrows) -> dict[str, str]:
    """Names each id's cycle by one of its members; an id on no cycle is alone in its own.

    Rule: strongly connected components, by the two walks of Kosaraju and Sharir.
    """
    backward: dict[str, list[str]] = {edit_id: [] for edit_id in arrows}
    for source, targets in arrows.items():
        for target in targets:
            backward[target].append(source)
    cycle: dict[str, str] = {}
    for root in reversed(_left_last(arrows)):
        waiting = [root]
        while waiting:
            edit_id = waiting.pop()
            if edit_id not in cycle:
                cycle[edit_id] = root
                waiting.extend(backward[edit_id])
    return cycle


def _left_last(arrows: Arrows) -> list[str]:
    """The ids in the order in which a walk along the arrows leaves them."""
    order: list[str] = []
    entered: set[str] = set()
    waiting = [(edit_id, False) for edit_id in arrows]
    while waiting:
        edit_id, leaving = waiting.pop()
        if leaving:
            order.append(edit_id)
        elif edit_id not in entered:
            entered.add(edit_id)
            waiting.append((edit_id, True))
            waiting.extend((target, False) for target in arrows[edit_id])
    return order
