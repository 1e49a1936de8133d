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
    """A stiff helmet with few hairs and spines behind."""
    edge = skin(
        pts(
            "0 0, .18 .03, .31 .16, .35 .36, .345 .46, .36 .52, .24 .545, .12 .6, .085 .74, .045 .9, .02 1, -.01 .92, "
            "-.05 .76, -.12 .64, -.26 .62, -.4 .66, -.335 .52, -.34 .34, -.29 .15, -.17 .03"
        ),
        n,
    )
    pen_um = pen_for(0.95 * n, 1.1 * n)
    belt = geometry.curve(geometry.scaled([(-0.335, 0.40), (-0.15, 0.47), (0.10, 0.46), (0.35, 0.38)], n), per=8)
    tufts = [
        (p, (p[0] + 0.05, p[1] + 0.07))
        for p in (geometry.walked([(-0.33, 0.42), (-0.15, 0.49), (0.10, 0.48), (0.33, 0.40)], k / 11) for k in range(12))
    ]
    crest = [((x, y), (x * 1.2, y - 0.06)) for x, y in ((-0.20, 0.06), (-0.14, 0.03), (-0.08, 0.015))]
    ridges = [geometry.curve(geometry.scaled([(x * 0.4, 0.02), (x, 0.20), (x * 1.1, 0.44)], n), per=8) for x in (-0.20, 0.0, 0.20)]
    return Sketch(
        (
            pen.contour(edge, 1.6, 2.6, "outline"),
            pen.line(belt, (1.0, 1.6, 1.0), "mouth"),
            *hair_lines(tufts, n, (1.2, 0.6), "cilia"),
            *hair_lines(crest, n, (1.2, 0.6), "cilia"),
            pen.strokes(ridges, 0.6, "ridges"),
            *macro(0.05, 0.28, 0.09, 0.07, n, pen_um),
            vacuole(0.03 * n, 0.66 * n, 0.05 * n),
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
