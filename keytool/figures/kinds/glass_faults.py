"""Faults that lie on glass or under it: a veil on the objective, dirt on the coverslip, air shut in by the water."""

from __future__ import annotations

from math import cos, hypot, pi, sin

from .. import geometry, pen
from ..shapes import Box, Shape
from .points import pts


def smear(r: float) -> list[Shape]:
    """A smear on the objective: a veil over the whole field; what lies in it is blurred to broad pale lines."""
    veil = pen.stipple(
        Box(-r, -r, 2 * r, 2 * r), lambda p: 0.75 if hypot(*p) < 0.97 * r else 0.0, 0.062 * r, "fault", sizes=(0.9, 1.3), role="faint"
    )
    worm = geometry.curve(geometry.scaled(pts("-.52 -.42, -.3 -.2, -.34 .1, -.06 .3, .2 .2, .42 .42"), r), per=10)
    blurred = [pen.line(geometry.offset(worm, [d * r] * len(worm)), (5.0, w, 4.0), "blurred", role="faint") for d, w in ((0.0, 11.0),)]
    halo = [pen.ring(0.42 * r, -0.36 * r, s * r, w, "blurred", role="faint") for s, w in ((0.07, 5.0), (0.13, 3.0))]
    return [*veil, *blurred, *halo]


def dirt(r: float) -> list[Shape]:
    """Dirt on the glass, a little out of focus: specks of all sizes, the ridges of a finger, the ring of a dried drop."""
    out: list[Shape] = []
    for k in range(7):  # the ridges of a finger
        arch = geometry.arc(0.36 * r, 0.52 * r, (0.14 + 0.085 * k) * r, 1.05 * pi + 0.05 * k, 1.85 * pi - 0.05 * k, count=30)
        runs = geometry.runs(arch, lambda p, k=k: hypot(*p) < 0.94 * r and sin(31 * p[0] / r + 2.0 * k) > -0.75)  # type: ignore[misc]
        out += [pen.stroke(run, 1.7, "fault", role="faint") for run in runs]
    for k in range(24):
        a, d = 2.39996 * k, 0.9 * ((k + 0.5) / 24) ** 0.5
        x, y, s = d * cos(a) * r, d * sin(a) * r, (0.012 + 0.022 * ((k * 0.618) % 1)) * r
        speck = pen.wobble(geometry.ellipse(x, y, s, 0.75 * s, turn=k, count=40), 0.2 * s, 2, k)
        out.append(pen.filled(speck, "fault"))
    return [
        *out,
        pen.ring(-0.46 * r, -0.40 * r, 0.25 * r, 2.2, "fault", role="faint"),
        pen.ring(-0.46 * r, -0.40 * r, 0.20 * r, 0.8, "fault", role="faint"),
    ]


def air_patch(r: float) -> list[Shape]:
    """Air under the coverslip: a thick black edge that closes, lobed, round a bright empty patch; life outside it only."""
    knots = pts("-.5 -.42, -.2 -.56, .02 -.4, .26 -.5, .52 -.3, .46 -.04, .6 .22, .36 .46, .1 .36, -.12 .54, -.42 .42, -.38 .14, -.6 -.06")
    edge = geometry.clockwise(geometry.curve(geometry.scaled(knots, r), closed=True, per=8))
    inner = geometry.offset(edge, [0.075 * r] * len(edge), closed=True)
    specks = [
        (-0.72, -0.46, 0.028),
        (0.10, -0.74, 0.024),
        (0.76, -0.16, 0.03),
        (0.62, 0.58, 0.022),
        (-0.08, 0.80, 0.028),
        (-0.78, 0.28, 0.024),
    ]
    return [
        pen.contour(edge, 4.5, 6.5, "fault"),
        pen.stroke(inner, 0.6, "fault", closed=True, role="faint"),
        *(pen.ring(x * r, y * r, s * r, 1.0, "life") for x, y, s in specks),
    ]
