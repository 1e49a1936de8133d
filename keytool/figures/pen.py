"""The pen: swelling lines, hatching and stipple, each returning shapes.

Everything is a function of its arguments: stipple is seeded from its content, so the same plate is the same bytes.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from math import cos, pi, sin
from random import Random
from zlib import crc32

from . import geometry
from .shapes import Box, Dots, Path, Point, Points, Role, Step, Swell

_LIGHT = (-0.6, -0.8)
"""Where the light comes from: upper left, as on an engraver's plate."""


def stroke(points: Sequence[Point], weight: float, part: str, *, role: Role = "ink", closed: bool = False) -> Path:
    """One even line through the points."""
    return Path(_steps(points, closed), part, role, weight)


def filled(points: Sequence[Point], part: str, *, role: Role = "ink") -> Path:
    """A solid area."""
    return Path(_steps(points, True), part, role, 0.0, True)


def holed(points: Sequence[Point], holes: Iterable[Sequence[Point]], part: str, *, role: Role = "ink") -> Path:
    """A solid area with holes in it; a hole runs the other way round than the edge."""
    steps = [step for hole in holes for step in _steps(tuple(reversed(geometry.clockwise(hole))), True)]
    return Path((*_steps(geometry.clockwise(points), True), *steps), part, role, 0.0, True)


def strokes(lines: Iterable[Sequence[Point]], weight: float, part: str, *, role: Role = "ink") -> Path:
    """Many even lines as one shape (hatching, ticks)."""
    return Path(tuple(step for line in lines for step in _steps(line, False)), part, role, weight)


def disc(cx: float, cy: float, r: float, part: str, *, ry: float | None = None, role: Role = "ink") -> Path:
    """A solid circle or upright ellipse, as four beziers."""
    return Path(_oval(cx, cy, r, r if ry is None else ry), part, role, 0.0, True)


def ring(cx: float, cy: float, r: float, weight: float, part: str, *, ry: float | None = None, role: Role = "ink") -> Path:
    """An even line round a circle or upright ellipse, as four beziers."""
    return Path(_oval(cx, cy, r, r if ry is None else ry), part, role, weight)


def line(points: Sequence[Point], weights: Sequence[float], part: str, *, role: Role = "ink", inset: float = 0.0) -> Swell:
    """A line that swells through the given weights (pens), spread evenly along it."""
    last = max(1, len(points) - 1)
    at = tuple(_between(weights, i / last) for i in range(len(points)))
    return Swell(tuple(points), at, part, role, inset)


def contour(points: Sequence[Point], thin: float, thick: float, part: str, *, role: Role = "ink", closed: bool = True) -> Swell:
    """An outline whose outer edge is the points and which swells on the side away from the light.

    A closed ring may run either way round; an open line must run clockwise, its inside on the right of travel.
    """
    pts = geometry.clockwise(points) if closed else tuple(points)
    weights = tuple(
        thin + (thick - thin) * max(0.0, (nx * _LIGHT[0] + ny * _LIGHT[1] + 0.25) / 1.25) for nx, ny in geometry.normals(pts, closed=closed)
    )
    return Swell(pts, weights, part, role, 1.0, closed)


def stipple(
    box: Box,
    density: Callable[[Point], float],
    spacing: float,
    part: str,
    *,
    sizes: Sequence[float] = (0.7, 1.0),
    role: Role = "ink",
) -> tuple[Dots, ...]:
    """Dots strewn evenly over `box`, thinned to `density` (0 none, 1 full: one dot per `spacing` squared, µm).

    The spread is a low-discrepancy sequence, jittered by a generator of its own that is seeded from the arguments:
    even, without rows, and the same every time.
    """
    chance = Random(repr((part, box, spacing)))
    start = chance.random()
    count = round(box.width * box.height / spacing**2)
    kept: list[list[Point]] = [[] for _ in sizes]
    left, top, width, height, draw, many = box.x, box.y, box.width, box.height, chance.random, len(sizes)
    for i in range(1, count + 1):
        u = (start + i * 0.7548776662466927) % 1.0
        v = (start + i * 0.5698402909980532) % 1.0
        dx = (draw() - 0.5) * 0.75 * spacing
        dy = (draw() - 0.5) * 0.75 * spacing
        p = (left + u * width + dx, top + v * height + dy)
        if draw() < density(p):
            kept[i % many].append(p)
    return tuple(Dots(tuple(pts), size, part, role) for pts, size in zip(kept, sizes, strict=True) if pts)


def grain(
    edge: Points,
    spacing: float,
    part: str,
    density: Callable[[Point], float] = lambda p: 0.6,
    *,
    sizes: Sequence[float] = (0.8, 1.3),
    role: Role = "ink",
) -> tuple[Dots, ...]:
    """Stipple within a closed edge."""
    return stipple(geometry.around(edge), lambda p: density(p) if geometry.inside(edge, p) else 0.0, spacing, part, sizes=sizes, role=role)


def seed(*content: object) -> float:
    """A number in 0..1 fixed by the content."""
    return crc32(repr(content).encode()) / 2**32


def wobble(points: Sequence[Point], by: float, waves: int, salt: object, *, closed: bool = True) -> Points:
    """A ring or line made a little irregular: pushed in and out by up to `by` µm in `waves` uneven swells."""
    start = seed(salt) * 2 * pi
    count = len(points)
    push = [
        by * (0.6 * sin(waves * 2 * pi * i / count + start) + 0.4 * cos((2 * waves + 1) * 2 * pi * i / count + 2 * start))
        for i in range(count)
    ]
    return geometry.offset(points, push, closed=closed)


def _between(values: Sequence[float], t: float) -> float:
    if len(values) == 1:
        return values[0]
    at = t * (len(values) - 1)
    i = min(int(at), len(values) - 2)
    return values[i] + (values[i + 1] - values[i]) * (at - i)


def _steps(points: Sequence[Point], closed: bool) -> tuple[Step, ...]:
    first, *rest = points
    steps: list[Step] = [("M", first), *(("L", p) for p in rest)]
    return (*steps, ("Z", ())) if closed else tuple(steps)


def _oval(cx: float, cy: float, rx: float, ry: float) -> tuple[Step, ...]:
    k = 0.5522847498
    arcs = [((1, 0), (0, 1)), ((0, 1), (-1, 0)), ((-1, 0), (0, -1)), ((0, -1), (1, 0))]
    steps: list[Step] = [("M", (cx + rx, cy))]
    for (ax, ay), (bx, by) in arcs:
        c1 = (cx + rx * (ax + k * bx), cy + ry * (ay + k * by))
        c2 = (cx + rx * (bx + k * ax), cy + ry * (by + k * ay))
        steps.append(("C", (*c1, *c2, cx + rx * bx, cy + ry * by)))
    return (*steps, ("Z", ()))
