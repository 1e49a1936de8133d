"""Fibres from living things: plant, cotton, paper, silk."""

from __future__ import annotations

from math import cos, exp, pi, sin

from ... import geometry, pen
from ...frame import Sketch, pen_for
from ...shapes import Shape
from .. import tube
from ..points import pts


def plant(w: float) -> Sketch:
    """A plant fibre: a thick layered wall, a channel a third as wide, slanting slit pits, one bamboo-like node, a broken end."""
    n = 9 * w
    line = tube.axis(n, lambda t: 0.12 * sin(2 * pi * (0.6 * t + 0.1)))
    shapes: list[Shape] = []
    right, left = tube.sides(line, lambda t: w / 2)
    shapes += [pen.line(right, (1.5,), "outline", inset=-1.0), pen.line(left, (2.1,), "outline", inset=1.0)]
    shapes += [pen.stroke(s, 0.8, "wall") for s in tube.sides(line, lambda t: 0.145 * w)]
    shapes += [pen.stroke(s, 0.5, "wall", role="faint") for s in tube.sides(line, lambda t: 0.33 * w)]
    pits = [
        (tube.beside(line, lambda t: w / 2, t, s * 0.32, -0.12 * w), tube.beside(line, lambda t: w / 2, t, s * 0.90, 0.12 * w))
        for t in (0.07 * k for k in range(1, 14))
        for s in (-1, 1)
    ]
    shapes.append(pen.strokes(pits, 0.7, "pits"))
    shapes.append(
        pen.strokes(
            [tube.across(line, lambda t: w / 2, t, share=1.0, bow=bow) for t, bow in ((0.412, 0.12), (0.425, 0.0), (0.438, -0.12))],
            0.9,
            "nodes",
        )
    )
    end = [tube.beside(line, lambda t: w / 2, 1.0, u, d * w) for u, d in pts("-1 0, -.6 .1, -.3 -.12, .1 .14, .45 -.06, .75 .12, 1 0")]
    shapes.append(pen.stroke(end, 1.0, "outline"))
    return Sketch(tuple(shapes), pen_for(0.34 * n, n))


def cotton(w: float) -> Sketch:
    """Cotton: one flat ribbon with thick rims and a thin middle; where it turns over, one rim crosses in front of the other."""
    n = 17 * w
    turns, span = (0.17, 0.47, 0.76), 1.25 * w / n
    line = tube.axis(n, lambda t: 0.20 * sin(2 * pi * (0.75 * t + 0.1)), steps=480)
    rim = 0.085 * w

    def angle(t: float) -> float:
        """How far the ribbon has turned over, in radians."""
        return sum(pi / (1 + exp(max(-60.0, min(60.0, -(t - at) / (0.30 * span))))) * (1 if k % 2 else -1) for k, at in enumerate(turns))

    def edge(t: float, s: int) -> tuple[float, float]:
        """How far from the axis a rim lies (half widths), and how far in front of it."""
        return s * cos(angle(t)) * (1 - 2 * rim / w), s * sin(angle(t))

    middles = {s: tuple(tube.beside(line, lambda t: w / 2, k / 480, edge(k / 480, s)[0]) for k in range(481)) for s in (-1, 1)}
    height = {s: [edge(k / 480, s)[1] for k in range(481)] for s in (-1, 1)}
    bands = {s: (geometry.offset(m, [rim] * 481), geometry.offset(m, [-rim] * 481)) for s, m in middles.items()}
    shapes: list[Shape] = []
    for s in (-1, 1):
        other = [
            (*bands[-s][0][a : a + 21], *reversed(bands[-s][1][a : a + 21]))
            for a in range(0, 480, 20)
            if max(height[-s][a : a + 21]) > 0.02
        ]
        for part_of, side in zip((1.7, 0.8) if s < 0 else (0.8, 1.9), bands[s], strict=True):
            keep = geometry.runs(side, lambda p, other=other: not any(geometry.inside(ring, p) for ring in other))  # type: ignore[misc]
            shapes += [pen.line(run, (part_of,), "outline" if part_of > 1 else "folds") for run in keep]
    creases = [
        [tube.beside(line, lambda t: w / 2, t + d, u * cos(angle(t + d))) for d in (k * 0.004 for k in range(12))]
        for t, u in pts(".03 .2, .06 -.3, .27 .15, .31 -.3, .36 .3, .57 -.1, .61 .3, .85 .1, .90 -.3")
    ]
    shapes.append(pen.strokes(creases, 0.5, "wall", role="faint"))
    for end, bow in ((0.0, -0.10), (1.0, 0.10)):
        shapes.append(pen.stroke(tube.across(line, lambda t: w / 2, end, share=abs(cos(angle(end))), bow=bow), 1.0, "outline"))
    return Sketch(tuple(shapes), pen_for(0.34 * n, n))


