"""Grains that let little or no light through: the rounded nodule, the hard-edged black piece, the grain of ore, the matt rusty grain."""

from __future__ import annotations

from math import hypot

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points
from .dots import fitted
from .points import pts


def nodule(n: float) -> Sketch:
    """A rounded body that lets no light through, a rough rim, one dull gleam."""
    ring = fitted(list(pen.wobble(geometry.ellipse(0, 0, 0.5 * n, 0.46 * n, count=160), 0.014 * n, 7, "nodule")), n)
    gleam = geometry.curve(geometry.scaled([(-0.27, -0.20), (-0.16, -0.29), (-0.03, -0.32), (-0.15, -0.265)], n), closed=True, per=8)
    return Sketch((pen.holed(ring, [gleam], "outline"),), pen_for(n, n), tonal=True)


def black_chip(n: float) -> Sketch:
    """A black piece with straight broken edges and sharp corners, no pores, a glint on two faces."""
    ring = fitted(pts("-.42 -.2, -.24 -.42, .1 -.46, .3 -.3, .46 -.24, .4 .06, .47 .28, .16 .42, -.06 .36, -.3 .45, -.46 .16"), n)
    glints = [
        geometry.scaled(pts(one), n) for one in ("-.28 -.22, -.16 -.33, .08 -.36, .02 -.32, -.14 -.29", ".22 .02, .33 .16, .3 .24, .26 .14")
    ]
    return Sketch((pen.holed(ring, glints, "outline"),), pen_for(n, n), tonal=True)


def ore(n: float) -> Sketch:
    """A compact black grain with a few flat faces, one of which throws the light back."""
    ring = fitted(pts("-.14 -.48, .2 -.44, .45 -.12, .4 .26, .12 .47, -.26 .4, -.47 .1, -.4 -.26"), n)
    face = geometry.scaled(pts("-.22 -.28, .1 -.33, .2 -.08, -.04 .08, -.3 -.04"), n)
    ridges = [((0.245 * n, -0.09 * n), (0.39 * n, 0.22 * n)), ((-0.04 * n, 0.12 * n), (0.10 * n, 0.42 * n))]
    slits = [_slit(a, b, 0.008 * n) for a, b in ridges]
    return Sketch(
        (pen.holed(ring, [face, *slits], "outline"), *pen.grain(face, 0.05 * n, "gleam", lambda p: 0.5)), pen_for(n, n), tonal=True
    )


def _slit(a: Point, b: Point, wide: float) -> Points:
    """A thin light line along a ridge, pointed at both ends."""
    (x1, y1), (x2, y2) = a, b
    size = hypot(x2 - x1, y2 - y1)
    dx, dy = -(y2 - y1) / size * wide, (x2 - x1) / size * wide
    mx, my = (x1 + x2) / 2, (y1 + y2) / 2
    return (a, (mx + dx, my + dy), b, (mx - dx, my - dy))


def rusty(n: float) -> Sketch:
    """A rounded, crusted grain, brown and matt: no gleam, light comes through its thin rim only."""
    base = geometry.ellipse(0, 0, 0.5 * n, 0.45 * n, count=180)
    ring = geometry.clockwise(fitted(list(pen.wobble(pen.wobble(base, 0.022 * n, 5, "rust"), 0.012 * n, 17, "crust")), n))
    core = geometry.offset(ring, [0.09 * n] * len(ring), closed=True)
    return Sketch(
        (
            pen.filled(ring, "tint", role="faint"),
            pen.contour(ring, 1.2, 2.4, "outline"),
            *pen.grain(core, 0.030 * n, "crust", lambda p: 0.75, sizes=(1.4, 2.4)),
        ),
        pen_for(n, n),
        tonal=True,
    )
