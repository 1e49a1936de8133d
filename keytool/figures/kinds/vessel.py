"""Water vessels of plants: rings, springs, bars and pits in the wall of a wide tube."""

from __future__ import annotations

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Points, Shape
from .kind import Kind, Values, accent, choice, given, long_enough, num, um, word


def build(v: Values) -> Sketch:
    """A stretch of vessel, running down the page, its lower end slanted and open."""
    w, form = num(v, "width"), word(v, "form")
    n = given(v, "length", 3.4 * w)
    pen_um = pen_for(1.2 * w, n)
    left, right = ((-w / 2, 0.0), (-w / 2, n - 0.30 * w)), ((w / 2, 0.0), (w / 2, n))
    edge: Points = (left[0], right[0], right[1], left[1])
    weight = 1.2 if form in ("rings", "spring") else 2.2
    shapes: list[Shape] = [pen.line(left, (weight,), "outline", inset=-1.0), pen.line(right, (1.3 * weight,), "outline", inset=1.0)]
    if form in ("pitted", "bars"):
        rim = geometry.curve([left[1], (-0.20 * w, n - 0.28 * w), (0.20 * w, n - 0.10 * w), right[1]], per=8)
        shapes += [
            pen.line(rim, (1.2, 1.8, 1.2), "outline"),
            pen.line(geometry.curve([left[1], (-0.10 * w, n - 0.05 * w), right[1]], per=8), (0.7, 0.9, 0.7), "outline"),
        ]
    return Sketch((*shapes, *_wall(form, w, n, edge)), pen_um)


def _wall(form: str, w: float, n: float, edge: Points) -> list[Shape]:
    out: list[Shape] = []
    match form:
        case "pitted":
            step = 0.17 * w
            for row in range(1, round((n - 0.4 * w) / step)):
                for k in range(-2, 3):
                    x, y = (k + 0.5 * (row % 2)) * 0.19 * w, row * step
                    if abs(x) < 0.44 * w:
                        out += [
                            pen.ring(x, y, 0.062 * w, 0.9, "pits", ry=0.050 * w),
                            pen.line(((x - 0.030 * w, y), (x + 0.030 * w, y)), (1.2,), "pits"),
                        ]
        case "bars":
            step = 0.15 * w
            for row in range(1, round((n - 0.4 * w) / step)):
                y = row * step
                bar = geometry.curve(
                    [
                        (-0.38 * w, y - 0.03 * w),
                        (0.38 * w, y - 0.03 * w),
                        (0.41 * w, y),
                        (0.38 * w, y + 0.03 * w),
                        (-0.38 * w, y + 0.03 * w),
                        (-0.41 * w, y),
                    ],
                    closed=True,
                    per=3,
                )
                out.append(pen.stroke(bar, 1.0, "pits", closed=True))
        case "rings":
            for row in range(1, round(n / (0.52 * w))):
                y = row * 0.52 * w
                front = geometry.curve([(-0.5 * w, y), (-0.3 * w, y + 0.10 * w), (0.3 * w, y + 0.10 * w), (0.5 * w, y)], per=8)
                back = geometry.curve([(-0.5 * w, y), (-0.3 * w, y - 0.10 * w), (0.3 * w, y - 0.10 * w), (0.5 * w, y)], per=8)
                out += [pen.line(back, (1.2,), "thickening", role="faint"), pen.line(front, (2.0, 3.4, 2.0), "thickening")]
        case _:  # spring
            pitch = 0.34 * w
            for row in range(round(n / pitch)):
                y = row * pitch
                front = geometry.curve(
                    [(-0.5 * w, y), (-0.25 * w, y + 0.18 * pitch), (0.25 * w, y + 0.42 * pitch), (0.5 * w, y + 0.5 * pitch)], per=8
                )
                back = geometry.curve(
                    [(0.5 * w, y + 0.5 * pitch), (0.2 * w, y + 0.62 * pitch), (-0.2 * w, y + 0.92 * pitch), (-0.5 * w, y + pitch)], per=8
                )
                out += [pen.line(back, (1.2,), "thickening", role="faint"), pen.line(front, (2.0, 3.6, 2.0), "thickening")]
    return [s for s in out if s]


KIND = Kind(
    "vessel",
    "a water vessel of a plant by the thickening of its wall",
    (
        choice("form", ("spring", "rings", "bars", "pitted"), "wall thickened in a spring or in rings, or whole with bars or pits"),
        um("width", 30, 5, 200, "width of the tube"),
        um("length", None, 15, 2000, "length shown; three and a half widths if left out"),
        accent("body", "thickening", "pits"),
    ),
    build,
    long_enough(2),
)
