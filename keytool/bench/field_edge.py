"""Find the round edge of the field in a picture taken through an eyepiece.

Rays go out from the middle of the light; on each, the outermost steep fall of light is where the edge may be. A circle that most of
them agree on is fitted, and fitted again from its own middle at a finer scale. Where they do not agree, it asks. The same steps
stand in `site/assets/bench/field-edge.js`.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from PIL import Image

Point = tuple[float, float]
COARSE, FINE = 320, 1000
"""Longest side, in pixels, at which the edge is looked for and then refined."""
RAYS = 180
LEAST_SHARE = 0.35
"""Of the rays, so many must meet the circle."""
LEAST_SPREAD = 8
"""Of twelve sectors, so many must hold an edge (an edge cut off on one side leaves the rest)."""
TOLERANCE = 0.012
"""How far a point may lie from the circle, in radii."""
TRIES = 160


class NoEdge(Exception):
    """The round edge was not found; the message says what to do."""


ASK = "The round edge of the field was not found. Set three points on it, far from each other (--edge X Y, three times)."


@dataclass(frozen=True, slots=True)
class Circle:
    """A circle in pixels of the picture. `share` of the rays met it, `spread` is their scatter about it in radii."""

    x: float
    y: float
    radius: float
    share: float = 1.0
    spread: float = 0.0


@dataclass(frozen=True, slots=True)
class Grey:
    """A grey picture, row by row, and how many pixels of the original one of its pixels is."""

    light: bytes
    width: int
    height: int
    factor: float

    def at(self, x: float, y: float) -> float:
        """The light between four pixels."""
        x, y = min(max(x, 0.0), self.width - 1.001), min(max(y, 0.0), self.height - 1.001)
        i, j = int(x), int(y)
        dx, dy, row = x - i, y - j, j * self.width + i
        light = self.light
        top = light[row] * (1 - dx) + light[row + 1] * dx
        low = light[row + self.width] * (1 - dx) + light[row + self.width + 1] * dx
        return top * (1 - dy) + low * dy


def circle_through(one: Point, two: Point, three: Point) -> Circle:
    """The circle through three points. Raises NoEdge where they lie in a line."""
    (ax, ay), (bx, by), (cx, cy) = one, two, three
    d = 2 * (ax * (by - cy) + bx * (cy - ay) + cx * (ay - by))
    size = max(math.dist(one, two), math.dist(two, three), math.dist(one, three))
    if abs(d) < 1e-3 * size * size:
        raise NoEdge("The three points lie in a line. Set them far from each other on the round edge.")
    a, b, c = ax * ax + ay * ay, bx * bx + by * by, cx * cx + cy * cy
    x = (a * (by - cy) + b * (cy - ay) + c * (ay - by)) / d
    y = (a * (cx - bx) + b * (ax - cx) + c * (bx - ax)) / d
    return Circle(x, y, math.hypot(ax - x, ay - y))


def find_edge(image: Image.Image) -> Circle:
    """The round edge. Raises NoEdge where no circle is agreed on."""
    coarse = grey(image, COARSE)
    x, y = _middle_of_light(coarse)
    circle = _agreed(_edges(coarse, x, y, 0.12 * min(coarse.width, coarse.height), None), coarse)
    for _ in range(2):  # once more from its own middle, where all rays cross the edge square
        circle = _agreed(_edges(coarse, circle.x, circle.y, 0.5 * circle.radius, None), coarse)
    fine = grey(image, FINE)
    grown = coarse.factor / fine.factor
    start = Circle(circle.x * grown, circle.y * grown, circle.radius * grown)
    found = _agreed(_edges(fine, start.x, start.y, 0.93 * start.radius, 1.07 * start.radius), fine)
    return Circle(
        (found.x + 0.5) * fine.factor - 0.5, (found.y + 0.5) * fine.factor - 0.5, found.radius * fine.factor, found.share, found.spread
    )


def grey(image: Image.Image, longest: int) -> Grey:
    """The picture in grey, at most so many pixels long, a little smoothed."""
    from PIL import Image, ImageFilter

    factor = max(1.0, max(image.size) / longest)
    size = (max(2, round(image.width / factor)), max(2, round(image.height / factor)))
    small = image.convert("L").resize(size, Image.Resampling.BOX).filter(ImageFilter.BoxBlur(1))
    return Grey(small.tobytes(), *size, image.width / size[0])


def _middle_of_light(of: Grey) -> Point:
    """The middle of what is brighter than half-way between the darkest and the brightest tenth."""
    ordered = sorted(of.light[:: max(1, len(of.light) // 4000)])
    half = (ordered[len(ordered) // 10] + ordered[-len(ordered) // 10]) / 2
    sx = sy = n = 0
    for j in range(0, of.height, 2):
        for i in range(0, of.width, 2):
            if of.light[j * of.width + i] > half:
                sx, sy, n = sx + i, sy + j, n + 1
    if not n:
        raise NoEdge(ASK)
    return sx / n, sy / n


def _edges(of: Grey, x: float, y: float, low: float, high: float | None) -> list[tuple[Point, int]]:
    """On each ray the outermost steep fall of light, with the number of its ray."""
    found = []
    contrast = max(of.light) - min(of.light)
    for ray in range(RAYS):
        c, s = math.cos(2 * math.pi * ray / RAYS), math.sin(2 * math.pi * ray / RAYS)
        end = min(_to_border(x, c, of.width), _to_border(y, s, of.height), high or math.inf)
        if end - low < 6:
            continue
        profile = [of.at(x + c * r, y + s * r) for r in _steps(low, end)]
        falls = [profile[n - 2] - profile[n + 2] for n in range(2, len(profile) - 2)]
        if not falls:
            continue
        steep = max(falls)
        if steep < 0.12 * contrast:
            continue
        n = max(n for n, fall in enumerate(falls) if fall >= 0.6 * steep)
        while n > 0 and falls[n - 1] > falls[n]:  # up to the top of this fall
            n -= 1
        r = low + n + 2 + _top_of_parabola(falls, n)
        found.append(((x + c * r, y + s * r), ray))
    return found


def _to_border(at: float, step: float, size: int) -> float:
    if abs(step) < 1e-9:
        return math.inf
    return ((size - 1 - at) if step > 0 else -at) / step


def _steps(low: float, high: float) -> list[float]:
    return [low + n for n in range(int(high - low) + 1)]


def _top_of_parabola(values: Sequence[float], n: int) -> float:
    """How far from `n` the top of the parabola through three values lies."""
    if not 0 < n < len(values) - 1:
        return 0.0
    before, here, after = values[n - 1 : n + 2]
    bend = before - 2 * here + after
    return 0.5 * (before - after) / bend if bend < 0 else 0.0


def _agreed(edges: Sequence[tuple[Point, int]], of: Grey) -> Circle:
    """The circle most points agree on, fitted to those."""
    least = 0.15 * min(of.width, of.height)
    best: list[tuple[Point, int]] = []
    n = len(edges)
    if n < 12:
        raise NoEdge(ASK)
    seed = 12345
    for _ in range(TRIES):
        picks = []
        for _ in range(3):
            seed = (seed * 1103515245 + 12345) % 2147483648
            picks.append(edges[seed * n // 2147483648][0])
        try:
            guess = circle_through(*picks)
        except NoEdge:
            continue
        if not least < guess.radius < 4 * max(of.width, of.height):
            continue
        near = [each for each in edges if abs(math.dist(each[0], (guess.x, guess.y)) - guess.radius) < TOLERANCE * guess.radius]
        if len(near) > len(best):
            best = near
    if len(best) < LEAST_SHARE * RAYS or len({ray * 12 // RAYS for _, ray in best}) < LEAST_SPREAD:
        raise NoEdge(ASK)
    fitted = _fit([point for point, _ in best])
    off = [math.dist(point, (fitted.x, fitted.y)) - fitted.radius for point, _ in best]
    spread = math.sqrt(math.fsum(each * each for each in off) / len(off)) / fitted.radius
    return Circle(fitted.x, fitted.y, fitted.radius, len(best) / RAYS, spread)


def _fit(points: Sequence[Point]) -> Circle:
    """Least squares: the algebraic circle, then three steps towards the geometric one."""
    n = len(points)
    mx, my = math.fsum(x for x, _ in points) / n, math.fsum(y for _, y in points) / n
    u = [(x - mx, y - my) for x, y in points]
    suu, svv, suv = math.fsum(a * a for a, _ in u), math.fsum(b * b for _, b in u), math.fsum(a * b for a, b in u)
    su = math.fsum(a * (a * a + b * b) for a, b in u) / 2
    sv = math.fsum(b * (a * a + b * b) for a, b in u) / 2
    d = suu * svv - suv * suv
    x, y = (su * svv - sv * suv) / d, (sv * suu - su * suv) / d
    r = math.sqrt(x * x + y * y + (suu + svv) / n)
    for _ in range(3):
        distances = [math.hypot(a - x, b - y) for a, b in u]
        r = math.fsum(distances) / n
        x -= 2 * math.fsum((r - each) * (a - x) / each for (a, _), each in zip(u, distances, strict=True)) / n
        y -= 2 * math.fsum((r - each) * (b - y) / each for (_, b), each in zip(u, distances, strict=True)) / n
    r = math.fsum(math.hypot(a - x, b - y) for a, b in u) / n
    return Circle(x + mx, y + my, r)
