"""Spores parted by cross-walls, or told by a stalk, a peg or scars."""

from __future__ import annotations

from math import pi, pow, sin, sqrt

from ... import geometry, pen
from ...frame import Sketch, pen_for
from ...shapes import Points
from .. import tube
from ..points import pts
from ..round_contents import contents as fill
from .edges import across, along, ring


def canoe(n: float, w: float) -> Sketch:
    """A clear canoe: curved, both ends narrowed, one like a small foot, cross-walls across only."""
    bend = 0.62
    line = tube.axis(n, lambda t: bend * (t - 0.5) * 1.6)

    def half(t: float) -> float:
        body = pow(sin(pi * (0.06 + 0.88 * t)), 0.75)
        return w / 2 * body * tube.round_ends(t, 0.05, 0.02) + (0.05 * w if 0.93 < t < 0.985 else 0.0)

    edge = tube.ring(line, half)
    foot = tube.beside(line, half, 0.975, 1.0)
    spur = (foot, tube.beside(line, lambda t: w / 2, 1.0, 0.42, 0.015 * n))
    walls = [tube.across(line, half, t, share=0.97) for t in (0.22, 0.41, 0.60, 0.79)]
    drops = [pen.ring(*tube.place(line, t)[:2], 0.13 * w, 0.7, "contents") for t in (0.32, 0.505, 0.70)]
    return Sketch(
        (pen.contour(edge, 1.1, 2.0, "outline"), pen.line(spur, (1.6, 1.0), "foot"), pen.strokes(walls, 1.1, "cross-walls"), *drops),
        pen_for(0.4 * n, n),
    )


def brickwork(n: float, w: float) -> Sketch:
    """A brown club with walls both ways, drawn out into a beak."""
    edge = ring(pts(".055 .01, .065 .18, .1 .3, .2 .42, .245 .58, .235 .76, .16 .92, .07 .99"), n, w)
    levels = (0.30, 0.41, 0.52, 0.63, 0.74, 0.86)
    cross = [across(edge, y * n, 0.01 * n) for y in levels]
    long = []
    for k, (y1, y2) in enumerate(zip(levels[1:], (*levels[2:], 0.975), strict=True)):
        spots = ((0.5,), (0.34, 0.70), (0.55,), (0.30, 0.66), (0.5,))[k]
        top, low = across(edge, y1 * n), across(edge, y2 * n)
        long += [(along(top, s), along(low, s + 0.04 * (1 if k % 2 else -1))) for s in spots]
    tint = pen.grain(geometry.offset(edge, [0.03 * w] * len(edge), closed=True), 0.014 * n, "tint", lambda p: 0.55, sizes=(0.8, 1.0))
    return Sketch(
        (*tint, pen.contour(edge, 1.6, 2.6, "outline"), pen.strokes(cross, 1.4, "cross-walls"), pen.strokes(long, 1.2, "cross-walls")),
        pen_for(1.2 * w, n),
    )


def two_on_stalk(n: float, w: float) -> Sketch:
    """Two thick-walled brown cells end to end, pinched between, a thicker cap above, a stalk below."""
    edge = ring(pts(".2 .03, .4 .18, .47 .36, .4 .5, .46 .62, .38 .84, .14 .985"), n, w)
    pen_um = pen_for(1.2 * w, 1.5 * n)
    rooms = []
    for y0, y1 in ((0.10, 0.485), (0.525, 0.95)):
        left, right = [], []
        for k in range(25):
            t = k / 24
            y = (y0 + (y1 - y0) * t) * n
            line = across(edge, y)
            reach = (line[-1][0] - 0.085 * w) * sqrt(max(0.0, 1 - abs(2 * t - 1) ** 3))
            right.append((reach, y))
            left.append((-reach, y))
        rooms.append((*right, *reversed(left)))
    tint = [d for room in rooms for d in pen.grain(room, 2.3 * pen_um, "contents", lambda p: 0.6, sizes=(0.9, 1.1))]
    stalk = [((s * 0.10 * w, 0.985 * n), (s * 0.075 * w, 1.35 * n)) for s in (-1, 1)]
    return Sketch(
        (
            pen.contour(edge, 1.8, 2.8, "outline"),
            *(pen.stroke(r, 1.0, "wall", closed=True) for r in rooms),
            *tint,
            pen.strokes([across(edge, 0.505 * n)], 1.4, "cross-walls"),
            *(pen.line(s, (1.4, 1.0), "stalk") for s in stalk),
            pen.stroke((stalk[0][1], (0, 1.37 * n), stalk[1][1]), 0.7, "stalk"),
        ),
        pen_um,
    )


