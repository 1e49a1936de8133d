"""Crystals and mineral flakes, by the form of their faces and edges."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import cos, pi, sin
from random import Random

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape, Swell
from .dots import fitted
from .kind import Kind, Values, accent, choice, num, um, word
from .points import cornered, pts


def crystal(v: Values) -> Sketch:
    """A crystal with its faces, and where asked for the outline it had a while before, as a broken line."""
    n, before = num(v, "size"), word(v, "before")
    sketch = _CRYSTALS[word(v, "form")](n)
    if before == "none":
        return sketch
    edge = next(shape for shape in sketch.shapes if shape.part == "outline")
    points = edge.points if isinstance(edge, Swell) else tuple((values[0], values[1]) for letter, values in edge.steps if letter in "ML")  # type: ignore[union-attr]
    box = geometry.around(points)
    middle = (box.x + box.width / 2, box.y + box.height / 2)
    share = {"same": 1.07, "smaller": 0.62}[before]
    ring = [(middle[0] + share * (x - middle[0]), middle[1] + share * (y - middle[1])) for x, y in points]
    walk = geometry.spaced((*ring, ring[0]), 0.012 * n)
    dashes = [walk[k : k + 4] for k in range(0, len(walk) - 3, 6)]
    return replace(sketch, shapes=(*sketch.shapes, pen.strokes(dashes, 1.4, "before")))


def flake(v: Values) -> Sketch:
    """A flake or shard."""
    return _FLAKES[word(v, "form")](num(v, "size"))


def _faced(ring: Points, lines: list[tuple[Point, Point]], n: float) -> Sketch:
    span = max(((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2) ** 0.5 for a in ring for b in ring)
    edge = geometry.clockwise(geometry.scaled(ring, n / span))
    faces = [geometry.scaled(one, n / span) for one in lines]
    # An even line: a swelling one would break off at sharp corners.
    return Sketch((pen.stroke(edge, 1.7, "outline", closed=True), pen.strokes(faces, 1.0, "faces")), pen_for(0.9 * n, 0.9 * n))


def _box(n: float) -> Sketch:
    """A box of square corners, as of common salt."""
    ring = pts("-.4 -.2, -.1 -.42, .42 -.34, .42 .2, .12 .42, -.4 .34")
    middle = (0.12, -0.12)
    return _faced(ring, [(middle, (-0.4, -0.2)), (middle, (0.42, -0.34)), (middle, (0.12, 0.42))], n)


def _slanted_box(n: float) -> Sketch:
    """A box whose corners are all slanted, as of calcite."""
    ring = pts("-.5 .05, -.22 -.32, .34 -.36, .52 -.1, .24 .3, -.34 .32")
    middle = (-0.04, -0.06)
    return _faced(ring, [(middle, (-0.22, -0.32)), (middle, (0.52, -0.10)), (middle, (-0.34, 0.32))], n)


def _blade(n: float) -> Sketch:
    """Two blades grown together like a swallow's tail, as of gypsum."""
    ring = pts("0 .5, -.17 .36, -.28 -.46, -.08 -.36, 0 -.18, .08 -.36, .28 -.46, .17 .36")
    return _faced(ring, [((0.0, -0.18), (0.0, 0.5)), ((-0.20, -0.38), (-0.10, 0.38)), ((0.20, -0.38), (0.10, 0.38))], n)


def _coffin_lid(n: float) -> Sketch:
    """A long body with a flat roof and slanted ends, like the lid of a coffin, as of struvite."""
    ring = pts("-.5 .2, -.3 -.16, .3 -.16, .5 .2, .5 .28, -.5 .28")
    left, right = (-0.22, 0.02), (0.22, 0.02)
    folds = [
        (left, right),
        (left, (-0.3, -0.16)),
        (right, (0.3, -0.16)),
        (left, (-0.5, 0.2)),
        (right, (0.5, 0.2)),
        ((-0.5, 0.2), (0.5, 0.2)),
    ]
    return _faced(ring, folds, n)


