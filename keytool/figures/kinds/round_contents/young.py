"""The young of legged animals, folded in the egg."""

from __future__ import annotations

from ... import geometry, pen
from ...shapes import Points, Shape
from ..points import pts
from .room import PART, at, size

_LEGS = ("-.78 -.34, -.40 -.30, -.22 -.16", "-.84 .02, -.46 .06, -.26 .18", "-.78 .38, -.44 .42, -.26 .50", "-.56 .70, -.34 .68, -.18 .72")
_NEEDLES = ("-.10 -.74, -.16 -.60, -.12 -.44", ".10 -.74, .16 -.60, .12 -.44")


def legged(room: Points, pen_um: float) -> list[Shape]:
    """A folded animal: legs with claws laid across the belly, and behind the mouth a pair of bent needles."""
    edge = tuple((0.88 * x, 0.91 * y) for x, y in room)
    r = size(room)
    out: list[Shape] = [pen.contour(edge, 0.9, 1.5, PART)]
    for leg in _LEGS:
        for s in (1, -1):
            way = geometry.curve([at(room, s * x, y) for x, y in pts(leg)], per=8)
            half = [0.085 * r * (1 - 0.5 * k / (len(way) - 1)) for k in range(len(way))]
            out += [pen.stroke(geometry.offset(way, [d * h for h in half]), 1.0, PART) for d in (-1, 1)]
            (x, y) = way[-1]
            out.append(
                pen.strokes([((x, y), (x + s * u * r, y + v * r)) for u, v in ((0.11, -0.03), (0.11, 0.04), (0.07, 0.09))], 1.1, PART)
            )
    needles = [geometry.curve([at(room, x, y) for x, y in pts(one)], per=6) for one in _NEEDLES]
    out += [pen.line(needle, (0.8, 2.4, 1.2), PART) for needle in needles]
    out.append(pen.ring(*at(room, 0.0, -0.30), 0.12 * r, 1.0, PART))
    return [*out, *pen.grain(edge, 4.2 * pen_um, PART, lambda p: 0.35 if abs(p[0]) < 0.16 * r and p[1] > -0.1 * r else 0.1)]
