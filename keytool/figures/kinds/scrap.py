"""Lifeless scraps with a build of their own: charcoal, plant tissue, droppings, dark nodules, polished grains."""

from __future__ import annotations

from collections.abc import Callable
from math import cos, pi, sin
from random import Random

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Points, Shape
from . import dark_grains, sclerotium, skins, small_scraps, tissue
from .dots import fitted
from .kind import Kind, Values, accent, choice, num, um, word
from .points import pts


def build(v: Values) -> Sketch:
    """The scrap."""
    return _FORMS[word(v, "form")](num(v, "size"))


def _charcoal(n: float) -> Sketch:
    """A black splinter: at its thin edge the cells of the wood show as rows of slots, the outermost torn open; the thick side is black."""
    comb = []
    for k in range(8):
        y = 0.34 - 0.086 * k
        teeth = ((-0.152 if k % 3 == 1 else -0.138, 0.0), (-0.126 if k % 2 else -0.118, 0.016), (-0.118, 0.06), (-0.136, 0.07))
        comb += [f"{x:.3f} {y - up:.3f}" for x, up in teeth]
    ring = geometry.clockwise(
        fitted(
            pts(
                "-.10 -.36, -.07 -.42, -.02 -.43, .02 -.50, .09 -.48, .12 -.38, .18 -.32, .17 -.06, .21 .12, .19 .30, .15 .38, "
                ".09 .41, .06 .49, -.01 .50, -.04 .43, -.10 .42, " + ", ".join(comb)
            ),
            n,
        )
    )
    pores: list[Points] = []
    for col, (x, wide) in enumerate(((-0.082, 0.016), (-0.040, 0.013), (-0.006, 0.009))):
        y = -0.33 + 0.02 * col
        while y < 0.34 - 0.05 * col:
            long = (0.030, 0.042, 0.024, 0.036)[round(100 * (y + 1) + col) % 4]
            slot = geometry.curve(
                [(x - wide, y + 0.008), (x, y), (x + wide, y + 0.008), (x + wide, y + long), (x, y + long + 0.008), (x - wide, y + long)],
                closed=True,
                per=4,
            )
            hole = geometry.scaled(slot, 0.97 * n)
            if all(geometry.inside(ring, p) for p in hole):
                pores.append(hole)
            y += long + 0.026
    rims = [pen.stroke(hole, 0.5, "pores", closed=True) for hole in pores]
    return Sketch((pen.holed(ring, pores, "outline"), *rims), pen_for(0.5 * n, n), tonal=True)


def _pellet(n: float) -> Sketch:
    """A neat oval packed from small mixed bits, without a wall."""
    edge = geometry.clockwise(pen.wobble(geometry.ellipse(0, 0, 0.33 * n, 0.5 * n, count=160), 0.008 * n, 9, "pellet"))
    box = geometry.around(edge)
    edge = tuple((x, y * n / box.height) for x, y in edge)
    chance = Random("pellet")
    bits: list[Shape] = []
    spots: list[tuple[float, float, float]] = []
    for r in (*([0.050] * 260), *([0.032] * 700), *([0.018] * 900)):
        x, y = chance.uniform(-0.34, 0.34), chance.uniform(-0.5, 0.5)
        if all((x - a) ** 2 + (y - b) ** 2 > (0.88 * (r + c)) ** 2 for a, b, c in spots) and geometry.inside(
            edge, (x * n * 1.08, y * n * 1.06)
        ):
            spots.append((x, y, r))
            count = chance.choice((3, 4, 5, 7))
            ring = [
                ((x + r * s * cos(a)) * n, (y + r * s * sin(a)) * n)
                for a, s in ((2 * pi * k / count + 9 * x, chance.uniform(0.5, 1.0)) for k in range(count))
            ]
            bits.append(pen.stroke(ring, 0.8, "bits", closed=True) if chance.random() < 0.7 else pen.filled(ring, "bits"))
    dashes = [edge[k : k + 7] for k in range(0, 154, 10)]
    return Sketch((pen.strokes(dashes, 1.0, "outline"), *bits), pen_for(0.8 * n, n))


def _worn(n: float) -> Sketch:
    """A clear rounded grain without wall or rings: worn sand or a silica body."""
    ring = geometry.clockwise(
        fitted(list(geometry.curve(pts("-.3 -.36, .05 -.45, .36 -.28, .45 .06, .28 .36, -.06 .4, -.38 .28, -.46 -.06"), closed=True)), n)
    )
    inner = geometry.offset(ring, [0.06 * n] * len(ring), closed=True)
    return Sketch(
        (
            pen.contour(ring, 2.0, 3.2, "outline"),
            pen.stroke(inner, 0.5, "rim", closed=True, role="faint"),
            pen.line(geometry.arc(0, 0, 0.28 * n, 1.1 * pi, 1.38 * pi), (0.5, 1.4, 0.5), "gleam", role="faint"),
        ),
        pen_for(n, n),
    )


