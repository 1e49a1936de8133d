"""Fibres from living things: plant, cotton, paper, silk."""

from __future__ import annotations

from itertools import pairwise
from math import pi, sin

from ... import geometry, pen
from ...frame import Sketch, pen_for
from ...shapes import Shape
from .. import tube
from ..points import pts


def plant(w: float) -> Sketch:
    """A plant fibre: a thick layered wall, a channel a third as wide, slanting slit pits, one bamboo-like node, a broken end."""
    n = 9 * w
    line = tube.axis(n, lambda t: 0.12 * sin(2 * pi * (0.6 * t + 0.1)))
    shapes: list[Shape] = []
    right, left = tube.sides(line, lambda t: w / 2)
    shapes += [pen.line(right, (1.5,), "outline", inset=-1.0), pen.line(left, (2.1,), "outline", inset=1.0)]
    shapes += [pen.stroke(s, 0.8, "wall") for s in tube.sides(line, lambda t: 0.145 * w)]
    shapes += [pen.stroke(s, 0.5, "wall", role="faint") for s in tube.sides(line, lambda t: 0.33 * w)]
    pits = [
        (tube.beside(line, lambda t: w / 2, t, s * 0.32, -0.12 * w), tube.beside(line, lambda t: w / 2, t, s * 0.90, 0.12 * w))
        for t in (0.07 * k for k in range(1, 14))
        for s in (-1, 1)
    ]
    shapes.append(pen.strokes(pits, 0.7, "pits"))
    shapes.append(
        pen.strokes(
            [tube.across(line, lambda t: w / 2, t, share=1.0, bow=bow) for t, bow in ((0.412, 0.12), (0.425, 0.0), (0.438, -0.12))],
            0.9,
            "nodes",
        )
    )
    end = [tube.beside(line, lambda t: w / 2, 1.0, u, d * w) for u, d in pts("-1 0, -.6 .1, -.3 -.12, .1 .14, .45 -.06, .75 .12, 1 0")]
    shapes.append(pen.stroke(end, 1.0, "outline"))
    return Sketch(tuple(shapes), pen_for(0.34 * n, n))


def cotton(w: float) -> Sketch:
    """Cotton: a flat ribbon that twists now this way, now that; at each twist it is narrow and its edges cross."""
    n = 13 * w
    line = tube.axis(n, lambda t: 0.24 * sin(2 * pi * (0.75 * t + 0.1)), steps=420)
    twists = (0.15, 0.34, 0.58, 0.83)
    span = 1.1 * w / n

    def half(t: float) -> float:
        near = min(abs(t - at) for at in twists) / span
        return w / 2 * (1 - 0.58 * max(0.0, 1 - near**2) ** 2)

    right, left = tube.sides(line, half)
    folds = []
    for k, at in enumerate(twists):
        way = 1 if k % 2 else -1
        folds += [
            geometry.curve(
                [
                    tube.beside(line, half, at + d * span, way * u)
                    for d, u in ((-0.95, -0.98), (-0.35 + j, -0.45), (0.35 + j, 0.45), (0.95, 0.98))
                ],
                per=8,
            )
            for j in (-0.16, 0.16)
        ]
    rim = [
        tuple(
            tube.beside(line, half, (k + 0.0) / 420, s * 0.72) for k in range(421) if min(abs(k / 420 - at) for at in twists) > 1.0 * span
        )
        for s in (-1, 1)
    ]
    wall: list[Shape] = []
    for side in rim:
        for run in geometry.runs(side, lambda p: True):
            breaks = [0, *(i for i in range(1, len(run)) if abs(run[i][1] - run[i - 1][1]) > 0.3 * w), len(run)]
            wall += [pen.stroke(run[i:j], 0.6, "wall", role="faint") for i, j in pairwise(breaks) if j - i > 1]
    return Sketch(
        (
            pen.line(right, (1.3,), "outline", inset=-1.0),
            pen.line(left, (2.1,), "outline", inset=1.0),
            pen.strokes(folds, 1.1, "folds"),
            *wall,
        ),
        pen_for(0.38 * n, n),
    )


