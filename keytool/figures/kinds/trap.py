"""Traps of fungi that catch nematodes, on the cross-walled hypha that bears them."""

from __future__ import annotations

from collections.abc import Callable
from math import cos, hypot, pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape
from .kind import Kind, Values, accent, choice, num, um, word

PART = "trap"


def build(v: Values) -> Sketch:
    """The trap above its hypha, which runs across the foot of the picture."""
    size, thread = num(v, "size"), num(v, "thread-width")
    trap, wide, tall = _FORMS[word(v, "form")](size, thread)
    pen_um = pen_for(wide * size, tall * size)
    hypha = _hypha(wide * size, thread)
    return Sketch((*hypha, *trap), pen_um)


def _hypha(span: float, w: float) -> list[Shape]:
    """The bearing hypha, its upper wall at y = 0."""
    top = geometry.curve([(-span / 2, 0.02 * span), (-0.1 * span, 0.0), (0.1 * span, 0.0), (span / 2, 0.03 * span)], per=8)
    low = geometry.moved(top, 0.0, w)
    walls = [((x, 0.006 * span), (x, w + 0.004 * span)) for x in (-0.34 * span, -0.09 * span, 0.17 * span, 0.41 * span)]
    return [pen.line(top, (1.2,), "hypha"), pen.line(low, (1.8,), "hypha"), pen.strokes(walls, 1.1, "cross-walls")]


def _cells(x0: float, y0: float, inner: float, outer: float, start: float, swollen: bool = False) -> list[Shape]:
    """Three curved cells end to end in a ring; swollen ones bulge inward and meet."""
    out: list[Shape] = []
    for k in range(3):
        a, b = start + 2 * pi * k / 3, start + 2 * pi * (k + 1) / 3
        gap = 0.05
        rim = geometry.arc(x0, y0, outer, a + gap, b - gap, count=24)
        if swollen:
            mid = (a + b) / 2
            # The cell fills its third of the ring but for a slit against its neighbours.
            inside: list[Point] = [
                (x0 + 0.70 * outer * cos(b - 0.07), y0 + 0.70 * outer * sin(b - 0.07)),
                (x0 + 0.36 * outer * cos(b - 0.16), y0 + 0.36 * outer * sin(b - 0.16)),
                (x0 + 0.05 * outer * cos(mid), y0 + 0.05 * outer * sin(mid)),
                (x0 + 0.36 * outer * cos(a + 0.16), y0 + 0.36 * outer * sin(a + 0.16)),
                (x0 + 0.70 * outer * cos(a + 0.07), y0 + 0.70 * outer * sin(a + 0.07)),
            ]
            ring: Points = (*rim, *geometry.curve(inside, per=6))
        else:
            ring = (*rim, *reversed(geometry.arc(x0, y0, inner, a + gap, b - gap, count=24)))
        out.append(pen.contour(ring, 1.2, 2.0, PART))
        drops = [
            (x0 + (inner + outer) / 2 * cos(a + (b - a) * s), y0 + (inner + outer) / 2 * sin(a + (b - a) * s)) for s in (0.25, 0.5, 0.75)
        ]
        out += [pen.ring(x, y, 0.10 * (outer - inner), 0.7, "contents") for x, y in drops]
    return out


def _stalk(x: float, foot: float, top: float, w: float, walls: int) -> list[Shape]:
    out: list[Shape] = [
        pen.line(geometry.curve([(x + s * w / 2, foot), (x + s * w / 2, (foot + top) / 2), (x + s * w / 2, top)], per=6), (1.5,), "stalk")
        for s in (-1, 1)
    ]
    out.append(
        pen.strokes(
            [
                ((x - w / 2, foot + (top - foot) * (k + 0.5) / walls), (x + w / 2, foot + (top - foot) * (k + 0.5) / walls))
                for k in range(walls)
            ],
            1.0,
            "stalk",
        )
    )
    return out


Drawn = tuple[list[Shape], float, float]


def _closing(size: float, w: float, *, shut: bool = False) -> Drawn:
    """A ring of three cells on a short stout stalk."""
    r, stalk = size / 2, 0.28 * size
    out = [*_stalk(0.0, 0.0, -stalk, 0.24 * size, 1), *_cells(0.0, -stalk - r + 0.02 * size, r - 0.20 * size, r, pi / 2, shut)]
    return out, 1.9, 1.6


def _shut(size: float, w: float) -> Drawn:
    return _closing(size, w, shut=True)


def _loose(size: float, w: float) -> Drawn:
    """A ring of three cells on a long slender stalk of its own cells."""
    r, stalk = size / 2, 0.75 * size
    return [*_stalk(0.0, 0.0, -stalk, 0.11 * size, 3), *_cells(0.0, -stalk - r + 0.01 * size, r - 0.17 * size, r, pi / 2)], 1.9, 2.1


