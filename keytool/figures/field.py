"""What an entry looks like in the round field of the microscope: true relative size, at the low and the high power."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from math import cos, hypot, sin
from typing import Any, Literal

from keytool.library.model import Entry, Figure, Library
from keytool.library.show import number
from keytool.library.value import Interval

from . import draw, geometry, kinds, pen
from .drawn import resolved
from .frame import Sketch, pen_for, plate, with_shapes
from .marks import Mark, of_shape
from .motion import OPTICS, WIDE
from .raster import flattened
from .reach import bounds
from .shapes import Box, Dots, Drawing, Leader, Path, Point, Shape, Step, Swell

Power = Literal["low", "high"]

_LEAST = 0.30
"""No line in the field is finer than this share of a pen; it lies inside the edge of what it outlines."""
_SLENDER = 25.0
"""Length over width of a worm whose width the library does not say."""
_PLAIN_STRANDS = ("thread", "hair")
"""Strands plain enough to be drawn anew through a whole field; others lie there as the piece that their plate shows."""
_NO_THING = ("optical-fault",)
"""Kinds of drawing that show no thing in the field but the field itself."""
_BARE = 0.3
"""How far from the middle of a field, as a share of it, the first line may be before the field looks empty."""
_ALONE = 0.12
"""What is longer than this share of the field is shown once; smaller things are shown several times."""


@dataclass(frozen=True, slots=True)
class Optics:
    """An eyepiece and an objective: the field number (mm), both magnifications, the objective's numerical aperture, the light (µm)."""

    field_number: float
    eyepiece: float
    objective: float
    aperture: float
    wavelength: float

    @property
    def diameter(self) -> float:
        """Of the field, in µm: field number over objective."""
        return 1000 * self.field_number / self.objective

    @property
    def resolution(self) -> float:
        """The finest spacing the objective separates, in µm: 0.61 times the wavelength over the aperture (Rayleigh)."""
        return 0.61 * self.wavelength / self.aperture

    @property
    def power(self) -> float:
        """Eyepiece times objective."""
        return self.eyepiece * self.objective


def optics(library: Library, power: Power, field_number: float | None = None) -> Optics:
    """The library's example microscope at low or high power, with your own field number (mm) if you give one."""
    at = library.quantities
    objective, aperture = OPTICS[power]
    own = at["field-number-example"].low if field_number is None else field_number
    return Optics(own, at["eyepiece-power"].low, at[objective].low, at[aperture].low, at["wavelength"].low / 1000)


def field_view(library: Library, entry: Entry, seen: Optics) -> Drawing | None:
    """The entry in the round field of `seen`, at true size; None where the entry has no drawing.

    What the objective cannot resolve is a soft dot as wide as the finest spacing; what is wider than the field is cut off
    by its edge. The plate's `field` part is the edge of the field.
    """
    whole = _whole(entry, seen.diameter)
    if whole is None:
        return None
    shapes = in_field(whole, seen, strewn=_strewn(entry))
    sketch = Sketch(shapes, pen_for(seen.diameter, seen.diameter), tonal=whole.tonal)
    title = f"{entry.name} at {number(seen.power)}×"
    return plate(sketch, title, f"At true size in a field {number(round(seen.diameter / 1000, 3))} mm across.")


@dataclass(frozen=True, slots=True)
class Seen:
    """What to look for in a field, in µm: its longest side, and how wide it is (of several small bodies, one of them)."""

    longest: float
    finest: float


def seen_of(drawing: Drawing) -> Seen:
    """The size of what a plate shows; of several small bodies, the size of one."""
    bodies = [_box((shape,)) for shape in drawing.shapes if shape.part == "dots"]
    if bodies:
        sizes = [max(box.width, box.height) for box in bodies]
        return Seen(max(sizes), min(sizes))
    sides = sorted(side - 4 * drawing.pen_um for side in (drawing.frame.width, drawing.frame.height))
    return Seen(sides[1], sides[0])


def is_in_field(entry: Entry) -> bool:
    """Whether the entry is a thing that lies in the field and is drawn."""
    return entry.figure is not None and entry.figure.kind not in _NO_THING


