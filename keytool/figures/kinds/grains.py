"""Lifeless bits: mineral grains and crumbs of organic matter."""

from __future__ import annotations

from collections.abc import Callable
from math import hypot
from random import Random

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape
from . import clumps, grain_forms
from .dots import fitted
from .kind import Kind, Values, accent, choice, flag, num, um, word
from .points import pts, rough


def grain(v: Values) -> Sketch:
    """A mineral grain of the form asked for, and where asked the measure of its narrower side."""
    size = num(v, "size")
    sketch = grain_forms.FORMS[word(v, "form")](size)
    return grain_forms.measured(sketch, size) if v["measure"] else sketch


def crumb(v: Values) -> Sketch:
    """A crumb or clump of the kind asked for."""
    return _CRUMBS[word(v, "form")](num(v, "size"))


def _ragged(size: float, salt: str) -> Points:
    """The outline of a crumb: lumps, bits and a fine fringe, no straight edge."""
    base = geometry.ellipse(0, 0, 0.5 * size, 0.40 * size, count=240)
    lumpy = pen.wobble(pen.wobble(base, 0.055 * size, 3, ("lumps", salt)), 0.030 * size, 9, ("bits", salt))
    return geometry.clockwise(fitted(rough(lumpy, 0.022 * size, 0.011 * size, salt), size))


def _brown(size: float) -> Sketch:
    """A crumb of dead organic matter: brown, thin and clear at the rim, bits of cell wall and grit in it, threads running out."""
    ring = _ragged(size, "humus")
    pen_um = pen_for(size, 0.9 * size)
    chance = Random("humus")
    lumps = [(chance.uniform(-0.32, 0.32) * size, chance.uniform(-0.24, 0.24) * size, chance.uniform(0.07, 0.13) * size) for _ in range(11)]

    def dense(p: Point) -> float:
        return max(0.10, *(1.0 - hypot(p[0] - x, p[1] - y) / r for x, y, r in lumps))

    scrap = geometry.moved(
        geometry.scaled(pts("-.12 -.06, .13 -.075, .12 .0, .14 .06, -.10 .07"), size), -0.20 * size, -0.10 * size, turn=0.75
    )
    walls = [
        geometry.moved(geometry.scaled(pts(one), size), -0.20 * size, -0.10 * size, turn=0.75)
        for one in ("-.11 .0, .12 -.005", "-.05 -.065, -.045 .0", ".03 -.07, .03 .0", "-.01 .0, -.01 .065", ".07 .0, .075 .06")
    ]
    grit = [
        geometry.moved(geometry.scaled(pts("-.5 -.2, .1 -.5, .5 -.05, .2 .45, -.35 .35"), r * size), x * size, y * size, turn=9 * x)
        for x, y, r in ((0.14, 0.02, 0.10), (0.25, 0.12, 0.055), (0.05, -0.22, 0.06), (-0.20, 0.20, 0.045), (0.02, 0.20, 0.07))
    ]
    ways = (
        "-.36 -.10, -.46 -.20, -.50 -.32, -.62 -.38",
        ".30 -.20, .42 -.28, .46 -.40, .58 -.44",
        ".34 .12, .46 .20, .60 .20, .66 .28",
        "-.16 .30, -.22 .42, -.36 .46",
    )
    strands: list[Shape] = []
    for way in ways:
        line = geometry.curve(geometry.scaled(pts(way), size), per=8)
        for side in (-1, 1):
            strands.append(pen.stroke(geometry.offset(line, [side * 0.008 * size] * len(line)), 0.8, "strands"))
    return Sketch(
        (
            pen.filled(ring, "fill", role="brown"),
            pen.stroke(ring, 0.9, "outline", closed=True),
            *pen.grain(ring, 2.6 * pen_um, "shade", dense, sizes=(1.2, 2.0)),
            *strands,
            pen.filled(scrap, "bits", role="paper"),
            pen.stroke(scrap, 1.1, "bits", closed=True),
            pen.strokes(walls, 0.8, "bits"),
            *(shape for one in grit for shape in (pen.filled(one, "bits", role="paper"), pen.stroke(one, 1.2, "bits", closed=True))),
        ),
        pen_um,
        tonal=True,
    )


def _matt(size: float) -> Sketch:
    """A matt brown crumb with nothing in it to tell it by: no cells, no threads, no grit; thick and dark in lumps, lighter at the rim."""
    base = geometry.ellipse(0, 0, 0.5 * size, 0.42 * size, count=240)
    lumpy = pen.wobble(pen.wobble(base, 0.050 * size, 4, "matt"), 0.028 * size, 7, "matt lumps")
    ring = geometry.clockwise(fitted(rough(lumpy, 0.030 * size, 0.006 * size, "matt"), size))
    pen_um = pen_for(size, 0.9 * size)
    chance = Random("matt")
    lumps = [(chance.uniform(-0.26, 0.26) * size, chance.uniform(-0.2, 0.2) * size, chance.uniform(0.14, 0.22) * size) for _ in range(7)]

    def dense(p: Point) -> float:
        return max(0.15, *(1.1 - hypot(p[0] - x, p[1] - y) / r for x, y, r in lumps))

    return Sketch(
        (
            pen.filled(ring, "fill", role="brown"),
            pen.stroke(ring, 0.8, "outline", closed=True),
            *pen.grain(ring, 2.1 * pen_um, "shade", dense, sizes=(1.1, 1.7)),
        ),
        pen_um,
        tonal=True,
    )


GRAIN = Kind(
    "grain",
    "a mineral grain: a broken chip, a block, worn sand, silt, or a lot of grit of several kinds",
    (
        um("size", 60, 1, 3000, "longest measure"),
        choice(
            "form",
            tuple(grain_forms.FORMS),
            "chip with shell-like breaks; block split at right angles; sand with worn corners; coarse sand rolled round; "
            "splinter of silt; grain too small to show a face; a chip, a crumb and a splinter side by side",
        ),
        flag("measure", "the narrower side between two jaws, as it is measured"),
        accent("body", "faces", "measure"),
    ),
    grain,
)


_CRUMBS: dict[str, Callable[[float], Sketch]] = {
    "brown": _brown,
    "matt": _matt,
    "gritty": clumps.gritty,
    "jelly": clumps.jelly,
    "pith": clumps.pith,
}

CRUMB = Kind(
    "crumb",
    "a crumb or clump without a wall: brown and ragged, matt, gritty, or a clear jelly",
    (
        um("size", 150, 5, 5000, "longest measure"),
        choice(
            "form",
            tuple(_CRUMBS),
            "brown and ragged with bits and threads; matt brown without anything in "
            "it; mineral bits in clay; clear jelly full of dots; sponge of pith cells",
        ),
        accent("body", "strands", "bits", "dots", "cells"),
    ),
    crumb,
)
