"""What winds in a screw: its line in space as it is seen from the side, and its two edges, the front half over the back half."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import cos, pi, sin

from .. import geometry, pen
from ..shapes import Point, Points, Role, Shape

_STEPS = 48
"""Points of one turn."""


def screw(turns: float, radius: Callable[[float], float], pitch: Callable[[float], float], tilt: float) -> tuple[Points, tuple[bool, ...]]:
    """The line of a screw running down the page, and for each point whether it lies in front.

    `radius` and `pitch` are µm at share t of the way; `tilt` is how far (µm) a turn is seen from above, so that front and back part.
    """
    count = round(_STEPS * turns)
    y = 0.0
    line: list[Point] = []
    front: list[bool] = []
    for k in range(count + 1):
        t, a = k / count, 2 * pi * k / _STEPS
        share = radius(t) / max(radius(0.5), 1e-9)
        line.append((-radius(t) * cos(a), y + tilt * min(1.0, share) * sin(a)))
        front.append(sin(a) >= 0)
        y += pitch(t) / _STEPS
    return tuple(line), tuple(front)


def band(
    line: Points,
    front: Sequence[bool],
    width: float,
    part: str,
    *,
    near: Sequence[float] = (1.2, 1.7),
    far: float = 0.8,
    role: Role = "ink",
) -> list[Shape]:
    """Both edges of a band of one width along a screw; a back half is hidden where a front half lies over it."""
    half = width / 2
    right, left = geometry.offset(line, [half] * len(line)), geometry.offset(line, [-half] * len(line))
    covers = [(*right[a : b + 1], *reversed(left[a : b + 1])) for a, b, ahead in stretches(front) if ahead]
    out: list[Shape] = []
    for a, b, ahead in stretches(front):
        for side, weight in zip((right, left), near, strict=True):
            run = side[a : b + 1]
            if len(run) < 2:
                continue
            if ahead:
                out.append(pen.line(run, (weight,), part, role=role))
            else:
                kept = geometry.runs(run, lambda p: not any(geometry.inside(cover, p) for cover in covers))
                out += [pen.line(piece, (far,), part, role=role) for piece in kept]
    ends = ((right[0], left[0]), (right[-1], left[-1]))
    return [*out, *(pen.stroke(end, 1.2, part, role=role) for end in ends)]


def stretches(front: Sequence[bool]) -> list[tuple[int, int, bool]]:
    """The runs of front and back as (first, last, in front); neighbours share their border point."""
    out: list[tuple[int, int, bool]] = []
    start = 0
    for k in range(1, len(front) + 1):
        if k == len(front) or front[k] != front[start]:
            out.append((start, min(k, len(front) - 1), front[start]))
            start = k
    return out
