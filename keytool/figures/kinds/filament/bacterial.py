"""Filaments of bacteria: rows of cells, sheaths, spore-bearing threads, iron straws and braids; and chains of yeast."""

from __future__ import annotations

from functools import partial
from math import cos, pi, sin

from ... import geometry, pen
from ...shapes import Point, Shape
from .. import tube
from ..points import pts
from .strand import both_walls, course, cross_lines


def row(w: float, n: float, pen_um: float) -> list[Shape]:
    """A cyanobacterium: short cells evenly tinted, walls close together, a thin clear sheath."""
    line = course(n)
    count = round(n / (0.6 * w))
    ring = tube.ring(line, lambda t: max(0.0, w / 2 - 1.6 * pen_um))
    sheath = [pen.stroke(s, 0.6, "sheath") for s in tube.sides(line, lambda t: w / 2 + max(0.14 * w, 2.5 * pen_um))]
    return [
        *both_walls(line, w / 2, 1.1, 1.6),
        cross_lines(line, w / 2, [k / count for k in range(1, count)], 0.9),
        *pen.grain(ring, 2.3 * pen_um, "contents", lambda p: 0.6),
        *sheath,
    ]


def _loose(w: float, reach: float, t: float) -> float:
    """Half width of one layer of a loose sheath."""
    return w * (reach + 0.08 * sin(31 * t + reach))


def bundle(w: float, n: float, pen_um: float) -> list[Shape]:
    """Several such rows in one wide layered sheath."""
    out: list[Shape] = []
    middle = course(n, 0.16)
    for s in (-1.15, 0.0, 1.15):
        line = tuple(tube.beside(middle, lambda t: w, k / 240, s * (1 + 0.10 * sin(9 * k / 240 + s))) for k in range(12, 229))
        ends = geometry.spaced(line, n / 200)
        count = round(n * 0.9 / (0.75 * w))
        out += [*both_walls(ends, w / 2, 0.9, 1.2), cross_lines(ends, w / 2, [k / count for k in range(1, count)], 0.7)]
        out += pen.grain(tube.ring(ends, lambda t: 0.35 * w), 2.6 * pen_um, "contents", lambda p: 0.45)
    for reach, weight in ((2.15, 1.5), (2.35, 0.6), (2.55, 0.6), (2.75, 1.2)):
        loose = partial(_loose, w, reach)
        out += [pen.stroke(geometry.curve(side[::8], per=4), weight, "sheath") for side in tube.sides(middle, loose)]
    return out


def empty_sheath(w: float, n: float, pen_um: float) -> list[Shape]:
    """A soft, wavy, layered tube; a few cells left inside. The width is that of the tube."""
    line = tube.axis(n, lambda t: 0.45 * sin(2 * pi * (1.1 * t + 0.1)))
    out: list[Shape] = []
    for share, weight in ((1.0, 1.5), (0.84, 0.6), (0.70, 0.6), (0.56, 1.0)):
        half = share * w / 2 - (0.75 * pen_um if share == 1.0 else 0.0)  # the outermost ink ends at the true width
        sides = (geometry.offset(line, [half] * len(line)), geometry.offset(line, [-half] * len(line)))
        out += [pen.stroke(s, weight, "sheath" if share < 1 else "outline") for s in sides]
    cells = tuple(line[150:190])
    out += [
        *both_walls(cells, 0.24 * w, 0.9, 1.1, "contents"),
        cross_lines(cells, 0.24 * w, [k / 7 for k in range(8)], 0.8),
        *pen.grain(tube.ring(cells, lambda t: 0.2 * w), 2.4 * pen_um, "contents"),
    ]
    return out


def budding(w: float, n: float, pen_um: float) -> list[Shape]:
    """Stretched yeast cells that stay joined, pinched at every join, buds at the joins."""
    count = max(3, round(n / (3.4 * w)))
    steps = 24  # of the line, to each cell
    line = tube.axis(n, lambda t: 0.22 * sin(2 * pi * (0.75 * t + 0.1)), steps=steps * count)
    out: list[Shape] = []
    for k in range(count):
        piece = tuple(line[k * steps : (k + 1) * steps + 1])
        ring = tube.ring(piece, lambda t: w / 2 * tube.round_ends(t, 0.16, 0.16) * (1 - 0.08 * sin(pi * t)) + 0.02 * w)
        out += [pen.contour(ring, 1.1, 1.9, "outline"), pen.ring(*tube.place(piece, 0.4)[:2], 0.22 * w, 0.7, "contents")]
        if k > 0:
            x, y, nx, ny = tube.place(piece, 0.05)
            s = 1 if k % 2 else -1
            bud = geometry.ellipse(x + s * nx * 0.72 * w, y + s * ny * 0.72 * w - 0.1 * w, 0.26 * w, 0.42 * w, turn=-0.7 * s, count=40)
            out.append(pen.contour(bud, 1.0, 1.6, "buds"))
    return out


