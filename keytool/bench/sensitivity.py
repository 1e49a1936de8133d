"""A result with the constants it rests on, and how far it moves when each of them does.

Constants have a value and a range they may truly have. Whoever prints a number of biomass prints which constants made it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from keytool.bench.constants import Constant


@dataclass(frozen=True, slots=True)
class Used:
    """One constant of a result, and what the result would be at the ends of its range."""

    constant: Constant
    at_low: float
    at_high: float

    @property
    def span(self) -> float:
        """How many times the larger of the two is the smaller; 1 where the constant does not matter."""
        ends = sorted((self.at_low, self.at_high))
        return ends[1] / ends[0] if ends[0] > 0 else float("inf")


@dataclass(frozen=True, slots=True)
class Varied:
    """A result, what it used, and the least and most it can be with all constants inside their ranges together."""

    value: float
    used: tuple[Used, ...]
    least: float
    most: float


def vary(work: Callable[[Mapping[str, float]], float], constants: Iterable[Constant]) -> Varied:
    """What `work` gives from constants by id, and how it moves.

    `work` must rise or fall with each constant all the way, as products and quotients do; the extremes are taken there.
    """
    each = list(constants)
    middle = {one.id: one.value for one in each}
    used = tuple(Used(one, work({**middle, one.id: one.low}), work({**middle, one.id: one.high})) for one in each)
    least = work({one.constant.id: one.constant.low if one.at_low <= one.at_high else one.constant.high for one in used})
    most = work({one.constant.id: one.constant.high if one.at_low <= one.at_high else one.constant.low for one in used})
    return Varied(work(middle), used, least, most)