def paper(w: float) -> Sketch:
    """A paper fibre: a flat, kinked ribbon that folds over once, with peeling fibrils, a fuzzy end and pits on its face."""
    n = 8 * w
    kinks = pts("0 0, .1 1.6, -.55 2.9, .3 4.3, .75 5.6, .1 6.9, .25 8")
    line = geometry.spaced(geometry.scaled(kinks, w), n / 160)
    fold, span = 0.525, 0.055

    def half(t: float) -> float:
        near = max(0.0, 1 - (abs(t - fold) / span) ** 2)
        return float(w / 2 * (1 - 0.12 * sin(14 * t) ** 2) * (1 - 0.55 * near))

    right, left = tube.sides(line, half)
    shapes: list[Shape] = [pen.line(right, (1.3,), "outline", inset=-1.0), pen.line(left, (2.0,), "outline", inset=1.0)]
    shapes += [
        pen.line(
            [tube.beside(line, half, fold + d * span, u) for d, u in ((-1.0, 0.98), (0.0, 0.25 * s), (1.0, -0.98))],
            (1.2, 1.6, 1.2),
            "folds",
        )
        for s in (-1, 1)
    ]
    for t, s in ((0.225, 1), (0.385, -1), (0.725, 1), (0.875, -1)):  # creases that start at the inner edge of a kink and run out
        crease = [tube.beside(line, half, t + 0.014 * u, s * (0.92 - 1.0 * u)) for u in (0.0, 1.0)]
        shapes.append(pen.line(crease, (1.3, 0.7, 0.3), "folds"))
    for k, t in enumerate((0.05, 0.10, 0.17, 0.27, 0.33, 0.44, 0.60, 0.66, 0.80, 0.92)):
        s = 1 if k % 2 else -1
        peel = [
            tube.beside(line, half, t, s),
            tube.beside(line, half, t + 0.02, s * 1.4),
            tube.beside(line, half, t + (0.05 if k % 3 else 0.09), s * (1.8 - 0.25 * (k % 3))),
        ]
        shapes.append(pen.line(geometry.curve(peel, per=6), (0.9, 0.5), "fibrils"))
    for end, way in ((1.0, 1), (0.0, -1)):
        frayed = [
            (
                tube.beside(line, half, end - 0.015 * way, u),
                tube.beside(line, half, end, 1.35 * u, way * (0.30 + 0.2 * ((k * 0.618) % 1)) * w),
            )
            for k, u in enumerate((-0.95, -0.6, -0.25, 0.1, 0.45, 0.8, 1.0))
        ]
        shapes.append(pen.strokes(frayed, 0.8, "fibrils"))
    pits = [tube.beside(line, half, t, u) for t, u in pts(".10 .3, .14 -.3, .27 .2, .43 -.2, .46 .35, .62 0, .76 -.35, .82 .2")]
    return Sketch((*shapes, *(pen.ring(x, y, 0.07 * w, 0.8, "pits") for x, y in pits)), pen_for(0.42 * n, n))


def silk(w: float) -> Sketch:
    """Silk: a pair of bare slack lines in wide curves, no hollow, droplets of glue evenly spaced on the outside."""
    n = 60 * w
    out: list[Shape] = []
    line = tube.axis(n, lambda t: 0.75 * sin(2 * pi * (0.8 * t + 0.08)))
    for s in (-1.4, 1.4):
        path = geometry.offset(line, [s * w] * len(line))
        out.append(
            pen.filled((*geometry.offset(path, [w / 2] * len(path)), *reversed(geometry.offset(path, [-w / 2] * len(path)))), "outline")
        )
    for k in range(6):
        at = 0.08 + 0.168 * k
        x, y = tube.place(line, at)[:2]
        out.append(
            pen.contour(
                geometry.ellipse(x, y, 2.4 * w, 3.0 * w, turn=-0.75 * sin(2 * pi * (0.8 * at + 0.08)), count=36), 1.0, 1.7, "droplets"
            )
        )
    return Sketch(tuple(out), pen_for(0.5 * n, n))