def beyond_its_plate(entry: Entry, seen: Optics) -> Drawing | None:
    """What the field holds where the entry's own plate shows a part of it or a heap, else None.

    The worm of a head; a thread that runs through the field; small bodies strewn over the whole field.
    """
    figure = entry.figure
    if figure is None:
        return None
    runs_on = figure.kind in _PLAIN_STRANDS and "length" not in figure.params and figure.params.get("form") != "helical"
    strewn = _strewn(entry)
    whole = _whole(entry, seen.diameter) if runs_on or strewn or _is_worm_part(figure) else None
    if whole is None or not strewn:
        return whole
    r = seen.diameter / 2
    bodies = [
        moved
        for shapes, middle, at, turn in _copies(whole, r, strewn)
        for shape in shapes
        for moved in _placed(shape, middle, at, turn, 1.0, r)
    ]
    return with_shapes(whole, tuple(bodies))


def spot(drawing: Drawing, field: float) -> Point:
    """What is looked at of something longer than a field of `field` µm: its middle, or the nearest line where the middle is bare."""
    middle = _centre(drawing.frame)
    points = [point for shape in drawing.shapes for point in _points(shape)]
    nearest = min(points, key=lambda p: hypot(p[0] - middle[0], p[1] - middle[1]), default=middle)
    return middle if hypot(nearest[0] - middle[0], nearest[1] - middle[1]) < _BARE * field else nearest


def _points(shape: Shape) -> Iterable[Point]:
    match shape:
        case Swell() | Dots():
            return shape.points
        case Path():
            return [(v[-2], v[-1]) for _, v in shape.steps if v]
        case _:
            return ()


def in_field(whole: Drawing, seen: Optics, *, strewn: int = 0) -> tuple[Shape, ...]:
    """The shapes of a drawing placed in the field, once or several times, behind the field's edge.

    `strewn` is for drawings of many small bodies: every so many shapes are one body, and the bodies are strewn over the field.
    """
    r, nib = seen.diameter / 2, pen_for(seen.diameter, seen.diameter)
    ratio = whole.pen_um / nib
    out: list[Shape] = []
    for shapes, middle, at, turn in _copies(whole, r, strewn):
        if _finest(shapes) < seen.resolution:
            out += [pen.disc(*at, share * seen.resolution / 2, "unresolved", role="faint") for share in (1.0, 0.6)]
            continue
        out += [moved for shape in shapes if not isinstance(shape, Leader) for moved in _placed(shape, middle, at, turn, ratio, r)]
    return (*out, pen.ring(0, 0, r, 1.4, "field"))


Copy = tuple[tuple[Shape, ...], Point, Point, float]


def _copies(whole: Drawing, r: float, strewn: int) -> list[Copy]:
    """What is put where: the shapes, the point of them that is placed, the place, and the turn."""
    box = _box(whole.shapes)
    longest, middle = max(box.width, box.height), _centre(box)
    if strewn:
        bodies = [whole.shapes[k : k + strewn] for k in range(0, len(whole.shapes), strewn)]
        wide = 0.8 * r / (longest / 2)
        placed = [(body, _centre(_box(body))) for body in bodies]
        return [(body, c, ((c[0] - middle[0]) * max(1.0, wide), (c[1] - middle[1]) * max(1.0, wide)), 0.0) for body, c in placed]
    if longest > 2 * r:  # too long for the field: a part of it lies in the middle
        spots = [
            (v[-2], v[-1])
            for shape in whole.shapes
            for mark in of_shape(shape, 0.0, 0.0)
            if isinstance(mark, Mark)
            for _, v in mark.steps
            if v
        ]
        middle = min(spots, key=lambda p: hypot(p[0] - middle[0], p[1] - middle[1]))
    if longest > 2 * _ALONE * r:
        return [(whole.shapes, middle, (0.0, 0.0), 0.0)]
    reach = [0.80 * r * ((k + 0.4) / 7) ** 0.5 for k in range(7)]
    return [(whole.shapes, middle, (s * cos(2.39996 * k + 0.5), s * sin(2.39996 * k + 0.5)), 1.3 * k) for k, s in enumerate(reach)]


def _strewn(entry: Entry) -> int:
    """Of a drawing of small bodies that lie scattered: how many shapes make one body; else 0."""
    figure = entry.figure
    if figure is None or figure.kind != "dots" or figure.params.get("layout", "scattered") != "scattered":
        return 0
    return 2 if figure.params.get("form") in ("unresolved", "clubs", "spore-rods") else 1


def _box(shapes: tuple[Shape, ...]) -> Box:
    return bounds(shapes, 0.0, 0.0)


