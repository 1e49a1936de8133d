"""Openings and scars of single bodies."""

from __future__ import annotations

from .. import geometry, pen
from ..shapes import Points, Shape

MARKS = ("none", "ringed-pore", "scar", "y-scar", "plug", "pores")


def mark(style: str, edge: Points, pen_um: float) -> list[Shape]:
    """The mark as shapes of the part `mark`."""
    box = geometry.around(edge)
    r, top = min(box.width, box.height) / 2, box.y
    match style:
        case "ringed-pore":
            x, y = 0.34 * r, -0.40 * r
            return [
                pen.ring(x, y, 0.15 * r, 2.4, "mark"),
                pen.ring(x, y, 0.15 * r + 1.6 * pen_um, 0.5, "mark", role="faint"),
                pen.disc(x, y, 0.055 * r, "mark"),
            ]
        case "scar":
            return _slit(edge, r, box.height / 2)
        case "y-scar":
            return [
                pen.line(((0.0, 0.0), (0.66 * r * x, 0.66 * r * y)), (2.4, 0.9), "mark") for x, y in ((0, -1), (0.866, 0.5), (-0.866, 0.5))
            ]
        case "plug":
            half, rise = 0.11 * r, 0.16 * r
            plug = ((-half, top + 0.02 * r), (-1.25 * half, top - rise), (1.25 * half, top - rise), (half, top + 0.02 * r))
            neck = [((s * half, top + 0.03 * r), (s * 0.8 * half, top + 0.24 * r)) for s in (-1, 1)]
            return [pen.filled(plug, "mark"), pen.strokes(neck, 1.2, "mark")]
        case _:  # pores: one at each side of the middle, one on the face
            y = 0.0
            half = box.width / 2
            sides = [((s * half, y - 0.09 * r), (s * (half - 0.26 * r), y), (s * half, y + 0.09 * r)) for s in (-1, 1)]
            return [
                *(pen.line(geometry.curve(s, per=6), (1.2, 2.0, 1.2), "mark") for s in sides),
                pen.ring(0.10 * r, y, 0.09 * r, 1.1, "mark"),
            ]


def _slit(edge: Points, r: float, half: float) -> list[Shape]:
    """A slit along the hollow side, between two raised lips that meet at its ends."""
    way = [(min(x for x, py in edge if abs(py - y) < 0.06 * half) + 0.30 * r, y) for y in (0.52 * half * (k / 6 - 1) for k in range(13))]
    line = geometry.curve(way, per=4)
    last = len(line) - 1
    swell = [0.075 * r * (1 - (2 * k / last - 1) ** 2) ** 0.5 for k in range(last + 1)]
    lips = [geometry.offset(line, [s * w for w in swell]) for s in (-1, 1)]
    return [pen.line(line, (0.5, 2.6, 0.5), "mark"), *(pen.line(lip, (0.8, 1.1, 0.8), "mark") for lip in lips)]
