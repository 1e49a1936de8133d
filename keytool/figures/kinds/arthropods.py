"""Animals with jointed legs: the soft mite, and the forms of the others."""

from __future__ import annotations

from collections.abc import Callable
from math import cos, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Box, Point, Shape
from . import insects, litter_animals, many_legs, mites, spiders, springtails
from .kind import Kind, Values, accent, choice, num, um, word
from .limbs import leg


def many(v: Values) -> Sketch:
    """A mite, springtail or other small animal with jointed legs."""
    form, length = word(v, "form"), num(v, "length")
    return many_legs.build(form, length) if form in many_legs.PLANS else _FORMS[form](length)


def _mite(n: float) -> Sketch:
    edge = geometry.curve(
        [
            (0, 0.10 * n),
            (0.12 * n, 0.13 * n),
            (0.23 * n, 0.28 * n),
            (0.31 * n, 0.52 * n),
            (0.28 * n, 0.80 * n),
            (0.14 * n, 0.97 * n),
            (0, n),
            (-0.14 * n, 0.97 * n),
            (-0.28 * n, 0.80 * n),
            (-0.31 * n, 0.52 * n),
            (-0.23 * n, 0.28 * n),
            (-0.12 * n, 0.13 * n),
        ],
        closed=True,
        per=8,
    )
    pen_um = pen_for(1.1 * n, 1.2 * n)
    snout = geometry.curve([(0.085 * n, 0.125 * n), (0.065 * n, 0.05 * n), (0.020 * n, 0.0), (0, 0.002 * n)], per=6)
    shapes: list[Shape] = [
        pen.contour(edge, 1.3, 2.6, "outline"),
        *(pen.line(s, (1.4, 1.0), "outline") for s in (snout, geometry.mirrored(snout))),
        pen.line(geometry.curve([(-0.255 * n, 0.36 * n), (0, 0.41 * n), (0.255 * n, 0.36 * n)], per=8), (0.6, 1.1, 0.6), "folds"),
    ]
    for joints in (
        [(0.13 * n, 0.18 * n), (0.22 * n, 0.08 * n), (0.30 * n, -0.06 * n), (0.34 * n, -0.20 * n)],
        [(0.20 * n, 0.27 * n), (0.34 * n, 0.20 * n), (0.47 * n, 0.12 * n), (0.56 * n, 0.02 * n)],
        [(0.26 * n, 0.52 * n), (0.40 * n, 0.56 * n), (0.50 * n, 0.66 * n), (0.56 * n, 0.80 * n)],
        [(0.25 * n, 0.66 * n), (0.36 * n, 0.76 * n), (0.43 * n, 0.92 * n), (0.46 * n, 1.10 * n)],
    ):
        for way in (joints, list(geometry.mirrored(joints))):
            shapes += leg(way, 0.085 * n, edge, "legs")
    hairs = []
    for x, y, lean in ((0.10, 0.20, -0.5), (0.24, 0.42, 0.3), (0.27, 0.82, 0.9), (0.14, 0.95, 1.3), (0.05, 0.985, 1.5)):
        hairs.append(((x * n, y * n), ((x + 0.13 * cos(lean)) * n, (y + 0.13 * sin(lean)) * n)))
    shapes.append(pen.strokes([*hairs, *(geometry.mirrored(h) for h in hairs)], 0.6, "hairs"))

    def shade(p: Point) -> float:
        near = (p[0] / 0.31 + (p[1] - 0.55 * n) / 0.45) / (1.3 * n)
        return max(0.0, near) if geometry.inside(edge, (p[0] + 3 * pen_um, p[1] + 3 * pen_um)) else 0.0

    shapes += pen.stipple(Box(-0.3 * n, 0.15 * n, 0.6 * n, 0.84 * n), shade, 3.2 * pen_um, "shade")
    return Sketch(tuple(shapes), pen_um)


_FORMS: dict[str, Callable[[float], Sketch]] = {
    "mite": _mite,
    "springtail": springtails.springtail,
    "banded-springtail": springtails.banded,
    "beetle-mite": mites.beetle_mite,
    "shield-mite": mites.shield_mite,
    "mite-larva": mites.larva,
    "globe-springtail": springtails.globe,
    "long-springtail": springtails.long_white,
    "centipede": litter_animals.centipede,
    "millipede": litter_animals.millipede,
    "woodlouse": litter_animals.woodlouse,
    "litter-trio": litter_animals.trio,
    "beetle-larva": insects.beetle_larva,
    "thrips": insects.thrips,
    "spider": spiders.spider,
    "false-scorpion": spiders.false_scorpion,
    "spider-and-false-scorpion": spiders.pair,
}

KIND = Kind(
    "many-legged",
    "a small animal with jointed legs: mite, springtail or their kin",
    (
        choice(
            "form",
            (*_FORMS, *many_legs.PLANS),
            "soft mite; springtail; armoured beetle mite; mite with shields; six-legged "
            "mite larva; globular springtail; long white springtail; "
            "centipede; millipede; woodlouse; those three together; beetle larva; thrips; young spider; false scorpion; "
            "those two together; symphylan; pauropod; proturan; dipluran",
        ),
        um("length", 400, 80, 20000, "length of the body without legs, feelers and tails; of several together, of the longest"),
        accent(
            "body",
            "legs",
            "feelers",
            "spring",
            "hairs",
            "shields",
            "tail",
            "eyes",
            "jaws",
            "wings",
            "pincers",
            "insect-marks",
            "waist-or-pincers",
        ),
    ),
    many,
)
