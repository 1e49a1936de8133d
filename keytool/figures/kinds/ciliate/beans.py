"""Ciliates shaped as pears, slippers and beans."""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, pi, sin

from ... import geometry, pen
from ...frame import Sketch, pen_for
from ...shapes import Shape
from ..cell_parts import vacuole
from ..points import pts
from .parts import Round, food_balls, fringe, hair_lines, hair_rows, macro, skin, swelling


def pear(n: float) -> Sketch:
    """A pear tapering to the front, a small mouth near the tip, one plain bubble at the rear; no notch."""
    half = pts(".06 .015, .125 .12, .185 .32, .235 .56, .225 .76, .14 .94")
    edge = skin([(0, 0), *half, (0, 1), *reversed(geometry.mirrored(half))], n)
    pen_um = pen_for(0.62 * n, 1.1 * n)
    rows = [[(x * 0.25, 0.05), (x * 0.8, 0.36), (x, 0.62), (x * 0.45, 0.94)] for x in (-0.165, -0.085, 0.0, 0.085, 0.165)]
    return Sketch(
        (
            pen.contour(edge, 1.1, 2.0, "outline"),
            fringe(edge, n),
            hair_rows(rows, n),
            swelling(pts("-.055 .13, -.015 .17, -.015 .235, -.05 .25, -.075 .2, -.055 .13"), n, (1.4, 1.4), "mouth"),
            *macro(0.02, 0.55, 0.09, 0.10, n, pen_um),
            vacuole(0.03 * n, 0.885 * n, 0.055 * n),
            *food_balls(
                ((-0.10, 0.60, 0.04), (0.13, 0.70, 0.038), (-0.07, 0.77, 0.042), (0.06, 0.36, 0.032), (-0.07, 0.42, 0.03)), n, pen_um
            ),
        ),
        pen_um,
    )


_KIDNEY = pts(
    "-.02 0, .12 .02, .27 .13, .345 .32, .36 .54, .3 .78, .17 .95, 0 1, -.17 .95, -.27 .82, -.285 .66, -.21 .535, "
    "-.125 .465, -.155 .39, -.225 .31, -.235 .18, -.155 .05"
)


def _kidney(n: float, food: Sequence[Round], dense: float) -> Sketch:
    edge, pen_um = skin(_KIDNEY, n), pen_for(0.88 * n, 1.1 * n)
    keel = [((-0.225 + 0.012 * k, 0.17 + 0.035 * k), (-0.20 + 0.012 * k, 0.185 + 0.032 * k)) for k in range(6)]
    return Sketch(
        (
            pen.contour(edge, 1.1, 2.0, "outline"),
            fringe(edge, n),
            hair_rows(
                [
                    [(0.0, 0.05), (0.13, 0.30), (0.15, 0.55), (0.06, 0.93)],
                    [(0.08, 0.06), (0.24, 0.30), (0.265, 0.55), (0.15, 0.88)],
                    [(-0.06, 0.06), (0.0, 0.28), (0.02, 0.58), (-0.07, 0.93)],
                ],
                n,
            ),
            pen.strokes([geometry.scaled(one, n) for one in keel], 0.7, "rows"),
            swelling(pts("-.13 .44, -.055 .42, -.02 .47, -.06 .525, -.13 .5"), n, (1.8, 1.2, 1.8), "mouth"),
            pen.strokes([geometry.scaled(((-0.09 + 0.02 * k, 0.515), (-0.10 + 0.02 * k, 0.575)), n) for k in range(4)], 0.7, "mouth"),
            *macro(0.10, 0.56, 0.095, 0.095, n, pen_um),
            vacuole(-0.02 * n, 0.90 * n, 0.062 * n),
            *food_balls(food, n, pen_um, dense),
        ),
        pen_um,
    )


def colpoda(n: float) -> Sketch:
    """A bean with a notch in its side, some food in it."""
    return _kidney(
        n,
        ((0.18, 0.30, 0.045), (-0.10, 0.68, 0.05), (0.22, 0.76, 0.04), (0.05, 0.77, 0.038), (0.26, 0.48, 0.036), (0.02, 0.22, 0.034)),
        0.6,
    )


def fed(n: float) -> Sketch:
    """The same bean so full of food that it looks dark."""
    spots = [
        (0.18, 0.30, 0.055),
        (-0.10, 0.68, 0.06),
        (0.22, 0.76, 0.055),
        (0.06, 0.78, 0.055),
        (0.27, 0.46, 0.05),
        (0.02, 0.20, 0.048),
        (0.07, 0.38, 0.055),
        (-0.14, 0.80, 0.055),
        (0.24, 0.62, 0.05),
        (0.12, 0.18, 0.045),
        (-0.03, 0.62, 0.042),
        (0.13, 0.88, 0.045),
        (-0.11, 0.24, 0.05),
        (0.19, 0.41, 0.035),
        (-0.20, 0.70, 0.04),
    ]
    return _kidney(n, spots, 0.95)


