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
        pts(
            ".02 0, .14 .02, .27 .12, .35 .28, .37 .48, .32 .70, .20 .90, .11 1, .04 .97, -.10 .86, -.22 .68, -.27 .48, -.24 .30, "
            "-.17 .18, -.08 .08"
        ),
        0.80 * n,
    )
    shell = geometry.moved(shell, 0.0, 0.20 * n)
    head = geometry.clockwise(
        geometry.curve(
            geometry.scaled(
                pts(
                    ".15 .24, .04 .30, -.08 .33, -.17 .345, -.235 .38, -.250 .345, -.215 .28, -.245 .19, "
                    "-.225 .09, -.14 .015, -.03 0, .08 .05, .15 .14"
                ),
                n,
            ),
            closed=True,
            per=8,
        )
    )
    # Whatever lies in the shell is seen through it, so the two edges cross nothing: the head ends where the shell begins.
    head_free = geometry.runs((*head, head[0]), lambda p: not geometry.inside(shell, p))
    shell_free = geometry.runs((*shell, shell[0]), lambda p: not geometry.inside(head, p))
    gut = geometry.curve(geometry.scaled(pts("-.17 .29, -.10 .22, .01 .24, .09 .34, .13 .50, .10 .68, .02 .82, -.05 .86"), n), per=8)
    lines = [geometry.offset(gut, [s * 0.026 * n] * len(gut)) for s in (-1, 1)]
    out: list[Shape] = [
        *(pen.line(run, (1.6, 2.4, 2.0), "outline") for run in shell_free),
        *(pen.line(run, (1.6, 1.9, 1.6), "outline") for run in head_free),
        *(pen.line(one, (0.9,), "gut") for one in lines),
        pen.strokes([(lines[0][k], lines[1][k - 1]) for k in range(14, len(gut), 2)], 0.8, "gut"),
        pen.ring(-0.155 * n, 0.125 * n, 0.062 * n, 0.8, "eye"),
        pen.disc(-0.155 * n, 0.125 * n, 0.046 * n, "eye"),
        pen.disc(-0.180 * n, 0.250 * n, 0.011 * n, "eye"),
    ]
    for path, hairs in (
        ("-.03 .26, -.16 .40, -.34 .46, -.50 .44", (0.45, 0.62, 0.78, 0.98)),
        ("-.16 .40, -.30 .54, -.42 .60, -.53 .62", (0.5, 0.75, 0.98)),
    ):
        arm = geometry.curve(geometry.scaled(pts(path), n), per=8)
        out.append(pen.line(arm, (3.6, 2.4, 1.4), "feelers"))
        for t in hairs:
            x, y = geometry.walked(arm, t)
            out.append(pen.line(((x, y), (x - 0.10 * n, y + 0.10 * n)), (1.1, 0.5), "feelers"))
    for k in range(5):
        x, y = -0.04 + 0.005 * k, 0.50 + 0.072 * k
        limb = geometry.curve(geometry.scaled([(x + 0.04, y - 0.03), (x - 0.06, y - 0.01), (x - 0.13 + 0.012 * k, y + 0.05)], n), per=6)
        out += [
            pen.line(limb, (1.6, 1.4, 0.8), "legs"),
            pen.strokes([(p, (p[0] - 0.022 * n, p[1] + 0.040 * n)) for p in limb[3::2]], 0.6, "legs"),
        ]
    out += [
        pen.contour(geometry.ellipse(x * n, y * n, 0.062 * n, 0.076 * n, count=40), 0.9, 1.6, "eggs")
        for x, y in ((0.205, 0.47), (0.200, 0.64))
    ]
    claw = geometry.curve(geometry.scaled(pts("-.02 .84, -.08 .89, -.15 .875, -.18 .83, -.205 .79"), n), per=6)
    spine = ((0.095, 0.985), (0.13, 1.09), (0.175, 1.19))
    return Sketch(
        (*out, pen.line(claw, (2.4, 1.8, 0.8), "legs"), pen.line(geometry.scaled(spine, n), (2.6, 1.6, 0.6), "spine")),
        pen_for(0.95 * n, 1.2 * n),
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
