"""Lifeless bits: mineral grains and crumbs of organic matter."""

from __future__ import annotations

from collections.abc import Callable
from math import cos, pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Box, Point
from . import clumps
from .dots import fitted
from .kind import Kind, Values, accent, choice, num, um, word


def grain(v: Values) -> Sketch:
    """A mineral grain: straight edges, corners, flat faces."""
    size = num(v, "size")
    ring = fitted(
        [(-0.36, -0.30), (-0.08, -0.47), (0.27, -0.38), (0.45, -0.10), (0.40, 0.24), (0.12, 0.45), (-0.24, 0.38), (-0.46, 0.08)], size
    )
    face = tuple((0.55 * x - 0.05 * size, 0.52 * y - 0.06 * size) for x, y in (ring[0], ring[2], ring[3], ring[5], ring[7]))
    pen_um = pen_for(size, size)
    ridges = [
        (face[0], ring[0]),
        (face[1], ring[2]),
        (face[2], ring[3]),
        (face[3], ring[5]),
        (face[4], ring[7]),
        (face[2], ring[4]),
        (face[3], ring[6]),
    ]

    def shade(p: Point) -> float:
        low = (p[0] * 0.6 + p[1] * 0.8) / size
        free = geometry.inside(ring, p) and not geometry.inside(face, p)
        return max(0.0, 0.15 + 2.2 * low) if free else 0.0

    return Sketch(
        (
            pen.contour(ring, 1.4, 2.6, "outline"),
            pen.stroke(face, 0.9, "faces", closed=True),
            pen.strokes(ridges, 0.8, "faces"),
            *pen.stipple(Box(-size / 2, -size / 2, size, size), shade, 2.8 * pen_um, "shade"),
        ),
        pen_um,
    )


def crumb(v: Values) -> Sketch:
    """A crumb or clump of the kind asked for."""
    return _CRUMBS[word(v, "form")](num(v, "size"))


def _brown(size: float) -> Sketch:
    """A crumb of dead organic matter: ragged, dark, no straight edge, bits of fibre sticking out."""
    base = geometry.ellipse(0, 0, 0.5 * size, 0.40 * size, count=180)
    ragged = pen.wobble(pen.wobble(pen.wobble(base, 0.050 * size, 3, "lumps"), 0.030 * size, 9, "bits"), 0.016 * size, 23, "fringe")
    ring = fitted(list(ragged), size)
    pen_um = pen_for(size, 0.9 * size)

    def dense(p: Point) -> float:
        lump = 0.5 + 0.5 * sin(17 * p[0] / size + 2) * cos(13 * p[1] / size)
        return 0.35 + 0.65 * lump if geometry.inside(ring, p) else 0.0

    strands = []
    for a, bend in ((0.4, 0.5), (2.2, -0.6), (3.6, 0.4), (5.3, -0.5)):
        x, y = ring[int(a / (2 * pi) * len(ring))]
        strands.append(
            geometry.curve(
                [(0.8 * x, 0.8 * y), (x, y), (x * 1.16 + bend * 0.05 * size, y * 1.2), (x * 1.26 - bend * 0.06 * size, y * 1.38)], per=6
            )
        )
    box = Box(-0.55 * size, -0.55 * size, 1.1 * size, 1.1 * size)
    return Sketch(
        (
            pen.filled(ring, "fill", role="faint"),
            pen.contour(ring, 1.0, 2.2, "outline"),
            pen.strokes(strands, 0.9, "strands"),
            *pen.stipple(box, dense, 2.9 * pen_um, "shade", sizes=(1.3, 2.2)),
        ),
        pen_um,
        tonal=True,
    )


GRAIN = Kind(
    "grain", "a mineral grain with flat faces and corners", (um("size", 60, 1, 3000, "longest measure"), accent("body", "faces")), grain
)


_CRUMBS: dict[str, Callable[[float], Sketch]] = {"brown": _brown, "gritty": clumps.gritty, "jelly": clumps.jelly}

CRUMB = Kind(
    "crumb",
    "a crumb or clump without a wall: brown and ragged, gritty, or a clear jelly",
    (
        um("size", 150, 5, 5000, "longest measure"),
        choice("form", tuple(_CRUMBS), "brown and ragged organic matter; mineral bits in clay; clear jelly full of dots"),
        accent("body", "strands", "bits", "dots"),
    ),
    crumb,
)
