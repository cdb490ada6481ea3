"""Quantiles of the F and t distributions, by the incomplete beta function."""

from math import exp, inf, lgamma, log, log1p, sqrt

_TINY = 1e-300
_SMALLEST_STEP = 1e-15
_MOST_STEPS = 20_000


def f_quantile(probability: float, above: float, below: float) -> float:
    """The value that an F ratio stays under with the given probability.

    Rule: if F has (a, b) degrees of freedom, x = a F / (a F + b) has the beta distribution (a/2, b/2); solved for x by
    bisection. Source: NIST Digital Library of Mathematical Functions, 8.17 (incomplete beta function).
    Limits: relative error about 1e-10 where degrees of freedom lie between 1 and 1e6.
    Arguments: probability in (0, 1); degrees of freedom of the numerator and denominator, positive, not only whole.
    Returns: the quantile, inf where it is beyond a float.
    """
    odds = _beta_odds(probability, above / 2, below / 2)
    return odds * below / above


def t_quantile(probability: float, freedom: float) -> float:
    """The value that Student's t stays under with the given probability, above one half.

    Rule: t squared has the F distribution (1, freedom). Source and limits as for `f_quantile`.
    """
    return sqrt(f_quantile(2 * probability - 1, 1.0, freedom))


def incomplete_beta(a: float, b: float, x: float) -> float:
    """The regularised incomplete beta function I_x(a, b).

    Rule: continued fraction, on the side of the mean where it converges fast. Source: NIST Digital Library of
    Mathematical Functions, 8.17.22 with 8.17.4 for the other side.
    Arguments: a, b positive; x in [0, 1]. Returns a probability.
    """
    return _incomplete_beta(a, b, x, 1 - x)


def _incomplete_beta(a: float, b: float, x: float, rest: float) -> float:
    if x <= 0:
        return 0.0
    if rest <= 0:
        return 1.0
    if x > (a + 1) / (a + b + 2):
        return 1 - _incomplete_beta(b, a, rest, x)
    # log1p keeps the digits of the larger of the two, which is near 1 where the other is small.
    logarithm = a * (log(x) if x < 0.5 else log1p(-rest)) + b * (log(rest) if rest < 0.5 else log1p(-x))
    front = exp(logarithm + lgamma(a + b) - lgamma(a) - lgamma(b)) / a
    return front / _beta_fraction(a, b, x)


def _beta_fraction(a: float, b: float, x: float) -> float:
    """1 + d1/(1 + d2/(1 + ...)) by the modified Lentz method (Thompson and Barnett 1986, J Comput Phys 64:490-509)."""
    value, c, d = 1.0, 1.0, 0.0
    for step in range(1, _MOST_STEPS):
        coefficient = _beta_coefficient(a, b, x, step)
        d = 1 / _away_from_zero(1 + coefficient * d)
        c = _away_from_zero(1 + coefficient / c)
        value *= c * d
        if abs(c * d - 1) < _SMALLEST_STEP:
            break
    return value


def _beta_coefficient(a: float, b: float, x: float, step: int) -> float:
    m = step // 2
    if step % 2:
        return -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1))
    return m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m))


def _away_from_zero(value: float) -> float:
    return value if abs(value) > _TINY else _TINY


def _beta_odds(probability: float, a: float, b: float) -> float:
    """x / (1 - x) of the beta quantile, by bisection on the logarithm so that both ends keep their digits."""
    low, high = -700.0, 700.0
    for _ in range(70):
        middle = (low + high) / 2
        if _incomplete_beta(a, b, 1 / (1 + exp(-middle)), 1 / (1 + exp(middle))) < probability:
            low = middle
        else:
            high = middle
    return exp(high) if high < 700 else inf
