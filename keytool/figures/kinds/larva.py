"""The fly larva: a dark head capsule on a soft ringed body."""

from __future__ import annotations

from math import pi, sin

from .. import geometry, pen
from ..frame import Sketch
from ..shapes import Shape
from . import tube
from .kind import Kind, Values, accent, num, um
from .tube import pen_of, scalloped


def larva(v: Values) -> Sketch:
    """A fly larva: a hard dark head capsule on a soft ringed body without legs."""
    length, width = num(v, "length"), num(v, "width")
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


KIND = Kind(
    "larva",
    "a fly larva with a dark head capsule",
    (
        um("length", 3000, 300, 20000, "length along the body"),
        um("width", 420, 40, 4000, "greatest width"),
        accent("body", "head-capsule", "segments"),
    ),
    larva,
    lambda v: ["width must be at most a quarter of the length"] if num(v, "width") > num(v, "length") / 4 else [],
)