def l_shape(n: float) -> Sketch:
    """A bean bent like an L, the front half narrowed, the bubble at the rear."""
    edge = skin(
        pts(
            "-.16 0, -.04 .02, .1 .13, .25 .3, .345 .48, .37 .66, .31 .86, .15 .985, -.05 .99, -.22 .9, -.27 .76, -.22 .64, "
            "-.12 .56, -.05 .48, -.08 .41, -.19 .33, -.27 .2, -.265 .07"
        ),
        n,
    )
    pen_um = pen_for(0.9 * n, 1.1 * n)
    return Sketch(
        (
            pen.contour(edge, 1.1, 2.0, "outline"),
            fringe(edge, n),
            hair_rows(
                [[(-0.10, 0.06), (0.05, 0.28), (0.14, 0.55), (0.09, 0.93)], [(-0.03, 0.06), (0.17, 0.32), (0.26, 0.58), (0.19, 0.92)]], n
            ),
            swelling(pts("-.06 .44, .01 .42, .05 .48, 0 .54, -.07 .51"), n, (1.8, 1.2, 1.8), "mouth"),
            *macro(0.06, 0.68, 0.095, 0.095, n, pen_um),
            vacuole(-0.02 * n, 0.895 * n, 0.06 * n),
            *food_balls(
                ((-0.12, 0.72, 0.05), (0.22, 0.68, 0.045), (0.19, 0.86, 0.04), (0.16, 0.50, 0.04), (-0.12, 0.19, 0.035)), n, pen_um
            ),
        ),
        pen_um,
    )


def fungus_eater(n: float) -> Sketch:
    """A small clear bean pressing a tiny feeding tube, in the front third of its side, to a hypha."""
    edge = skin(_KIDNEY, n)
    pen_um = pen_for(1.15 * n, 1.25 * n)
    x = -0.42
    hypha = [
        geometry.scaled([(x - 0.05, -0.15), (x - 0.04, 0.45), (x - 0.07, 1.12)], n),
        geometry.scaled([(x + 0.05, -0.15), (x + 0.06, 0.45), (x + 0.03, 1.12)], n),
    ]
    holes = [pen.ring((x + 0.005) * n, y * n, 0.022 * n, 1.0, "holes") for y in (0.08, 0.86)]
    tube = [
        pen.line(geometry.scaled([(-0.222, 0.20 + s), (x + 0.058, 0.205 + 0.7 * s)], n), (1.4, 1.0), "feeding-tube")
        for s in (-0.022, 0.022)
    ]
    return Sketch(
        (
            *(pen.line(geometry.curve(h, per=8), (1.2,), "hypha") for h in hypha),
            *holes,
            *tube,
            pen.contour(edge, 1.1, 2.0, "outline"),
            fringe(edge, n, keep=lambda p: not (p[0] < -0.10 and 0.12 < p[1] < 0.29)),
            *macro(0.10, 0.52, 0.09, 0.09, n, pen_um),
            vacuole(-0.02 * n, 0.89 * n, 0.06 * n),
        ),
        pen_um,
    )


def slipper(n: float) -> Sketch:
    """A slipper with a groove to its mouth and two star-shaped bubbles."""
    edge = skin(
        pts(
            ".02 0, .09 .03, .135 .14, .15 .32, .165 .52, .165 .68, .12 .86, .04 .98, 0 1, -.06 .95, -.13 .8, -.155 .62, "
            "-.13 .5, -.115 .38, -.13 .22, -.12 .1, -.06 .02"
        ),
        n,
    )
    pen_um = pen_for(0.46 * n, 1.1 * n)
    stars: list[Shape] = []
    for x, y in ((0.04, 0.23), (0.03, 0.77)):
        stars.append(pen.ring(x * n, y * n, 0.026 * n, 1.2, "vacuole"))
        rays = [
            ((x + 0.034 * cos(a), y + 0.034 * sin(a)), (x + 0.075 * cos(a), y + 0.075 * sin(a)))
            for a in (2 * pi * k / 7 + 0.3 for k in range(7))
        ]
        stars += hair_lines(rays, n, (2.0, 0.5), "vacuole")
    groove = pts("-.1 .07, -.075 .24, -.05 .4, -.01 .5, .035 .555")
    back = [(-0.115, 0.36), (-0.085, 0.46), (-0.035, 0.545), (0.03, 0.575)]
    return Sketch(
        (
            pen.contour(edge, 1.1, 2.0, "outline"),
            fringe(edge, n, 0.034, 0.0145),
            swelling(groove, n, (0.7, 1.4, 1.6), "mouth"),
            swelling(back, n, (0.8, 1.2, 1.4), "mouth"),
            *macro(0.075, 0.60, 0.045, 0.085, n, pen_um, 0.3),
            *stars,
            *food_balls(
                (
                    (-0.06, 0.68, 0.028),
                    (-0.03, 0.86, 0.026),
                    (0.09, 0.42, 0.024),
                    (0.11, 0.74, 0.022),
                    (-0.085, 0.77, 0.02),
                    (0.08, 0.12, 0.018),
                ),
                n,
                pen_um,
            ),
        ),
        pen_um,
    )
