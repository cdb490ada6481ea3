"""The statistics against general-purpose libraries and against references written out slowly."""

from itertools import combinations, product

import krippendorff
import numpy as np
import pytest
import scipy.stats
from hypothesis import assume, given
from hypothesis import strategies as st

from scoring.agreement.doors import agreement
from scoring.agreement.quantiles import f_quantile, incomplete_beta, t_quantile

marks = st.integers(-3, 3)
freedom = st.floats(1, 400)


two_to_five = st.integers(2, 5)


def tables(cells, least_dogs=2, judges=two_to_five):
    return judges.flatmap(
        lambda width: st.lists(st.lists(cells, min_size=width, max_size=width), min_size=least_dogs, max_size=12)
    )


@given(st.sampled_from([0.025, 0.5, 0.95, 0.975, 0.999]), freedom, freedom)
def test_the_f_quantile_is_that_of_scipy(probability, above, below):
    assert f_quantile(probability, above, below) == pytest.approx(
        scipy.stats.f.ppf(probability, above, below), rel=1e-8
    )


@given(st.sampled_from([0.9, 0.975, 0.995]), freedom)
def test_the_t_quantile_is_that_of_scipy(probability, degrees):
    assert t_quantile(probability, degrees) == pytest.approx(scipy.stats.t.ppf(probability, degrees), rel=1e-8)


@given(st.floats(0.05, 2000), st.floats(0.05, 2000), st.floats(0, 1))
def test_the_incomplete_beta_function_is_that_of_scipy(a, b, x):
    assert incomplete_beta(a, b, x) == pytest.approx(scipy.special.betainc(a, b, x), rel=1e-8, abs=1e-12)


@given(tables(st.one_of(st.none(), marks)), st.sampled_from(["nominal", "ordinal", "interval"]))
def test_alpha_is_that_of_the_krippendorff_library(ratings, level):
    pairable = [
        rating for row in ratings if sum(r is not None for r in row) > 1 for rating in row if rating is not None
    ]
    found = agreement({"statistic": "krippendorff-alpha", "level": level, "ratings": ratings})
    if len(set(pairable)) < 2:
        assert found["value"] is None
        return
    data = np.array([[np.nan if r is None else r for r in row] for row in ratings], dtype=float).T
    expected = krippendorff.alpha(reliability_data=data, level_of_measurement=level)
    assert found["value"] == pytest.approx(expected, abs=1e-9)


@given(tables(marks, least_dogs=3, judges=st.integers(3, 5)))
def test_kendall_w_follows_from_the_friedman_statistic_of_scipy(ratings):
    # W = chi squared / (m (n - 1)), ties corrected in both: Kendall 1948. Friedman's blocks are the judges.
    columns = list(zip(*ratings, strict=True))
    assume(all(len(set(column)) > 1 for column in columns))
    friedman = scipy.stats.friedmanchisquare(*[list(row) for row in ratings]).statistic
    found = agreement({"statistic": "kendall-w", "ratings": ratings})
    assert found["value"] == pytest.approx(friedman / (len(columns) * (len(ratings) - 1)), abs=1e-9)


def pairwise_kappa(ratings, worse):
    """Cohen's definition with no table: pairs as they are against every pairing of one judge's with the other's."""
    seen = np.mean([worse(one, other) for one, other in ratings])
    dealt = np.mean([worse(one, other) for (one, _), (_, other) in product(ratings, ratings)])
    return None if dealt == 0 else 1 - seen / dealt


@pytest.mark.parametrize(("weights", "power"), [("linear", 1), ("quadratic", 2)])
@given(ratings=tables(marks, judges=st.just(2)))
def test_weighted_kappa_is_the_disagreement_over_that_of_every_dealing(weights, power, ratings):
    found = agreement({"statistic": "weighted-kappa", "weights": weights, "ratings": ratings})
    expected = pairwise_kappa(ratings, lambda one, other: abs(one - other) ** power)
    assert found["value"] == (None if expected is None else pytest.approx(expected, abs=1e-12))


@given(tables(st.sampled_from(["excellent", "very-good", "good"]), judges=st.just(2)))
def test_kappa_of_words_is_the_disagreement_over_that_of_every_dealing(ratings):
    found = agreement({"statistic": "kappa", "ratings": ratings})
    expected = pairwise_kappa(ratings, lambda one, other: one != other)
    assert found["value"] == (None if expected is None else pytest.approx(expected, abs=1e-12))


