"""Scraps of plants: torn tissue of brick-like cells, and the net of a peat-moss leaf."""

from __future__ import annotations

from itertools import pairwise
from math import sin
from random import Random

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape
from .points import pts

_ROWS = 6


def plant(n: float) -> Sketch:
    """A torn piece of leaf or root: brick-like cells that share their walls, pits in some, a vessel with its spring, ragged ends."""
    chance = Random("torn tissue")
    tall = 0.140 * n
    top = -0.5 * _ROWS * tall
    spans = [
        (-0.5 * n + (0.0 if row == 2 else chance.uniform(0.02, 0.13) * n), 0.5 * n - (0.0 if row == 3 else chance.uniform(0.02, 0.13) * n))
        for row in range(_ROWS)
    ]
    bounds = [_border(top + row * tall, spans[max(0, row - 1)], spans[min(row, _ROWS - 1)], row, n) for row in range(_ROWS + 1)]
    out: list[Shape] = [pen.line(border, (0.8, 2.0, 2.0, 2.0, 0.8), "cells") for border in bounds]
    pits: list[Shape] = []
    for row, (a, b) in enumerate(spans):
        y = top + row * tall
        walls = [a + chance.uniform(0.07, 0.15) * n]
        while walls[-1] < b - 0.16 * n:
            walls.append(walls[-1] + chance.uniform(0.16, 0.23) * n)
        walls = [x for x in walls if x < b - 0.03 * n]
        for x in walls:
            lean = chance.uniform(-0.008, 0.008) * n
            out.append(pen.line(((x - lean, y), (x, y + 0.5 * tall), (x + lean, y + tall)), (2.0, 1.6, 2.0), "cells"))
        if row in (1, 4):
            pits += [
                pen.ring(x0 + (x1 - x0) * s, y + 0.5 * tall, 0.009 * n, 0.7, "pits") for x0, x1 in pairwise(walls) for s in (0.3, 0.5, 0.7)
            ]
    return Sketch((*out, *pits, *_stoma(0.02 * n, top + 3.5 * tall, 0.062 * n), *_vessel(n, -top)), pen_for(n, n))


def _border(y: float, above: tuple[float, float], here: tuple[float, float], row: int, n: float) -> Points:
    """The wall between two rows, as long as the longer of them reaches."""
    a, b = min(above[0], here[0]), max(above[1], here[1])
    return tuple((a + (b - a) * k / 48, y + 0.005 * n * sin(0.7 * k + 2.3 * row)) for k in range(49))


def _stoma(x: float, y: float, r: float) -> list[Shape]:
    """A pore between two curved lips, laid over the cells."""
    lips = geometry.ellipse(x, y, r, 0.70 * r, count=40)
    slit = geometry.ellipse(x, y, 0.52 * r, 0.16 * r, count=28)
    return [pen.filled(lips, "stoma", role="paper"), pen.contour(lips, 1.2, 1.8, "stoma"), pen.filled(slit, "stoma")]


def _vessel(n: float, low: float) -> list[Shape]:
    """A water vessel below the cells, its spring showing, drawn out beyond them at one end."""
    y, r = low + 0.055 * n, 0.038 * n
    turns = [
        pen.line(geometry.curve([(x, y - r), (x + 0.012 * n, y), (x + 0.024 * n, y + r)], per=5), (0.8, 1.8, 0.8), "vessel")
        for x in (-0.40 * n + 0.034 * n * k for k in range(24))
    ]
    return [*(pen.line(((-0.43 * n, y + s * r), (0.44 * n, y + s * r)), (1.1,), "vessel") for s in (-1, 1)), *turns]


def wood(n: float) -> Sketch:
    """Long stiff tubes side by side, broken off at both ends: one with rows of ringed pits, one with bars, one with a spring."""
    widths = (0.13, 0.17, 0.12, 0.18)
    left = -sum(widths) / 2
    walls = [left + sum(widths[:k]) for k in range(5)]
    out: list[Shape] = []
    ends = [(-0.46, 0.43), (-0.5, 0.47), (-0.44, 0.5), (-0.48, 0.44)]
    for k, x in enumerate(walls):
        tops = [ends[j] for j in (k - 1, k) if 0 <= j < 4]
        a, b = min(t for t, _ in tops), max(low for _, low in tops)
        out.append(
            pen.line(geometry.scaled(((x, a), (x + 0.004, 0.0), (x, b)), n), (1.6, 2.2, 1.6) if 0 < k < 4 else (1.4, 2.0, 1.4), "cells")
        )
    for k, (a, b) in enumerate(ends):
        x0, x1 = walls[k], walls[k + 1]
        for y, way in ((a, -1), (b, 1)):
            jag = [(x0, y), (x0 + 0.35 * (x1 - x0), y + way * 0.022), (x0 + 0.6 * (x1 - x0), y - way * 0.012), (x1, y + way * 0.01)]
            out.append(pen.stroke(geometry.scaled(jag, n), 0.9, "torn"))
    return Sketch((*out, *_pitting(walls, n)), pen_for(0.75 * n, n))


