"""What ciliates are drawn from: body, fringe, rows, nuclei, food."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from ... import geometry, pen
from ...shapes import Point, Points, Shape

Round = tuple[float, float, float]


def skin(points: Sequence[Point], n: float) -> Points:
    """The closed edge, exactly `n` µm tall."""
    return geometry.clockwise(geometry.tall(geometry.curve(points, closed=True, per=8), n))


def fringe(
    edge: Points, n: float, size: float = 0.055, step: float = 0.026, keep: Callable[[Point], bool] = lambda p: True, lean: float = 0.45
) -> Shape:
    """A coat of hairs seen at the edge, where `keep` (shares of the length) allows."""
    walk = geometry.spaced((*edge, edge[0]), step * n)[:-1]
    hairs = []
    for (x, y), (nx, ny) in zip(walk, geometry.normals(walk, closed=True), strict=True):
        if keep((x / n, y / n)):
            s = size * n
            hairs.append(
                geometry.curve([(x, y), (x - 0.6 * s * nx, y - 0.6 * s * ny + 0.25 * lean * s), (x - s * nx, y - s * ny + lean * s)], per=3)
            )
    return pen.strokes(hairs, 0.6, "cilia")


def hair_rows(lines: Iterable[Sequence[Point]], n: float) -> Shape:
    """Faint rows of hairs along the body."""
    return pen.strokes([geometry.curve(geometry.scaled(one, n), per=8) for one in lines], 0.5, "rows", role="faint")


def swelling(points: Sequence[Point], n: float, weights: Sequence[float], part: str) -> Shape:
    """A smooth line given in shares of the length."""
    return pen.line(geometry.curve(geometry.scaled(points, n), per=8), weights, part)


def macro(x: float, y: float, rx: float, ry: float, n: float, pen_um: float, turn: float = 0.0) -> list[Shape]:
    """The large nucleus: an edge and an even grain."""
    ring = geometry.ellipse(x * n, y * n, rx * n, ry * n, turn=turn, count=48)
    return [pen.contour(ring, 0.8, 1.2, "nucleus"), *pen.grain(ring, 3.0 * pen_um, "nucleus", lambda p: 0.5)]


def food_balls(spots: Iterable[Round], n: float, pen_um: float, dense: float = 0.6) -> list[Shape]:
    """Food balls: (x, y, radius) in shares of the length."""
    out: list[Shape] = []
    for x, y, r in spots:
        out.append(pen.ring(x * n, y * n, r * n, 0.8, "food"))
        out += pen.grain(geometry.ellipse(x * n, y * n, 0.75 * r * n, 0.75 * r * n, count=24), 2.2 * pen_um, "food", lambda p: dense)
    return out


def hair_lines(feet: Iterable[tuple[Point, Point]], n: float, weights: Sequence[float], part: str = "cilia") -> list[Shape]:
    """Single hairs, each from a foot to a tip, in shares of the length."""
    return [pen.line(geometry.scaled(one, n), weights, part) for one in feet]
