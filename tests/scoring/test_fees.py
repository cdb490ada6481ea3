"""A show's own fee table: which line an entry pays by, whose dog is the first, how an account stands."""

from datetime import date
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ringside.core.sentences import sentence
from scoring.fees import Charge, FeeLine, fee_of, standing, table_findings, turns

EARLY, LATE = date(2026, 4, 30), date(2026, 5, 1)
TABLE = [
    FeeLine("early, first", Decimal("45.00"), frozenset({"open"}), "first-dog", None, None, EARLY),
    FeeLine("early, more", Decimal("35.00"), frozenset({"open"}), "further-dog", None, None, EARLY),
    FeeLine("late, members", Decimal("55.00"), frozenset({"open"}), None, True, LATE),
    FeeLine("late", Decimal("65.00"), frozenset({"open"}), None, False, LATE),
    FeeLine("puppies", Decimal("20.00"), frozenset({"puppy"})),
]


@pytest.mark.parametrize(
    ("charge", "amount"),
    [
        (Charge("open", "first-dog", False, EARLY), "45.00"),
        (Charge("open", "further-dog", True, EARLY), "35.00"),
        (Charge("open", "first-dog", True, LATE), "55.00"),
        (Charge("open", "further-class", False, LATE), "65.00"),
        (Charge("puppy", "further-dog", True, LATE), "20.00"),
    ],
)
def test_an_entry_pays_by_the_one_line_that_fits(charge, amount):
    assert fee_of(TABLE, charge).amount == Decimal(amount)


def test_an_entry_that_no_line_or_two_lines_fit_is_not_charged_and_says_why():
    missing = fee_of(TABLE, Charge("open", "further-class", False, EARLY))
    assert missing.amount is None
    assert "No fee fits: open class, further class, member: no, entered on 30 April 2026." in sentence(missing.finding)
    twice = fee_of([*TABLE, FeeLine("all", Decimal(1))], Charge("puppy", "first-dog", False, EARLY))
    assert twice.amount is None
    assert "Several fees fit (puppies and all)" in sentence(twice.finding)


def test_a_first_class_is_any_dogs_and_a_further_class_goes_by_its_own_line():
    """As entry forms in Britain have it, by common practice: one fee for each dog, less for its other classes."""
    table = [FeeLine("first class", Decimal(28), turn="first-class"), FeeLine("more", Decimal(6), turn="further-class")]
    assert [fee_of(table, Charge("open", turn, False, EARLY)).amount for turn in turns("aabab")] == [28, 6, 28, 6, 6]
    assert table_findings(table, ["open"], EARLY, LATE) == []


def test_a_gap_in_the_table_is_found_before_anybody_enters():
    found = table_findings(TABLE, ["open", "puppy"], date(2026, 1, 1), date(2026, 5, 31))
    assert {(one.facts["turn"], one.facts["member"], tuple(one.facts["classes"])) for one in found} == {
        ("further-class", False, ("open",)), ("further-class", True, ("open",)),
    }  # fmt: skip
    assert {one.facts["day"] for one in found} == {"2026-01-01"}


@given(st.lists(st.integers(0, 4), max_size=12))
def test_one_dog_is_the_first_and_each_dog_is_counted_once(dogs):
    found = turns(dogs)
    assert found.count("first-dog") == min(1, len(dogs))
    assert len(found) - found.count("further-class") == len(set(dogs))


@pytest.mark.parametrize(
    ("owed", "paid", "word"),
    [(0, 0, "nothing owed"), (45, 0, "owes"), (45, 20, "partly paid"), (45, 45, "paid"), (45, 50, "to refund"),
     (0, 45, "to refund")],
)  # fmt: skip
def test_an_account_stands_in_a_word(owed, paid, word):
    assert standing(Decimal(owed), Decimal(paid)) == word
