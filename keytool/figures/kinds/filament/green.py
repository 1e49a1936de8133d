"""Filaments of algae and mosses."""

from __future__ import annotations

from math import cos, pi, sin

from ... import geometry, pen
from ...shapes import Shape
from .. import tube
from .strand import both_walls, course, cross_lines, discs


def green(w: float, n: float, pen_um: float, style: str) -> list[Shape]:
    """A green alga: cells longer than wide, a firm clear wall, one green body with a shape in each."""
    line = course(n, 0.10)
    count = max(3, round(n / (2.4 * w)))
    out = [*both_walls(line, w / 2, 1.6, 2.2), cross_lines(line, w / 2, [k / count for k in range(1, count)], 1.4)]
    for k in range(count):
        at = [(k + s) / count for s in (0.10, 0.90)]
        if style == "band":
            turns = 1.5
            band = tuple(
                tube.beside(line, lambda t: 0.40 * w, at[0] + (at[1] - at[0]) * j / 60, sin(2 * pi * turns * j / 60)) for j in range(61)
            )
            out += [pen.line(band, (2.6,), "plastid"), *(pen.disc(*band[j], 0.035 * w, "plastid") for j in range(5, 60, 12))]
        else:
            x, y = tube.place(line, (at[0] + at[1]) / 2)[:2]
            star = []
            for j in range(24):
                a, r = 2 * pi * j / 24, 0.38 * w if j % 3 == 0 else 0.24 * w
                star.append((x + r * cos(a), y + 1.5 * r * sin(a)))
            ring = geometry.curve(star, closed=True, per=3)
            out += [
                pen.stroke(ring, 0.9, "plastid", closed=True),
                *pen.grain(ring, 2.2 * pen_um, "plastid", lambda p: 0.8),
                pen.ring(x, y, 0.09 * w, 0.9, "plastid"),
            ]
        if style == "band":
            x, y = tube.place(line, (k + 0.5) / count)[:2]
            out.append(pen.ring(x, y, 0.10 * w, 0.8, "nucleus"))
    return out


def h_pieces(w: float, n: float, pen_um: float) -> list[Shape]:
    """An unbranched row of cells with several discs in each; at the broken end the wall parts into H-shaped pieces."""
    line = course(n, 0.08)
    count = max(3, round(n / (2.2 * w)))
    body = tuple(line[: round(0.985 * (count - 0.5) / count * 240)])
    share = len(body) / 241
    at = [k / count / share for k in range(1, count)]
    out = [*both_walls(body, w / 2, 1.3, 1.8), cross_lines(body, w / 2, [t for t in at if t < 0.99], 1.3)]
    for k in range(count):
        out += discs(
            line, w / 2, (k + 0.12) / count, (k + (0.88 if k < count - 1 else 0.40)) / count, 7 if k < count - 1 else 2, 0.15 * w, f"h{k}"
        )
    seams = [
        (tube.beside(line, lambda t: w / 2, (k + 0.5) / count, s * 0.99), tube.beside(line, lambda t: w / 2, (k + 0.5) / count, s * 0.72))
        for k in range(count - 1)
        for s in (-1, 1)
    ]
    return [*out, pen.strokes(seams, 1.2, "h-pieces")]


def protonema(w: float, n: float, pen_um: float) -> list[Shape]:
    """A moss thread: wide branched cells, slanting walls, many green lenses."""
    line = course(n, 0.12)
    count = max(3, round(n / (3.0 * w)))
    x, y = tube.place(line, 0.45)[:2]
    arm = geometry.moved(tube.axis(0.42 * n, lambda t: 0.75 - 0.35 * t), x, y)

    def arm_half(t: float) -> float:
        return 0.42 * w * tube.round_ends(t, 0.0, w / n)

    main, side = tube.ring(line, lambda t: w / 2), tube.ring(arm, arm_half)
    out: list[Shape] = []
    right, left = tube.sides(line, lambda t: w / 2)
    for path, weight in ((left, 1.8), (tuple(reversed(right)), 1.3)):
        out += [pen.line(run, (weight,), "outline", inset=1.0) for run in geometry.runs(path, lambda p: not geometry.inside(side, p))]
    for path in tube.sides(arm, arm_half):
        out += [pen.line(run, (1.4,), "branch") for run in geometry.runs(path, lambda p: not geometry.inside(main, p))]
    out.append(cross_lines(line, w / 2, [k / count for k in range(1, count)], 1.3, 0.28 * w))
    out.append(pen.strokes([tube.across(arm, arm_half, 0.22, share=0.97)], 1.2, "cross-walls"))
    for k in range(count):
        out += discs(line, w / 2, (k + 0.16) / count, (k + 0.84) / count, 9, 0.10 * w, f"p{k}")
    return [*out, *discs(arm, 0.4 * w, 0.28, 0.92, 9, 0.09 * w, "arm")]


def rhizoid(w: float, n: float, pen_um: float) -> list[Shape]:
    """A moss rhizoid: brown wall, slanting cross-walls, thinner from branch to branch, no green."""
    line = course(n, 0.16)
    x, y = tube.place(line, 0.40)[:2]
    arm = geometry.moved(tube.axis(0.5 * n, lambda t: 0.62 - 0.2 * t), x, y)

    def half(t: float) -> float:
        return w / 2 * (1.0 if t < 0.40 else 0.74)

    def arm_half(t: float) -> float:
        return 0.27 * w * (1 - 0.15 * t)

    main, side = tube.ring(line, half), tube.ring(arm, arm_half)
    out: list[Shape] = []
    for path in tube.sides(line, half):
        out += [pen.line(run, (2.2,), "outline") for run in geometry.runs(path, lambda p: not geometry.inside(side, p))]
    for path in tube.sides(arm, arm_half):
        out += [pen.line(run, (1.8,), "branch") for run in geometry.runs(path, lambda p: not geometry.inside(main, p))]
    slants = [(tube.beside(line, half, t, -0.97, -0.75 * w), tube.beside(line, half, t, 0.97, 0.75 * w)) for t in (0.16, 0.58, 0.84)]
    slants.append((tube.beside(arm, arm_half, 0.42, -0.95, 0.45 * w), tube.beside(arm, arm_half, 0.42, 0.95, -0.45 * w)))
    tint = pen.grain(tube.ring(line, lambda t: 0.72 * half(t)), 3.4 * pen_um, "tint", lambda p: 0.5)
    return [*out, pen.strokes(slants, 1.4, "cross-walls"), *tint]


def tube_alga(w: float, n: float, pen_um: float) -> list[Shape]:
    """A wide green tube without cross-walls, lined with small discs."""
    line = course(n, 0.30)
    return [*both_walls(line, w / 2, 1.3, 1.9), *discs(line, w / 2, 0.02, 0.98, 110, 0.055 * w, "tube")]
