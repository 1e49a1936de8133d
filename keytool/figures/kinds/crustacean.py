"""The copepod and its larva, the nauplius, from above; and the barrel a small animal rests in."""

from __future__ import annotations

from collections.abc import Callable
from math import pi, pow, sin, sqrt

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Points, Shape
from . import shelled_crustaceans, tube
from .kind import Kind, Values, accent, choice, num, um, word
from .points import pts


def build(v: Values) -> Sketch:
    """The animal, head at the top."""
    n = num(v, "length")
    return _FORMS[word(v, "form")](n)


def _copepod(n: float) -> Sketch:
    """A jointed spindle: one eye, short feelers, legs beneath, a fork with long bristles (not counted in the length)."""
    levels = (
        (0.0, 0.30, 0.155),
        (0.305, 0.40, 0.150),
        (0.405, 0.49, 0.140),
        (0.495, 0.57, 0.125),
        (0.575, 0.64, 0.105),
        (0.645, 0.735, 0.092),
        (0.74, 0.81, 0.080),
        (0.815, 0.875, 0.070),
        (0.88, 0.935, 0.062),
    )
    out: list[Shape] = []
    for k, (a, b, half) in enumerate(levels):
        if k == 0:
            side = geometry.curve(
                [(0.0, 0.0), (0.065 * n, 0.015 * n), (0.125 * n, 0.10 * n), (half * n, 0.22 * n), (0.97 * half * n, b * n)], per=8
            )
        else:
            side = geometry.curve([(0.90 * half * n, a * n), (half * n, (a + b) / 2 * n), (0.97 * half * n, b * n)], per=6)
        ring: Points = (*side, *reversed(geometry.mirrored(side)))
        out.append(pen.contour(geometry.clockwise(ring), 1.1, 2.0, "outline"))
    for s in (-1, 1):
        ramus = ((s * 0.012 * n, 0.935 * n), (s * 0.016 * n, n), (s * 0.046 * n, n), (s * 0.055 * n, 0.935 * n))
        out.append(pen.stroke(ramus, 1.2, "outline"))
        out.append(
            pen.line(
                geometry.curve([(s * 0.034 * n, n), (s * 0.055 * n, 1.20 * n), (s * 0.10 * n, 1.44 * n)], per=8), (1.6, 0.6), "bristles"
            )
        )
        out.append(pen.line(((s * 0.044 * n, n), (s * 0.12 * n, 1.12 * n)), (1.2, 0.6), "bristles"))
        feeler = geometry.curve(
            [(s * 0.06 * n, 0.045 * n), (s * 0.14 * n, 0.005 * n), (s * 0.22 * n, 0.0), (s * 0.29 * n, 0.03 * n)], per=8
        )
        arm = tube.ring(feeler, lambda t: 0.020 * n * (1 - 0.65 * t))
        out.append(pen.contour(geometry.clockwise(arm), 1.0, 1.5, "feelers"))
        out.append(
            pen.strokes([tube.across(feeler, lambda t: 0.020 * n * (1 - 0.65 * t), t) for t in (0.25, 0.45, 0.62, 0.78)], 0.7, "feelers")
        )
        out += [
            pen.line(
                (tube.beside(feeler, lambda t: 0.02 * n, t, -s * 0.5), tube.beside(feeler, lambda t: 0.02 * n, t, -s * 3.4, 0.02 * n)),
                (1.0, 0.5),
                "feelers",
            )
            for t in (0.4, 0.7, 0.98)
        ]
        for y in (0.37, 0.455, 0.535):
            leg = geometry.curve([(s * 0.14 * n, y * n), (s * 0.20 * n, (y + 0.03) * n), (s * 0.215 * n, (y + 0.10) * n)], per=6)
            out.append(pen.line(leg, (2.2, 0.8), "legs"))
    gut = geometry.curve(
        [
            (-0.035 * n, 0.12 * n),
            (-0.045 * n, 0.35 * n),
            (-0.02 * n, 0.85 * n),
            (0.02 * n, 0.85 * n),
            (0.045 * n, 0.35 * n),
            (0.035 * n, 0.12 * n),
        ],
        per=8,
    )
    return Sketch(
        (*out, pen.stroke(gut, 0.6, "gut", role="faint"), pen.disc(0.0, 0.055 * n, 0.020 * n, "eye")), pen_for(0.62 * n, 1.45 * n)
    )


