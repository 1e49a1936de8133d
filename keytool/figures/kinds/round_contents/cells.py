"""Cells within a wall, one or many, and the animals they become."""

from __future__ import annotations

from math import cos, pi, sin

from ... import geometry, pen
from ...shapes import Point, Points, Shape
from .room import PART, at, shaded, size


def cell(room: Points, pen_um: float) -> list[Shape]:
    """One cell with a clear nucleus."""
    edge = pen.wobble(tuple((0.9 * x, 0.9 * y) for x, y in room), 0.03 * size(room), 3, "cell")
    return _cells(room, pen_um, [edge])


def _cells(room: Points, pen_um: float, edges: list[Points]) -> list[Shape]:
    out: list[Shape] = []
    shade = shaded(room)
    for edge in edges:
        box = geometry.around(edge)
        x, y = box.x + 0.54 * box.width, box.y + 0.46 * box.height
        r = 0.20 * min(box.width, box.height)

        def grain(p: Point, x: float = x, y: float = y, r: float = r) -> float:
            return 0.0 if (p[0] - x) ** 2 + (p[1] - y) ** 2 < (1.25 * r) ** 2 else 0.8 * shade(p)

        out += [pen.contour(edge, 0.8, 1.3, PART), pen.ring(x, y, r, 0.9, PART), pen.disc(x, y, 0.42 * r, PART)]
        out += pen.grain(edge, 3.6 * pen_um, PART, grain)
    return out


def _parted(room: Points, spots: tuple[tuple[float, float], ...]) -> list[Points]:
    """The room parted into one cell for each spot: every point goes to the spot nearest to it."""
    box = geometry.around(room)
    seats = [(x * box.width / 2, y * box.height / 2) for x, y in spots]
    core = tuple((0.93 * x, 0.93 * y) for x, y in room)
    out = []
    for sx, sy in seats:
        ring: list[Point] = []
        for k in range(90):
            a = 2 * pi * k / 90
            lo, hi = 0.0, box.width + box.height
            for _ in range(22):
                mid = (lo + hi) / 2
                p = (sx + mid * cos(a), sy + mid * sin(a))
                mine = (p[0] - sx) ** 2 + (p[1] - sy) ** 2
                if geometry.inside(core, p) and all(mine <= (p[0] - tx) ** 2 + (p[1] - ty) ** 2 for tx, ty in seats):
                    lo = mid
                else:
                    hi = mid
            ring.append((sx + 0.965 * lo * cos(a), sy + 0.965 * lo * sin(a)))
        out.append(_softened(ring))
    return out


def _softened(ring: list[Point]) -> Points:
    """Corners rounded off: each point moved to the middle of its neighbourhood."""
    count = len(ring)
    return tuple(
        (sum(ring[(k + j) % count][0] for j in range(-4, 5)) / 9, sum(ring[(k + j) % count][1] for j in range(-4, 5)) / 9)
        for k in range(count)
    )


def two(room: Points, pen_um: float) -> list[Shape]:
    """Two cells."""
    return _cells(room, pen_um, _parted(room, ((0.0, -0.46), (0.0, 0.50))))


def four(room: Points, pen_um: float) -> list[Shape]:
    """Four cells."""
    box = geometry.around(room)
    seats = (
        ((0.0, -0.66), (0.35, -0.06), (-0.35, 0.08), (0.05, 0.66))
        if box.height > 1.3 * box.width
        else ((-0.42, -0.42), (0.42, -0.42), (-0.42, 0.42), (0.42, 0.42))
    )
    return _cells(room, pen_um, _parted(room, seats))


def tinted_cells(room: Points, pen_um: float) -> list[Shape]:
    """Four cells of one even tint without a nucleus, two and two in nested shells of jelly, as blue-green bacteria lie."""
    r = size(room)
    out: list[Shape] = []
    for s in (-1, 1):
        shell = geometry.ellipse(s * 0.44 * r, s * 0.06 * r, 0.43 * r, 0.70 * r, turn=0.12 * s, count=60)
        out.append(pen.stroke(shell, 0.7, "jelly", closed=True))
        for k in (-1, 1):
            x, y = s * 0.44 * r - 0.04 * s * k * r, s * 0.06 * r + k * 0.31 * r
            flat = [
                (px, min(py, 0.27 * r) if k < 0 else max(py, -0.27 * r)) for px, py in geometry.ellipse(0, 0, 0.31 * r, 0.30 * r, count=48)
            ]
            inner = geometry.moved(flat, x, y)
            out += [
                pen.stroke(geometry.moved(tuple((1.16 * px, 1.13 * py) for px, py in flat), x, y), 0.5, "jelly", closed=True),
                pen.contour(inner, 0.9, 1.5, PART),
                *pen.grain(inner, 2.3 * pen_um, PART, lambda p: 0.8, sizes=(0.9, 1.1)),
            ]
    return out


def animal(room: Points, pen_um: float) -> list[Shape]:
    """A folded animal with a pair of jaws."""
    edge = tuple((0.86 * x, 0.90 * y) for x, y in room)
    r = size(room)
    folds = [
        geometry.curve([at(room, -0.74 * w, y), at(room, 0.0, y + 0.10), at(room, 0.74 * w, y)], per=8)
        for y, w in ((-0.52, 0.85), (0.24, 1.0), (0.44, 0.95), (0.62, 0.75))
    ]
    x, y = at(room, 0.0, -0.14)
    jaws: list[Shape] = [pen.contour(geometry.ellipse(x, y, 0.30 * r, 0.30 * r, count=40), 0.9, 1.3, PART)]
    for s in (-1, 1):
        jaws += [
            pen.line(
                geometry.curve([(x + s * 0.04 * r, y - 0.20 * r), (x + s * 0.20 * r, y), (x + s * 0.04 * r, y + 0.20 * r)], per=8),
                (1.2, 2.2, 1.2),
                PART,
            ),
            pen.strokes([((x + s * 0.05 * r, y + k * 0.08 * r), (x + s * 0.15 * r, y + k * 0.08 * r)) for k in (-1, 0, 1)], 0.8, PART),
        ]
    return [
        pen.contour(edge, 0.9, 1.5, PART),
        pen.strokes(folds, 0.8, PART),
        *jaws,
        *pen.grain(edge, 4.0 * pen_um, PART, lambda p: 0.5 if p[1] > 0.1 * r else 0.15),
    ]
