"""Flagellates and swarm cells that swim with flagella in front or at the side."""

from __future__ import annotations

from ... import geometry, pen
from ..cell_parts import vacuole
from ..points import pts
from .parts import Drawn, body, even, grain, nucleus, plastid, wave, whip


def green_egg(n: float) -> Drawn:
    """A green egg: one cup-shaped plastid, a red dot at its side, two equal flagella in front."""
    edge = body(even(pts(".09 .01, .24 .13, .345 .4, .345 .64, .25 .88, .1 .985")), n)
    skin = geometry.offset(edge, [0.035 * n] * len(edge), closed=True)
    cup = [p for p in skin if p[1] > 0.26 * n]
    hollow = geometry.curve(geometry.scaled(pts("-.24 .26, -.18 .42, 0 .53, .18 .42, .24 .26"), n), per=8)
    left = min(range(len(cup)), key=lambda k: cup[k][1] + (10 * n if cup[k][0] < 0 else 0))
    ring = (*cup[left:], *cup[:left], *hollow)
    whips = [
        geometry.curve(
            geometry.scaled(
                [(s * 0.02, 0.0), (s * 0.12, -0.20), (s * 0.36, -0.30), (s * 0.56, -0.12), (s * 0.62, 0.18), (s * 0.56, 0.42)], n
            ),
            per=8,
        )
        for s in (-1, 1)
    ]
    return (
        [
            pen.contour(edge, 1.2, 2.2, "outline"),
            *plastid(ring, n),
            pen.ring(0, 0.72 * n, 0.085 * n, 1.0, "plastid"),
            *(pen.line(w, (1.3, 0.8), "flagella") for w in whips),
            pen.disc(0.25 * n, 0.36 * n, 0.035 * n, "eyespot"),
            vacuole(-0.04 * n, 0.10 * n, 0.03 * n),
            vacuole(0.04 * n, 0.10 * n, 0.03 * n),
            *nucleus(0, 0.38, 0.085, n),
        ],
        1.15,
        1.7,
    )


def equal(n: float) -> Drawn:
    """A clear pear with two equal flagella in front."""
    edge = body(even(pts(".07 .02, .15 .16, .25 .42, .29 .66, .21 .9, .09 .985")), n)
    whips = [
        geometry.curve(geometry.scaled([(s * 0.02, 0.01), (s * 0.10, -0.30), (s * 0.28 + 0.03, -0.62), (s * 0.30, -0.95)], n), per=8)
        for s in (-1, 1)
    ]
    return (
        [
            pen.contour(edge, 1.1, 2.1, "outline"),
            *(pen.line(w, (1.3, 0.8), "flagella") for w in whips),
            *nucleus(0.0, 0.26, 0.09, n),
            vacuole(0.03 * n, 0.82 * n, 0.08 * n),
            *grain(edge, n, 0.05, (0, 0.26, 0.10), (0.03, 0.82, 0.09)),
        ],
        0.75,
        2.0,
    )


def hollow_side(n: float) -> Drawn:
    """A bean whose two flagella leave the hollow of its side, one ahead and one behind (a swimming spore)."""
    edge = body(
        pts(".02 0, .17 .06, .28 .26, .3 .52, .24 .8, .09 .98, -.06 .96, -.13 .8, -.09 .6, -.06 .48, -.09 .34, -.14 .16, -.08 .03"), n
    )
    groove = geometry.curve(geometry.scaled([(-0.03, 0.16), (0.05, 0.36), (0.06, 0.58), (-0.01, 0.82)], n), per=8)
    return (
        [
            pen.contour(edge, 1.1, 2.1, "outline"),
            pen.line(groove, (0.5, 1.1, 0.5), "groove"),
            wave((-0.05, 0.44), (-0.34, -0.62), n, 0.09, 1.3),
            whip(pts("-.05 .5, -.3 .66, -.36 1, -.22 1.28, .06 1.4, .36 1.32"), n),
            *nucleus(0.15, 0.44, 0.08, n),
            *grain(edge, n, 0.055, (0.15, 0.44, 0.09)),
        ],
        0.8,
        2.05,
    )


def two_ahead_unequal(n: float) -> Drawn:
    """The plain form of a swarm cell: a soft pear with one long flagellum in front and a short one bent back along it."""
    edge = body(pts("0 0, .07 .07, .14 .3, .24 .56, .24 .8, .12 .97, -.06 .99, -.2 .86, -.23 .62, -.14 .32, -.07 .08"), n)
    return (
        [
            pen.contour(edge, 1.1, 2.1, "outline"),
            wave((0.0, 0.0), (-0.06, -1.0), n, 0.10, 1.3),
            whip([(0.01, 0.01), (0.13, 0.06), (0.22, 0.24), (0.27, 0.36)], n, (1.2, 0.8)),
            *nucleus(0.0, 0.20, 0.07, n),
            vacuole(0.02 * n, 0.80 * n, 0.10 * n),
            *grain(edge, n, 0.055, (0, 0.20, 0.08), (0.02, 0.80, 0.11)),
        ],
        0.75,
        2.1,
    )
