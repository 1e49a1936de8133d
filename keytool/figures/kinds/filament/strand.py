"""What filaments are drawn from: the course, both walls, cross-walls, green discs."""

from __future__ import annotations

from math import pi, sin
from random import Random

from ... import pen
from ...shapes import Point, Points, Shape
from .. import tube


def course(n: float, sweep: float = 0.20) -> Points:
    """The middle line: `n` µm long, in a gentle bend of `sweep` radians."""
    return tube.axis(n, lambda t: sweep * sin(2 * pi * (0.75 * t + 0.1)))


def both_walls(line: Points, half: float, light: float, dark: float, part: str = "outline") -> list[Shape]:
    """Both walls, their outer edges a true width apart."""
    right, left = tube.sides(line, lambda t: half)
    return [pen.line(left, (dark,), part, inset=1.0), pen.line(tuple(reversed(right)), (light,), part, inset=1.0)]


def cross_lines(line: Points, half: float, at: list[float], weight: float, lean: float = 0.0) -> Shape:
    """Lines right across at the given shares of the way; `lean` µm makes them slant."""
    walls = [(tube.beside(line, lambda t: half, t, -0.97, -lean), tube.beside(line, lambda t: half, t, 0.97, lean)) for t in at]
    return pen.strokes(walls, weight, "cross-walls")


def discs(line: Points, half: float, first: float, last: float, count: int, r: float, salt: str) -> list[Shape]:
    """Green discs lining a cell."""
    chance = Random(salt)
    spots: list[Point] = []
    for _ in range(900):
        t, u = chance.uniform(first, last), chance.uniform(-0.74, 0.74)
        x, y = tube.beside(line, lambda t: half, t, u)
        if len(spots) < count and all((x - a) ** 2 + (y - b) ** 2 > (2.1 * r) ** 2 for a, b in spots):
            spots.append((x, y))
    return [
        shape
        for x, y in spots
        for shape in (pen.ring(x, y, r, 0.8, "plastid", ry=0.75 * r), pen.disc(x, y, 0.45 * r, "plastid", ry=0.34 * r, role="faint"))
    ]