def _cocoon(n: float) -> Sketch:
    """A tough lemon with soil grains stuck to it and milky eggs within."""
    half = pts(".07 0, .1 .05, .25 .17, .34 .42, .33 .62, .22 .84, .09 .95, .06 1")
    edge = geometry.clockwise(geometry.tall(geometry.curve([*half, *reversed(geometry.mirrored(half))], closed=True), n))
    out: list[Shape] = [
        pen.contour(edge, 1.6, 2.6, "outline"),
        pen.stroke(geometry.offset(edge, [0.035 * n] * len(edge), closed=True), 0.7, "wall", closed=True),
    ]
    for x, y, r in ((-0.06, 0.36, 0.15), (0.08, 0.63, 0.15)):
        egg = geometry.ellipse(x * n, y * n, 0.85 * r * n, r * n, count=48)
        out += [pen.contour(egg, 0.9, 1.5, "eggs"), *pen.grain(egg, 0.022 * n, "eggs", lambda p: 0.7)]
    walk = geometry.spaced((*edge, edge[0]), 0.10 * n)[:-1]
    for k, ((x, y), (nx, ny)) in enumerate(zip(walk, geometry.normals(walk, closed=True), strict=True)):
        s = n * (0.020 + 0.020 * ((k * 0.618) % 1))
        grain = geometry.moved(
            [(-s, -0.4 * s), (0.2 * s, -0.9 * s), (s, -0.1 * s), (0.4 * s, 0.8 * s), (-0.7 * s, 0.6 * s)],
            x - nx * 0.6 * s,
            y - ny * 0.6 * s,
            turn=2.0 * k,
        )
        out.append(pen.stroke(grain, 1.1, "soil", closed=True))
    return Sketch(tuple(out), pen_for(0.85 * n, n))


def _rhizoids(n: float) -> Sketch:
    """A ball from which fine branching threads spread and thin out; the size is that of the ball."""
    out: list[Shape] = [
        pen.contour(geometry.ellipse(0, 0, n / 2, n / 2, count=96), 1.3, 2.3, "outline"),
        *pen.grain(geometry.ellipse(0, 0, 0.42 * n, 0.42 * n), 0.045 * n, "contents", lambda p: 0.6),
    ]
    for k, a in enumerate((0.55, 1.15, 1.75, 2.4)):
        c, s = cos(a), sin(a)
        root = [(0.49 * n * c, 0.49 * n * s), (0.9 * n * c + 0.05 * n, 0.9 * n * s), (1.35 * n * c, 1.35 * n * s + 0.05 * n)]
        out.append(pen.line(geometry.curve(root, per=8), (2.4, 1.6, 1.0), "threads"))
        for j, lean in enumerate((-0.45, 0.4)):
            b = a + lean
            start = root[1] if j == k % 2 else root[2]
            tip = (start[0] + 0.5 * n * cos(b), start[1] + 0.5 * n * sin(b))
            mid = (start[0] + 0.28 * n * cos(b - 0.2), start[1] + 0.28 * n * sin(b - 0.2))
            out.append(pen.line(geometry.curve([start, mid, tip], per=6), (1.1, 0.4), "threads"))
            out.append(pen.line((mid, (mid[0] + 0.2 * n * cos(b + 0.6), mid[1] + 0.2 * n * sin(b + 0.6))), (0.7, 0.4), "threads"))
    return Sketch(tuple(out), pen_for(2.6 * n, 2.6 * n))


_FORMS: dict[str, Callable[[float], Sketch]] = {
    "charcoal": _charcoal,
    "plant": tissue.plant,
    "wood": tissue.wood,
    "pellet": _pellet,
    "nodule": dark_grains.nodule,
    "black-chip": dark_grains.black_chip,
    "ore": dark_grains.ore,
    "rusty": dark_grains.rusty,
    "sclerotium": sclerotium.sclerotium,
    "worn-grain": _worn,
    "cocoon": _cocoon,
    "rhizoid-ball": _rhizoids,
    "dumb-bell": small_scraps.dumb_bell,
    "insect-scale": small_scraps.scale,
    "moss-net": tissue.moss_net,
    "film": small_scraps.film,
    "soot": small_scraps.soot,
    "empty-skin": skins.hollow_skin,
    "skin-plate": skins.plate_of_skin,
    "skin-flake": skins.skin_flake,
}

KIND = Kind(
    "scrap",
    "a scrap or small body that is no animal: charcoal, plant tissue, a dropping, a nodule, a cocoon",
    (
        choice(
            "form",
            tuple(_FORMS),
            "black splinter with pores; torn plant tissue; tubes of wood; packed dropping; nodule; hard-edged black piece; "
            "grain of ore; rusty grain; ball of fungus cells; clear worn grain; cocoon with soil "
            "stuck to it; ball with spreading fine threads; dumb-bell of silica; insect scale; net of "
            "moss cells; torn film; soot; empty skin with legs; plate of hard skin; flake of human skin",
        ),
        um("size", 120, 2, 6000, "longest measure; of the ball with threads, the ball alone"),
        accent(
            "body", "pores", "cells", "hoops", "ridges", "legs", "pits", "vessel", "bits", "eggs", "soil", "threads", "sockets", "folds"
        ),
    ),
    build,
)
