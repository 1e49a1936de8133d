"""Most probable number: how many there are, from tubes (or drops) in which anything was found and those in which nothing was."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from keytool.bench.counts import Interval


@dataclass(frozen=True, slots=True)
class Level:
    """One dilution: how many tubes, how many of them with something in, and how much of the sample is in each (g or mL)."""

    tubes: int
    positive: int
    amount: float


@dataclass(frozen=True, slots=True)
class MostProbable:
    """Per unit of `amount`. None positive: 0, with the one-sided limit in `high`. All positive: infinite, with that in `low`.

    `log10_error` is the standard error of its common logarithm; `rarity` is how likely the pattern is against the most
    likely one of each level (Blodgett): under 0.05 is odd, under 0.0001 is not to be trusted.
    """

    value: float
    low: float
    high: float
    log10_error: float
    rarity: float

    @property
    def interval(self) -> Interval:
        """Value and limits."""
        return Interval(self.value, self.low, self.high)


def most_probable_number(levels: Sequence[Level], deviate: float) -> MostProbable:
    """The concentration that makes the pattern seen most likely; limits from the observed information on the log scale.

    `deviate` is 1.959964 for 95 %. Things must be spread at random, and one must be enough to be found.
    """
    positive = sum(each.positive for each in levels)
    if positive == 0:
        limit = -math.log(0.05) / math.fsum(each.tubes * each.amount for each in levels)
        return MostProbable(0.0, 0.0, limit, math.nan, 1.0)
    if positive == sum(each.tubes for each in levels):
        return MostProbable(math.inf, _all_positive_limit(levels), math.inf, math.nan, 1.0)
    value = _likeliest(levels)
    information = math.fsum(
        each.positive * each.amount**2 * math.exp(-value * each.amount) / math.expm1(-value * each.amount) ** 2 for each in levels
    )
    error = 1 / (value * math.sqrt(information))
    reach = math.exp(deviate * error)
    return MostProbable(value, value / reach, value * reach, error / math.log(10), _rarity(levels, value))


def one_level(positive: int, tubes: int, amount: float) -> float:
    """The same in closed form where all tubes hold the same amount: -ln(1 - g/t) / V."""
    return -math.log1p(-positive / tubes) / amount


def _likeliest(levels: Sequence[Level]) -> float:
    wanted = math.fsum(each.tubes * each.amount for each in levels)
    most = max(each.amount for each in levels)

    def given(density: float) -> float:
        return math.fsum(each.positive * each.amount / -math.expm1(-density * each.amount) for each in levels)

    low, high = 1e-9 / most, 1e9 / min(each.amount for each in levels)
    for _ in range(400):
        middle = math.sqrt(low * high)
        if not low < middle < high or high - low <= 1e-15 * high:
            break
        low, high = (middle, high) if given(middle) > wanted else (low, middle)
    return (low + high) / 2


def _all_positive_limit(levels: Sequence[Level]) -> float:
    """The density at which all tubes would be positive one time in twenty."""
    low, high = 1e-9, 1e12
    for _ in range(400):
        middle = math.sqrt(low * high)
        chance = math.prod((-math.expm1(-middle * each.amount)) ** each.tubes for each in levels)
        low, high = (middle, high) if chance < 0.05 else (low, middle)
    return (low + high) / 2


def _rarity(levels: Sequence[Level], density: float) -> float:
    def chance(each: Level, p: float) -> float:
        return p**each.positive * (1 - p) ** (each.tubes - each.positive)

    def best(each: Level) -> float:
        # the greatest value of the binomial chance over all outcomes, at this p
        p = -math.expm1(-density * each.amount)
        return max(math.comb(each.tubes, g) * p**g * (1 - p) ** (each.tubes - g) for g in range(each.tubes + 1))

    return math.prod(
        math.comb(each.tubes, each.positive) * chance(each, -math.expm1(-density * each.amount)) / best(each) for each in levels
    )
