"""Long bodies along a bent axis: the axis by its turning, the sides by a half-width at each step."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import cos, pi, pow, sin

from .. import geometry, pen
from ..frame import pen_for
from ..shapes import Point, Points, Swell


def axis(length: float, heading: Callable[[float], float], *, steps: int = 240) -> Points:
    """A line of exactly `length` µm whose direction at share t of its way is `heading(t)` (radians, 0 down the page)."""
    step = length / steps
    x = y = 0.0
    out: list[Point] = [(0.0, 0.0)]
    for k in range(steps):
        turn = heading((k + 0.5) / steps)
        x, y = x + step * sin(turn), y + step * cos(turn)
        out.append((x, y))
    return tuple(out)


def sides(line: Points, half: Callable[[float], float]) -> tuple[Points, Points]:
    """The two sides of a body whose half width at share t of its length is `half(t)` µm."""
    last = len(line) - 1
    widths = [half(k / last) for k in range(last + 1)]
    return geometry.offset(line, widths), geometry.offset(line, [-w for w in widths])


def ring(line: Points, half: Callable[[float], float]) -> Points:
    """The closed outline of that body."""
    right, left = sides(line, half)
    return (*right, *reversed(left))


def across(line: Points, half: Callable[[float], float], t: float, *, share: float = 1.0, bow: float = 0.0) -> Points:
    """A line across the body at share t, `share` of its width long, bowed toward the tail by `bow` of its width."""
    x, y, nx, ny = place(line, t)
    wide = half(t) * share
    dx, dy = ny, -nx  # along the axis, toward the tail
    return tuple(
        (x + nx * wide * u + dx * bow * wide * (1 - u * u), y + ny * wide * u + dy * bow * wide * (1 - u * u))
        for u in (k / 4 - 1 for k in range(9))
    )


def place(line: Points, t: float) -> tuple[float, float, float, float]:
    """Position and right-hand normal (x, y, nx, ny) at share t of the axis."""
    at = min(1.0, max(0.0, t)) * (len(line) - 1)
    i = min(int(at), len(line) - 2)
    (x1, y1), (x2, y2) = line[i], line[i + 1]
    nx, ny = geometry.normals((line[i], line[i + 1]))[0]
    return (x1 + (x2 - x1) * (at - i), y1 + (y2 - y1) * (at - i), nx, ny)


def beside(line: Points, half: Callable[[float], float], t: float, out: float, along: float = 0.0) -> Point:
    """A point at share t, `out` half-widths to the right of the axis (negative: left), `along` µm toward the tail."""
    x, y, nx, ny = place(line, t)
    wide = half(t) * out
    return (x + nx * wide + ny * along, y + ny * wide - nx * along)


def round_ends(t: float, head: float, tail: float) -> float:
    """A factor 0..1 that rounds both ends over the given shares of the length."""
    factor = 1.0
    if t < head:
        factor = (1 - (1 - t / head) ** 2) ** 0.5
    if t > 1 - tail:
        factor = min(factor, max(0.0, 1 - (1 - (1 - t) / tail) ** 2) ** 0.5)
    return factor


def profile(knots: Sequence[Point], unit: float) -> Callable[[float], float]:
    """Half width through (share of length, share of `unit`) knots, joined smoothly."""

    def half(t: float) -> float:
        for (t1, w1), (t2, w2) in pairwise(knots):
            if t <= t2:
                u = max(0.0, (t - t1) / (t2 - t1))
                return unit * (w1 + (w2 - w1) * u * u * (3 - 2 * u))
        return unit * knots[-1][1]

    return half


def pen_of(edge: Points) -> float:
    """The pen (µm) for a picture of this outline."""
    box = geometry.around(edge)
    return pen_for(box.width, box.height)


def scalloped(width: float, count: int, *, depth: float, head: float, tail: float) -> Callable[[float], float]:
    """Half width with a shallow waist at every segment border."""

    def half(t: float) -> float:
        waist = 1 - depth * (1 - pow(abs(sin(pi * t * count)), 0.6))
        return width / 2 * waist * pow(round_ends(t, head, tail), 0.9)

    return half


@dataclass(frozen=True, slots=True)
class Strand:
    """A long body or a piece of one: its axis, how long that is (µm), half its width at each share of the way, its part name."""

    axis: Points
    length: float
    half: Callable[[float], float]
    part: str = "outline"

    def ring(self) -> Points:
        """The closed edge of the piece."""
        return ring(self.axis, self.half)

    def upto(self, share: float) -> Strand:
        """The first `share` of the piece."""
        last = round(share * (len(self.axis) - 1))
        return Strand(self.axis[: last + 1], self.length * share, lambda t: self.half(share * t), self.part)


def hull(body: Strand, thin: float, thick: float, part: str, pen_um: float, *, first: float = 0.0, closed: bool = True) -> Swell:
    """The outline of a body, or of what lies behind share `first` of it, thinned where the body is thinner than the pen."""
    right, left = sides(body.axis, body.half)
    last = len(body.axis) - 1
    start = round(first * last)
    # Looking three pens inward keeps the ink whole round a blunt end, where the body narrows only at the very tip.
    inward = 3 * pen_um / body.length
    room = [max(0.35, body.half(min(max(k / last, inward), 1 - inward)) / pen_um) for k in range(start, last + 1)]
    swell = pen.contour((*left[start:], *reversed(right[start:])), thin, thick, part, closed=closed)
    return replace(swell, weights=tuple(min(w, r) for w, r in zip(swell.weights, (*room, *reversed(room)), strict=True)))
