"""The methods against references that try everything, and what must hold for any panel."""

from itertools import combinations, permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scoring.placing.panel_door import METHODS, panel

NAMES = "ABCDEFGHIJKL"


@st.composite
def panels(draw, most_entries=6, most_judges=7):
    """Every judge places every entry once."""
    names = NAMES[: draw(st.integers(1, most_entries))]
    orders = draw(st.lists(st.permutations(range(1, len(names) + 1)), min_size=1, max_size=most_judges))
    return {name: [order[i] for order in orders] for i, name in enumerate(names)}


loose_panels = st.integers(1, 4).flatmap(
    lambda judges: st.dictionaries(
        st.sampled_from(NAMES), st.lists(st.integers(1, 5), min_size=judges, max_size=judges), min_size=1, max_size=5
    )
)


def contradictions(marks, order):
    return sum(
        b < a for before, behind in combinations(order, 2) for a, b in zip(marks[before], marks[behind], strict=True)
    )


def best_orders(marks):
    cost = {order: contradictions(marks, order) for order in permutations(marks)}
    return min(cost.values()), [order for order in cost if cost[order] == min(cost.values())]


def groups_of(orders):
    """Cut where every best order has the same entries before the cut."""
    groups, start = [], 0
    for end in range(1, len(orders[0]) + 1):
        if len({frozenset(order[:end]) for order in orders}) == 1:
            groups.append(set(orders[0][start:end]))
            start = end
    return groups


def groups_answered(found):
    by_place = {}
    for entry, place in found["places"].items():
        by_place.setdefault(place, set()).add(entry)
    return [by_place[place] for place in sorted(by_place)]


@given(st.one_of(panels(), loose_panels))
def test_kemeny_is_the_best_of_all_orders_and_their_common_cuts(marks):
    found = panel({"method": "kemeny", "marks": marks})
    least, orders = best_orders(marks)
    assert found["working"][-1]["total"] == least
    assert groups_answered(found) == groups_of(orders)


@given(panels(most_entries=12, most_judges=5))
def test_no_exchange_of_two_neighbours_betters_kemeny_with_twelve_entries(marks):
    found = panel({"method": "kemeny", "marks": marks})
    order = [entry for step in found["working"] if step["step"] == "part" for entry in step["best"]]
    total = found["working"][-1]["total"]
    assert contradictions(marks, order) == total
    for i in range(len(order) - 1):
        swapped = [*order[:i], order[i + 1], order[i], *order[i + 2 :]]
        assert contradictions(marks, swapped) >= total


def skating_by_the_book(marks):
    """Places handed out one at a time, as a scrutineer does it with the table in front of them."""
    judges = len(next(iter(marks.values())))
    last = max(max(places) for places in marks.values())

    def tally(entry, column):
        counted = [place for place in marks[entry] if place <= column]
        return len(counted), sum(counted)

    def winner(candidates, column):
        """Those who take the position under review."""
        most = max(tally(entry, column)[0] for entry in candidates)
        tied = [entry for entry in candidates if tally(entry, column)[0] == most]
        least = min(tally(entry, column)[1] for entry in tied)
        tied = [entry for entry in tied if tally(entry, column)[1] == least]
        return tied if len(tied) == 1 or column == last else winner(tied, column + 1)

    groups, waiting, column = [], set(marks), 1
    while waiting:
        ready = [entry for entry in waiting if 2 * tally(entry, column)[0] > judges]
        if not ready:
            column += 1
            continue
        # Within the entries ready at this column, all are placed before the column widens.
        while ready:
            taken = winner(ready, column)
            groups.append(set(taken))
            ready = [entry for entry in ready if entry not in taken]
            waiting -= set(taken)
    return groups


@given(st.one_of(panels(), loose_panels))
def test_skating_is_what_a_scrutineer_finds_one_position_at_a_time(marks):
    assert groups_answered(panel({"method": "skating", "marks": marks})) == skating_by_the_book(marks)


@given(panels())
def test_borda_is_the_order_of_the_sums_of_places(marks):
    found = panel({"method": "borda", "marks": marks})
    sums = sorted({sum(places) for places in marks.values()})
    assert groups_answered(found) == [{e for e, places in marks.items() if sum(places) == each} for each in sums]


@pytest.mark.parametrize("method", METHODS)
@given(marks=st.one_of(panels(), loose_panels), order=st.randoms())
def test_other_names_in_another_order_change_nothing(method, marks, order):
    names = list(marks)
    order.shuffle(names)
    renamed = {f"number {name}": marks[name] for name in names}
    expected = {f"number {name}": place for name, place in panel({"method": method, "marks": marks})["places"].items()}
    assert expected == panel({"method": method, "marks": renamed})["places"]


@pytest.mark.parametrize("method", METHODS)
@given(marks=panels(), order=st.randoms())
def test_the_order_of_the_judges_changes_nothing(method, marks, order):
    seats = list(range(len(next(iter(marks.values())))))
    order.shuffle(seats)
    reseated = {name: [places[seat] for seat in seats] for name, places in marks.items()}
    assert panel({"method": method, "marks": marks})["places"] == panel({"method": method, "marks": reseated})["places"]


@pytest.mark.parametrize("method", METHODS)
@given(order=st.permutations(NAMES), judges=st.integers(1, 9))
def test_a_panel_of_one_mind_is_its_order(method, order, judges):
    found = panel({"method": method, "marks": {name: [place] * judges for place, name in enumerate(order, 1)}})
    assert found["places"] == {name: place for place, name in enumerate(order, 1)}
    assert (found["ties"], found["findings"]) == ([], [])


@pytest.mark.parametrize("method", METHODS)
@given(marks=st.one_of(panels(), loose_panels))
def test_places_add_up_and_ties_are_those_who_share_one(method, marks):
    found = panel({"method": method, "marks": marks})
    assert sum(found["places"].values()) == len(marks) * (len(marks) + 1) / 2
    assert [group for group in groups_answered(found) if len(group) > 1] == [set(tie) for tie in found["ties"]]


@given(panels(most_judges=5))
def test_an_entry_that_beats_every_other_by_majority_is_first_by_kemeny(marks):
    # The Condorcet winner, which Kemeny's rule always ranks first (Young and Levenglick 1978, SIAM J Appl Math 35:285).
    def beats(one, other):
        return 2 * sum(a < b for a, b in zip(marks[one], marks[other], strict=True)) > len(marks[one])

    for entry in marks:
        if all(beats(entry, other) for other in marks if other != entry):
            assert panel({"method": "kemeny", "marks": marks})["places"][entry] == 1
