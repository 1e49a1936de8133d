"""Grains that let little or no light through: the rounded nodule, the hard-edged black piece, the grain of ore, the matt rusty grain."""

from __future__ import annotations

from math import cos, hypot, pi, sin, sqrt
from random import Random

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points
from .dots import fitted
from .points import cornered, pts, rough


def nodule(n: float) -> Sketch:
    """A rounded body that lets no light through, a rough rim, one dull gleam."""
    ring = fitted(list(pen.wobble(geometry.ellipse(0, 0, 0.5 * n, 0.46 * n, count=160), 0.014 * n, 7, "nodule")), n)
    gleam = geometry.curve(geometry.scaled([(-0.27, -0.20), (-0.16, -0.29), (-0.03, -0.32), (-0.15, -0.265)], n), closed=True, per=8)
    return Sketch((pen.holed(ring, [gleam], "outline"),), pen_for(n, n), tonal=True)


def black_chip(n: float) -> Sketch:
    """A black piece with broken, uneven edges: no pores, no cells; where it is thinnest a little brown light comes through."""
    whole = cornered(
        "-.42 -.16, -.34 -.30, -.22 -.40; .06 -.44, .14 -.38, .28 -.33; .46 -.22; .40 .06, .43 .18, .47 .28; .20 .42, .08 .36, -.04 .38; "
        "-.30 .44; -.46 .16, -.40 .04"
    )
    ring = geometry.clockwise(fitted(rough(whole, 0.030, 0.010, "black chip"), n))
    thin = [min(0.055, 0.10 * max(0.0, x / n + y / n - 0.22) + 0.08 * max(0.0, -x / n - 0.2 - 0.3 * y / n)) * n for x, y in ring]
    core = geometry.offset(ring, [0.006 * n + t for t in thin], closed=True)
    steps = [geometry.scaled(pts(one), 0.97 * n) for one in ("-.34 -.22, -.20 -.31, .10 -.38", "-.06 -.30, .04 -.16, .02 .02")]
    glints = [_sliver(geometry.curve(one, per=8), 0.011 * n) for one in steps]
    return Sketch(
        (
            pen.filled(ring, "edge", role="brown"),
            pen.holed(core, glints, "outline"),
            pen.stroke(ring, 0.7, "outline", closed=True),
        ),
        pen_for(n, n),
        tonal=True,
    )


def _sliver(line: Points, wide: float) -> Points:
    """A thin lens about a line, pointed at both ends."""
    last = len(line) - 1
    half = [wide * (1 - (2 * k / last - 1) ** 2) for k in range(len(line))]
    return (*geometry.offset(line, half), *reversed(geometry.offset(line, [-h for h in half])))


def ore(n: float) -> Sketch:
    """A compact black grain with blunt corners: two faces throw the torch back in streaks, the rest stays black."""
    ring, faces = (
        geometry.clockwise(
            fitted(cornered("-.20 -.44, .06 -.48; .34 -.36; .47 .02, .42 .20; .20 .44; -.16 .47, -.34 .36; -.47 .0, -.42 -.18", 6), n)
        ),
        [
            geometry.scaled(pts(one), n)
            for one in ("-.30 -.18, -.06 -.36, .20 -.30, .06 -.06, -.18 .02", ".14 -.02, .26 -.22, .36 .02, .28 .22")
        ],
    )
    streaks: list[Points] = []
    for face, lean in zip(faces, (0.45, -1.05), strict=True):
        for k in range(-22, 23):
            x, y = -0.026 * k * n * sin(lean), 0.026 * k * n * cos(lean)
            far = (0.9 * n * cos(lean), 0.9 * n * sin(lean))
            ray = [(x + t * far[0], y + t * far[1]) for t in (j / 40 - 0.5 for j in range(41))]
            streaks += geometry.runs(ray, lambda p, face=face: geometry.inside(face, p))  # type: ignore[misc]
    return Sketch((pen.holed(ring, faces, "outline"), pen.strokes(streaks, 0.8, "gleam")), pen_for(n, n), tonal=True)


def rusty(n: float) -> Sketch:
    """A crust of small knobs, rust-red right through and darkest where it is thick: no gleam, no straight edge."""
    chance = Random("rust")
    knobs = [(0.0, 0.0, 0.30)]
    for k in range(15):
        a = 2.39996 * k
        knobs.append((0.33 * cos(a) * chance.uniform(0.75, 1.0), 0.28 * sin(a) * chance.uniform(0.75, 1.0), chance.uniform(0.09, 0.15)))
    edge = tuple(_reach(knobs, 2 * pi * k / 240) for k in range(240))
    ring = geometry.clockwise(fitted(rough(edge, 0.02, 0.005, "rust"), n))
    by = geometry.around(ring).width / geometry.around(edge).width
    arcs = [geometry.arc(x * by, y * by, 0.85 * r * by, 0.05 * pi, 0.75 * pi, count=12) for x, y, r in knobs[1:] if hypot(x, y) > 0.10]

    def thick(p: Point) -> float:
        return 0.95 - 1.3 * hypot(p[0], 1.1 * p[1]) / n

    return Sketch(
        (
            pen.filled(ring, "tint", role="rust"),
            pen.contour(ring, 1.1, 2.4, "outline"),
            *(pen.line(one, (0.3, 1.3, 0.3), "crust") for one in arcs),
            *pen.grain(ring, 0.024 * n, "crust", thick, sizes=(1.4, 2.4)),
        ),
        pen_for(n, n),
        tonal=True,
    )


def _reach(knobs: list[tuple[float, float, float]], a: float) -> Point:
    """Where the outermost knob ends in that direction."""
    c, s = cos(a), sin(a)
    far = 0.0
    for x, y, r in knobs:
        along, off = x * c + y * s, x * s - y * c
        if abs(off) < r:
            far = max(far, along + sqrt(r * r - off * off))
    return (far * c, far * s)
