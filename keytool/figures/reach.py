"""How far shapes reach on the plate with a given pen: what a frame must hold, worked out without drawing them."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import chain

from . import geometry
from .marks import edges, text_width
from .shapes import Box, Dots, Leader, Path, Points, Shape, Swell

Sides = tuple[float, float, float, float]
"""Left, top, right and bottom in µm."""


def bounds(shapes: Iterable[Shape], pen: float, letter: float) -> Box:
    """The smallest box that holds the shapes drawn with a pen of `pen` µm and lettering `letter` µm high, line weights included."""
    lefts, tops, rights, bottoms = zip(*(_sides(shape, pen, letter) for shape in shapes), strict=True)
    left, top = min(lefts), min(tops)
    return Box(left, top, max(rights) - left, max(bottoms) - top)


def _sides(shape: Shape, pen: float, letter: float) -> Sides:
    match shape:
        case Path():
            return _grown(_steps_reach(shape), 0.0 if shape.fill else shape.weight * pen / 2)
        case Swell():
            right, left = edges(shape, pen)
            return _around((*right, *left))
        case Dots():
            return _grown(_around(shape.points), shape.size * pen / 2)
        case Leader():
            (x1, y1), (x2, y2) = shape.start, shape.end
            way = 1 if x2 >= x1 else -1
            end = x2 + way * (0.3 * letter + text_width(shape.text, letter))
            line = _grown((min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2)), 0.3 * pen)
            return min(line[0], end), min(line[1], y2 - 0.46 * letter), max(line[2], end), max(line[3], y2 + 0.59 * letter)


def _steps_reach(path: Path) -> Sides:
    flat = list(chain.from_iterable([values for _, values in path.steps]))
    return min(flat[0::2]), min(flat[1::2]), max(flat[0::2]), max(flat[1::2])


def _around(points: Points) -> Sides:
    box = geometry.around(points)
    return box.x, box.y, box.right, box.bottom


def _grown(sides: Sides, by: float) -> Sides:
    left, top, right, bottom = sides
    return left - by, top - by, right + by, bottom + by