def _nauplius(n: float) -> Sketch:
    """The larva: a pear with one eye and three pairs of limbs with bristles."""
    half = pts(".17 .02, .3 .15, .34 .38, .27 .66, .14 .9")
    edge = geometry.clockwise(geometry.tall(geometry.curve([(0, 0), *half, (0, 1.0), *reversed(geometry.mirrored(half))], closed=True), n))
    out: list[Shape] = [pen.contour(edge, 1.2, 2.2, "outline"), pen.disc(0.0, 0.14 * n, 0.045 * n, "eye")]
    limbs = (
        ((0.22, 0.10), (0.40, 0.0), (0.56, -0.10)),
        ((0.30, 0.28), (0.52, 0.24), (0.70, 0.26)),
        ((0.28, 0.46), (0.46, 0.52), (0.58, 0.66)),
    )
    for joints in limbs:
        for s in (-1, 1):
            line = geometry.curve([(s * x * n, y * n) for x, y in joints], per=8)
            arm = tube.ring(line, lambda t: 0.048 * n * (1 - 0.55 * t))
            for run in geometry.runs((*arm, arm[0]), lambda p: not geometry.inside(edge, p)):
                out.append(pen.line(run, (1.3,), "legs"))
            x, y, nx, ny = tube.place(line, 1.0)
            dx, dy = ny, -nx
            out += [
                pen.line(((x, y), (x + 0.20 * n * (dx + k * nx), y + 0.20 * n * (dy + k * ny))), (1.2, 0.5), "bristles")
                for k in (-0.45, 0.0, 0.45)
            ]
    out += [pen.line(((s * 0.06 * n, 0.97 * n), (s * 0.13 * n, 1.16 * n)), (1.3, 0.5), "bristles") for s in (-1, 1)]
    lip = geometry.curve([(-0.07 * n, 0.26 * n), (0.0, 0.40 * n), (0.07 * n, 0.26 * n)], per=8)
    gut = geometry.ellipse(0.0, 0.62 * n, 0.11 * n, 0.20 * n, count=48)
    return Sketch(
        (
            *out,
            pen.line(lip, (1.0, 1.5, 1.0), "mouth"),
            pen.stroke(gut, 0.6, "gut", closed=True, role="faint"),
            *pen.grain(gut, 0.03 * n, "gut"),
        ),
        pen_for(1.6 * n, 1.4 * n),
    )


def _barrel(n: float) -> Sketch:
    """A small animal drawn in to a wrinkled barrel."""
    line = tube.axis(n, lambda t: 0.0)
    folds = 7

    def half(t: float) -> float:
        crest = sqrt(abs(sin(pi * folds * t)))
        return 0.34 * n * pow(tube.round_ends(t, 0.42, 0.42), 0.8) * (0.90 + 0.10 * crest)

    edge = geometry.clockwise(tube.ring(line, half))
    pen_um = pen_for(0.75 * n, n)
    bars = [tube.across(line, half, k / folds, share=0.97, bow=0.10 * (1 if k < folds / 2 else -1)) for k in range(1, folds)]
    wrinkles = [
        [tube.beside(line, half, (k + 0.35) / folds, s * u) for u in (0.30, 0.55, 0.80)] for k in range(1, folds - 1) for s in (-1, 1)
    ]
    dark = pen.grain(tube.ring(line[50:190], lambda t: 0.18 * n * tube.round_ends(t, 0.3, 0.3)), 3.0 * pen_um, "gut", lambda p: 0.6)
    return Sketch(
        (
            pen.contour(edge, 1.4, 2.6, "outline"),
            pen.strokes(bars, 1.1, "folds"),
            *(pen.line(w, (0.4, 0.9, 0.4), "folds") for w in wrinkles),
            *dark,
        ),
        pen_um,
    )


_FORMS: dict[str, Callable[[float], Sketch]] = {
    "copepod": _copepod,
    "nauplius": _nauplius,
    "water-flea": shelled_crustaceans.water_flea,
    "seed-shrimp": shelled_crustaceans.seed_shrimp,
    "barrel": _barrel,
}

KIND = Kind(
    "small-crustacean",
    "a small crustacean; or the barrel in which a small animal rests",
    (
        choice(
            "form",
            tuple(_FORMS),
            "grown copepod and nauplius larva, from above; water flea and seed shrimp, "
            "from the side; a resting animal drawn in to a wrinkled barrel",
        ),
        um("length", 500, 40, 4000, "length of the body or shell, without feelers, bristles and spines"),
        accent("body", "eye", "feelers", "legs", "bristles", "folds", "gut"),
    ),
    build,
)
