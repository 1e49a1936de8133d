"""Clumps that are no brown crumb: gritty ones of mineral bits, and clear jellies."""

from __future__ import annotations

from math import cos, pi, sin
from random import Random

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape
from .dots import fitted


def _edge(n: float, salt: str) -> Points:
    base = geometry.ellipse(0, 0, 0.5 * n, 0.42 * n, count=180)
    return geometry.clockwise(fitted(list(pen.wobble(pen.wobble(base, 0.040 * n, 3, salt), 0.020 * n, 8, (salt, 1))), n))


def gritty(n: float) -> Sketch:
    """Sharp clear mineral bits of all sizes, packed close in a cement of clay, a thread or two across them."""
    ring, chance = _edge(n, "gritty"), Random("gritty")
    spots: list[tuple[float, float, float]] = []
    for r, tries in ((0.085, 300), (0.055, 700), (0.032, 1200)):
        for _ in range(tries):
            x, y = chance.uniform(-0.5, 0.5), chance.uniform(-0.45, 0.45)
            if all((x - a) ** 2 + (y - b) ** 2 > (0.98 * (r + c)) ** 2 for a, b, c in spots) and geometry.inside(
                ring, (1.10 * x * n, 1.12 * y * n)
            ):
                spots.append((x, y, r))
    bits: list[Shape] = []
    for x, y, r in spots:
        count, turn = chance.choice((4, 5, 6)), chance.uniform(0, pi)
        grain = tuple(
            ((x + r * s * cos(a)) * n, (y + r * s * sin(a)) * n)
            for a, s in ((turn + 2 * pi * k / count, chance.uniform(0.72, 1.0)) for k in range(count))
        )
        bits.append(pen.stroke(grain, 1.2 if r > 0.05 else 0.9, "bits", closed=True))
        if r > 0.08:
            bits.append(pen.strokes([(grain[0], (x * n, y * n)), (grain[2], (x * n, y * n))], 0.6, "bits"))

    def between(p: Point) -> float:
        return 0.0 if any((p[0] / n - x) ** 2 + (p[1] / n - y) ** 2 < (0.9 * r) ** 2 for x, y, r in spots) else 0.75

    clay = pen.grain(ring, 0.018 * n, "clay", between, sizes=(0.8, 1.1))
    threads = [
        geometry.curve(geometry.scaled(one, n), per=8)
        for one in (((-0.62, -0.10), (-0.38, -0.16), (-0.30, -0.30), (-0.24, -0.52)), ((0.30, 0.34), (0.48, 0.24), (0.62, 0.28)))
    ]
    outline = [ring[k : k + 11] for k in range(0, 176, 13)]
    return Sketch(
        (pen.strokes(outline, 0.8, "outline"), *bits, *clay, *(pen.line(t, (0.7,), "strands") for t in threads)), pen_for(n, 0.9 * n)
    )


def jelly(n: float) -> Sketch:
    """A clear lump full of dots and short rods, grit stuck in it; its edge fades, so it is broken and thin."""
    ring, chance = _edge(n, "jelly"), Random("jelly")
    dots = pen.grain(
        ring, 0.036 * n, "dots", lambda p: 0.30 + 0.45 * max(0.0, 1 - (p[0] ** 2 + p[1] ** 2) / (0.42 * n) ** 2), sizes=(1.0, 1.4)
    )
    rods, grit = [], []
    for k in range(150):
        x, y, a = chance.uniform(-0.5, 0.5) * n, chance.uniform(-0.45, 0.45) * n, chance.uniform(0, pi)
        if not geometry.inside(ring, (1.12 * x, 1.12 * y)):
            continue
        if k % 16 == 0:
            r = chance.uniform(0.014, 0.026) * n
            shape = ((-r, -0.4 * r), (0.1 * r, -0.9 * r), (r, -0.2 * r), (0.6 * r, 0.8 * r), (-0.6 * r, 0.7 * r))
            grit.append(pen.stroke(geometry.moved(shape, x, y, turn=a), 1.0, "grit", closed=True))
        elif k % 3 == 0:
            rods.append(((x - 0.012 * n * cos(a), y - 0.012 * n * sin(a)), (x + 0.012 * n * cos(a), y + 0.012 * n * sin(a))))
    rim = [pen.line(ring[k : k + 9], (0.3, 0.9, 0.3), "outline") for k in range(0, 176, 13)]
    return Sketch((*rim, *dots, pen.strokes(rods, 1.2, "dots"), *grit), pen_for(n, 0.9 * n))
