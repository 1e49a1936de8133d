"""Springtails of other builds, from the side: the globe, and the long white one of the deep soil."""

from __future__ import annotations

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Points, Shape
from . import tube
from .limbs import leg
from .points import pts


def _wide(points: Points, n: float) -> Points:
    """The closed edge, exactly `n` wide, its left end at x = 0."""
    ring = geometry.curve(points, closed=True, per=8)
    box = geometry.around(ring)
    by = n / box.width
    return geometry.clockwise(tuple(((x - box.x) * by, y * by) for x, y in ring))


def globe(n: float) -> Sketch:
    """A round body as high as long in which no rings can be made out, a head hung in front, bent feelers, a spring."""
    edge = _wide(
        pts(
            ".0 -.06, .07 -.17, .18 -.2, .26 -.2, .34 -.38, .52 -.5, .74 -.47, .92 -.3, "
            "1 -.06, .93 .12, .76 .2, .55 .2, .36 .13, .26 .09, .1 .1"
        ),
        n,
    )
    neck = geometry.curve(geometry.scaled(pts(".265 -.19, .255 -.1, .265 -.01, .3 .09"), n), per=8)
    pen_um = pen_for(1.25 * n, 1.0 * n)
    out: list[Shape] = []
    for x in (0.34, 0.46, 0.58):
        out += leg(list(geometry.scaled([(x, 0.13), (x - 0.03, 0.22), (x - 0.07, 0.31), (x - 0.08, 0.41)], n)), 0.05 * n, edge, "legs")
    feeler = list(geometry.scaled([(0.10, -0.15), (0.03, -0.30), (-0.10, -0.36), (-0.24, -0.30)], n))
    out += leg(feeler, 0.04 * n, edge, "feelers")
    spring = geometry.curve(geometry.scaled(pts(".76 .18, .72 .28, .84 .34, 1 .38, 1.1 .35"), n), per=8)
    ring = tube.ring(spring, lambda t: 0.02 * n * (1 - 0.85 * t))
    out += [pen.line(run, (1.2, 1.4), "spring") for run in geometry.runs((*ring, ring[0]), lambda p: not geometry.inside(edge, p))]
    bump = geometry.curve(geometry.scaled(pts(".86 -.38, .97 -.3, 1 -.2"), n), per=8)
    shade = pen.grain(
        geometry.offset(edge, [0.04 * n] * len(edge), closed=True),
        3.2 * pen_um,
        "shade",
        lambda p: max(0.0, (p[0] + 1.4 * p[1] - 0.2 * n) / n),
    )
    return Sketch(
        (
            *out,
            pen.contour(edge, 1.3, 2.5, "outline"),
            pen.line(neck, (1.0, 1.5, 1.0), "outline"),
            pen.line(bump, (0.5, 0.9, 0.5), "fold"),
            pen.disc(0.11 * n, -0.075 * n, 0.026 * n, "eyes"),
            *shade,
        ),
        pen_um,
    )


def long_white(n: float) -> Sketch:
    """A long white body, short legs, feelers no longer than the head, neither eyes nor a spring to be seen."""
    edge = _wide(
        pts(
            ".14 -.06, .22 -.085, .4 -.1, .6 -.11, .8 -.1, .94 -.065, 1 -.01, .95 .035, .8 .06, "
            ".6 .07, .4 .065, .22 .05, .14 .035, .05 .035, .0 -.005, .03 -.05, .1 -.065"
        ),
        n,
    )
    pen_um = pen_for(1.1 * n, 0.4 * n)
    bars = [
        geometry.curve(geometry.scaled([(x, top), (x + 0.014, -0.02), (x - 0.004, low)], n), per=6)
        for x, top, low in (
            (0.145, -0.062, 0.036),
            (0.23, -0.086, 0.052),
            (0.34, -0.095, 0.062),
            (0.45, -0.104, 0.068),
            (0.56, -0.109, 0.071),
            (0.67, -0.109, 0.068),
            (0.78, -0.102, 0.062),
            (0.88, -0.085, 0.05),
        )
    ]
    out: list[Shape] = []
    for x in (0.20, 0.30, 0.40):
        out += leg(list(geometry.scaled([(x, 0.045), (x - 0.01, 0.075), (x - 0.025, 0.105), (x - 0.03, 0.14)], n)), 0.030 * n, edge, "legs")
    out += leg(list(geometry.scaled([(0.035, -0.045), (0.0, -0.075), (-0.035, -0.085), (-0.07, -0.075)], n)), 0.030 * n, edge, "feelers")
    return Sketch((*out, pen.contour(edge, 1.1, 2.0, "outline"), pen.strokes(bars, 0.7, "segments")), pen_um)
