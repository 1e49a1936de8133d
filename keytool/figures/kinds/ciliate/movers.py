"""Ciliates told by how they get about: walkers on bristles, jumpers, leapers, and one that lives in a tube."""

from __future__ import annotations

from math import cos, pi, sin

from ... import geometry, pen
from ...frame import Sketch, pen_for
from ...shapes import Shape
from ..cell_parts import vacuole
from ..points import pts
from .parts import food_balls, fringe, hair_lines, macro, skin, swelling


def hypotrich(n: float, tails: bool) -> Sketch:
    """From the flat side it walks on: a wreath of platelets round the front and down its left (on the right of the picture), bristles."""
    edge = skin(
        pts(
            "0 0, .12 .025, .195 .13, .215 .32, .22 .52, .2 .74, .14 .92, 0 1, -.12 .93, -.19 .76, -.215 .54, -.22 .32, -.19 .11, -.11 .02"
        ),
        n,
    )
    pen_um = pen_for(0.62 * n, 1.25 * n)
    collar = [p for p in edge if p[1] < 0.34 * n and p[0] > -0.11 * n]
    order = sorted(collar, key=lambda p: (p[0] + 0.1 * n) ** 2 + p[1] ** 2)
    wreath = []
    for k in range(22):
        x, y = order[round(k * (len(order) - 1) / 21)]
        dx, dy = x / n, y / n - 0.32
        size = (dx * dx + dy * dy) ** 0.5
        wreath.append(
            ((x / n - 0.035 * dx / size, y / n - 0.035 * dy / size), (x / n + 0.060 * dx / size + 0.008, y / n + 0.060 * dy / size))
        )
    mouth = pts(".19 .33, .11 .345, .055 .31, .045 .2, .06 .08")
    cirri = [((-x, y), (-x - 0.035, y + 0.075)) for x, y in pts(".01 .09, .075 .085, .135 .12, 0 .18, .065 .2, .1 .26, .01 .34, .05 .4")]
    cirri += [((-x, y), (-x - 0.025, y + 0.115)) for x, y in pts("-.07 .8, -.03 .83, .01 .855, .05 .845, .09 .82")]
    sides = [
        ((s * x, y), (s * (x + 0.060), y + 0.045))
        for s in (-1, 1)
        for x, y in pts(".185 .42, .19 .49, .188 .56, .18 .63, .17 .7, .155 .77, .13 .84")
    ]
    shapes: list[Shape] = [
        pen.contour(edge, 1.2, 2.1, "outline"),
        *hair_lines(wreath, n, (1.6, 0.9), "wreath"),
        swelling(mouth, n, (1.0, 1.6, 0.8), "mouth"),
        *hair_lines(cirri, n, (2.2, 0.6), "cirri"),
        *hair_lines(sides, n, (1.6, 0.6), "cirri"),
        *macro(0.06, 0.46, 0.045, 0.075, n, pen_um),
        *macro(0.05, 0.68, 0.045, 0.075, n, pen_um),
        vacuole(0.14 * n, 0.50 * n, 0.032 * n),
        *food_balls(((-0.09, 0.55, 0.03), (-0.08, 0.70, 0.026), (-0.05, 0.62, 0.022)), n, pen_um),
    ]
    if tails:
        shapes += hair_lines(
            (((-0.06, 0.96), (-0.13, 1.18)), ((0.0, 0.99), (0.0, 1.24)), ((0.06, 0.96), (0.13, 1.18))), n, (2.0, 0.6), "tail-bristles"
        )
    return Sketch(tuple(shapes), pen_um)


