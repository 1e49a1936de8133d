"""A clear tube and what it starts from: a pollen grain, a scrap of moss kin, or nothing to be found."""

from __future__ import annotations

from collections.abc import Callable
from math import cos, pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Points, Shape
from . import tube
from .kind import Kind, Values, accent, choice, num, um, word
from .points import pts


def build(v: Values) -> Sketch:
    """The tube running down from its foot."""
    w = num(v, "width")
    return Sketch(tuple(_FEET[word(v, "foot")](w)), pen_for(7 * w, 13 * w))


def _tube(w: float, n: float, *, tip: bool) -> tuple[Points, Callable[[float], float], list[Shape]]:
    line = tube.axis(n, lambda t: 0.26 * sin(5.0 * t) * min(1.0, 3 * t), steps=200)

    def half(t: float) -> float:
        return w / 2 * tube.round_ends(t, 0.0, 0.55 * w / n if tip else 0.0)

    right, left = tube.sides(line, half)
    walls: list[Shape] = [pen.line(left, (1.9,), "outline", inset=1.0), pen.line(tuple(reversed(right)), (1.4,), "outline", inset=1.0)]
    return line, half, walls


def _grain(w: float) -> list[Shape]:
    """Out of a pore of a grain with a thick wall; the tube is grainy toward its tip."""
    line, half, walls = _tube(w, 9.0 * w, tip=True)
    r = 1.75 * w
    gap = 0.55 * w / r
    outer = geometry.arc(0.0, -0.95 * r, r, pi / 2 + gap, 2.5 * pi - gap, count=60)
    inner = geometry.arc(0.0, -0.95 * r, 0.84 * r, pi / 2 + 1.15 * gap, 2.5 * pi - 1.15 * gap, count=60)
    comb = [
        ((0.87 * r * cos(a), -0.95 * r + 0.87 * r * sin(a)), (0.96 * r * cos(a), -0.95 * r + 0.96 * r * sin(a)))
        for a in (pi / 2 + 0.5 + 0.13 * k for k in range(41))
    ]
    wall: list[Shape] = [
        pen.contour(outer, 1.6, 2.6, "start", closed=False),
        pen.stroke(inner, 0.9, "start"),
        pen.strokes(comb, 0.5, "start"),
        *(pen.stroke((outer[k], inner[k]), 1.2, "start") for k in (0, -1)),
    ]
    filled = tube.ring(line[90:], lambda u: 0.78 * half(0.45 + 0.55 * u))
    return [*wall, *walls, *pen.grain(filled, 0.22 * w, "contents", lambda p: 0.7)]


def _thallus(w: float) -> list[Shape]:
    """From one cell at the lower face of a scrap of green cells, beside others of its kind."""
    _, _, walls = _tube(w, 8.5 * w, tip=True)
    side = 1.25 * w
    out: list[Shape] = []
    for row in range(3):
        for col in range(-2, 3):
            x, y = (col + (0.5 if row % 2 else 0.0)) * side, -(row * 0.86) * side - 0.55 * w
            cell = geometry.clockwise(
                pen.wobble(geometry.arc(x, y, 0.56 * side, pi / 6, pi / 6 + 2 * pi, count=6)[:-1], 0.02 * w, 2, (row, col))
            )
            out.append(pen.stroke(cell, 1.4, "start", closed=True))
            out += [
                pen.disc(x + 0.26 * side * cos(a), y + 0.26 * side * sin(a), 0.085 * side, "start")
                for a in (0.4 + row, 2.2 + col, 3.9, 5.3)
            ]
    stumps = [
        pen.line(geometry.scaled(pts(one), w), (1.2, 0.6), "start") for one in ("-2.3 .05, -2.45 .9, -2.2 1.5", "2.35 .05, 2.5 .7, 2.3 1.2")
    ]
    return [*out, *stumps, *walls]


def _torn(w: float) -> list[Shape]:
    """Both ends torn off: nothing shows what it grew from."""
    line, half, walls = _tube(w, 10.0 * w, tip=False)
    ends = [[tube.beside(line, half, t, u, d * w) for u, d in pts("-1 0, -.55 -.5, -.2 .1, .15 -.35, .5 .2, 1 -.1")] for t in (0.0, 1.0)]
    return [*walls, *(pen.line(end, (1.2,), "start") for end in ends)]


_FEET: dict[str, Callable[[float], list[Shape]]] = {"grain": _grain, "thallus": _thallus, "torn": _torn}

KIND = Kind(
    "tube-and-foot",
    "a clear tube and what it starts from",
    (
        choice("foot", tuple(_FEET), "a pollen grain; a scrap of moss kin; torn at both ends"),
        um("width", 12, 3, 60, "width of the tube"),
        accent("body", "start"),
    ),
    build,
)