def plain_threads(w: float, n: float, pen_um: float) -> list[Shape]:
    """The same thread with plain tips: no beads, no coils."""
    ways = (
        ((0.04, 0.30), (0.055, 0.20), (0.045, 0.10)),
        ((0.20, 0.42), (0.225, 0.33), (0.225, 0.25)),
        ((-0.14, 0.28), (-0.16, 0.19), (-0.15, 0.11)),
    )
    lines = [geometry.curve(geometry.scaled(way, n), per=8) for way in (*ways, ((-0.20, 0.68), (-0.25, 0.63), (-0.29, 0.56)))]
    tips = [
        pen.filled((*geometry.offset(one, [w / 2] * len(one)), *reversed(geometry.offset(one, [-w / 2] * len(one)))), "tips")
        for one in lines
    ]
    return [*_branching(w, n), *tips]


def spore_threads(w: float, n: float, pen_um: float) -> list[Shape]:
    """A very fine branching bacterial thread, one dark line; its tips end in straight, wavy and coiled rows of tiny beads."""
    out = _branching(w, n)
    coil = [(-0.14 + 0.055 * sin(1.05 * k) - 0.004 * k, 0.27 - 0.0165 * k + 0.012 * cos(1.05 * k)) for k in range(13)]
    straight = [(0.20 + 0.012 * k, 0.405 - 0.027 * k) for k in range(9)]
    wavy = [(0.045 + 0.012 * sin(0.9 * k), 0.285 - 0.026 * k) for k in range(10)]
    tiny = 0.62 * w
    for chain in (coil, straight, wavy):
        walk = geometry.spaced(geometry.curve(geometry.scaled(chain, n), per=8), 2.15 * tiny)
        out += [pen.disc(x, y, tiny, "spores") for x, y in walk]
    return out


def _branching(w: float, n: float) -> list[Shape]:
    ways = (".02 1, 0 .8, .05 .62, 0 .45, .04 .3", ".05 .62, .15 .52, .20 .42", ".0 .45, -.10 .38, -.14 .28", ".01 .82, -.12 .74, -.20 .68")
    lines = [geometry.curve(geometry.scaled(pts(way), n), per=10) for way in ways]
    return [
        pen.filled((*geometry.offset(line, [w / 2] * len(line)), *reversed(geometry.offset(line, [-w / 2] * len(line)))), "outline")
        for line in lines
    ]


def straw(w: float, n: float, pen_um: float) -> list[Shape]:
    """A straight brittle rust-coloured straw, mostly empty; a few rods left inside."""
    line = tube.axis(n, lambda t: 0.02)
    end = [tube.beside(line, lambda t: w / 2, 1.0, u, d * w) for u, d in pts("-1 0, -.4 .4, .1 -.3, .6 .3, 1 0")]
    out = [*both_walls(line, w / 2, 2.2, 2.8), pen.stroke(end, 1.2, "outline")]
    for k in range(5):
        x, y = tube.place(line, 0.10 + 0.075 * k)[:2]
        out.append(pen.stroke(geometry.ellipse(x, y, 0.17 * w, 0.55 * w, count=28), 0.8, "rods", closed=True))
    crust = [
        tube.beside(line, lambda t: w / 2, 0.03 * k + 0.02, (1 if k % 2 else -1) * (1.02 + 0.10 * ((k * 0.618) % 1))) for k in range(32)
    ]
    return [*out, *(pen.disc(x, y, 0.06 * w, "crust") for x, y in crust)]


def braid(w: float, n: float, pen_um: float) -> list[Shape]:
    """A braid of fine fibres crusted with rust, twisted; the width is that of the braid."""
    out: list[Shape] = []
    line = course(n, 0.10)
    turns = n / (3.6 * w)
    for j in range(5):
        phase = 2 * pi * j / 5
        fibre = [tube.beside(line, lambda t: 0.46 * w, k / 240, sin(2 * pi * turns * k / 240 + phase)) for k in range(241)]
        depth = [cos(2 * pi * turns * k / 240 + phase) for k in range(241)]
        run: list[Point] = []
        for p, d in zip(fibre, depth, strict=True):
            if d > -0.35:
                run.append(p)
            elif len(run) > 1:
                out.append(pen.line(run, (0.8, 1.8, 0.8), "outline"))
                run = []
            else:
                run = []
        if len(run) > 1:
            out.append(pen.line(run, (0.8, 1.8, 0.8), "outline"))
    specks = [tube.beside(line, lambda t: 0.5 * w, (k + 0.5) / 40, sin(2.4 * k) * 0.95) for k in range(40)]
    return [*out, *(pen.disc(x, y, 0.05 * w, "crust") for x, y in specks)]
