"""Amoebae with many arms: spikes, rays, cones, nets."""

from __future__ import annotations

from math import cos, hypot, pi, sin

from ... import geometry, pen
from ...frame import Sketch, pen_for
from ...shapes import Point, Shape
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


_ARMS = (
    (0.10, 0.50),
    (0.72, 0.43),
    (1.30, 0.50),
    (2.02, 0.44),
    (2.62, 0.50),
    (3.30, 0.42),
    (3.86, 0.49),
    (4.52, 0.50),
    (5.14, 0.43),
    (5.72, 0.48),
)
"""Where the outer branches of a net point (radians) and how far they reach."""
_HOLES = (
    *((0.40, 0.185, 0.085, 0.060), (1.42, 0.190, 0.075, 0.085), (2.45, 0.195, 0.088, 0.062), (3.40, 0.185, 0.062, 0.078)),
    *((4.35, 0.190, 0.085, 0.068), (5.40, 0.190, 0.070, 0.072), (0.0, 0.0, 0.070, 0.062)),
)
"""Where its holes lie: angle, distance from the middle, and half of each measure."""


def net(n: float) -> Sketch:
    """A thin sheet drawn out into strands that join again: a flat net of wide holes with long clear branches round it."""
    outer: list[Point] = []
    for k, (a, reach) in enumerate(_ARMS):
        following = _ARMS[(k + 1) % len(_ARMS)][0] + (2 * pi if k == len(_ARMS) - 1 else 0.0)
        bend = 0.10 * (-1) ** k
        for turn, r in ((-0.16, 0.33), (bend - 0.05, 0.93 * reach), (bend + 0.02, reach), (bend + 0.08, 0.93 * reach), (0.16, 0.33)):
            outer.append((r * cos(a + turn), 0.5 + r * sin(a + turn)))
        middle = (a + following) / 2
        outer.append((0.275 * cos(middle), 0.5 + 0.275 * sin(middle)))
    edge, pen_um = outline_of(outer, n), pen_for(n, n)
    holes = [
        pen.wobble(geometry.ellipse(d * cos(a) * n, (0.5 + d * sin(a)) * n, rx * n, ry * n, count=72), 0.012 * n, 2, k)
        for k, (a, d, rx, ry) in enumerate(_HOLES)
    ]

    def dense(p: Point) -> float:
        near = hypot(p[0], p[1] - 0.5 * n) < 0.31 * n
        return 0.8 if near and not any(geometry.inside(h, p) for h in holes) else 0.0

    rims: list[Shape] = [pen.stroke(h, 1.2, "pseudopods", closed=True) for h in holes]
    spots = ((0.92, 0.135), (1.95, 0.115), (2.92, 0.13), (3.86, 0.12), (4.88, 0.125), (6.05, 0.125))
    nuclei = [pen.ring(r * cos(a) * n, (0.5 + r * sin(a)) * n, 0.013 * n, 0.9, "nucleus") for a, r in spots]
    grain = pen.grain(geometry.offset(edge, [0.008 * n] * len(edge), closed=True), 2.6 * pen_um, "contents", dense)
    return Sketch((pen.contour(edge, 1.0, 1.8, "outline"), *rims, *nuclei, *grain), pen_um)