def _spiky_ball(n: float) -> Sketch:
    """A ball of sharp little pyramids grown out from one middle, as of oxalate in plant cells: a lit and a dark face to each."""
    chance = Random("druse")
    spines: list[tuple[float, Point, Point, Point, Point]] = []
    for k in range(46):
        z = 1 - (k + 0.5) / 46  # how far it points at the eye: 1 straight, 0 sideways
        r = (1 - z * z) ** 0.5
        a = 2.39996 * k + 0.25 * chance.random()
        reach = 0.36 + (0.04 + 0.10 * chance.random())
        c, s = cos(a), sin(a)
        tip = (reach * r * c, reach * r * s)
        middle, wide = 0.80 * 0.36 * r, 0.078 + 0.020 * chance.random()
        base = (middle * c, middle * s)
        deep = wide * (0.35 + 0.65 * z)  # the foot is foreshortened
        feet = [(base[0] + u * wide * -s - v * deep * c, base[1] + u * wide * c - v * deep * s) for u, v in ((-1, 0.0), (1, 0.0), (0, 1.0))]
        spines.append((z, tip, feet[0], feet[1], feet[2]))
    flat = [p for _, *ps in spines for p in ps]
    by = n / max(((p[0] - q[0]) ** 2 + (p[1] - q[1]) ** 2) ** 0.5 for p in flat for q in flat)
    out: list[Shape] = []
    for z, *corners in sorted(spines, key=lambda one: one[0]):
        tip, left, right, back = geometry.scaled(corners, by)
        face = (left, tip, right, back)
        dark = max((left, right), key=lambda p: p[0] + p[1])
        out.append(pen.filled(face, "skin", role="paper"))
        shade = [
            (
                (tip[0] + t * (back[0] - tip[0]), tip[1] + t * (back[1] - tip[1])),
                (tip[0] + t * (dark[0] - tip[0]), tip[1] + t * (dark[1] - tip[1])),
            )
            for t in (0.30, 0.48, 0.66, 0.84)
        ]
        out.append(pen.strokes(shade, 0.55, "shade"))
        out.append(pen.stroke((tip, back), 1.0, "faces"))
        out.append(pen.stroke((left, tip, right), 1.1 if z > 0.25 else 1.5, "faces" if z > 0.25 else "outline"))
    return Sketch(tuple(out), pen_for(n, n))


def _steps(n: float) -> Sketch:
    """Thin clear sheets one on another, six-sided where they broke cleanly; their edges go down in steps."""
    ring = geometry.clockwise(
        fitted(
            cornered(
                "-.46 -.06; -.22 -.40; .22 -.40, .26 -.37, .34 -.34; .47 -.02; .38 .10, "
                ".36 .16, .30 .22; .20 .40; -.10 .38, -.18 .40; -.30 .36",
                5,
            ),
            n,
        )
    )
    sheets = (
        "-.42 .0, -.30 .24, -.12 .24, -.08 .28, .16 .28, .26 .10, .29 .12, .38 -.04, .22 -.32",
        "-.36 .02, -.26 .17, -.02 .17, .0 .14, .12 .15, .22 -.04, .20 -.08, .28 -.22",
        "-.31 .0, -.22 .11, -.10 .09, .04 .09, .14 -.08, .10 -.12",
    )
    edges = [
        pen.line(run, (1.0, 1.6, 1.6, 1.0), "edges")
        for one in sheets
        for run in geometry.runs(geometry.spaced(geometry.scaled(pts(one), n), 0.02 * n), lambda p: geometry.inside(ring, p))
    ]
    cracks = [geometry.scaled(pts(one), n) for one in ("-.20 -.30, -.02 .01", "-.10 -.14, .16 -.14", "-.14 -.20, -.26 .0")]
    return Sketch(
        (
            pen.stroke(ring, 0.9, "outline", closed=True),
            *edges,
            pen.strokes(cracks, 0.6, "cracks", role="faint"),
        ),
        pen_for(n, n),
    )


