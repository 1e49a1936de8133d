"""Outlines of spores and lines across them."""

from __future__ import annotations

from collections.abc import Sequence

from ... import geometry
from ...shapes import Point, Points


def ring(half: Sequence[Point], n: float, w: float) -> Points:
    """A closed outline, its right half given in shares; made exactly `n` tall and `w` wide."""
    ring = geometry.curve([(0, 0), *half, (0, 1), *reversed(geometry.mirrored(half))], closed=True, per=8)
    box = geometry.around(ring)
    return geometry.clockwise(tuple((x * w / box.width, (y - box.y) * n / box.height) for x, y in ring))


def across(edge: Points, y: float, bow: float = 0.0) -> Points:
    """A line right across a closed edge at depth y."""
    xs = [
        a[0] + (b[0] - a[0]) * (y - a[1]) / ((b[1] - a[1]) or 1)
        for a, b in zip(edge, (*edge[1:], edge[0]), strict=True)
        if (a[1] - y) * (b[1] - y) <= 0 and a != b
    ]
    left, right = min(xs), max(xs)
    return tuple((left + (right - left) * t, y + bow * 4 * t * (1 - t)) for t in (k / 12 for k in range(13)))


def along(line: Points, s: float) -> Point:
    """The point at share `s` of a line that runs straight across."""
    return (line[0][0] + (line[-1][0] - line[0][0]) * s, line[0][1])
