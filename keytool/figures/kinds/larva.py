"""The fly larva: a dark head capsule on a soft ringed body."""

from __future__ import annotations

from math import pi, pow, sin

from .. import geometry, pen
from ..frame import Sketch
from ..shapes import Shape
from . import tube
from .kind import Kind, Values, accent, choice, num, um, word
from .together import beside
from .tube import pen_of, scalloped


def larva(v: Values) -> Sketch:
    """A fly larva: a hard dark head capsule on a soft ringed body without legs."""
    length, width = num(v, "length"), num(v, "width")
    if word(v, "front") == "hooks":
        return _maggot(length, width)
    if word(v, "front") == "both":
        pair = (_capsule(length, width), _maggot(length, width))
        return Sketch(beside([one.shapes for one in pair], 0.06 * length), pair[0].pen_um)
    return _capsule(length, width)


def _capsule(length: float, width: float) -> Sketch:
    """The larva with a hard head."""
    count = 12
    head = 0.085
    line = tube.axis(length, lambda t: 0.55 * sin(2 * pi * (0.8 * t + 0.1)), steps=240)
    soft = scalloped(width, count, depth=0.10, head=0.02, tail=0.07)

    def half(t: float) -> float:
        neck = 0.66 + 0.34 * min(1.0, max(0.0, (t - head) / 0.18))
        capsule = 0.62 * width / 2 * tube.round_ends(t, 0.06, 0.0) * (1 - 0.16 * max(0.0, t / head - 0.72))
        return capsule if t <= head else soft(t) * neck

    edge = tube.ring(line, half)
    pen_um = pen_of(edge)
    cut = round(head * (len(line) - 1))
    capsule = tube.ring(line[: cut + 1], lambda u: half(u * head))
    rear = line[cut + 1 :]
    body = tube.ring(rear, lambda u: half(head + 0.005 + u * (1 - head - 0.005)))
    rings = [tube.across(line, half, k / count, share=0.97, bow=0.08) for k in range(2, count)]
    jaws: list[Shape] = []
    for s in (-1, 1):
        jaw = [
            tube.beside(line, lambda t: width / 2, 0.014, s * 0.20),
            tube.beside(line, lambda t: width / 2, 0.0, s * 0.17, -0.045 * width),
            tube.beside(line, lambda t: width / 2, 0.0, s * 0.06, -0.06 * width),
        ]
        jaws.append(pen.line(geometry.curve(jaw, per=5), (2.4, 1.2), "head-capsule"))
    gut = tube.ring(rear, lambda u: half(head + u * (1 - head)) * 0.34 * tube.round_ends(u, 0.02, 0.05))
    return Sketch(
        (
            pen.contour(edge, 0.9, 1.2, "outline"),
            pen.contour(body, 1.0, 2.2, "body-wall"),
            pen.filled(capsule, "head-capsule"),
            *jaws,
            pen.strokes(rings, 0.8, "segments"),
            pen.stroke(gut, 0.6, "gut", role="faint", closed=True),
        ),
        pen_um,
    )


def _maggot(length: float, width: float) -> Sketch:
    """A maggot: a soft pointed front end with dark hooks that slide in and out, a blunt hind end with breathing holes."""
    count = 12
    line = tube.axis(length, lambda t: 0.45 * sin(2 * pi * (0.8 * t + 0.1)), steps=240)
    soft = scalloped(width, count, depth=0.09, head=0.0, tail=0.05)

    def half(t: float) -> float:
        return soft(t) * (0.16 + 0.84 * pow(min(1.0, t / 0.55), 0.75)) * tube.round_ends(t, 0.02, 0.0)

    edge = tube.ring(line, half)
    hooks: list[Shape] = []
    for s in (-1, 1):
        rod = [tube.beside(line, lambda t: width / 2, t, s * u) for t, u in ((0.085, 0.10), (0.05, 0.08), (0.012, 0.06), (-0.0, 0.10))]
        hooks.append(pen.line(geometry.curve(rod, per=6), (1.4, 2.8, 2.2, 1.0), "head-capsule"))
    holes = [pen.disc(*tube.beside(line, half, 0.985, s * 0.32), 0.045 * width, "breathing-holes") for s in (-1, 1)]
    rings = [tube.across(line, half, k / count, share=0.97, bow=0.08) for k in range(1, count)]
    gut = tube.ring(line[24:225], lambda u: half(0.1 + 0.83 * u) * 0.34 * tube.round_ends(u, 0.05, 0.05))
    return Sketch(
        (
            pen.contour(edge, 1.0, 2.2, "outline"),
            pen.strokes(rings, 0.8, "segments"),
            *hooks,
            *holes,
            pen.stroke(gut, 0.6, "gut", role="faint", closed=True),
        ),
        pen_of(edge),
    )


KIND = Kind(
    "larva",
    "a fly larva: with a dark head capsule, or a maggot with mouth hooks",
    (
        choice("front", ("capsule", "hooks", "both"), "hard head capsule; a soft pointed front with dark hooks; one of each"),
        um("length", 3000, 300, 20000, "length along the body"),
        um("width", 420, 40, 4000, "greatest width"),
        accent("body", "head-capsule", "segments"),
    ),
    larva,
    lambda v: ["width must be at most a quarter of the length"] if num(v, "width") > num(v, "length") / 4 else [],
)
