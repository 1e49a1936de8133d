"""Starch grains: no wall, fine rings round an eye; between crossed films, a dark cross."""

from __future__ import annotations

from math import cos, pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Points, Shape
from .kind import Kind, Values, accent, choice, flag, num, um, word
from .points import pts


def build(v: Values) -> Sketch:
    """The grain."""
    n, form = num(v, "length"), word(v, "form")
    if form == "oyster":
        edge = geometry.clockwise(
            geometry.tall(
                geometry.curve(
                    pts("0 0, .17 .05, .29 .24, .36 .52, .34 .78, .18 .97, -.06 1, -.27 .88, -.35 .62, -.28 .3, -.15 .06"), closed=True
                ),
                n,
            )
        )
        eye = (0.0, 0.17 * n)
        rings = 8
    else:
        edge, eye, rings = geometry.ellipse(0, 0.5 * n, 0.5 * n, 0.5 * n, count=96), (0.0, 0.5 * n), 5
    pen_um = pen_for(0.8 * n, n)
    shapes: list[Shape] = [pen.contour(edge, 1.0, 1.8, "outline")]
    if v["crossed-films"]:
        return Sketch((*shapes, *_cross(edge, eye, n, pen_um)), pen_um, tonal=True)
    for k in range(1, rings):
        share = (k / rings) ** 0.9
        ring = tuple((eye[0] + (x - eye[0]) * share, eye[1] + (y - eye[1]) * share) for x, y in edge)
        shapes.append(pen.stroke(ring, 0.7 if k % 2 else 0.45, "rings", closed=True))
    slit = [
        ((eye[0] + 0.030 * n * cos(a), eye[1] + 0.030 * n * sin(a)), (eye[0] - 0.030 * n * cos(a), eye[1] - 0.030 * n * sin(a)))
        for a in (0.4, 2.1)
    ]
    return Sketch((*shapes, pen.disc(*eye, 0.022 * n, "eye"), pen.strokes(slit, 1.2, "eye")), pen_um)


def _cross(edge: Points, eye: tuple[float, float], n: float, pen_um: float) -> list[Shape]:
    """Between crossed films: a dark cross through the eye on a bright grain (dark is drawn as solid ink)."""
    out: list[Shape] = []
    for k in range(4):
        a = pi / 4 + pi / 2 * k
        left, right = [], []
        t = 0.01 * n
        while True:
            x, y = eye[0] + t * cos(a), eye[1] + t * sin(a)
            if not geometry.inside(edge, (x, y)):
                break
            half = 0.022 * n + 0.10 * t
            left.append((x - half * sin(a), y + half * cos(a)))
            right.append((x + half * sin(a), y - half * cos(a)))
            t += 0.01 * n
        inside = [[p for p in side if geometry.inside(edge, p)] for side in (left, right)]
        out.append(pen.filled((*inside[0], *reversed(inside[1])), "cross"))
    return out


KIND = Kind(
    "starch-grain",
    "a starch grain: no wall, fine rings round an eye",
    (
        choice(
            "form",
            ("oyster", "disc"),
            "oyster with the eye near its narrow end (potato type), or a disc with the eye in the middle (wheat type)",
        ),
        um("length", 35, 2, 150, "longest measure"),
        flag("crossed-films", "seen between crossed polarising films, with its dark cross"),
        accent("body", "rings", "eye", "cross"),
    ),
    build,
)
