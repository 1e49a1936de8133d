"""Several animals on one plate: side by side or one above the other, each in its own size."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from .. import geometry
from ..bounds import bounds
from ..shapes import Box, Dots, Leader, Path, Shape, Step, Swell


def beside(groups: Sequence[Sequence[Shape]], gap: float) -> tuple[Shape, ...]:
    """The groups in a row from the left, `gap` µm apart, their middles at one height."""
    out: list[Shape] = []
    x = 0.0
    for group in groups:
        box = _box(group)
        out += shifted(group, x - box.x, -box.y - box.height / 2)
        x += box.width + gap
    return tuple(out)


def below(groups: Sequence[Sequence[Shape]], gap: float) -> tuple[Shape, ...]:
    """The groups in a column from the top, `gap` µm apart, their middles on one line."""
    out: list[Shape] = []
    y = 0.0
    for group in groups:
        box = _box(group)
        out += shifted(group, -box.x - box.width / 2, y - box.y)
        y += box.height + gap
    return tuple(out)


def shifted(shapes: Iterable[Shape], dx: float, dy: float) -> tuple[Shape, ...]:
    """The shapes moved by so many µm."""
    return tuple(_shifted(shape, dx, dy) for shape in shapes)


def turned(shapes: Iterable[Shape], by: float, dx: float, dy: float) -> tuple[Shape, ...]:
    """The shapes turned about the origin by so many radians, then moved."""
    return tuple(_turned(shape, by, dx, dy) for shape in shapes)


def _turned(shape: Shape, by: float, dx: float, dy: float) -> Shape:
    match shape:
        case Path():
            return replace(shape, steps=tuple((letter, _turned_values(values, by, dx, dy)) for letter, values in shape.steps))
        case Swell() | Dots():
            return replace(shape, points=geometry.moved(shape.points, dx, dy, turn=by))
        case Leader():
            (start, end) = geometry.moved((shape.start, shape.end), dx, dy, turn=by)
            return replace(shape, start=start, end=end)


def _turned_values(values: tuple[float, ...], by: float, dx: float, dy: float) -> tuple[float, ...]:
    pairs = zip(values[0::2], values[1::2], strict=True)
    return tuple(each for point in geometry.moved(pairs, dx, dy, turn=by) for each in point)


def _shifted(shape: Shape, dx: float, dy: float) -> Shape:
    match shape:
        case Path():
            return replace(shape, steps=tuple(_step(step, dx, dy) for step in shape.steps))
        case Swell() | Dots():
            return replace(shape, points=geometry.moved(shape.points, dx, dy))
        case Leader():
            (start, end) = geometry.moved((shape.start, shape.end), dx, dy)
            return replace(shape, start=start, end=end)


def _step(step: Step, dx: float, dy: float) -> Step:
    letter, values = step
    return (letter, tuple(v + (dy if i % 2 else dx) for i, v in enumerate(values)))


def _box(shapes: Sequence[Shape]) -> Box:
    """How much room they take, lines without weight."""
    return bounds(shapes, 0.0, 0.0)
