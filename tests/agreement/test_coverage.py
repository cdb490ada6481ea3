"""Seeded simulations: the intervals hold the true value about as often as they say."""

import numpy as np

from scoring.agreement.doors import agreement

DRAWS = 300


def share_holding(truth, statistic, draw):
    """The share of intervals that hold the truth; one that is withheld does not count."""
    found = [agreement({**statistic, "ratings": draw()})["interval"] for _ in range(DRAWS)]
    given = [interval for interval in found if interval is not None]
    assert len(given) > 0.9 * DRAWS
    return sum(low <= truth <= high for low, high in given) / len(given)


def judged_dogs(random, judges_spread):
    """Ten dogs, four judges: variance 2 between dogs, 1 of error, the judges' severity as asked."""
    dogs = random.normal(0, np.sqrt(2), (10, 1))
    severity = random.normal(0, judges_spread, (1, 4))
    return (dogs + severity + random.normal(0, 1, (10, 4))).tolist()


def test_the_interval_of_icc_3_1_holds_the_truth_about_95_times_in_a_hundred():
    random = np.random.default_rng(1979)
    share = share_holding(2 / 3, {"statistic": "icc-3-1"}, lambda: judged_dogs(random, 0.0))
    assert 0.91 <= share <= 0.99


def test_the_interval_of_icc_2_1_holds_the_truth_about_95_times_in_a_hundred():
    random = np.random.default_rng(1980)
    share = share_holding(2 / 4, {"statistic": "icc-2-1"}, lambda: judged_dogs(random, 1.0))
    assert 0.91 <= share <= 0.99


def test_the_interval_of_kappa_holds_the_truth_about_95_times_in_a_hundred():
    # Two judges, three categories, 100 dogs: cells of the population give kappa (0.7 - 0.34) / 0.66.
    cells = np.array([[0.3, 0.05, 0.05], [0.05, 0.2, 0.05], [0.05, 0.05, 0.2]])
    truth = (0.7 - 0.34) / 0.66
    random = np.random.default_rng(1969)
    pairs = [[i, j] for i in range(3) for j in range(3)]
    share = share_holding(
        truth, {"statistic": "kappa"}, lambda: [pairs[i] for i in random.choice(9, 100, p=cells.ravel())]
    )
    assert 0.91 <= share <= 0.99


def test_the_interval_of_alpha_holds_the_truth_about_95_times_in_a_hundred():
    # Alpha at interval level tends to the one-way intraclass correlation, here 2/3, as dogs grow in number.
    random = np.random.default_rng(2004)

    def draw():
        return (random.normal(0, np.sqrt(2), (30, 1)) + random.normal(0, 1, (30, 3))).tolist()

    assert 0.89 <= share_holding(2 / 3, {"statistic": "krippendorff-alpha", "level": "interval"}, draw) <= 0.99