def _centre(box: Box) -> Point:
    return (box.x + box.width / 2, box.y + box.height / 2)


def _whole(entry: Entry, field: float) -> Drawing | None:
    """The entry's drawing as a whole thing: a head becomes the worm it belongs to, a stretch of thread runs through the field."""
    figure = entry.figure
    if figure is None:
        return None
    kind, params = figure.kind, {k: v for k, v in resolved(figure, entry).items() if k != "accent"}
    if _is_worm_part(figure):
        length = _middle(entry, "body-length", 800.0)
        width = min(_middle(entry, "body-width", length / _SLENDER), length / 6)
        kind, params = "nematode-body", {"length": length, "width": width}
    known = {p.name: p for p in kinds()[kind].params}
    own = known.get("length")
    if kind in ("thread", "filament", "vessel", "hair") and own and "length" not in params and params.get("form") != "helical":
        params["length"] = min(own.high, 1.1 * field)
    return draw(kind, _fitting(params, known), title=entry.name)


def _is_worm_part(figure: Figure) -> bool:
    return figure.kind == "nematode-head" or (figure.kind == "nematode-body" and figure.params.get("view") == "tail")


def _fitting(params: dict[str, Any], known: dict[str, Any]) -> dict[str, Any]:
    """The same, every length drawn back into what the kind can draw."""
    return {k: min(max(v, known[k].low), known[k].high) if known[k].type == "um" and v is not None else v for k, v in params.items()}


def _middle(entry: Entry, character: str, otherwise: float) -> float:
    """The middle of what the entry says of a length, in µm; of a group of many sizes, the other length as far as it may be."""
    statement = entry.statements.get(character)
    if statement is None or not isinstance(statement.showing, Interval):
        return otherwise
    low, high = statement.showing.low, statement.showing.high
    return min(max(otherwise, low), high) if low <= 0 or high > WIDE * low else (low + high) / 2


def _finest(shapes: tuple[Shape, ...]) -> float:
    """How wide the thing is; of several small bodies, one of them."""
    dots = [shape for shape in shapes if shape.part == "dots"]
    if dots:
        return min(max(box.width, box.height) for box in (_box((dot,)) for dot in dots))
    box = _box(shapes)
    return min(box.width, box.height)


def _placed(shape: Shape, middle: Point, at: Point, turn: float, ratio: float, r: float) -> list[Shape]:
    """The shape moved into the field, its lines as fine as they are in its own plate but never too fine to see; nothing beyond the edge.

    Stipple finer than that is left out: it would blot.
    """

    def put(points: tuple[Point, ...]) -> tuple[Point, ...]:
        return geometry.moved([(x - middle[0], y - middle[1]) for x, y in points], at[0], at[1], turn=turn)

    def within(p: Point) -> bool:
        return hypot(p[0], p[1]) <= r

    match shape:
        case Swell():
            weights = tuple(max(w * ratio, _LEAST) for w in shape.weights)
            points = put(shape.points)
            if all(within(p) for p in points):
                return [replace(shape, points=points, weights=weights)]
            closed = (*points, points[0]) if shape.closed else points
            weight = sum(weights) / len(weights)
            return [Swell(run, (weight,) * len(run), shape.part, shape.role, shape.inset) for run in geometry.runs(closed, within)]
        case Dots():
            if shape.size * ratio < _LEAST:
                return []
            return [replace(shape, points=tuple(p for p in put(shape.points) if within(p)), size=shape.size * ratio)]
        case Path():
            steps = tuple(_step(step, put) for step in shape.steps)
            weight = max(shape.weight * ratio, _LEAST) if shape.weight else 0.0
            if all(within((v[i], v[i + 1])) for _, v in steps for i in range(0, len(v), 2)):
                return [replace(shape, steps=steps, weight=weight)]
            return [
                pen.stroke(run, max(weight, _LEAST), shape.part, role=shape.role)
                for line in _lines(steps)
                for run in geometry.runs(line, within)
            ]
        case _:
            return []


def _step(step: Step, put: Any) -> Step:
    letter, v = step
    return (letter, tuple(c for i in range(0, len(v), 2) for c in put(((v[i], v[i + 1]),))[0]))


def _lines(steps: tuple[Step, ...]) -> list[tuple[Point, ...]]:
    return [line for line in flattened(steps) if len(line) > 1]
