"""Kin of the common ciliates: a bean with a shallow notch, a bean hunter, a slender walker, and one whose edge is not made out."""

from __future__ import annotations

from ... import geometry, pen
from ...frame import Sketch, pen_for
from ..cell_parts import vacuole
from ..points import pts
from .parts import food_balls, fringe, hair_lines, hair_rows, macro, skin, swelling


def smooth_bean(n: float) -> Sketch:
    """A bean with both ends evenly rounded and a shallow notch in the front third."""
    edge = skin(
        pts(
            ".02 0, .13 .03, .22 .14, .255 .32, .26 .55, .235 .78, .15 .95, .02 1, -.12 .95, -.21 .8, -.24 .62, -.225 .47, "
            "-.18 .38, -.165 .32, -.19 .25, -.2 .16, -.12 .04"
        ),
        n,
    )
    pen_um = pen_for(0.7 * n, 1.1 * n)
    rows = [[(x * 0.4, 0.05), (x * 0.9, 0.35), (x, 0.6), (x * 0.5, 0.94)] for x in (-0.1, 0.0, 0.1, 0.19)]
    return Sketch(
        (
            pen.contour(edge, 1.1, 2.0, "outline"),
            fringe(edge, n),
            hair_rows(rows, n),
            swelling(pts("-.165 .3, -.1 .29, -.075 .33, -.11 .37, -.17 .36"), n, (1.6, 1.2, 1.6), "mouth"),
            *macro(0.05, 0.52, 0.085, 0.085, n, pen_um),
            vacuole(0.02 * n, 0.80 * n, 0.05 * n),
            *food_balls(
                (
                    (-0.11, 0.55, 0.036),
                    (-0.08, 0.72, 0.04),
                    (0.15, 0.66, 0.036),
                    (0.1, 0.3, 0.034),
                    (-0.1, 0.86, 0.03),
                    (0.15, 0.84, 0.032),
                ),
                n,
                pen_um,
            ),
        ),
        pen_um,
    )


def big_mouth(n: float) -> Sketch:
    """A bean with a huge mouth sac in its front half and swallowed cells behind it."""
    edge = skin(
        pts(
            ".06 0, .2 .04, .31 .17, .35 .36, .36 .56, .3 .79, .17 .95, 0 1, -.17 .96, -.28 .84, -.31 .68, -.27 .54, -.24 .47, "
            "-.29 .36, -.3 .2, -.2 .06, -.06 .01"
        ),
        n,
    )
    pen_um = pen_for(0.88 * n, 1.1 * n)
    return Sketch(
        (
            pen.contour(edge, 1.1, 2.0, "outline"),
            fringe(edge, n),
            swelling(pts("-.27 .36, -.1 .13, .1 .1, .2 .22, .17 .39, .04 .5, -.12 .52, -.25 .47"), n, (1.8, 1.4, 1.8), "mouth"),
            hair_lines(
                [((-0.17 + 0.06 * k, 0.24 - 0.035 * k), (-0.15 + 0.06 * k, 0.34 - 0.03 * k)) for k in range(4)], n, (1.2, 0.6), "mouth"
            )[0],
            *macro(0.21, 0.60, 0.08, 0.08, n, pen_um),
            vacuole(-0.02 * n, 0.91 * n, 0.055 * n),
            *food_balls(((-0.12, 0.67, 0.105), (0.1, 0.76, 0.09), (-0.13, 0.86, 0.05)), n, pen_um, 0.9),
        ),
        pen_um,
    )


def slender_walker(n: float) -> Sketch:
    """A slender walker from the flat side it walks on: a short wreath in front, few bristles, fine ones along the edges."""
    half = pts(".05 .01, .1 .07, .12 .25, .125 .5, .115 .75, .075 .94")
    edge = skin([(0, 0), *half, (0, 1), *reversed(geometry.mirrored(half))], n)
    pen_um = pen_for(0.42 * n, 1.1 * n)
    wreath = [((0.02 + 0.011 * k, 0.012 + 0.03 * k), (0.075 + 0.013 * k, -0.01 + 0.031 * k)) for k in range(8)]
    cirri = [((x, y), (x - 0.02, y + 0.06)) for x, y in pts("-.04 .08, 0 .12, -.06 .16, -.02 .22, -.05 .3")]
    cirri += [((x, y), (x - 0.015, y + 0.09)) for x, y in pts("-.04 .86, -.01 .88, .02 .87, .05 .85")]
    sides = [((s * 0.118, 0.36 + 0.065 * k), (s * 0.155, 0.39 + 0.065 * k)) for s in (-1, 1) for k in range(8)]
    return Sketch(
        (
            pen.contour(edge, 1.2, 2.1, "outline"),
            *hair_lines(wreath, n, (1.6, 0.9), "wreath"),
            swelling(pts(".1 .27, .06 .28, .035 .22, .04 .06"), n, (1.0, 1.6, 0.8), "mouth"),
            *hair_lines(cirri, n, (2.0, 0.6), "cirri"),
            *hair_lines(sides, n, (1.4, 0.6), "cirri"),
            *macro(0.02, 0.45, 0.035, 0.06, n, pen_um),
            *macro(0.02, 0.63, 0.035, 0.06, n, pen_um),
            vacuole(-0.065 * n, 0.42 * n, 0.025 * n),
            *food_balls(((-0.05, 0.56, 0.022), (0.05, 0.75, 0.022)), n, pen_um),
        ),
        pen_um,
    )


def edge_unseen(n: float) -> Sketch:
    """A small oval whose edge shows neither hairs nor whips: a broken line."""
    half = pts(".13 .03, .24 .2, .28 .48, .24 .76, .12 .96")
    edge = skin([(0, 0), *half, (0, 1), *reversed(geometry.mirrored(half))], n)
    pen_um = pen_for(0.7 * n, 1.1 * n)
    walk = geometry.spaced((*edge, edge[0]), 0.02 * n)
    dashes = [tuple(walk[k : k + 5]) for k in range(0, len(walk) - 4, 8)]
    return Sketch((pen.strokes(dashes, 1.8, "outline"), *food_balls(((-0.06, 0.4, 0.05), (0.09, 0.6, 0.05)), n, pen_um)), pen_um)
