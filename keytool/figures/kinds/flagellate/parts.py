"""What flagellates are drawn from: body, flagella at rest and beating, plastids, grain."""

from __future__ import annotations

from collections.abc import Sequence
from math import pi, sin

from ... import geometry, pen
from ...shapes import Point, Points, Shape, Swell
from ..cell_parts import clear_of
from ..cell_parts import nucleus as draw_nucleus

Half = Sequence[Point]


def body(points: Sequence[Point], n: float) -> Points:
    """The closed edge, exactly `n` µm tall."""
    return geometry.clockwise(geometry.tall(geometry.curve(points, closed=True, per=8), n))


def even(half: Half) -> list[Point]:
    """A whole outline from its right half."""
    return [(0, 0), *half, (0, 1), *reversed(geometry.mirrored(half))]


def whip(points: Sequence[Point], n: float, weights: tuple[float, ...] = (1.3, 0.8)) -> Swell:
    """A flagellum at rest, its course in shares of the length."""
    return pen.line(geometry.curve(geometry.scaled(points, n), per=8), weights, "flagella")


def wave(start: Point, end: Point, n: float, swing: float, turns: float, weights: tuple[float, ...] = (1.3, 0.8)) -> Shape:
    """A beating flagellum: a wave that grows toward its tip."""
    (x0, y0), (x1, y1) = start, end
    dx, dy = x1 - x0, y1 - y0
    line = []
    for k in range(49):
        t = k / 48
        off = swing * min(1.0, 2.5 * t) * sin(2 * pi * turns * t)
        line.append(((x0 + dx * t - dy * off) * n, (y0 + dy * t + dx * off) * n))
    return pen.line(line, weights, "flagella")


def grain(edge: Points, n: float, gap: float, *clear: tuple[float, float, float]) -> list[Shape]:
    """Grain within the body, kept off the given circles (shares of the length)."""
    spots = tuple((x * n, y * n, r * n) for x, y, r in clear)
    return list(pen.grain(geometry.offset(edge, [0.03 * n] * len(edge), closed=True), gap * n, "contents", clear_of(*spots)))


def nucleus(x: float, y: float, r: float, n: float) -> list[Shape]:
    """The nucleus, in shares of the length."""
    return draw_nucleus(x * n, y * n, r * n)


Drawn = tuple[list[Shape], float, float]


def plastid(ring: Points, n: float) -> list[Shape]:
    """A green body: an edge and a dense, even grain (green cannot be shown in one ink)."""
    return [pen.stroke(ring, 1.0, "plastid", closed=True), *pen.grain(ring, 0.026 * n, "plastid", lambda p: 0.85, sizes=(0.9, 1.2))]
