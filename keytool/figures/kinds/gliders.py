"""Gliding animals with cilia: the gastrotrich and the flatworm."""

from __future__ import annotations

from math import cos, pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Shape
from . import tube
from .kind import Kind, Values, accent, choice, num, um, word
from .tube import profile

_BOTTLE = (
    (0, 0.0),
    (0.015, 0.34),
    (0.05, 0.62),
    (0.11, 0.74),
    (0.18, 0.66),
    (0.27, 0.56),
    (0.42, 0.74),
    (0.62, 1.0),
    (0.78, 0.86),
    (0.86, 0.52),
    (0.885, 0.46),
)


def glider(v: Values) -> Sketch:
    """A gastrotrich or a flatworm, head at the top."""
    return (_gastrotrich if word(v, "form") == "gastrotrich" else _flatworm)(num(v, "length"))


def _gastrotrich(n: float) -> Sketch:
    unit = 0.135 * n
    half = profile(_BOTTLE, unit)
    steps = [0.885 * k / 70 for k in range(71)]
    right = [(half(t), t * n) for t in steps]
    fork = geometry.curve(
        [right[-1], (0.55 * unit, 0.93 * n), (0.62 * unit, n), (0.40 * unit, 0.955 * n), (0.16 * unit, 0.905 * n), (0.0, 0.895 * n)], per=8
    )
    side = (*right[:-1], *fork)
    edge = (*side, *reversed(geometry.mirrored(side[1:-1])))
    pen_um = pen_for(0.42 * n, n)
    shapes: list[Shape] = [pen.contour(edge, 1.1, 2.0, "outline")]
    lashes = []
    for first in (0.040, 0.120):
        for k in range(9):
            t = first + 0.006 * k
            foot = (half(t) * 0.98, t * n)
            out, down = (0.060 - 0.002 * k) * n, (-0.026 + 0.010 * k) * n
            lashes.append(
                geometry.curve([foot, (foot[0] + 0.55 * out, foot[1] + 0.2 * down - 0.006 * n), (foot[0] + out, foot[1] + down)], per=5)
            )
    shapes.append(pen.strokes([*lashes, *(geometry.mirrored(one) for one in lashes)], 0.45, "cilia"))
    spines = [((half(t) * 1.0, t * n), (half(t) * 1.0 + 0.028 * n, (t + 0.040) * n)) for t in (0.34 + 0.055 * k for k in range(9))]
    shapes.append(pen.strokes([*spines, *(geometry.mirrored(one) for one in spines)], 0.7, "spines"))
    gullet = tuple((unit * 0.20, y * n) for y in (0.03, 0.14, 0.27))
    shapes += [pen.line(s, (0.9, 1.2), "gullet") for s in (gullet, geometry.mirrored(gullet))]
    shapes.append(pen.stroke(((0.0, 0.03 * n), (0.0, 0.27 * n)), 0.6, "gullet"))
    gut = geometry.curve(
        [(0.12 * unit, 0.28 * n), (0.38 * unit, 0.40 * n), (0.46 * unit, 0.60 * n), (0.26 * unit, 0.80 * n), (0.0, 0.86 * n)], per=8
    )
    shapes += pen.grain((*gut, *reversed(geometry.mirrored(gut))), 3.6 * pen_um, "gut")
    scales = [
        geometry.arc(s * half(t) * 0.76, t * n, 0.020 * n, 0.15 * pi, 0.85 * pi, count=8)
        for t in (0.20 + 0.052 * k for k in range(13))
        for s in (-1, 1)
    ]
    shapes.append(pen.strokes(scales, 0.6, "scales"))
    return Sketch(tuple(shapes), pen_um)


def _flatworm(n: float) -> Sketch:
    line = tube.axis(n, lambda t: 0.30 * sin(2 * pi * (0.6 * t + 0.12)))
    half = profile(
        (
            (0, 0.0),
            (0.012, 0.36),
            (0.04, 0.62),
            (0.10, 0.80),
            (0.30, 0.96),
            (0.55, 1.0),
            (0.80, 0.78),
            (0.93, 0.44),
            (0.985, 0.20),
            (1, 0.0),
        ),
        0.15 * n,
    )
    edge = tube.ring(line, half)
    pen_um = pen_for(0.45 * n, n)
    walk = geometry.spaced((*edge, edge[0]), 0.0125 * n)[:-1]
    out_by = geometry.offset(walk, [-0.024 * n] * len(walk), closed=True)
    if sum(geometry.inside(edge, p) for p in out_by) > len(walk) / 2:
        out_by = geometry.offset(walk, [0.024 * n] * len(walk), closed=True)
    gut = tube.ring(line[92:215], lambda u: half(0.38 + 0.52 * u) * 0.55 * tube.round_ends(u, 0.15, 0.15))
    x, y = tube.place(line, 0.36)[:2]
    shapes: list[Shape] = [
        pen.contour(edge, 1.1, 2.0, "outline"),
        pen.strokes([(a, b) for a, b in zip(walk, out_by, strict=True)], 0.55, "cilia"),
        *pen.grain(gut, 3.2 * pen_um, "gut"),
        pen.ring(x, y, 0.042 * n, 1.2, "mouth"),
        pen.strokes(
            [
                ((x + 0.014 * n * cos(a), y + 0.014 * n * sin(a)), (x + 0.037 * n * cos(a), y + 0.037 * n * sin(a)))
                for a in (2 * pi * k / 14 for k in range(14))
            ],
            0.6,
            "mouth",
        ),
    ]
    for s in (-1, 1):
        ex, ey = tube.beside(line, half, 0.085, s * 0.36)
        shapes.append(pen.disc(ex, ey, 0.011 * n, "eyes"))
    return Sketch(tuple(shapes), pen_um)


KIND = Kind(
    "flat-glider",
    "a gliding animal with cilia: gastrotrich (forked tail) or flatworm",
    (
        choice("form", ("gastrotrich", "flatworm"), "which animal"),
        um("length", 200, 50, 5000, "length of the body, fork included"),
        accent("body", "cilia", "gut", "gullet", "eyes"),
    ),
    glider,
)
