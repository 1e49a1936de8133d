"""Skins without an animal: a plate of insect or mite skin, a flake of human skin, a whole empty skin with legs."""

from __future__ import annotations

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape
from .dots import fitted
from .limbs import leg
from .points import pts


def plate_of_skin(n: float) -> Sketch:
    """A sharp-edged piece of hard skin: round sockets, some with their hair, a fine net in part of it, the rim of a joint."""
    ring = geometry.clockwise(
        fitted(
            pts("-.46 -.24, -.2 -.34, .02 -.3, .16 -.38, .34 -.3, .47 -.06, .34 .1, .4 .26, .14 .36, -.02 .28, -.2 .38, -.4 .22, -.34 .02"),
            n,
        )
    )
    rim = geometry.curve((ring[4], (ring[4][0] + 0.055 * n, ring[4][1] + 0.11 * n), ring[5]), per=8)
    sockets = geometry.scaled(pts("-.28 -.14, -.08 -.2, .14 -.22, -.2 .06, .02 -.02, .2 -.04, -.26 .22, .24 .18"), n)
    out: list[Shape] = [
        pen.stroke(ring, 1.4, "outline", closed=True),
        pen.line(rim, (2.4, 3.4, 2.4), "joint"),
        pen.stroke(geometry.moved(rim, -0.035 * n, 0.012 * n), 0.7, "joint"),
    ]
    for k, (x, y) in enumerate(sockets):
        out += [pen.ring(x, y, 0.021 * n, 1.5, "sockets"), pen.ring(x, y, 0.038 * n, 0.6, "sockets")]
        if k % 3 != 1:
            hair = geometry.curve([(x, y), (x + 0.02 * n, y - 0.10 * n), (x + 0.075 * n, y - 0.20 * n)], per=8)
            out.append(pen.line(hair, (2.0, 1.3, 0.5), "hairs"))
        else:
            out.append(pen.disc(x, y, 0.008 * n, "sockets"))
    return Sketch((*out, *_net(ring, sockets, n)), pen_for(n, 0.95 * n))


def _net(ring: Points, sockets: Points, n: float) -> list[Shape]:
    """A fine net of six-sided meshes over the lower left of the plate, clear of the sockets."""
    r = 0.032 * n
    meshes = []
    for row in range(-1, 9):
        for col in range(-10, 3):
            x, y = (col + 0.5 * (row % 2)) * 1.80 * r, row * 1.56 * r
            mesh = geometry.arc(x, y, r, 0.5236, 0.5236 + 6.2832, count=6)
            near = any((x - sx) ** 2 + (y - sy) ** 2 < (0.075 * n) ** 2 for sx, sy in sockets)
            if not near and x < 0.1 * n and all(geometry.inside(ring, p) for p in mesh):
                meshes.append(mesh)
    return [pen.strokes(meshes, 0.4, "net")]


def skin_flake(n: float) -> Sketch:
    """A thin, clear, flat flake with five or six corners, creased, a corner folded over; a second one lies half under it."""
    ring = geometry.clockwise(fitted(pts("-.3 -.4, .12 -.47, .44 -.2, .47 .16, .2 .42, -.16 .46, -.45 .14"), n))
    under = geometry.moved(
        geometry.scaled(pts("-.3 -.36, .2 -.42, .45 -.02, .2 .4, -.3 .36, -.46 0"), 0.62 * n), 0.42 * n, 0.42 * n, turn=0.3
    )
    fold = (ring[2], (0.27 * n, -0.08 * n), ring[3])
    lines = (
        "-.3 -.22, -.12 -.1, -.04 .06, -.1 .28",
        "-.02 -.36, .04 -.22, .16 -.12",
        "-.36 .1, -.24 .16, -.16 .26",
        ".0 .16, .12 .18, .26 .3",
    )
    creases = [geometry.curve(geometry.scaled(pts(one), n), per=8) for one in lines]
    return Sketch(
        (
            pen.stroke(ring, 1.0, "outline", closed=True),
            pen.line(fold, (0.9, 1.4, 0.9), "folds"),
            *(pen.line(crease, (0.3, 0.8, 0.3), "folds") for crease in creases),
            *(pen.stroke(run, 0.9, "under") for run in geometry.runs((*under, under[0]), lambda p: not geometry.inside(ring, p))),
            *pen.grain(ring, 0.075 * n, "grain", lambda p: 0.35, sizes=(0.7,)),
        ),
        pen_for(1.2 * n, 1.2 * n),
    )


def hollow_skin(n: float) -> Sketch:
    """The empty skin of a mite: split along the back, folded, the jointed legs still on it but slack and empty."""
    half = pts(".1 .02, .2 .16, .27 .38, .27 .62, .2 .84, .08 .97")
    edge = geometry.clockwise(
        geometry.tall(geometry.curve([(0.0, 0.0), *half, (0.0, 1.0), *reversed(geometry.mirrored(half))], closed=True), n)
    )
    right = (
        ".14 .12, .24 .0, .34 -.05, .42 .03",
        ".21 .26, .34 .2, .46 .24, .5 .36",
        ".25 .58, .38 .6, .46 .72, .42 .86",
        ".2 .74, .3 .84, .3 .98, .4 1.06",
    )
    left = (
        "-.14 .12, -.2 -.02, -.3 -.1, -.42 -.08",
        "-.21 .26, -.33 .16, -.46 .14, -.56 .22",
        "-.25 .58, -.38 .54, -.5 .6, -.54 .74",
        "-.2 .74, -.32 .78, -.4 .9, -.36 1.04",
    )
    legs = [shape for way in (*right, *left) for shape in leg(list(geometry.scaled(pts(way), n)), 0.080 * n, edge, "legs")]
    split = _gap(("0 .06, -.05 .22, -.02 .4, -.04 .56, .0 .68", "0 .06, .03 .2, .05 .38, .02 .55, .0 .68"), n)
    folds = [
        geometry.curve(geometry.scaled(pts(one), n), per=8)
        for one in ("-.2 .3, -.12 .37, -.14 .48", ".2 .46, .12 .56, .16 .7", "-.18 .72, -.06 .8, .08 .76", "-.1 .9, .0 .88, .1 .92")
    ]
    return Sketch(
        (
            *legs,
            pen.contour(edge, 0.9, 1.5, "outline"),
            *split,
            *(pen.line(fold, (0.4, 1.0, 0.4), "folds") for fold in folds),
        ),
        pen_for(1.15 * n, 1.25 * n),
    )


def _gap(sides: tuple[str, str], n: float) -> list[Shape]:
    """A tear with two lips."""
    lips: list[tuple[Point, ...]] = [geometry.curve(geometry.scaled(pts(side), n), per=8) for side in sides]
    return [pen.line(lips[0], (0.6, 1.2, 0.6), "split"), pen.line(lips[1], (0.6, 2.0, 0.6), "split")]
