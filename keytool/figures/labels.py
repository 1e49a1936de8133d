"""Naming parts on a plate: hair lines to words set in a column on the right."""

from __future__ import annotations

from collections.abc import Mapping

from .frame import with_shapes
from .marks import Mark, of_shape
from .shapes import Drawing, Leader, Point


def labelled(drawing: Drawing, words: Mapping[str, str]) -> Drawing:
    """The plate with a leader and a word for each part in `words` (part name to word).

    Parts that are not in the drawing are passed over, so one list of words can serve several plates.
    """
    spots = sorted(((spot, word) for part, word in words.items() if (spot := _spot(drawing, part))), key=lambda item: item[0][1])
    x = drawing.frame.right + 0.6 * drawing.letter_um
    leaders: list[Leader] = []
    y = drawing.frame.y
    for (px, py), word in spots:
        y = max(y + 1.25 * drawing.letter_um if leaders else y + 0.6 * drawing.letter_um, py)
        leaders.append(Leader((px, py), (x, y), word))
    return with_shapes(drawing, (*drawing.shapes, *leaders))


def _spot(drawing: Drawing, part: str) -> Point | None:
    """A point on the part: its right-most, near the middle of its height."""
    points = [
        (values[-2], values[-1])
        for shape in drawing.shapes
        if shape.part == part
        for mark in of_shape(shape, drawing.pen_um, drawing.letter_um)
        if isinstance(mark, Mark)
        for _, values in mark.steps
        if values
    ]
    if not points:
        return None
    top, low = min(y for _, y in points), max(y for _, y in points)
    middle = [p for p in points if abs(p[1] - (top + low) / 2) <= 0.3 * (low - top)]
    return max(middle or points)