def paper(w: float) -> Sketch:
    """A paper fibre: a flat, kinked ribbon that folds over once, with peeling fibrils, a fuzzy end and pits on its face."""
    n = 8 * w
    kinks = pts("0 0, .1 1.6, -.55 2.9, .3 4.3, .75 5.6, .1 6.9, .25 8")
    line = geometry.spaced(geometry.scaled(kinks, w), n / 160)
    fold, span = 0.525, 0.055

    def half(t: float) -> float:
        near = max(0.0, 1 - (abs(t - fold) / span) ** 2)
        return float(w / 2 * (1 - 0.12 * sin(14 * t) ** 2) * (1 - 0.55 * near))

    right, left = tube.sides(line, half)
    shapes: list[Shape] = [pen.line(right, (1.3,), "outline", inset=-1.0), pen.line(left, (2.0,), "outline", inset=1.0)]
    shapes += [
        pen.line(
            [tube.beside(line, half, fold + d * span, u) for d, u in ((-1.0, 0.98), (0.0, 0.25 * s), (1.0, -0.98))],
            (1.2, 1.6, 1.2),
            "folds",
        )
        for s in (-1, 1)
    ]
    for t, s in ((0.225, 1), (0.385, -1), (0.725, 1), (0.875, -1)):  # creases that start at the inner edge of a kink and run out
        crease = [tube.beside(line, half, t + 0.014 * u, s * (0.92 - 1.0 * u)) for u in (0.0, 1.0)]
        shapes.append(pen.line(crease, (1.3, 0.7, 0.3), "folds"))
    for k, t in enumerate((0.05, 0.10, 0.17, 0.27, 0.33, 0.44, 0.60, 0.66, 0.80, 0.92)):
        s = 1 if k % 2 else -1
        peel = [
            tube.beside(line, half, t, s),
            tube.beside(line, half, t + 0.02, s * 1.4),
            tube.beside(line, half, t + (0.05 if k % 3 else 0.09), s * (1.8 - 0.25 * (k % 3))),
        ]
        shapes.append(pen.line(geometry.curve(peel, per=6), (0.9, 0.5), "fibrils"))
    for end, way in ((1.0, 1), (0.0, -1)):
        frayed = [
            (
                tube.beside(line, half, end - 0.015 * way, u),
                tube.beside(line, half, end, 1.35 * u, way * (0.30 + 0.2 * ((k * 0.618) % 1)) * w),
            )
            for k, u in enumerate((-0.95, -0.6, -0.25, 0.1, 0.45, 0.8, 1.0))
        ]
        shapes.append(pen.strokes(frayed, 0.8, "fibrils"))
    pits = [tube.beside(line, half, t, u) for t, u in pts(".10 .3, .14 -.3, .27 .2, .43 -.2, .46 .35, .62 0, .76 -.35, .82 .2")]
    return Sketch((*shapes, *(pen.ring(x, y, 0.07 * w, 0.8, "pits") for x, y in pits)), pen_for(0.42 * n, n))


def silk(w: float) -> Sketch:
    """Silk: two bare slack lines in wide curves that run together, part and meet again; beads of glue, evenly spaced, on the outside."""
    n = 60 * w
    line = tube.axis(n, lambda t: 0.75 * sin(2 * pi * (0.8 * t + 0.08)))
    last = len(line) - 1
    apart = [
        w * (0.5 + 4.2 * max(0.0, sin(pi * (k / last - 0.18) / 0.55)) ** 1.5 if 0.18 < k / last < 0.73 else 0.5) for k in range(last + 1)
    ]
    paths = [geometry.offset(line, [s * a for a in apart]) for s in (-1, 1)]
    out: list[Shape] = [
        pen.filled((*geometry.offset(path, [w / 2] * len(path)), *reversed(geometry.offset(path, [-w / 2] * len(path)))), "outline")
        for path in paths
    ]
    for k in range(15):
        at = (k + 0.6) / 15
        for path in paths[: 1 if k % 2 else 2] if 0.2 < at < 0.7 else paths[:1]:
            x, y = tube.place(path, at)[:2]
            turn = -0.75 * sin(2 * pi * (0.8 * at + 0.08))
            bead = geometry.ellipse(x, y, 1.15 * w, 1.6 * w, turn=turn, count=36)
            out += [pen.filled(bead, "beads", role="paper"), pen.contour(bead, 1.2, 1.8, "droplets")]
    return Sketch(tuple(out), pen_for(0.5 * n, n))
