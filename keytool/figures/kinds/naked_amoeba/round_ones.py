"""Amoebae round in outline: the lens with a clear rim, and the sun animalcule."""

from __future__ import annotations

from math import cos, hypot, pi, sin

from ... import geometry, pen
from ...frame import Sketch, pen_for
from ...shapes import Point
from .parts import insides, outline_of


def lens(n: float) -> Sketch:
    """A disc with a finely dotted dome, a clear rim all round, and a few short pointed feet."""
    edge = outline_of([(0.52 * cos(a) * (1 + 0.03 * sin(5 * a)), 0.5 * sin(a)) for a in (2 * pi * k / 24 for k in range(24))], n)
    pen_um = pen_for(1.2 * n, 1.2 * n)
    dome = geometry.ellipse(0, 0.5 * n, 0.345 * n, 0.335 * n)
    dots = pen.grain(geometry.clockwise(dome), 4.2 * pen_um, "contents", lambda p: 0.9, sizes=(0.9, 1.1))
    feet = []
    for a in (0.5, 1.3, 2.4, 3.6, 4.4, 5.5):
        x, y = 0.515 * n * cos(a), 0.5 * n + 0.495 * n * sin(a)
        feet.append(pen.line(((x, y), (x + 0.1 * n * cos(a + 0.2), y + 0.1 * n * sin(a + 0.2))), (1.6, 0.5), "pseudopods"))

    def clear(p: Point) -> bool:
        return hypot(p[0], p[1] - 0.5) > 0.0

    inside = insides(edge, n, (0.05, 0.46, 0.08), (-0.14, 0.62, 0.06), clear, pen_um)
    return Sketch((pen.contour(edge, 1.1, 2.0, "outline"), pen.stroke(dome, 0.7, "hump", closed=True), *dots, *feet, *inside), pen_um)


def sun(n: float) -> Sketch:
    """A ball with a foamy edge and stiff, dead straight rays on all sides; the length is that of the ball."""
    edge = outline_of([(0.5 * cos(a), 0.5 * sin(a)) for a in (2 * pi * k / 24 for k in range(24))], n)
    pen_um = pen_for(2.6 * n, 2.6 * n)
    rays = []
    for k in range(26):
        a = 2 * pi * k / 26
        foot = (0.3 * n * cos(a), 0.5 * n + 0.3 * n * sin(a))
        tip = (1.25 * n * cos(a), 0.5 * n + 1.25 * n * sin(a))
        rays.append(pen.line((foot, tip), (1.3, 0.9), "pseudopods"))
    foam = [
        pen.ring(0.405 * n * cos(a), 0.5 * n + 0.405 * n * sin(a), 0.075 * n, 0.9, "vacuole")
        for a in (2 * pi * (k + 0.5) / 15 for k in range(15))
    ]
    core = geometry.ellipse(0, 0.5 * n, 0.29 * n, 0.29 * n)
    grain = pen.grain(geometry.clockwise(core), 3.0 * pen_um, "contents", lambda p: 0.9)
    nucleus = [pen.ring(0, 0.5 * n, 0.1 * n, 1.2, "nucleus"), pen.ring(0, 0.5 * n, 0.04 * n, 1.6, "nucleus")]
    return Sketch((*rays, pen.contour(edge, 1.0, 1.8, "outline"), *foam, *grain, *nucleus), pen_um)
