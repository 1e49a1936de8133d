"""Fillings by which one plain ball is told from another: yolk, a resting cell, drops, a fine even grain, cells, a larva."""

from __future__ import annotations

from collections.abc import Callable
from math import cos, hypot, sin
from random import Random

from ... import geometry, pen
from ...shapes import Point, Points, Shape
from ..points import pts
from .room import PART, at, size


def yolk(room: Points, pen_um: float) -> list[Shape]:
    """Yolk: globules of uneven size, packed and overlapping, within a clear rim; a gleam on the glossy shell."""
    box, chance = geometry.around(room), Random("yolk")
    out: list[Shape] = []
    done: list[tuple[float, float, float]] = []
    for k in range(64):
        d = 0.80 * ((k + 0.5) / 64) ** 0.5
        x, y = d * cos(2.39996 * k) * box.width / 2, d * sin(2.39996 * k) * box.height / 2
        r = chance.uniform(0.085, 0.15) * size(room)
        ring = geometry.ellipse(x, y, r, r, count=28)
        hidden = list(done)
        for run in geometry.runs((*ring, ring[0]), lambda p, hidden=hidden: all(hypot(p[0] - a, p[1] - b) > c for a, b, c in hidden)):  # type: ignore[misc]
            out.append(pen.stroke(run, 1.0, PART))
        if (0.6 * x + 0.8 * y) > -0.1 * size(room):
            out += pen.grain(ring, 2.6 * pen_um, PART, lambda p: 0.45, sizes=(0.8,))
        done.append((x, y, r))
    gleam = tuple((0.93 * px, 0.93 * py) for px, py in geometry.spaced(room, 0.02 * box.height))
    low = min(range(len(gleam)), key=lambda k: gleam[k][0] + gleam[k][1])
    return [*out, pen.line(gleam[max(0, low - 12) : low + 12], (0.3, 1.6, 0.3), "gleam", role="faint")]


def resting(room: Points, pen_um: float) -> list[Shape]:
    """A resting cell that fills its wall: one round nucleus with its dot, a few bright grains to one side."""
    r = size(room)
    x, y = at(room, -0.14, -0.18)
    out: list[Shape] = [pen.ring(x, y, 0.26 * r, 1.0, PART), pen.disc(x, y, 0.10 * r, PART)]
    spots = ((0.42, 0.10, 0.085), (0.30, 0.40, 0.10), (0.52, 0.36, 0.06), (0.06, 0.54, 0.075), (-0.24, 0.46, 0.06), (0.50, -0.20, 0.05))
    out += [pen.ring(*at(room, u, v), s * r, 1.2, PART) for u, v, s in spots]
    return [*out, *pen.grain(tuple((0.9 * px, 0.9 * py) for px, py in room), 4.4 * pen_um, PART, _off(x, y, 0.32 * r), sizes=(0.8, 1.1))]


def _off(x: float, y: float, r: float) -> Callable[[Point], float]:
    """Stipple everywhere but in one circle."""

    def dense(p: Point) -> float:
        return 0.0 if hypot(p[0] - x, p[1] - y) < r else 0.45

    return dense


def swarmer(room: Points, pen_um: float) -> list[Shape]:
    """A swimming spore that rounded up: grains all through, thickest about a clear bubble and a nucleus."""
    r = size(room)
    (x, y), (u, v) = at(room, 0.30, -0.24), at(room, -0.24, 0.16)

    def dense(p: Point) -> float:
        if hypot(p[0] - x, p[1] - y) < 0.29 * r or hypot(p[0] - u, p[1] - v) < 0.25 * r:
            return 0.0
        return 0.55 + 0.35 * max(0.0, 1 - hypot(p[0], p[1]) / (0.8 * r))

    return [
        pen.ring(x, y, 0.27 * r, 1.0, PART),
        pen.ring(u, v, 0.22 * r, 0.7, PART, role="faint"),
        pen.disc(u, v, 0.07 * r, PART),
        *pen.grain(tuple((0.92 * px, 0.92 * py) for px, py in room), 2.7 * pen_um, PART, dense, sizes=(1.1, 1.7)),
    ]


def pole_drops(room: Points, pen_um: float) -> list[Shape]:
    """A bright drop at each end, clear between."""
    r = size(room)
    out: list[Shape] = []
    for s in (-1, 1):
        x, y = at(room, 0.10 * s, 0.68 * s)
        out += [
            pen.contour(geometry.ellipse(x, y, 0.24 * r, 0.24 * r, count=40), 1.4, 2.2, PART),
            pen.disc(x - 0.08 * r, y - 0.08 * r, 0.035 * r, PART),
        ]
    return out


def packed(room: Points, pen_um: float) -> list[Shape]:
    """Drops of every size, packed from wall to wall: a few large, small ones in the gaps."""
    chance, r = Random("packed"), size(room)
    spots: list[tuple[float, float, float]] = []
    for low, high, tries in ((0.20, 0.30, 400), (0.11, 0.17, 900), (0.05, 0.08, 1600)):
        for _ in range(tries):
            x, y, s = chance.uniform(-1, 1), chance.uniform(-1, 1), chance.uniform(low, high)
            if hypot(x, y) + s < 0.97 and all(hypot(x - a, y - b) > s + c + 0.012 for a, b, c in spots):
                spots.append((x, y, s))
    return [pen.contour(geometry.ellipse(*at(room, x, y), s * r, s * r, count=36), 0.8, 1.5, PART) for x, y, s in spots]


