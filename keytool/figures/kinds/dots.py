"""Dots and rods near the limit of the lens."""

from __future__ import annotations

from collections.abc import Sequence
from math import copysign, cos, hypot, pi, sin
from random import Random

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape
from .kind import Kind, Values, accent, choice, num, um, word
from .rod_builds import capsule, club_pair, spore_rod

_BUILT, _NEAR = ("commas", "waves", "coils", "spore-rods", "clubs"), 6.5
"""Forms whose build has to show are seen from nearer: over so many of their lengths."""
_GROUPS = {"pairs": ((-0.5, 0.0), (0.5, 0.0)), "fours": ((-0.5, -0.5), (0.5, -0.5), (-0.5, 0.5), (0.5, 0.5))}
"""Where the members of a group lie, in steps of nearly one size: they share a flat face."""


def dots(v: Values) -> Sketch:
    """A strewing of small bodies, each `size` long."""
    size, form, layout = num(v, "size"), word(v, "form"), word(v, "layout")
    across = (_NEAR if form in _BUILT else 16) * size
    if form == "cocci" and layout in _GROUPS:
        return Sketch(tuple(_packets(layout, across, size)), pen_for(across, across))
    shape = "slim-rods" if layout == "raft" and form == "rods" else form  # gliding bacteria are far slimmer than the rods that lie apart
    shapes = [one for x, y, turn in _places(form, layout, across, size) for one in _body(shape, size, x, y, turn)]
    return Sketch(tuple(shapes), pen_for(across, across))


def _places(form: str, layout: str, across: float, size: float) -> list[tuple[float, float, float]]:
    chance = Random(f"{form} {layout}")
    spots: list[tuple[float, float, float]] = []
    if layout == "chains":
        step = 1.0 if form == "rods" else 0.96
        for row in range(3):
            lean, x, y = chance.uniform(-0.12, 0.12), 0.08 * across, (0.2 + 0.25 * row) * across
            for _ in range(12 - 2 * row):
                lean = 0.8 * lean + chance.uniform(-0.14, 0.14)
                spots.append((x, y, lean))
                x, y = x + step * size * cos(lean), y + step * size * sin(lean)
        return spots
    if layout in _GROUPS:
        groups = _places(form, "scattered", 1.6 * across, 3.2 * size)
        step = 0.90 * size
        return [(0.62 * x + step * a, 0.62 * y + step * b, 0.0) for x, y, _ in groups for a, b in _GROUPS[layout]]
    if layout == "raft":
        return [
            (1.05 * size * (col + 0.16 * sin(2.6 * row) + 0.12 * cos(1.3 * row)), 0.155 * size * row, 0.03 * sin(1.7 * row + col))
            for row in range(12)
            for col in range(2)
            if (row, col) not in ((0, 0), (1, 1), (11, 1), (10, 0))
        ]
    gap = 1.04 * size if layout == "clump" else (1.35 if form in _BUILT else 1.7) * size
    reach = 0.27 * across if layout == "clump" else 0.5 * across
    tries = 0
    while len(spots) < (34 if layout == "clump" else 9 if form in _BUILT else 17) and tries < 4000:
        tries += 1
        x, y = chance.uniform(-reach, reach), chance.uniform(-reach, reach)
        if layout == "clump" and hypot(x, y) > reach:
            continue
        if all(hypot(x - a, y - b) > gap for a, b, _ in spots):
            spots.append((x, y, chance.uniform(0, pi)))
    return spots


def _packets(layout: str, across: float, size: float) -> list[Shape]:
    """Cocci in twos or fours, cut off where they lie face to face; among twos there is one packet of four."""
    out: list[Shape] = []
    for k, (x, y, _) in enumerate(_places("cocci", "scattered", 1.6 * across, 3.2 * size)):
        for a, b in _GROUPS["fours" if k == 0 else layout]:
            cut = 0.43 * size
            ring = [
                (-copysign(1.0, a) * min(px, cut) if a else px, -copysign(1.0, b) * min(py, cut) if b else py)
                for px, py in geometry.ellipse(0, 0, size / 2, size / 2, count=48)
            ]
            out.append(pen.filled(geometry.moved(ring, 0.62 * x + 0.90 * size * a, 0.62 * y + 0.90 * size * b), "dots"))
    return out


