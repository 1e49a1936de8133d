"""Pollen grains: furrowed, winged, spiny."""

from __future__ import annotations

from math import cos, pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Box, Point, Shape
from .kind import Kind, Values, accent, choice, num, um, word


def pollen(v: Values) -> Sketch:
    """A pollen grain."""
    d = num(v, "diameter")
    r = d / 2
    return {"furrowed": _furrowed, "pored": _pored, "winged": _winged, "spiny": _spiny}[word(v, "form")](r)


def _furrowed(r: float) -> Sketch:
    """Three furrows, seen end-on: a rounded triangle parted at its corners; thick two-layered wall."""
    pen_um = pen_for(2 * r, 2 * r)
    shapes: list[Shape] = []
    lines = []
    for k in range(3):
        first = -pi / 2 + 2 * pi * k / 3
        outer = geometry.arc(0, 0, r, first + 0.20, first + 2 * pi / 3 - 0.20, count=24)
        inner = geometry.arc(0, 0, 0.86 * r, first + 0.26, first + 2 * pi / 3 - 0.26, count=24)
        shapes += [pen.contour(outer, 1.8, 2.8, "outline", closed=False), pen.stroke(inner, 1.0, "wall")]
        shapes += [pen.stroke((outer[0], inner[0]), 1.2, "wall"), pen.stroke((outer[-1], inner[-1]), 1.2, "wall")]
        lines += [
            ((0.88 * r * cos(a), 0.88 * r * sin(a)), (0.97 * r * cos(a), 0.97 * r * sin(a)))
            for a in (first + 0.3 + 0.075 * j for j in range(20))
        ]
        a = first
        furrow = geometry.curve(
            [
                (0.80 * r * cos(a - 0.20), 0.80 * r * sin(a - 0.20)),
                (0.46 * r * cos(a), 0.46 * r * sin(a)),
                (0.80 * r * cos(a + 0.20), 0.80 * r * sin(a + 0.20)),
            ],
            per=8,
        )
        bulge = geometry.arc(0, 0, 0.93 * r, first - 0.20, first + 0.20, count=10)
        shapes += [pen.line(furrow, (0.8, 1.6, 0.8), "furrows"), pen.stroke(bulge, 0.7, "furrows")]
    shapes.append(pen.strokes(lines, 0.5, "wall", role="faint"))
    shapes += pen.stipple(
        Box(-r, -r, 2 * r, 2 * r), lambda p: 0.5 if (p[0] ** 2 + p[1] ** 2) ** 0.5 < 0.42 * r else 0.0, 3.4 * pen_um, "contents"
    )
    return Sketch(tuple(shapes), pen_um)


def _pored(r: float) -> Sketch:
    """A rounded triangle with a raised pore at each corner, as of birch and hazel; the wall swells round the pores."""
    pen_um = pen_for(2 * r, 2 * r)
    r *= 1.103  # a triangle with its corners at r is less than 2 r across
    out: list[Shape] = []
    sides: list[Point] = []
    for k in range(3):
        a = -pi / 2 + 2 * pi * k / 3
        right = [
            (r * s * cos(a + t), r * s * sin(a + t)) for t, s in ((0.085, 1.0), (0.20, 0.955), (0.36, 0.875), (0.72, 0.815), (pi / 3, 0.80))
        ]
        left = [
            (r * s * cos(a + 2 * pi / 3 - t), r * s * sin(a + 2 * pi / 3 - t))
            for t, s in ((0.72, 0.815), (0.36, 0.875), (0.20, 0.955), (0.085, 1.0))
        ]
        side = geometry.curve([*right, *left], per=6)
        sides += side
        out.append(pen.contour(side, 1.7, 2.6, "outline", closed=False))
        inner = geometry.offset(side, [0.10 * r] * len(side))
        out.append(pen.stroke(inner[6:-6], 0.9, "wall"))
        c, s = cos(a), sin(a)
        for way in (-1, 1):  # the raised lips of the pore, and the clear space under them
            lip = [(d * r * c - way * u * r * s, d * r * s + way * u * r * c) for d, u in ((0.995, 0.085), (0.90, 0.10), (0.80, 0.17))]
            out.append(pen.line(geometry.curve(lip, per=6), (2.6, 1.6, 0.8), "pores"))
        vault = [
            (d * r * c + u * r * s, d * r * s - u * r * c)
            for d, u in ((0.80, -0.17), (0.735, -0.09), (0.72, 0.0), (0.735, 0.09), (0.80, 0.17))
        ]
        out.append(pen.stroke(geometry.curve(vault, per=6), 0.9, "pores"))
    return Sketch((*out, *pen.grain(geometry.scaled(sides, 0.62), 3.4 * pen_um, "contents", lambda p: 0.5)), pen_um)


