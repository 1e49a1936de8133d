"""The pot worm: rings, and bristles in paired bundles."""

from __future__ import annotations

from collections.abc import Callable
from math import cos, pi, sin

from .. import pen
from ..frame import Sketch
from ..shapes import Points, Shape
from . import tube
from .kind import Kind, Values, accent, amount, colour, flag, num, um
from .tube import pen_of, scalloped


def worm(v: Values) -> Sketch:
    """A segmented worm, head at the top."""
    length, width, count = num(v, "length"), num(v, "width"), round(num(v, "segments"))
    line = tube.axis(length, lambda t: 1.15 * sin(2 * pi * (0.92 * t + 0.06)), steps=count * 8)
    plain = scalloped(width, count, depth=0.07, head=1.1 / count, tail=1.6 / count)

    def half(t: float) -> float:
        waist = 0.42 * max(0.0, 1 - abs(t - 0.56) * count / 0.9) if v["budding"] else 0.0
        return plain(t) * (1 - waist)

    edge = tube.ring(line, half)
    pen_um = pen_of(edge)
    shapes: list[Shape] = [pen.contour(edge, 1.1, 2.2, "outline")]
    walls = [
        [tube.beside(line, half, k / count + 0.05 * half(k / count) / length * (1 - u * u), side * u) for u in (0.97, 0.75, 0.50)]
        for k in range(1, count)
        for side in (-1, 1)
    ]
    shapes.append(pen.strokes(walls, 0.9, "segments"))
    if v["saddle"]:
        a, b = 11.0 / count, 13.2 / count
        band = tube.ring(tuple(line[round(a * (len(line) - 1)) : round(b * (len(line) - 1)) + 1]), lambda u: half(a + u * (b - a)) * 0.97)
        shapes.append(pen.filled(band, "saddle", role="faint"))
    shapes += _gut(line, half, count, pen_um)
    shapes += _head(line, half, count)
    if v["eyes"]:
        shapes += [pen.disc(*tube.beside(line, half, 0.75 / count, s * 0.55), 0.055 * width, "eyes") for s in (-1, 1)]
    shapes += _vessel(line, half, count) if v["vessel"] else []
    if num(v, "bristle-length"):
        shapes += _bristles(line, half, count, num(v, "bristle-length"), pen_um)
    if v["long-hairs"]:
        shapes.append(_hairs(line, half, count, 0.75 * width))
    if v["budding"]:
        zone = [tube.across(line, half, 0.56 + d / count, share=0.95) for d in (-0.32, -0.16, 0.0, 0.16, 0.32)]
        shapes.append(pen.strokes(zone, 1.0, "budding"))
    if v["skin-drops"]:
        spots = [tube.beside(line, half, (k + 0.7) / 44, 0.82 * sin(2.4 * k)) for k in range(42)]
        shapes += [pen.disc(x, y, 0.075 * width, "skin-drops") for x, y in spots]
    return Sketch(tuple(shapes), pen_um)


def _hairs(line: Points, half: Callable[[float], float], count: int, size: float) -> Shape:
    """Thin hairs, some as long as the body is wide, two to a side on every second segment."""
    lines = []
    for k in range(1, count - 1, 2):
        t = (k + 0.5) / count
        for side in (-1, 1):
            lines += [
                (tube.beside(line, half, t, side * 0.97), tube.beside(line, half, t, side * (1 + size / half(t)), lean * size))
                for lean in (-0.2, 0.35)
            ]
    return pen.strokes(lines, 0.5, "long-hairs")


def _gut(line: Points, half: Callable[[float], float], count: int, pen_um: float) -> list[Shape]:
    """The gut: swollen in each ring, its wall set with dark cells from the sixth ring on, food showing through."""
    first = 5.5 / count

    def band(t: float) -> float:
        return half(t) * (0.42 + 0.08 * abs(sin(pi * t * count))) * tube.round_ends(t, 0.06, 0.03)

    edge = tube.ring(line, band)
    start = round(first * (len(line) - 1))
    rear = tube.ring(line[start:], lambda u: 0.97 * band(first + u * (1 - first)))
    return [pen.stroke(edge, 0.7, "gut", closed=True), *pen.grain(rear, 2.0 * pen_um, "gut", lambda p: 0.8, sizes=(0.9, 1.4))]


