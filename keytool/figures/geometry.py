"""Plane geometry for the pen: curves through points, offsets, and clipping done once so every writer agrees."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from itertools import pairwise
from math import cos, dist, hypot, pi, sin

from .shapes import Box, Point, Points


def curve(points: Sequence[Point], *, closed: bool = False, per: int = 10) -> Points:
    """A smooth run through every point (Catmull-Rom), `per` samples between neighbours."""
    pts = list(points)
    count = len(pts)
    at = [pts[-1], *pts, pts[0], pts[1]] if closed else [_reflect(pts[0], pts[1]), *pts, _reflect(pts[-1], pts[-2])]
    out: list[Point] = []
    for i in range(count if closed else count - 1):
        a, b, c, d = at[i : i + 4]
        for k in range(per):
            t = k / per
            out.append((_spline(a[0], b[0], c[0], d[0], t), _spline(a[1], b[1], c[1], d[1], t)))
    if not closed:
        out.append(pts[-1])
    return tuple(out)


def _reflect(p: Point, q: Point) -> Point:
    return (2 * p[0] - q[0], 2 * p[1] - q[1])


def _spline(a: float, b: float, c: float, d: float, t: float) -> float:
    return 0.5 * (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t * t + (3 * b - a - 3 * c + d) * t**3)


def ellipse(cx: float, cy: float, rx: float, ry: float, *, turn: float = 0.0, count: int = 64) -> Points:
    """Points of an ellipse, clockwise on the page; `turn` tilts it, in radians."""
    c, s = cos(turn), sin(turn)
    ring = ((rx * cos(2 * pi * k / count), ry * sin(2 * pi * k / count)) for k in range(count))
    return tuple((cx + x * c - y * s, cy + x * s + y * c) for x, y in ring)


def around(points: Sequence[Point]) -> Box:
    """The smallest upright box that holds the points."""
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return Box(min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys))


def arc(cx: float, cy: float, r: float, start: float, stop: float, *, count: int = 16) -> Points:
    """Points along a part of a circle; angles in radians, 0 to the right, growing clockwise on the page."""
    angles = (start + (stop - start) * k / count for k in range(count + 1))
    return tuple((cx + r * cos(a), cy + r * sin(a)) for a in angles)


def mirrored(points: Iterable[Point]) -> Points:
    """The same points on the other side of the axis x = 0."""
    return tuple((-x, y) for x, y in points)


def moved(points: Iterable[Point], dx: float, dy: float, *, turn: float = 0.0) -> Points:
    """Points turned about the origin by `turn` radians, then shifted."""
    c, s = cos(turn), sin(turn)
    return tuple((x * c - y * s + dx, x * s + y * c + dy) for x, y in points)


def normals(points: Sequence[Point], *, closed: bool = False) -> Points:
    """Unit vectors to the right-hand side of travel at each point (right as seen on the page)."""
    before = (points[-1] if closed else points[0], *points[:-1])
    after = (*points[1:], points[0] if closed else points[-1])
    out: list[Point] = []
    for (x1, y1), (x2, y2) in zip(before, after, strict=True):
        dx, dy = x2 - x1, y2 - y1
        size = hypot(dx, dy) or 1.0
        out.append((-dy / size, dx / size))
    return tuple(out)


def offset(points: Sequence[Point], by: Sequence[float], *, closed: bool = False) -> Points:
    """Points pushed to the right-hand side of travel by `by` (µm, one value per point)."""
    return tuple([(x + nx * d, y + ny * d) for (x, y), (nx, ny), d in zip(points, normals(points, closed=closed), by, strict=True)])


def twice_area(ring: Sequence[Point]) -> float:
    """Twice the area within a closed ring, positive where it runs clockwise on the page."""
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(ring, (*ring[1:], ring[0]), strict=True))


def length(points: Sequence[Point]) -> float:
    """How long a line of points is."""
    return sum(dist(a, b) for a, b in pairwise(points))


def clockwise(points: Sequence[Point]) -> Points:
    """The same closed ring, ordered clockwise on the page (so its inside is on the right of travel)."""
    return tuple(points) if twice_area(points) > 0 else tuple(reversed(points))


def inside(polygon: Points, p: Point) -> bool:
    """Whether `p` lies within the closed polygon (even-odd)."""
    x, y = p
    known = _lately.get(id(polygon))
    top, per_band, bands = known[1] if known and known[0] is polygon else _bands(polygon)
    at = int((y - top) * per_band)
    if y < top or at >= len(bands):
        return False
    hit = False
    for x1, y1, x2, y2 in bands[at]:
        if (y1 > y) != (y2 > y) and x < (x2 - x1) * (y - y1) / (y2 - y1) + x1:
            hit = not hit
    return hit


Bands = tuple[float, float, list[list[tuple[float, float, float, float]]]]
_lately: dict[int, tuple[Points, Bands]] = {}
"""The polygons asked about last. Stipple asks thousands of times about the same one, a twisted ribbon about dozens in turn."""
_MOST = 256


def _bands(polygon: Points) -> Bands:
    """The sides of a polygon sorted into level bands, so that a point need be held against few of them."""
    ys = [y for _, y in polygon]
    top, count = min(ys), max(1, len(polygon) // 3)
    per_band = count / ((max(ys) - top) or 1.0)
    bands: list[list[tuple[float, float, float, float]]] = [[] for _ in range(count + 1)]
    for (x1, y1), (x2, y2) in zip((polygon[-1], *polygon[:-1]), polygon, strict=True):
        first, last = sorted((int((y1 - top) * per_band), int((y2 - top) * per_band)))
        for band in bands[first : last + 1]:
            band.append((x1, y1, x2, y2))
    while len(_lately) >= _MOST:
        del _lately[next(iter(_lately))]
    _lately[id(polygon)] = polygon, (top, per_band, bands)
    return top, per_band, bands


def runs(points: Sequence[Point], keep: Callable[[Point], bool]) -> list[Points]:
    """The stretches of a line where `keep` is true, cut at the border to a thousandth of a step."""
    out: list[Points] = []
    now: list[Point] = []
    for before, here in zip([points[0], *points], points, strict=False):
        was, is_in = keep(before), keep(here)
        if was != is_in:
            edge = _border(before, here, keep)
            if was:
                out.append((*now, edge))
                now = []
            else:
                now = [edge]
        if is_in:
            now.append(here)
    if len(now) > 1:
        out.append(tuple(now))
    return [run for run in out if len(run) > 1]


def _border(p: Point, q: Point, keep: Callable[[Point], bool]) -> Point:
    start = keep(p)
    for _ in range(10):
        mid = ((p[0] + q[0]) / 2, (p[1] + q[1]) / 2)
        if keep(mid) == start:
            p = mid
        else:
            q = mid
    return ((p[0] + q[0]) / 2, (p[1] + q[1]) / 2)


def simplified(points: Sequence[Point], tolerance: float) -> Points:
    """Fewer points along the same line: none strays more than `tolerance` µm from it (Douglas and Peucker)."""
    keep = {0, len(points) - 1}
    todo = [(0, len(points) - 1)]
    while todo:
        first, last = todo.pop()
        if last - first < 2:
            continue
        (x1, y1), (x2, y2) = points[first], points[last]
        dx, dy = x2 - x1, y2 - y1
        size = hypot(dx, dy)
        between = points[first + 1 : last]
        gaps = [abs(dx * (y - y1) - dy * (x - x1)) for x, y in between] if size else [hypot(x - x1, y - y1) for x, y in between]
        worst = max(gaps)
        if worst > tolerance * (size or 1.0):
            far = first + 1 + gaps.index(worst)
            keep.add(far)
            todo += [(first, far), (far, last)]
    return tuple([points[i] for i in sorted(keep)])


def spaced(points: Sequence[Point], step: float) -> Points:
    """The line walked again in even steps of about `step` µm, both ends kept."""
    lengths = [hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(points)]
    total = sum(lengths)
    count = max(1, round(total / step))
    out = [points[0]]
    i, gone = 0, 0.0
    for k in range(1, count):
        want = total * k / count
        while gone + lengths[i] < want:
            gone += lengths[i]
            i += 1
        f = (want - gone) / lengths[i]
        a, b = points[i], points[i + 1]
        out.append((a[0] + (b[0] - a[0]) * f, a[1] + (b[1] - a[1]) * f))
    return (*out, points[-1])


def bezier(a: Point, b: Point, c: Point, d: Point, t: float) -> Point:
    """The point at share t of a cubic bezier."""
    s = 1 - t
    w = (s**3, 3 * s * s * t, 3 * s * t * t, t**3)
    return (w[0] * a[0] + w[1] * b[0] + w[2] * c[0] + w[3] * d[0], w[0] * a[1] + w[1] * b[1] + w[2] * c[1] + w[3] * d[1])


def scaled(points: Iterable[Point], by: float) -> Points:
    """Points given in shares of a length, as µm."""
    return tuple((x * by, y * by) for x, y in points)


def tall(points: Sequence[Point], height: float) -> Points:
    """The same shape made exactly `height` µm tall, its top at y = 0; x keeps its zero."""
    box = around(points)
    by = height / box.height
    return tuple((x * by, (y - box.y) * by) for x, y in points)


def walked(points: Sequence[Point], t: float) -> Point:
    """The point at share t of the way along a line."""
    steps = [hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(points)]
    want = t * sum(steps)
    for (a, b), step in zip(pairwise(points), steps, strict=True):
        if want <= step and step:
            f = want / step
            return (a[0] + (b[0] - a[0]) * f, a[1] + (b[1] - a[1]) * f)
        want -= step
    return points[-1]
