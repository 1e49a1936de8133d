"""What is seen inside a whole worm at low power: the gullet by its build, the nerve ring, the gut, the female organs."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import sqrt

from .. import geometry, pen
from ..shapes import Point, Points, Shape
from . import tube
from .tube import Strand
from .worm_shape import BELLY

# Knots of (share of the gullet, share of the half width there). Builds as the head plates draw them (textbook knowledge, from memory).
GULLETS: dict[str, Sequence[Point]] = {
    "rhabditoid": ((0, 0.20), (0.10, 0.30), (0.45, 0.42), (0.56, 0.24), (0.74, 0.16), (0.80, 0.30), (0.90, 0.60), (0.97, 0.42), (1, 0.12)),
    "diplogastroid": ((0, 0.22), (0.25, 0.30), (0.44, 0.58), (0.54, 0.24), (0.68, 0.16), (0.84, 0.42), (0.94, 0.40), (1, 0.12)),
    "tylenchoid": ((0, 0.10), (0.30, 0.16), (0.42, 0.48), (0.47, 0.50), (0.54, 0.14), (0.70, 0.12), (0.88, 0.46), (1, 0.30)),
    "aphelenchoid": ((0, 0.10), (0.38, 0.16), (0.50, 0.78), (0.60, 0.80), (0.66, 0.22), (0.76, 0.30), (0.90, 0.42), (1, 0.24)),
    "criconematoid": ((0, 0.22), (0.30, 0.34), (0.52, 0.56), (0.64, 0.40), (0.74, 0.14), (0.88, 0.32), (1, 0.14)),
    "dorylaimoid": ((0, 0.10), (0.42, 0.13), (0.54, 0.20), (0.62, 0.46), (0.94, 0.50), (1, 0.24)),
    "trichodorid": ((0, 0.12), (0.55, 0.14), (0.72, 0.26), (0.88, 0.56), (1, 0.34)),
    "mononchoid": ((0, 0.34), (0.5, 0.44), (0.94, 0.50), (1, 0.26)),
    "cylindrical": ((0, 0.24), (0.5, 0.30), (0.94, 0.40), (1, 0.20)),
}
_BULBS = {"rhabditoid": 0.90, "tylenchoid": 0.445, "aphelenchoid": 0.55, "criconematoid": 0.52, "diplogastroid": 0.44}
"""Where along the gullet a valve or bright mark lies."""
_START = 0.012


def gullet(worm: Strand, build: str, end: float) -> list[Shape]:
    """The gullet from the mouth to share `end` of the body, its bore, the mark in its bulb, and the nerve ring aslant round it."""
    half = tube.profile(GULLETS[build], 1.0)

    def t(u: float) -> float:
        return _START + u * (end - _START)

    right = [tube.beside(worm.axis, worm.half, t(k / 70), half(k / 70)) for k in range(71)]
    left = [tube.beside(worm.axis, worm.half, t(k / 70), -half(k / 70)) for k in range(71)]
    bore = [tube.beside(worm.axis, worm.half, t(k / 40), 0.0) for k in range(41)]
    out: list[Shape] = [
        pen.stroke((*right, *reversed(left)), 0.7, "gullet", closed=True),
        pen.stroke(bore, 0.5, "gullet", role="faint"),
    ]
    if build in _BULBS:
        at = t(_BULBS[build])
        x, y = tube.beside(worm.axis, worm.half, at, 0.0)
        out.append(pen.disc(x, y, 0.10 * worm.half(at), "gullet"))
    ring = t(0.62)
    slant = 0.30 * worm.half(ring)
    out.append(
        pen.stroke(
            [tube.beside(worm.axis, worm.half, ring, u, slant * u) for u in (-0.72, -0.3, 0.3, 0.72)], 1.4, "nerve-ring", role="faint"
        )
    )
    return out


def female(worm: Strand, place: str, end: float, anus: float) -> tuple[list[Shape], Callable[[float], float]]:
    """The vulva and the tubes that lead to it, along the belly; and how far (half widths) they push the gut aside at a share."""
    vulva, first, last = (0.52, 0.34, 0.70) if place == "middle" else (0.80, 0.42, 0.86)
    first, last = max(first, end + 0.05), min(last, anus - 0.03)

    def wide(t: float) -> float:
        if not first < t < last:
            return 0.0
        tapered = sqrt(min(1.0, (t - first) / 0.05, (last - t) / 0.05))
        return tapered * (0.80 + 0.20 * (1 - min(1.0, abs(t - vulva) / 0.12)))

    steps = [first + (last - first) * k / 110 for k in range(111)]
    belly = [tube.beside(worm.axis, worm.half, t, BELLY * 0.82) for t in steps]
    inner = [tube.beside(worm.axis, worm.half, t, BELLY * (0.82 - 0.80 * wide(t))) for t in steps]
    cells: list[Points] = []
    for k in range(1, 16):
        t = first + (last - first) * k / 16
        if wide(t) > 0.6 and abs(t - vulva) > 0.035:
            x, y = tube.beside(worm.axis, worm.half, t, BELLY * 0.48)
            cells.append(geometry.ellipse(x, y, 0.20 * worm.half(t), 0.20 * worm.half(t), count=18))
    slit = [tube.beside(worm.axis, worm.half, vulva, BELLY * u) for u in (1.0, 0.45)]
    lips = [[tube.beside(worm.axis, worm.half, vulva, BELLY * u, s * 0.10 * worm.half(vulva)) for u in (1.10, 0.86)] for s in (-1, 1)]
    return [
        pen.stroke((*belly, *reversed(inner)), 0.7, "gonad", closed=True),
        *(pen.stroke(cell, 0.6, "gonad", closed=True) for cell in cells),
        pen.stroke(slit, 1.5, "vulva"),
        pen.strokes(lips, 1.2, "vulva"),
    ], wide
