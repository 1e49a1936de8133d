"""Ciliates: a free swimmer and a stalked bell."""

from __future__ import annotations

from math import sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Shape
from .cell_parts import lashes, vacuole
from .points import pts
from .springs import band, screw, stretches


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
    """A bell on a stalk drawn up to a coil; `n` is the length of the bell."""
    line, front = screw(3.0, lambda t: 0.14 * n * min(1.0, 7 * t + 0.05), lambda t: 0.30 * n, 0.05 * n)
    turned = geometry.moved(line, 0.0, 0.985 * n)
    stalk = [
        *band(turned, front, 0.075 * n, "stalk", near=(1.0, 1.3), far=0.7),
        *(pen.line(turned[a : b + 1], (1.5,), "stalk") for a, b, ahead in stretches(front) if ahead),
    ]
    return Sketch((*_bell(n), *stalk), pen_for(0.95 * n, 2.1 * n))


def stretched_bell(n: float) -> Sketch:
    """A bell on a stalk at full stretch: a clear sheath, and in it the dark thread that will pull it to a coil."""
    way = geometry.spaced(geometry.curve(geometry.scaled(pts("0 .985, .04 1.35, -.06 1.75, .02 2.15, -.03 2.45"), n), per=12), 0.03 * n)
    half = 0.045 * n
    last = len(way) - 1
    thread = geometry.offset(way, [0.6 * half * sin(14 * k / last) for k in range(last + 1)])
    sheath = [pen.line(geometry.offset(way, [s * half] * (last + 1)), (1.1 if s > 0 else 1.5,), "stalk") for s in (-1, 1)]
    return Sketch((*_bell(n), *sheath, pen.line(thread, (2.0, 1.6), "stalk")), pen_for(0.95 * n, 2.5 * n))


def _bell(n: float) -> list[Shape]:
    """The bell itself: a thick lip, the disc lifted above it, two rows of hairs, the horseshoe nucleus, a bubble, food."""
    side = geometry.curve(
        geometry.scaled(pts(".33 .085, .365 .115, .35 .165, .295 .20, .315 .34, .335 .50, .30 .68, .20 .86, .05 1"), n), per=8
    )
    edge = (*side, *reversed(geometry.mirrored(side)))
    lip = geometry.ellipse(0, 0.105 * n, 0.345 * n, 0.055 * n)
    disc = geometry.curve(geometry.scaled(pts("-.25 .10, -.24 .04, -.12 .008, .05 .0, .20 .018, .25 .06, .24 .10"), n), per=8)
    outer = [((x, y), (1.30 * x + 0.02 * n, y - 0.11 * n)) for x, y in lip[::3] if y < 0.125 * n]
    inner = [((x, y), (1.16 * x + 0.03 * n, y - 0.115 * n)) for x, y in disc[4:-4:4]]
    rim = (*lip, lip[0])
    nucleus = geometry.curve(geometry.scaled(pts("-.15 .34, -.12 .56, .02 .66, .15 .56, .17 .38"), n), per=8)
    rows = [
        geometry.curve(
            geometry.scaled(
                pts(f"{-0.32 + 0.02 * k:.2f} {0.30 + 0.16 * k:.2f}, 0 {0.33 + 0.165 * k:.3f}, {0.32 - 0.02 * k:.2f} {0.30 + 0.16 * k:.2f}"),
                n,
            ),
            per=6,
        )
        for k in range(3)
    ]
    hair = geometry.curve(geometry.scaled(pts(".02 .10, .07 .20, .03 .30, -.02 .34"), n), per=6)
    return [
        pen.contour(edge, 1.1, 2.0, "outline", closed=False),
        *(pen.line(run, (1.4, 2.0, 1.4), "mouth") for run in geometry.runs(rim, lambda p: p[1] > 0.098 * n)),
        pen.line(disc, (1.2, 1.6, 1.2), "mouth"),
        pen.line(hair, (1.4, 0.8), "mouth"),
        pen.strokes([*outer, *inner], 0.8, "cilia"),
        pen.strokes(rows, 0.4, "rows", role="faint"),
        pen.line(nucleus, (2.6, 3.6, 2.6), "nucleus", role="faint"),
        vacuole(0.14 * n, 0.27 * n, 0.062 * n),
        *(
            pen.ring(x * n, y * n, r * n, 0.8, "food")
            for x, y, r in ((-0.02, 0.47, 0.042), (-0.20, 0.66, 0.036), (0.04, 0.80, 0.040), (0.20, 0.70, 0.03))
        ),
    ]


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
