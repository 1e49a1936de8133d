"""What an entry looks like in the round field of the microscope: true relative size, at the low and the high power."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import cos, hypot, sin
from typing import Any, Literal

from keytool.library.model import Entry, Library
from keytool.library.wording import number

from . import geometry, pen
from .bounds import bounds
from .frame import Sketch, pen_for, plate
from .marks import Mark, of_shape
from .motion import OPTICS
from .raster import flattened
from .shapes import Box, Dots, Drawing, Leader, Path, Point, Shape, Step, Swell
from .whole_body import strewn, whole_of

Power = Literal["low", "high"]

_LEAST = 0.30
"""No line in the field is finer than this share of a pen; it lies inside the edge of what it outlines."""
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
    whole = whole_of(entry, seen.diameter)
    if whole is None:
        return None
    shapes = in_field(whole, seen, strewn=strewn(entry))
    sketch = Sketch(shapes, pen_for(seen.diameter, seen.diameter), tonal=whole.tonal)
    title = f"{entry.name} at {number(seen.power)}×"
    return plate(sketch, title, f"At true size in a field {number(round(seen.diameter / 1000, 3))} mm across.")


def in_field(whole: Drawing, seen: Optics, *, strewn: int = 0) -> tuple[Shape, ...]:
    """The shapes of a drawing placed in the field, once or several times, behind the field's edge.

    `strewn` is for drawings of many small bodies: every so many shapes are one body, and the bodies are strewn over the field.
    """
    r, nib = seen.diameter / 2, pen_for(seen.diameter, seen.diameter)
    ratio = whole.pen_um / nib
    out: list[Shape] = []
    for shapes, middle, at, turn in copies(whole, r, strewn):
        if _finest(shapes) < seen.resolution:
            out += [pen.disc(*at, share * seen.resolution / 2, "unresolved", role="faint") for share in (1.0, 0.6)]
            continue
        out += [moved for shape in shapes if not isinstance(shape, Leader) for moved in placed(shape, middle, at, turn, ratio, r)]
    return (*out, pen.ring(0, 0, r, 1.4, "field"))


Copy = tuple[tuple[Shape, ...], Point, Point, float]


def copies(whole: Drawing, r: float, strewn: int) -> list[Copy]:
    """What is put where: the shapes, the point of them that is placed, the place, and the turn."""
    box = box_of(whole.shapes)
    longest, middle = max(box.width, box.height), centre(box)
    if strewn:
        bodies = [whole.shapes[k : k + strewn] for k in range(0, len(whole.shapes), strewn)]
        wide = 0.8 * r / (longest / 2)
        placed = [(body, centre(box_of(body))) for body in bodies]
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
        front = tuple(shape for shape in whole.shapes if shape.part == "gullet")  # a worm is told by its front, so that is looked at
        middle = centre(box_of(front)) if front else min(spots, key=lambda p: hypot(p[0] - middle[0], p[1] - middle[1]))
    if longest > 2 * _ALONE * r:
        return [(whole.shapes, middle, (0.0, 0.0), 0.0)]
    reach = [0.80 * r * ((k + 0.4) / 7) ** 0.5 for k in range(7)]
    return [(whole.shapes, middle, (s * cos(2.39996 * k + 0.5), s * sin(2.39996 * k + 0.5)), 1.3 * k) for k, s in enumerate(reach)]


def box_of(shapes: tuple[Shape, ...]) -> Box:
    """The smallest box that holds these shapes, drawn without weight."""
    return bounds(shapes, 0.0, 0.0)


def centre(box: Box) -> Point:
    """The middle of a box."""
    return (box.x + box.width / 2, box.y + box.height / 2)


def _finest(shapes: tuple[Shape, ...]) -> float:
    """How wide the thing is; of several small bodies, one of them."""
    dots = [shape for shape in shapes if shape.part == "dots"]
    if dots:
        return min(max(box.width, box.height) for box in (box_of((dot,)) for dot in dots))
    box = box_of(shapes)
    return min(box.width, box.height)


def placed(shape: Shape, middle: Point, at: Point, turn: float, ratio: float, r: float) -> list[Shape]:
    """The shape moved into the field, its lines as fine as they are in its own plate but never too fine to see; nothing beyond the edge.

    Stipple finer than that is left out: it would blot.
    """

    def put(points: tuple[Point, ...]) -> tuple[Point, ...]:
        return geometry.moved([(x - middle[0], y - middle[1]) for x, y in points], at[0], at[1], turn=turn)

    def within(p: Point) -> bool:
        return hypot(p[0], p[1]) <= r

    def well_within(p: Point) -> bool:
        """For a heavy line, whose ink lies beside its points."""
        return hypot(p[0], p[1]) <= 0.985 * r

    match shape:
        case Swell():
            weights = tuple(max(w * ratio, _LEAST) for w in shape.weights)
            points = put(shape.points)
            if all(within(p) for p in points):
                return [replace(shape, points=points, weights=weights)]
            closed = (*points, points[0]) if shape.closed else points
            weight = sum(weights) / len(weights)
            return [Swell(run, (weight,) * len(run), shape.part, shape.role, shape.inset) for run in geometry.runs(closed, well_within)]
        case Dots():
            points = tuple(p for p in put(shape.points) if within(p))
            return [replace(shape, points=points, size=shape.size * ratio)] if points and shape.size * ratio >= _LEAST else []
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
