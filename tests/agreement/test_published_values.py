"""The statistics against figures printed in the literature."""

import pytest

from scoring.agreement.doors import agreement

# Shrout and Fleiss 1979, Psychol Bull 86:420-428, table 2: six targets, four judges.
SHROUT_AND_FLEISS = [[9, 2, 5, 8], [6, 1, 3, 2], [8, 4, 6, 8], [7, 1, 2, 6], [10, 5, 6, 9], [6, 2, 4, 7]]

# Cohen 1968, Psychol Bull 70:213-220, table 1, in hundredths.
COHEN = [[44, 7, 9], [5, 20, 5], [1, 3, 6]]

# Krippendorff 2011, Computing Krippendorff's alpha-reliability: four observers, twelve units, gaps.
KRIPPENDORFF = [
    [1, 2, 3, 3, 2, 1, 4, 1, 2, None, None, None],
    [1, 2, 3, 3, 2, 2, 4, 1, 2, 5, None, 3],
    [None, 3, 3, 3, 2, 3, 4, 2, 2, 5, 1, None],
    [1, 2, 3, 3, 2, 4, 4, 1, 2, 5, 1, None],
]


def rows_of(table: list[list[int]]) -> list[list[int]]:
    return [[i, j] for i, row in enumerate(table) for j, count in enumerate(row) for _ in range(count)]


@pytest.mark.parametrize(("statistic", "printed"), [("icc-2-1", 0.29), ("icc-3-1", 0.71)])
def test_intraclass_correlations_are_those_of_shrout_and_fleiss(statistic, printed):
    assert printed == round(agreement({"statistic": statistic, "ratings": SHROUT_AND_FLEISS})["value"], 2)


def test_kendall_w_of_the_published_ranks_is_a_sixteenth():
    # Three objects, four judges; the worked example prints W = 1/16 (check value recomputed by hand from rank sums).
    assert (
        agreement({"statistic": "kendall-w", "ratings": [[1, 1, 2, 3], [3, 2, 3, 1], [2, 3, 1, 2]]})["value"] == 1 / 16
    )


def test_kappa_is_that_of_cohen_1968():
    assert round(agreement({"statistic": "kappa", "ratings": rows_of(COHEN)})["value"], 3) == 0.492


def test_weighted_kappa_is_that_of_cohen_1968():
    weights = [[0, 1, 3], [1, 0, 6], [3, 6, 0]]
    found = agreement({"statistic": "weighted-kappa", "weights": weights, "ratings": rows_of(COHEN)})
    assert round(found["value"], 3) == 0.348


def test_the_interval_of_kappa_is_that_of_a_published_run():
    # Statalist, 18 December 2009, message 2009-12/msg00320: analytical interval of a two by two table of 1,932 people.
    found = agreement({"statistic": "kappa", "ratings": rows_of([[1395, 118], [261, 158]])})
    assert found["value"] == pytest.approx(0.3411969207847029, rel=1e-12)
    assert found["interval"] == pytest.approx([0.2896667786271169, 0.3927270629422889], rel=1e-12)


@pytest.mark.parametrize(("level", "printed"), [("nominal", 0.743), ("ordinal", 0.815), ("interval", 0.849)])
def test_alpha_is_that_of_krippendorff(level, printed):
    ratings = [list(row) for row in zip(*KRIPPENDORFF, strict=True)]
    found = agreement({"statistic": "krippendorff-alpha", "level": level, "ratings": ratings})
    assert printed == round(found["value"], 3)


def test_the_least_real_change_is_the_published_multiple_of_the_error():
    # Weir 2005, J Strength Cond Res 19:231-240: 1.96 sqrt(2) SEM, SEM the root of the error mean square, which
    # Shrout and Fleiss 1979 print as 1.02 for these data.
    found = agreement({"statistic": "icc-3-1", "ratings": SHROUT_AND_FLEISS})
    assert found["least_real_change"] == pytest.approx(1.96 * 2**0.5 * 1.02**0.5, rel=2e-3)
