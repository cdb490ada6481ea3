"""Several judges who rank the same dogs: Kendall's coefficient of concordance."""

from collections import Counter
from collections.abc import Sequence

from scoring.agreement.coefficient import Coefficient, with_interval, without_value
from scoring.agreement.jackknife import HOW, jackknife_interval

METHOD = "Kendall's W, corrected for ties"


def kendall_w(rows: Sequence[Sequence[float]]) -> Coefficient:
    """How far judges rank the dogs alike: 0 no common order, 1 the same order from all.

    Rule: 12 S / (m^2 (n^3 - n) - m T), S the squares of the dogs' rank sums about their mean, T the sum of t^3 - t over
    each judge's ties; each judge's ratings are ranked first, ties sharing the mean rank. Source: Kendall and Babington
    Smith 1939, Ann Math Stat 10:275-287; Kendall 1948, Rank Correlation Methods, ch. 6, for ties.
    Limits: judges who rank in opposite ways also give a low value. The jackknife's interval is cut at 0 and 1.
    Arguments: one row for each dog, one rating from every judge in each. Returns a number from 0 to 1.
    """
    if not rows:
        return without_value(METHOD, "no dog was rated by every judge")
    if len(rows[0]) < 2:
        return without_value(METHOD, "one judge cannot agree or disagree")
    if len(rows) < 2:
        return without_value(METHOD, "one dog gives no order")
    value = _concordance(rows)
    if value is None:
        return without_value(METHOD, "no judge tells the dogs apart")
    interval = jackknife_interval(_concordance, rows, value)
    if not isinstance(interval, str):
        interval = max(0.0, interval[0]), min(1.0, interval[1])
    return with_interval(METHOD, value, interval, HOW)


def doubled_ranks(values: Sequence[float]) -> list[int]:
    """Twice the rank of each value from the lowest up, ties sharing the mean rank: whole numbers, so nothing rounds."""
    count = Counter(values)
    rank: dict[float, int] = {}
    before = 0
    for value in sorted(count):
        rank[value] = 2 * before + count[value] + 1
        before += count[value]
    return [rank[value] for value in values]


def _concordance(rows: Sequence[Sequence[float]]) -> float | None:
    dogs, judges = len(rows), len(rows[0])
    if dogs < 2:
        return None
    columns = list(zip(*rows, strict=True))
    sums: list[int] = [sum(ranks) for ranks in zip(*(doubled_ranks(column) for column in columns), strict=True)]
    ties = sum(n**3 - n for column in columns for n in Counter(column).values())
    most: int = judges**2 * (dogs**3 - dogs) - judges * ties
    if most == 0:
        return None
    # Four dogs times S: doubled rank sums carry the four, and multiplying by the dogs keeps the mean whole.
    squares = dogs * sum(each * each for each in sums) - sum(sums) ** 2
    return 3 * squares / (dogs * most)