def jumper(n: float, sail: bool) -> Sketch:
    """A small oval with a bare front cap and one long tail hair; with or without a sail of hairs at the mouth."""
    w = 0.92 if sail else 0.72
    half = pts(".1 .005, .2 .1, .275 .34, .27 .62, .18 .88")
    edge = skin([(x * w, y) for x, y in ((0, 0), *half, (0, 1), *reversed(geometry.mirrored(half)))], n)
    pen_um = pen_for(1.0 * n, 1.75 * n)
    front = [geometry.scaled(((-0.09 * w, 0.012), (0.09 * w, 0.012)), n)]
    shapes: list[Shape] = [
        pen.contour(edge, 1.1, 2.0, "outline"),
        fringe(edge, n, 0.15 if sail else 0.10, 0.058, lambda p: 0.08 < p[1] < 0.95, 0.25),
        pen.strokes(front, 1.2, "cap"),
        pen.line(geometry.curve(geometry.scaled([(0, 0.99), (0.02, 1.18), (0.07, 1.38), (0.06, 1.52)], n), per=8), (1.5, 0.8), "tail-hair"),
        *macro(0.0, 0.26, 0.085 * w, 0.085, n, pen_um),
        vacuole(0.0, 0.90 * n, 0.05 * n),
        *food_balls(((0.09 * w, 0.58, 0.045), (-0.02, 0.72, 0.04), (0.11 * w, 0.40, 0.03)), n, pen_um),
    ]
    if sail:
        rim = geometry.curve(geometry.scaled([(-0.145, 0.10), (-0.205, 0.30), (-0.19, 0.50), (-0.12, 0.62)], n), per=8)
        out = geometry.curve(geometry.scaled(pts("-.145 .1, -.36 .26, -.42 .48, -.33 .6, -.12 .62"), n), per=8)
        ribs = [(rim[round(k * (len(rim) - 1) / 8)], out[round(k * (len(out) - 1) / 8)]) for k in range(1, 8)]
        shapes += [pen.line(out, (0.8, 1.1, 0.8), "sail"), pen.strokes(ribs, 0.5, "sail", role="faint"), pen.line(rim, (1.0,), "mouth")]
    else:
        shapes.append(swelling([(-0.16, 0.16), (-0.12, 0.34), (-0.06, 0.44)], n, (0.7, 1.4, 0.8), "mouth"))
    return Sketch(tuple(shapes), pen_um)


def leaper(n: float) -> Sketch:
    """A ball with a wreath in front and a few long stiff hairs round its middle."""
    edge = skin([(0.5 * cos(a), 0.5 * sin(a)) for a in (2 * pi * k / 24 for k in range(24))], n)
    pen_um = pen_for(1.9 * n, 1.5 * n)
    wreath = [
        ((0.26 * cos(a), 0.085 + 0.06 * sin(a)), (0.46 * cos(a), -0.10 + 0.16 * sin(a))) for a in (pi + pi * k / 15 for k in range(16))
    ]
    stiff = [((s * 0.495, 0.5 + dy), (s * 0.96, 0.5 + 3.4 * dy)) for s in (-1, 1) for dy in (-0.085, 0.0, 0.085)]
    lip = geometry.ellipse(0, 0.075 * n, 0.26 * n, 0.055 * n)
    return Sketch(
        (
            pen.contour(edge, 1.1, 2.1, "outline"),
            pen.contour(lip, 0.8, 1.1, "mouth"),
            *hair_lines(wreath, n, (1.5, 0.6), "wreath"),
            *hair_lines(stiff, n, (1.5, 0.7), "bristles"),
            *macro(-0.10, 0.62, 0.11, 0.14, n, pen_um, 0.3),
            vacuole(0.25 * n, 0.48 * n, 0.07 * n),
            *food_balls(((0.10, 0.70, 0.07), (0.05, 0.33, 0.05)), n, pen_um),
        ),
        pen_um,
    )


def in_tube(n: float) -> Sketch:
    """A small oval, its front hairs longer, half out of a tube of slime with specks stuck to it."""
    half = pts(".1 .02, .2 .16, .255 .44, .23 .74, .12 .95")
    edge = skin([(0, 0), *half, (0, 1), *reversed(geometry.mirrored(half))], n)
    pen_um = pen_for(1.0 * n, 1.8 * n)
    plume = [
        ((x, 0.012 + 0.9 * x * x), (x * 2.4 + 0.02, -0.20 - 0.1 * (1 - abs(x) * 4))) for x in (-0.15, -0.10, -0.05, 0.0, 0.05, 0.10, 0.15)
    ]
    tube = [
        geometry.curve(geometry.scaled([(s * 0.36, 0.42), (s * 0.40, 0.8), (s * 0.37, 1.2), (s * 0.34, 1.55)], n), per=8) for s in (-1, 1)
    ]
    specks = [pen.disc(s * (0.40 + 0.02 * sin(3.0 * k)) * n, (0.48 + 0.11 * k) * n, 0.016 * n, "tube") for s in (-1, 1) for k in range(10)]
    return Sketch(
        (
            *(pen.line(t, (0.7, 0.9, 0.6), "tube") for t in tube),
            *specks,
            pen.contour(edge, 1.1, 2.0, "outline"),
            fringe(edge, n, 0.06, 0.04, lambda p: p[1] > 0.10),
            *hair_lines(plume, n, (1.2, 0.6), "cilia"),
            *macro(0.02, 0.55, 0.09, 0.09, n, pen_um),
            vacuole(0.0, 0.87 * n, 0.06 * n),
            swelling([(-0.15, 0.10), (-0.09, 0.18), (-0.07, 0.28)], n, (1.0, 1.5, 0.8), "mouth"),
        ),
        pen_um,
    )
