"""Things placed in the round field at their true size, side by side with their labels, none over another."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import hypot

from keytool.card.plates import bare
from keytool.figures import Drawing, pen
from keytool.figures.bounds import bounds
from keytool.figures.field import box_of, centre, placed
from keytool.figures.frame import Sketch, plate
from keytool.figures.in_field import points_of
from keytool.figures.shapes import Dots, Leader, Path, Point, Shape, Swell

CELLS = 64
"""The field is looked at in so many squares across to find a free place."""
NEAR = (-2, -1, 0, 1, 2)
"""Squares kept free round a line."""
WIDEST_LINE = 3.0
"""Strokes of its own plate's pen: what is wider is a part of the thing."""
HEAVIEST = 0.8
"""Lines of a large plate are drawn no heavier than this many strokes of the pen."""
CUT = 1.08
"""What is larger than the field lies with its middle so far out, as a share of the field's half."""
THROUGH = 0.86
"""A strand that runs through the whole field does so here."""
SLIM = 0.25
"""What is slimmer than this (width over length of its frame) leaves the rest of its frame free."""
ANCHOR = 0.9
"""A line leads to a point within this share of the field."""
EDGE = 0.93
"""Things that fit into the field lie within this share of it."""


@dataclass(frozen=True, slots=True)
class Thing:
    """A drawing to be placed (µm), on the left or right, and the height at which its label stands (µm, 0 the middle).

    A `strand` longer than the field runs through it; what else is larger lies half outside.
    """

    drawing: Drawing
    left: bool
    level: float
    strand: bool = False


@dataclass(frozen=True, slots=True)
class Laid:
    """The field with everything in it, its middle at (0, 0), and for each thing a point of it to lead a line to (µm)."""

    drawing: Drawing
    points: tuple[Point, ...]


def laid(things: Sequence[Thing], diameter: float, nib: float) -> Laid:
    """Every thing where it is free and near its label's height, the largest first; what is larger than the field is cut by its edge.

    `diameter` of the field and `nib`, the width of a pen stroke, in µm.
    """
    r = diameter / 2
    taken: set[tuple[int, int]] = set()
    shapes: dict[int, list[Shape]] = {}
    points: dict[int, Point] = {}
    for number in sorted(range(len(things)), key=lambda n: (-_reach(things[n].drawing), n)):
        thing = things[number]
        middle = centre(box_of(thing.drawing.shapes))
        at = _free(thing, middle, taken, r)
        ratio = thing.drawing.pen_um / nib
        shapes[number] = [
            moved
            for shape in thing.drawing.shapes
            if not isinstance(shape, Leader)
            for moved in placed(_weighed(shape, ratio, thing.strand), middle, at, 0.0, 1.0, r)
        ]
        taken |= _cells(thing.drawing, middle, at, r)
        spots = [p for shape in shapes[number] for p in points_of(shape) if hypot(*p) <= r]
        inside = [p for p in spots if hypot(*p) <= ANCHOR * r] or spots or [(0.0, 0.0)]
        side = -r if thing.left else r
        points[number] = min(inside, key=lambda p: (hypot((p[0] - side) / 2, p[1] - thing.level), p))
    everything = tuple(shape for number in sorted(shapes) for shape in shapes[number])
    ring = pen.ring(0, 0, r, 2.0, "field")
    done = plate(Sketch((*everything, ring), nib, tonal=False), "", "")
    return Laid(bare(done), tuple(points[number] for number in range(len(things))))


def _weighed(shape: Shape, ratio: float, strand: bool) -> Shape:
    """The shape with its lines in strokes of the field's pen: a line as heavy as it is drawn, but not heavier than it need be.

    What is wider than a line of the pen is a part of the thing, such as a branch drawn in one stroke, and keeps its true width.
    The walls of a `strand` are filled where its own plate is small; here they are lines, all alike.
    """

    def weighed(weight: float) -> float:
        return weight * (ratio if weight > WIDEST_LINE else min(ratio, HEAVIEST))

    match shape:
        case Path(fill=True) if strand:
            return replace(shape, fill=False, weight=HEAVIEST)
        case Path():
            return replace(shape, weight=weighed(shape.weight))
        case Swell():
            return replace(shape, weights=tuple(weighed(each) for each in shape.weights))
        case Dots():
            return replace(shape, size=shape.size * min(ratio, HEAVIEST))
        case _:
            return shape


def _reach(drawing: Drawing) -> float:
    box = bounds(drawing.shapes, 0.0, 0.0)
    return hypot(box.width, box.height)


def _free(thing: Thing, middle: Point, taken: set[tuple[int, int]], r: float) -> Point:
    """Where the thing covers least of what lies there already, nearest to the height of its label."""
    box = box_of(thing.drawing.shapes)
    longest = hypot(box.width, box.height)
    if longest > 2 * r:  # it runs through the whole field, or is cut off by its edge
        across = box.height < 0.5 * box.width
        out = THROUGH if thing.strand else CUT
        return (0.0, thing.level) if across else ((-out if thing.left else out) * r, thing.level)
    step = 2 * r / CELLS
    spots = [
        (column * side, row)
        for column in range(2, CELLS // 2 - 1)
        for row in range(-CELLS // 2 + 2, CELLS // 2 - 1)
        for side in ((-1 if thing.left else 1),)
        if hypot(column * step + box.width / 2, abs(row * step) + box.height / 2) <= EDGE * r
    ]
    spots.sort(key=lambda spot: (1.6 * abs(spot[1] * step - thing.level) + 0.35 * abs(abs(spot[0]) * step - 0.5 * r), spot))
    own = _cells(thing.drawing, middle, (0.0, 0.0), r)
    over = {}
    for column, row in spots:
        over[column, row] = sum((x + column, y + row) in taken for x, y in own)
        if not over[column, row]:
            break
    best = min(over, key=over.__getitem__, default=None)
    return (best[0] * step, best[1] * step) if best else (0.0, thing.level)


def _cells(drawing: Drawing, middle: Point, at: Point, r: float) -> set[tuple[int, int]]:
    """The squares that a drawing takes when its middle lies at a point, with one square of room all round."""
    step = 2 * r / CELLS
    box = box_of(drawing.shapes)
    dx, dy = at[0] - middle[0], at[1] - middle[1]
    if min(box.width, box.height) > SLIM * max(box.width, box.height) and max(box.width, box.height) < 2 * r:
        columns = range(round((box.x + dx) / step) - 1, round((box.x + box.width + dx) / step) + 2)
        rows = range(round((box.y + dy) / step) - 1, round((box.y + box.height + dy) / step) + 2)
        return {(column, row) for column in columns for row in rows}
    spots = {(round((x + dx) / step), round((y + dy) / step)) for shape in drawing.shapes for x, y in points_of(shape)}
    return {(column + a, row + b) for column, row in spots for a in NEAR for b in NEAR}
