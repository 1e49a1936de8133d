"""The root hair: one cell of the root skin drawn out to a clear tube with a round tip."""

from __future__ import annotations

from math import sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Shape
from . import tube
from .kind import Kind, Values, accent, given, long_enough, num, um


def build(v: Values) -> Sketch:
    """The hair running down from the row of cells it belongs to."""
    w = num(v, "width")
    n = given(v, "length", 14 * w)
    line = tube.axis(n, lambda t: 0.28 * sin(5.5 * t) * min(1.0, 3 * t))

    def half(t: float) -> float:
        swell = 0.35 * max(0.0, 1 - t * n / (1.6 * w)) ** 2
        return w / 2 * (1 + swell) * tube.round_ends(t, 0.0, 0.55 * w / n)

    right, left = tube.sides(line, half)
    pen_um = pen_for(8 * w, n + 2 * w)
    top = -1.7 * w
    spans = [(-4.2 * w, -1.35 * w), (-1.35 * w, 1.75 * w), (1.75 * w, 4.3 * w)]
    outer = [(-4.2 * w, 0.0), (right[0][0] if right[0][0] < left[0][0] else left[0][0], 0.0)]
    out: list[Shape] = []
    low_left, low_right = min(right[0][0], left[0][0]), max(right[0][0], left[0][0])
    out.append(
        pen.strokes([(outer[0], (low_left, 0.0)), ((low_right, 0.0), (4.3 * w, 0.0)), ((-4.2 * w, top), (4.3 * w, top))], 1.4, "root-skin")
    )
    out.append(pen.strokes([((x, top), (x, 0.0)) for _, x in spans[:-1]], 1.4, "root-skin"))
    out.append(
        pen.strokes([((x, top), (x + 0.2 * w, top - 0.7 * w)) for x in (-3.0 * w, -0.2 * w, 2.7 * w)], 1.0, "root-skin", role="faint")
    )
    out += [pen.line(left, (1.9,), "outline", inset=1.0), pen.line(tuple(reversed(right)), (1.4,), "outline", inset=1.0)]
    x, y = tube.place(line, 0.30)[:2]
    nucleus = geometry.ellipse(x, y, 0.26 * w, 0.40 * w, count=32)
    out += [pen.stroke(nucleus, 0.8, "nucleus", closed=True)]
    for t, s in ((0.42, 1), (0.55, -1), (0.70, 1), (0.86, -1), (0.96, 1)):
        gx, gy = tube.beside(line, half, t, s * 1.25)
        k = 0.16 * w
        grit: list[Point] = [
            (gx - k, gy),
            (gx - 0.2 * k, gy - 0.9 * k),
            (gx + k, gy - 0.3 * k),
            (gx + 0.6 * k, gy + 0.8 * k),
            (gx - 0.5 * k, gy + 0.7 * k),
        ]
        out.append(pen.stroke(grit, 0.9, "grit", closed=True))
    tip = tube.ring(tuple(line[round(0.93 * (len(line) - 1)) :]), lambda u: 0.8 * half(0.93 + 0.07 * u))
    return Sketch((*out, *pen.grain(tip, 2.6 * pen_um, "contents", lambda p: 0.7)), pen_um)


KIND = Kind(
    "root-hair",
    "a root hair with the flat cell of the root skin it grows from",
    (
        um("width", 11, 3, 60, "width of the hair"),
        um("length", None, 30, 3000, "length shown; fourteen widths if left out"),
        accent("body", "root-skin", "grit"),
    ),
    build,
    long_enough(4),
)