def _pitting(walls: list[float], n: float) -> list[Shape]:
    """What is in the walls of the tubes: two rows of ringed pits, bars across, slits, a spring."""
    out: list[Shape] = []
    for k in range(11):
        y = -0.41 + 0.08 * k
        for x in (walls[1] + 0.05, walls[1] + 0.12):
            out += [
                pen.ring(x * n, (y + (0.04 if x > walls[1] + 0.1 else 0.0)) * n, 0.027 * n, 0.9, "pits"),
                pen.disc(x * n, (y + (0.04 if x > walls[1] + 0.1 else 0.0)) * n, 0.009 * n, "pits"),
            ]
    bars = [geometry.scaled(((walls[2] + 0.018, y), (walls[3] - 0.018, y)), n) for y in (-0.39 + 0.042 * k for k in range(20))]
    slits = [geometry.scaled(((walls[0] + 0.05, y + 0.03), (walls[0] + 0.08, y)), n) for y in (-0.38 + 0.11 * k for k in range(8))]
    turns = [
        pen.line(
            geometry.curve(
                geometry.scaled(((walls[3] + 0.012, y + 0.012), ((walls[3] + walls[4]) / 2, y + 0.022), (walls[4] - 0.012, y - 0.012)), n),
                per=5,
            ),
            (0.9, 1.9, 0.9),
            "pits",
        )
        for y in (-0.44 + 0.045 * k for k in range(19))
    ]
    return [*out, pen.strokes(bars, 1.3, "pits"), pen.strokes(slits, 0.9, "pits"), *turns]


def moss_net(n: float) -> Sketch:
    """A scrap of peat-moss leaf: large empty cells with hoops and pores in a net of narrow green ones."""
    wide, deep = 0.103 * n, 0.180 * n
    cells = [
        _clear_cell(x, y, 0.84 * wide, 0.88 * deep)
        for row in range(-2, 3)
        for x, y in (((2 * col + row % 2) * wide, row * deep) for col in range(-3, 3))
        if abs(x) < 0.43 * n
    ]
    out: list[Shape] = []
    for (x, y), cell in cells:
        out.append(pen.contour(cell, 1.0, 1.7, "cells"))
        for d in (-0.42, -0.14, 0.14, 0.42):
            half = 0.80 * wide * (1 - abs(d)) * 0.96
            bow = geometry.curve([(x - half, y + d * deep), (x, y + d * deep + 0.02 * n), (x + half, y + d * deep)], per=5)
            out.append(pen.line(bow, (0.7, 1.1, 0.7), "hoops"))
        out += [pen.ring(x + s * 0.40 * wide, y + u * deep, 0.011 * n, 0.8, "pores") for s, u in ((1, -0.28), (-1, 0.28))]
    seats = [middle for middle, _ in cells]
    region = geometry.scaled(pts("-.38 -.36, .38 -.36, .38 .36, -.38 .36"), n)

    def green(p: Point) -> float:
        return 0.0 if any(abs(p[0] - x) / wide + abs(p[1] - y) / deep < 0.93 for x, y in seats) else 0.9

    net = pen.grain(region, 0.013 * n, "green", green, sizes=(0.8, 1.0))
    return Sketch((*out, *net), pen_for(n, n))


def _clear_cell(x: float, y: float, wide: float, deep: float) -> tuple[Point, Points]:
    """The middle and the edge of one clear cell: a long diamond with soft sides."""
    half: Points = ((0.0, -deep), (0.56 * wide, -0.46 * deep), (wide, 0.0), (0.56 * wide, 0.46 * deep))
    ring = (*half, *((-a, -b) for a, b in half))
    return (x, y), geometry.clockwise(geometry.moved(geometry.curve(ring, closed=True, per=5), x, y))
