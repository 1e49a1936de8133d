"""Small arthropods from above, put together from rings, legs, feelers and tails."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import cos, pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape
from .limbs import leg


@dataclass(frozen=True, slots=True)
class Plan:
    """An animal from above: all lengths in shares of the body's length, head at the top.

    `rings` are (start, stop, half width); a leg leaves the ring's side at `legs` = (depth, reach, lean down the page).
    `feelers` are beads, forked, short or none; `tail` is plain, points, threads or spikes.
    """

    head: Point
    rings: tuple[tuple[float, float, float], ...]
    legs: tuple[tuple[float, float, float], ...]
    feelers: str
    tail: str = "plain"
    thick: float = 0.018


def _many(count: int, first: float, last: float, half: float, gap: float = 0.005) -> tuple[tuple[float, float, float], ...]:
    step = (last - first) / count
    return tuple(
        (first + k * step, first + (k + 1) * step - gap, half * (0.80 + 0.20 * sin(pi * (k + 0.8) / (count + 0.6)))) for k in range(count)
    )


def _even(count: int, first: float, last: float, reach: float) -> tuple[tuple[float, float, float], ...]:
    return tuple((first + (last - first) * (k + 0.5) / count, reach, -0.25 + 0.9 * k / max(1, count - 1)) for k in range(count))


_PROTURAN = (
    *((0.120, 0.185, 0.058), (0.185, 0.262, 0.074), (0.262, 0.340, 0.082)),
    *((0.340 + 0.062 * k, 0.340 + 0.062 * (k + 1), 0.088 + 0.010 * sin(pi * k / 5) - 0.0042 * max(0, k - 3)) for k in range(8)),
    *((0.836 + 0.032 * k, 0.836 + 0.032 * (k + 1), 0.060 - 0.006 * k) for k in range(3)),
    (0.932, 1.0, 0.042),
)
"""Three rings that bear the legs, then twelve: eight broad ones, three short ones, and the last."""

PLANS: dict[str, Plan] = {
    "symphylan": Plan((0.085, 0.065), _many(14, 0.105, 1.005, 0.075), _even(12, 0.12, 0.90, 0.085), "beads", "points", 0.014),
    "pauropod": Plan((0.13, 0.105), _many(6, 0.15, 1.005, 0.145), _even(9, 0.22, 0.95, 0.15), "forked", "plain", 0.022),
    "proturan": Plan((0.118, 0.050), _PROTURAN, ((0.160, 0.27, -1.22), (0.235, 0.13, 0.15), (0.305, 0.14, 0.5)), "none", "plain", 0.024),
    "dipluran": Plan(
        (0.115, 0.075),
        _many(13, 0.125, 1.005, 0.070),
        ((0.18, 0.17, -0.35), (0.26, 0.18, 0.15), (0.34, 0.20, 0.6)),
        "beads",
        "threads",
        0.016,
    ),
}


def build(name: str, n: float) -> Sketch:
    """The animal of that plan, `n` long without feelers and tails."""
    return Sketch(tuple(animal(PLANS[name], n)), pen_for(0.75 * n, 1.35 * n))


def animal(plan: Plan, n: float) -> list[Shape]:
    """The animal of a plan from above, its head at (0, 0), `n` long without feelers and tails."""
    out: list[Shape] = []
    for depth, reach, lean in plan.legs:
        half = next((h for a, b, h in plan.rings if a <= depth <= b + 0.01), plan.rings[0][2])
        for s in (-1, 1):
            out += leg(_joints(s, half, depth, reach, lean, n), plan.thick * n, None, "legs")
    trunk = _trunk(plan, n)
    borders = [_border(here, behind, n) for here, behind in pairwise(plan.rings)]
    out += [pen.filled(edge, "skin", role="paper") for edge in (trunk, _head(plan, n))]
    out += [
        pen.strokes([line for ring in plan.rings[:-1] for line in _hatching(ring, n)], 0.6, "shade"),
        *(pen.line(border, (0.7, 1.3, 1.6), "segments") for border in borders),
        pen.contour(trunk, 1.2, 2.3, "outline"),
        pen.contour(_head(plan, n), 1.2, 2.3, "outline"),
    ]
    out += _feelers(plan, n)
    return [*out, *_tail(plan, n)]


def _joints(s: int, half: float, depth: float, reach: float, lean: float, n: float) -> list[Point]:
    x, y = s * half * 0.96 * n, depth * n
    c, d = cos(lean), sin(lean)
    return [
        (x + s * r * reach * c * n, y + (r * reach * d + bow * reach) * n)
        for r, bow in ((0.0, 0.0), (0.40, -0.12), (0.72, -0.02), (1.0, 0.14))
    ]


def _head(plan: Plan, n: float) -> Points:
    deep, half = plan.head
    side: list[Point] = [(0.45 * half * n, 0.05 * deep * n), (half * n, 0.45 * deep * n), (0.85 * half * n, 0.90 * deep * n)]
    return geometry.clockwise(geometry.curve([(0.0, 0.0), *side, (0.0, deep * n), *reversed(geometry.mirrored(side))], closed=True, per=8))


def _trunk(plan: Plan, n: float) -> Points:
    """The edge of all rings together: each bulges a little, with a notch where the next begins."""
    (_, neck, first), *rings, (top, low, half) = plan.rings
    a = 0.97 * plan.head[0]
    shoulder = ((0.55 * first, a), (0.90 * first, a + 0.2 * (neck - a)), (first, a + 0.6 * (neck - a)), (0.93 * first, neck))
    side: list[Point] = list(geometry.curve(geometry.scaled(shoulder, n), per=6))
    for a, b, wide in rings:
        side += geometry.curve([(0.90 * wide * n, a * n), (wide * n, (a + b) / 2 * n), (0.93 * wide * n, b * n)], per=6)
    side += geometry.curve(
        [(0.90 * half * n, top * n), (0.82 * half * n, (top + 0.6 * (low - top)) * n), (0.30 * half * n, low * n)], per=6
    )
    return geometry.clockwise((*side, *reversed(geometry.mirrored(side))))


def _hatching(ring: tuple[float, float, float], n: float) -> list[Points]:
    """Short lines in from the side of a ring that lies away from the light, the middle ones longest."""
    a, b, half = ring
    return [((0.94 * half * n, (a + (b - a) * t) * n), ((0.94 - deep) * half * n, (a + (b - a) * (t + 0.03)) * n)) for t, deep in _HATCHES]


_HATCHES = ((0.24, 0.22), (0.38, 0.36), (0.52, 0.42), (0.66, 0.38), (0.80, 0.26))


def _border(here: tuple[float, float, float], behind: tuple[float, float, float], n: float) -> Points:
    """The hind border of a ring, bowed a little toward the tail."""
    y, half = here[1] * n, 0.93 * min(here[2], behind[2]) * n
    return tuple((half * u, y + 0.10 * half * (1 - u * u)) for u in (k / 8 - 1 for k in range(17)))


def _feelers(plan: Plan, n: float) -> list[Shape]:
    deep, half = plan.head
    out: list[Shape] = []
    for s in (-1, 1):
        start = (s * 0.55 * half * n, 0.12 * deep * n)
        if plan.feelers == "beads":
            path = geometry.curve([start, (s * (half + 0.06) * n, -0.12 * n), (s * (half + 0.10) * n, -0.26 * n)], per=8)
            out += [pen.ring(x, y, 0.0105 * n, 1.0, "feelers") for x, y in geometry.spaced(path, 0.021 * n)]
        if plan.feelers == "short":
            path = geometry.curve([start, (s * (half + 0.015) * n, -0.025 * n), (s * (half + 0.02) * n, -0.06 * n)], per=6)
            out.append(pen.line(path, (2.2, 1.6, 0.8), "feelers"))
        if plan.feelers == "forked":
            fork = (s * (half + 0.02) * n, -0.07 * n)
            out.append(pen.line((start, fork), (3.0, 2.4), "feelers"))
            for lean, size in ((-0.35, 0.15), (0.25, 0.18), (0.6, 0.13)):
                tip = (fork[0] + s * size * sin(0.5 + lean) * n, fork[1] - size * cos(0.5 + lean) * n)
                out.append(pen.line((fork, tip), (1.6, 0.5), "feelers"))
    return out


def _tail(plan: Plan, n: float) -> list[Shape]:
    half = plan.rings[-1][2]
    out: list[Shape] = []
    for s in (-1, 1):
        start = (s * 0.4 * half * n, 0.995 * n)
        if plan.tail == "plain":
            a, b, _ = plan.rings[-1]
            rim = geometry.curve([(0.0, b * n), (s * 0.30 * half * n, b * n), (s * 0.78 * half * n, (a + 0.6 * (b - a)) * n)], per=6)
            out.append(pen.line(rim, (1.8, 1.2), "tail"))
        if plan.tail == "spikes":
            path = geometry.curve([start, (s * 0.9 * half * n, 1.07 * n), (s * 0.8 * half * n, 1.15 * n)], per=8)
            out.append(pen.line(path, (3.2, 2.2, 0.8), "tail"))
        if plan.tail == "points":
            out.append(pen.filled((start, (s * 0.62 * half * n, 1.095 * n), (s * 0.85 * half * n, 0.985 * n)), "tail"))
        if plan.tail == "threads":
            path = geometry.curve([start, (s * 0.10 * n, 1.12 * n), (s * 0.17 * n, 1.28 * n)], per=8)
            out += [pen.ring(x, y, 0.0105 * n, 1.0, "tail") for x, y in geometry.spaced(path, 0.021 * n)]
    return out
