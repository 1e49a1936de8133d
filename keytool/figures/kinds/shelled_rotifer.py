"""A rotifer in a stiff clear shell, from above."""

from __future__ import annotations

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Shape
from .kind import Kind, Values, accent, choice, flag, num, um, word
from .points import pts


def build(v: Values) -> Sketch:
    """The rotifer, crown at the top, foot below."""
    n, soft = num(v, "length"), word(v, "skin") == "soft"
    half = pts(
        ".15 0, .165 .08, .23 .24, .3 .5, .27 .74, .15 .94, .1 1" if soft else ".17 0, .26 .1, .34 .32, .365 .56, .3 .82, .15 .985, .1 1"
    )
    edge = geometry.clockwise(geometry.tall(geometry.curve([*half, *reversed(geometry.mirrored(half))], closed=True), n))
    crown = geometry.curve(geometry.scaled(pts("-.16 .02, -.2 -.08, -.1 -.12, 0 -.1, .1 -.12, .2 -.08, .16 .02"), n), per=8)
    lashes = [(p, (1.25 * p[0], p[1] - 0.075 * n)) for p in crown[6:-6:3]]
    out: list[Shape] = [
        pen.contour(edge, *((0.9, 1.6) if soft else (1.6, 2.6)), "shell"),
        pen.line(crown, (1.2,), "crown"),
        pen.strokes(lashes, 0.7, "crown"),
    ]
    out += [pen.contour(geometry.ellipse(0, 0.22 * n, 0.10 * n, 0.10 * n, count=48), 0.9, 1.3, "mastax")]
    for s in (-1, 1):
        plate = geometry.curve(geometry.scaled([(s * 0.012, 0.16), (s * 0.060, 0.22), (s * 0.012, 0.285)], n), per=8)
        out.append(pen.line(plate, (1.2, 2.2, 1.2), "mastax"))
        foot = geometry.scaled([(s * 0.055, 0.995), (s * 0.045, 1.14), (s * 0.035, 1.24)], n)
        toe = geometry.scaled([(s * 0.025, 1.24), (s * 0.055, 1.42)], n)
        out += [pen.line(foot, (1.3, 1.1), "foot"), pen.line(toe, (2.0, 0.6), "foot")]
        if v["spines"]:
            out.append(pen.line(geometry.scaled([(s * 0.24, 0.03), (s * 0.27, -0.16)], n), (2.4, 0.6), "spines"))
            out.append(pen.line(geometry.scaled([(s * 0.20, 0.95), (s * 0.26, 1.13)], n), (2.4, 0.6), "spines"))
    if soft:  # shallow creases where the skin shortens
        creases = [
            geometry.curve(geometry.scaled(pts(one), n), per=8)
            for one in ("-.165 .12, 0 .145, .165 .12", "-.275 .66, 0 .69, .275 .66", "-.18 .9, 0 .925, .18 .9")
        ]
        out += [pen.line(crease, (0.4, 0.8, 0.4), "folds") for crease in creases]
    rings = [geometry.scaled([(-0.05, y), (0.05, y)], n) for y in (1.06, 1.15)]
    gut = geometry.ellipse(0.02 * n, 0.52 * n, 0.16 * n, 0.14 * n, count=48)
    egg = geometry.ellipse(-0.06 * n, 0.78 * n, 0.12 * n, 0.11 * n, count=48)
    pen_um = pen_for(0.9 * n, 1.6 * n)
    return Sketch(
        (
            *out,
            pen.strokes(rings, 0.8, "foot"),
            pen.stroke(gut, 0.7, "gut", closed=True),
            *pen.grain(gut, 2.8 * pen_um, "gut"),
            pen.stroke(egg, 0.7, "ovary", closed=True),
            pen.disc(0.0, 0.10 * n, 0.018 * n, "eye"),
        ),
        pen_um,
    )


KIND = Kind(
    "shelled-rotifer",
    "a rotifer that does not telescope: in a stiff clear shell, or soft",
    (
        um("length", 120, 40, 800, "length of the shell"),
        choice("skin", ("shell", "soft"), "a stiff shell, or a soft skin with shallow creases"),
        flag("spines", "spines at the corners of the shell"),
        accent("shell", "crown", "mastax", "foot", "spines"),
    ),
    build,
)
