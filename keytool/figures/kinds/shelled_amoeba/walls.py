"""What a shell is made of: plates, borrowed plates, grains, skin."""

from __future__ import annotations

from collections.abc import Callable
from math import cos, pi, sin
from random import Random

from ... import geometry, pen
from ...shapes import Point, Points, Shape

Free = Callable[[Point], bool]


def shell_wall(edge: Points, wall: str, n: float, pen_um: float, hole: Points = ()) -> list[Shape]:
    """What the shell is made of, left out over the mouth."""
    box = geometry.around(edge)
    middle = box.y + box.height / 2

    def free(p: Point) -> bool:
        x, y = p
        return geometry.inside(edge, (x * 1.04, (y - middle) * 1.04 + middle)) and not (hole and geometry.inside(hole, p))

    match wall:
        case "plates":
            return [_plates(free, n)]
        case "brown-plates":
            inner = geometry.offset(geometry.clockwise(edge), [0.02 * n] * len(edge), closed=True)
            return [_plates(free, n), *pen.grain(inner, 2.0 * pen_um, "tint", lambda p: 0.8 * free(p), sizes=(0.8, 1.1))]
        case "mixed":
            return [_mixed(free, n)]
        case "sand-behind":
            line = box.y + 0.36 * box.height
            behind = tuple(p for p in edge if p[1] < line)
            return [_mixed(lambda p: free(p) and p[1] > line + 0.03 * n, n), *_grains(behind, lambda p: free(p) and p[1] < line, n)]
        case "grains":
            return _grains(edge, free, n)
        case _:
            inner = geometry.offset(geometry.clockwise(edge), [0.03 * n] * len(edge), closed=True)
            spacing, sizes = (2.0, (0.9, 1.2)) if wall == "tinted" else (5.0, (0.6, 0.8))
            return list(pen.grain(inner, spacing * pen_um, "scales", lambda p: 0.55 * free(p), sizes=sizes))


def _plates(free: Free, n: float) -> Shape:
    """Rounded plates overlapping like tiles, their free edges toward the mouth, in a diamond pattern."""
    rise, wide = 0.080 * n, 0.098 * n
    arches = []
    for row in range(13):
        y = 0.02 * n + row * rise
        for k in range(-6, 7):
            arch = geometry.arc(k * wide + (0.5 * wide if row % 2 else 0.0), y, 0.5 * wide, 0.06 * pi, 0.94 * pi, count=10)
            arches += geometry.runs(arch, free)
    return pen.strokes(arches, 0.6, "scales")


def _mixed(free: Free, n: float) -> Shape:
    """Round and oval plates of many sizes side by side, as taken over from smaller shells."""
    chance = Random("mixed plates")
    rings: list[Points] = []
    spots: list[tuple[float, float, float]] = []
    for r in (*([0.052] * 400), *([0.034] * 700), *([0.020] * 900)):
        x, y = chance.uniform(-0.45, 0.45), chance.uniform(0, 1)
        if all((x - a) ** 2 + (y - b) ** 2 > (r + c + 0.006) ** 2 for a, b, c in spots):
            ring = geometry.ellipse(x * n, y * n, r * n, chance.choice((1.0, 0.72)) * r * n, turn=chance.uniform(0, pi), count=18)
            if all(free(p) for p in ring):
                spots.append((x, y, r))
                rings.append((*ring, ring[0]))
    return pen.strokes(rings, 0.6, "scales")


def _grains(edge: Points, free: Free, n: float) -> list[Shape]:
    """Sand grains stuck on: angular, of many sizes, close together, and standing out from the rim."""
    chance = Random("grains")
    out: list[Points] = []
    spots: list[tuple[float, float, float]] = []
    box = geometry.around(edge)
    for r in (*([0.058] * 300), *([0.036] * 700), *([0.022] * 900)):
        x, y = chance.uniform(box.x, box.right) / n, chance.uniform(box.y, box.bottom) / n
        if all((x - a) ** 2 + (y - b) ** 2 > (0.92 * (r + c)) ** 2 for a, b, c in spots) and free((x * n, y * n)):
            spots.append((x, y, r))
            count = chance.choice((4, 5, 6))
            start = chance.uniform(0, 2 * pi)
            ring = [
                ((x + r * s * cos(start + a)) * n, (y + r * s * sin(start + a)) * n)
                for a, s in ((2 * pi * k / count, chance.uniform(0.72, 1.0)) for k in range(count))
            ]
            out.append((*ring, ring[0]))
    return [pen.strokes(out, 0.7, "scales"), lumps_on((*edge, edge[0]), n)]


def lumps_on(edge: Points, n: float) -> Shape:
    """Grains that stand out along an edge that runs clockwise."""
    lumps = []
    walk = geometry.spaced(edge, 0.075 * n)[:-1]
    for k, ((x, y), (nx, ny)) in enumerate(zip(walk, geometry.normals(walk, closed=edge[0] == edge[-1]), strict=True)):
        s = (0.018 + 0.014 * ((k * 0.618) % 1)) * n
        lumps.append(
            (
                (x - ny * 1.3 * s, y + nx * 1.3 * s),
                (x - nx * s - ny * 0.5 * s, y - ny * s + nx * 0.5 * s),
                (x - nx * 0.9 * s + ny * 0.6 * s, y - ny * 0.9 * s - nx * 0.6 * s),
                (x + ny * 1.3 * s, y - nx * 1.3 * s),
            )
        )
    return pen.strokes(lumps, 1.0, "scales")
