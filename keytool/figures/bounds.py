"""How far shapes reach on the plate with a given pen: what a frame must hold, worked out without drawing them."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import chain

from . import geometry
from .marks import Lettering, Mark, edges, of_shape, text_width
from .shapes import Box, Dots, Leader, Path, Points, Shape, Step, Swell

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
            return _grown(_steps_reach(shape.steps), 0.0 if shape.fill else shape.weight * pen / 2)
        case Swell():
            right, left = edges(shape, pen)
            return _around((*right, *left))
        case Dots():
            return _grown(_around(shape.points), shape.size * pen / 2)
        case Leader():
            lefts, tops, rights, bottoms = zip(*(_mark_sides(mark) for mark in of_shape(shape, pen, letter)), strict=True)
            return min(lefts), min(tops), max(rights), max(bottoms)


def _mark_sides(mark: Mark | Lettering) -> Sides:
    if isinstance(mark, Mark):
        return _grown(_steps_reach(mark.steps), mark.width / 2)
    end = mark.x + text_width(mark.text, mark.size) * (1 if mark.anchor == "start" else -1)
    return min(mark.x, end), mark.y - 0.8 * mark.size, max(mark.x, end), mark.y + 0.25 * mark.size


def _steps_reach(steps: Iterable[Step]) -> Sides:
    flat = list(chain.from_iterable([values for _, values in steps]))
    return min(flat[0::2]), min(flat[1::2]), max(flat[0::2]), max(flat[1::2])


def _around(points: Points) -> Sides:
    box = geometry.around(points)
    return box.x, box.y, box.right, box.bottom


def _grown(sides: Sides, by: float) -> Sides:
    left, top, right, bottom = sides
    return left - by, top - by, right + by, bottom + by
