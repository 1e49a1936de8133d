"""What naked amoebae are drawn from."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from ... import geometry, pen
from ...shapes import Point, Points, Shape
from ..cell_parts import clear_of, vacuole
from ..cell_parts import nucleus as draw_nucleus

Round = tuple[float, float, float]


def outline_of(points: Sequence[Point], n: float) -> Points:
    """The closed edge, exactly `n` µm tall."""
    return geometry.clockwise(geometry.tall(geometry.curve(points, closed=True, per=8), n))


def insides(edge: Points, n: float, nucleus: Round, bubble: Round, clear: Callable[[Point], bool], pen_um: float) -> list[Shape]:
    """Grain but where the plasma is clear, a nucleus with a dark dot, and the bubble that fills and vanishes."""
    spots = tuple((x * n, y * n, r * n) for x, y, r in (nucleus, bubble))
    inner = geometry.offset(edge, [0.035 * n] * len(edge), closed=True)
    free = clear_of(*spots)

    def dense(p: Point) -> float:
        return 0.0 if clear((p[0] / n, p[1] / n)) else 1.5 * free(p)

    return [*pen.grain(inner, 3.0 * pen_um, "contents", dense), *draw_nucleus(*spots[0]), vacuole(*spots[1])]
