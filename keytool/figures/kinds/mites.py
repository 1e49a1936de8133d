"""Mites of other builds, from above: armoured, with shields, and the six-legged larva."""

from __future__ import annotations

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape
from .limbs import leg
from .points import pts


def _edge(half: Points, n: float) -> Points:
    return geometry.clockwise(
        geometry.tall(geometry.curve([(0.0, 0.0), *half, (0.0, 1.0), *reversed(geometry.mirrored(half))], closed=True), n)
    )


def _legs(paths: tuple[Points, ...], n: float, thick: float, edge: Points) -> list[Shape]:
    out: list[Shape] = []
    for path in paths:
        joints: list[Point] = list(geometry.scaled(path, n))
        out += leg(joints, thick * n, edge, "legs") + leg(list(geometry.mirrored(joints)), thick * n, edge, "legs")
    return out


def beetle_mite(n: float) -> Sketch:
    """A hard, glossy, nearly globular mite with a pointed front shield, two club hairs and shortish legs."""
    edge = _edge(pts(".06 .01, .14 .1, .21 .24, .30 .33, .37 .5, .37 .72, .28 .91, .13 .99"), n)
    suture = geometry.curve(geometry.scaled(pts("-.285 .315, -.15 .28, 0 .27, .15 .28, .285 .315"), n), per=8)
    clubs = [geometry.scaled(((s * 0.17, 0.25), (s * 0.27, 0.17)), n) for s in (-1, 1)]
    gloss = geometry.curve(geometry.scaled(pts("-.24 .52, -.2 .42, -.12 .36, -.04 .34, -.12 .4"), n), per=8)
    legs = (
        pts(".14 .12, .24 .04, .33 -.04, .37 -.14"),
        pts(".22 .25, .34 .19, .44 .12, .51 .03"),
        pts(".34 .56, .45 .58, .53 .66, .58 .76"),
        pts(".34 .70, .44 .78, .5 .9, .53 1.02"),
    )
    hairs = [
        geometry.scaled(((s * x, y), (s * (x + 0.05), y + 0.05)), n)
        for s in (-1, 1)
        for x, y in ((0.12, 0.44), (0.20, 0.60), (0.12, 0.76), (0.20, 0.88))
    ]
    pen_um = pen_for(1.2 * n, 1.2 * n)
    shade = pen.grain(
        geometry.offset(edge, [0.03 * n] * len(edge), closed=True),
        2.6 * pen_um,
        "shade",
        lambda p: 0.15 + max(0.0, (p[0] + p[1] - 0.45 * n) / (0.9 * n)),
    )
    return Sketch(
        (
            *_legs(legs, n, 0.066, edge),
            pen.contour(edge, 2.2, 3.4, "outline"),
            pen.line(suture, (1.0, 1.8, 1.0), "shields"),
            *(pen.line(c, (1.0, 1.4), "hairs") for c in clubs),
            *(pen.disc(*c[1], 0.020 * n, "hairs", ry=0.028 * n) for c in clubs),
            pen.strokes(hairs, 0.7, "hairs"),
            pen.line(gloss, (0.4, 1.2, 0.4), "gleam", role="faint"),
            *shade,
        ),
        pen_um,
    )


def shield_mite(n: float) -> Sketch:
    """An oval mite with tan shields and paler skin between, long first legs held forward like feelers."""
    edge = _edge(pts(".09 .02, .2 .12, .28 .32, .305 .55, .26 .8, .13 .97"), n)
    shields = [
        geometry.curve(geometry.scaled(pts("0 .05, .13 .1, .21 .26, .22 .46, 0 .5, -.22 .46, -.21 .26, -.13 .1"), n), closed=True),
        geometry.curve(geometry.scaled(pts("0 .55, .22 .53, .22 .68, .14 .86, 0 .93, -.14 .86, -.22 .68, -.22 .53"), n), closed=True),
    ]
    mouth = [geometry.scaled(((s * 0.03, 0.02), (s * 0.05, -0.07), (s * 0.015, -0.10)), n) for s in (-1, 1)]
    legs = (
        pts(".1 .06, .17 -.1, .22 -.28, .24 -.44"),
        pts(".19 .16, .33 .06, .45 -.02, .53 -.14"),
        pts(".28 .5, .42 .56, .52 .68, .57 .84"),
        pts(".26 .64, .38 .8, .44 .98, .46 1.16"),
    )
    hairs = [
        geometry.scaled(((s * x, y), (s * (x + 0.03), y + 0.07)), n)
        for s in (-1, 1)
        for x, y in ((0.08, 0.22), (0.14, 0.36), (0.08, 0.66), (0.13, 0.76), (0.05, 0.84))
    ]
    pen_um = pen_for(1.2 * n, 1.7 * n)
    return Sketch(
        (
            *_legs(legs, n, 0.060, edge),
            *(pen.line(m, (1.6, 1.0), "jaws") for m in mouth),
            pen.contour(edge, 1.3, 2.3, "outline"),
            *(pen.stroke(s, 1.3, "shields", closed=True) for s in shields),
            *pen.grain(edge, 3.0 * pen_um, "shields", lambda p: 0.5 * any(geometry.inside(s, p) for s in shields)),
            pen.strokes(hairs, 0.7, "hairs"),
        ),
        pen_um,
    )


def larva(n: float) -> Sketch:
    """A mite larva: like the grown mite, with its snout, but with three pairs of legs."""
    edge = _edge(pts(".08 .03, .18 .14, .27 .34, .29 .6, .22 .86, .1 .98"), n)
    legs = (pts(".13 .12, .22 .03, .3 -.1, .34 -.22"), pts(".22 .26, .36 .22, .48 .15, .56 .05"), pts(".27 .6, .4 .68, .48 .82, .52 .98"))
    hairs = [
        geometry.scaled(((s * x, y), (s * (x + 0.07), y + 0.07)), n)
        for s in (-1, 1)
        for x, y in ((0.10, 0.30), (0.14, 0.55), (0.12, 0.80), (0.05, 0.97))
    ]
    snout = geometry.curve(geometry.scaled(pts(".075 .045, .06 -.03, .02 -.075, 0 -.078"), n), per=6)
    fold = geometry.curve(geometry.scaled(pts("-.235 .30, 0 .35, .235 .30"), n), per=8)
    pen_um = pen_for(1.15 * n, 1.3 * n)
    return Sketch(
        (
            *_legs(legs, n, 0.085, edge),
            pen.contour(edge, 1.2, 2.3, "outline"),
            *(pen.line(s, (1.4, 1.0), "snout") for s in (snout, geometry.mirrored(snout))),
            pen.line(fold, (0.6, 1.1, 0.6), "folds"),
            pen.strokes(hairs, 0.7, "hairs"),
        ),
        pen_um,
    )
