"""Mineral grains as they lie: the broken chip, the block with right angles, worn sand, the speck of silt, and a mixed lot."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import cos, hypot, pi, sin
from random import Random

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape
from .dots import fitted
from .points import cornered, pts
from .together import shifted


def _within(n: float, by: float, ring: Points, lines: Sequence[Points]) -> list[Points]:
    """Lines given in shares of the grain, cut off at its edge."""
    return [run for one in lines for run in geometry.runs(geometry.scaled(one, by), lambda p: geometry.inside(ring, p))]


def _set(n: float, outline: str) -> tuple[Points, float]:
    """The outline in µm, its longest measure exactly `n`, and µm per share."""
    raw = cornered(outline)
    ring = geometry.clockwise(fitted(raw, n))
    return ring, geometry.around(ring).width / geometry.around(raw).width


def _ribs(x: float, y: float, radii: Sequence[float], start: float, stop: float, squash: float = 1.0) -> list[Points]:
    """The ripples of a shell-like break: arcs about the place that was struck."""
    return [tuple((x + px, y + squash * py) for px, py in geometry.arc(0, 0, r, start * pi, stop * pi, count=18)) for r in radii]


def _bright_line(ring: Points, n: float, inset: float = 0.035) -> list[Shape]:
    """The light line just inside the dark edge, broken where the edge is thin."""
    inner = geometry.offset(ring, [inset * n] * len(ring), closed=True)
    third = len(inner) // 5
    return [pen.stroke(inner[k : k + third - 3], 0.6, "rim", role="faint") for k in range(0, 4 * third, third)]


def _faces(lines: Sequence[Points], weights: tuple[float, ...] = (0.4, 1.2, 0.4)) -> list[Shape]:
    return [pen.line(one, weights, "faces") for one in lines if len(one) > 1]


def _shade(ring: Points, n: float, pen_um: float, near: float = 0.13, most: float = 0.75) -> list[Shape]:
    """Stipple that thickens toward the edge on the shaded side, where a thick grain throws the light away."""
    inner = geometry.offset(ring, [near * n] * len(ring), closed=True)

    def dense(p: Point) -> float:
        lit = (0.6 * p[0] + 0.8 * p[1]) / n
        return 0.0 if geometry.inside(inner, p) else max(0.0, most * (0.35 + 1.6 * lit))

    return list(pen.grain(ring, 2.4 * pen_um, "shade", dense, sizes=(0.8, 1.1)))


def chip(n: float) -> Sketch:
    """A clear angular chip that broke like glass: a hollow shell-like scar with its ripples, steps, one straight side."""
    ring, by = _set(
        n, "-.44 -.02, -.40 -.20; -.22 -.40, -.04 -.33, .10 -.36; .34 -.30; .47 -.02, .38 .10, .36 .24; .12 .40; -.20 .34, -.30 .20"
    )
    pen_um = pen_for(n, 0.85 * n)
    scar = [*_ribs(0.36, -0.33, (0.16, 0.235, 0.31, 0.40), 0.50, 1.02), *_ribs(-0.22, 0.37, (0.13, 0.20), 1.12, 1.90, 0.9)]
    ridge = (pts("-.40 -.20, -.20 -.12, -.06 .02"), pts("-.06 .02, .10 .16, .36 .24"), pts("-.06 .02, -.16 .16, -.20 .34"))
    return Sketch(
        (
            pen.contour(ring, 1.5, 2.8, "outline"),
            *_bright_line(ring, n),
            *_faces(_within(n, by, ring, scar), (0.3, 1.1, 0.3)),
            *_faces(_within(n, by, ring, [geometry.curve(one, per=6) for one in ridge]), (1.0, 1.3, 0.7)),
            *_shade(ring, n, pen_um),
        ),
        pen_um,
    )


def block(n: float) -> Sketch:
    """A block that split along planes at right angles: stepped ends, a few straight lines across it, cloudy in one part."""
    ring, by = _set(
        n, "-.42 -.14; -.30 -.17; -.27 -.25; .14 -.33; .17 -.26; .40 -.31; .47 .06; .38 .08; .40 .19; .02 .27; .01 .21; -.34 .29"
    )
    pen_um = pen_for(n, 0.65 * n)
    lines = (
        pts("-.27 -.25, -.22 .06"),
        pts("-.36 .06, .32 -.08"),
        pts(".17 -.26, .24 .10"),
        pts("-.14 .02, -.11 .23"),
        pts(".31 -.08, .38 .08"),
    )
    cloudy = geometry.scaled(pts("-.19 .06, .22 -.03, .25 .16, -.08 .22"), by)
    return Sketch(
        (
            pen.contour(ring, 1.5, 2.7, "outline"),
            *_bright_line(ring, n, 0.03),
            *(pen.stroke(one, 0.9, "faces") for one in _within(n, by, ring, lines)),
            *pen.grain(cloudy, 3.0 * pen_um, "cloud", lambda p: 0.55, sizes=(0.7, 0.9)),
        ),
        pen_um,
    )


def sand(n: float) -> Sketch:
    """A grain with its corners worn off: one fresh scar, strings of tiny bubbles through it, a dark edge."""
    ring, by = _set(
        n, "-.46 .04, -.42 -.16, -.24 -.33, .02 -.38, .24 -.34; .40 -.22, .47 -.02, .44 .14, .28 .30, .02 .37, -.24 .33, -.40 .20"
    )
    pen_um = pen_for(n, 0.8 * n)
    scar = _within(n, by, ring, _ribs(0.36, -0.32, (0.14, 0.21, 0.29), 0.42, 1.10))
    chance, strings = Random("bubbles"), []
    for line in (pts("-.28 -.10, -.06 .02, .16 .08, .28 .06"), pts("-.20 .18, .0 .16, .14 .20")):
        for p in geometry.spaced(geometry.curve(geometry.scaled(line, by), per=10), 0.026 * n):
            strings.append(
                (p[0] + chance.uniform(-0.012, 0.012) * n, p[1] + chance.uniform(-0.012, 0.012) * n, chance.uniform(0.004, 0.008) * n)
            )
    return Sketch(
        (
            pen.contour(ring, 2.0, 3.6, "outline"),
            *_bright_line(ring, n, 0.045),
            *_faces(scar, (0.3, 1.1, 0.3)),
            *(pen.ring(x, y, r, 0.6, "bubbles") for x, y, r in strings),
            *_shade(ring, n, pen_um, 0.16),
        ),
        pen_um,
    )


def worn(n: float) -> Sketch:
    """A coarse grain rolled round: a broad dark edge, a frosted skin with crescent nicks, a rusty crack."""
    ring, by = _set(n, "-.45 .10, -.46 -.10, -.32 -.30, -.08 -.40, .18 -.39, .38 -.24, .47 .0, .42 .22, .22 .36, -.04 .40, -.30 .32")
    pen_um = pen_for(n, 0.85 * n)
    nicks = [
        geometry.arc(x * by, y * by, 0.035 * n, a * pi, (a + 0.75) * pi, count=8)
        for x, y, a in (
            (-0.22, -0.18, 0.9), (0.0, -0.26, 1.2), (0.20, -0.20, 0.6), (-0.30, 0.04, 1.4), (-0.08, -0.04, 0.2), (0.14, 0.0, 1.0),
            (0.32, 0.02, 1.7), (-0.18, 0.18, 0.5), (0.04, 0.18, 1.3), (0.24, 0.18, 0.1), (-0.02, 0.30, 0.8),
        )
    ]  # fmt: skip
    crack = _within(n, by, ring, [geometry.curve(pts("-.40 -.22, -.26 -.06, -.16 .04, .02 .08, .14 .20, .20 .40"), per=8)])

    def frosted(p: Point) -> float:
        out = hypot(p[0], 1.15 * p[1]) / (0.47 * n)
        return 0.10 + 0.75 * max(0.0, out - 0.62) / 0.38 + (0.18 if 0.6 * p[0] + 0.8 * p[1] > 0.12 * n else 0.0)

    return Sketch(
        (
            pen.contour(ring, 2.8, 5.0, "outline"),
            *(pen.line(one, (0.3, 1.2, 0.3), "nicks") for one in nicks),
            *(pen.line(one, (0.4, 1.0, 0.4), "crack") for one in crack),
            *pen.grain(ring, 2.3 * pen_um, "shade", frosted, sizes=(0.8, 1.2)),
        ),
        pen_um,
    )


def silt(n: float) -> Sketch:
    """A splinter of silt: sharp corners, one hollow break, one step; nothing else shows at this size."""
    ring, by = _set(n, "-.47 .10; -.28 -.22; .06 -.30, .16 -.21, .30 -.20; .47 -.06; .34 .20, .16 .16, .0 .24; -.20 .30")
    pen_um = pen_for(n, 0.65 * n)
    step = _within(n, by, ring, [geometry.curve(pts("-.28 -.22, -.10 -.08, .12 .0, .34 .20"), per=8), pts("-.10 -.08, -.20 .30")])
    return Sketch((pen.contour(ring, 1.8, 3.0, "outline"), *_bright_line(ring, n, 0.05), *_faces(step, (1.1, 0.9, 0.4))), pen_um)


def fine_silt(n: float) -> Sketch:
    """So small a grain is a bright patch in a dark line: corners a little rounded by the lens, no face to be seen."""
    ring, _ = _set(n, "-.40 .02, -.30 -.24, -.08 -.34, .20 -.30, .38 -.12, .42 .12, .22 .30, -.06 .28, -.30 .24")
    inner = geometry.offset(ring, [0.10 * n] * len(ring), closed=True)
    outer = geometry.offset(ring, [-0.09 * n] * len(ring), closed=True)
    return Sketch(
        (
            pen.contour(ring, 4.4, 6.4, "outline"),
            pen.stroke(inner, 0.6, "rim", role="faint", closed=True),
            *(pen.stroke(outer[k : k + 7], 0.6, "halo", role="faint") for k in range(0, len(outer) - 7, 9)),
        ),
        pen_for(1.2 * n, n),
    )


def lot(n: float) -> Sketch:
    """What the lot is made of, side by side: a clear chip, a ragged brown crumb, a splinter of plant wall."""
    first = chip(0.60 * n)
    shapes: list[Shape] = list(shifted(first.shapes, -0.18 * n, -0.20 * n))
    base = geometry.ellipse(0, 0, 0.20 * n, 0.155 * n, count=140)
    crumb = geometry.clockwise(pen.wobble(pen.wobble(base, 0.026 * n, 4, "crumb"), 0.012 * n, 15, "fringe"))
    crumb = geometry.moved(crumb, 0.27 * n, 0.13 * n)
    chance = Random("crumb")
    lumps = [(0.27 + chance.uniform(-0.15, 0.15), 0.13 + chance.uniform(-0.1, 0.1)) for _ in range(5)]

    def thick(p: Point) -> float:
        return 0.30 + 0.6 * max(0.0, 1 - min(hypot(p[0] / n - x, p[1] / n - y) for x, y in lumps) / 0.09)

    shapes += [
        pen.filled(crumb, "crumb", role="brown"),
        pen.contour(crumb, 0.7, 1.3, "crumb"),
        *pen.grain(crumb, 0.020 * n, "crumb", thick, sizes=(0.9, 1.5)),
    ]
    splinter = geometry.scaled(pts("-.46 .20, -.30 .17, -.02 .36, .07 .37, .02 .42, -.05 .41, -.10 .46, -.36 .28, -.41 .29"), n)
    walls = [geometry.scaled(pts(one), n) for one in ("-.41 .225, -.03 .405", "-.36 .20, .0 .385")]
    across = [geometry.scaled(pts(one), n) for one in ("-.335 .185, -.37 .275", "-.22 .235, -.25 .345", "-.11 .305, -.145 .42")]
    shapes += [
        pen.stroke(splinter, 1.5, "splinter", closed=True),
        pen.strokes(walls, 0.7, "splinter"),
        pen.strokes(across, 0.9, "splinter"),
    ]
    return Sketch(tuple(shapes), pen_for(n, n))


def measured(sketch: Sketch, n: float) -> Sketch:
    """The grain with the measure that settles its class: its narrower side, between two jaws."""
    ring = next(shape for shape in sketch.shapes if shape.part == "outline").points  # type: ignore[union-attr]
    lean = min((k * pi / 90 for k in range(90)), key=lambda a: _breadth(ring, a))
    c, s = cos(lean), sin(lean)
    across = [x * c + y * s for x, y in ring]
    low, high = min(across), max(across)
    along = max(x * -s + y * c for x, y in ring) + 0.10 * n
    jaws: list[Points] = []
    for u in (low, high):
        jaws.append(tuple((u * c - v * s, u * s + v * c) for v in (along - 0.05 * n, along + 0.05 * n)))
    jaws.append(tuple((u * c - along * s, u * s + along * c) for u in (low, high)))
    return Sketch((*sketch.shapes, pen.strokes(jaws, 1.6, "measure")), sketch.pen_um, sketch.tonal)


def _breadth(ring: Points, lean: float) -> float:
    across = [x * cos(lean) + y * sin(lean) for x, y in ring]
    return max(across) - min(across)


FORMS: dict[str, Callable[[float], Sketch]] = {
    "chip": chip,
    "block": block,
    "sand": sand,
    "worn": worn,
    "silt": silt,
    "fine-silt": fine_silt,
    "lot": lot,
}
"""Each by the word of `form` that asks for it."""
