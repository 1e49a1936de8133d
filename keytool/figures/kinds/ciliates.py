"""Ciliates: a free swimmer and a stalked bell."""

from __future__ import annotations

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Shape
from .cell_parts import lashes, vacuole
from .springs import band, screw


def ciliate(n: float) -> Sketch:
    """A free-swimming ciliate, `n` long without its cilia."""
    half = geometry.curve(
        [
            (0.02 * n, 0),
            (0.12 * n, 0.04 * n),
            (0.20 * n, 0.18 * n),
            (0.235 * n, 0.40 * n),
            (0.235 * n, 0.62 * n),
            (0.19 * n, 0.84 * n),
            (0.09 * n, 0.97 * n),
            (0.0, n),
            (-0.10 * n, 0.965 * n),
            (-0.19 * n, 0.83 * n),
            (-0.225 * n, 0.64 * n),
            (-0.20 * n, 0.48 * n),
            (-0.145 * n, 0.40 * n),
            (-0.165 * n, 0.30 * n),
            (-0.155 * n, 0.16 * n),
            (-0.09 * n, 0.035 * n),
        ],
        closed=True,
        per=8,
    )
    edge = geometry.clockwise(half)
    pen_um = pen_for(0.62 * n, n)
    mouth = geometry.curve([(-0.150 * n, 0.395 * n), (-0.06 * n, 0.375 * n), (0.0, 0.42 * n), (-0.01 * n, 0.47 * n)], per=6)
    nucleus = geometry.ellipse(0.03 * n, 0.60 * n, 0.085 * n, 0.13 * n, turn=0.35)
    rows = [
        geometry.curve([(x * 0.45 * n, 0.10 * n), (x * n, 0.40 * n), (x * n, 0.62 * n), (x * 0.5 * n, 0.91 * n)], per=8)
        for x in (0.09, 0.165)
    ]
    shapes: list[Shape] = [
        pen.contour(edge, 1.1, 2.0, "outline"),
        pen.strokes(lashes(edge, 0.024 * n, 0.060 * n, 0.45), 0.6, "cilia"),
        pen.strokes(rows, 0.5, "rows", role="faint"),
        pen.line(mouth, (1.6, 1.2, 0.8), "mouth"),
        pen.contour(nucleus, 0.8, 1.2, "nucleus"),
        *pen.grain(nucleus, 3.2 * pen_um, "nucleus", lambda p: 0.5),
        vacuole(-0.02 * n, 0.855 * n, 0.055 * n),
    ]
    for x, y, r in ((-0.10, 0.56, 0.036), (-0.11, 0.70, 0.042), (0.09, 0.30, 0.034), (0.13, 0.78, 0.030), (-0.03, 0.26, 0.026)):
        shapes.append(pen.ring(x * n, y * n, r * n, 0.8, "food"))
        shapes += pen.grain(geometry.ellipse(x * n, y * n, 0.7 * r * n, 0.7 * r * n, count=24), 2.4 * pen_um, "food")
    return Sketch(tuple(shapes), pen_um)


def bell(n: float) -> Sketch:
    """A stalked ciliate; `n` is the length of the bell."""
    side = geometry.curve(
        [
            (0.30 * n, 0.02 * n),
            (0.355 * n, 0.05 * n),
            (0.31 * n, 0.12 * n),
            (0.335 * n, 0.34 * n),
            (0.30 * n, 0.60 * n),
            (0.17 * n, 0.86 * n),
            (0.045 * n, n),
        ],
        per=8,
    )
    edge = (*side, *reversed(geometry.mirrored(side)))
    pen_um = pen_for(0.95 * n, 2.1 * n)
    lip = geometry.ellipse(0, 0.055 * n, 0.315 * n, 0.055 * n)
    wreath = [((x, y), (x * 1.22, y - 0.115 * n)) for x, y in lip[::3] if y < 0.075 * n]
    line, front = screw(3.5, lambda t: 0.13 * n * min(1.0, 7 * t + 0.05), lambda t: 0.27 * n, 0.045 * n)
    stalk = band(geometry.moved(line, 0.0, n), front, 0.055 * n, "stalk", near=(1.0, 1.3), far=0.7)
    nucleus = geometry.curve([(-0.16 * n, 0.30 * n), (-0.06 * n, 0.58 * n), (0.10 * n, 0.62 * n), (0.18 * n, 0.42 * n)], per=8)
    return Sketch(
        (
            pen.contour(edge, 1.1, 2.0, "outline"),
            pen.contour(lip, 0.9, 1.2, "mouth"),
            pen.strokes(wreath, 0.7, "cilia"),
            *stalk,
            pen.line(nucleus, (2.2, 3.0, 2.2), "nucleus", role="faint"),
            vacuole(0.10 * n, 0.24 * n, 0.065 * n),
            *(pen.ring(x * n, y * n, 0.045 * n, 0.8, "food") for x, y in ((-0.02, 0.42), (-0.17, 0.52), (0.0, 0.74))),
        ),
        pen_um,
    )


def swimming_bell(n: float) -> Sketch:
    """A bell that has left its stalk: shut in front, a girdle of hairs round its rear, on which it swims."""
    side = geometry.curve(
        [
            (0.0, 0.02 * n),
            (0.20 * n, 0.05 * n),
            (0.30 * n, 0.22 * n),
            (0.33 * n, 0.50 * n),
            (0.27 * n, 0.74 * n),
            (0.20 * n, 0.86 * n),
            (0.0, 0.97 * n),
        ],
        per=8,
    )
    edge = geometry.tall((*side, *reversed(geometry.mirrored(side[1:-1]))), n)
    pen_um = pen_for(1.1 * n, 1.2 * n)
    girdle = geometry.ellipse(0, 0.745 * n, 0.272 * n, 0.05 * n)
    hairs = [((x, y), (1.45 * x, y + 0.15 * n)) for x, y in girdle[::3] if y > 0.735 * n]
    tuft = [((x * n, 0.04 * n), (1.5 * x * n, -0.06 * n)) for x in (-0.10, -0.05, 0.0, 0.05, 0.10)]
    nucleus = geometry.curve([(-0.16 * n, 0.30 * n), (-0.06 * n, 0.56 * n), (0.10 * n, 0.58 * n), (0.18 * n, 0.40 * n)], per=8)
    return Sketch(
        (
            pen.contour(edge, 1.1, 2.0, "outline"),
            pen.strokes([*hairs, *tuft], 0.8, "cilia"),
            pen.line([p for p in girdle if p[1] >= 0.745 * n], (0.8, 1.4, 0.8), "cilia"),
            pen.line(nucleus, (2.2, 3.0, 2.2), "nucleus", role="faint"),
            vacuole(0.09 * n, 0.22 * n, 0.065 * n),
            *(pen.ring(x * n, y * n, 0.045 * n, 0.8, "food") for x, y in ((-0.04, 0.40), (-0.15, 0.62), (0.04, 0.70))),
        ),
        pen_um,
    )
