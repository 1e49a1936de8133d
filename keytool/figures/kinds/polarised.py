"""How a thing looks between crossed polarising films: bright, with a weak gleam, or dark, on a dark field."""

from __future__ import annotations

from math import pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Points, Shape
from . import tube
from .kind import Kind, Values, accent, choice, num, um, word

_TURN = 0.75
"""The thing lies aslant, where it shines most."""


def build(v: Values) -> Sketch:
    """A fibre on the dark field."""
    d, look = num(v, "field"), word(v, "look")
    body = _fibre(d)
    edge = tube.ring(body, lambda t: _half(t, d))
    field = geometry.ellipse(0, 0, d / 2, d / 2, count=96)
    holes, over = _LOOKS[look](body, edge, d)
    return Sketch((pen.holed(field, holes, "field"), *over), pen_for(d, d), tonal=True)


def _fibre(d: float) -> Points:
    line = tube.axis(0.66 * d, lambda t: 0.18 * sin(2 * pi * (0.8 * t + 0.1)), steps=120)
    x, y = line[len(line) // 2]
    return geometry.moved([(px - x, py - y) for px, py in line], 0.0, 0.0, turn=_TURN)


def _half(t: float, d: float) -> float:
    return 0.070 * d * (1 - 0.25 * t)


def _bright(body: Points, edge: Points, d: float) -> tuple[list[Points], list[Shape]]:
    """The whole of it shines; fine lines run along it."""
    grain = [tuple(tube.beside(body, lambda t: _half(t, d), 0.04 + 0.92 * k / 40, u) for k in range(41)) for u in (-0.5, 0.0, 0.5)]
    return [edge], [pen.strokes(grain, 0.6, "fibre"), pen.stroke(edge, 1.2, "fibre", closed=True)]


def _faint(body: Points, edge: Points, d: float) -> tuple[list[Points], list[Shape]]:
    """Only the two walls and the ends gleam, thin and broken."""
    strips: list[Points] = []
    for s in (-1, 1):
        for a, b in ((0.03, 0.30), (0.36, 0.55), (0.63, 0.95)):
            outer = [tube.beside(body, lambda t: _half(t, d), a + (b - a) * k / 20, s * 1.0) for k in range(21)]
            inner = [tube.beside(body, lambda t: _half(t, d), a + (b - a) * k / 20, s * 0.80) for k in range(21)]
            strips.append((*outer, *reversed(inner)))
    return strips, [pen.stroke(strip, 0.8, "fibre", closed=True) for strip in strips]


def _dark(body: Points, edge: Points, d: float) -> tuple[list[Points], list[Shape]]:
    """Nothing shines. A broken edge and a pair of ticks at either end, in the accent colour where asked for, mark where the thing lies."""
    ends = []
    for t, way in ((0.0, -1), (1.0, 1)):
        x, y, nx, ny = tube.place(body, t)
        fx, fy = way * ny, -way * nx
        for s in (-1, 1):
            foot = (x + fx * 0.030 * d + s * nx * 0.07 * d, y + fy * 0.030 * d + s * ny * 0.07 * d)
            ends.append((foot, (foot[0] + fx * 0.060 * d, foot[1] + fy * 0.060 * d)))
    walk = geometry.spaced((*edge, edge[0]), 0.012 * d)
    return [], [pen.strokes([walk[k : k + 4] for k in range(0, len(walk) - 4, 7)], 1.3, "fibre"), pen.strokes(ends, 2.2, "fibre")]


_LOOKS = {"bright": _bright, "faint": _faint, "dark": _dark}

KIND = Kind(
    "crossed-films",
    "a fibre between crossed polarising films, on the dark field",
    (
        choice("look", tuple(_LOOKS), "it shines; a weak gleam at walls and ends; dark whichever way it lies"),
        um("field", 450, 50, 6000, "diameter of the field of view"),
        accent("fibre"),
    ),
    build,
)
