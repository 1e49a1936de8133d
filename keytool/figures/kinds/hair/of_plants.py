"""Hairs and fibres of plants, bristles of fungi, and hairs whose base is lost."""

from __future__ import annotations

from math import pi, sin

from ... import geometry, pen
from ...shapes import Point, Shape
from .. import tube
from ..points import pts
from .sides import sides


def plain_nodes(w: float, n: float, pen_um: float) -> list[Shape]:
    """A fibre with bamboo-like nodes: slight rings at intervals, without prongs."""
    line = tube.axis(n, lambda t: 0.10 * sin(2 * pi * (0.6 * t + 0.1)))
    spots = (0.14, 0.36, 0.55, 0.78)

    def half(t: float) -> float:
        return w / 2 * (0.90 + 0.10 * max(0.0, 1 - (min(abs(t - s) for s in spots) * n / (0.35 * w)) ** 2))

    rings = [tube.across(line, half, s + d, share=0.97, bow=b) for s in spots for d, b in ((-0.10 * w / n, 0.08), (0.10 * w / n, -0.08))]
    channel = [pen.stroke(s, 0.7, "wall") for s in tube.sides(line, lambda t: 0.13 * w)]
    return [*sides(line, half), *channel, pen.strokes(rings, 1.0, "nodes")]


def of_plant(w: float, n: float, pen_um: float) -> list[Shape]:
    """A plant hair: a broad foot among the cells of the leaf skin, a few cross-walls, drawn out to a point."""
    line = tube.axis(n, lambda t: 0.12 + 0.30 * t)

    def half(t: float) -> float:
        return float(w / 2 * ((1 - t) ** 0.9) * (1 + 0.9 * max(0.0, 1 - t * n / (1.1 * w)) ** 2) + 0.0 * t)

    right, left = tube.sides(line, half)
    walls = [tube.across(line, half, t, share=0.97) for t in (0.16, 0.40, 0.66)]
    floor, deep = 0.02 * w, -1.0 * w
    cells: list[tuple[Point, ...]] = [
        ((-3.2 * w, floor), (-0.98 * w, floor)),
        ((0.98 * w, floor), (3.2 * w, floor)),
        ((-3.2 * w, deep), (3.2 * w, deep)),
    ]
    cells += [((x, deep), (x, floor)) for x in (-2.2 * w, -0.98 * w, 0.98 * w, 2.2 * w)]
    return [
        pen.strokes(cells, 1.2, "base"),
        pen.line(left, (2.0, 1.4), "outline"),
        pen.line(right, (1.5, 1.2), "outline"),
        pen.strokes(walls, 1.1, "cross-walls"),
    ]


def of_fruit_body(w: float, n: float, pen_um: float, *, wavy: bool = False) -> list[Shape]:
    """A stiff dark bristle standing on a small dark fruit body with others."""

    def heading(t: float) -> float:
        return 0.15 + (1.25 * sin(2 * pi * 3.2 * t) * min(1.0, 2 * t) if wavy else 0.35 * t)

    line = tube.axis(n, heading)

    def half(t: float) -> float:
        return float(w / 2 * (1 - 0.86 * t) * tube.round_ends(t, 0.0, 0.02))

    ring = tube.ring(line, half)
    out: list[Shape] = [pen.filled(ring, "tint", role="faint"), *sides(line, half, 1.8, 2.4)]
    out.append(pen.strokes([tube.across(line, half, t, share=0.95) for t in (0.12, 0.30, 0.52)], 1.0, "cross-walls"))
    out.append(pen.filled(geometry.arc(0.0, -2.7 * w, 3.0 * w, 0.1 * pi, 0.9 * pi, count=30), "base"))
    for s in (-1, 1):
        short = geometry.moved(tube.axis(0.5 * n, lambda t, s=s: s * (0.75 + 0.2 * t)), s * 1.5 * w, -0.1 * w)  # type: ignore[misc]
        out.append(pen.line(short, (3.2, 0.8), "outline"))
    return out


def lost(w: float, n: float, pen_um: float) -> list[Shape]:
    """A hair that narrows steadily to a point, its thick end broken off."""
    line = tube.axis(n, lambda t: 0.10 + 0.40 * t)

    def half(t: float) -> float:
        return float(w / 2 * (1 - t) ** 0.9)

    ends = [tube.beside(line, half, 0.0, u, d * w) for u, d in pts("-1 0, -.5 -.35, 0 .15, .4 -.4, 1 0")]
    return [*sides(line, half), pen.stroke(ends, 1.2, "base")]
