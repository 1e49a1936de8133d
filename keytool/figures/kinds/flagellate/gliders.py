"""Flagellates that glide on a trailing flagellum or sit and rock."""

from __future__ import annotations

from dataclasses import replace
from math import cos, pi, sin

from ... import geometry, pen
from ..cell_parts import vacuole
from ..points import pts
from .parts import Drawn, body, even, grain, nucleus, wave, whip


def bean(n: float) -> Drawn:
    """A bean with a beak; both flagella leave below it, a short curled one in front and a long one trailing."""
    edge = body(
        pts("-.16 .02, -.06 0, .12 .05, .24 .24, .27 .52, .2 .8, .05 .98, -.12 .94, -.21 .74, -.2 .5, -.14 .34, -.15 .22, -.21 .1"), n
    )
    return (
        [
            pen.contour(edge, 1.2, 2.2, "outline"),
            whip(pts("-.15 .26, -.32 .16, -.42 -.06, -.34 -.28, -.2 -.3, -.17 -.18"), n, (1.4, 0.9)),
            whip(pts("-.15 .28, -.31 .5, -.36 .86, -.2 1.2, .1 1.36, .42 1.28, .66 1.4, .92 1.34"), n),
            *nucleus(0.06, 0.36, 0.10, n),
            vacuole(0.06 * n, 0.12 * n, 0.055 * n),
            *grain(edge, n, 0.055, (0.06, 0.36, 0.10), (0.06, 0.12, 0.06)),
        ],
        1.35,
        1.8,
    )


def roundish(n: float) -> Drawn:
    """Roundish and slightly flat; a flickering flagellum in front, a longer one trailing, the bubble at the rear."""
    edge = body(pts("-.1 .02, .08 0, .28 .1, .36 .34, .36 .62, .25 .88, .05 1, -.16 .95, -.32 .76, -.36 .48, -.27 .16"), n)
    return (
        [
            pen.contour(edge, 1.2, 2.2, "outline"),
            wave((-0.05, 0.03), (-0.24, -0.72), n, 0.12, 1.3),
            whip(pts("-.1 .03, -.4 .16, -.5 .5, -.44 .94, -.2 1.22, .14 1.28, .4 1.42"), n),
            *nucleus(0.08, 0.32, 0.12, n),
            vacuole(-0.02 * n, 0.82 * n, 0.10 * n),
            *grain(edge, n, 0.06, (0.08, 0.32, 0.12), (-0.02, 0.82, 0.10)),
        ],
        1.0,
        2.2,
    )


def sausage(n: float) -> Drawn:
    """A little sausage; one flagellum shows, trailing along the glass."""
    edge = body(even(pts(".13 .02, .205 .11, .215 .3, .205 .55, .2 .8, .12 .97")), n)
    return (
        [
            pen.contour(edge, 1.2, 2.2, "outline"),
            whip(pts("-.08 .04, -.27 .16, -.3 .5, -.27 .95, -.12 1.22, .16 1.34, .44 1.26"), n),
            *nucleus(0.03, 0.28, 0.085, n),
            vacuole(0.0, 0.85 * n, 0.07 * n),
            *grain(edge, n, 0.05, (0.03, 0.28, 0.09), (0, 0.85, 0.075)),
        ],
        0.85,
        1.4,
    )


