"""The methods against orders printed elsewhere."""

import pytest

from scoring.placing.panel_door import panel


def marks_of(lines):
    """ "51 11121, 52 42212": an entry and the place each judge gave it."""
    return {entry: [int(place) for place in places] for entry, places in (line.split() for line in lines.split(", "))}


def marks_from_ballots(ballots):
    """(42, "MNCK"): so many judges with this order."""
    return {entry: [order.index(entry) + 1 for n, order in ballots for _ in range(n)] for entry in ballots[0][1]}


# The usual worked examples of the Skating System's rules 5 and 6, as published dance-sport rules print them.
RULE_5 = marks_of("51 11121, 52 42212, 53 33354, 54 24543, 55 56435, 56 65666")
RULE_6 = marks_of("61 1121421, 62 6215212, 63 2433633, 64 3352154, 65 4564365, 66 5646546")

# The Tennessee capital example of the voting literature: Memphis, Nashville, Chattanooga, Knoxville.
TENNESSEE = marks_from_ballots([(42, "MNCK"), (26, "NCKM"), (15, "CKNM"), (17, "KCNM")])


@pytest.mark.parametrize("marks", [RULE_5, RULE_6])
def test_skating_places_the_published_examples_in_their_printed_order(marks):
    assert list(panel({"method": "skating", "marks": marks})["places"].items()) == list(
        zip(marks, range(1, 7), strict=True)
    )


def test_the_larger_majority_of_rule_6_goes_against_the_sum_of_places():
    assert sum(RULE_6["64"]) < sum(RULE_6["63"])
    steps = panel({"method": "skating", "marks": RULE_6})["working"]
    [step] = [step for step in steps if step.get("order") == [["63"], ["64"]]]
    assert (step["step"], step["rule"], step["counts"]) == ("larger-majority", 6, {"63": 5, "64": 4})


def test_kemeny_of_tennessee_is_nashville_first_with_207_disagreements():
    found = panel({"method": "kemeny", "marks": TENNESSEE})
    assert found["places"] == {"N": 1, "C": 2, "K": 3, "M": 4}
    assert found["working"][-1] == {"step": "disagreements", "total": 207}


def test_borda_of_tennessee_gives_the_published_points():
    found = panel({"method": "borda", "marks": TENNESSEE})
    assert list(found["places"]) == ["N", "C", "M", "K"]
    assert {step["entry"]: step["total"] for step in found["working"]} == {"N": 194, "C": 173, "M": 126, "K": 107}


def test_rule_7_takes_the_smaller_sum_of_equal_majorities():
    # Worked by hand from the wording of rule 7: three of five judges have each at 2nd or above, sums 4 and 5.
    marks = marks_of("71 11255, 72 22144, 73 33311, 74 44422, 75 55533")
    steps = panel({"method": "skating", "marks": marks})["working"]
    [step] = [step for step in steps if step["step"] == "equal-majority"]
    assert (step["column"], step["counts"], step["sums"]) == (2, {"71": 3, "72": 3}, {"71": 4, "72": 5})
    assert step["order"] == [["71"], ["72"]]


def test_rule_7_takes_the_next_column_of_equal_sums():
    # By hand: 71 and 72 both have three marks at 2nd or above that add to five; at 3rd or above 72 has four.
    marks = marks_of("71 12244, 72 21235, 73 33351, 74 44512, 75 55123")
    found = panel({"method": "skating", "marks": marks})
    [step] = [step for step in found["working"] if step["step"] == "next-column"]
    assert (step["rule"], step["column"], step["order"]) == (7, 3, [["72"], ["71"]])
    assert (found["places"]["72"], found["places"]["71"]) == (1, 2)


def test_entries_tied_to_the_end_share_the_mean_place():
    found = panel({"method": "skating", "marks": marks_of("81 1122, 82 2211, 83 3333")})
    assert found["places"] == {"81": 1.5, "82": 1.5, "83": 3}
    assert found["ties"] == [["81", "82"]]
    assert "tied-to-the-end" in [step["step"] for step in found["working"]]


def test_a_circle_of_three_majorities_is_a_kemeny_tie():
    # Condorcet's paradox (Condorcet 1785): three judges, each order a turn of the last.
    found = panel({"method": "kemeny", "marks": marks_from_ballots([(1, "ABCD"), (1, "BCAD"), (1, "CABD")])})
    assert (found["places"], found["ties"]) == ({"A": 2, "B": 2, "C": 2, "D": 4}, [["A", "B", "C"]])
