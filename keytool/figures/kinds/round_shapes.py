"""Outlines of single bodies: ball, egg, lemon, pear, bean, flattened on one side."""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, pi, sin

from .. import geometry
from ..shapes import Point, Points
from .points import pts

_HALVES: dict[str, Sequence[Point]] = {  # right half from the top, length 1
    "lemon": pts(".055 0, .085 .06, .22 .17, .315 .38, .33 .55, .25 .8, .1 .97"),
    "pear": pts(".055 .01, .12 .14, .22 .34, .325 .58, .32 .78, .19 .95"),
    "drop": pts(".035 .02, .1 .14, .2 .34, .275 .58, .26 .8, .15 .96"),
}
WIDTHS = {"round": 1.0, "oval": 0.58, "lemon": 0.66, "pear": 0.65, "drop": 0.56, "bean": 0.62, "lopsided": 0.60, "triangle": 1.0}
"""Width over length of each shape where none is given."""


def outline(shape: str, length: float, width: float) -> Points:
    """The edge, clockwise, its middle at (0, 0), `length` tall and `width` wide (µm)."""
    half: Sequence[Point]
    match shape:
        case "round" | "oval":
            return geometry.ellipse(0, 0, width / 2, length / 2, count=96)
        case "bean":
            ring = geometry.curve(
                pts(".05 0, .24 .1, .32 .32, .34 .55, .28 .82, .08 1, -.14 .95, -.24 .78, -.17 .56, -.155 .42, -.24 .24, -.13 .04"),
                closed=True,
            )
        case "lopsided":
            ring = geometry.curve(
                pts("0 0, .16 .06, .28 .26, .32 .52, .26 .8, .08 .985, -.1 .97, -.2 .8, -.22 .52, -.19 .24, -.1 .05"), closed=True
            )
        case "triangle":
            ring = tuple(
                ((0.5 + 0.055 * cos(3 * a)) * sin(a), -(0.5 + 0.055 * cos(3 * a)) * cos(a)) for a in (2 * pi * k / 96 for k in range(96))
            )
        case _:
            half = _HALVES[shape]
            ring = geometry.curve(
                [(0, 0 if shape != "lemon" else -0.005), *half, (0, 1.0), *reversed(geometry.mirrored(half))], closed=True
            )
    box = geometry.around(ring)
    fitted = tuple(((x - box.x - box.width / 2) * width / box.width, (y - box.y - box.height / 2) * length / box.height) for x, y in ring)
    return geometry.clockwise(fitted)


def within(edge: Points, by: float) -> Points:
    """The edge drawn in by `by` µm all round."""
    return geometry.offset(edge, [by] * len(edge), closed=True)
