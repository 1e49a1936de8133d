"""What an entry's own plate does for a view of the field, what is shown instead where it does not, and how large it is."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from math import hypot

from keytool.library.model import Entry

from . import draw
from .field import Optics, box_of, centre, copies, placed
from .frame import with_shapes
from .shapes import Dots, Drawing, Path, Point, Shape, Swell
from .whole_body import is_worm_part, params_of, strewn, whole_of

_PLAIN_STRANDS = ("thread", "hair")
"""Strands plain enough to be drawn anew through a whole field; others lie there as the piece that their plate shows."""
_NO_THING = ("optical-fault",)
"""Kinds of drawing that show no thing in the field but the field itself."""
_FINE = 1 / 200
"""The least width of a line, as a share of the field, where a thing is drawn in nothing but even lines."""
_BARE = 0.3
"""How far from the middle of a field, as a share of it, the first line may be before the field looks empty."""


@dataclass(frozen=True, slots=True)
class Seen:
    """What to look for in a field, in µm: its longest side, and how wide it is (of several small bodies, one of them)."""

    longest: float
    finest: float


def seen_of(drawing: Drawing) -> Seen:
    """The size of what a plate shows; of several small bodies, the size of one."""
    bodies = [box_of((shape,)) for shape in drawing.shapes if shape.part == "dots"]
    if bodies:
        sizes = [max(box.width, box.height) for box in bodies]
        return Seen(max(sizes), min(sizes))
    lines = _lines(drawing)
    margin = (4 + (max(line.weight for line in lines) if lines else 0)) * drawing.pen_um
    sides = sorted(side - margin for side in (drawing.frame.width, drawing.frame.height))
    return Seen(sides[1], sides[0])


def _lines(drawing: Drawing) -> tuple[Path, ...]:
    """The lines of a plate that holds nothing but even lines, which reach half their width beyond the thing; else none."""
    lines = tuple(shape for shape in drawing.shapes if isinstance(shape, Path) and not shape.fill)
    return lines if len(lines) == len(drawing.shapes) else ()


def is_in_field(entry: Entry) -> bool:
    """Whether the entry is a thing that lies in the field and is drawn."""
    return entry.figure is not None and entry.figure.kind not in _NO_THING


def beyond_its_plate(entry: Entry, own: Drawing, seen: Optics) -> Drawing | None:
    """What the field holds where the entry's `own` plate shows a part of it, a heap, or lines too fine; else None.

    The worm of a head; a thread that runs through the field; small bodies strewn over the whole field; the same in heavier lines.
    """
    figure = entry.figure
    if figure is None:
        return None
    if bodies := strewn(entry):
        return _apart(draw(figure.draws, params_of(figure, entry), title=entry.name), seen, bodies)
    runs_on = figure.kind in _PLAIN_STRANDS and "length" not in figure.params and figure.params.get("form") != "helical"
    if runs_on or is_worm_part(figure):
        return whole_of(entry, seen.diameter)
    least = _FINE * seen.diameter / own.pen_um
    heavier = tuple(replace(line, weight=max(line.weight, least)) for line in _lines(own))
    return with_shapes(own, heavier) if heavier else None


def _apart(heap: Drawing, seen: Optics, body: int) -> Drawing:
    """The bodies of a heap, each of `body` shapes, strewn over the field."""
    r = seen.diameter / 2
    bodies = [
        moved for shapes, middle, at, turn in copies(heap, r, body) for shape in shapes for moved in placed(shape, middle, at, turn, 1.0, r)
    ]
    return with_shapes(heap, tuple(bodies))


def spot(drawing: Drawing, field: float) -> Point:
    """What is looked at of something longer than a field of `field` µm: its middle, or the nearest line where the middle is bare."""
    middle = centre(drawing.frame)
    points = [point for shape in drawing.shapes if shape.role != "paper" for point in points_of(shape)]
    nearest = min(points, key=lambda p: hypot(p[0] - middle[0], p[1] - middle[1]), default=middle)
    return middle if hypot(nearest[0] - middle[0], nearest[1] - middle[1]) < _BARE * field else nearest


def points_of(shape: Shape) -> Iterable[Point]:
    """The points that a shape runs through, in µm; none of lettering."""
    match shape:
        case Swell() | Dots():
            return shape.points
        case Path():
            return [(v[-2], v[-1]) for _, v in shape.steps if v]
        case _:
            return ()
