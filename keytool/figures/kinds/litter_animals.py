"""The larger many-legged animals of litter: centipede, millipede, woodlouse, and the three together."""

from __future__ import annotations

from math import cos, pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Points, Shape
from . import together, tube
from .limbs import leg
from .points import pts

_SHORT = (1, 3, 5, 8, 10, 12)
"""Back plates of a stone centipede that are short; the others are long."""


def centipede(n: float) -> Sketch:
    """Flat back plates, long and short by turns, one pair of legs to each, the last pair trailing; long feelers; fangs."""
    return Sketch(tuple(_centipede(n)), pen_for(0.75 * n, 1.45 * n))


def _centipede(n: float) -> list[Shape]:
    weights = [0.55 if k in _SHORT else 1.0 for k in range(16)]
    step, top = (1.0 - 0.125) / sum(weights), 0.125
    plates: list[Points] = []
    out: list[Shape] = []
    for k, weight in enumerate(weights):
        low = top + weight * step
        half = 0.060 * (0.84 + 0.16 * sin(pi * (k + 1) / 17)) * (0.70 if k == 15 else 1.0)
        side = geometry.curve([(0.88 * half, top), (half, (top + low) / 2), (0.92 * half, low - 0.004)], per=5)
        plates.append(geometry.scaled((*side, (0.0, low), *reversed(geometry.mirrored(side))), n))
        last = k == 14
        reach, lean = (0.17, 1.2) if last else (0.080 + 0.0035 * k, -0.10 + 0.05 * k)
        for s in (-1, 1):
            x, y = s * 0.92 * half, (top + low) / 2
            path = [(x + s * r * reach * cos(lean), y + r * reach * sin(lean) + bow * reach) for r, bow in _LEG]
            out += leg(list(geometry.scaled(path, n)), 0.017 * n, None, "legs") if k < 15 else []
        top = low
    fangs = [geometry.scaled(((s * 0.056, 0.105), (s * 0.068, 0.04), (s * 0.026, -0.018)), n) for s in (-1, 1)]
    for s in (-1, 1):
        feeler = geometry.curve(geometry.scaled(((s * 0.034, 0.012), (s * 0.10, -0.11), (s * 0.15, -0.27)), n), per=8)
        out += [pen.ring(x, y, 0.0095 * n, 0.9, "feelers") for x, y in geometry.spaced(feeler, 0.020 * n)]
    return [
        *out,
        *(pen.contour(plate, 1.1, 1.9, "outline", closed=False) for plate in plates),
        pen.contour(_head(".03 .004, .058 .05, .055 .10, .03 .122", n), 1.2, 2.0, "outline"),
        *(pen.line(geometry.curve(f, per=6), (2.6, 2.0, 0.8), "jaws") for f in fangs),
        *(pen.disc(s * 0.043 * n, 0.030 * n, 0.008 * n, "eyes") for s in (-1, 1)),
    ]


_LEG = ((0.0, 0.0), (0.40, -0.12), (0.72, -0.02), (1.0, 0.14))
"""How a leg runs from its foot: (share of its reach, how far it sags)."""


def _head(half: str, n: float) -> Points:
    side = pts(half)
    ring = geometry.curve([(0.0, 0.0), *side, (0.0, side[-1][1] + 0.003), *reversed(geometry.mirrored(side))], closed=True, per=8)
    return geometry.clockwise(geometry.scaled(ring, n))


def millipede(n: float) -> Sketch:
    """A long round body of many rings, two pairs of short legs to most of them, short clubbed feelers."""
    return Sketch(tuple(_millipede(n)), pen_for(0.32 * n, 1.06 * n))


def _millipede(n: float) -> list[Shape]:
    count, width = 22, 0.085 * n
    line = tube.axis(n, lambda t: 0.16 * sin(2 * pi * (0.9 * t + 0.05)), steps=22 * 10)
    half = tube.scalloped(width, count, depth=0.10, head=1.1 / count, tail=1.3 / count)
    edge = tube.ring(line, half)
    borders = [tube.across(line, half, k / count, share=0.98, bow=0.10) for k in range(1, count)]
    fore = [tube.across(line, half, (k + 0.30) / count, share=0.97, bow=0.10) for k in range(2, count)]
    out: list[Shape] = []
    for k in range(1, count - 2):
        for t in ((k + 0.3) / count, (k + 0.8) / count)[: 1 if k < 4 else 2]:
            for s in (-1, 1):
                path = [tube.beside(line, half, t, s * u, along * n) for u, along in ((0.90, 0.0), (1.42, -0.003), (1.95, 0.012))]
                out.append(pen.line(geometry.curve(path, per=5), (1.8, 1.4, 0.7), "legs"))
    for s in (-1, 1):
        x, y = tube.beside(line, half, 0.02, s * 0.6)
        feeler = [(x, y), (x + s * 0.026 * n, y - 0.010 * n), (x + s * 0.042 * n, y - 0.028 * n), (x + s * 0.062 * n, y - 0.040 * n)]
        out.append(pen.line(geometry.curve(feeler, per=5), (1.4, 2.0, 2.4, 2.6), "feelers"))
        out.append(pen.disc(*tube.beside(line, half, 0.022, s * 0.62), 0.0055 * n, "eyes"))
    return [*out, pen.contour(edge, 1.2, 2.1, "outline"), pen.strokes(borders, 1.0, "segments"), pen.strokes(fore, 0.5, "segments")]


