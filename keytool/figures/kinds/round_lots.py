"""Several bodies side by side, for names that stand for many: round things of every kind, and spores of every shape."""

from __future__ import annotations

from collections.abc import Callable
from math import cos, pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Points, Shape
from .round_contents import contents
from .round_shapes import outline, within
from .round_walls import wall
from .together import shifted


def _one(
    shape: str, length: float, width: float, style: str, room: float, filling: str, x: float, y: float, turn: float = 0.0
) -> list[Shape]:
    """One body with its wall and contents, its middle at (x, y); one that is turned has a single wall."""
    pen_um = pen_for(3.2 * width, 3.2 * width)
    edge = outline(shape, length, width)
    if turn:
        tilted = geometry.moved(edge, 0, 0, turn=turn)
        shapes = [pen.contour(tilted, 1.3, 2.4, "outline"), *contents(filling, within(tilted, (1 - room) * width / 2), pen_um)]
    else:
        shapes = [*wall(style, edge, pen_um), *contents(filling, within(edge, (1 - room) * width / 2), pen_um)]
    return list(shifted(shapes, x, y))


def bodies(n: float) -> Sketch:
    """A double-walled cyst, an oval spore with drops, a spiny ball, a starch grain with its rings, a bubble of oil."""
    out = [
        *_one("round", 0.40 * n, 0.40 * n, "double", 0.78, "cell", -0.24 * n, -0.26 * n),
        *_one("oval", 0.34 * n, 0.20 * n, "single", 0.9, "pole-drops", 0.20 * n, -0.30 * n),
        *_one("round", 0.30 * n, 0.30 * n, "cones", 0.88, "clear", -0.28 * n, 0.24 * n),
    ]
    egg = tuple(
        (0.13 * n * (1 + 0.16 * sin(a)) * cos(a) + 0.10 * n, 0.17 * n * sin(a) + 0.14 * n) for a in (2 * pi * k / 64 for k in range(64))
    )
    out.append(pen.contour(egg, 1.2, 2.2, "outline"))
    for s in (0.80, 0.60, 0.40, 0.20):
        ring = tuple((0.10 * n + s * (x - 0.10 * n), 0.06 * n + s * (y - 0.06 * n)) for x, y in egg)
        out.append(pen.stroke(ring, 0.6, "rings", closed=True))
    out.append(pen.disc(0.10 * n, 0.06 * n, 0.008 * n, "rings"))
    drop: Points = geometry.ellipse(0.37 * n, 0.0, 0.10 * n, 0.10 * n, count=60)
    out += [
        pen.holed(drop, [geometry.ellipse(0.37 * n, 0.0, 0.072 * n, 0.072 * n, count=60)], "outline"),
        pen.ring(0.37 * n, 0.0, 0.05 * n, 0.5, "rings", role="faint"),
    ]
    return Sketch(tuple(out), pen_for(0.95 * n, 0.95 * n))


def spores(n: float) -> Sketch:
    """A ball with one drop, a lemon, a slim oval, a chain of three, a thick dark one."""
    out = [
        *_one("round", 0.32 * n, 0.32 * n, "single", 0.92, "one-drop", -0.28 * n, -0.28 * n),
        *_one("lemon", 0.36 * n, 0.23 * n, "single", 0.9, "pole-drops", 0.10 * n, -0.24 * n),
        *_one("oval", 0.40 * n, 0.15 * n, "single", 0.9, "clear", 0.34 * n, -0.16 * n, 0.4),
        *_one("round", 0.27 * n, 0.27 * n, "thick", 0.7, "grains", -0.26 * n, 0.16 * n),
    ]
    for k in range(3):
        out += _one("round", 0.15 * n, 0.15 * n, "single", 0.9, "clear", (0.02 + 0.125 * k) * n, (0.22 - 0.045 * k) * n)
    return Sketch(tuple(out), pen_for(0.95 * n, 0.9 * n))


LOTS: dict[str, Callable[[float], Sketch]] = {"bodies": bodies, "spores": spores}
"""Each by the word of `lot` that asks for it."""
