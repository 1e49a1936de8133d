"""Flat and long-necked ciliates: flask, neck, ear, leaf."""

from __future__ import annotations

from ... import geometry, pen
from ...frame import Sketch, pen_for
from ..cell_parts import vacuole
from ..points import pts
from .parts import food_balls, fringe, hair_lines, hair_rows, macro, skin, swelling


def flask(n: float) -> Sketch:
    """A flask or knife, a slanted mouth ridge right across the front."""
    edge = skin(
        pts(
            "-.1 0, -.03 .015, .035 .07, .055 .13, .05 .22, .075 .36, .115 .54, .12 .72, .085 .9, 0 1, -.075 .92, -.115 .74, "
            "-.115 .56, -.09 .38, -.09 .24, -.115 .11, -.125 .03"
        ),
        n,
    )
    pen_um = pen_for(0.40 * n, 1.05 * n)
    return Sketch(
        (
            pen.contour(edge, 1.1, 2.0, "outline"),
            fringe(edge, n, 0.035, 0.018),
            swelling([(-0.115, 0.005), (-0.04, 0.018), (0.03, 0.068), (0.055, 0.12)], n, (2.8, 3.4, 2.4), "mouth"),
            pen.strokes(
                [geometry.scaled(((-0.085 + 0.03 * k, 0.03 + 0.017 * k), (-0.075 + 0.022 * k, 0.10 + 0.017 * k)), n) for k in range(5)],
                0.6,
                "mouth",
            ),
            swelling(pts("-.02 .36, .03 .44, -.03 .52, .03 .6, -.03 .68, .02 .76"), n, (3.4, 3.4), "nucleus"),
            vacuole(0.0, 0.93 * n, 0.045 * n),
            hair_rows([[(-0.05, 0.14), (-0.06, 0.50), (-0.03, 0.92)], [(0.0, 0.15), (0.06, 0.50), (0.04, 0.88)]], n),
        ),
        pen_um,
    )


def long_neck(n: float) -> Sketch:
    """A flat flask with a long swaying neck; the mouth is a slit along the edge of the neck; two nuclei."""
    edge = skin(
        pts(
            "-.1 0, -.06 .05, -.01 .18, .03 .32, .1 .46, .155 .6, .15 .74, .085 .88, 0 1, -.06 .91, -.115 .76, -.12 .62, "
            "-.09 .46, -.075 .32, -.1 .18, -.125 .06"
        ),
        n,
    )
    pen_um = pen_for(0.42 * n, 1.05 * n)
    left = [(-0.125, 0.05), (-0.10, 0.18), (-0.075, 0.32), (-0.09, 0.45)]
    mane = [((x, y), (x - 0.05, y + 0.012)) for x, y in (geometry.walked(left, k / 14) for k in range(15))]
    return Sketch(
        (
            pen.contour(edge, 1.1, 2.0, "outline"),
            swelling(left, n, (2.6, 2.6, 1.2), "mouth"),
            *hair_lines(mane, n, (1.0, 0.6), "cilia"),
            fringe(edge, n, 0.026, 0.02, lambda p: p[0] > 0.0 or p[1] > 0.5),
            *macro(0.02, 0.585, 0.05, 0.05, n, pen_um),
            *macro(0.03, 0.72, 0.05, 0.05, n, pen_um),
            vacuole(0.0, 0.90 * n, 0.036 * n),
            hair_rows(
                [[(-0.06, 0.08), (-0.03, 0.30), (0.06, 0.56), (0.05, 0.86)], [(-0.085, 0.10), (-0.05, 0.34), (-0.05, 0.60), (-0.02, 0.90)]],
                n,
            ),
        ),
        pen_um,
    )


def ear(n: float) -> Sketch:
    """A flat ear with a small beak at the front left, its hairs only beneath, a mouth like a basket."""
    edge = skin(
        pts(
            "-.24 .05, -.16 0, -.02 .005, .15 .06, .28 .2, .335 .42, .3 .68, .18 .9, .02 1, -.12 .94, -.22 .76, -.25 .54, "
            "-.23 .34, -.24 .2, -.3 .12"
        ),
        n,
    )
    pen_um = pen_for(0.8 * n, 1.05 * n)
    rows = [
        pts("-.2 .1, .02 .1, .17 .3, .18 .62, .08 .9"),
        pts("-.18 .16, -.02 .18, .08 .36, .09 .64, .02 .9"),
        [(-0.17, 0.22), (-0.16, 0.50), (-0.10, 0.86)],
    ]
    hairs = []
    for row in rows:
        path = geometry.curve(row, per=8)
        hairs += [(p, (p[0] + 0.012, p[1] + 0.035)) for p in (geometry.walked(path, k / 15) for k in range(16))]
    basket = [((x - 0.075, 0.27), (0.45 * x - 0.045, 0.43)) for x in (-0.045, -0.027, -0.009, 0.009, 0.027, 0.045)]
    return Sketch(
        (
            pen.contour(edge, 1.1, 2.1, "outline"),
            pen.strokes([geometry.scaled(h, n) for h in hairs], 0.6, "cilia"),
            pen.strokes([geometry.scaled(b, n) for b in basket], 1.1, "mouth"),
            pen.ring(-0.075 * n, 0.265 * n, 0.05 * n, 1.1, "mouth", ry=0.022 * n),
            *macro(0.0, 0.62, 0.105, 0.115, n, pen_um),
            vacuole(0.20 * n, 0.40 * n, 0.045 * n),
            vacuole(-0.13 * n, 0.72 * n, 0.045 * n),
            swelling([(-0.27, 0.13), (-0.25, 0.06), (-0.19, 0.012)], n, (1.4, 2.6, 1.6), "beak"),
        ),
        pen_um,
    )


def flat_leaf(n: float) -> Sketch:
    """A flat leaf with hairs on both sides all round and no beak."""
    edge = skin(pts("-.06 0, .06 .015, .18 .13, .245 .34, .24 .6, .15 .86, 0 1, -.11 .92, -.175 .72, -.19 .46, -.18 .22, -.14 .06"), n)
    pen_um = pen_for(0.62 * n, 1.1 * n)
    return Sketch(
        (
            pen.contour(edge, 1.1, 2.0, "outline"),
            fringe(edge, n, 0.05, 0.026),
            hair_rows([[(x * 0.3 - 0.04, 0.06), (x, 0.36), (x, 0.62), (x * 0.4 - 0.01, 0.93)] for x in (-0.10, -0.02, 0.07, 0.15)], n),
            swelling([(-0.10, 0.06), (-0.07, 0.11), (-0.10, 0.16)], n, (1.2, 1.8, 1.0), "mouth"),
            *macro(0.03, 0.55, 0.08, 0.08, n, pen_um),
            vacuole(-0.01 * n, 0.90 * n, 0.05 * n),
            *food_balls(((0.12, 0.36, 0.035), (0.10, 0.74, 0.04), (-0.08, 0.40, 0.03)), n, pen_um),
        ),
        pen_um,
    )
