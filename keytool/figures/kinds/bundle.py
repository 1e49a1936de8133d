"""Many threads side by side: cords of hyphae, fine roots, sheaves of needles; and slime, which has no threads."""

from __future__ import annotations

from collections.abc import Callable
from math import cos, pi, sin, sqrt
from random import Random

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Shape
from . import tube
from .kind import Kind, Values, accent, choice, num, um, word


def build(v: Values) -> Sketch:
    """The bundle, running down the page."""
    w = num(v, "width")
    return _FORMS[word(v, "form")](w)


def _cord(w: float) -> Sketch:
    """A rope of hyphae: wide empty ones within, narrow ones round them, a ragged edge and loose ends."""
    n = 2.6 * w
    chance = Random("cord")
    middle = tube.axis(n, lambda t: 0.10 * sin(2 * pi * (0.7 * t + 0.1)))
    out: list[Shape] = []
    for k in range(11):
        u = -0.94 + 1.88 * k / 10
        wide = 0.085 * w if abs(u) < 0.45 else 0.045 * w
        drift, phase = chance.uniform(0.01, 0.05), chance.uniform(0, 6)
        line = [tube.beside(middle, lambda t: w / 2, j / 80, u + drift * sin(7 * j / 80 + phase)) for j in range(81)]
        for s, weight in ((-1, 0.7), (1, 1.0)):
            out.append(pen.line(geometry.offset(line, [s * wide / 2] * 81), (weight,), "outline" if k in (0, 10) else "threads"))
        walls = list(range(6 + k % 7, 80, 17))
        out.append(
            pen.strokes(
                [(geometry.offset(line, [wide / 2] * 81)[j], geometry.offset(line, [-wide / 2] * 81)[j]) for j in walls], 0.8, "threads"
            )
        )
    for k, t in enumerate((0.10, 0.28, 0.45, 0.62, 0.80)):
        s = 1 if k % 2 else -1
        start = tube.beside(middle, lambda t: w / 2, t, 0.9 * s)
        stray = geometry.curve(
            [start, (start[0] + s * 0.12 * w, start[1] + 0.16 * w), (start[0] + s * 0.32 * w, start[1] + 0.22 * w)], per=8
        )
        out += [pen.line(geometry.moved(stray, 0.0, d * w), (1.0,), "threads") for d in (0.0, 0.03)]
    return Sketch(tuple(out), pen_for(1.7 * w, n))


def _root(w: float) -> Sketch:
    """Rows of brick-like cells round a central strand, root hairs at the side, a cap over the tip."""
    n = 3.4 * w
    out: list[Shape] = []

    def half(y: float) -> float:
        return w / 2 * sqrt(max(0.0, 1 - (max(0.0, y - 0.80 * n) / (0.20 * n)) ** 2))

    ys = [n * k / 120 for k in range(121)]
    for s in (-1, 1):
        out.append(pen.line([(s * half(y), y) for y in ys], (1.3,) if s > 0 else (2.0,), "outline"))
    for u in (0.30, 0.55, 0.78):
        out += [pen.stroke([(s * u * half(y), y) for y in ys if y < 0.93 * n], 0.8, "cells") for s in (-1, 1)]
    bricks = []
    for lane, (a, b) in enumerate(((0.30, 0.55), (0.55, 0.78), (0.78, 1.0))):
        for s in (-1, 1):
            bricks += [
                ((s * a * half(y), y), (s * b * half(y), y))
                for y in (n * (k + 0.33 * lane) / (13 + 3 * lane) for k in range(12 + 3 * lane))
                if y < 0.90 * n
            ]
    out.append(pen.strokes(bricks, 0.8, "cells"))
    out += [pen.line([(x * w, y) for y in (0.0, 0.35 * n, 0.72 * n)], (1.6, 1.6, 0.6), "strand") for x in (-0.06, 0.0, 0.06)]
    out.append(pen.strokes([((-0.07 * w, y), (0.07 * w, y + 0.02 * w)) for y in (n * k / 40 for k in range(1, 26))], 0.7, "strand"))
    for k, y in enumerate((0.06, 0.13, 0.20, 0.27, 0.34, 0.41)):
        s = 1 if k % 2 else -1
        size = (0.75 - 0.08 * k) * w
        hair = geometry.curve(
            [(s * w / 2, y * n), (s * (w / 2 + 0.5 * size), y * n + 0.04 * w), (s * (w / 2 + size), y * n - 0.03 * w)], per=8
        )
        out += [pen.line(geometry.moved(hair, 0.0, d * w), (1.0,), "hairs") for d in (-0.022, 0.022)]
    cap = geometry.curve([(-0.36 * w, 0.905 * n), (0.0, 0.86 * n), (0.36 * w, 0.905 * n)], per=8)
    return Sketch((*out, pen.line(cap, (1.0, 1.6, 1.0), "cap")), pen_for(2.4 * w, n))


