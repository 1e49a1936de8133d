"""Crustaceans in a shell, from the side: the water flea and the seed shrimp."""

from __future__ import annotations

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Points, Shape
from .points import pts


def _tall(points: Points, n: float) -> Points:
    return geometry.clockwise(geometry.tall(geometry.curve(points, closed=True, per=8), n))


def water_flea(n: float) -> Sketch:
    """The head stands out of the shell: one large dark eye, a beak, two branched feelers for rowing; a gut that bends; eggs in the back."""
    shell = _tall(
        pts("-.02 .22, .12 .16, .27 .22, .37 .42, .38 .64, .28 .86, .12 .97, .06 1, -.02 .95, -.16 .8, -.25 .6, -.25 .42, -.16 .28"),
        0.84 * n,
    )
    shell = geometry.moved(shell, 0.0, 0.16 * n)
    head = geometry.clockwise(
        geometry.curve(
            geometry.scaled(pts("-.02 .26, -.14 .3, -.22 .26, -.27 .2, -.24 .1, -.14 .01, -.03 0, .08 .07, .13 .18, .1 .26"), n),
            closed=True,
        )
    )
    head_free = geometry.runs((*head, head[0]), lambda p: not geometry.inside(shell, p))
    gut = geometry.curve(geometry.scaled(pts("-.18 .22, -.06 .2, .06 .28, .13 .46, .1 .68, .0 .84, -.07 .86"), n), per=8)
    out: list[Shape] = [pen.contour(shell, 1.2, 2.2, "outline"), *(pen.line(r, (1.6,), "outline") for r in head_free)]
    out += [pen.line(geometry.offset(gut, [s * 0.028 * n] * len(gut)), (0.9,), "gut") for s in (-1, 1)]
    out += [pen.disc(-0.155 * n, 0.115 * n, 0.045 * n, "eye"), pen.ring(-0.155 * n, 0.115 * n, 0.058 * n, 0.7, "eye")]
    for lean in (0.0, 0.10):
        arm = geometry.scaled([(-0.03, 0.22), (-0.20, 0.34 + lean), (-0.40, 0.34 + 1.6 * lean)], n)
        out.append(pen.line(geometry.curve(arm, per=8), (3.0, 1.4), "feelers"))
        out += [
            pen.line(geometry.scaled([(x, 0.34 + 1.4 * lean), (x - 0.12, 0.44 + 1.6 * lean)], n), (1.0, 0.5), "feelers")
            for x in (-0.26, -0.33, -0.40)
        ]
    for k in range(4):
        x, y = -0.15 + 0.015 * k, 0.48 + 0.09 * k
        limb = geometry.curve(geometry.scaled([(x + 0.10, y - 0.02), (x, y + 0.02), (x - 0.03, y + 0.07)], n), per=6)
        out += [
            pen.line(limb, (1.8, 0.8), "legs"),
            pen.strokes([(p, (p[0] - 0.035 * n, p[1] + 0.03 * n)) for p in limb[3::3]], 0.6, "legs"),
        ]
    out += [pen.contour(geometry.ellipse(0.24 * n, y * n, 0.062 * n, 0.075 * n, count=40), 0.9, 1.4, "eggs") for y in (0.46, 0.63)]
    claw = geometry.curve(geometry.scaled(pts(".0 .84, -.12 .9, -.2 .86, -.22 .8, -.24 .78"), n), per=6)
    return Sketch(
        (*out, pen.line(claw, (2.0, 1.4, 0.9), "legs"), pen.line(geometry.scaled(((0.06, 0.995), (0.10, 1.14)), n), (2.0, 0.6), "spine")),
        pen_for(0.95 * n, 1.15 * n),
    )


def seed_shrimp(n: float) -> Sketch:
    """A bean-shaped shell of two halves shut round the whole animal; limbs peep out at the hollow side."""
    edge = _tall(
        pts(
            "-.02 0, .12 .03, .26 .16, .32 .38, .31 .6, .22 .85, .06 .99, -.1 .97, -.19 .84, -.2 .64, -.15 .5, -.19 .34, -.22 .18, -.14 .04"
        ),
        n,
    )
    rim = geometry.offset(edge, [0.03 * n] * len(edge), closed=True)
    out: list[Shape] = [
        pen.contour(edge, 1.6, 2.8, "outline"),
        pen.stroke(rim, 0.6, "outline", closed=True),
        pen.disc(-0.07 * n, 0.20 * n, 0.026 * n, "eye"),
    ]
    scars = [
        pen.ring((0.04 + 0.035 * x) * n, (0.46 + 0.035 * y) * n, 0.015 * n, 0.8, "scars")
        for x, y in ((0, 0), (1, 0.4), (-1, 0.6), (0.2, 1.3), (1.2, 1.6))
    ]
    for x, y, tip in (
        (-0.19, 0.14, (-0.40, 0.02)),
        (-0.21, 0.24, (-0.42, 0.20)),
        (-0.16, 0.46, (-0.34, 0.52)),
        (-0.18, 0.62, (-0.33, 0.74)),
        (-0.18, 0.84, (-0.30, 0.98)),
    ):
        limb = geometry.curve(geometry.scaled([(x, y), ((x + tip[0]) / 2, (y + tip[1]) / 2 - 0.03), tip], n), per=6)
        out += [
            pen.line(limb, (2.2, 0.8), "legs"),
            *(pen.line((limb[-1], (limb[-1][0] - 0.06 * n, limb[-1][1] + s * 0.04 * n)), (0.9, 0.5), "legs") for s in (-1, 0, 1)),
        ]
    hairs = [
        (p, (p[0] + q[0] * -0.035 * n, p[1] + q[1] * -0.035 * n))
        for p, q in list(zip(edge, geometry.normals(edge, closed=True), strict=True))[::5]
    ]
    return Sketch((pen.strokes(hairs, 0.5, "hairs"), *out, *scars), pen_for(0.85 * n, n))
