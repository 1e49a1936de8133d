"""A ratio of two estimates, such as fungal to bacterial carbon, with its interval."""

from __future__ import annotations

import math

from keytool.bench.counts import Interval


def ratio(top: float, top_error: float, bottom: float, bottom_error: float, deviate: float) -> Interval:
    """Top over bottom, by the spread of the logarithm. Good while both relative errors are under about 0.3.

    Both in one currency (carbon, or dry mass), and independent of each other.
    """
    reach = math.exp(deviate * math.hypot(top_error / top, bottom_error / bottom))
    value = top / bottom
    return Interval(value, value / reach, value * reach)


def fieller(top: float, top_error: float, bottom: float, bottom_error: float, deviate: float) -> Interval:
    """The same by Fieller (1954). Without limits (0 to infinity) where the bottom may be zero."""
    top_cv, bottom_cv = top_error / top, bottom_error / bottom
    value, g = top / bottom, (deviate * bottom_cv) ** 2
    if g >= 1:
        return Interval(value, 0.0, math.inf)
    reach = deviate * math.sqrt(top_cv**2 + bottom_cv**2 - g * top_cv**2)
    return Interval(value, value / (1 - g) * (1 - reach), value / (1 - g) * (1 + reach))
