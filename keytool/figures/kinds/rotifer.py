"""The bdelloid rotifer: a body that slides into itself, two wheels, chewing jaws."""

from __future__ import annotations

from math import pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Shape
from . import tube
from .kind import Kind, Values, accent, choice, num, um, word
from .tube import profile

_FEEDING = (
    (0, 0.30),
    (0.05, 0.42),
    (0.12, 0.40),
    (0.20, 0.62),
    (0.34, 0.90),
    (0.46, 1.0),
    (0.58, 0.94),
    (0.68, 0.66),
    (0.76, 0.46),
    (0.84, 0.33),
    (0.92, 0.24),
    (0.97, 0.17),
    (1.0, 0.0),
)


_CREEPING = (
    (0, 0.0),
    (0.02, 0.16),
    (0.06, 0.22),
    (0.12, 0.30),
    (0.22, 0.50),
    (0.36, 0.80),
    (0.50, 0.86),
    (0.62, 0.72),
    (0.72, 0.46),
    (0.82, 0.32),
    (0.92, 0.22),
    (0.97, 0.15),
    (1.0, 0.0),
)


_SLIDING = ((0, 0.10), (0.012, 0.44), (0.05, 0.60), (0.11, 0.58), (0.165, 0.40), *_CREEPING[4:])

_PROFILES = {"feeding": _FEEDING, "creeping": _CREEPING, "sliding": _SLIDING}

_FOLDS = (0.15, 0.235, 0.33, 0.45, 0.57, 0.67, 0.75, 0.825, 0.89)


def rotifer(v: Values) -> Sketch:
    """A bdelloid rotifer, head at the top, stretched out."""
    n = num(v, "length")
    pose = word(v, "pose")
    line = tube.axis(n, lambda t: 0.10 * sin(2 * pi * (0.7 * t + 0.1)))
    smooth = profile(_PROFILES[pose], 0.125 * n)

    def half(t: float) -> float:
        """Each ring of the body is a little wider behind than the one it slides into."""
        behind = min((t - f for f in _FOLDS if t >= f), default=1.0)
        return smooth(t) * (1 - 0.06 * max(0.0, 1 - behind / 0.02))

    edge = tube.ring(line, half)
    pen_um = pen_for(0.36 * n, n)
    shapes: list[Shape] = [pen.contour(edge, 1.1, 2.1, "outline")]
    shapes.append(pen.strokes([tube.across(line, half, f, share=0.95, bow=0.12) for f in _FOLDS], 0.7, "folds"))
    shapes += {"feeding": _wheels, "creeping": _none, "sliding": _face}[pose](line[0], n)
    shapes += _mastax(tube.place(line, 0.27)[:2], n)
    gut = tube.ring(line[77:163], lambda u: smooth(0.32 + 0.36 * u) * 0.5 * tube.round_ends(u, 0.2, 0.2))
    shapes += [pen.stroke(gut, 0.7, "gut", role="faint", closed=True), *pen.grain(gut, 3.4 * pen_um, "gut")]
    for s in (-1, 1):
        spur = (
            tube.beside(line, smooth, 0.90, s * 0.9),
            tube.beside(line, smooth, 0.93, s * 2.4),
            tube.beside(line, smooth, 0.925, s * 0.8),
        )
        toe = (tube.beside(line, smooth, 0.985, s * 0.6), tube.beside(line, smooth, 0.99, s * 1.2, 0.035 * n))
        shapes += [pen.filled(spur, "foot"), pen.line(toe, (1.6, 0.9), "foot")]
    return Sketch(tuple(shapes), pen_um)


def _none(front: Point, n: float) -> list[Shape]:
    """Nothing shows: the head is drawn in."""
    return []


