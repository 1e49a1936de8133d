"""Bacteria whose build shows: plain capsules, pairs that snapped apart like a V, rods with a bright spore."""

from __future__ import annotations

from itertools import pairwise
from math import cos, hypot, pi, sin

from .. import geometry, pen
from ..shapes import Point, Points, Shape


def capsule(size: float, r: float) -> Points:
    """A rod with round ends, lying level: `size` long, `r` half its width."""
    half = size / 2
    return (*geometry.arc(half - r, 0, r, -pi / 2, pi / 2, count=10), *geometry.arc(r - half, 0, r, pi / 2, 1.5 * pi, count=10))


_BENDS = (1.15, 0.75, 1.5, 0.12, 0.95)
"""How far the second rod of a pair is turned from the way of the first (radians): most lie like a V or an L, some are nearly straight."""


def angled_pair(size: float, x: float, y: float, turn: float) -> list[Shape]:
    """Two even rods end to end, as they snapped apart: at an angle, or now and then still straight; the size is that of one rod."""
    bend = _BENDS[round(1e4 * abs(x / size)) % len(_BENDS)]
    out: list[Shape] = []
    for lean in (-(pi - bend) / 2, (pi - bend) / 2):
        swollen = round(1e4 * abs(y / size)) % 4 == 0
        rod = _club(size) if swollen else capsule(size, 0.13 * size)
        body = tuple((px + 0.53 * size, py) for px, py in rod)
        out.append(pen.filled(geometry.moved(body, x, y, turn=turn + lean), "dots"))
    return out


def _club(size: float) -> Points:
    """A rod a little thicker toward its free end."""
    side = [(-0.5, 0.0), (-0.46, 0.075), (-0.3, 0.11), (0.1, 0.14), (0.34, 0.165), (0.46, 0.11), (0.5, 0.0)]
    ring = geometry.curve([*side, *((px, -py) for px, py in reversed(side[1:-1]))], closed=True, per=4)
    span = max(p[0] for p in ring) - min(p[0] for p in ring)
    return tuple((px * size / span, py * size / span) for px, py in ring)


def spore_rod(size: float, x: float, y: float, turn: float, *, end: bool) -> list[Shape]:
    """A dull rod with one bright oval, which swells it where it lies near an end."""
    r = 0.15 * size
    at = 0.32 * size if end else 0.0
    big = 0.19 * size if end else 0.125 * size
    rod = geometry.moved(capsule(size, r), x, y, turn=turn)
    c, s = cos(turn), sin(turn)
    spore = geometry.ellipse(x + at * c, y + at * s, 1.3 * big * 0.8, big * 0.8, turn=turn, count=32)
    return [pen.stroke(rod, 0.8, "dots", closed=True), pen.contour(spore, 0.9, 1.4, "spores")]


def slim(size: float, x: float, y: float, turn: float, *, sway: float = 0.05) -> Points:
    """A slim rod with round ends, bent a little, its middle at (x, y)."""
    r, count = 0.045 * size, 24
    line = [((k / count - 0.5) * (size - 2 * r), sway * size * sin(pi * k / count) - 0.6 * sway * size) for k in range(count + 1)]
    right, left = geometry.offset(line, [r] * (count + 1)), geometry.offset(line, [-r] * (count + 1))
    (x1, y1), (x2, y2) = line[-1], line[0]
    cap = geometry.arc(x1, y1, r, pi / 2 - 0.1, -pi / 2 - 0.1, count=8)
    foot = geometry.arc(x2, y2, r, 1.5 * pi + 0.1, pi / 2 + 0.1, count=8)
    return geometry.moved((*right[1:-1], *cap, *reversed(left[1:-1]), *foot), x, y, turn=turn)


def wound_body(size: float, turns: float, amp: float, thick: float, bend: float) -> Points:
    """A body of even thickness with round ends along a wave of so many turns that is bent as a whole, its middle at (0, 0)."""
    count = 140
    line: list[Point] = []
    px = py = 0.0
    for k in range(count + 1):
        t = k / count
        a = bend * (t - 0.5) * 2 * (0.5 if turns == 0 else 0.6)
        off = amp * sin(2 * pi * turns * t)
        line.append((px - off * sin(a), py + off * cos(a)))
        px, py = px + size / count * cos(a), py + size / count * sin(a)
    cx, cy = sum(p[0] for p in line) / len(line), sum(p[1] for p in line) / len(line)
    placed = [(x - cx, y - cy) for x, y in line]
    walked = [hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(placed)]
    whole, gone, half = sum(walked), 0.0, []
    for step in (*walked, 0.0):
        near = min(gone, whole - gone) / (thick / 2)
        half.append(thick / 2 * (1 - (1 - min(1.0, near)) ** 2) ** 0.5)
        gone += step
    return (*geometry.offset(placed, half), *reversed(geometry.offset(placed, [-h for h in half])))
