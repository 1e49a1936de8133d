"""Bacteria whose build shows: plain capsules, pairs that snapped apart like a V, rods with a bright spore."""

from __future__ import annotations

from math import cos, pi, sin

from .. import geometry, pen
from ..shapes import Points, Shape


def capsule(size: float, r: float) -> Points:
    """A rod with round ends, lying level: `size` long, `r` half its width."""
    half = size / 2
    return (*geometry.arc(half - r, 0, r, -pi / 2, pi / 2, count=10), *geometry.arc(r - half, 0, r, pi / 2, 1.5 * pi, count=10))


def club_pair(size: float, x: float, y: float, turn: float) -> list[Shape]:
    """Two rods that lie like a V, thicker where they snapped apart; the size is that of one rod."""
    out: list[Shape] = []
    for lean in (-0.55, 0.55):
        club = [
            (0.0, -0.10 * size),
            (0.5 * size, -0.12 * size),
            (0.86 * size, -0.20 * size),
            (size, 0.0),
            (0.86 * size, 0.20 * size),
            (0.5 * size, 0.12 * size),
            (0.0, 0.10 * size),
        ]
        body = geometry.curve(club, closed=True, per=5)
        span = max(p[0] for p in body) - min(p[0] for p in body)
        body = tuple((px * size / span, py * size / span) for px, py in body)
        out.append(pen.filled(geometry.moved(geometry.moved(body, 0.06 * size, 0.0, turn=lean), x, y, turn=turn), "dots"))
    return out


def spore_rod(size: float, x: float, y: float, turn: float, *, end: bool) -> list[Shape]:
    """A dull rod with one bright oval, which swells it where it lies near an end."""
    r = 0.15 * size
    at = 0.32 * size if end else 0.0
    big = 0.19 * size if end else 0.125 * size
    rod = geometry.moved(capsule(size, r), x, y, turn=turn)
    c, s = cos(turn), sin(turn)
    spore = geometry.ellipse(x + at * c, y + at * s, 1.3 * big * 0.8, big * 0.8, turn=turn, count=32)
    return [pen.stroke(rod, 0.8, "dots", closed=True), pen.contour(spore, 0.9, 1.4, "spores")]
