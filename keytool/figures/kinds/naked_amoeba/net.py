"""The net amoeba: a thin sheet drawn out into strands that branch and join again into meshes of all sizes."""

from __future__ import annotations

from functools import partial
from math import pi, pow, sin

from ... import geometry, pen
from ...frame import Sketch, pen_for
from ...shapes import Point, Points, Shape
from .. import tube
from ..points import pts

_KNOTS = pts(
    # the broad sheet and what joins it
    "-.10 .42, .13 .30, .34 .46, .20 .66, -.06 .74, -.30 .62, -.38 .34, -.16 .20, .06 .10, .44 .24, .54 .62, .30 .86, "
    "-.18 .92, -.50 .52, "
    # free tips
    "-.24 .02, .12 .0, .40 .06, .66 .20, .70 .56, .62 .84, .36 1, .02 .98, -.34 .98, -.56 .76, -.70 .46, -.62 .22, -.44 .12"
)
_STRANDS = (
    # (from, to, how thick, how far bowed)
    *((0, 1, 1.5, 0.10), (0, 4, 1.8, -0.12), (0, 6, 1.0, 0.14), (0, 7, 0.9, -0.10), (1, 2, 1.2, -0.14), (1, 8, 0.8, 0.12)),
    *((2, 3, 0.9, 0.16), (3, 4, 1.4, 0.14), (4, 5, 1.1, -0.16), (5, 6, 0.7, -0.10), (7, 8, 0.7, -0.20), (1, 9, 0.7, -0.08)),
    *((2, 9, 0.6, 0.18), (2, 10, 0.9, -0.10), (3, 11, 1.0, 0.10), (10, 11, 0.5, 0.16), (4, 12, 0.9, 0.12), (5, 13, 0.8, 0.12)),
    *((6, 13, 0.5, -0.20), (11, 12, 0.5, -0.18), (3, 10, 0.5, -0.12)),
    *((7, 14, 0.7, 0.1), (8, 15, 0.6, -0.2), (9, 16, 0.6, 0.2), (9, 17, 0.7, -0.1), (10, 18, 0.7, 0.2), (10, 19, 0.6, -0.1)),
    *((11, 20, 0.7, 0.1), (4, 21, 0.6, -0.2), (12, 22, 0.7, 0.1), (5, 23, 0.6, 0.1), (13, 24, 0.8, -0.2), (6, 25, 0.6, 0.1)),
    *((6, 26, 0.7, -0.2),),
)
_FREE = 14
"""Knots from this one on are free tips."""
_WEBS = {0: 0.100, 1: 0.060, 4: 0.075, 2: 0.045, 5: 0.042, 3: 0.045, 6: 0.048, 10: 0.036, 7: 0.034, 11: 0.034}
"""Webs of the sheet round some knots: half their width as a share of the whole."""


def net(n: float) -> Sketch:
    """Strands of every thickness join into meshes of every size; the plasma gathers in a few webs, where the nuclei lie."""
    knots = geometry.tall(_KNOTS, 0.985 * n)  # the ink at the tips makes up the rest
    pieces = [_strand(knots[a], knots[b], 0.0125 * n * thick, bow, tip=b >= _FREE) for a, b, thick, bow in _STRANDS]
    webs = [
        pen.wobble(geometry.ellipse(*knots[k], r * n, 0.82 * r * n, turn=1.3 * k, count=60), 0.10 * r * n, 3, k) for k, r in _WEBS.items()
    ]
    rings = [*(geometry.clockwise(web) for web in webs), *pieces]
    boxes = [geometry.around(ring) for ring in rings]

    def outside(own: int, p: Point) -> bool:
        return not any(
            k != own and box.x <= p[0] <= box.right and box.y <= p[1] <= box.bottom and geometry.inside(ring, p)
            for k, (ring, box) in enumerate(zip(rings, boxes, strict=True))
        )

    joining = range(len(webs), len(webs) + sum(b < _FREE for _, b, _, _ in _STRANDS))
    edge: list[Shape] = []
    for own, ring in enumerate(rings):
        free = geometry.runs((*ring, ring[0]), partial(outside, own))
        part = "pseudopods" if own in joining else "outline"
        edge += [pen.line(run, (1.3,), part) for run in free]
    pen_um = pen_for(1.4 * n, n)
    grain = [dots for web in webs[:6] for dots in pen.grain(web, 2.4 * pen_um, "contents", lambda p: 0.6, sizes=(0.8, 1.0))]
    nuclei = [pen.ring(x + 0.012 * n, y, 0.015 * n, 1.0, "nucleus") for x, y in (knots[k] for k in (0, 4, 1))]
    return Sketch((*edge, *grain, *nuclei), pen_um)


def _strand(a: Point, b: Point, half: float, bow: float, *, tip: bool) -> Points:
    """One bowed strand, wider at its feet, with a bead of plasma on its way; a free one runs out to a point."""
    (x1, y1), (x2, y2) = a, b
    ways = [
        (x1 + t * (x2 - x1) - w * bow * (y2 - y1), y1 + t * (y2 - y1) + w * bow * (x2 - x1))
        for t, w in ((0.0, 0.0), (0.3, 0.8), (0.65, 1.0), (1.0, 0.0))
    ]
    line = geometry.curve(ways, per=8)

    def wide(t: float) -> float:
        if tip:
            return half * (1.7 * pow(1 - t, 1.2) + 0.03)
        return half * (0.62 + 1.5 * pow(2 * t - 1, 4) + 0.35 * max(0.0, sin(3 * pi * (t - 0.2))))

    return geometry.clockwise(tube.ring(line, wide))