def plain(room: Points, pen_um: float) -> list[Shape]:
    """Nothing that tells: a fine even grain, a second faint outline that the lens alone makes."""
    inner = tuple((0.93 * x, 0.93 * y) for x, y in room)
    return [
        pen.stroke(inner, 0.5, "fringe", role="faint", closed=True),
        *pen.grain(inner, 3.0 * pen_um, PART, lambda p: 0.5, sizes=(0.7,)),
    ]


def dividing(room: Points, pen_um: float) -> list[Shape]:
    """A ball of round cells, the near ones over the far ones, each with its nucleus; the shell stands clear of them."""
    r, box = size(room), geometry.around(room)
    tall = box.height / box.width
    seats: list[tuple[float, float, float]] = []
    for z, count, reach in ((1.0, 2, 0.20), (0.8, 7, 0.44), (0.35, 11, 0.68)):
        for k in range(count):
            a = 6.28319 * k / count + z
            seats.append((reach * cos(a) * r * 0.92, reach * sin(a) * r * 0.92 * tall, 0.34 if z > 0.5 else 0.29))
    out: list[Shape] = []
    front: list[tuple[float, float, float]] = []
    for x, y, s in seats:
        ring = geometry.ellipse(x, y, s * r, s * r, count=44)
        hidden = list(front)

        def free(p: Point, hidden: list[tuple[float, float, float]] = hidden) -> bool:
            return all(hypot(p[0] - a, p[1] - b) > c for a, b, c in hidden)

        out += [pen.line(run, (1.3,), PART) for run in geometry.runs((*ring, ring[0]), free)]
        if free((x, y)):
            out += [pen.ring(x, y, 0.30 * s * r, 0.8, PART), pen.disc(x, y, 0.10 * s * r, PART)]
        shade = geometry.ellipse(x, y, 0.95 * s * r, 0.95 * s * r, count=30)

        def dark(p: Point, x: float = x, y: float = y, s: float = s, free: Callable[[Point], bool] = free) -> float:
            return 0.75 * max(0.0, (0.6 * (p[0] - x) + 0.8 * (p[1] - y)) / (s * r)) if free(p) else 0.0

        out += pen.grain(shade, 2.6 * pen_um, PART, dark, sizes=(0.8, 1.1))
        front.append((x, y, s * r))
    return out


def folded_larva(room: Points, pen_um: float) -> list[Shape]:
    """A larva wound up in its shell: blunt head, even body, fine tail, each fold over the one before."""
    r, box = size(room), geometry.around(room)
    tall = box.height / box.width
    way = pts(
        ".10 -.30, .42 -.62, .50 -.20, .48 .40, .22 .74, -.14 .66, -.42 .30, -.50 -.30, -.30 -.72, "
        ".02 -.68, .20 -.34, .12 .14, -.06 .42, -.20 .16, -.20 -.24"
    )
    line = geometry.spaced(geometry.curve([(x * r, y * r * tall) for x, y in way], per=16), 0.03 * r)
    last = len(line) - 1
    half = [
        0.175 * r * min(1.0, (0.35 + 12 * k / last) if k < 0.055 * last else 1.0, (1.02 * (last - k) / (0.34 * last)) ** 0.8)
        for k in range(last + 1)
    ]
    half[0] = 0.03 * r
    rings: list[tuple[int, Points]] = []
    for start in range(0, last, 8):
        piece, wide = line[start : start + 9], half[start : start + 9]
        if len(piece) > 1:
            rings.append((start, (*geometry.offset(piece, wide), *reversed(geometry.offset(piece, [-w for w in wide])))))
    out: list[Shape] = []

    def clear(k: int, p: Point) -> bool:
        return not any(start + 8 < k - 14 and geometry.inside(ring, p) for start, ring in rings)

    for sign, weight in ((1, 1.1), (-1, 1.8)):
        run: list[Point] = []
        for k, p in enumerate(geometry.offset(line, [sign * w for w in half])):
            if clear(k, p):
                run.append(p)
                continue
            if len(run) > 1:
                out.append(pen.line(run, (weight,), PART))
            run = []
        if len(run) > 1:
            out.append(pen.line(run, (weight,), PART))
    cap = (geometry.offset(line, half)[0], line[0], geometry.offset(line, [-w for w in half])[0])
    out.append(pen.stroke(cap, 1.2, PART))
    gullet = line[3 : round(0.20 * last)]
    out.append(pen.line(gullet, (0.6, 0.9), PART))
    chance = Random("larva")
    dots: list[Point] = []
    across = geometry.normals(line)
    for k in range(round(0.22 * last), round(0.86 * last)):
        for _ in range(2):
            by = chance.uniform(-0.55, 0.55) * half[k]
            p = (line[k][0] + by * across[k][0], line[k][1] + by * across[k][1])
            if clear(k, p):
                dots.append(p)
    return [*out, *(pen.disc(x, y, 0.018 * r, PART) for x, y in dots)]