def woodlouse(n: float) -> Sketch:
    """A flat oval of broad back shields, seven pairs of legs under their points, two bent feelers, two short tails."""
    return Sketch(tuple(_woodlouse(n)), pen_for(0.95 * n, 1.35 * n))


def _woodlouse(n: float) -> list[Shape]:
    tops = [0.090 + 0.0880 * k for k in range(8)]
    wide = [0.205 + 0.060 * sin(pi * (k + 1.2) / 8.4) for k in range(7)]
    bands = [*zip(wide, tops[:-1], tops[1:], strict=True)]
    bands += [(0.205 - 0.017 * k, tops[7] + 0.040 * k, tops[7] + 0.040 * (k + 1)) for k in range(5)]
    shields = [geometry.scaled(_shield(*band), n) for band in bands]
    tail = geometry.scaled(pts("-.105 .905, -.045 .940, 0 .993, .045 .940, .105 .905"), n)
    out: list[Shape] = []
    for k, (w, a, _) in enumerate(bands[:7]):
        lean = -0.55 + 0.19 * k
        for s in (-1, 1):
            x, y = s * 0.97 * w, a + 0.055
            path = [(x, y), (x + s * 0.05 * cos(lean), y + 0.05 * sin(lean)), (x + s * 0.085 * cos(lean), y + 0.085 * sin(lean) + 0.035)]
            out.append(pen.line(geometry.curve(geometry.scaled(path, n), per=5), (2.6, 1.8, 0.8), "legs"))
    for s in (-1, 1):
        out.append(pen.line(geometry.scaled(((s * 0.06, 0.030), (s * 0.11, -0.05), (s * 0.19, -0.06)), n), (2.8, 2.4, 2.0), "feelers"))
        out.append(pen.line(geometry.scaled(((s * 0.19, -0.06), (s * 0.26, -0.11), (s * 0.29, -0.20)), n), (1.8, 1.4, 0.6), "feelers"))
        out.append(pen.line(geometry.scaled(((s * 0.085, 0.920), (s * 0.100, 0.975), (s * 0.105, 1.04)), n), (3.4, 2.8, 0.8), "tail"))
        out.append(pen.disc(s * 0.150 * n, 0.050 * n, 0.018 * n, "eyes"))
    middle = [((0.0, a + 0.02), (0.0, b - 0.012)) for _, a, b in bands[:7]]
    dark = [
        ((0.95 * w, a + t * (b - a)), ((0.95 - deep) * w, a + t * (b - a)))
        for w, a, b in bands[:7]
        for t, deep in ((0.4, 0.16), (0.6, 0.22), (0.8, 0.18))
    ]
    return [
        *out,
        pen.strokes([geometry.scaled(one, n) for one in dark], 0.6, "shade"),
        pen.contour(_head(".10 .002, .175 .028, .190 .070, .14 .100", n), 1.2, 2.0, "outline"),
        *(pen.contour(one, 1.1, 2.2, "shields", closed=k == 0) for k, one in enumerate(shields)),
        pen.strokes([geometry.scaled(one, n) for one in middle], 0.5, "folds", role="faint"),
        pen.line(tail, (1.2, 2.2, 1.2), "outline"),
    ]


def _shield(wide: float, a: float, b: float) -> Points:
    """One back shield: a band whose hind corners are drawn out to points; its front lies under the one before it."""
    half: Points = ((0.95 * wide, a + 0.004), (wide, (a + b) / 2), (1.01 * wide, b + 0.014))
    side = (*geometry.curve(half, per=5), (0.86 * wide, b + 0.001))
    return (*side, (0.0, b - 0.004), *reversed(geometry.mirrored(side)))


def trio(n: float) -> Sketch:
    """The three side by side; `n` is the length of the longest, the millipede."""
    shapes = together.beside((_millipede(n), _centipede(0.70 * n), _woodlouse(0.60 * n)), 0.06 * n)
    return Sketch(shapes, 0.65 * pen_for(1.25 * n, 1.06 * n))
