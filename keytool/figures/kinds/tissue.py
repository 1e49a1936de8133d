"""Scraps of plants: torn tissue of brick-like cells, and the net of a peat-moss leaf."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import cos, pi, sin
from random import Random

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape
from .points import pts

_ROWS = 6


def plant(n: float) -> Sketch:
    """A torn piece of leaf or root: brick-like cells with rounded corners that share their walls, a pore in the skin, a vessel beneath."""
    chance = Random("torn tissue")
    tall = 0.140 * n
    top, half = -0.5 * _ROWS * tall, 0.520 * n  # the torn end cells stand open, which takes a little off
    spans = [
        (-half + (0.0 if row == 2 else chance.uniform(0.02, 0.13) * n), half - (0.0 if row == 3 else chance.uniform(0.02, 0.13) * n))
        for row in range(_ROWS)
    ]

    def bent(points: Sequence[Point]) -> Points:
        return tuple((x, y + 0.035 * n * cos(2.4 * x / n) - 0.016 * n * sin(7 * x / n)) for x, y in points)

    out: list[Shape] = []
    for row, (a, b) in enumerate(spans):
        y = top + row * tall
        walls = [a]
        while walls[-1] < b - 0.26 * n:
            walls.append(walls[-1] + chance.uniform(0.15, 0.23) * n)
        walls.append(b)
        for k, (x0, x1) in enumerate(pairwise(walls)):
            torn = k == 0 or k == len(walls) - 2
            room = bent(_brick(x0, y, x1, y + tall, 0.011 * n, chance))
            if not torn:
                out.append(pen.contour(room, 1.0, 1.9, "cells"))
                out += pen.grain(room, 0.020 * n, "shade", lambda p, x0=x0, x1=x1: 0.9 * max(0.0, (p[0] - x0) / (x1 - x0) - 0.55))  # type: ignore[misc]
            else:  # a broken cell stands open at the torn edge
                cut = x0 + 0.12 * (x1 - x0) if k == 0 else x1 - 0.12 * (x1 - x0)
                for run in geometry.runs((*room, room[0]), lambda p, m=cut, left=k == 0: p[0] > m if left else p[0] < m):  # type: ignore[misc]
                    out.append(pen.line(run, (0.6, 1.4, 1.4, 0.6), "cells"))
            if row in (1, 4) and not torn:
                spots = bent([(x0 + (x1 - x0) * s, y + 0.5 * tall) for s in (0.3, 0.5, 0.7)])
                out += [pen.ring(px, py, 0.010 * n, 0.7, "pits") for px, py in spots]
    [seat] = bent([(0.02 * n, top + 3.5 * tall)])
    return Sketch((*out, *_stoma(*seat, 0.066 * n), *_vessel(n, -top, bent)), pen_for(n, n))


def _brick(x0: float, y0: float, x1: float, y1: float, wall: float, chance: Random) -> Points:
    """The room of one cell, its corners rounded, its sides a little uneven."""
    r = 0.030 * (x1 - x0) / 0.2
    a, b, c, d = x0 + wall / 2, y0 + wall / 2, x1 - wall / 2, y1 - wall / 2
    lean = chance.uniform(-0.5, 0.5) * r
    ring = (
        *((a + r, b), ((a + c) / 2, b + 0.2 * lean), (c - r, b), (c, b + r), (c + 0.4 * lean, (b + d) / 2), (c, d - r)),
        *((c - r, d), ((a + c) / 2, d - 0.2 * lean), (a + r, d), (a, d - r), (a + 0.4 * lean, (b + d) / 2), (a, b + r)),
    )
    return geometry.clockwise(geometry.curve(ring, closed=True, per=5))


def _stoma(x: float, y: float, r: float) -> list[Shape]:
    """A pore between two curved lips, laid over the cells."""
    lips = geometry.ellipse(x, y, r, 0.70 * r, count=40)
    slit = geometry.ellipse(x, y, 0.52 * r, 0.16 * r, count=28)
    return [pen.filled(lips, "skin", role="paper"), pen.contour(lips, 1.2, 1.8, "stoma"), pen.filled(slit, "stoma")]


def _vessel(n: float, low: float, bent: Callable[[Sequence[Point]], Points]) -> list[Shape]:
    """A water vessel below the cells, its spring showing, the spring drawn out beyond it at one end."""
    y, r = low + 0.060 * n, 0.042 * n
    turns = []
    for k in range(17):
        x = -0.42 * n + 0.046 * n * k + 0.0006 * n * k * k
        front = [(x + 0.040 * n * t + 0.012 * n * sin(pi * t), y + r * (1 - 2 * t)) for t in (j / 8 for j in range(9))]
        turns.append(pen.line(bent(front), (0.8, 2.4, 0.8), "vessel"))
    walls = [bent([(x * n, y + s * r) for x in (-0.44 + 0.02 * k for k in range(40))]) for s in (-1, 1)]
    return [*(pen.line(wall, (1.2,), "vessel") for wall in walls), *turns]


def wood(n: float) -> Sketch:
    """A wide water pipe with ringed pits all over its wall, between narrow thick-walled fibres with slit pits; broken off at both ends."""
    pipe = (-0.115, 0.125)
    fibres = ((-0.285, -0.215), (-0.200, -0.130), (0.140, 0.205), (0.220, 0.295))
    out: list[Shape] = []
    for k, (x0, x1) in enumerate(fibres):
        top, low = -0.44 + 0.05 * ((k * 0.618) % 1), 0.40 + 0.08 * ((k * 0.755) % 1)
        out += _fibre(x0, x1, top, low, n)
    top, low = -0.488, 0.470
    for x, weights in ((pipe[0], (1.4, 2.0, 1.4)), (pipe[1], (1.8, 2.8, 1.8))):
        out.append(pen.line(geometry.scaled(((x, top), (x + 0.004, 0.0), (x, low)), n), weights, "cells"))
    rim = geometry.ellipse(0.005 * n, (top + 0.030) * n, 0.120 * n, 0.040 * n, turn=0.12, count=48)
    jag = ((pipe[0], low), (-0.06, low + 0.030), (-0.01, low - 0.010), (0.05, low + 0.030), (0.085, low + 0.005), (pipe[1], low))
    out += [pen.contour(rim, 0.9, 1.4, "torn"), pen.stroke(geometry.scaled(jag, n), 1.1, "torn")]
    return Sketch((*out, *_ringed_pits(pipe, top + 0.115, low - 0.03, n)), pen_for(0.72 * n, n))


def _fibre(x0: float, x1: float, top: float, low: float, n: float) -> list[Shape]:
    """One narrow tube: two double walls close together, slanting slits, a splintered end."""
    wall = 0.018
    sides = [pen.line(geometry.scaled(((x, top), (x, low)), n), (1.3, 1.8, 1.3), "cells") for x in (x0, x1)]
    inner = [
        geometry.scaled(((x0 + wall, top + 0.02), (x0 + wall, low - 0.02)), n),
        geometry.scaled(((x1 - wall, top + 0.02), (x1 - wall, low - 0.02)), n),
    ]
    mid = (x0 + x1) / 2
    ends = [
        geometry.scaled(((x0, y), (x0 + 0.3 * (x1 - x0), y + way * 0.035), (mid, y + way * 0.008), (x1, y + way * 0.028)), n)
        for y, way in ((top, -1), (low, 1))
    ]
    count = round((low - top) / 0.105)
    slits = [
        pen.line(geometry.scaled(((mid - 0.006, y + 0.020), (mid + 0.006, y - 0.020)), n), (0.5, 1.6, 0.5), "pits")
        for y in (top + 0.08 + 0.105 * k for k in range(count - 1))
    ]
    return [*sides, pen.strokes(inner, 0.6, "cells"), *(pen.stroke(one, 1.0, "torn") for one in ends), *slits]


def _ringed_pits(pipe: tuple[float, float], top: float, low: float, n: float) -> list[Shape]:
    """Ringed pits in crossing rows on the wall of the pipe, drawn narrower toward its sides, where the wall turns away."""
    out: list[Shape] = []
    middle, half = sum(pipe) / 2, (pipe[1] - pipe[0]) / 2
    for row in range(round((low - top) / 0.053)):
        turns = (-0.95, -0.32, 0.32, 0.95) if row % 2 else (-0.64, 0.0, 0.64)
        for turn in turns:
            x, y = middle + 0.96 * half * sin(turn), top + 0.053 * row
            wide = 0.026 * cos(turn)
            out += [
                pen.ring(x * n, y * n, wide * n, 0.9, "pits", ry=0.022 * n),
                pen.line(geometry.scaled(((x - 0.5 * wide, y), (x + 0.5 * wide, y)), n), (0.6, 1.7, 0.6), "pits"),
            ]
    return out


def moss_net(n: float) -> Sketch:
    """A scrap of peat-moss leaf: long empty cells, bent like an S, with hoops and pores, in a net of narrow green ones between them."""
    gap = 0.026 * n
    columns = ((-3, -1, 1, 3), (-4, -2, 0, 2, 4), (-3, -1, 1, 3))
    wide = (0.5 * n + gap / 2) / 5
    deep = 2.35 * wide
    net = _Net(wide, deep, gap)
    seats = [(col * wide, row * deep) for row, cols in zip((-1, 0, 1), columns, strict=True) for col in cols]
    out: list[Shape] = []
    for x, y in seats:
        out.append(pen.contour(net.cell(x, y), 1.1, 1.8, "cells"))
        for k in range(-3, 4):
            v = y + 0.205 * k * deep
            u = net.half(0.205 * k) - 0.2 * net.gap
            hoop = [(net.at(x + u * j / 8, v)[0], v + 0.20 * u * (1 - (j / 8) ** 2) - 0.16 * u * j / 8) for j in range(-8, 9)]
            out.append(pen.line(hoop, (0.6, 1.5, 0.6), "hoops"))
        for side, share in ((1, -0.31), (-1, -0.10), (1, 0.10), (-1, 0.31)):
            px, py = net.at(x + side * 0.62 * net.half(share), y + share * deep)
            out.append(pen.ring(px, py, 0.0125 * n, 0.9, "pores", ry=0.010 * n))
    region = geometry.scaled(pts("-.56 -.9, .56 -.9, .56 .9, -.56 .9"), n)

    def green(p: Point) -> float:
        margins = [net.margin(p, seat) for seat in seats]
        return 0.95 if 0.10 * net.gap < min(margins) < 0.85 * net.gap else 0.0

    return Sketch((*out, *pen.grain(region, 0.0115 * n, "green", green, sizes=(0.9, 1.2))), pen_for(n, 0.95 * n))


@dataclass(frozen=True, slots=True)
class _Net:
    """How the clear cells lie: their half width and half length at full, and the width of the green cells between them (µm)."""

    wide: float
    deep: float
    gap: float

    def half(self, t: float) -> float:
        """Half the width of a clear cell at share t of its half length; neighbours in the next row fill what it leaves."""
        t = abs(t)
        return max(0.0, self.wide * (1 - t * t * (3 - 2 * t)) - self.gap / 2) if t < 1 else 0.0

    def at(self, x: float, y: float) -> Point:
        """A place on the leaf, all of whose rows are bent alike."""
        return (x + 0.20 * self.wide * sin(pi * y / self.deep), y)

    def cell(self, x: float, y: float) -> Points:
        """The edge of the clear cell whose middle is there."""
        steps = [k / 40 for k in range(-40, 41) if self.half(k / 40) > 0]
        right = [self.at(x + self.half(t), y + t * self.deep) for t in steps]
        left = [self.at(x - self.half(t), y + t * self.deep) for t in reversed(steps)]
        return geometry.clockwise((*right, *left))

    def margin(self, p: Point, seat: Point) -> float:
        """How far a place lies beside a clear cell (negative within it); far off where it lies before or behind it."""
        t = (p[1] - seat[1]) / self.deep
        return abs(p[0] - self.at(seat[0], p[1])[0]) - self.half(t) if self.half(t) > 0 else self.wide
