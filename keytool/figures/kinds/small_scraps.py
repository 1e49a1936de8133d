"""More scraps: silica bodies of plants, insect scales, peat-moss leaves, films and soot."""

from __future__ import annotations

from math import cos, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape
from .dots import fitted
from .points import pts


def dumb_bell(n: float) -> Sketch:
    """A silica body of a grass: a small clear dumb-bell with soft edges."""
    half = pts(".0 -.16, .12 -.2, .3 -.24, .46 -.17, .5 0, .46 .17, .3 .24, .12 .2, 0 .16")
    ring = geometry.clockwise(fitted(geometry.curve([*half, *((-x, y) for x, y in reversed(half[1:-1]))], closed=True), n))
    inner = geometry.offset(ring, [0.05 * n] * len(ring), closed=True)
    return Sketch((pen.contour(ring, 1.6, 2.6, "outline"), pen.stroke(inner, 0.5, "rim", closed=True, role="faint")), pen_for(n, 0.6 * n))


def scale(n: float) -> Sketch:
    """One flat scale of an insect: fine even lengthwise ridges, a stub of a stalk."""
    half: list[Point] = list(pts(".03 1, .035 .92, .14 .8, .24 .56, .26 .3, .18 .1, .08 .01"))
    edge = geometry.clockwise(geometry.tall(geometry.curve([*half, *reversed(geometry.mirrored(half))], closed=True), n))
    ridges: list[Points] = []
    for k in range(-7, 8):
        x = 0.034 * k * n
        ridges += geometry.runs(
            [(x * (1 - 0.45 * max(0.0, t - 0.5)), t * n) for t in (j / 60 for j in range(61))],
            lambda p: geometry.inside(edge, (1.06 * p[0], p[1])),
        )
    return Sketch(
        (pen.contour(edge, 1.0, 1.8, "outline"), pen.strokes([r for r in ridges if len(r) > 1], 0.5, "ridges")), pen_for(0.6 * n, n)
    )


def moss_net(n: float) -> Sketch:
    """A scrap of peat-moss leaf: a net of narrow green cells round large empty ones with hoops and pores."""
    out: list[Shape] = []
    for row in range(-2, 3):
        for col in range(-2, 3):
            x, y = (0.21 * col + 0.105 * (row % 2)) * n, 0.20 * row * n
            if abs(x) > 0.44 * n or abs(y) > 0.42 * n:
                continue
            cell = geometry.curve(
                [
                    (x, y - 0.165 * n),
                    (x + 0.075 * n, y - 0.08 * n),
                    (x + 0.085 * n, y + 0.06 * n),
                    (x, y + 0.165 * n),
                    (x - 0.085 * n, y + 0.06 * n),
                    (x - 0.075 * n, y - 0.08 * n),
                ],
                closed=True,
                per=5,
            )
            out.append(pen.contour(geometry.clockwise(cell), 1.2, 2.0, "cells"))
            out += [
                pen.line(
                    geometry.curve([(x - 0.078 * n, y + d * n), (x, y + (d + 0.018) * n), (x + 0.078 * n, y + d * n)], per=5),
                    (0.8, 1.2, 0.8),
                    "hoops",
                )
                for d in (-0.06, 0.0, 0.06)
            ]
            out.append(pen.ring(x + 0.03 * n, y - 0.03 * n, 0.016 * n, 1.0, "pores"))
    return Sketch(tuple(out), pen_for(n, 0.95 * n))


def film(n: float) -> Sketch:
    """A torn piece of thin film, one even stuff, curled at a corner."""
    ring = geometry.clockwise(
        fitted(pts("-.44 -.3, -.1 -.42, .2 -.34, .42 -.38, .46 -.02, .36 .1, .42 .34, .1 .3, -.06 .42, -.3 .34, -.46 .38, -.4 .04"), n)
    )
    curl = geometry.curve([ring[2], (0.25 * n, -0.16 * n), ring[4]], per=8)
    creases = [
        geometry.curve(geometry.scaled(one, n), per=8)
        for one in (pts("-.34 -.16, -.1 -.04, .02 .12, .1 .28"), pts("-.36 .2, -.2 .12, -.06 .16"))
    ]
    return Sketch(
        (
            pen.stroke(ring, 1.3, "outline", closed=True),
            pen.line(curl, (0.8, 1.8, 0.8), "curl"),
            *(pen.line(c, (0.3, 0.9, 0.3), "creases") for c in creases),
        ),
        pen_for(n, n),
    )


def soot(n: float) -> Sketch:
    """A loose black bunch of specks far finer than the lens can part."""
    spots = [
        (
            0.46 * n * ((k + 0.5) / 150) ** 0.62 * cos(2.39996 * k + 0.5 * sin(0.7 * k)),
            0.40 * n * ((k + 0.5) / 150) ** 0.62 * sin(2.39996 * k + 0.6 * sin(0.4 * k)),
        )
        for k in range(150)
    ]
    far = max(((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2) ** 0.5 for a in spots for b in spots)
    r = 0.022 * n
    by = (n - 2 * r) / far
    return Sketch(tuple(pen.disc(x * by, y * by, r, "outline") for x, y in spots), pen_for(n, n), tonal=True)


def hollow_skin(n: float) -> Sketch:
    """An empty skin with legs like empty gloves, split along the back, folded."""
    half = pts(".1 .02, .2 .16, .27 .38, .27 .62, .2 .84, .08 .97")
    edge = geometry.clockwise(
        geometry.tall(geometry.curve([(0.0, 0.0), *half, (0.0, 1.0), *reversed(geometry.mirrored(half))], closed=True), n)
    )
    out: list[Shape] = []
    for y, reach, lean in ((0.18, 0.34, -0.7), (0.36, 0.36, -0.2), (0.58, 0.36, 0.25), (0.78, 0.34, 0.75)):
        for s in (-1, 1):
            c, d = cos(lean), sin(lean)
            x0 = s * 0.24
            glove = [
                (x0, y - 0.03),
                (x0 + s * 0.6 * reach * c, y - 0.03 + 0.6 * reach * d),
                (x0 + s * reach * c, y + reach * d),
                (x0 + s * 0.6 * reach * c, y + 0.03 + 0.6 * reach * d),
                (x0, y + 0.03),
            ]
            out += [
                pen.line(run, (0.9,), "legs")
                for run in geometry.runs(geometry.curve(geometry.scaled(glove, n), per=6), lambda p: not geometry.inside(edge, p))
            ]
    split = geometry.curve(geometry.scaled(pts("0 .1, -.04 .26, .03 .42, -.03 .56, .0 .66"), n), per=8)
    folds = [
        geometry.curve(geometry.scaled(one, n), per=8)
        for one in (pts("-.2 .3, -.1 .36, -.14 .46"), pts(".2 .5, .1 .6, .16 .72"), pts("-.16 .74, -.04 .8, .06 .76"))
    ]
    return Sketch(
        (
            *out,
            pen.contour(edge, 0.9, 1.5, "outline"),
            pen.line(split, (0.6, 2.0, 0.6), "split"),
            *(pen.line(f, (0.4, 1.0, 0.4), "folds") for f in folds),
        ),
        pen_for(1.2 * n, 1.25 * n),
    )
