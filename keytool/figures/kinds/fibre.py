"""Loose fibres: plant, cotton, man-made."""

from __future__ import annotations

from itertools import pairwise
from math import pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Box, Point, Shape
from . import tube
from .kind import Kind, Values, accent, choice, num, um, word


def fibre(v: Values) -> Sketch:
    """A length of fibre at its true width, one end in view."""
    return {"plant": _plant, "cotton": _cotton, "synthetic": _synthetic}[word(v, "form")](num(v, "width"))


def _plant(w: float) -> Sketch:
    """A plant fibre: thick layered wall, narrow hollow, slanting pits, a cross-wall, a blunt broken end."""
    n = 9 * w
    line = tube.axis(n, lambda t: 0.12 * sin(2 * pi * (0.6 * t + 0.1)))
    shapes: list[Shape] = []
    right, left = tube.sides(line, lambda t: w / 2)
    shapes += [pen.line(right, (1.5,), "outline", inset=-1.0), pen.line(left, (2.1,), "outline", inset=1.0)]
    shapes += [pen.stroke(s, 0.8, "wall") for s in tube.sides(line, lambda t: 0.26 * w)]
    shapes += [pen.stroke(s, 0.5, "wall", role="faint") for s in tube.sides(line, lambda t: 0.38 * w)]
    pits = [
        (tube.beside(line, lambda t: w / 2, t, s * 0.56, -0.10 * w), tube.beside(line, lambda t: w / 2, t, s * 0.92, 0.10 * w))
        for t in (0.07 * k for k in range(1, 14))
        for s in (-1, 1)
    ]
    shapes.append(pen.strokes(pits, 0.7, "pits"))
    shapes.append(
        pen.strokes(
            [tube.across(line, lambda t: w / 2, 0.42, share=0.5), tube.across(line, lambda t: w / 2, 0.435, share=0.5)], 1.0, "cross-walls"
        )
    )
    end = [
        tube.beside(line, lambda t: w / 2, 1.0, u, d * w)
        for u, d in ((-1, 0), (-0.6, 0.10), (-0.3, -0.12), (0.1, 0.14), (0.45, -0.06), (0.75, 0.12), (1, 0))
    ]
    shapes.append(pen.stroke(end, 1.0, "outline"))
    return Sketch(tuple(shapes), pen_for(0.34 * n, n))


def _cotton(w: float) -> Sketch:
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


def _synthetic(w: float) -> Sketch:
    """A man-made fibre: perfectly even, a bright line along it, specks of pigment, cut square."""
    n = 10 * w
    pen_um = pen_for(0.32 * n, n)
    line = tube.axis(n, lambda t: 0.20 * sin(pi * (t + 0.1)))
    right, left = tube.sides(line, lambda t: w / 2)

    def specks(p: Point) -> float:
        return 0.35 if geometry.inside(tube_ring, p) else 0.0

    tube_ring = tube.ring(line, lambda t: 0.40 * w)
    xs = [x for x, _ in tube_ring]
    return Sketch(
        (
            pen.line(right, (1.8,), "outline", inset=-1.0),
            pen.line(left, (2.6,), "outline", inset=1.0),
            pen.stroke((left[-1], right[-1]), 1.6, "outline"),
            *(pen.stroke(s, 0.6, "glint", role="faint") for s in tube.sides(line, lambda t: 0.12 * w)),
            *pen.stipple(Box(min(xs), 0, max(xs) - min(xs), n), specks, 3.2 * pen_um, "specks", sizes=(0.9, 1.5)),
        ),
        pen_um,
    )


KIND = Kind(
    "fibre",
    "a loose fibre",
    (
        choice("form", ("plant", "cotton", "synthetic"), "what it is made of"),
        um("width", 18, 1, 200, "width; of cotton, of the flat ribbon"),
        accent("body", "pits", "wall", "folds"),
    ),
    fibre,
)
