"""Flagellates of the euglenid kind, and the notched ones."""

from __future__ import annotations

from ... import geometry, pen
from ...shapes import Shape
from ..cell_parts import vacuole
from ..points import pts
from .parts import Drawn, body, even, grain, nucleus, plastid, wave, whip


def stiff_ahead(n: float) -> Drawn:
    """A long soft sac; one thick flagellum straight ahead of which only the tip flickers."""
    edge = body(
        pts(".02 0, .07 .03, .12 .16, .165 .38, .19 .6, .19 .8, .13 .95, 0 1, -.13 .94, -.17 .78, -.15 .56, -.12 .34, -.085 .14, -.03 .02"),
        n,
    )
    thick = geometry.scaled([(0.0, 0.02), (0.005, -0.62)], n)
    rod = [
        pen.line(geometry.scaled([(0.035, 0.05), (0.04, 0.22)], n), (1.2, 1.0), "feeding-rod"),
        pen.line(geometry.scaled([(0.06, 0.06), (0.058, 0.22)], n), (1.2, 1.0), "feeding-rod"),
    ]
    starch = [
        pen.ring(x * n, y * n, 0.022 * n, 0.7, "contents", ry=0.032 * n)
        for x, y in pts("-.07 .5, .1 .66, -.03 .86, .05 .8, -.1 .72, .09 .44")
    ]
    return (
        [
            pen.contour(edge, 1.1, 2.1, "outline"),
            pen.line(thick, (2.6, 1.7), "flagella"),
            wave((0.005, -0.62), (0.0, -0.92), n, 0.16, 1.0, (1.7, 0.8)),
            *rod,
            *nucleus(-0.01, 0.60, 0.075, n),
            vacuole(-0.02 * n, 0.16 * n, 0.05 * n),
            *starch,
            *grain(edge, n, 0.04, (-0.01, 0.60, 0.08), (-0.02, 0.16, 0.055)),
        ],
        0.5,
        2.0,
    )


def leaf(n: float) -> Drawn:
    """A stiff flat leaf with keels; one flagellum straight ahead."""
    edge = body(even(pts(".1 .03, .26 .22, .335 .48, .3 .74, .17 .94")), n)
    keels = [
        geometry.curve(geometry.scaled([(x * 0.35, 0.08), (x, 0.34), (x * 1.1, 0.62), (x * 0.5, 0.93)], n), per=8)
        for x in (-0.15, 0.0, 0.15)
    ]
    return (
        [
            pen.contour(edge, 1.4, 2.4, "outline"),
            pen.strokes(keels, 0.8, "ridges"),
            pen.line(geometry.scaled([(0.0, 0.02), (0.0, -0.62)], n), (2.0, 1.4), "flagella"),
            wave((0.0, -0.62), (0.03, -0.95), n, 0.14, 1.0, (1.4, 0.8)),
            *nucleus(-0.07, 0.58, 0.08, n),
            *grain(edge, n, 0.06, (-0.07, 0.58, 0.09)),
        ],
        0.8,
        2.1,
    )


def sweeps(n: float) -> Drawn:
    """A stiff grooved oval with a rod-like feeding tube; one flagellum sweeps in front, a thicker one drags behind."""
    edge = body(even(pts(".12 .015, .25 .14, .31 .4, .29 .7, .18 .93")), n)
    grooves = [
        geometry.curve(geometry.scaled([(x * 0.4, 0.07), (x, 0.36), (x, 0.64), (x * 0.45, 0.94)], n), per=8)
        for x in (-0.23, -0.14, 0.15, 0.24)
    ]
    tube = [pen.line(geometry.scaled([(x, 0.05), (x * 0.7, 0.88)], n), (1.3, 1.0), "feeding-rod") for x in (-0.028, 0.028)]
    return (
        [
            pen.contour(edge, 1.4, 2.4, "outline"),
            pen.strokes(grooves, 0.6, "ridges"),
            *tube,
            whip([(-0.02, 0.02), (-0.06, -0.30), (-0.26, -0.58), (-0.52, -0.60)], n, (1.3, 0.8)),
            whip(pts("-.04 .03, -.32 .1, -.4 .45, -.36 .9, -.16 1.2, .16 1.32, .46 1.24"), n, (2.4, 1.8, 1.2)),
            *nucleus(0.13, 0.55, 0.07, n),
        ],
        1.0,
        1.95,
    )


def spindle(n: float) -> Drawn:
    """A long green spindle: many plastids, a red spot in front, one flagellum."""
    edge = body(
        pts(
            "0 0, .065 .035, .11 .18, .13 .4, .12 .62, .08 .82, .025 .94, 0 1, -.025 .93, -.085 .8, -.125 .6, -.13 .38, -.11 .17, -.065 .04"
        ),
        n,
    )
    out: list[Shape] = [pen.contour(edge, 1.2, 2.1, "outline"), wave((-0.01, 0.03), (0.03, -0.62), n, 0.13, 1.4)]
    spots = pts("-.055 .2, .06 .25, -.065 .34, 0 .3, .075 .38, -.07 .47, .08 .58, -.065 .62, 0 .68, .055 .71, -.04 .76, .02 .83")
    for k, (x, y) in enumerate(spots):
        out += plastid(geometry.ellipse(x * n, y * n, 0.045 * n, 0.034 * n, turn=0.6 * (k % 3 - 1), count=28), 0.7 * n)
    return (
        [
            *out,
            pen.disc(0.045 * n, 0.095 * n, 0.022 * n, "eyespot"),
            *nucleus(0.0, 0.50, 0.055, n),
            vacuole(-0.02 * n, 0.09 * n, 0.03 * n),
        ],
        0.4,
        1.7,
    )


def notched(n: float) -> Drawn:
    """A lopsided oval cut off slantwise in front, a notch there, two nearly equal flagella out of it."""
    edge = body(
        pts(
            ".2 0, .27 .06, .29 .26, .27 .54, .19 .82, .05 1, -.08 .93, -.19 .74, -.25 .48, -.25 .27, -.22 .15, -.13 .115, "
            "-.05 .165, .01 .12, .1 .03"
        ),
        n,
    )
    gullet = geometry.curve(geometry.scaled([(-0.05, 0.165), (0.01, 0.30), (0.0, 0.46)], n), per=8)
    pearls = [pen.disc((0.035 + 0.01 * (k % 2)) * n, (0.30 + 0.05 * k) * n, 0.014 * n, "contents") for k in range(5)]
    plate = geometry.curve(geometry.scaled(pts(".21 .14, .23 .4, .15 .74, .05 .86, .1 .6, .14 .34"), n), closed=True, per=8)
    return (
        [
            pen.contour(edge, 1.2, 2.2, "outline"),
            pen.line(gullet, (1.4, 0.8), "mouth"),
            *pearls,
            *plastid(plate, n),
            whip([(-0.06, 0.15), (-0.16, -0.06), (-0.16, -0.36), (-0.30, -0.58)], n),
            whip([(-0.04, 0.16), (-0.05, -0.08), (0.02, -0.34), (-0.06, -0.62)], n),
            *nucleus(-0.04, 0.76, 0.075, n),
        ],
        0.8,
        1.8,
    )
