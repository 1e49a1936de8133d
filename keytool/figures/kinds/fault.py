"""Faults that are in the microscope and not on the slide, shown in a round field of view."""

from __future__ import annotations

from collections.abc import Callable
from math import cos, hypot, pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Box, Shape
from . import glass_faults
from .kind import Kind, Values, accent, choice, num, um, word
from .points import pts


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


def _floater(r: float) -> list[Shape]:
    """Pale strings and beads in the eye, in front of everything."""
    strings = [pts("-.62 -.3, -.4 -.42, -.22 -.22, -.02 -.3, .1 -.12, .06 .1, -.12 .06"), pts(".2 .62, .34 .44, .3 .24, .48 .1, .64 .22")]
    out: list[Shape] = [pen.line(geometry.curve(geometry.scaled(s, r), per=8), (2.2, 3.0, 1.6), "fault", role="faint") for s in strings]
    for x, y, size in ((-0.30, 0.42, 0.055), (-0.20, 0.50, 0.04), (-0.37, 0.53, 0.045), (0.46, -0.40, 0.05)):
        out.append(pen.ring(x * r, y * r, size * r, 1.8, "fault", role="faint"))
    return out


def _contours(r: float) -> list[Shape]:
    """Bright and dark lines that follow the outline of a small body, evenly spaced, when the iris is nearly closed."""
    body = geometry.clockwise(
        geometry.curve(geometry.scaled(pts("-.2 -.1, -.02 -.2, .18 -.12, .2 .1, .04 .2, -.16 .14"), r), closed=True, per=12)
    )
    out: list[Shape] = [pen.contour(body, 1.8, 2.8, "grain"), *pen.grain(body, 0.045 * r, "grain", lambda p: 0.5)]
    for k, weight in enumerate((2.2, 1.6, 1.2, 0.9, 0.6)):
        ring = geometry.offset(body, [-(0.085 + 0.085 * k) * r] * len(body), closed=True)
        out.append(pen.stroke(ring, weight, "fault", closed=True, role="ink" if k < 2 else "faint"))
    return out


def _air_edge(r: float) -> list[Shape]:
    """The edge of the liquid: a thick black line with air on one side, all life on the other."""
    line = geometry.curve(geometry.scaled(pts("-.34 -.94, -.18 -.5, -.1 0, -.16 .45, -.36 .935"), r), per=10)
    specks = [(0.30, -0.44, 0.03), (0.52, 0.18, 0.022), (0.18, 0.40, 0.028), (0.44, 0.58, 0.02), (0.66, -0.20, 0.024), (0.16, -0.10, 0.02)]
    return [
        pen.line(line, (5.5, 7.0, 5.5), "fault"),
        pen.stroke(geometry.offset(line, [-0.055 * r] * len(line)), 0.9, "fault"),
        pen.stroke(geometry.offset(line, [-0.10 * r] * len(line)), 0.6, "fault", role="faint"),
        *(pen.ring(x * r, y * r, s * r, 1.0, "life") for x, y, s in specks),
    ]


def _lashes(r: float) -> list[Shape]:
    """The shadow of eyelashes: soft dark bars reaching in from the rim."""
    bars = [
        geometry.curve(
            geometry.scaled(
                [(cos(a), sin(a)), (0.74 * cos(a + 0.05), 0.74 * sin(a + 0.05)), (0.52 * cos(a + 0.16), 0.52 * sin(a + 0.16))], 0.99 * r
            ),
            per=8,
        )
        for a in (0.95, 1.15, 1.36, 1.58, 1.80, 2.02)
    ]
    return [pen.line(b, (5.0, 3.6, 0.6), "fault", role="faint") for b in bars]


def _shade(r: float) -> list[Shape]:
    """One side of the field dark: the lamp or the condenser is not in line. A thin line follows the border of the dark."""
    dense = pen.stipple(
        Box(-r, -r, 2 * r, 2 * r),
        lambda p: max(0.0, min(1.0, (p[0] + 0.5 * p[1]) / r + 0.1)) if hypot(*p) < 0.985 * r else 0.0,
        0.034 * r,
        "dark",
        sizes=(1.6, 2.2),
    )
    border = [(0.20 * r - 0.5 * y * r, y * r) for y in (-0.9 + 0.09 * k for k in range(21))]
    return [*dense, *(pen.line(run, (0.8, 1.6, 0.8), "fault") for run in geometry.runs(border, lambda p: hypot(*p) < 0.97 * r))]


def _lamp(r: float) -> list[Shape]:
    """The picture of the lamp in the field: bright turns of a wire, the same everywhere on the slide."""
    turns = [(0.62 * r * (k / 60 - 0.5) * 2, 0.20 * r * sin(2 * pi * 5 * k / 60)) for k in range(61)]
    return [pen.line(geometry.curve(turns, per=3), (3.0, 3.0), "fault", role="faint")]


_FAULTS: dict[str, Callable[[float], list[Shape]]] = {
    "dust": _dust,
    "rings": _rings,
    "scratch": _scratch,
    "floater": _floater,
    "contours": _contours,
    "air-edge": _air_edge,
    "air-patch": glass_faults.air_patch,
    "lashes": _lashes,
    "shade": _shade,
    "lamp": _lamp,
    "smear": glass_faults.smear,
    "dirt": glass_faults.dirt,
}


KIND = Kind(
    "optical-fault",
    "a fault in the optics or the light, shown in a round field of view",
    (
        choice(
            "form",
            tuple(_FAULTS),
            "eyepiece dust; out-of-focus rings; scratches; floaters in the eye; false lines round a "
            "grain; the edge of the liquid; air shut in by it; shadow of lashes; one side dark; picture of the lamp; "
            "a veil over all; dirt on the glass",
        ),
        um("field", 450, 50, 6000, "diameter of the field of view"),
        accent("fault"),
    ),
    fault,
)