def _face(front: Point, n: float) -> list[Shape]:
    """A flat field of short hairs under the head, parted down the middle, on which it slides; a short beak before it."""
    x0, y0 = front
    out: list[Shape] = []
    for s in (-1, 1):
        edge = geometry.curve(
            [(x0 + s * x * n, y0 + y * n) for x, y in ((0.008, 0.030), (0.052, 0.026), (0.062, 0.070), (0.048, 0.125), (0.008, 0.130))],
            closed=True,
            per=6,
        )
        hairs = [
            ((x0 + s * x * n, y0 + y * n), (x0 + s * (x + 0.004) * n, y0 + (y + 0.010) * n))
            for y in (0.034 + 0.0125 * k for k in range(8))
            for x in (0.014 + 0.0085 * j for j in range(6))
            if geometry.inside(edge, (x0 + s * (x + 0.006) * n, y0 + (y + 0.008) * n))
        ]
        out += [pen.stroke(edge, 0.8, "face", closed=True), pen.strokes(hairs, 0.9, "face")]
    beak = geometry.curve([(x0 - 0.016 * n, y0 + 0.004 * n), (x0, y0 - 0.022 * n), (x0 + 0.016 * n, y0 + 0.004 * n)], per=6)
    return [*out, pen.line(beak, (1.0, 1.4, 1.0), "beak")]


def _wheels(front: Point, n: float) -> list[Shape]:
    """Two ciliated discs on short stalks; the beat makes them look like turning wheels."""
    x0, y0 = front
    out: list[Shape] = []
    for s in (-1, 1):
        cx, cy, rx, ry = x0 + s * 0.072 * n, y0 - 0.034 * n, 0.060 * n, 0.020 * n
        rim = geometry.ellipse(cx, cy, rx, ry, turn=s * 0.16)
        lashes = [((x, y), (x + 0.34 * (x - cx), y - 0.038 * n + 0.9 * min(0.0, y - cy))) for x, y in rim[::3] if y < cy + 0.5 * ry]
        lashes += [((x, y), (x + 0.026 * n * (1 if x > cx else -1), y - 0.006 * n)) for x, y in (rim[0], rim[len(rim) // 2])]
        out += [pen.contour(rim, 1.1, 1.8, "wheels"), pen.strokes(lashes, 0.6, "wheels")]
        out.append(pen.line(((x0 + s * 0.034 * n, y0), (cx - s * 0.012 * n, cy + 0.9 * ry)), (1.2, 1.0), "wheels"))
    return out


def _mastax(at: tuple[float, ...], n: float) -> list[Shape]:
    """The chewing jaws: a muscular ball with two ridged half-moon plates that never stop."""
    x, y = at
    r = 0.054 * n
    out: list[Shape] = [pen.contour(geometry.ellipse(x, y, 0.92 * r, r), 0.8, 1.2, "mastax")]
    for s in (-1, 1):
        back = geometry.curve([(0.07, -0.60), (0.42, -0.46), (0.58, 0.0), (0.42, 0.46), (0.07, 0.60)], per=6)
        plate = tuple((x + s * px * r, y + py * r) for px, py in back)
        ridges = [((x + s * 0.10 * r, y + k * 0.19 * r), (x + s * 0.46 * r, y + k * 0.19 * r)) for k in (-1.5, -0.5, 0.5, 1.5)]
        out += [
            pen.line(plate, (1.6, 2.2, 1.6), "mastax"),
            pen.stroke((plate[0], plate[-1]), 1.2, "mastax"),
            pen.strokes(ridges, 0.8, "mastax"),
        ]
    return out


KIND = Kind(
    "telescoping-animal",
    "a bdelloid rotifer: two wheels, chewing jaws, a body that slides into itself, a foot with toes",
    (
        um("length", 300, 50, 1500, "length stretched out, wheels left out"),
        choice("pose", ("feeding", "creeping", "sliding"), "wheels out; drawn in while it loops along; sliding on a flat face of hairs"),
        accent("body", "wheels", "face", "mastax", "foot", "folds"),
    ),
    rotifer,
)