def _winged(r: float) -> Sketch:
    """Conifer pollen: a body with two netted air sacs; the diameter spans both sacs."""
    pen_um = pen_for(2 * r, 1.4 * r)
    body = geometry.ellipse(0, -0.10 * r, 0.62 * r, 0.50 * r, count=72)
    shapes: list[Shape] = [pen.contour(body, 1.3, 2.2, "outline")]
    for s in (-1, 1):
        sac = geometry.ellipse(s * 0.61 * r, 0.28 * r, 0.39 * r, 0.35 * r, count=72)
        for run in geometry.runs((*sac, sac[0]), lambda p: not geometry.inside(body, p)):
            shapes.append(pen.line(run, (1.2, 2.0, 1.2), "sacs", inset=1.0))
        net = []
        for k in range(-3, 4):
            for j in range(-3, 4):
                x, y = s * 0.61 * r + k * 0.105 * r + (0.05 * r if j % 2 else 0), 0.28 * r + j * 0.095 * r
                cell = geometry.arc(x, y, 0.045 * r, 0, 2 * pi, count=6)
                if all(
                    geometry.inside(sac, (s * 0.61 * r + (px - s * 0.61 * r) * 1.12, 0.28 * r + (py - 0.28 * r) * 1.12))
                    and not geometry.inside(body, (px, py - 0.03 * r))
                    for px, py in cell
                ):
                    net.append(cell)
        shapes.append(pen.strokes(net, 0.6, "sacs"))
    shapes += pen.stipple(
        Box(-0.6 * r, -0.6 * r, 1.2 * r, 1.0 * r),
        lambda p: 0.35 + 0.5 * max(0.0, p[1] / r + 0.1) if geometry.inside(body, (p[0] * 1.08, (p[1] + 0.1 * r) * 1.08 - 0.1 * r)) else 0.0,
        3.2 * pen_um,
        "contents",
    )
    return Sketch(tuple(shapes), pen_um)


def _spiny(r: float) -> Sketch:
    """Spines all over; the diameter is taken between the bases of the spines."""
    pen_um = pen_for(2.3 * r, 2.3 * r)
    shapes: list[Shape] = [pen.contour(geometry.ellipse(0, 0, r, r, count=96), 1.4, 2.6, "outline"), pen.ring(0, 0, 0.88 * r, 0.8, "wall")]
    for k in range(20):
        a = 2 * pi * k / 20
        left, right = a - 0.085, a + 0.085
        shapes.append(
            pen.filled(((r * cos(left), r * sin(left)), (1.17 * r * cos(a), 1.17 * r * sin(a)), (r * cos(right), r * sin(right))), "spines")
        )
    for ring, count in ((0.30, 6), (0.62, 12)):
        for k in range(count):
            a = 2 * pi * k / count + ring
            shapes.append(pen.disc(ring * r * cos(a), ring * r * sin(a), 0.035 * r, "spines"))
            shapes.append(pen.ring(ring * r * cos(a), ring * r * sin(a), 0.075 * r, 0.5, "spines"))
    return Sketch(tuple(shapes), pen_um)


KIND = Kind(
    "pollen",
    "a pollen grain",
    (
        choice(
            "form",
            ("furrowed", "pored", "winged", "spiny"),
            "three furrows, seen end-on; rounded triangle with three raised pores; with air sacs; spiny",
        ),
        um("diameter", 30, 5, 250, "diameter; of a winged grain across both sacs, of a spiny one without spines"),
        accent("body", "furrows", "pores", "sacs", "spines", "wall"),
    ),
    pollen,
)
