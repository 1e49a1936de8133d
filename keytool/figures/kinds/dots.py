"""Dots and rods near the limit of the lens."""

from __future__ import annotations

from collections.abc import Sequence
from math import copysign, cos, hypot, pi, sin
from random import Random

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape
from .dot_mixes import MIXES
from .kind import Kind, Values, accent, choice, colour, num, um, word
from .rod_builds import angled_pair, capsule, slim, spore_rod, wound_body

_BUILT: dict[str, tuple[float, int]] = {
    "commas": (5.5, 9),
    "waves": (2.5, 6),
    "coils": (2.3, 5),
    "specks": (10.0, 13),
    "spore-rods": (5.5, 9),
    "clubs": (5.5, 9),
    "slim-rods": (5.5, 9),
    "flakes": (8.0, 12),
    "chips": (9.0, 14),
    "ragged": (8.0, 11),
}
"""Forms whose build has to show are seen from nearer: over how many of their lengths, and how many of them."""
_GAPS = {"waves": 0.62, "coils": 0.72}
"""How close the middles of long thin ones may lie, in their lengths."""
_GROUPS = {"pairs": ((-0.5, 0.0), (0.5, 0.0)), "fours": ((-0.5, -0.5), (0.5, -0.5), (-0.5, 0.5), (0.5, 0.5))}
"""Where the members of a group lie, in steps of nearly one size: they share a flat face."""


def dots(v: Values) -> Sketch:
    """A strewing of small bodies, each `size` long."""
    size, form, layout = num(v, "size"), word(v, "form"), word(v, "layout")
    if form in MIXES:
        return MIXES[form](size)
    across = _BUILT.get(form, (16.0, 0))[0] * size
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
            (1.06 * size * (col + 0.30 * sin(2.6 * row) + 0.22 * cos(1.3 * row)), 0.145 * size * row, 0.05 * sin(1.1 * row + 0.6 * col))
            for row in range(13)
            for col in range(2)
            if (row, col) not in ((0, 0), (1, 1), (2, 0), (12, 1), (11, 0), (12, 0))
        ]
    gap = 1.04 * size if layout == "clump" else _GAPS.get(form, 1.35 if form in _BUILT else 1.7) * size
    reach = 0.27 * across if layout == "clump" else 0.5 * across
    tries = 0
    while len(spots) < (34 if layout == "clump" else _BUILT.get(form, (0.0, 17))[1]) and tries < 4000:
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
            return [pen.filled(slim(size, x, y, turn, sway=0.05 * sin(3e3 * y / size + x / size)), "dots")]
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
            turns, amp, thick, bend = (2.2, 0.10, 0.075, 0.0) if form == "waves" else (6.5, 0.05, 0.034, 0.9 * sin(9 * turn))
            body = fitted(wound_body(size, turns, amp * size, thick * size, bend), size)
            return [pen.filled(geometry.moved(body, x, y, turn=turn), "dots")]
        case "flakes" | "chips" | "ragged":
            return _grit(form, size, x, y, turn)
        case "clubs":
            return angled_pair(size, x, y, turn)
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


def _grit(form: str, size: float, x: float, y: float, turn: float) -> list[Shape]:
    """A clear many-cornered plate with a line round it; a chip or splinter with sharp ends; a ragged crumb."""
    chance = Random(f"{form} {x:.6f} {y:.6f}")
    count, low, flat = {
        "flakes": (6, 0.72, 0.9),
        "chips": (chance.choice((3, 4, 5)), 0.55, chance.choice((0.35, 0.7, 0.9))),
        "ragged": (15, 0.62, 0.8),
    }[form]
    ring = [
        (cos(a) * s * size / 2, sin(a) * s * flat * size / 2)
        for a, s in ((2 * pi * (k + 0.25 * chance.random()) / count, chance.uniform(low, 1.0)) for k in range(count))
    ]
    placed = geometry.moved(fitted(ring, size), x, y, turn=turn)
    if form == "flakes":
        return [pen.stroke(placed, 0.9, "dots", closed=True)]
    return [pen.filled(placed, "dots")]


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
            (
                "rods",
                "cocci",
                "specks",
                "ovals",
                "commas",
                "waves",
                "coils",
                "spore-rods",
                "clubs",
                "splinters",
                "unresolved",
                "slim-rods",
                "flakes",
                "chips",
                "ragged",
                *MIXES,
            ),
            "shape of each; waves: stiff corkscrews; coils: thin and bending; spore-rods: with a bright oval; clubs: "
            "pairs that snapped to a V; unresolved: soft dots at the limit of the lens; mixed: dots, rods and specks that cannot be "
            "told apart; every-way: cocci in every arrangement; two-planes: one dot, bright and then dark; flat-discs: even, "
            "without anything inside; swimming, jiggling, creeping: rods with the way they came; "
            "bent-kinds: comma, wave and coil; "
            "dwarfs: too small for the lens, beside a rod; coloured: brown, rusty and "
            "black specks; flakes: clear plates; chips: sharp-cornered bits; ragged: crumbs",
        ),
        um("size", 2, 0.2, 60, "length of each"),
        choice("layout", ("scattered", "chains", "clump", "pairs", "fours", "raft"), "how they lie"),
        accent("dots", "spores", "track"),
        colour(),
    ),
    dots,
)