def _body(form: str, size: float, x: float, y: float, turn: float) -> list[Shape]:
    match form:
        case "cocci":
            return [pen.disc(x, y, size / 2, "dots")]
        case "slim-rods":
            r = 0.058 * size
            half = size / 2
            rod = ((-half, 0.0), (-half + 1.6 * r, -r), (half - 1.6 * r, -r), (half, 0.0), (half - 1.6 * r, r), (-half + 1.6 * r, r))
            return [pen.filled(geometry.moved(rod, x, y, turn=turn), "dots")]
        case "rods":
            return [pen.filled(geometry.moved(capsule(size, 0.17 * size), x, y, turn=turn), "dots")]
        case "ovals":
            return [pen.filled(geometry.moved(capsule(size, 0.34 * size), x, y, turn=turn), "dots")]
        case "splinters":
            return [
                pen.filled(
                    geometry.moved(
                        [(-size / 2, 0), (-0.2 * size, -0.07 * size), (size / 2, -0.02 * size), (0.1 * size, 0.08 * size)], x, y, turn=turn
                    ),
                    "dots",
                )
            ]
        case "specks":
            chance = Random(f"{x:.6f} {y:.6f}")
            ring = [
                (cos(a) * size / 2 * s, sin(a) * size / 2 * s * 0.8)
                for a, s in ((2 * pi * k / 6, chance.uniform(0.55, 1.0)) for k in range(6))
            ]
            return [pen.filled(geometry.moved(fitted(ring, size), x, y, turn=turn), "dots")]
        case "commas":
            return [_bent(fitted(list(geometry.arc(0, 0, size, -0.62, 0.62, count=16)), 0.97 * size), 0.14 * size, x, y, turn)]
        case "waves" | "coils":
            return [_wave(form, size, x, y, turn)]
        case "clubs":
            return club_pair(size, x, y, turn)
        case "spore-rods":
            return spore_rod(size, x, y, turn, end=(round(1e3 * x) % 3 == 0))
        case _:  # unresolved: a soft grey dot, no edge
            return [pen.disc(x, y, r * size / 2, "dots", role="faint") for r in (1.0, 0.7)]


def _bent(line: Points, thick: float, x: float, y: float, turn: float) -> Shape:
    """A body of even thickness along a bent line, its middle at (x, y)."""
    cx, cy = sum(p[0] for p in line) / len(line), sum(p[1] for p in line) / len(line)
    placed = geometry.moved(tuple((px - cx, py - cy) for px, py in line), x, y, turn=turn)
    count = len(placed)
    half = [
        thick
        / 2
        * min(1.0, (1 - (1 - min(k, count - 1 - k) / (0.12 * count)) ** 2) ** 0.5 if min(k, count - 1 - k) < 0.12 * count else 1.0)
        for k in range(count)
    ]
    return pen.filled((*geometry.offset(placed, half), *reversed(geometry.offset(placed, [-h for h in half]))), "dots")


def _wave(form: str, size: float, x: float, y: float, turn: float) -> Shape:
    """A stiff wave of few turns, or a very thin coil bent as a whole."""
    turns, amp, thick = (2.5, 0.085, 0.065) if form == "waves" else (7.0, 0.045, 0.030)
    bend = 0.0 if form == "waves" else 0.9
    line: list[Point] = []
    px = py = 0.0
    for k in range(121):
        t = k / 120
        a = bend * sin(2 * pi * (0.8 * t + 0.3 * turn))
        off = amp * size * sin(2 * pi * turns * t)
        line.append((px - off * sin(a), py + off * cos(a)))
        px, py = px + size / 120 * cos(a), py + size / 120 * sin(a)
    return _bent(fitted(line, 0.97 * size), thick * size, x, y, turn)


def fitted(points: Sequence[Point], size: float) -> Points:
    """The ring scaled so that its longest span is exactly `size`."""
    span = max(hypot(a[0] - b[0], a[1] - b[1]) for a in points for b in points)
    return tuple((x * size / span, y * size / span) for x, y in points)


KIND = Kind(
    "dots",
    "small bodies near the limit of the lens: bacteria by shape, specks, unresolved dots",
    (
        choice(
            "form",
            ("rods", "cocci", "specks", "ovals", "commas", "waves", "coils", "spore-rods", "clubs", "splinters", "unresolved"),
            "shape of each; waves: stiff corkscrews; coils: thin and bending; spore-rods: with a bright oval; clubs: "
            "pairs like a V; unresolved: soft dots at the limit of the lens",
        ),
        um("size", 2, 0.2, 60, "length of each"),
        choice("layout", ("scattered", "chains", "clump", "pairs", "fours", "raft"), "how they lie"),
        accent("dots", "spores"),
    ),
    dots,
)
