"""Clumps that are no brown crumb: gritty ones of mineral bits, and clear jellies."""

from __future__ import annotations

from math import cos, hypot, pi, sin
from random import Random

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape
from .dots import fitted
from .points import pts


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
    """A lump without an edge: dots and rods hang in it in nests, grit sticks in it, and toward the water they thin out."""
    chance = Random("jelly")
    nests = [(chance.uniform(-0.26, 0.26), chance.uniform(-0.20, 0.20), chance.uniform(0.05, 0.09)) for _ in range(7)]
    room = _edge(n, "jelly")
    grit: list[Points] = []
    for x, y, r in (
        (-0.22, -0.14, 0.05),
        (0.10, -0.20, 0.036),
        (0.26, 0.04, 0.06),
        (-0.06, 0.18, 0.045),
        (-0.32, 0.08, 0.030),
        (0.14, 0.24, 0.026),
    ):
        shape = ((-r, -0.4 * r), (0.1 * r, -0.9 * r), (r, -0.2 * r), (0.6 * r, 0.8 * r), (-0.6 * r, 0.7 * r))
        grit.append(geometry.scaled(geometry.moved(shape, x, y, turn=20 * x), n))

    def dense(p: Point) -> float:
        x, y = p[0] / n, p[1] / n
        out = (x / 0.46) ** 2 + (y / 0.38) ** 2
        nest = max(1 - hypot(x - a, y - b) / r for a, b, r in nests)
        if any(geometry.inside(one, p) for one in grit):
            return 0.0
        return max(0.0, 0.42 * (1 - out) + 0.9 * max(0.0, nest))

    dots = pen.grain(room, 0.024 * n, "dots", dense, sizes=(1.3, 1.9))
    rods: list[Points] = []
    for _ in range(420):
        x, y, a = chance.uniform(-0.5, 0.5) * n, chance.uniform(-0.42, 0.42) * n, chance.uniform(0, pi)
        if chance.random() < 0.7 * dense((x, y)):
            rods.append(((x - 0.012 * n * cos(a), y - 0.012 * n * sin(a)), (x + 0.012 * n * cos(a), y + 0.012 * n * sin(a))))
    chain = [
        geometry.walked(geometry.curve(geometry.scaled(((0.0, -0.04), (0.12, -0.06), (0.2, -0.12), (0.3, -0.13)), n), per=8), t / 9)
        for t in range(10)
    ]
    return Sketch(
        (
            *(pen.line(room[k : k + 7], (0.2, 0.6, 0.2), "outline", role="faint") for k in range(0, 176, 11)),
            *dots,
            pen.strokes(rods, 1.9, "dots"),
            *(pen.disc(x, y, 0.009 * n, "dots") for x, y in chain),
            *(pen.stroke(one, 1.3, "grit", closed=True) for one in grit),
        ),
        pen_for(n, 0.9 * n),
    )


def pith(n: float) -> Sketch:
    """A springy crumb of thin-walled rounded cells like a sponge, torn open at its edge, a stiff fibre or two beside it."""
    chance = Random("pith")
    r = 0.062
    cells: list[tuple[float, float]] = []
    for row in range(-5, 6):
        for col in range(-6, 7):
            x = (col + 0.5 * (row % 2)) * 1.80 * r + chance.uniform(-0.010, 0.010)
            y = row * 1.58 * r + chance.uniform(-0.010, 0.010)
            if (x / 0.42) ** 2 + (y / 0.34) ** 2 < 1 + 0.22 * sin(5 * x / 0.2 + 3) * cos(9 * y):
                cells.append((x, y))
    out: list[Shape] = []
    for x, y in cells:
        ring = [
            (x + 1.02 * r * (1 + 0.05 * cos(6 * a)) * cos(a + 0.52), y + 1.02 * r * (1 + 0.05 * cos(6 * a)) * sin(a + 0.52))
            for a in (2 * pi * k / 24 for k in range(24))
        ]
        cell = geometry.scaled(ring, 1.02 * n)
        out.append(pen.filled(cell, "tint", role="brown"))
    for k, (x, y) in enumerate(cells):
        ring = [(x + 0.93 * r * cos(a), y + 0.93 * r * sin(a)) for a in (2 * pi * j / 24 for j in range(24))]
        cell = geometry.scaled(ring, n)
        torn = (x / 0.40) ** 2 + (y / 0.32) ** 2 > 0.86 and k % 2
        start = round(24 * (0.5 + chance.random() / 4))
        out.append(pen.stroke((*cell[start:], *cell[: start - 7]) if torn else cell, 1.1, "cells", closed=not torn))
    for way in ("-.52 .30, -.20 .44, .16 .42, .52 .30", "-.44 -.44, -.10 -.42, .30 -.46"):
        line = geometry.curve(geometry.scaled(pts(way), n), per=10)
        wide = [0.016 * n] * len(line)
        fibre = (*geometry.offset(line, wide), *reversed(geometry.offset(line, [-w for w in wide])))
        out += [pen.filled(fibre, "strands", role="brown"), pen.stroke(fibre, 1.3, "strands", closed=True)]
        out.append(pen.stroke(line, 0.6, "strands"))
    return Sketch(tuple(out), pen_for(1.05 * n, n), tonal=True)
