"""A cell on its way: where it was just before, as faint outlines, the line it came along, and an arrow for where it goes on."""

from __future__ import annotations

from collections.abc import Callable
from math import atan2, hypot, pi, sin

from .. import geometry, pen
from ..bounds import bounds
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape, Swell
from . import ciliate, flagellate, moving_cell
from .kind import Kind, Values, accent, choice, num, um, word
from .together import shifted, turned

_CELLS: dict[str, tuple[Kind, str]] = {
    "bean-flagellate": (flagellate.KIND, "bean"),
    "round-flagellate": (flagellate.KIND, "round"),
    "drawn-out-flagellate": (flagellate.KIND, "drawn-out"),
    "pair-flagellate": (flagellate.KIND, "equal-pair"),
    "jumper": (ciliate.KIND, "jumper"),
    "leaper": (ciliate.KIND, "leaper"),
    "bean-ciliate": (ciliate.KIND, "bean"),
    "smooth-ciliate": (ciliate.KIND, "smooth-bean"),
    "pear-ciliate": (ciliate.KIND, "pear"),
    "ciliate": (moving_cell.KIND, "ciliate"),
}
_Stop = tuple[float, float, float]
"""Where a cell is on its way (in its own lengths) and how far its front is turned from the way's direction (radians)."""


def _hops() -> tuple[Points, list[_Stop]]:
    """Short hops in bows, each from a touch-down to the next."""
    line = tuple((1.25 * k / 20, -0.80 * abs(sin(pi * k / 20))) for k in range(41))
    return line, [(0.0, 0.0, 0.3), (0.62, -0.80, 0.0), (1.25, 0.0, 0.3), (2.5, 0.0, 0.0)]


def _wobble() -> tuple[Points, list[_Stop]]:
    """Slowly along, rocking from side to side."""
    line = tuple((2.1 * k / 60, 0.16 * sin(6 * pi * k / 60)) for k in range(61))
    return line, [(0.0, 0.0, 0.60), (1.0, 0.0, -0.60), (2.1, 0.0, 0.45)]


def _darts() -> tuple[Points, list[_Stop]]:
    """Still, then gone: one straight shot, still again."""
    return ((0.0, 0.0), (3.0, -0.5)), [(0.0, 0.0, 0.0), (3.0, -0.5, 0.0)]


def _leaps() -> tuple[Points, list[_Stop]]:
    """Leaps in sharp turns, still between them."""
    return ((0.0, 0.0), (1.7, -1.5), (3.4, 0.4)), [(0.0, 0.0, 0.0), (1.7, -1.5, 0.5), (3.4, 0.4, 0.0)]


def _smooth() -> tuple[Points, list[_Stop]]:
    """One even sweep."""
    line = geometry.curve([(0.0, 0.0), (1.0, -0.40), (2.0, -0.45), (3.0, -0.1)], per=16)
    return line, [(*geometry.walked(line, t), 0.0) for t in (0.0, 0.46, 1.0)]


def _clumsy() -> tuple[Points, list[_Stop]]:
    """Tumbling: now this way, now that, the body rolling as it goes."""
    line = geometry.curve([(0.0, 0.0), (0.8, -0.8), (1.2, 0.4), (2.0, 0.5), (2.2, -0.7), (3.0, -0.4)], per=12)
    return line, [(*geometry.walked(line, t), lean) for t, lean in ((0.0, 0.9), (0.45, -1.0), (1.0, -0.5))]


def _slides() -> tuple[Points, list[_Stop]]:
    """Straight along the glass, steady."""
    return ((0.0, 0.0), (1.3, 0.0), (2.6, 0.0)), [(0.0, 0.0, 0.0), (1.3, 0.0, 0.0), (2.6, 0.0, 0.0)]


def _swims() -> tuple[Points, list[_Stop]]:
    """Free in the water in wide bows, turning about itself."""
    line = tuple((3.2 * k / 60, 0.70 * sin(2.5 * pi * k / 60)) for k in range(61))
    return line, [(*geometry.walked(line, t), 0.0) for t in (0.02, 0.50, 0.98)]


_WAYS: dict[str, Callable[[], tuple[Points, list[_Stop]]]] = {
    "hops": _hops,
    "wobbles": _wobble,
    "darts": _darts,
    "leaps": _leaps,
    "smooth": _smooth,
    "clumsy": _clumsy,
    "slides": _slides,
    "swims": _swims,
}


def build(v: Values) -> Sketch:
    """The cell at the end of its way, its earlier places along it."""
    n = num(v, "length")
    kind, form = _CELLS[word(v, "cell")]
    shapes = kind.build(kind.filled({"form": form, "length": n})).shapes
    box = bounds([one for one in shapes if one.part == "outline"], 0.0, 0.0)
    cell = shifted(shapes, -box.x - box.width / 2, -box.y - box.height / 2)
    edge = next(one.points for one in cell if isinstance(one, Swell) and one.part == "outline")
    level, level_stops = _WAYS[word(v, "way")]()
    # Up the page: a cell's front is at the top, and tall pictures stand well side by side.
    unit, stops = tuple((y, -x) for x, y in level), [(y, -x, lean) for x, y, lean in level_stops]
    line = geometry.scaled(unit, n)
    out: list[Shape] = []
    for k, (x, y, lean) in enumerate(stops):
        turn = _direction(unit, (x, y)) + pi / 2 + lean
        if k < len(stops) - 1:
            out.append(pen.stroke(geometry.moved(edge, x * n, y * n, turn=turn), 1.0, "before", role="faint", closed=True))
        else:
            out += turned(cell, turn, x * n, y * n)
    x, y, _ = stops[-1]
    walk = [p for p in geometry.spaced(line, 0.11 * n) if hypot(p[0] - x * n, p[1] - y * n) > 0.52 * n]
    out.append(pen.strokes([walk[k : k + 2] for k in range(0, len(walk) - 1, 2)], 1.5, "track"))
    out.append(_arrow((x * n, y * n), atan2(y - stops[-2][1], x - stops[-2][0]), n))
    frame = bounds(out, 0.0, 0.0)
    return Sketch(tuple(out), pen_for(frame.width, 1.6 * frame.height))


def _direction(line: Points, at: Point) -> float:
    """The way's direction at the place of it that is nearest, in radians from the right."""
    k = min(range(len(line)), key=lambda k: hypot(line[k][0] - at[0], line[k][1] - at[1]))
    before, after = line[max(0, k - 1)], line[min(len(line) - 1, k + 1)]
    return atan2(after[1] - before[1], after[0] - before[0])


def _arrow(at: Point, way: float, n: float) -> Shape:
    """An arrow that goes on ahead of the cell."""
    shaft = geometry.moved(((0.75 * n, 0.0), (1.25 * n, 0.0)), *at, turn=way)
    head = geometry.moved(((1.08 * n, -0.13 * n), (1.25 * n, 0.0), (1.08 * n, 0.13 * n)), *at, turn=way)
    return pen.strokes([shaft, head], 1.8, "track")


KIND = Kind(
    "cell-track",
    "a single cell on its way: where it was just before, the line it came along, an arrow",
    (
        choice("cell", tuple(_CELLS), "which cell"),
        choice(
            "way",
            tuple(_WAYS),
            "hops in bows; rocking slowly along; still, then gone; leaps in "
            "sharp turns; one even sweep; tumbling; straight along; in wide bows",
        ),
        um("length", 10, 2, 400, "length of the cell"),
        accent("track", "before"),
    ),
    build,
)
