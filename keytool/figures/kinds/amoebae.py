"""Amoebae and flagellates: one naked, one in a shell of scales, one with two flagella."""

from __future__ import annotations

from math import pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points
from .cell_parts import clear_of
from .cell_parts import nucleus as draw_nucleus
from .cell_parts import vacuole as draw_vacuole


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
    """A naked amoeba creeping up the page, `n` long."""
    edge = geometry.clockwise(
        geometry.curve(
            [
                (0.03, 0.0),
                (0.14, 0.03),
                (0.19, 0.13),
                (0.17, 0.25),
                (0.24, 0.31),
                (0.34, 0.24),
                (0.42, 0.26),
                (0.43, 0.36),
                (0.34, 0.43),
                (0.28, 0.52),
                (0.30, 0.66),
                (0.24, 0.82),
                (0.17, 0.92),
                (0.10, 0.985),
                (0.02, 1.0),
                (-0.07, 0.965),
                (-0.17, 0.86),
                (-0.22, 0.70),
                (-0.20, 0.56),
                (-0.27, 0.48),
                (-0.36, 0.50),
                (-0.41, 0.42),
                (-0.35, 0.34),
                (-0.24, 0.33),
                (-0.17, 0.26),
                (-0.15, 0.13),
                (-0.09, 0.03),
            ],
            closed=True,
            per=8,
        )
    )
    edge = tuple((x * n, y * n) for x, y in edge)
    pen_um = pen_for(0.95 * n, n)
    inner = geometry.offset(edge, [0.048 * n] * len(edge), closed=True)
    walk = (*edge, edge[0])
    arms = [
        pen.line(run, (1.4, 1.8, 1.4), "pseudopods", inset=1.0)
        for keep in (lambda p: p[1] < 0.16 * n, lambda p: abs(p[0]) > 0.23 * n and p[1] < 0.55 * n)
        for run in geometry.runs(walk, keep)
    ]
    nucleus, vacuole = (0.02 * n, 0.56 * n, 0.075 * n), (0.09 * n, 0.80 * n, 0.062 * n)

    def grain(p: Point) -> float:
        return clear_of(nucleus, vacuole)(p) * 1.5 if p[1] > 0.15 * n and geometry.inside(edge, (p[0], p[1] - 0.02 * n)) else 0.0

    return Sketch(
        (
            pen.contour(edge, 1.1, 2.0, "outline"),
            *arms,
            *pen.grain(inner, 3.0 * pen_um, "contents", grain),
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
