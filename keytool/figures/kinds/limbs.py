"""A jointed leg, seen whole or coming out from under a body."""

from __future__ import annotations

from math import pi, sin

from .. import geometry, pen
from ..shapes import Point, Points, Shape
from . import tube


def leg(joints: list[Point], thick: float, body: Points | None, part: str) -> list[Shape]:
    """A jointed limb, tapering, hidden where the body covers it; legs end in a claw."""
    line = geometry.spaced(geometry.curve(joints, per=6), thick * 0.4)

    def half(t: float) -> float:
        return thick / 2 * (1 - 0.62 * t) * (1 + 0.12 * sin(2 * pi * 5 * t))

    def free(p: Point) -> bool:
        return body is None or not geometry.inside(body, p)

    out: list[Shape] = []
    for side, weight in zip(tube.sides(line, half), (1.3, 0.9), strict=True):
        out += [pen.line(run, (weight,), part) for run in geometry.runs(side, free)]
    bars = [tube.across(line, half, t) for t in (0.28, 0.46, 0.64, 0.82)]
    out.append(pen.strokes([b for b in bars if free(b[0]) and free(b[-1])], 0.6, part))
    if part != "legs":
        return out
    x, y, nx, ny = tube.place(line, 1.0)
    fx, fy = ny, -nx
    claw = [((x, y), (x + thick * (0.5 * fx + s * 0.22 * nx), y + thick * (0.5 * fy + s * 0.22 * ny))) for s in (-1, 1)]
    out.append(pen.strokes(claw, 0.9, part))
    return out
