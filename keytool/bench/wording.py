"""Numbers of the bench as people read them: two figures, thin groups, and none seen as "under"."""

from __future__ import annotations

import math

from keytool.bench.counts import Interval

GROUP = "\N{NARROW NO-BREAK SPACE}"


def figures(value: float, digits: int = 2) -> str:
    """A number to so many significant figures, thousands parted by a narrow space: 530 000, 2.6, 0.000025."""
    if not math.isfinite(value):
        return "no upper end" if value > 0 else "no lower end"
    if value == 0:
        return "0"
    places = digits - 1 - math.floor(math.log10(abs(value)))
    rounded = round(value, places)
    if abs(rounded) >= 1000 or places <= 0:
        return f"{rounded:,.0f}".replace(",", GROUP)
    text = f"{rounded:.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def estimate(interval: Interval) -> str:
    """The estimate of an interval, or under how many where none was seen."""
    return figures(interval.value) if interval.value else f"under {figures(interval.high)}"


def between(interval: Interval) -> str:
    """The limits of an interval in words."""
    if not interval.value:
        return "none seen"
    if math.isinf(interval.high):
        return f"{figures(interval.low)} or more"
    if interval.low < interval.value / 1000:  # so many clumps that next to nothing is known
        return f"next to none to {figures(interval.high)}"
    return f"{figures(interval.low)} to {figures(interval.high)}"


def ratio_words(ratio: Interval) -> str:
    """How the second count stands to the first, in words; first of all whether chance alone could do it."""
    if math.isinf(ratio.value):
        met = "met the second time only"
        return f"more: {met}, at least {figures(ratio.low)} times as many" if ratio.low > 1 else f"chance alone could do it: {met}"
    if ratio.value == 0:
        met = "met the first time only"
        return f"fewer: {met}, at most {figures(ratio.high)} times as many" if ratio.high < 1 else f"chance alone could do it: {met}"
    limits = f"{figures(ratio.value)} times as many, between {figures(ratio.low)} and {figures(ratio.high)}"
    if ratio.low > 1:
        return f"more: {limits}"
    return f"fewer: {limits}" if ratio.high < 1 else f"chance alone could do it: {limits}"


def sooner(ratio: Interval) -> str:
    """How the second count stands to the first, in one or two words: more, fewer, or not told."""
    return "more than then" if ratio.low > 1 else "fewer than then" if ratio.high < 1 else "chance could do it"
