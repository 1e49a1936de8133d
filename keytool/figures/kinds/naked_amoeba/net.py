"""The net amoeba: flat clear strands that branch and join again into meshes."""

from __future__ import annotations

from functools import partial

from ... import geometry, pen
from ...frame import Sketch, pen_for
from ...shapes import Point, Points, Shape
from .. import tube
from ..points import pts

_KNOTS = pts(
    "0 .50, -.16 .36, .12 .33, .24 .52, .10 .70, -.14 .68, -.27 .50, -.30 .21, -.03 .13, .28 .19, .45 .40, .37 .74, .13 .90, -.19 .91, "
    "-.44 .71, -.46 .35, -.36 .04, .02 0, .40 .08, .56 .30, .55 .48, .48 .86, .20 1, -.30 1, -.56 .80, -.58 .28"
)
_STRANDS = (
    *((0, 1), (0, 3), (0, 5), (1, 2), (2, 3), (3, 4), (4, 5), (5, 6), (6, 1)),
    *((1, 7), (1, 8), (2, 8), (2, 9), (3, 10), (9, 10), (3, 11), (4, 12), (5, 13), (6, 14), (6, 15), (7, 15), (12, 13)),
    *((7, 16), (8, 17), (9, 18), (10, 19), (10, 20), (11, 21), (12, 22), (13, 23), (14, 24), (15, 25)),
)
_FREE = 16
"""Knots from this one on are free tips."""


def net(n: float) -> Sketch:
    """A thin clear sheet drawn out into strands that join into meshes; the nuclei lie in its knots."""
    knots = geometry.tall(_KNOTS, 0.990 * n)  # the ink at the tips makes up the rest
    pieces = [_strand(knots[a], knots[b], 0.016 * n, k, tip=b >= _FREE) for k, (a, b) in enumerate(_STRANDS)]
    webs = [
        geometry.ellipse(x, y, r, 0.85 * r, count=24) for k, (x, y) in enumerate(knots[:_FREE]) for r in (n * (0.050 if k < 7 else 0.042),)
    ]
    rings = [*webs, *pieces]
    boxes = [geometry.around(ring) for ring in rings]

    def outside(own: int, p: Point) -> bool:
        return not any(
            k != own and box.x <= p[0] <= box.right and box.y <= p[1] <= box.bottom and geometry.inside(ring, p)
            for k, (ring, box) in enumerate(zip(rings, boxes, strict=True))
        )

    joining = range(len(webs), len(webs) + sum(b < _FREE for _, b in _STRANDS))
    edge: list[Shape] = []
    for own, ring in enumerate(rings):
        free = geometry.runs((*ring, ring[0]), partial(outside, own))
        part, weight = ("pseudopods", 1.3) if own in joining else ("outline", 1.0)
        edge += [pen.line(run, (weight,), part) for run in free]
    nuclei = [pen.ring(*knots[k], 0.014 * n, 0.9, "nucleus") for k in (0, 2, 4, 6, 3, 5)]
    return Sketch((*edge, *nuclei), pen_for(1.14 * n, n))


def _strand(a: Point, b: Point, half: float, k: int, *, tip: bool) -> Points:
    """One strand, a little bowed, thinner in its middle; a free one runs out to a point."""
    (x1, y1), (x2, y2) = a, b
    bow = 0.06 * (-1) ** k
    middle = ((x1 + x2) / 2 - bow * (y2 - y1), (y1 + y2) / 2 + bow * (x2 - x1))
    line = geometry.curve((a, middle, b), per=8)

    def wide(t: float) -> float:
        return half * (1.1 * (1 - t) ** 0.7 if tip else 0.75 + 1.6 * (2 * t - 1) ** 4)

    return geometry.clockwise(tube.ring(line, wide))
