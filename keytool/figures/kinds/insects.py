"""Small insects and their young, from above: the thrips with its fringed wings, the beetle larva with legs."""

from __future__ import annotations

from math import cos, pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Shape
from .many_legs import Plan, animal
from .points import pts


def _beetle_rings() -> tuple[tuple[float, float, float], ...]:
    thorax = ((0.125, 0.225, 0.078), (0.230, 0.300, 0.082), (0.305, 0.375, 0.084))
    step = (1.005 - 0.380) / 10
    hind = [(0.380 + k * step, 0.380 + (k + 1) * step - 0.005, 0.084 - 0.0052 * k - (0.008 if k == 9 else 0.0)) for k in range(10)]
    return (*thorax, *hind)


def _beetle(tail: str) -> Plan:
    legs = ((0.185, 0.145, -0.25), (0.265, 0.155, 0.15), (0.340, 0.165, 0.55))
    return Plan((0.120, 0.072), _beetle_rings(), legs, "short", tail, 0.026)


def beetle_larva(n: float) -> Sketch:
    """A hard head with sickle jaws, three pairs of legs close behind it, a long ringed hind body."""
    jaws: list[Shape] = []
    for s in (-1, 1):
        outer = [(s * 0.050, 0.020), (s * 0.058, -0.020), (s * 0.036, -0.052), (s * 0.004, -0.066)]
        inner = [(s * 0.018, -0.040), (s * 0.026, -0.012), (s * 0.016, 0.012)]
        edge = (*geometry.curve(geometry.scaled(outer, n), per=6), *geometry.curve(geometry.scaled(inner, n), per=6))
        jaws.append(pen.filled(edge, "jaws"))
    seam = [geometry.curve(geometry.scaled(((0.0, 0.118), (0.0, 0.075), (s * 0.030, 0.030)), n), per=6) for s in (-1, 1)]
    eyes = [pen.disc(s * x * n, y * n, 0.0055 * n, "eyes") for s in (-1, 1) for x, y in ((0.056, 0.030), (0.063, 0.044), (0.052, 0.045))]
    plates = [((-0.58 * h * n, (a + 0.35 * (b - a)) * n), (0.58 * h * n, (a + 0.35 * (b - a)) * n)) for a, b, h in _beetle_rings()[3:12]]
    hairs = [
        ((s * 0.95 * h * n, (a + b) / 2 * n), (s * (h + 0.035) * n, ((a + b) / 2 + 0.012) * n))
        for a, b, h in _beetle_rings()[3:12]
        for s in (-1, 1)
    ]
    return Sketch(
        (
            *animal(_beetle("spikes"), n),
            *jaws,
            pen.strokes(seam, 0.6, "head-capsule"),
            *eyes,
            pen.strokes(plates, 0.6, "segments"),
            pen.strokes(hairs, 0.6, "hairs"),
        ),
        pen_for(0.55 * n, 1.25 * n),
    )


_THRIPS = Plan(
    (0.130, 0.072),
    (
        (0.135, 0.235, 0.088),
        (0.240, 0.315, 0.108),
        (0.320, 0.400, 0.112),
        *((0.405 + 0.0595 * k, 0.405 + 0.0595 * (k + 1) - 0.004, 0.108 * (1 - 0.0075 * k * k)) for k in range(10)),
    ),
    ((0.190, 0.17, -0.75), (0.285, 0.17, 0.0), (0.370, 0.21, 0.60)),
    "none",
    "none",
    0.030,
)


def thrips(n: float) -> Sketch:
    """Large faceted eyes at the sides of the head, feelers of eight beads, two pairs of narrow wings edged with long hairs."""
    out: list[Shape] = []
    for foot, turn, size in (((0.095, 0.36), 0.50, 0.52), ((0.095, 0.29), 0.86, 0.62)):
        for s in (-1, 1):
            out += _wing((s * foot[0] * n, foot[1] * n), s * turn, size * n, s)
    out += animal(_THRIPS, n)
    for s in (-1, 1):
        eye = geometry.ellipse(s * 0.058 * n, 0.045 * n, 0.024 * n, 0.034 * n, count=40)
        facets = [geometry.arc(s * 0.058 * n + x * n, 0.045 * n + y * n, 0.004 * n, 0, 2 * pi, count=8) for x, y in _FACETS]
        out += [pen.filled(eye, "skin", role="paper"), pen.contour(eye, 1.2, 1.6, "eyes"), pen.strokes(facets, 0.7, "eyes")]
        beads = geometry.curve(geometry.scaled(((s * 0.026, 0.004), (s * 0.055, -0.06), (s * 0.085, -0.135)), n), per=8)
        for k, (x, y) in enumerate(geometry.spaced(beads, 0.0215 * n)):
            out.append(pen.ring(x, y, (0.0085 if k < 5 else 0.0070) * n, 1.0, "feelers", ry=0.0115 * n))
    return Sketch(tuple(out), pen_for(1.15 * n, 1.3 * n))


_FACETS = pts("0 -.018, -.010 -.006, .010 -.006, 0 .004, -.010 .014, .010 .014")


def _wing(foot: Point, turn: float, size: float, s: int) -> list[Shape]:
    """A strap of a wing from its foot outward and back, a comb of long hairs behind, a short one in front."""
    c, d = sin(turn), cos(turn)
    half = 0.032 * size

    def at(t: float, side: float) -> Point:
        return (foot[0] + t * size * c + side * d, foot[1] + t * size * d - side * c)

    walk = [k / 30 for k in range(31)]
    wide = [half * (0.6 + 0.4 * sin(pi * min(1.0, t + 0.15))) * (1 - max(0.0, (t - 0.9) / 0.1) ** 2) ** 0.5 for t in walk]
    there = [at(t, w) for t, w in zip(walk, wide, strict=True)]
    back = [at(t, -w) for t, w in zip(walk, wide, strict=True)]
    edge = geometry.clockwise((*there, *reversed(back)))
    comb = []
    for k in range(22):
        t = 0.16 + 0.84 * k / 21
        for side, reach, sweep in ((-s, 0.15, 0.16), (s, 0.05, 0.06)):
            comb.append((at(t, side * half * 0.8), at(t + sweep, side * (half + reach * size * min(1.0, 0.4 + t)))))
    return [pen.strokes(comb, 0.45, "wings"), pen.filled(edge, "skin", role="paper"), pen.contour(edge, 0.9, 1.5, "wings")]
