"""Hairs, bristles and limbs of animals."""

from __future__ import annotations

from itertools import pairwise
from math import cos, pi, pow, sin

from ... import geometry, pen
from ...shapes import Point, Points, Shape
from .. import tube
from .sides import sides


def _scales(line: Points, w: float, n: float, pitch: float) -> list[Shape]:
    """Overlapping scales: wavy lines across, a saw edge, the free edges toward the tip."""
    count = max(4, round(n / pitch))
    bars, saw = [], []
    for k in range(1, count):
        t = k / count
        bars.append(
            tuple(
                tube.beside(line, lambda t: w / 2, t, u, pitch * (0.22 * sin(5.0 * u + 1.7 * k) + 0.15 * (1 - u * u)))
                for u in (j / 8 - 1 for j in range(17))
            )
        )
    for s in (-1, 1):
        edge: list[Point] = []
        for k in range(count):
            edge += [
                tube.beside(line, lambda t: w / 2, k / count, s * 0.90),
                tube.beside(line, lambda t: w / 2, (k + 0.9) / count, s * 1.0),
            ]
        saw.append(edge)
    return [*(pen.line(e, (1.5,) if k else (2.0,), "outline") for k, e in enumerate(saw)), pen.strokes(bars, 0.8, "scales")]


def scaled(w: float, n: float, pen_um: float) -> list[Shape]:
    """A fine animal hair: overlapping scales, a saw edge."""
    return _scales(tube.axis(n, lambda t: 0.30 * sin(2 * pi * (0.7 * t + 0.1))), w, n, 0.75 * w)


def pithed(w: float, n: float, pen_um: float) -> list[Shape]:
    """A coarse hair: fine scale edges, and a dark pith like a ladder."""
    line = tube.axis(n, lambda t: 0.12 * sin(2 * pi * (0.6 * t + 0.1)))
    rungs = []
    count = round(n / (0.30 * w))
    for k in range(1, count):
        a, b = (k + 0.12) / count, (k + 0.62) / count
        block = [tube.beside(line, lambda t: w / 2, t, u) for t, u in ((a, -0.36), (a, 0.36), (b, 0.36), (b, -0.36))]
        rungs.append(pen.filled(block, "pith"))
    return [*_scales(line, w, n, 0.42 * w)[:2], *rungs]


def barbule(w: float, n: float, pen_um: float) -> list[Shape]:
    """A thread of a feather: swollen nodes one after the other, some with prongs, thinner toward the end."""
    line = tube.axis(n, lambda t: 0.22 * sin(2 * pi * (0.6 * t + 0.1)))
    nodes = 9

    def half(t: float) -> float:
        near = abs((t * nodes) % 1 - 0.5) * 2  # 0 in the middle of a stretch, 1 at a node
        return w / 2 * (1 - 0.55 * t) * (0.42 + 0.58 * pow(max(0.0, (near - 0.62) / 0.38), 1.4))

    out = sides(line, half)
    for k in range(1, nodes):
        t = k / nodes
        for s in (-1, 1):
            root = tube.beside(line, lambda t: w / 2 * (1 - 0.55 * t), t, s * 0.85, -0.05 * w)
            tip = tube.beside(line, lambda t: w / 2 * (1 - 0.55 * t), t, s * (1.9 if k < 5 else 1.3), (1.1 if k < 5 else 0.5) * w)
            out.append(pen.line((root, tip), (2.0, 0.7), "prongs"))
    return out


def socketed(w: float, n: float, pen_um: float) -> list[Shape]:
    """A solid bristle, strongly tapering from a round socket to a sharp point."""
    line = tube.axis(n, lambda t: 0.15 + 0.35 * t)

    def half(t: float) -> float:
        return float(w / 2 * (1 - t) ** 0.85 * min(1.0, 0.62 + t * n / (1.2 * w)))

    ring = tube.ring(line, half)
    right, left = tube.sides(line, half)
    core = pen.stroke(tuple(line[10:150]), 0.6, "core", role="faint")
    socket = [
        pen.ring(line[0][0], line[0][1], 0.80 * w, 2.0, "base", ry=0.42 * w),
        pen.ring(line[0][0], line[0][1], 1.15 * w, 0.8, "base", ry=0.62 * w),
    ]
    skin = [pen.line(((s * 1.15 * w, 0.0), (s * 2.2 * w, -0.10 * w)), (1.2, 0.8), "base") for s in (-1, 1)]
    return [*socket, *skin, pen.contour(geometry.clockwise(ring), 1.2, 2.2, "outline"), core] if right != left else []


def s_bent(w: float, n: float, pen_um: float) -> list[Shape]:
    """A short solid glassy rod bent like a drawn-out S, a slight swelling on the way, no socket."""
    line = tube.axis(n, lambda t: 0.05 + 0.62 * cos(2 * pi * t))

    def half(t: float) -> float:
        swelling = 0.78 + 0.22 * max(0.0, 1 - ((t - 0.42) / 0.10) ** 2)
        return w / 2 * tube.round_ends(t, 0.5 * w / n, 0.9 * w / n) * swelling * (1 - 0.25 * max(0.0, t - 0.6))

    ring = geometry.clockwise(tube.ring(line, half))
    return [
        pen.contour(ring, 1.4, 2.4, "outline"),
        pen.stroke(tuple(tube.beside(line, half, 0.1 + 0.8 * k / 40, -0.3) for k in range(41)), 0.6, "glint", role="faint"),
    ]


def jointed(w: float, n: float, pen_um: float) -> list[Shape]:
    """A piece of a limb: hard-skinned joints of unequal size, hairs, a claw; the width is that of its stoutest joint."""
    line = tube.axis(n, lambda t: 0.15 + 0.55 * sin(pi * t))
    joints = (
        (0.0, 0.24, 1.0, 0.86),
        (0.255, 0.40, 0.80, 0.72),
        (0.415, 0.66, 0.66, 0.50),
        (0.675, 0.78, 0.46, 0.40),
        (0.79, 0.93, 0.38, 0.26),
    )
    out: list[Shape] = []
    for a, b, w1, w2 in joints:
        piece = tuple(line[round(a * 240) : round(b * 240) + 1])

        def half(t: float, w1: float = w1, w2: float = w2) -> float:
            return float(w / 2 * (w1 + (w2 - w1) * t) * tube.round_ends(t, 0.10, 0.10) ** 0.35)

        out.append(pen.contour(geometry.clockwise(tube.ring(piece, half)), 1.3, 2.2, "outline"))
        for s in (-1, 1):
            foot = tube.beside(piece, half, 0.72, s)
            out.append(pen.line((foot, tube.beside(piece, half, 0.72, s * 2.1, 0.32 * w)), (1.4, 0.6), "hairs"))
    for (_, a, _, w1), (b, _, w2, _) in pairwise(joints):  # the soft skin between two hard joints
        for s in (-1, 1):
            ends = [tube.beside(line, lambda t: w / 2, t, s * 0.62 * share) for t, share in ((a - 0.004, w1), (b + 0.004, w2))]
            out.append(pen.stroke(ends, 0.8, "skin"))
    x, y, nx, ny = tube.place(line, 0.93)
    dx, dy = ny, -nx
    for s in (-1, 1):
        claw = [
            (x, y),
            (x + 0.26 * w * dx + s * 0.20 * w * nx, y + 0.26 * w * dy + s * 0.20 * w * ny),
            (x + 0.50 * w * dx + s * 0.12 * w * nx, y + 0.50 * w * dy + s * 0.12 * w * ny),
        ]
        out.append(pen.line(geometry.curve(claw, per=6), (2.4, 0.8), "claw"))
    return out
