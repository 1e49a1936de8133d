"""A ball of packed fungus cells under a dark skin, cracked open on one side."""

from __future__ import annotations

from math import atan2, cos, hypot, pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape

_MIDDLE, _CRACK = 0.72, 0.62
"""Where the crack points and how far it reaches to each side of that (radians; 0 to the right, growing clockwise on the page)."""


def sclerotium(n: float) -> Sketch:
    """Dark skin cobbled with rounded cells; a wedge broken out of it shows pale cells packed like cobbles."""
    r = n / 2
    rind, count = 0.060 * n, 30
    wedge = _wedge(r)
    out: list[Shape] = []
    knobs: list[Points] = []
    for k in range(count):
        a = 2 * pi * k / count
        if abs((a - _MIDDLE + pi) % (2 * pi) - pi) > _CRACK * 0.92:
            knobs.append(geometry.ellipse((r - rind) * cos(a), (r - rind) * sin(a), rind, rind * 0.92, turn=a, count=28))
    core = tuple(((r - rind) * cos(a), (r - rind) * sin(a)) for a in (_MIDDLE + _CRACK + (2 * pi - 2 * _CRACK) * k / 80 for k in range(81)))
    spots = [(x, y) for x, y in _packed(0.072 * n, r) if hypot(x, y) < r - 2.5 * rind and not _open((x, y), 0.10)]
    light = [geometry.ellipse(x, y, 0.031 * n, 0.031 * n, count=24) for x, y in spots]
    out.append(pen.holed((*core, *reversed(wedge)), light, "outline"))
    out += [pen.disc(x, y, 0.024 * n, "outline") for x, y in spots]
    out += [pen.filled(knob, "outline") for knob in knobs]
    pale = [
        pen.stroke(geometry.ellipse(x, y, 0.034 * n, 0.030 * n, turn=3 * x / n, count=24), 0.9, "cells", closed=True)
        for x, y in _packed(0.066 * n, r)
        if hypot(x, y) < r - 1.2 * rind and _open((x, y), -0.10) and hypot(x, y) > 0.19 * n
    ]
    edge = [pen.line(wedge, (1.0, 1.6, 1.0), "crack")]
    return Sketch((*out, *pale, *edge), pen_for(n, n), tonal=True)


def _wedge(r: float) -> Points:
    """The ragged border of the crack, from one side of the ball through its inside to the other."""
    shares = ((1.0, 0.88), (0.9, 0.66), (0.8, 0.50), (0.5, 0.36), (0.0, 0.26), (-0.5, 0.34), (-0.85, 0.52), (-0.9, 0.68), (-1.0, 0.88))
    return tuple((d * r * cos(_MIDDLE + u * _CRACK), d * r * sin(_MIDDLE + u * _CRACK)) for u, d in shares)


def _open(p: Point, margin: float) -> bool:
    """Whether a place lies in the crack, made wider by `margin` radians."""
    return abs((atan2(p[1], p[0]) - _MIDDLE + pi) % (2 * pi) - pi) < _CRACK + margin


def _packed(step: float, r: float) -> list[Point]:
    """Places packed like cobbles over the ball."""
    reach = round(r / step) + 1
    return [
        ((col + 0.5 * (row % 2)) * step, row * 0.87 * step) for row in range(-reach - 1, reach + 2) for col in range(-reach - 1, reach + 1)
    ]
