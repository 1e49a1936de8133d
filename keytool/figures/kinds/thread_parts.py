"""The pieces a thread is drawn from: walls, branches, cross-walls, contents, springs and beads."""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, pi, sin

from .. import geometry, pen
from ..shapes import Point, Points, Shape
from . import tube
from .springs import band, screw
from .tube import Strand


def branches(strand: Strand, width: float, style: str) -> list[Strand]:
    """Side arms; they start inside the thread so that their walls join its walls."""
    if style == "none":
        return []
    x, y, _, _ = tube.place(strand.axis, 0.55 if style == "fork" else 0.36)
    if style == "bridge":
        across = geometry.moved(tube.axis(3.6 * width, lambda u: pi / 2 - 0.25 + 0.5 * u), x, y)
        second = geometry.moved(strand.axis, 3.5 * width, 0.0)
        return [
            Strand(across, 3.6 * width, lambda u: 0.40 * width, "branch"),
            Strand(second, strand.length, strand.half, "branch"),
        ]
    if style == "right-angle":
        arm = geometry.moved(tube.axis(4.2 * width, lambda u: pi / 2 - 0.12 + 0.3 * u), x, y)
        return [Strand(arm, 4.2 * width, lambda u: 0.46 * width * (1 - 0.34 * max(0.0, 1 - (abs(u - 0.165) / 0.09) ** 2)), "branch")]
    if style == "side" and strand.length > 30 * width:  # on a long thin stretch a short stub would be lost: two long arms
        far = tube.place(strand.axis, 0.66)
        reach = 0.24 * strand.length / width
        return [_arm(0.95, reach, width, (x, y)), _arm(-0.85, 0.8 * reach, width, (far[0], far[1]))]
    arms = ((0.95, 4.2),) if style == "side" else ((0.5, 5.0), (-0.5, 5.0))
    return [_arm(lean, size, width, (x, y)) for lean, size in arms]


def _arm(lean: float, size: float, width: float, foot: Point) -> Strand:
    axis = geometry.moved(tube.axis(size * width, lambda u: lean * (1 - 0.25 * u)), *foot)
    return Strand(axis, size * width, lambda u: 0.44 * width * tube.round_ends(u, 0.0, 0.44 / size), "branch")


def walls(strand: Strand, others: Sequence[Points], wall: str, pen_um: float) -> list[Shape]:
    """Both walls, cut away where another piece of the thread joins; open ends where the thread goes on."""

    def free(p: Point) -> bool:
        return not any(geometry.inside(ring, p) for ring in others)

    right, left = tube.sides(strand.axis, strand.half)
    thick = max(2.6, 0.34 * strand.half(0.3) / pen_um)
    dark, light = (thick, thick) if wall == "pigmented" else (1.5, 1.1)
    out: list[Shape] = []
    # The ink lies inside the wall's outer edge, so the thread keeps its true width.
    out += [pen.line(run, (light,), strand.part, inset=1.0) for run in geometry.runs(left, free)]
    out += [pen.line(run, (dark,), strand.part, inset=1.0) for run in geometry.runs(tuple(reversed(right)), free)]
    if wall == "double":
        inward = max(0.20 * strand.half(0.3), 2.6 * pen_um)
        for side in tube.sides(strand.axis, lambda t: max(0.0, strand.half(t) - inward)):
            out += [pen.stroke(run, 0.6, strand.part) for run in geometry.runs(side, free)]
    if wall in ("opaque", "dyed"):
        out.append(pen.filled(strand.ring(), strand.part, role="ink" if wall == "opaque" else "faint"))
    return out


