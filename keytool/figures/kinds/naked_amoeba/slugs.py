"""Amoebae with one front: slugs, fans, folded bags, small plain cells."""

from __future__ import annotations

from collections.abc import Callable
from math import hypot, sin

from ... import geometry, pen
from ...frame import Sketch, pen_for
from ...shapes import Point, Points, Shape
from .. import tube
from ..cell_parts import clear_of, nucleus, vacuole
from ..points import pts
from .parts import insides, outline_of

_SLUG = pts("0 0, .06 .015, .09 .06, .097 .14, .088 .34, .094 .56, .088 .78, .083 .9, .062 .965, .03 1, .005 .985")
_SLUG += pts("-.03 .998, -.055 .975, -.082 .91, -.09 .7, -.086 .5, -.096 .3, -.098 .13, -.088 .05, -.055 .012")


def slug(n: float) -> Sketch:
    """A steady slug like a small worm: even sides, one blunt clear front, a plain rear."""
    edge, pen_um = outline_of(_SLUG, n), pen_for(0.24 * n, n)
    inside = insides(edge, n, (0, 0.40, 0.042), (0.0, 0.85, 0.040), lambda p: p[1] < 0.10, pen_um)
    cap = geometry.curve(geometry.scaled([(-0.093, 0.115), (0, 0.085), (0.093, 0.115)], n), per=8)
    walk = (*edge[len(edge) // 2 :], *edge[: len(edge) // 2])  # so that neither end of the slug is parted
    ends = [
        pen.line(run, (1.4, 1.8, 1.4), part, inset=1.0)
        for part, way in (("pseudopods", edge), ("rear", walk))
        for run in geometry.runs((*way, way[0]), lambda p, front=part == "pseudopods": p[1] < 0.11 * n if front else p[1] > 0.90 * n)  # type: ignore[misc]
    ]
    return Sketch((pen.contour(edge, 1.1, 2.0, "outline"), *ends, pen.stroke(cap, 0.5, "cap", role="faint"), *inside), pen_um)


def _slug_edge(n: float, wide: float, bend: float) -> tuple[Points, Callable[[float], float], Points]:
    """The axis of a slug `n` long, half its width along it, and its edge."""
    line = tube.axis(n, lambda t: bend * sin(2.6 * t - 0.5))

    def half(t: float) -> float:
        tapered = 0.5 * wide * n * (1 - 0.28 * max(0.0, t - 0.55) / 0.45) * (1 + 0.05 * sin(11 * t))
        return tapered * tube.round_ends(t, 0.55 * wide, 0.30 * wide)

    return line, half, tube.ring(line, half)


def _worm(tall: float, wide: float, bend: float, cap: float) -> Sketch:
    """A slug in a gentle bend, `tall` from front to rear: even sides, a clear cap over `cap` of its length, a rear that tapers a little."""
    n = tall * tall / geometry.around(_slug_edge(tall, wide, bend)[2]).height
    line, half, ring = _slug_edge(n, wide, bend)
    edge, pen_um = geometry.clockwise(ring), pen_for(0.35 * n, n)
    spots = [(*tube.place(line, t)[:2], r * wide * n) for t, r in ((0.42, 0.24), (0.84, 0.22))]
    free = clear_of(*spots)
    plasm = tube.ring(line, lambda t: 0.80 * half(t) if t > cap else 0.0)
    tips = geometry.runs(
        (*edge[len(edge) // 2 :], *edge[: len(edge) // 2 + 1]), lambda p: hypot(p[0] - line[0][0], p[1] - line[0][1]) < 1.1 * cap * n
    )
    return Sketch(
        (
            pen.contour(edge, 1.1, 2.0, "outline"),
            *(pen.line(run, (1.3, 2.0, 1.3), "pseudopods", inset=1.0) for run in tips),
            pen.stroke(tube.across(line, half, cap, bow=-0.35, share=0.96), 0.6, "cap", role="faint"),
            *pen.grain(plasm, 2.5 * pen_um, "contents", lambda p: 1.5 * free(p), sizes=(0.8, 1.2)),
            *nucleus(*spots[0]),
            vacuole(*spots[1]),
        ),
        pen_um,
    )


def bent_slug(n: float) -> Sketch:
    """A steady slug on a turn, about five times as long as wide."""
    return _worm(n, 0.19, 0.42, 0.13)


def thin_slug(n: float) -> Sketch:
    """A thin slug, eight times as long as wide, hardly turning."""
    return _worm(n, 0.125, 0.16, 0.11)


def eruptive(n: float) -> Sketch:
    """A slug on whose front a clear half-ball has just burst out to one side; the last one, on the other side, is filling."""
    body = pts(".02 .16, .06 .19, .13 .29, .15 .4, .13 .55, .13 .7, .09 .86, .03 .96, .01 1")
    body += pts("-.035 .95, -.09 .88, -.13 .74, -.14 .56, -.15 .46, -.22 .42, -.255 .33, -.215 .235")
    body += pts("-.235 .17, -.21 .06, -.12 0, -.02 .03, .03 .11")
    edge, pen_um = outline_of(body, n), pen_for(0.48 * n, n)
    inside = insides(edge, n, (0.0, 0.47, 0.06), (0.0, 0.84, 0.055), lambda p: p[1] < 0.235 and p[0] < 0.04, pen_um)
    mouth = geometry.curve(geometry.scaled([(-0.21, 0.235), (-0.11, 0.20), (0.02, 0.165)], n), per=8)
    bulge = tuple(p for p in edge if p[1] < 0.232 * n and p[0] < 0.03 * n)
    start = max(range(len(bulge)), key=lambda k: hypot(bulge[k][0] - bulge[k - 1][0], bulge[k][1] - bulge[k - 1][1]))
    front = pen.line((*bulge[start:], *bulge[:start]), (1.1, 2.0, 1.4), "pseudopods")
    return Sketch((pen.contour(edge, 1.1, 2.0, "outline"), front, pen.stroke(mouth, 0.6, "cap", role="faint"), *inside), pen_um)


def knob_slug(n: float) -> Sketch:
    """A stout cylinder full of crystals, a round knob at its rear."""
    half = pts(".09 .01, .165 .07, .19 .2, .18 .42, .185 .64, .16 .79, .085 .865, .075 .89")
    half += pts(".105 .935, .07 .985")
    edge = outline_of([(0, 0), *half, (0, 1.0), *reversed(geometry.mirrored(half))], n)
    pen_um = pen_for(0.45 * n, n)
    inside = insides(edge, n, (0.02, 0.42, 0.07), (-0.05, 0.68, 0.065), lambda p: p[1] < 0.12, pen_um)
    crystals = []
    for k in range(34):
        x, y = 0.145 * (2 * ((k * 0.7549) % 1) - 1) * n, (0.17 + 0.62 * ((k * 0.5698) % 1)) * n
        if clear_of((0.02 * n, 0.42 * n, 0.08 * n), (-0.05 * n, 0.68 * n, 0.075 * n))((x, y)):
            s = 0.012 * n
            crystals.append(pen.stroke(((x, y - s), (x + s, y), (x, y + s), (x - s, y)), 0.8, "crystals", closed=True))
    knob = tuple(p for p in edge if p[1] > 0.885 * n)
    return Sketch((pen.contour(edge, 1.1, 2.0, "outline"), pen.line(knob, (1.4, 2.4, 1.4), "knob"), *inside, *crystals), pen_um)


def fan(n: float) -> Sketch:
    """A half-moon wider than long: clear front, grainy hump behind."""
    half = pts(".22 .005, .46 .07, .66 .22, .77 .42, .80 .60, .74 .70, .60 .72, .44 .755, .30 .85, .16 .955")
    edge = outline_of([(0, 0), *half, (0, 1.0), *reversed(geometry.mirrored(half))], n)
    pen_um = pen_for(1.6 * n, n)
    hump = geometry.curve(geometry.scaled(pts("-.56 .70, -.40 .56, -.20 .50, 0 .485, .20 .50, .40 .56, .56 .70"), n), per=8)

    def clear(p: Point) -> bool:
        return p[1] < 0.50 + 0.55 * p[0] ** 2

    inside = insides(edge, n, (0.05, 0.68, 0.075), (-0.12, 0.80, 0.060), clear, pen_um)
    return Sketch((pen.contour(edge, 1.0, 2.0, "outline"), pen.stroke(hump, 0.5, "hump", role="faint"), *inside), pen_um)


def wrinkled(n: float) -> Sketch:
    """A thick skin in lengthwise folds."""
    half = pts(".14 .02, .27 .12, .325 .3, .3 .44, .335 .6, .29 .8, .16 .95")
    left = pts("-.16 .95, -.31 .78, -.3 .6, -.34 .44, -.3 .28, -.25 .12, -.13 .03")
    edge, pen_um = outline_of([(0, 0), *half, (0, 1.0), *left], n), pen_for(0.72 * n, n)
    folds = []
    for x, y0, y1, bow in (
        (-0.20, 0.16, 0.86, -0.05),
        (-0.10, 0.10, 0.70, 0.03),
        (0.02, 0.13, 0.50, 0.02),
        (0.13, 0.12, 0.78, 0.05),
        (0.23, 0.30, 0.88, 0.03),
    ):
        fold = [(x * 0.7, y0), (x + bow, y0 + 0.3 * (y1 - y0)), (x - 0.3 * bow, y0 + 0.65 * (y1 - y0)), (x * 0.75, y1)]
        folds.append(pen.line(geometry.curve(geometry.scaled(fold, n), per=8), (0.4, 1.5, 0.5), "folds"))
    inside = insides(edge, n, (0.0, 0.62, 0.085), (0.05, 0.86, 0.055), lambda p: p[1] < 0.10, pen_um)
    skin = geometry.offset(edge, [0.022 * n] * len(edge), closed=True)
    return Sketch(
        (pen.contour(edge, 1.4, 2.4, "outline"), pen.stroke(skin, 0.5, "skin", closed=True, role="faint"), *folds, *inside), pen_um
    )


def _eaten(x: float, y: float, r: float) -> Shape:
    """Two eaten rods in their food ball."""
    return pen.strokes(
        (((x - r, y - 0.1 * r), (x + 0.1 * r, y - 0.6 * r)), ((x - 0.3 * r, y + 0.6 * r), (x + 0.8 * r, y + 0.2 * r))), 1.5, "food"
    )


def plain(n: float) -> Sketch:
    """A small plain cell: an uneven clear front that ends in a few short points, one stub at a side, a narrower rear, food balls."""
    edge = outline_of(
        pts(
            "-.02 .055, .03 .005, .06 0, .07 .035, .065 .075, .115 .075, .175 .045, .195 .055, .185 .095, .17 .14, .205 .19, .28 .205, "
            ".30 .225, .275 .25, .225 .27, .235 .34, .255 .42, .245 .52, .21 .62, .185 .74, .13 .86, .08 .955, .03 1, -.02 .985, "
            "-.07 .91, -.115 .80, -.17 .72, -.255 .675, -.30 .655, -.295 .625, -.245 .60, -.225 .52, -.235 .42, -.215 .30, "
            "-.18 .20, -.19 .13, -.215 .06, -.205 .04, -.17 .055, -.125 .10, -.075 .085"
        ),
        n,
    )
    pen_um = pen_for(0.62 * n, n)
    food = ((-0.11, 0.47, 0.050), (0.13, 0.50, 0.042), (-0.08, 0.64, 0.040))
    balls = [shape for x, y, r in food for shape in (pen.ring(x * n, y * n, r * n, 0.8, "food"), _eaten(x * n, y * n, 0.55 * r * n))]

    def clear(p: Point) -> bool:
        return p[1] < 0.27 - 0.10 * p[0] or any(hypot(p[0] - x, p[1] - y) < 1.2 * r for x, y, r in food)

    inside = insides(edge, n, (0.02, 0.38, 0.070), (0.05, 0.76, 0.068), clear, pen_um)
    return Sketch((pen.contour(edge, 1.0, 1.9, "outline"), *balls, *inside), pen_um)
