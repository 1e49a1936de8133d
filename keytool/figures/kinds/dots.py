"""Dots and rods near the limit of the lens."""

from __future__ import annotations

from math import cos, hypot, pi, sin
from random import Random

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape
from .kind import Kind, Values, accent, choice, num, um, word


def dots(v: Values) -> Sketch:
    """A strewing of small bodies, each `size` long."""
    size, form, layout = num(v, "size"), word(v, "form"), word(v, "layout")
    across = 16 * size
    shapes: list[Shape] = []
    for x, y, turn in _places(form, layout, across, size):
        shapes.append(_body(form, size, x, y, turn))
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
    gap = 1.04 * size if layout == "clump" else 1.7 * size
    reach = 0.27 * across if layout == "clump" else 0.5 * across
    tries = 0
    while len(spots) < (34 if layout == "clump" else 17) and tries < 4000:
        tries += 1
        x, y = chance.uniform(-reach, reach), chance.uniform(-reach, reach)
        if layout == "clump" and hypot(x, y) > reach:
            continue
        if all(hypot(x - a, y - b) > gap for a, b, _ in spots):
            spots.append((x, y, chance.uniform(0, pi)))
    return spots


def _body(form: str, size: float, x: float, y: float, turn: float) -> Shape:
    if form == "cocci":
        return pen.disc(x, y, size / 2, "dots")
    if form == "rods":
        half, r = size / 2, 0.17 * size
        right = geometry.arc(half - r, 0, r, -pi / 2, pi / 2, count=10)
        left = geometry.arc(r - half, 0, r, pi / 2, 1.5 * pi, count=10)
        return pen.filled(geometry.moved((*right, *left), x, y, turn=turn), "dots")
    chance = Random(f"{x:.6f} {y:.6f}")
    ring = [
        (cos(a) * size / 2 * s, sin(a) * size / 2 * s * 0.8) for a, s in ((2 * pi * k / 6, chance.uniform(0.55, 1.0)) for k in range(6))
    ]
    return pen.filled(geometry.moved(fitted(ring, size), x, y, turn=turn), "dots")


def fitted(points: list[Point], size: float) -> Points:
    """The ring scaled so that its longest span is exactly `size`."""
    span = max(hypot(a[0] - b[0], a[1] - b[1]) for a in points for b in points)
    return tuple((x * size / span, y * size / span) for x, y in points)


KIND = Kind(
    "dots",
    "small bodies near the limit of the lens: rods, round dots, specks",
    (
        choice("form", ("rods", "cocci", "specks"), "shape of each"),
        um("size", 2, 0.2, 60, "length of each"),
        choice("layout", ("scattered", "chains", "clump"), "how they lie"),
        accent("dots"),
    ),
    dots,
)
