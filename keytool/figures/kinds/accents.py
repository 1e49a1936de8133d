"""Which parts take the accent colour when one of them is asked about."""

from __future__ import annotations

from dataclasses import replace

from .. import geometry, pen
from ..frame import Sketch
from ..shapes import Path, Role, Shape, Swell, recoloured

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


def washed(sketch: Sketch, part: str, colour: str) -> Sketch:
    """The sketch with the true colour of `part` laid flat under its ink: closed lines are filled, broad lines and flat tints turn to it.

    `none` washes the whole body. The ink on top stays: it is the colour that is asked about, and no accent stands beside it.
    """
    role: Role = colour  # type: ignore[assignment]
    members = ("outline", "dots") if part == "none" else _WHOLES.get(part, (part,))
    beds: list[Shape] = []
    shapes: list[Shape] = []
    for shape in sketch.shapes:
        if shape.part not in members:
            shapes.append(shape)
        elif (
            (isinstance(shape, Path) and shape.fill and shape.role == "faint")
            or (isinstance(shape, Path) and shape.fill and shape.part in ("dots", "skin-drops"))
            or (isinstance(shape, Swell) and not shape.closed and max(shape.weights) > _BAND)
        ):
            shapes.append(recoloured(shape, role))
        else:
            shapes.append(shape)
            beds += _bed(shape, role)
    return replace(sketch, shapes=(*beds, *shapes))


_BAND = 2.0
"""An open line heavier than this (pens) is a band that has a colour of its own."""


def _bed(shape: Shape, role: Role) -> list[Shape]:
    """The area within a closed line, filled."""
    if isinstance(shape, Swell) and (shape.closed or (shape.inset == 1.0 and shape.part == "outline")):  # a shell is open at its mouth only
        return [pen.filled(shape.points, shape.part, role=role)]
    if isinstance(shape, Path) and not shape.fill and shape.steps[-1][0] == "Z":
        return [replace(shape, role=role, weight=0.0, fill=True)]
    return []


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