def _knob(size: float, w: float) -> Drawn:
    """A sticky ball on a short stalk, a film of glue round it."""
    r, stalk = size / 2, 0.85 * size
    ball = geometry.ellipse(0.0, -stalk - 0.92 * r, r, r, count=72)
    film = geometry.ellipse(0.0, -stalk - 0.92 * r, 1.22 * r, 1.22 * r, count=72)
    return (
        [
            *_stalk(0.0, 0.0, -stalk, 0.30 * size, 2),
            pen.contour(ball, 1.3, 2.4, PART),
            pen.stroke(film, 0.6, "glue", closed=True, role="faint"),
            pen.ring(0.08 * size, -stalk - 0.98 * r, 0.22 * r, 0.7, "contents"),
        ],
        2.4,
        2.8,
    )


def _branch(size: float, w: float) -> Drawn:
    """A stubby upright branch of three cells; the size is its height."""
    half = 0.17 * size
    edge = geometry.curve(
        [
            (-half, 0),
            (-1.05 * half, -0.30 * size),
            (-1.1 * half, -0.62 * size),
            (-0.85 * half, -0.90 * size),
            (0, -size),
            (0.85 * half, -0.90 * size),
            (1.1 * half, -0.62 * size),
            (1.05 * half, -0.30 * size),
            (half, 0),
        ],
        per=8,
    )
    walls = [((-1.04 * half, -y * size), (1.04 * half, -y * size)) for y in (0.02, 0.33, 0.66)]
    return [pen.line(edge, (1.3, 1.8, 2.2), PART), pen.strokes(walls, 1.1, PART)], 1.4, 1.5


def _net(size: float, w: float) -> Drawn:
    """Arched loops of hypha that curve back and fuse into a net standing off the thread; the size is that of a loop."""
    arcs = [
        ((-0.95, 0.0), (-0.05, 0.0), 1.00),
        ((0.05, 0.0), (0.95, 0.0), 0.95),
        ((-0.52, -0.86), (0.50, -0.84), 0.86),
        ((-1.02, -0.42), (-1.30, 0.02), 0.55),
        ((0.92, -0.70), (1.35, 0.03), 0.62),
        ((-0.90, -0.75), (-0.45, -1.25), 0.45),
        ((0.28, -1.45), (0.95, -0.66), 0.55),
    ]
    rings = []
    for (x1, y1), (x2, y2), rise in arcs:
        dx, dy = x2 - x1, y2 - y1
        away = 1 if dx >= 0 else -1
        size_ = hypot(dx, dy)
        nx, ny = away * dy / size_, -away * dx / size_
        knots = [
            (x1, y1),
            (x1 + 0.06 * dx + 0.62 * rise * nx, y1 + 0.06 * dy + 0.62 * rise * ny),
            (x1 + 0.5 * dx + rise * nx, y1 + 0.5 * dy + rise * ny),
            (x1 + 0.94 * dx + 0.62 * rise * nx, y1 + 0.94 * dy + 0.62 * rise * ny),
            (x2, y2),
        ]
        line = geometry.spaced(geometry.curve(geometry.scaled(knots, size), per=10), 0.03 * size)
        rings.append((line, (*geometry.offset(line, [0.52 * w] * len(line)), *reversed(geometry.offset(line, [-0.52 * w] * len(line))))))
    out: list[Shape] = []
    for k, (line, _) in enumerate(rings):
        others = [ring for j, (_, ring) in enumerate(rings) if j != k]

        def free(p: Point, others: list[Points] = others) -> bool:
            return p[1] < 0.25 * w and not any(geometry.inside(o, p) for o in others)

        for side in (geometry.offset(line, [0.52 * w] * len(line)), geometry.offset(line, [-0.52 * w] * len(line))):
            out += [pen.line(run, (1.4,), PART) for run in geometry.runs(side, free)]
        walls = []
        for t in (0.22, 0.5, 0.78):
            i = round(t * (len(line) - 1))
            (x, y), (nx, ny) = line[i], geometry.normals(line)[i]
            if free((x, y)):
                walls.append(((x - nx * 0.5 * w, y - ny * 0.5 * w), (x + nx * 0.5 * w, y + ny * 0.5 * w)))
        if walls:
            out.append(pen.strokes(walls, 1.0, PART))
    return out, 3.2, 2.4


_FORMS: dict[str, Callable[[float, float], Drawn]] = {
    "net": _net,
    "closing-ring": _closing,
    "shut-ring": _shut,
    "loose-ring": _loose,
    "knob": _knob,
    "branch": _branch,
}

KIND = Kind(
    "trap",
    "a trap of a fungus that catches nematodes",
    (
        choice(
            "form",
            tuple(_FORMS),
            "net of loops; ring of three cells on a short stout stalk, open or sprung shut; ring on a slender stalk; "
            "sticky ball; stubby branch",
        ),
        um("size", 25, 3, 200, "outer diameter of a ring or loop, diameter of a ball, height of a branch"),
        um("thread-width", 4, 1, 20, "width of the hypha"),
        accent("trap", "stalk", "hypha", "glue"),
    ),
    build,
)