def contents(strand: Strand, style: str, pen_um: float) -> list[Shape]:
    """Grain or drops inside the walls; nothing where the thread is clear."""
    if style == "granular":
        edge = tube.ring(strand.axis, lambda t: max(0.0, strand.half(t) - 2.4 * pen_um))
        return list(pen.grain(edge, 3.2 * pen_um, "contents", lambda p: 0.8))
    if style == "drops":
        out: list[Shape] = []
        for k in range(10):
            x, y = tube.beside(strand.axis, strand.half, (k + 1) / 11, 0.28 * sin(2.4 * k))
            out.append(pen.ring(x, y, strand.half((k + 1) / 11) * (0.30 + 0.12 * cos(1.7 * k)), 0.9, "contents"))
        return out
    return []


def cross_walls(strand: Strand, spacing: float, *, clamp: bool, lean: float = 0.0) -> list[Shape]:
    """Thin walls right across, or slanting by `lean` µm to each side, `spacing` µm apart; with `clamp`, a side loop bridges each."""
    count = max(1, int(0.94 * strand.length / spacing))
    first = (strand.length - (count - 1) * spacing) / 2
    out: list[Shape] = []
    for t in ((first + k * spacing) / strand.length for k in range(count)):
        ends = (
            [tube.beside(strand.axis, strand.half, t, s * 0.97, s * lean) for s in (-1, 1)]
            if lean
            else tube.across(strand.axis, strand.half, t, share=0.97)
        )
        out.append(pen.stroke(ends, 1.2, "cross-walls"))
        if clamp:
            out += _clamp(strand, t)
    return out


def _clamp(strand: Strand, t: float) -> list[Shape]:
    """The clamp: an arch from the wall above the cross-wall to below it, a slanting wall of its own at its foot."""
    width = 2 * strand.half(t)
    outer = ((-0.97, -0.92), (-1.55, -0.80), (-1.98, -0.36), (-2.02, 0.14), (-1.70, 0.52), (-0.97, 0.66))
    inner = ((-0.97, -0.34), (-1.18, -0.30), (-1.32, -0.12), (-1.33, 0.08), (-1.20, 0.22), (-0.97, 0.26))
    wall = ((-1.06, -0.34), (-1.64, -0.76))
    lines = [[tube.beside(strand.axis, strand.half, t, u, along * width) for u, along in one] for one in (outer, inner)]
    own = [tube.beside(strand.axis, strand.half, t, u, along * width) for u, along in wall]
    return [*(pen.stroke(geometry.curve(one, per=8), 1.4, "clamp") for one in lines), pen.stroke(own, 1.3, "clamp")]


def helix(width: float, length: float) -> list[Shape]:
    """The spring of a water vessel: one hard, even band, front half over back half, its lower end pulled out of the faint vessel."""
    coil, pitch = 3.4 * width, 2.7 * width
    turns = max(4, round(length / pitch))
    pulled = 1.6 / turns

    def loose(t: float) -> float:
        return max(0.0, (t - 1 + pulled) / pulled)

    line, front = screw(turns, lambda t: coil * (1 - 0.55 * loose(t)), lambda t: pitch * (1 + 1.5 * loose(t)), 1.45 * width)
    foot = line[round((1 - pulled) * (len(line) - 1))][1]
    vessel = [((s * (coil + 1.0 * width), -1.6 * width), (s * (coil + 1.0 * width), foot)) for s in (-1, 1)]
    return [*(pen.stroke(side, 0.8, "vessel", role="faint") for side in vessel), *band(line, front, width, "outline")]


def beads(width: float, length: float) -> list[Shape]:
    """A chain of round cells, each pinched off from the next."""
    count = max(3, round(length / (0.94 * width)))
    line = tube.axis(count * 0.94 * width, lambda t: 0.35 * sin(2 * pi * t), steps=count * 2)
    out: list[Shape] = []
    for k in range(count):
        x, y = line[2 * k + 1]
        out.append(pen.contour(geometry.ellipse(x, y, width / 2, width / 2 * 0.98), 1.0, 1.9, "outline"))
        out.append(pen.disc(x + 0.08 * width, y + 0.05 * width, 0.11 * width, "contents", role="faint"))
    return out