def flat_sided(n: float, w: float) -> Sketch:
    """A drop with one flatter side, its narrow end below drawn out to one side as a tiny blunt peg, where it sat on its stalk."""
    edge = geometry.clockwise(
        fitted_to(
            geometry.curve(
                pts(
                    "-.02 -.50, .16 -.47, .28 -.32, .33 -.06, .28 .20, .16 .38, .04 .46, "
                    "-.06 .46, -.13 .39, -.19 .22, -.225 .0, -.235 -.22, -.20 -.40"
                ),
                closed=True,
                per=8,
            ),
            n,
            w,
        )
    )
    foot = min(edge, key=lambda p: (p[0] + 0.18 * w) ** 2 + (p[1] - 0.445 * n) ** 2)
    cone = [(-0.085, -0.03), (-0.055, 0.05), (-0.045, 0.095), (0.045, 0.095), (0.06, 0.05), (0.105, -0.03)]
    peg = geometry.moved(geometry.curve(geometry.scaled(cone, w), per=6), *foot, turn=0.45)
    room = geometry.offset(edge, [0.09 * w] * len(edge), closed=True)
    runs = geometry.runs(peg, lambda p: not geometry.inside(edge, p))
    return Sketch(
        (pen.contour(edge, 1.3, 2.4, "outline"), *(pen.line(r, (2.2,), "peg") for r in runs), *fill("one-drop", room, pen_for(w, n))),
        pen_for(1.3 * w, 1.1 * n),
    )


def fitted_to(ring: Points, n: float, w: float) -> Points:
    """The ring made `n` tall and `w` wide, its middle at (0, 0)."""
    box = geometry.around(ring)
    return tuple(((x - box.x - box.width / 2) * w / box.width, (y - box.y - box.height / 2) * n / box.height) for x, y in ring)


def spindle(n: float, w: float) -> Sketch:
    """A smooth even spindle of two cells, both ends alike, drawn in a little at the wall between; drops of uneven size; no peg."""
    edge = ring(pts(".06 .008, .16 .06, .29 .16, .41 .28, .485 .40, .46 .5, .485 .60, .41 .72, .29 .84, .16 .94, .06 .992"), n, w)
    spots = ((-0.08, 0.38, 0.20), (0.12, 0.22, 0.11), (0.20, 0.445, 0.08), (0.06, 0.62, 0.22), (-0.12, 0.78, 0.12), (-0.26, 0.56, 0.07))
    drops = [pen.contour(geometry.ellipse(x * w, y * n, s * w, s * w, count=36), 0.8, 1.3, "contents") for x, y, s in spots]
    return Sketch(
        (pen.contour(edge, 1.4, 2.4, "outline"), pen.strokes([across(edge, 0.5 * n)], 1.8, "cross-walls"), *drops), pen_for(1.2 * w, n)
    )


def scarred(n: float, w: float) -> Sketch:
    """An olive-brown cylinder of two cells with a small dark scar at each end."""
    edge = ring(pts(".13 0, .16 .03, .38 .13, .45 .32, .42 .5, .45 .68, .38 .87, .16 .97, .13 1"), n, w)
    scars = [pen.line(((-0.14 * w, y), (0.14 * w, y)), (3.0, 3.0), "scars") for y in (0.0, n)]
    pen_um = pen_for(1.2 * w, n)
    tint = pen.grain(geometry.offset(edge, [0.10 * w] * len(edge), closed=True), 3.0 * pen_um, "tint", lambda p: 0.4)
    return Sketch((pen.contour(edge, 1.4, 2.4, "outline"), pen.strokes([across(edge, 0.5 * n)], 1.4, "cross-walls"), *scars, *tint), pen_um)
