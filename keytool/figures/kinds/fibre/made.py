"""Fibres and rods without cells: man-made, viscose, glass, silica."""

from __future__ import annotations

from math import pi, sin

from ... import geometry, pen
from ...frame import Sketch, pen_for
from ...shapes import Box, Point, Shape
from .. import tube
from ..points import pts


def synthetic(w: float) -> Sketch:
    """A man-made fibre: perfectly even, a bright line along it, specks of pigment, cut square."""
    n = 10 * w
    pen_um = pen_for(0.32 * n, n)
    line = tube.axis(n, lambda t: 0.20 * sin(pi * (t + 0.1)))
    right, left = tube.sides(line, lambda t: w / 2)

    def specks(p: Point) -> float:
        return 0.35 if geometry.inside(tube_ring, p) else 0.0

    tube_ring = tube.ring(line, lambda t: 0.40 * w)
    xs = [x for x, _ in tube_ring]
    return Sketch(
        (
            pen.line(right, (1.8,), "outline", inset=-1.0),
            pen.line(left, (2.6,), "outline", inset=1.0),
            pen.stroke((left[-1], right[-1]), 1.6, "outline"),
            *(pen.stroke(s, 0.6, "glint", role="faint") for s in tube.sides(line, lambda t: 0.12 * w)),
            *pen.stipple(Box(min(xs), 0, max(xs) - min(xs), n), specks, 3.2 * pen_um, "specks", sizes=(0.9, 1.5)),
        ),
        pen_um,
    )


def viscose(w: float) -> Sketch:
    """Viscose: even in width, several fine lines along its whole length."""
    n = 10 * w
    line = tube.axis(n, lambda t: 0.22 * sin(pi * (t + 0.1)))
    right, left = tube.sides(line, lambda t: w / 2)
    lines = [tuple(tube.beside(line, lambda t: w / 2, k / 120, u) for k in range(121)) for u in (-0.62, -0.30, -0.10, 0.24, 0.52, 0.74)]
    return Sketch(
        (
            pen.line(right, (1.5,), "outline", inset=-1.0),
            pen.line(left, (2.1,), "outline", inset=1.0),
            pen.stroke((left[-1], right[-1]), 1.4, "outline"),
            pen.strokes(lines, 0.8, "lines"),
        ),
        pen_for(0.32 * n, n),
    )


def glass(w: float) -> Sketch:
    """Glass wool: straight and stiff, a dark border, clear within, snapped like a shell."""
    n = 14 * w
    line = tube.axis(n, lambda t: 0.06)
    right, left = tube.sides(line, lambda t: w / 2)
    end = [tube.beside(line, lambda t: w / 2, 1.0, u, d * w) for u, d in pts("-1 0, -.6 .22, 0 .3, .6 .1, 1 -.35")]
    inner = [pen.stroke(s, 0.6, "glint", role="faint") for s in tube.sides(line, lambda t: 0.24 * w)]
    return Sketch(
        (
            pen.line(right, (2.8,), "outline", inset=-1.0),
            pen.line(left, (3.4,), "outline", inset=1.0),
            pen.stroke(geometry.curve(end, per=6), 1.6, "outline"),
            *inner,
        ),
        pen_for(0.3 * n, n),
    )


def bead_end(w: float) -> Sketch:
    """A drop-shaped bead at the end of a glass thread, as mineral wool has."""
    n = 12 * w
    line = tube.axis(0.78 * n, lambda t: 0.05)
    x, y = line[-1]
    bead = geometry.ellipse(x, y + 1.1 * w, 1.15 * w, 1.45 * w, count=64)
    out: list[Shape] = []
    for side, weight in zip(tube.sides(line, lambda t: w / 2), (2.6, 3.2), strict=True):
        out += [pen.line(run, (weight,), "outline") for run in geometry.runs(side, lambda p: not geometry.inside(bead, p))]
    return Sketch(
        (
            *out,
            pen.contour(bead, 2.2, 3.2, "outline"),
            pen.line(geometry.arc(x, y + 1.1 * w, 0.7 * w, 1.1 * pi, 1.4 * pi), (0.5, 1.4, 0.5), "glint", role="faint"),
        ),
        pen_for(0.4 * n, n),
    )


def rod(w: float, *, sculpted: bool) -> Sketch:
    """A silica rod: a fine canal along its middle and a saw edge, or plain."""
    n = 9 * w

    def half(t: float) -> float:
        return float(w / 2 * tube.round_ends(t, 0.06, 0.06) ** 0.7 * ((0.86 + 0.14 * abs(sin(pi * 13 * t))) if sculpted else 1.0))

    line = tube.axis(n, lambda t: 0.10 * t)
    ring = geometry.clockwise(tube.ring(line, half))
    canal = (
        [
            pen.stroke(tuple(tube.beside(line, lambda t: w / 2, 0.06 + 0.88 * k / 40, s * 0.10) for k in range(41)), 0.7, "canal")
            for s in (-1, 1)
        ]
        if sculpted
        else []
    )
    glint = pen.stroke(tuple(tube.beside(line, half, 0.1 + 0.8 * k / 40, -0.5) for k in range(41)), 0.6, "glint", role="faint")
    return Sketch((pen.contour(ring, 2.0, 3.0, "outline"), *canal, glint), pen_for(0.3 * n, n))
