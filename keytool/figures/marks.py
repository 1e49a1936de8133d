"""From shapes to marks: the last step both writers share, so that page and card cannot disagree."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from . import geometry
from .shapes import Dots, Drawing, Leader, Path, Points, Role, Shape, Step, Swell

_TOLERANCE_PENS = 0.04
"""How far a simplified edge may stray: a hundredth of a millimetre on a bench card."""

SCALE_BAR = ("scale-bar", "scale-label")
"""The parts that make up the scale bar."""


@dataclass(frozen=True, slots=True)
class Mark:
    """Steps in µm, filled (`width` 0) or stroked `width` µm wide with round ends."""

    steps: tuple[Step, ...]
    width: float
    role: Role
    part: str


@dataclass(frozen=True, slots=True)
class Lettering:
    """Text whose baseline starts (`anchor` "start") or ends ("end") at (x, y); `size` µm high."""

    x: float
    y: float
    size: float
    text: str
    role: Role
    part: str
    anchor: str = "start"


def marks(drawing: Drawing) -> tuple[Mark | Lettering, ...]:
    """Every mark of the plate in drawing order, scale bar last."""
    size = drawing.letter_um
    body = tuple(mark for shape in drawing.shapes for mark in of_shape(shape, drawing.pen_um, size))
    (x, y), bar = drawing.bar.start, drawing.bar
    return (
        *body,
        Mark((("M", (x, y)), ("L", (x + bar.length, y))), size / 6, "ink", SCALE_BAR[0]),
        Lettering(x + bar.length + 0.35 * size, y + 0.34 * size, size, bar.label, "ink", SCALE_BAR[1]),
    )


def of_shape(shape: Shape, pen: float, letter: float) -> tuple[Mark | Lettering, ...]:
    """One shape as marks, with a pen of `pen` µm and lettering `letter` µm high."""
    return _of_shape(shape, pen, letter if isinstance(shape, Leader) else 0.0)


@lru_cache(maxsize=65536)
def _of_shape(shape: Shape, pen: float, letter: float) -> tuple[Mark | Lettering, ...]:
    match shape:
        case Path():
            return (Mark(_lean(shape.steps, pen), 0.0 if shape.fill else shape.weight * pen, shape.role, shape.part),)
        case Swell():
            return (Mark(_swollen(shape, pen), 0.0, shape.role, shape.part),)
        case Dots():
            steps = tuple(step for p in shape.points for step in (("M", p), ("L", p)))
            return (Mark(steps, shape.size * pen, shape.role, shape.part),)  # type: ignore[arg-type]
        case Leader():
            (x1, _), (x2, y2) = shape.start, shape.end
            anchor, gap = ("start", 0.3) if x2 >= x1 else ("end", -0.3)
            return (
                Mark((("M", shape.start), ("L", shape.end)), 0.6 * pen, shape.role, shape.part),
                Lettering(x2 + gap * letter, y2 + 0.34 * letter, letter, shape.text, shape.role, shape.part, anchor),
            )


def text_width(text: str, size: float) -> float:
    """A safe guess at how wide a short label is set in any plain face, in the units of `size`."""
    return 0.6 * size * len(text)


def edges(shape: Swell, pen: float) -> tuple[Points, Points]:
    """The two edges of a swelling line drawn with a pen of `pen` µm: right and left as one travels along it."""
    across = _normals(shape.points, shape.closed)
    inner, outer = pen * (1 + shape.inset) / 2, pen * (1 - shape.inset) / 2
    along = list(zip(shape.points, across, shape.weights, strict=True))
    right = tuple([(x + nx * w * inner, y + ny * w * inner) for (x, y), (nx, ny), w in along])
    left = shape.points if not outer else tuple([(x - nx * w * outer, y - ny * w * outer) for (x, y), (nx, ny), w in along])
    return right, left


@lru_cache(maxsize=16384)
def _normals(points: Points, closed: bool) -> Points:
    return geometry.normals(points, closed=closed)


def _swollen(shape: Swell, pen: float) -> tuple[Step, ...]:
    right, left = edges(shape, pen)
    limit = _TOLERANCE_PENS * pen
    if shape.closed:
        rings = (geometry.simplified((*left, left[0]), limit)[:-1], geometry.simplified((*right, right[0]), limit)[:-1])
        return (*_loop(rings[0]), *_loop(tuple(reversed(rings[1]))))
    return _loop((*geometry.simplified(left, limit), *reversed(geometry.simplified(right, limit))))


def _loop(points: Points) -> tuple[Step, ...]:
    return (("M", points[0]), *(("L", p) for p in points[1:]), ("Z", ()))


def _lean(steps: tuple[Step, ...], pen: float) -> tuple[Step, ...]:
    """Long straight-stepped runs with needless points taken out."""
    out: list[Step] = []
    run: list[tuple[float, float]] = []
    for step in (*steps, None):
        if step is not None and step[0] == "L":
            run.append((step[1][0], step[1][1]))
            continue
        if run:
            start = (out[-1][1][-2], out[-1][1][-1])
            out += [("L", p) for p in geometry.simplified((start, *run), _TOLERANCE_PENS * pen)[1:]]
            run = []
        if step is not None:
            out.append(step)
    return tuple(out)
