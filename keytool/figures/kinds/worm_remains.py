"""Nematodes that are dead or empty, and one seen head-on."""

from __future__ import annotations

import itertools
from collections.abc import Callable
from math import cos, pi, sin
from random import Random

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Shape
from . import tube
from .kind import Kind, Values, accent, choice, num, um, word
from .together import beside
from .tube import Strand
from .worm_shape import profile

Drawer = Callable[[float, float], Sketch]


def build(v: Values) -> Sketch:
    """The worm or its skin; of one seen head-on, the head."""
    n, w = num(v, "length"), num(v, "width")
    return _FORMS[word(v, "form")](n, w)


def _strand(n: float, w: float, bend: Callable[[float], float]) -> Strand:
    return Strand(tube.axis(n, bend), n, profile(n, w, "conoid-sharp", min(0.3, 3.2 * 0.62 * w / n)))


def _skin(n: float, w: float) -> Sketch:
    """The empty skin: thin, folded, fine rings, the lining of the mouth still in it."""
    worm = _strand(n, w, lambda t: 1.3 * sin(2 * pi * (0.7 * t + 0.1)) + 0.35 * sin(19 * t))

    def crumple(t: float) -> float:
        return float(worm.half(t) * (0.80 + 0.20 * sin(37 * t) * sin(11 * t + 1)))

    right, left = tube.sides(worm.axis, crumple)
    pen_um = min(tube.pen_of(worm.ring()), w / 12)
    rings = [tube.across(worm.axis, crumple, k / 90, share=0.95, bow=0.10) for k in range(3, 88) if (k // 7) % 3 != 2]
    folds = [
        [tube.beside(worm.axis, crumple, t + d, u) for d, u in ((0.0, -0.9), (0.012, -0.1), (0.03, 0.85))]
        for t in (0.12, 0.25, 0.33, 0.48, 0.57, 0.70, 0.82)
    ]
    mouth = [tuple(tube.beside(worm.axis, crumple, 0.004 + 0.03 * k / 6, s * 0.22) for k in range(7)) for s in (-1, 1)]
    return Sketch(
        (
            pen.line(left, (0.9,), "outline"),
            pen.line(right, (0.8,), "outline"),
            pen.strokes(rings, 0.45, "rings", role="faint"),
            *(pen.line(geometry.curve(f, per=6), (0.5, 1.2, 0.5), "folds") for f in folds),
            *(pen.line(m, (1.4,), "mouth-lining") for m in mouth),
        ),
        pen_um,
    )


def _overgrown(n: float, w: float) -> Sketch:
    """The skin of a dead worm packed with hyphae, some growing out through it."""
    worm = _strand(n, w, lambda t: 0.7 * sin(2 * pi * (0.6 * t + 0.1)))
    pen_um = min(tube.pen_of(worm.ring()), w / 12)
    chance = Random("overgrown")
    threads: list[Shape] = []
    for k in range(7):
        u, phase = -0.72 + 1.44 * k / 6, chance.uniform(0, 6)
        line = [tube.beside(worm.axis, worm.half, 0.03 + 0.88 * j / 120, 0.8 * (u + 0.20 * sin(11 * j / 120 + phase))) for j in range(121)]
        threads.append(pen.line(line, (1.2,), "threads"))
    for t, s in ((0.16, 1), (0.30, -1), (0.41, 1), (0.56, -1), (0.67, 1), (0.80, -1)):
        start = tube.beside(worm.axis, worm.half, t, 0.6 * s)
        mid, tip = tube.beside(worm.axis, lambda t: w, t, 1.3 * s, -0.4 * w), tube.beside(worm.axis, lambda t: w, t, 2.3 * s, 0.3 * w)
        threads.append(pen.line(geometry.curve([start, mid, tip], per=8), (1.3, 1.1), "threads"))
    return Sketch((tube.hull(worm, 0.9, 1.5, "outline", pen_um), *threads), pen_um)


def _full_of_young(n: float, w: float) -> Sketch:
    """A mother whose young hatched inside her: small whole worms coil in her skin, with an egg or two among them."""
    mother = _strand(n, w, lambda t: 0.5 * sin(2 * pi * (0.5 * t + 0.1)))
    pen_um = min(tube.pen_of(mother.ring()), w / 12)
    young: list[Shape] = []
    for start, phase in ((0.13, 0.0), (0.31, 2.0), (0.49, 4.4), (0.66, 1.2)):
        axis = tuple(
            tube.beside(mother.axis, mother.half, start + 0.16 * j / 60, 0.5 * sin(2 * pi * 1.15 * j / 60 + phase)) for j in range(61)
        )
        long = sum(((q[0] - p[0]) ** 2 + (q[1] - p[1]) ** 2) ** 0.5 for p, q in itertools.pairwise(axis))
        small = Strand(axis, long, profile(long, 0.25 * w, "conoid-sharp", 0.14))
        right, left = tube.sides(small.axis, small.half)
        young.append(pen.stroke((*right, *reversed(left)), 0.7, "young", closed=True))
        young.append(
            pen.line([tube.beside(small.axis, small.half, 0.1 + 0.75 * j / 30, 0.0) for j in range(31)], (0.6,), "young", role="faint")
        )
    eggs = [
        pen.stroke(geometry.ellipse(x, y, 0.24 * w, 0.15 * w, turn=1.3, count=36), 0.9, "eggs", closed=True)
        for x, y in (tube.beside(mother.axis, mother.half, t, u) for t, u in ((0.30, -0.45), (0.475, 0.5)))
    ]
    return Sketch((tube.hull(mother, 0.9, 1.7, "outline", pen_um), *young, *eggs), pen_um)


def _collapsed(n: float, w: float) -> Sketch:
    """A dead worm in a slack bow: shrunken off its skin, the gut gone to drops and scattered grains, one kink behind the middle."""
    line = tube.axis(n, lambda t: 0.55 - 1.35 * t + (0.55 if t > 0.62 else 0.0) - 0.30 * max(0.0, t - 0.62) / 0.38)
    whole = profile(n, w, "conoid-sharp", min(0.3, 3.2 * 0.62 * w / n))

    def sunken(t: float) -> float:
        return float(whole(t) * (0.86 + 0.14 * sin(17 * t + 0.8)) * (1 - 0.30 * max(0.0, 1 - abs(t - 0.62) / 0.02)))

    worm = Strand(line, n, sunken)
    pen_um = min(tube.pen_of(worm.ring()), w / 12)

    def shrunk(u: float) -> float:
        return 0.66 * sunken(0.025 + 0.92 * u) * (1 + 0.22 * sin(29 * u)) * tube.round_ends(u, 0.03, 0.05)

    flesh = tube.ring(line[6:-14], shrunk)
    spots = (
        (0.10, -0.2, 0.13), (0.16, 0.25, 0.20), (0.225, -0.15, 0.26), (0.30, 0.2, 0.17), (0.35, -0.25, 0.23), (0.43, 0.1, 0.30),
        (0.50, -0.2, 0.18), (0.56, 0.2, 0.25), (0.67, -0.1, 0.24), (0.74, 0.2, 0.16), (0.80, -0.15, 0.21), (0.87, 0.1, 0.13),
    )  # fmt: skip
    drops = [pen.ring(*tube.beside(line, sunken, t, u), r * w, 1.0, "drops") for t, u, r in spots]
    chance = Random("dead gut")
    crumbs = []
    for _ in range(170):
        t = 0.12 + 0.80 * chance.random()
        crumbs.append(pen.disc(*tube.beside(line, sunken, t, chance.uniform(-0.55, 0.55)), chance.choice((0.8, 1.2)) * pen_um, "gut"))
    wrinkles = [tube.across(line, sunken, t, share=0.9, bow=0.4) for t in (0.605, 0.615, 0.628, 0.64)]
    spear = [tube.beside(line, lambda t: w / 2, t, u) for t, u in ((0.012, 0.10), (0.050, -0.24))]
    return Sketch(
        (
            tube.hull(worm, 0.9, 1.7, "outline", pen_um),
            pen.stroke(flesh, 0.7, "flesh", closed=True),
            pen.strokes(wrinkles, 0.9, "folds"),
            *drops,
            *crumbs,
            pen.line(spear, (2.0, 1.0), "spear"),
        ),
        pen_um,
    )


def _three_ways(n: float, w: float) -> Sketch:
    """Worms whose mouth cannot be read, side by side: full of young, full of threads, dead."""
    drawn = [form(n, w) for form in (_full_of_young, _overgrown, _collapsed)]
    return Sketch(beside([one.shapes for one in drawn], 0.10 * n), 1.15 * drawn[0].pen_um)


def _head_on(n: float, w: float) -> Sketch:
    """The head points at you: rings one within the other, six lips round a mouth, the body falling away out of focus behind."""
    r = 0.36 * w
    out: list[Shape] = [
        pen.ring(0.05 * w, 0.07 * w, 0.5 * w, 1.0, "outline"),
        pen.contour(geometry.ellipse(0, 0, r, r, count=96), 1.4, 2.4, "head"),
    ]
    for k in range(6):
        a = 2 * pi * k / 6
        out.append(
            pen.stroke(
                geometry.ellipse(0.58 * r * cos(a), 0.58 * r * sin(a), 0.30 * r, 0.25 * r, turn=a, count=36), 1.0, "lips", closed=True
            )
        )
        out.append(pen.disc(0.66 * r * cos(a), 0.66 * r * sin(a), 0.035 * r, "lips"))
    out.append(pen.contour(geometry.ellipse(0, 0, 0.20 * r, 0.20 * r, count=48), 1.4, 1.8, "mouth"))
    trail = [
        geometry.curve([(s * 0.42 * w + 0.05 * w, 0.33 * w), (s * 0.5 * w + 0.14 * w, 0.72 * w), (s * 0.5 * w + 0.02 * w, 1.15 * w)], per=8)
        for s in (-1, 1)
    ]
    return Sketch((*(pen.line(t, (1.0, 0.6), "body", role="faint") for t in trail), *out), pen_for(1.2 * w, 1.8 * w))


_FORMS: dict[str, Drawer] = {
    "shed-skin": _skin,
    "full-of-threads": _overgrown,
    "full-of-young": _full_of_young,
    "collapsed": _collapsed,
    "head-on": _head_on,
    "three-ways": _three_ways,
}

KIND = Kind(
    "worm-remains",
    "a nematode that is dead or empty, or that points its head at you",
    (
        choice(
            "form",
            tuple(_FORMS),
            "empty shed skin; skin packed with threads of a fungus; mother full of hatched young; "
            "collapsed dead worm; head seen end-on; three that cannot be read, side by side",
        ),
        um("length", 600, 80, 8000, "length along the body (not used for one seen end-on)"),
        um("width", 26, 4, 300, "greatest width"),
        accent("body", "folds", "rings", "threads", "young", "eggs", "drops", "mouth", "lips", "mouth-lining"),
    ),
    build,
    lambda v: (
        [f"width {num(v, 'width'):g} µm is too much for a worm {num(v, 'length'):g} µm long (at most a sixth of it)"]
        if word(v, "form") != "head-on" and num(v, "width") > num(v, "length") / 6
        else []
    ),
)