def _stack(n: float) -> Sketch:
    """Many leaves stood apart like a bellows, as of vermiculite."""
    ends = []
    for k in range(15):
        y, lean = (k / 14 - 0.5) * n, 0.10 * n * sin(0.9 * k)
        ends.append(
            ((-0.26 * n + 0.5 * lean, y * 0.94 + 0.03 * n * sin(2.1 * k)), (0.26 * n + 0.5 * lean, y * 0.94 + 0.03 * n * cos(1.7 * k)))
        )
    by = n / (max(max(a[1], b[1]) for a, b in ends) - min(min(a[1], b[1]) for a, b in ends))
    sheets = [geometry.scaled(one, by) for one in ends]
    rims = [[s[k] for s in sheets] for k in (0, 1)]
    return Sketch(
        (
            *(pen.line(r, (1.0, 1.8), "outline") for r in rims),
            pen.strokes(sheets, 1.1, "edges"),
            pen.stroke(sheets[0], 1.6, "outline"),
            pen.stroke(sheets[-1], 1.6, "outline"),
        ),
        pen_for(0.8 * n, n),
    )


def _bubble_walls(n: float) -> Sketch:
    """A clear three-armed shard that was the wall between bubbles, as of volcanic glass."""
    ring = geometry.curve(
        pts(
            "0 -.5, .05 -.44, .07 -.16, .16 0, .46 .22, .44 .3, .36 .3, .12 .16, 0 .14, "
            "-.12 .16, -.36 .3, -.44 .3, -.46 .22, -.16 0, -.07 -.16, -.05 -.44"
        ),
        closed=True,
    )
    edge = geometry.clockwise(fitted(ring, n))
    return Sketch((pen.contour(edge, 1.3, 2.3, "outline"), pen.ring(0.0, 0.03 * n, 0.035 * n, 0.8, "bubble")), pen_for(n, n))


def _chip(n: float) -> Sketch:
    """A sharp clear chip with straight and shell-like broken sides."""
    ring = geometry.clockwise(fitted(list(pts("-.1 -.5, .3 -.2, .22 .4, .02 .5, -.34 .18")), n))
    shell = [geometry.arc(0.22 * n, 0.30 * n, r * n, 1.02 * pi, 1.55 * pi, count=16) for r in (0.16, 0.26, 0.36)]
    inside = [run for one in shell for run in geometry.runs(one, lambda p: geometry.inside(ring, p))]
    return Sketch((pen.contour(ring, 1.5, 2.5, "outline"), pen.strokes(inside, 0.8, "edges")), pen_for(n, n))


_CRYSTALS: dict[str, Callable[[float], Sketch]] = {
    "box": _box,
    "slanted-box": _slanted_box,
    "blade": _blade,
    "coffin-lid": _coffin_lid,
    "spiky-ball": _spiky_ball,
}
_FLAKES: dict[str, Callable[[float], Sketch]] = {"steps": _steps, "stack": _stack, "bubble-walls": _bubble_walls, "chip": _chip}

CRYSTAL = Kind(
    "crystal",
    "a crystal by its faces",
    (
        choice("form", tuple(_CRYSTALS), "box; slanted box; twin blade; lid of a coffin; ball of points"),
        um("size", 30, 1, 2000, "longest measure"),
        choice("before", ("none", "same", "smaller"), "the outline it had a while before, as a broken line"),
        accent("body", "faces", "before"),
    ),
    crystal,
)
FLAKE = Kind(
    "flake",
    "a mineral flake or shard",
    (
        choice("form", tuple(_FLAKES), "flake with steps; stack of leaves; three-armed glass shard; sharp chip"),
        um("size", 60, 1, 3000, "longest measure"),
        accent("body", "edges"),
    ),
    flake,
)
