"""What single cells have inside and around them."""

from __future__ import annotations

from collections.abc import Callable
from math import hypot

from .. import geometry, pen
from ..shapes import Point, Points, Shape


def clear_of(*rounds: tuple[float, float, float]) -> Callable[[Point], float]:
    """Even grain everywhere but in the given circles."""
    return lambda p: 0.0 if any(hypot(p[0] - x, p[1] - y) < 1.15 * r for x, y, r in rounds) else 0.5


def nucleus(x: float, y: float, r: float) -> list[Shape]:
    """A clear disc with a darker dot in the middle."""
    return [pen.ring(x, y, r, 1.0, "nucleus"), pen.disc(x, y, 0.42 * r, "nucleus")]


def vacuole(x: float, y: float, r: float) -> Shape:
    """A clear bubble that fills and empties."""
    return pen.ring(x, y, r, 1.3, "vacuole")


def lashes(edge: Points, step: float, size: float, lean: float) -> list[Points]:
    """Short bent cilia standing out from a clockwise ring."""
    walk = geometry.spaced((*edge, edge[0]), step)[:-1]
    out: list[Points] = []
    for (x, y), (nx, ny) in zip(walk, geometry.normals(walk, closed=True), strict=True):
        tip = (x - size * nx + lean * size * 0.3, y - size * ny + lean * size)
        mid = (x - 0.6 * size * nx, y - 0.6 * size * ny + 0.25 * lean * size)
        out.append(geometry.curve([(x, y), mid, tip], per=3))
    return out
