"""Round things that are only a rim: air bubbles and oil drops."""

from __future__ import annotations

from math import pi

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Box, Point, Shape
from .kind import Kind, Values, accent, choice, num, um, word
from .points import pts


def bubble(v: Values) -> Sketch:
    """An air bubble: broad black rim, bright middle."""
    d = num(v, "diameter")
    r = d / 2
    hole = geometry.ellipse(-0.02 * r, -0.02 * r, 0.60 * r, 0.60 * r, count=72)
    return Sketch(
        (
            pen.holed(geometry.ellipse(0, 0, r, r, count=96), [hole], "outline"),
            pen.ring(-0.02 * r, -0.02 * r, 0.50 * r, 0.7, "glint", role="faint"),
            pen.disc(-0.16 * r, -0.18 * r, 0.07 * r, "glint", role="faint"),
        ),
        pen_for(d, d),
        tonal=True,
    )


def oil_drop(v: Values) -> Sketch:
    """A drop of oil: an even dark rim, thinner than a bubble's, with a bright ring inside."""
    d = num(v, "diameter")
    r, pen_um = d / 2, pen_for(d, d)

    def density(p: Point) -> float:
        far = (p[0] ** 2 + p[1] ** 2) ** 0.5 / r
        return max(0.0, (far - 0.62) * 2.2) if far < 0.90 else 0.0

    return Sketch(
        (
            pen.contour(geometry.ellipse(0, 0, r, r, count=96), 3.4, 4.2, "outline"),
            pen.ring(0, 0, 0.90 * r, 0.6, "glint"),
            *pen.stipple(Box(-r, -r, d, d), density, 3.2 * pen_um, "shade"),
            pen.line(geometry.arc(0, 0, 0.66 * r, 1.12 * pi, 1.36 * pi), (0.5, 1.8, 0.5), "glint", role="faint"),
        ),
        pen_um,
        tonal=True,
    )


_Round = tuple[float, float, float]
_MIXED: tuple[_Round, ...] = (
    *((-0.42, -0.30, 0.30), (0.30, -0.42, 0.22), (0.40, 0.28, 0.36), (-0.24, 0.42, 0.20), (0.02, 0.02, 0.14), (-0.66, 0.18, 0.10)),
    *((-0.05, -0.62, 0.08), (-0.535, 0.555, 0.115), (0.72, -0.22, 0.07), (0.06, 0.70, 0.06)),
)
_EQUAL = tuple((x, y, 0.26) for x, y in pts("-.4 -.5, .2 -.62, -.02 -.02, .51 -.15, -.5 .2, .26 .44, -.26 .66"))
_PAIR = ((-0.22, -0.16, 0.27), (0.22, 0.153, 0.27))
_CIRCLES: dict[str, tuple[_Round, ...]] = {"mixed": _MIXED, "equal": _EQUAL, "pair": _PAIR}
"""Circles as (x, y, radius), in shares of a width of their own."""


def circles(v: Values) -> Sketch:
    """Several true circles: of many sizes, two of them merging; all of one size; two that touch."""
    plan = _CIRCLES[word(v, "form")]
    unit = num(v, "diameter") / (2 * max(r for _, _, r in plan))
    spots = [(x * unit, y * unit, r * unit) for x, y, r in plan]
    wide = max(x + r for x, _, r in spots) - min(x - r for x, _, r in spots)
    tall = max(y + r for _, y, r in spots) - min(y - r for _, y, r in spots)
    out: list[Shape] = []
    for x, y, r in spots:
        out += [
            pen.contour(geometry.ellipse(x, y, r, r, count=72), 2.4, 3.2, "outline"),
            pen.line(geometry.arc(x, y, 0.62 * r, 1.1 * pi, 1.4 * pi), (0.5, 1.4, 0.5), "glint", role="faint"),
        ]
    return Sketch(tuple(out), pen_for(wide, tall), tonal=True)


CIRCLES = Kind(
    "circles",
    "several true circles with dark rims: drops, bubbles or beads",
    (
        choice("form", tuple(_CIRCLES), "large and small side by side; all alike; two alike that touch"),
        um("diameter", 20, 1, 1000, "outer diameter of the largest"),
        accent("body"),
    ),
    circles,
)


BUBBLE = Kind(
    "bubble",
    "an air bubble: broad black rim, bright middle",
    (um("diameter", 120, 5, 5000, "outer diameter"), accent("body")),
    bubble,
)


OIL_DROP = Kind(
    "oil-drop",
    "a drop of oil or fat: even dark rim, bright ring inside",
    (um("diameter", 20, 1, 1000, "outer diameter"), accent("body")),
    oil_drop,
)
