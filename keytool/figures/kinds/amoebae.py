"""Amoebae and flagellates: one naked, one in a shell of scales, one with two flagella."""

from __future__ import annotations

from math import pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Points
from .cell_parts import clear_of
from .cell_parts import nucleus as draw_nucleus
from .cell_parts import vacuole as draw_vacuole
from .points import pts


def flagellate(n: float) -> Sketch:
    """A flagellate with one flagellum forward and one trailing; `n` is the length of the body."""
    edge = geometry.curve(
        [
            (-0.02 * n, 0),
            (0.13 * n, 0.06 * n),
            (0.24 * n, 0.26 * n),
            (0.27 * n, 0.52 * n),
            (0.20 * n, 0.80 * n),
            (0.05 * n, 0.98 * n),
            (-0.04 * n, n),
            (-0.14 * n, 0.88 * n),
            (-0.22 * n, 0.62 * n),
            (-0.20 * n, 0.36 * n),
            (-0.13 * n, 0.20 * n),
            (-0.11 * n, 0.06 * n),
        ],
        closed=True,
        per=8,
    )
    pen_um = pen_for(1.0 * n, 2.2 * n)
    front = tuple((-0.05 * n - 0.20 * n * t + 0.10 * n * sin(2.6 * pi * t), 0.05 * n - 0.95 * n * t) for t in (k / 40 for k in range(41)))
    trail = geometry.curve(
        [
            (-0.12 * n, 0.14 * n),
            (-0.27 * n, 0.40 * n),
            (-0.31 * n, 0.72 * n),
            (-0.20 * n, 1.02 * n),
            (0.04 * n, 1.16 * n),
            (0.28 * n, 1.12 * n),
            (0.48 * n, 1.26 * n),
        ],
        per=8,
    )
    nucleus = (0.06 * n, 0.34 * n, 0.10 * n)
    return Sketch(
        (
            pen.contour(edge, 1.2, 2.2, "outline"),
            pen.line(front, (1.3, 0.8), "flagella"),
            pen.line(trail, (1.3, 0.8), "flagella"),
            *draw_nucleus(*nucleus),
            *pen.grain(edge, 4.2 * pen_um, "contents", clear_of(nucleus)),
        ),
        pen_um,
    )


def amoeba(n: float) -> Sketch:
    """A naked amoeba on its way up the page: a broad clear front, two clear lobes of unequal size just pushed out, a wrinkled rear."""
    edge = geometry.clockwise(
        geometry.tall(
            geometry.curve(
                pts(
                    "-.06 .02, .06 0, .17 .045, .225 .13, .215 .215, .25 .255, .34 .235, "
                    ".43 .26, .465 .33, .43 .405, .335 .44, .275 .50, .265 .60, "
                    ".225 .72, .165 .83, .155 .90, .115 .915, .095 .985, .03 .965, "
                    "-.01 1, -.06 .95, -.12 .955, -.135 .88, -.185 .80, -.235 .70, "
                    "-.255 .61, -.30 .575, -.375 .575, -.40 .52, -.37 .465, -.29 .45, -.255 .40, -.24 .30, -.225 .18, -.17 .07"
                ),
                closed=True,
                per=8,
            ),
            n,
        )
    )
    pen_um = pen_for(0.95 * n, n)
    plasm = geometry.scaled(
        geometry.curve(
            pts(
                "-.02 .20, .10 .215, .155 .28, .23 .32, .33 .33, .30 .375, .23 .40, "
                ".205 .52, .185 .66, .12 .82, .03 .90, -.06 .87, -.15 .74, -.20 .62, "
                "-.30 .52, -.20 .49, -.185 .38, -.15 .27"
            ),
            closed=True,
            per=8,
        ),
        n,
    )
    walk = (*edge, edge[0])
    arms = [
        pen.line(run, (1.4, 2.4, 1.4), "pseudopods", inset=1.0)
        for keep in (lambda p: p[1] < 0.17 * n, lambda p: p[0] > 0.275 * n, lambda p: p[0] < -0.28 * n)
        for run in geometry.runs(walk, keep)
    ]
    nucleus, vacuole = (0.01 * n, 0.46 * n, 0.075 * n), (-0.02 * n, 0.76 * n, 0.068 * n)
    free = clear_of(nucleus, vacuole)
    food = [pen.ring(x * n, y * n, r * n, 0.8, "food") for x, y, r in ((-0.13, 0.60, 0.032), (0.12, 0.63, 0.038), (-0.09, 0.36, 0.026))]
    return Sketch(
        (
            pen.contour(edge, 1.1, 2.0, "outline"),
            *arms,
            *pen.grain(plasm, 2.7 * pen_um, "contents", lambda p: 1.6 * free(p), sizes=(0.9, 1.4)),
            *food,
            *draw_nucleus(*nucleus),
            draw_vacuole(*vacuole),
        ),
        pen_um,
    )


def testate(n: float) -> Sketch:
    """A shelled amoeba, opening down; `n` is the length of the shell."""
    side = geometry.curve(
        [
            (0.0, 0.0),
            (0.17 * n, 0.035 * n),
            (0.29 * n, 0.18 * n),
            (0.325 * n, 0.40 * n),
            (0.275 * n, 0.66 * n),
            (0.175 * n, 0.88 * n),
            (0.145 * n, n),
        ],
        per=10,
    )
    edge = (*side, *reversed(geometry.mirrored(side[1:])))
    pen_um = pen_for(0.75 * n, 1.25 * n)
    scales: list[Points] = []
    rise, wide = 0.080 * n, 0.098 * n
    for row in range(12):
        y = 0.065 * n + row * rise
        shift = 0.5 * wide if row % 2 else 0.0
        for k in range(-4, 5):
            arch = geometry.arc(k * wide + shift, y, 0.5 * wide, 0.06 * pi, 0.94 * pi, count=10)
            if all(geometry.inside(edge, (x * 1.08, yy + 0.03 * n)) for x, yy in arch):
                scales.append(arch)
    rim = [(x * n, n) for x in (-0.145, 0.145)]
    teeth = [((x * n, n), ((x + 0.018) * n, 1.022 * n), ((x + 0.036) * n, n)) for x in (-0.144 + 0.036 * k for k in range(8))]
    threads = [
        geometry.curve([(x * n, 1.015 * n), ((x * 1.6 + 0.02) * n, 1.10 * n), ((x * 2.6 - 0.02) * n, (1.30 - 0.5 * x * x * 9) * n)], per=6)
        for x in (-0.10, -0.035, 0.035, 0.10)
    ]
    return Sketch(
        (
            pen.contour(edge, 1.4, 2.5, "outline"),
            pen.strokes(scales, 0.6, "scales"),
            pen.stroke(rim, 1.2, "opening"),
            pen.strokes(teeth, 1.0, "opening"),
            *(pen.line(t, (1.1, 0.5), "pseudopods") for t in threads),
        ),
        pen_um,
    )
