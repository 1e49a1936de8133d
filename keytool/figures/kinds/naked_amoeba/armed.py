"""Amoebae with many arms: spikes, rays, cones."""

from __future__ import annotations

from math import cos, hypot, pi, sin

from ... import geometry, pen
from ...frame import Sketch, pen_for
from ...shapes import Point, Shape
from ..cell_parts import clear_of, vacuole
from ..cell_parts import nucleus as draw_nucleus
from ..points import pts
from .parts import insides, outline_of


def proteus(n: float) -> Sketch:
    """The large amoeba of the schoolbooks: long blunt arms as thick as fingers, the grains flowing into each but not into its clear tip."""
    edge = outline_of(
        pts(
            "-.02 .05, .02 0, .08 .005, .11 .06, .10 .16, .115 .26, .19 .24, .26 .15, "
            ".32 .09, .385 .10, .40 .165, .34 .25, .25 .35, .235 .41, .31 .43, "
            ".42 .41, .47 .445, .46 .51, .38 .54, .26 .54, .215 .60, .24 .70, .29 .79, "
            ".275 .85, .215 .86, .165 .79, .12 .70, .08 .76, .075 .86, .04 .97, "
            "-.01 1, -.05 .95, -.06 .84, -.075 .72, -.15 .70, -.25 .75, -.33 .74, "
            "-.35 .68, -.30 .63, -.19 .58, -.15 .51, -.22 .47, -.33 .46, -.40 .41, "
            "-.385 .345, -.31 .34, -.19 .37, -.13 .33, -.17 .22, -.25 .12, -.24 .06, -.18 .05, -.10 .14, -.055 .20, -.03 .15"
        ),
        n,
    )
    pen_um = pen_for(0.9 * n, n)
    hollow = geometry.offset(edge, [0.022 * n] * len(edge), closed=True)
    tips = pts(".05 .02, .36 .13, .44 .475, .25 .83, -.01 .97, -.32 .70, -.37 .39, -.22 .09")
    nucleus, bubble = (0.04 * n, 0.47 * n, 0.052 * n), (-0.04 * n, 0.60 * n, 0.055 * n)
    free = clear_of(nucleus, bubble)

    def dense(p: Point) -> float:
        near = min(hypot(p[0] / n - x, p[1] / n - y) for x, y in tips)
        return 0.0 if near < 0.075 or not geometry.inside(hollow, p) else 1.7 * free(p)

    caps = [
        pen.line(run, (1.3, 2.4, 1.3), "pseudopods", inset=1.0)
        for x, y in tips
        for run in geometry.runs((*edge, edge[0]), lambda p, x=x, y=y: hypot(p[0] / n - x, p[1] / n - y) < 0.085)  # type: ignore[misc]
    ]
    ways = (
        "0 .40, .03 .25, .045 .12",
        ".10 .42, .22 .28, .32 .17",
        ".12 .48, .26 .48, .38 .475",
        ".10 .60, .17 .70, .22 .78",
        "-.08 .46, -.20 .42, -.31 .40",
    )
    flow = [pen.line(geometry.curve(geometry.scaled(pts(one), n), per=8), (0.3, 0.8, 0.3), "flow") for one in ways]
    return Sketch(
        (
            pen.contour(edge, 1.1, 2.0, "outline"),
            *caps,
            *pen.grain(edge, 2.5 * pen_um, "contents", dense, sizes=(0.9, 1.4)),
            *flow,
            *draw_nucleus(*nucleus),
            vacuole(*bubble),
        ),
        pen_um,
    )


def spikes(n: float) -> Sketch:
    """A flat body, grainy within a clear rim, broadest in front; out of it grow many thin thorns, broad at the foot, some forked."""
    half = pts(".14 .0, .30 .05, .385 .17, .40 .34, .345 .50, .30 .66, .22 .82, .13 .93")
    left = pts("-.11 .95, -.21 .84, -.27 .68, -.34 .54, -.39 .36, -.355 .18, -.27 .06, -.12 .0")
    edge, pen_um = outline_of([(0, 0.01), *half, (0.02, 1.0), *left], n), pen_for(1.15 * n, 1.2 * n)
    spikes: list[Shape] = []
    walk = geometry.spaced((*edge, edge[0]), 0.083 * n)[:-1]
    for k, ((x, y), (nx, ny)) in enumerate(zip(walk, geometry.normals(walk, closed=True), strict=True)):
        size = n * (0.095 + 0.085 * ((k * 0.618) % 1)) * (1.0 if y < 0.55 * n else 0.55)
        bend = 0.030 * n * sin(2.3 * k)
        tip = (x - nx * size - ny * bend, y - ny * size + nx * bend)
        mid = (x - nx * 0.45 * size, y - ny * 0.45 * size)
        spikes.append(pen.line(geometry.curve([(x + nx * 0.012 * n, y + ny * 0.012 * n), mid, tip], per=5), (4.2, 1.7, 0.5), "pseudopods"))
        if k % 4 == 1:
            fork = (x - nx * 0.92 * size + ny * 0.06 * n, y - ny * 0.92 * size - nx * 0.06 * n)
            spikes.append(pen.line((mid, fork), (1.6, 0.5), "pseudopods"))
    rim = [0.045 * n + 0.085 * n * max(0.0, 1 - y / (0.55 * n)) for _, y in edge]
    plasm = geometry.offset(edge, rim, closed=True)

    def clear(p: Point) -> bool:
        return not geometry.inside(plasm, (p[0] * n, p[1] * n))

    inside = insides(edge, n, (0.03, 0.42, 0.085), (-0.07, 0.70, 0.12), clear, pen_um)
    return Sketch((*spikes, pen.contour(edge, 1.0, 1.8, "outline"), *inside), pen_um)


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
