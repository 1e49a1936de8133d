"""Amoebae with many arms: spikes, rays, cones."""

from __future__ import annotations

from math import cos, hypot, pi, sin

from ... import geometry, pen
from ...frame import Sketch, pen_for
from ...shapes import Point
from ..points import pts
from .parts import insides, outline_of


def spikes(n: float) -> Sketch:
    """A flat grainy body with a broad clear front and many thin tapering spikes, some forked."""
    half = pts(".16 .015, .3 .09, .37 .24, .36 .42, .29 .62, .2 .8, .12 .93")
    left = pts("-.13 .92, -.22 .78, -.31 .6, -.37 .4, -.36 .22, -.29 .09, -.15 .02")
    edge, pen_um = outline_of([(0, 0), *half, (0.02, 1.0), *left], n), pen_for(1.05 * n, 1.1 * n)
    spikes = []
    walk = geometry.spaced((*edge, edge[0]), 0.074 * n)[:-1]
    for k, ((x, y), (nx, ny)) in enumerate(zip(walk, geometry.normals(walk, closed=True), strict=True)):
        size = n * (0.10 + 0.075 * ((k * 0.618) % 1)) * (1.0 if y < 0.5 * n else 0.62)
        bend = 0.028 * n * sin(2.3 * k)
        tip = (x - nx * size - ny * bend, y - ny * size + nx * bend)
        mid = (x - nx * 0.5 * size, y - ny * 0.5 * size)
        spikes.append(pen.line(geometry.curve([(x, y), mid, tip], per=5), (2.2, 0.9, 0.5), "pseudopods"))
        if k % 4 == 1:
            fork = (x - nx * 0.9 * size + ny * 0.05 * n, y - ny * 0.9 * size - nx * 0.05 * n)
            spikes.append(pen.line((mid, fork), (0.9, 0.5), "pseudopods"))

    inside = insides(edge, n, (0.03, 0.45, 0.08), (-0.06, 0.72, 0.10), lambda p: p[1] < 0.20 + 0.5 * p[0] ** 2, pen_um)
    return Sketch((pen.contour(edge, 1.0, 1.8, "outline"), *spikes, *inside), pen_um)


def rays(n: float) -> Sketch:
    """A ball with hair-thin straight rays; the length is that of the ball."""
    edge = outline_of([(0.5 * cos(a) * (1 + 0.05 * sin(3 * a)), 0.5 * sin(a)) for a in (2 * pi * k / 20 for k in range(20))], n)
    pen_um = pen_for(2.2 * n, 2.2 * n)
    rays = []
    for k in range(38):
        a = 2 * pi * (k + 0.3 * sin(5.0 * k)) / 38
        reach = n * (0.80 + 0.38 * ((k * 0.618) % 1))
        foot = (0.49 * n * cos(a), 0.5 * n + 0.49 * n * sin(a))
        rays.append(pen.line((foot, (reach * cos(a), 0.5 * n + reach * sin(a))), (0.9, 0.5), "pseudopods"))
    inside = insides(edge, n, (0.06, 0.44, 0.11), (-0.16, 0.66, 0.09), lambda p: False, pen_um)
    return Sketch((*rays, pen.contour(edge, 1.1, 2.0, "outline"), *inside), pen_um)


def cones(n: float) -> Sketch:
    """Several blunt clear cones in front of a body that flows on."""
    points = pts(".02 0, .055 .03, .075 .15, .13 .17, .235 .06, .27 .075, .255 .19, .23 .27, .33 .27")
    points += pts(".395 .285, .38 .335, .27 .4, .23 .55, .19 .74, .11 .91, .02 1, -.07 .93, -.17 .77")
    points += pts("-.22 .58, -.25 .44, -.37 .42, -.4 .375, -.35 .34, -.25 .32, -.25 .21, -.275 .095, -.24 .075")
    points += pts("-.14 .19, -.08 .16, -.025 .03")
    edge, pen_um = outline_of(points, n), pen_for(0.85 * n, n)

    def clear(p: Point) -> bool:
        return (p[0] / 0.21) ** 2 + ((p[1] - 0.60) / 0.37) ** 2 > 1

    inside = insides(edge, n, (0.02, 0.50, 0.07), (-0.02, 0.80, 0.065), clear, pen_um)
    rings = tuple(p for p in edge if p[1] < 0.42 * n)
    start = max(range(len(rings)), key=lambda k: hypot(rings[k][0] - rings[k - 1][0], rings[k][1] - rings[k - 1][1]))
    front = pen.line((*rings[start:], *rings[:start]), (1.2, 1.8, 1.2), "pseudopods")
    return Sketch((pen.contour(edge, 1.1, 2.0, "outline"), front, *inside), pen_um)