def numeric_error_of_kappa(table, weights):
    """Delta method with the gradient taken by small steps: no formula of the paper's."""

    def value(p):
        return 1 - (p * weights).sum() / (np.outer(p.sum(1), p.sum(0)) * weights).sum()

    count, p = table.sum(), table / table.sum()
    gradient = np.zeros_like(p)
    for cell in np.ndindex(p.shape):
        step = np.zeros_like(p)
        step[cell] = 1e-6
        gradient[cell] = (value(p + step) - value(p - step)) / 2e-6
    return np.sqrt(((p * gradient**2).sum() - (p * gradient).sum() ** 2) / count)


@given(st.lists(st.lists(st.integers(1, 15), min_size=3, max_size=3), min_size=3, max_size=3))
def test_the_interval_of_weighted_kappa_is_that_of_a_numeric_delta_method(table):
    ratings = [[i, j] for i, row in enumerate(table) for j, n in enumerate(row) for _ in range(n)]
    weights = [[0, 1, 3], [1, 0, 6], [2, 6, 0]]
    found = agreement({"statistic": "weighted-kappa", "weights": weights, "ratings": ratings})
    reach = scipy.stats.norm.ppf(0.975) * numeric_error_of_kappa(np.array(table, float), np.array(weights, float))
    expected = [max(-1, found["value"] - reach), min(1, found["value"] + reach)]
    assert found["interval"] == pytest.approx(expected, abs=1e-5)


def analysis_of_variance(ratings):
    table = np.array(ratings, dtype=float)
    dogs, judges = table.shape
    left = table - table.mean(1, keepdims=True) - table.mean(0, keepdims=True) + table.mean()
    between_dogs = judges * table.mean(1).var(ddof=1)
    between_judges = dogs * table.mean(0).var(ddof=1)
    return dogs, judges, between_dogs, between_judges, (left**2).sum() / ((dogs - 1) * (judges - 1))


@given(tables(st.integers(0, 10), least_dogs=3))
def test_intraclass_correlations_and_the_exact_interval_follow_from_numpy_and_scipy(ratings):
    dogs, judges, between_dogs, between_judges, error = analysis_of_variance(ratings)
    assume(error > 1e-9 and between_dogs > 1e-9)
    consistency = agreement({"statistic": "icc-3-1", "ratings": ratings})
    variance_dogs, variance_judges = (between_dogs - error) / judges, (between_judges - error) / dogs
    assert consistency["value"] == pytest.approx(variance_dogs / (variance_dogs + error), abs=1e-9)
    limits = scipy.stats.f.isf([0.025, 0.975], dogs - 1, (dogs - 1) * (judges - 1))
    ratios = between_dogs / error / limits
    assert consistency["interval"] == pytest.approx(list((ratios - 1) / (ratios + judges - 1)), abs=1e-7)
    total = variance_dogs + variance_judges + error
    assume(abs(total) > 1e-6)
    absolute = agreement({"statistic": "icc-2-1", "ratings": ratings})
    assert absolute["value"] == pytest.approx(variance_dogs / total, abs=1e-6)


def leave_one_out_reach(statistic, ratings):
    values = [statistic([row for j, row in enumerate(ratings) if j != i]) for i in range(len(ratings))]
    return scipy.stats.t.ppf(0.975, len(values) - 1) * np.std(values) * np.sqrt(len(values) - 1)


@given(tables(marks, least_dogs=5, judges=st.just(3)))
def test_the_interval_of_alpha_is_the_jackknife_of_the_library(ratings):
    assume(all(len({r for row in part for r in row}) > 1 for part in combinations(ratings, len(ratings) - 1)))

    def library(rows):
        return krippendorff.alpha(reliability_data=np.array(rows, float).T, level_of_measurement="interval")

    found = agreement({"statistic": "krippendorff-alpha", "level": "interval", "ratings": ratings})
    reach = leave_one_out_reach(library, ratings)
    if found["interval"] is None:
        assert reach == pytest.approx(0, abs=1e-9)
    else:
        assert found["interval"] == pytest.approx([found["value"] - reach, min(1, found["value"] + reach)], abs=1e-7)
