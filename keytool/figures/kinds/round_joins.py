"""What a single body is joined to: a stalk, a bulb, two stumps, a bud, a peg, the thread it is part of."""

from __future__ import annotations

from collections.abc import Sequence

from .. import geometry, pen
from ..shapes import Point, Points, Shape

JOINS = ("none", "stalk", "bulb", "stumps", "bud", "peg", "thread", "thread-end", "sac", "germ-thread", "pedicel")


def join(style: str, edge: Points, length: float, width: float, pen_um: float) -> list[Shape]:
    """The neighbour as shapes, cut off where the body itself stands."""
    d, foot = min(length, width), length / 2
    part = "stalk" if style in ("stalk", "bulb") else "joined"
    match style:
        case "stalk":
            return _tube(edge, _flared(0.083 * d, foot, 0.55 * d), part, torn=True)
        case "bulb":
            side = [
                (0.13 * d, foot - 0.06 * d),
                (0.20 * d, foot + 0.09 * d),
                (0.19 * d, foot + 0.20 * d),
                (0.08 * d, foot + 0.34 * d),
                (0.065 * d, foot + 0.62 * d),
            ]
            return _tube(edge, side, part, torn=True)
        case "stumps":
            out = []
            for sign in (-1, 1):
                side = [
                    (0.34 * d, foot - 0.10 * d),
                    (0.27 * d, foot + 0.05 * d),
                    (0.25 * d, foot + 0.22 * d),
                    (0.17 * d, foot + 0.42 * d),
                    (0.12 * d, foot + 0.60 * d),
                ]
                out += _tube(edge, [(x, sign * y) for x, y in side], part, torn=True)
            return out
        case "bud":
            # The bud's wall leaves the mother's at a narrow neck, well out on her shoulder.
            x, y, r = 0.36 * width, -0.56 * length, 0.20 * d
            bud = geometry.ellipse(x, y, r * 0.85, r * 1.1, turn=0.5, count=60)
            near = min(edge, key=lambda p: (p[0] - x) ** 2 + (p[1] - y) ** 2)
            gap = 0.10 * d
            ring = [p for p in (*bud, *bud) if (p[0] - near[0]) ** 2 + (p[1] - near[1]) ** 2 > gap**2]
            start = max(range(1, len(ring)), key=lambda k: (ring[k][0] - ring[k - 1][0]) ** 2 + (ring[k][1] - ring[k - 1][1]) ** 2)
            free = ring[start : start + len(ring) // 2]
            return [pen.line((_nearest(edge, near, free[0]), *free, _nearest(edge, near, free[-1])), (1.4, 1.8, 1.4), part)]
        case "peg":
            x = 0.16 * width
            peg = geometry.curve(
                [
                    (x - 0.06 * d, foot - 0.05 * d),
                    (x + 0.01 * d, foot + 0.10 * d),
                    (x + 0.10 * d, foot + 0.12 * d),
                    (x + 0.12 * d, foot - 0.08 * d),
                ],
                per=8,
            )
            return [pen.line(run, (1.4,), part) for run in geometry.runs(peg, lambda p: not geometry.inside(edge, p))]
        case "thread" | "thread-end":
            out = []
            for sign in (1, -1) if style == "thread" else (1,):
                out += _tube(
                    edge,
                    [(0.14 * d, sign * (foot - 0.06 * d)), (0.125 * d, sign * (foot + 0.30 * d)), (0.125 * d, sign * (foot + 1.1 * d))],
                    part,
                    torn=False,
                )
            return out
        case "germ-thread":
            reach = [
                (0.13 * d, foot - 0.05 * d),
                (0.10 * d, foot + 0.12 * d),
                (0.10 * d, foot + 0.40 * d),
                (0.07 * d, foot + 0.50 * d),
                (0.0, foot + 0.525 * d),
            ]
            return _tube(edge, reach, part, torn=False)
        case "pedicel":
            return _tube(edge, [(0.055 * d, foot - 0.05 * d), (0.035 * d, foot + 0.10 * d), (0.022 * d, foot + 0.42 * d)], part, torn=False)
        case "sac":
            sac = geometry.curve(
                [
                    (-0.46 * width, 0.16 * length),
                    (-0.70 * width, 0.30 * length),
                    (-0.66 * width, 0.52 * length),
                    (-0.44 * width, 0.54 * length),
                    (-0.24 * width, 0.44 * length),
                ],
                per=8,
            )
            tail = geometry.curve([(-0.62 * width, 0.52 * length), (-0.66 * width, 0.70 * length), (-0.60 * width, 0.90 * length)], per=8)
            lines = [*geometry.runs(sac, lambda p: not geometry.inside(edge, p)), tail, geometry.moved(tail, 0.08 * width, -0.01 * length)]
            return [pen.line(one, (1.3,), part) for one in lines]
        case _:
            return []


def _nearest(edge: Points, p: Point, q: Point) -> Point:
    """The point of the edge nearest to half way between two points."""
    x, y = (p[0] + q[0]) / 2, (p[1] + q[1]) / 2
    return min(edge, key=lambda e: (e[0] - x) ** 2 + (e[1] - y) ** 2)


def _flared(half: float, foot: float, drop: float) -> list[Point]:
    """A stub that widens into the wall it joins."""
    return [(1.25 * half, foot - 0.3 * half), (half, foot + 0.22 * drop), (0.92 * half, foot + 0.6 * drop), (half, foot + drop)]


def _tube(edge: Points, side: Sequence[Point], part: str, *, torn: bool) -> list[Shape]:
    """A tube of that right side, its own mirror on the left, open toward the body, torn off or running on behind."""
    line = geometry.curve(side, per=8)
    out: list[Shape] = []
    for way, weights in ((line, (1.8, 1.6)), (geometry.mirrored(line), (1.3, 1.2))):
        out += [pen.line(run, weights, part) for run in geometry.runs(way, lambda p: not geometry.inside(edge, p))]
    if torn:
        x, y = line[-1]
        step = 0.16 * x * (1 if y > 0 else -1)
        out.append(pen.stroke(((x, y), (0.4 * x, y - step), (-0.3 * x, y + step), (-x, y)), 0.8, part))
    return out
