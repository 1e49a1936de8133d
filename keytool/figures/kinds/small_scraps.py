"""More scraps: silica bodies of plants, insect scales, films and soot."""

from __future__ import annotations

from math import cos, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points
from .dots import fitted
from .points import cornered, pts


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


def film(n: float) -> Sketch:
    """A torn piece of film, one even dyed stuff: a corner rolled over, one side drawn out to strings, the marks of the pull beside them."""
    ring = geometry.clockwise(
        fitted(
            cornered(
                "-.36 -.30, -.12 -.34, .10 -.28; .34 -.34; .30 -.20, .38 -.10; .33 -.02, .40 .10; .34 .16, .36 .30; .12 .34, -.10 .28; "
                "-.28 .36, -.34 .22, -.32 .10; -.42 .02, -.40 -.14"
            ),
            n,
        )
    )
    strings = [
        geometry.curve(geometry.scaled(pts(one), 0.93 * n), per=8)
        for one in (
            ".36 -.33, .45 -.40, .47 -.50, .55 -.53",
            ".40 -.10, .50 -.12, .56 -.05, .66 -.07",
            ".41 .10, .50 .14, .52 .24, .62 .27",
            ".37 .28, .44 .36, .42 .45",
        )
    ]
    pulled = [
        geometry.scaled(
            pts(f"{0.12 + 0.02 * (k % 3):.2f} {-0.24 + 0.075 * k:.3f}, {0.29 + 0.015 * (k % 2):.3f} {-0.25 + 0.078 * k:.3f}"), n
        )
        for k in range(7)
    ]
    flap = geometry.scaled(cornered("-.36 -.31, -.22 -.33, -.08 -.33; -.20 -.16, -.30 -.04, -.41 .0; -.41 -.14"), n)
    roll = geometry.curve(geometry.scaled(pts("-.08 -.33, -.20 -.15, -.41 .0"), n), per=8)
    under = geometry.curve(geometry.scaled(pts("-.13 -.33, -.26 -.20, -.40 -.08"), n), per=8)
    return Sketch(
        (
            pen.filled(ring, "dye", role="blue"),
            pen.filled(flap, "curl", role="paper"),
            pen.filled(flap, "curl", role="faint"),
            pen.contour(ring, 1.1, 1.9, "outline"),
            *(pen.line(one, (1.5, 0.9, 0.4), "strings") for one in strings),
            pen.strokes(pulled, 0.6, "creases"),
            pen.line(roll, (1.2, 2.4, 1.2), "curl"),
            pen.line(under, (0.4, 0.9, 0.4), "curl"),
        ),
        pen_for(n, n),
    )


def soot(n: float) -> Sketch:
    """A ragged black cloud, dense in the middle, of specks far too fine to be parted; a few still show round its edge."""
    base = geometry.ellipse(0, 0, 0.31 * n, 0.25 * n, count=240)
    ragged = pen.wobble(pen.wobble(pen.wobble(base, 0.055 * n, 3, "soot"), 0.030 * n, 11, "arms"), 0.018 * n, 29, "fringe")
    spots = []
    for k in range(300):
        a, d = 2.39996 * k, 0.22 + 0.28 * ((k + 0.5) / 300) ** 1.6
        spots.append((d * n * cos(a + 0.4 * sin(0.7 * k)), 0.86 * d * n * sin(a + 0.3 * sin(0.4 * k))))
    far = max(((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2) ** 0.5 for a in spots for b in spots)
    r = 0.010 * n
    by = (n - 2 * r) / far
    specks = (pen.disc(x * by, y * by, r, "outline") for x, y in spots)
    return Sketch((pen.filled(ragged, "outline"), *specks), pen_for(n, n), tonal=True)
