"""Diatoms: glass boxes with fine ribs."""

from __future__ import annotations

from dataclasses import replace
from math import cos, pi, pow, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Box, Shape
from . import tube
from .kind import Kind, Values, accent, choice, flag, num, um, word


def diatom(v: Values) -> Sketch:
    """A diatom: a glass box, mirror-sided, with fine ribs."""
    n = num(v, "length")
    if word(v, "form") == "centric":
        return _centric(n)
    sketch = _pennate(n)
    return replace(sketch, shapes=(*sketch.shapes, *_plates(n, sketch.pen_um))) if v["plastids"] else sketch


def _pennate(n: float) -> Sketch:
    def half(t: float) -> float:
        return 0.115 * n * pow(max(0.0, sin(pi * t)), 0.62)

    line = tube.axis(n, lambda t: 0.0)
    pen_um = pen_for(0.3 * n, n)
    ribs = []
    for k in range(4, 57):
        t = k / 60
        if abs(t - 0.5) < 0.035:
            continue
        wide = half(t)
        lean = 0.035 * n * (1 if t < 0.5 else -1)
        ribs += [((s * 0.26 * wide, t * n), (s * 0.90 * wide, t * n - lean * 0.35)) for s in (-1, 1)]
    return Sketch(
        (
            pen.contour(tube.ring(line, half), 1.3, 2.2, "outline"),
            pen.strokes(ribs, 0.6, "ribs"),
            pen.strokes((((0, 0.05 * n), (0, 0.475 * n)), ((0, 0.525 * n), (0, 0.95 * n))), 1.1, "midline"),
            pen.disc(0, 0.475 * n, 0.008 * n, "midline"),
            pen.disc(0, 0.525 * n, 0.008 * n, "midline"),
        ),
        pen_um,
    )


def _plates(n: float, pen_um: float) -> list[Shape]:
    """Two golden plates, one along each side, parted by a clear middle (an even grain stands for the colour)."""
    out: list[Shape] = []
    for s in (-1, 1):
        half = [
            (0.018, 0.14),
            (0.060, 0.24),
            (0.082, 0.40),
            (0.040, 0.47),
            (0.040, 0.53),
            (0.082, 0.60),
            (0.060, 0.76),
            (0.018, 0.86),
            (0.022, 0.5),
        ]
        plate = geometry.curve([(s * x * n, y * n) for x, y in half], closed=True, per=6)
        out += [
            pen.stroke(plate, 1.0, "plastids", closed=True),
            *pen.grain(plate, 2.0 * pen_um, "plastids", lambda p: 0.85, sizes=(0.9, 1.2)),
        ]
    return out


def _centric(n: float) -> Sketch:
    r = n / 2
    ribs = []
    for k in range(60):
        a = 2 * pi * k / 60
        ribs.append(
            ((r * (0.55 if k % 2 else 0.35) * cos(a), r * (0.55 if k % 2 else 0.35) * sin(a)), (0.92 * r * cos(a), 0.92 * r * sin(a)))
        )
    return Sketch(
        (
            pen.contour(geometry.ellipse(0, 0, r, r, count=96), 1.4, 2.4, "outline"),
            pen.ring(0, 0, 0.93 * r, 0.7, "outline"),
            pen.strokes(ribs, 0.6, "ribs"),
            *pen.stipple(
                Box(-r, -r, n, n), lambda p: 0.6 if p[0] ** 2 + p[1] ** 2 < (0.3 * r) ** 2 else 0.0, 3.0 * pen_for(n, n), "midline"
            ),
        ),
        pen_for(n, n),
    )


KIND = Kind(
    "diatom",
    "a diatom: glass box with fine ribs",
    (
        choice("form", ("pennate", "centric"), "boat-shaped or round"),
        um("length", 40, 3, 500, "length, or diameter of a round one"),
        flag("plastids", "the golden plates of a living boat-shaped one"),
        accent("body", "ribs", "midline", "plastids"),
    ),
    diatom,
)
