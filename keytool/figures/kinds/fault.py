"""Faults that are in the microscope and not on the slide, shown in a round field of view."""

from __future__ import annotations

from collections.abc import Callable

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Shape
from .kind import Kind, Values, accent, choice, num, um, word


def fault(v: Values) -> Sketch:
    """A fault of the optics, in a round field of view."""
    d = num(v, "field")
    shapes: list[Shape] = [pen.ring(0, 0, d / 2, 1.2, "field")]
    return Sketch((*shapes, *_FAULTS[word(v, "form")](d / 2)), pen_for(d, d), tonal=True)


def _dust(r: float) -> list[Shape]:
    """Dust on the eyepiece: hard black specks and a lint hair that turn with the eyepiece, not with the slide."""
    out: list[Shape] = []
    for k, (x, y, s) in enumerate(
        ((-0.42, -0.25, 0.060), (0.36, -0.46, 0.042), (0.14, 0.20, 0.034), (-0.18, 0.52, 0.050), (0.55, 0.22, 0.028))
    ):
        speck = pen.wobble(geometry.ellipse(x * r, y * r, s * r, 0.78 * s * r, turn=k, count=60), 0.16 * s * r, 2, k)
        out.append(pen.filled(speck, "fault"))
    hair = geometry.curve(
        [
            (-0.60 * r, 0.20 * r),
            (-0.30 * r, 0.02 * r),
            (0.02 * r, -0.10 * r),
            (0.24 * r, -0.02 * r),
            (0.34 * r, 0.14 * r),
            (0.28 * r, 0.30 * r),
        ],
        per=8,
    )
    return [*out, pen.line(hair, (1.8, 2.6, 1.6), "fault")]


def _rings(r: float) -> list[Shape]:
    """A speck far out of focus: pale rings, one inside the other, fading outward."""
    out: list[Shape] = []
    for x, y, size in ((-0.22, -0.18, 0.42), (0.46, 0.42, 0.24)):
        for k, weight in enumerate((2.4, 1.6, 1.1, 0.8, 0.5)):
            out.append(pen.ring(x * r, y * r, size * r * (0.22 + 0.19 * k), weight, "fault", role="ink" if k < 2 else "faint"))
    return out


def _scratch(r: float) -> list[Shape]:
    """Scratches on glass: dead straight, sharp, crossing without joining."""
    lines = [
        ((-0.78 * r, -0.30 * r), (0.62 * r, 0.44 * r)),
        ((-0.20 * r, -0.82 * r), (0.12 * r, 0.74 * r)),
        ((-0.62 * r, 0.36 * r), (-0.12 * r, 0.12 * r)),
    ]
    return [pen.line(one, (0.8, 2.4, 1.0), "fault") for one in lines]


_FAULTS: dict[str, Callable[[float], list[Shape]]] = {"dust": _dust, "rings": _rings, "scratch": _scratch}


KIND = Kind(
    "optical-fault",
    "a fault in the optics, shown in a round field of view",
    (
        choice("form", tuple(_FAULTS), "eyepiece dust, out-of-focus rings, or scratches"),
        um("field", 450, 50, 6000, "diameter of the field of view"),
        accent("fault"),
    ),
    fault,
)