def drawn_out(n: float) -> Drawn:
    """Soft and drawn out behind; one flagellum ahead, one along the belly and out behind; strings and short arms at the rear."""
    edge = body(
        pts(
            "0 0, .09 .04, .16 .15, .2 .31, .17 .46, .1 .6, .055 .74, .03 .88, .01 1, -.02 .87, "
            "-.04 .75, -.07 .67, -.14 .70, -.17 .655, -.12 .59, -.165 .47, -.19 .32, -.155 .14, -.085 .04"
        ),
        n,
    )
    return (
        [
            pen.contour(edge, 1.1, 2.1, "outline"),
            wave((0.0, 0.01), (-0.10, -0.52), n, 0.12, 1.0),
            replace(whip(pts("0 .02, -.10 .18, -.11 .4, -.05 .65, -.005 .86, .01 1"), n, (0.7,)), role="faint"),
            whip(pts(".01 1, .06 1.16, .0 1.34, .08 1.5"), n),
            whip([(-0.02, 0.93), (-0.10, 1.02), (-0.12, 1.12)], n, (0.7, 0.4)),
            *nucleus(0.03, 0.14, 0.06, n),
            vacuole(0.06 * n, 0.47 * n, 0.045 * n),
            *grain(edge, n, 0.038, (0.03, 0.14, 0.065), (0.06, 0.47, 0.05)),
        ],
        0.55,
        2.05,
    )


def ball(n: float) -> Drawn:
    """A clear ball: one long flagellum and a stub beside it, food as bubbles inside."""
    edge = body([(0.5 * cos(a) * 0.96, 0.5 * sin(a)) for a in (2 * pi * k / 20 for k in range(20))], n)
    food = [pen.ring(x * n, y * n, r * n, 0.9, "food") for x, y, r in ((-0.17, 0.70, 0.12), (0.14, 0.76, 0.09), (0.26, 0.52, 0.07))]
    return (
        [
            pen.contour(edge, 1.1, 2.1, "outline"),
            wave((-0.04, 0.0), (-0.80, -1.45), n, 0.09, 2.2),
            whip([(0.05, 0.0), (0.12, -0.12), (0.20, -0.16)], n, (1.4, 0.9)),
            *nucleus(0.0, 0.30, 0.13, n),
            *food,
            *grain(edge, n, 0.07, (0, 0.30, 0.14), (-0.17, 0.70, 0.13), (0.14, 0.76, 0.10), (0.26, 0.52, 0.08)),
        ],
        1.4,
        2.4,
    )


def snout(n: float) -> Drawn:
    """A tiny glider: a finger-like snout waves in front, one flagellum trails."""
    edge = body(
        pts("-.3 .03, -.24 0, -.16 .06, -.07 .17, .1 .2, .26 .36, .31 .62, .22 .88, .04 1, -.15 .93, -.24 .7, -.23 .46, -.19 .3, -.26 .16"),
        n,
    )
    return (
        [
            pen.contour(edge, 1.2, 2.2, "outline"),
            whip(pts("-.19 .28, -.33 .52, -.34 .95, -.18 1.22, .12 1.32, .42 1.24"), n),
            pen.line(geometry.curve(geometry.scaled(pts("-.22 .22, -.3 .1, -.295 .02, -.235 0, -.15 .08"), n), per=6), (1.6, 2.0), "snout"),
            *nucleus(0.08, 0.46, 0.10, n),
            *grain(edge, n, 0.06, (0.08, 0.46, 0.11)),
        ],
        0.85,
        1.4,
    )


def collar(n: float) -> Drawn:
    """A drop-shaped cell with one flagellum out of a thin collar that bright field mostly does not show."""
    edge = body(even(pts(".14 .02, .27 .16, .345 .42, .32 .68, .18 .92")), n)
    side = geometry.curve(geometry.scaled([(0.13, 0.03), (0.15, -0.22), (0.24, -0.56)], n), per=8)
    rays = [tuple((x * (0.32 * k - 0.96), y) for x, y in side) for k in range(7)]
    return (
        [
            pen.contour(edge, 1.1, 2.1, "outline"),
            pen.strokes(rays, 0.5, "collar", role="faint"),
            *(pen.line(s, (1.0, 0.7), "collar") for s in (side, geometry.mirrored(side))),
            wave((0.0, 0.0), (-0.42, -1.30), n, 0.06, 2.0),
            *nucleus(0, 0.36, 0.12, n),
            *grain(edge, n, 0.06, (0, 0.36, 0.13)),
        ],
        0.8,
        2.8,
    )
