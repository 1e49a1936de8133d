"""Twisted and helmeted ciliates, and the bell on a stiff stalk."""

from __future__ import annotations

from ... import geometry, pen
from ...frame import Sketch, pen_for
from ..cell_parts import vacuole
from ..ciliates import bell
from ..points import pts
from .parts import fringe, hair_lines, hair_rows, macro, skin, swelling


def twist(n: float) -> Sketch:
    """The front hangs twisted over the body like a scarf, dark dots in it; long hairs at the tail."""
    edge = skin(
        pts(
            "-.12 0, 0 0, .14 .035, .255 .12, .32 .25, .345 .37, .31 .425, .25 .42, .2 .445, .195 .56, .17 .74, .1 .92, 0 1, "
            "-.1 .92, -.17 .74, -.185 .55, -.195 .4, -.2 .3, -.245 .22, -.265 .14, -.21 .05"
        ),
        n,
    )
    pen_um = pen_for(0.78 * n, 1.42 * n)
    groove = pts("-.255 .18, -.12 .19, .03 .255, .18 .345, .31 .42")
    under = pts("-.205 .26, -.09 .285, .03 .35, .12 .425, .19 .51")
    dots = [
        pen.disc(x * n, y * n, 0.014 * n, "dots")
        for x, y in pts("-.08 .06, -.03 .09, -.1 .11, .03 .07, .02 .13, -.05 .14, .09 .12, .08 .18")
    ]
    zone = [(p, (p[0] + 0.012, p[1] + 0.055)) for p in (geometry.walked(under, k / 16) for k in range(17))]
    tails = [((x, 0.96 + 0.25 * (0.06 - abs(x))), (x * 2.6 + 0.02, 1.30 - abs(x))) for x in (-0.07, -0.035, 0.0, 0.035, 0.07)]
    return Sketch(
        (
            pen.contour(edge, 1.1, 2.0, "outline"),
            fringe(edge, n, 0.042, 0.022, lambda p: p[1] < 0.93),
            swelling(groove, n, (0.8, 2.0, 1.2), "twist"),
            swelling(under, n, (0.5, 1.0, 0.6), "twist"),
            pen.strokes([geometry.scaled(z, n) for z in zone], 0.7, "cilia"),
            *dots,
            *hair_lines(tails, n, (1.3, 0.6), "tail-hairs"),
            *macro(-0.03, 0.55, 0.08, 0.12, n, pen_um),
            vacuole(0.0, 0.90 * n, 0.055 * n),
            hair_rows([[(-0.10, 0.36), (-0.10, 0.60), (-0.04, 0.90)], [(0.08, 0.46), (0.10, 0.66), (0.05, 0.88)]], n),
        ),
        pen_um,
    )


def helmet(n: float) -> Sketch:
    """A stiff helmet: a bare ribbed bell, a belt of hairs along its slanting rim, a short thorn at the rim, one long spine behind."""
    edge = skin(
        pts(
            "-.02 0, .11 .02, .22 .09, .29 .20, .32 .33, .33 .42, .375 .475, .30 .480, .19 .500, .11 .56, .07 .66, .045 .80, .02 .95, "
            ".005 1, -.015 .95, -.045 .80, -.075 .67, -.13 .595, -.23 .575, -.36 .640, -.345 .54, -.33 .42, -.31 .28, -.25 .14, -.15 .04"
        ),
        n,
    )
    pen_um = pen_for(0.95 * n, 1.1 * n)
    belt = geometry.curve(geometry.scaled(pts("-.338 .44, -.20 .475, .0 .450, .20 .385, .327 .30"), n), per=10)
    under = geometry.curve(geometry.scaled(pts("-.345 .50, -.20 .530, .0 .505, .20 .440, .34 .365"), n), per=10)
    band = [(geometry.walked(belt, k / 19), geometry.walked(under, k / 19)) for k in range(20)]
    hairs = [(b, (b[0] + 0.018 * n, b[1] + 0.075 * n)) for _, b in band]
    crest = [((x, y), (x - 0.035, y - 0.085)) for x, y in ((-0.17, 0.045), (-0.12, 0.020), (-0.07, 0.005))]
    ribs = [
        geometry.curve(geometry.scaled(one, n), per=8) for one in (pts("-.10 .03, -.17 .20, -.19 .44"), pts(".08 .03, .16 .20, .19 .36"))
    ]

    def shade(p: tuple[float, float]) -> float:
        return max(0.0, 2.6 * p[0] / n - 0.2)

    bell = geometry.curve(geometry.scaled(pts("0 .04, .14 .07, .24 .19, .28 .30, .12 .38, 0 .42"), n), closed=True, per=8)
    return Sketch(
        (
            pen.contour(edge, 1.6, 2.6, "outline"),
            pen.line(belt, (1.2, 1.5, 1.2), "mouth"),
            pen.line(under, (0.9, 1.2, 0.9), "mouth"),
            pen.strokes([(a, b) for a, b in band], 0.8, "cilia"),
            *(pen.line(one, (1.2, 0.6), "cilia") for one in hairs),
            *hair_lines(crest, n, (1.3, 0.6), "cilia"),
            pen.strokes(ribs, 0.6, "ridges", role="faint"),
            *pen.grain(bell, 3.0 * pen_um, "shade", shade),
            *macro(-0.03, 0.26, 0.10, 0.075, n, pen_um, 0.2),
            vacuole(0.0, 0.66 * n, 0.045 * n),
        ),
        pen_um,
    )


def stiff_stalk(n: float) -> Sketch:
    """A bell on a stalk that does not coil: straight, even, hollow to look at."""
    whole = bell(n)
    foot = 1.95 * n
    lines = [((s * 0.032 * n, 0.995 * n), (s * 0.032 * n, foot)) for s in (-1, 1)]
    kept = tuple(s for s in whole.shapes if s.part != "stalk")
    return Sketch((*kept, *(pen.line(one, (1.3, 1.2), "stalk") for one in lines)), whole.pen_um)
