"""Which parts take the accent colour when one of them is asked about."""

from __future__ import annotations

from dataclasses import replace

from .. import geometry, pen
from ..frame import Sketch
from ..shapes import Path, Shape, Swell, recoloured

_WHOLES: dict[str, tuple[str, ...]] = {
    "stoma": ("stoma", "stoma-base"),
    "spear": ("spear", "knobs", "base"),
    "gullet": ("gullet", "bulb", "gland", "valve"),
    "tooth": ("tooth", "denticles"),
    "cap": ("cap", "frame"),
    "body": ("outline",),
    "insect-marks": ("eyes", "wings"),
    "waist-or-pincers": ("waist", "pincers"),
}
"""Parts that are made of other parts; any other part is just itself."""


_BROAD = 3.0
"""A line heavier than this (pens) reads as a dark area."""


def accented(sketch: Sketch, part: str) -> Sketch:
    """The sketch with `part` in the accent colour; `none`, or a part that is not there, changes nothing.

    Where light and dark are the message a black rim must stay black: a dark area keeps its ink and is edged in the accent colour.
    """
    members = _WHOLES.get(part, (part,))
    shapes: list[Shape] = []
    for shape in sketch.shapes:
        if shape.part not in members:
            shapes.append(shape)
        elif sketch.tonal and _is_area(shape):
            shapes += [shape, *_edges(shape, sketch.pen_um)]
        else:
            shapes.append(recoloured(shape, "accent"))
    return replace(sketch, shapes=tuple(shapes))


def _is_area(shape: Shape) -> bool:
    match shape:
        case Path():
            return shape.fill
        case Swell():
            return max(shape.weights) > _BROAD
        case _:
            return False


def _edges(shape: Shape, pen_um: float) -> list[Shape]:
    """Thin accent lines: along the border of a filled path, outside a closed broad line, on both sides of an open one."""
    if isinstance(shape, Path):
        return [replace(shape, role="accent", weight=1.4, fill=False)]
    if not isinstance(shape, Swell):
        return []
    outside = [-(w * (1 - shape.inset) / 2 + 1.2) * pen_um for w in shape.weights]
    inside = [(w * (1 + shape.inset) / 2 + 1.2) * pen_um for w in shape.weights]
    sides = (outside,) if shape.closed else (outside, inside)
    return [
        pen.stroke(geometry.offset(shape.points, side, closed=shape.closed), 1.0, shape.part, role="accent", closed=shape.closed)
        for side in sides
    ]
