"""Intervals as vectors on paper, readable in grey: a thick line, a box at the estimate, a broken line where none was seen."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from keytool.bench.counts import Interval

if TYPE_CHECKING:
    from fpdf import FPDF

RULE, INK, ACCENT = (184, 172, 148), (26, 24, 22), (154, 58, 20)


@dataclass(frozen=True, slots=True)
class Axis:
    """From where to where, in log10 for a `log` one; ticks are values."""

    low: float
    high: float
    log: bool
    ticks: tuple[float, ...]

    def at(self, value: float) -> float:
        """Where a value stands, 0 to 1; what lies outside stands at the end."""
        if math.isinf(value):
            return 1.0
        if self.log:
            value = math.log10(value) if value > 0 else self.low
        return min(1.0, max(0.0, (value - self.low) / (self.high - self.low)))


def decades(intervals: Iterable[Interval]) -> Axis:
    """A log axis in whole powers of ten that holds all intervals."""
    ends = [1.0]
    for n, each in enumerate(intervals):
        ends = ends if n else []
        if each.value:
            ends.append(each.value)
            if each.low:
                ends.append(max(each.low, each.value / 100))
        if math.isfinite(each.high):
            ends.append(each.high)
    low, high = math.floor(math.log10(min(ends))), math.ceil(math.log10(max(ends)))
    high = max(high, low + 2)
    return Axis(low, high, True, tuple(10.0**n for n in range(low, high + 1)))


def from_zero(most: float) -> Axis:
    """A plain axis from 0 to `most`."""
    step = 10 ** math.floor(math.log10(most))
    step = step * 2 if most / step > 5 else step if most / step > 2 else step / 2
    return Axis(0.0, most, False, tuple(n * step for n in range(int(most / step * 1.0001) + 1)))


def interval_bar(
    pdf: FPDF, interval: Interval, axis: Axis, x: float, y: float, width: float, hold: float | None = None, *, thin: bool = False
) -> None:
    """One interval with its middle line at height `y`, in mm; `hold` is a value it is held against, `thin` one that stands behind."""
    pdf.set_draw_color(*RULE)
    pdf.set_line_width(0.15)
    pdf.line(x, y, x + width, y)
    for tick in axis.ticks:
        at = x + width * axis.at(tick)
        pdf.line(at, y - 1, at, y + 1)
    if hold is not None:
        pdf.set_draw_color(*ACCENT)
        pdf.set_line_width(0.3)
        for n in range(4):
            pdf.line(x + width * axis.at(hold), y - 2 + n * 1.1, x + width * axis.at(hold), y - 1.4 + n * 1.1)
    low, high = x + width * axis.at(interval.low), x + width * axis.at(interval.high)
    pdf.set_fill_color(*INK)
    half = 0.25 if thin else 0.65
    if interval.value:
        pdf.rect(low, y - half, max(high - low, 0.8), 2 * half, style="F")
    else:  # dashes as boxes: the square caps of a dashed line would close its gaps
        at = low
        while at < high:
            pdf.rect(at, y - half, min(1.1, high - at), 2 * half, style="F")
            at += 2.0
    if interval.value:
        at = x + width * axis.at(interval.value)
        pdf.set_draw_color(*INK)
        pdf.set_line_width(0.3)
        pdf.set_fill_color(255, 255, 255)
        tall = 1.0 if thin else 1.5
        pdf.rect(at - tall / 2, y - tall, tall, 2 * tall, style="DF")


def precision_curve(pdf: FPDF, share: Callable[[float], float], now: int, most: int, box: tuple[float, float, float, float]) -> None:
    """How far a number is good to (half its interval as a share of it, 0 at the foot, 1 at the top) against how many were looked at.

    `box` is left, top, width and height in mm; a ring marks where one stands.
    """
    left, top, width, height = box

    def at(n: float) -> tuple[float, float]:
        return left + width * n / most, top + height * (1 - min(1.0, share(n)))

    pdf.set_draw_color(*RULE)
    pdf.set_line_width(0.15)
    for level in (0.0, 0.5, 1.0):
        pdf.line(left, top + height * level, left + width, top + height * level)
    pdf.set_draw_color(*INK)
    pdf.set_line_width(0.4)
    points = [at(1 + (most - 1) * step / 60) for step in range(61)]
    for (x1, y1), (x2, y2) in pairwise(points):
        pdf.line(x1, y1, x2, y2)
    x, y = at(now)
    pdf.set_fill_color(255, 255, 255)
    pdf.ellipse(x - 1.1, y - 1.1, 2.2, 2.2, style="DF")
