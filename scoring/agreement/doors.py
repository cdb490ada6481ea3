"""The door `agreement`: ratings of dogs by judges in, one statistic with its interval out."""

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from scoring.agreement.alpha import LEVELS, krippendorff_alpha
from scoring.agreement.coefficient import Coefficient, without_value
from scoring.agreement.icc import icc_2_1, icc_3_1, least_real_change
from scoring.agreement.kappa import Category, Disagreement, Pair, by_distance, kappa, weighted_kappa
from scoring.agreement.kendall import kendall_w
from scoring.bad_input import BadInput, a_list, a_number, join, one_of, value_of

Rating = float | str
Rows = list[list[Rating | None]]
POWERS = {"linear": 1, "quadratic": 2}
MOST_RATINGS = 50_000
MOST_CATEGORIES = 1000
LARGEST = 1e9


def agreement(source: Mapping[str, Any]) -> dict[str, Any]:
    """How far judges agree, by the statistic asked for; see that statistic's function for rule, source and limits.

    Besides `value`, `interval` and `method`, an intraclass correlation answers `least_real_change`, in rating units.
    """
    statistic = STATISTICS[one_of(value_of(source, "statistic"), STATISTICS, "statistic")]
    return statistic(source)


def _kappa(source: Mapping[str, Any]) -> dict[str, Any]:
    rows = _read_rows(source, words=True)
    if _judges(rows) < 2:
        return without_value("Cohen's kappa (1960)", "there are no two judges to compare").as_json()
    return kappa(_pairs(rows)).as_json()


def _weighted_kappa(source: Mapping[str, Any]) -> dict[str, Any]:
    """Linear weights where none are asked for; a matrix gives the disagreement of each pair of categories."""
    weights = value_of(source, "weights", default="linear")
    rows = _read_rows(source, words=False)
    words, disagreement = _read_weights(weights, rows)
    if _judges(rows) < 2:
        return without_value(
            f"Weighted kappa (Cohen 1968), {words} weights", "one judge cannot agree or disagree"
        ).as_json()
    return weighted_kappa(_pairs(rows), disagreement, words).as_json()


def _kendall_w(source: Mapping[str, Any]) -> dict[str, Any]:
    return _on_complete(kendall_w, _read_rows(source, words=False)).as_json()


def _icc_2_1(source: Mapping[str, Any]) -> dict[str, Any]:
    rows = _read_rows(source, words=False)
    change = least_real_change(_complete(rows), same_judge=False)
    return {**_on_complete(icc_2_1, rows).as_json(), "least_real_change": change}


def _icc_3_1(source: Mapping[str, Any]) -> dict[str, Any]:
    rows = _read_rows(source, words=False)
    change = least_real_change(_complete(rows), same_judge=True)
    return {**_on_complete(icc_3_1, rows).as_json(), "least_real_change": change}


def _krippendorff_alpha(source: Mapping[str, Any]) -> dict[str, Any]:
    """Nominal where no level is given: it supposes least."""
    level = one_of(value_of(source, "level", default="nominal"), LEVELS, "level")
    return krippendorff_alpha(_read_rows(source, words=level == "nominal"), level).as_json()


STATISTICS: dict[str, Callable[[Mapping[str, Any]], dict[str, Any]]] = {
    "kappa": _kappa,
    "weighted-kappa": _weighted_kappa,
    "kendall-w": _kendall_w,
    "icc-2-1": _icc_2_1,
    "icc-3-1": _icc_3_1,
    "krippendorff-alpha": _krippendorff_alpha,
}


def _on_complete(statistic: Callable[[Sequence[Sequence[float]]], Coefficient], rows: Rows) -> Coefficient:
    """The statistic on the dogs that every judge rated, and how many that left out."""
    complete = _complete(rows)
    found = statistic(complete)
    left_out = len(rows) - len(complete)
    if not left_out:
        return found
    return Coefficient(found.value, found.interval, f"{found.method} Dogs left out for a gap: {left_out}.")


def _complete(rows: Rows) -> list[list[float]]:
    return [[float(rating) for rating in row if rating is not None] for row in rows if None not in row]


def _pairs(rows: Rows) -> list[Pair]:
    if _judges(rows) != 2:
        raise BadInput("out-of-range", "Kappa compares two judges: give two columns.", "ratings")
    if len({rating for row in rows for rating in row}) > MOST_CATEGORIES:
        raise BadInput("too-large", f"At most {MOST_CATEGORIES} categories can be told apart.", "ratings")
    return [(one, other) for one, other in rows if one is not None and other is not None]


def _judges(rows: Rows) -> int:
    return len(rows[0]) if rows else 0


def _read_rows(source: Mapping[str, Any], *, words: bool) -> Rows:
    rows = [a_list(row, join("ratings", i)) for i, row in enumerate(a_list(value_of(source, "ratings"), "ratings"))]
    if sum(len(row) for row in rows) > MOST_RATINGS:
        raise BadInput("too-large", f"At most {MOST_RATINGS} ratings can be compared at once.", "ratings")
    for i, row in enumerate(rows):
        if len(row) != len(rows[0]):
            raise BadInput("out-of-range", "Give every dog one rating or null from each judge.", join("ratings", i))
    return [[_read_rating(each, i, j, words) for j, each in enumerate(row)] for i, row in enumerate(rows)]


def _read_rating(value: Any, dog: int, judge: int, words: bool) -> Rating | None:
    if value is None or (words and isinstance(value, str)):
        return value
    return a_number(value, join(join("ratings", dog), judge), -LARGEST, LARGEST)


def _read_weights(weights: Any, rows: Rows) -> tuple[str, Disagreement]:
    numbers = sorted({float(rating) for row in rows for rating in row if rating is not None})
    if not isinstance(weights, list):
        name = one_of(weights, POWERS, "weights")
        return name, by_distance(POWERS[name], numbers[-1] - numbers[0] if numbers else 1.0)
    matrix = _read_matrix(weights)
    index = _categories(numbers, len(matrix))
    return "given", lambda one, other: matrix[index[one]][index[other]]


def _read_matrix(weights: Sequence[Any]) -> list[list[float]]:
    """Disagreement weights, judge one's category down and judge two's across."""
    matrix = []
    for i, row in enumerate(weights):
        at = join("weights", i)
        cells = [a_number(cell, join(at, j), 0, LARGEST) for j, cell in enumerate(a_list(row, at, 1000))]
        if len(cells) != len(weights):
            raise BadInput("out-of-range", "Give as many weights across as down.", at)
        if cells[i] != 0:
            raise BadInput("out-of-range", "The same category is no disagreement: give 0 on the diagonal.", join(at, i))
        matrix.append(cells)
    return matrix


def _categories(numbers: Sequence[float], size: int) -> dict[Category, int]:
    """Which row of the matrix a rating means: the ratings in order where there are as many, else 1..n, else 0..n-1."""
    if len(numbers) == size:
        return {number: i for i, number in enumerate(numbers)}
    for first in (1, 0):
        places = {float(first + i): i for i in range(size)}
        if all(number in places for number in numbers):
            return {number: places[number] for number in numbers}
    raise BadInput("out-of-range", "The matrix has another number of categories than the ratings.", "weights")
