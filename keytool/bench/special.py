"""Distributions that the bench needs, in plain Python: gamma, chi-square, beta, t, normal, Poisson.

The same steps stand in `site/assets/bench/distributions.js`, so that page and command give the same numbers.
Everything is good to about twelve digits; tests hold it against scipy.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import lru_cache

_TINY = 1e-300
_CLOSE = 1e-16
_MOST_STEPS = 10_000


def gamma_share(shape: float, x: float) -> float:
    """The chance that a gamma variable of this shape (scale 1) is at most x."""
    if x <= 0:
        return 0.0
    if math.isinf(x):
        return 1.0
    front = math.exp(shape * math.log(x) - x - math.lgamma(shape))
    if x < shape + 1:
        term = total = 1 / shape
        for n in range(1, _MOST_STEPS):
            term *= x / (shape + n)
            total += term
            if term < total * _CLOSE:
                break
        return front * total
    return 1 - front * _gamma_tail_fraction(shape, x)


def gamma_tail(shape: float, x: float) -> float:
    """The chance that a gamma variable of this shape (scale 1) is above x, exact also where it is very small."""
    if x <= 0:
        return 1.0
    if x < shape + 1:
        return 1 - gamma_share(shape, x)
    return math.exp(shape * math.log(x) - x - math.lgamma(shape)) * _gamma_tail_fraction(shape, x)


def _gamma_tail_fraction(shape: float, x: float) -> float:
    """The continued fraction of the upper incomplete gamma function, by Lentz's method."""
    b = x + 1 - shape
    c = 1 / _TINY
    d = 1 / b
    result = d
    for n in range(1, _MOST_STEPS):
        a = -n * (n - shape)
        b += 2
        d = a * d + b
        d = 1 / (d if abs(d) > _TINY else _TINY)
        c = b + a / c
        c = c if abs(c) > _TINY else _TINY
        step = d * c
        result *= step
        if abs(step - 1) < _CLOSE * 10:
            break
    return result


@lru_cache(maxsize=16384)
def gamma_quantile(shape: float, share: float) -> float:
    """The x below which a gamma variable of this shape (scale 1) falls with this chance. 0 for share 0."""
    if share <= 0:
        return 0.0
    return _solve(lambda x: gamma_share(shape, x) - share, 0.0, shape + 10)


def poisson_share(mean: float, most: int) -> float:
    """The chance that a Poisson count of this mean is at most `most`."""
    return gamma_tail(most + 1, mean) if most >= 0 else 0.0


def poisson_chance(mean: float, count: int) -> float:
    """The chance of exactly this Poisson count."""
    if mean <= 0:
        return 1.0 if count == 0 else 0.0
    return math.exp(count * math.log(mean) - mean - math.lgamma(count + 1))


@lru_cache(maxsize=16384)
def chi_square_quantile(df: float, share: float) -> float:
    """The chi-square value that is passed with chance 1 - share."""
    return 2 * gamma_quantile(df / 2, share)


def chi_square_tail(df: float, x: float) -> float:
    """The chance that chi-square is above x."""
    return gamma_tail(df / 2, x / 2)


@lru_cache(maxsize=16384)
def normal_quantile(share: float) -> float:
    """The normal deviate below which this share lies: 1.959964 for 0.975."""
    size = math.sqrt(2 * gamma_quantile(0.5, abs(2 * share - 1)))
    return size if share >= 0.5 else -size


def normal_tail_both(z: float) -> float:
    """The chance that a normal deviate lies further from 0 than z."""
    return gamma_tail(0.5, z * z / 2)


def beta_share(a: float, b: float, x: float) -> float:
    """The chance that a beta variable is at most x."""
    if x <= 0:
        return 0.0
    if x >= 1:
        return 1.0
    front = math.exp(math.lgamma(a + b) - math.lgamma(a) - math.lgamma(b) + a * math.log(x) + b * math.log1p(-x))
    if x < (a + 1) / (a + b + 2):
        return front * _beta_fraction(a, b, x) / a
    return 1 - front * _beta_fraction(b, a, 1 - x) / b


def _beta_fraction(a: float, b: float, x: float) -> float:
    """The continued fraction of the incomplete beta function, by Lentz's method."""
    c = 1.0
    d = 1 - (a + b) * x / (a + 1)
    d = 1 / (d if abs(d) > _TINY else _TINY)
    result = d
    for n in range(1, _MOST_STEPS):
        for step in (
            n * (b - n) * x / ((a + 2 * n - 1) * (a + 2 * n)),
            -(a + n) * (a + b + n) * x / ((a + 2 * n) * (a + 2 * n + 1)),
        ):
            d = 1 + step * d
            d = 1 / (d if abs(d) > _TINY else _TINY)
            c = 1 + step / c
            c = c if abs(c) > _TINY else _TINY
            result *= d * c
        if abs(d * c - 1) < _CLOSE * 10:
            break
    return result


@lru_cache(maxsize=16384)
def beta_quantile(a: float, b: float, share: float) -> float:
    """The x below which a beta variable falls with this chance."""
    return _solve(lambda x: beta_share(a, b, x) - share, 0.0, 1.0)


@lru_cache(maxsize=16384)
def t_quantile(df: float, share: float) -> float:
    """Student's t below which this share lies: 2.26216 for 9 degrees of freedom and 0.975."""
    tail = 2 * min(share, 1 - share)
    x = beta_quantile(df / 2, 0.5, tail)
    size = math.sqrt(df * (1 - x) / x)
    return size if share >= 0.5 else -size


def binomial_chance(count: int, of: int, p: float) -> float:
    """The chance of exactly this many in `of` trials."""
    if p <= 0 or p >= 1:
        return 1.0 if count == (0 if p <= 0 else of) else 0.0
    ways = math.lgamma(of + 1) - math.lgamma(count + 1) - math.lgamma(of - count + 1)
    return math.exp(ways + count * math.log(p) + (of - count) * math.log1p(-p))


def _solve(rising: Callable[[float], float], low: float, high: float) -> float:
    """Where a rising function crosses 0; `high` is pushed up until it lies above. Bisection with the false position put in."""
    while rising(high) < 0:
        low, high = high, 2 * high
    at_low, at_high = rising(low), rising(high)
    for n in range(300):
        if high - low <= abs(low + high) * 2e-16 or at_high == at_low:
            break
        middle = (low * at_high - high * at_low) / (at_high - at_low) if n % 3 else (low + high) / 2
        if not low < middle < high:
            middle = (low + high) / 2
        at = rising(middle)
        if at == 0:
            return middle
        if at < 0:
            low, at_low = middle, at
        else:
            high, at_high = middle, at
    return (low + high) / 2