def _slime(w: float) -> Sketch:
    """A trail of slime: edges that fade, a width that wanders, grit stuck in it."""
    n = 5.0 * w
    line = tube.axis(n, lambda t: 0.30 * sin(2 * pi * (0.8 * t + 0.1)))

    def half(t: float) -> float:
        return w / 2 * (0.72 + 0.28 * sin(9 * t + 0.6) * sin(4.1 * t + 1.0))

    pen_um = pen_for(1.6 * w, n)
    ring = tube.ring(line, half)
    out: list[Shape] = list(pen.grain(ring, 3.2 * pen_um, "smear", lambda p: 0.4, sizes=(0.6, 0.8)))
    for s in (-1, 1):
        for k in range(11):
            a, b = (k + 0.1 + 0.2 * (k % 3) / 3) / 11, (k + 0.75) / 11
            out.append(
                pen.line(
                    [tube.beside(line, half, a + (b - a) * j / 10, s * 0.97) for j in range(11)], (0.3, 0.8, 0.3), "outline", role="faint"
                )
            )
    chance = Random("grit")
    for _ in range(13):
        x, y = tube.beside(line, half, chance.uniform(0.03, 0.97), chance.uniform(-0.7, 0.7))
        r, turn = w * chance.uniform(0.035, 0.085), chance.uniform(0, 6)
        grit: list[Point] = [(-r, -0.4 * r), (0.1 * r, -0.9 * r), (r, -0.2 * r), (0.6 * r, 0.8 * r), (-0.6 * r, 0.7 * r)]
        out.append(pen.stroke(geometry.moved(grit, x, y, turn=turn), 1.0, "grit", closed=True))
    return Sketch(tuple(out), pen_um)


def _needles(w: float) -> Sketch:
    """A sheaf of rigid needles, sharp at both ends; the width is that of one needle."""
    n = 34 * w
    out: list[Shape] = []
    for k in range(13):
        u = (k - 6) / 6
        x, y, lean = 1.05 * w * (k - 6), 0.055 * n * sin(2.3 * k), 0.035 * u + 0.01 * sin(3 * k)
        needle = geometry.moved(
            [(0, -n / 2), (w / 2, -0.40 * n), (w / 2, 0.40 * n), (0, n / 2), (-w / 2, 0.40 * n), (-w / 2, -0.40 * n)], x, y, turn=lean
        )
        out.append(pen.contour(needle, 0.9, 1.5, "outline"))
    return Sketch(tuple(out), pen_for(20 * w, 1.1 * n))


def _needle(w: float) -> Sketch:
    """One rigid needle with hard flat faces, sharp at one end, bevelled at the other."""
    n = 22 * w
    edge = [(0, 0), (w / 2, 0.09 * n), (w / 2, n), (-w / 2, 0.95 * n), (-w / 2, 0.09 * n)]
    return Sketch(
        (
            pen.contour(geometry.clockwise(edge), 1.2, 2.2, "outline"),
            pen.stroke(((0.08 * w, 0.03 * n), (0.08 * w, 0.97 * n)), 0.8, "faces"),
        ),
        pen_for(8 * w, n),
    )


def _star(w: float) -> Sketch:
    """Needles grown from one point at the drying edge of a drop."""
    out: list[Shape] = []
    for k in range(11):
        a, n = 2 * pi * k / 11 + 0.2 * sin(3 * k), w * (13 + 4 * sin(5.0 * k))
        c, s = cos(a), sin(a)
        edge = [
            (-0.4 * w * s, 0.4 * w * c),
            (0.8 * n * c - 0.5 * w * s, 0.8 * n * s + 0.5 * w * c),
            (n * c, n * s),
            (0.8 * n * c + 0.5 * w * s, 0.8 * n * s - 0.5 * w * c),
            (0.4 * w * s, -0.4 * w * c),
        ]
        out.append(pen.line(edge, (1.3, 1.0, 1.3), "outline"))
    return Sketch(tuple(out), pen_for(34 * w, 34 * w))


_FORMS: dict[str, Callable[[float], Sketch]] = {
    "hyphae": _cord,
    "root": _root,
    "slime": _slime,
    "needles": _needles,
    "needle": _needle,
    "needle-star": _star,
}

KIND = Kind(
    "bundle",
    "many strands side by side, or what is taken for them",
    (
        choice(
            "form",
            tuple(_FORMS),
            "cord of hyphae; fine root; trail of slime; sheaf of crystal needles; one needle; needles grown in a star",
        ),
        um("width", 60, 0.2, 1000, "width of the whole; of needles, that of one needle"),
        accent("body", "threads", "cells", "strand", "hairs", "cap", "grit"),
    ),
    build,
)
