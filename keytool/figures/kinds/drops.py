"""Round things that are only a rim: air bubbles and oil drops."""

from __future__ import annotations

from math import pi

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Box, Point
from .kind import Kind, Values, accent, num, um


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