def _head(line: Points, half: Callable[[float], float], count: int) -> list[Shape]:
    """In the first rings: the brain like a small heart above the gullet, the thick pad of the throat."""
    brain = [
        tube.beside(line, half, (1.15 + 0.42 * sin(a) * (1 + 0.25 * cos(a))) / count, 0.34 * cos(a))
        for a in (2 * pi * k / 24 for k in range(24))
    ]
    pad = [tube.beside(line, half, t / count, u) for t, u in ((2.3, -0.42), (2.1, 0.0), (2.3, 0.42), (3.5, 0.34), (3.5, -0.34))]
    return [pen.stroke(brain, 0.9, "brain", closed=True), pen.stroke(pad, 0.9, "throat", closed=True)]


def _vessel(line: Points, half: Callable[[float], float], count: int) -> list[Shape]:
    """The blood vessel along the back, fuller in places, with loops down the sides of the front rings."""
    back = [tube.beside(line, half, 0.035 + 0.93 * k / 160, 0.10 * sin(0.22 * k)) for k in range(161)]
    swell = tuple(2.6 + 1.0 * sin(0.35 * k) for k in range(41))
    loops = [
        pen.line(
            [tube.beside(line, half, (k + 0.5) / count + 0.004 * u * u, s * 0.80 * u) for u in (j / 8 for j in range(9))],
            (2.0, 1.2),
            "vessel",
        )
        for k in range(3, 8)
        for s in (-1, 1)
    ]
    return [pen.line(back, swell, "vessel"), *loops]


def _bristles(line: Points, half: Callable[[float], float], count: int, size: float, pen_um: float) -> list[Shape]:
    """Two bundles to a side on every segment but the first: one at the edge, one nearer the belly line."""
    edge_lines, face_lines = [], []
    for k in range(1, count - 1):
        t = (k + 0.5) / count
        for side in (-1, 1):
            for lean in (-0.4, 0.4):
                foot = tube.beside(line, half, t, side * 0.97, lean * 0.3 * size)
                edge_lines.append((foot, tube.beside(line, half, t, side * (0.97 + size / half(t)), lean * size)))
                foot = tube.beside(line, half, t, side * 0.52, lean * 0.25 * size)
                face_lines.append((foot, tube.beside(line, half, t, side * (0.52 + 0.7 * size / half(t)), lean * size)))
    return [pen.strokes(edge_lines, 0.7, "bristles"), pen.strokes(face_lines, 0.6, "bristles")]


KIND = Kind(
    "segmented-worm",
    "a pot worm or young earthworm: rings, and paired bundles of bristles",
    (
        um("length", 5000, 300, 60000, "length along the body"),
        um("width", 300, 30, 4000, "greatest width"),
        amount("segments", 28, 15, 70, "number of rings"),
        um("bristle-length", 60, 0, 400, "length of a bristle beyond the skin; 0 for a worm without any"),
        flag("saddle", "the thickened band of a grown worm"),
        flag("long-hairs", "long soft hairs among the bristles"),
        flag("vessel", "the red blood vessel along the back"),
        flag("eyes", "two eye spots"),
        flag("budding", "a second worm being pinched off behind the middle"),
        flag("skin-drops", "coloured drops scattered in the skin"),
        accent("body", "segments", "bristles", "long-hairs", "skin-drops", "gut", "saddle", "vessel", "eyes"),
        colour(),
    ),
    worm,
    lambda v: ["width must be at most a fifth of the length"] if num(v, "width") > num(v, "length") / 5 else [],
)
