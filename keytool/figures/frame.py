"""Setting a sketch on its plate: frame, scale bar, and one scale for several plates."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import floor, log10

from .bounds import bounds
from .marks import text_width
from .shapes import Box, Drawing, ScaleBar, Shape

_PENS_WIDE, _PENS_TALL = 120, 180
"""A plate fills a cell of this many pens. In a bench-card cell of 24 by 36 mm one pen is 0.2 mm."""
_LETTER_PENS = 10.0
_MARGIN_PENS = 2.0


@dataclass(frozen=True, slots=True)
class Sketch:
    """What a kind returns: shapes in µm, the pen (µm) they were drawn for, and whether light and dark are its message."""

    shapes: tuple[Shape, ...]
    pen_um: float
    tonal: bool = False


def pen_for(width: float, height: float) -> float:
    """The pen (µm) for a picture of this size (µm)."""
    return max(width / _PENS_WIDE, height / _PENS_TALL)


def plate(sketch: Sketch, title: str, description: str) -> Drawing:
    """The sketch with a frame drawn tight round it and a scale bar below."""
    frame = _frame(sketch.shapes, sketch.pen_um, 0.0)
    letter = _LETTER_PENS * pen_for(frame.width, frame.height)
    return replace(_set(sketch.shapes, sketch.pen_um, letter, title, description), tonal=sketch.tonal)


def common_scale(drawings: Sequence[Drawing], width: float, height: float) -> float:
    """Output units per µm at which every drawing, scale bar included, fits a box of `width` by `height`."""
    return min(min(width / d.box.width, height / d.box.height) for d in drawings)


def matched(drawings: Sequence[Drawing]) -> tuple[Drawing, ...]:
    """The drawings made ready to stand side by side at one scale: the same pen, lettering and scale bar in all.

    Use before `common_scale`. The pen is that of the largest plate, held back where a much smaller neighbour would
    drown in it; a small drawing then keeps fine lines although its lettering matches.
    """
    pen, letter, bar = (max(values) for values in zip(*((d.pen_um, d.letter_um, d.bar.length) for d in drawings), strict=True))
    return tuple(replace(_set(d.shapes, min(pen, 2.5 * d.pen_um), letter, d.title, d.description, bar), tonal=d.tonal) for d in drawings)


def with_shapes(drawing: Drawing, shapes: tuple[Shape, ...]) -> Drawing:
    """The same plate holding other shapes, framed anew."""
    anew = _set(shapes, drawing.pen_um, drawing.letter_um, drawing.title, drawing.description, drawing.bar.length)
    return replace(anew, tonal=drawing.tonal)


def _frame(shapes: tuple[Shape, ...], pen: float, letter: float) -> Box:
    return bounds(shapes, pen, letter).grown(_MARGIN_PENS * pen)


def _set(shapes: tuple[Shape, ...], pen: float, letter: float, title: str, description: str, bar_length: float | None = None) -> Drawing:
    frame = _frame(shapes, pen, letter)
    length = bar_length or round_length(max(0.45 * frame.width, 0.15 * frame.height))
    label = length_label(length)
    wide = length + 0.35 * letter + text_width(label, letter)
    centre = frame.x + frame.width / 2
    bar = ScaleBar((centre - wide / 2, frame.bottom + 0.55 * letter), length, label)
    margin = letter / 5
    left, right = min(frame.x, bar.start[0] - margin), max(frame.right, bar.start[0] + wide + margin)
    box = Box(left, frame.y, right - left, frame.height + 1.2 * letter)
    return Drawing(shapes, frame, box, bar, pen, letter, title, description)


def round_length(at_most: float) -> float:
    """The largest of 1, 2, 5 x 10^n µm that is not longer than `at_most`."""
    decade = 10.0 ** floor(log10(at_most))
    return next(step * decade for step in (5, 2, 1) if step * decade <= at_most * (1 + 1e-9))


def length_label(um: float) -> str:
    """`20 µm`, `0.5 µm`, `2 mm`."""
    value, unit = (um / 1000, "mm") if um >= 1000 else (um, "µm")
    return f"{value:g} {unit}"
