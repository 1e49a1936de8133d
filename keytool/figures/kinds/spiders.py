"""Eight-legged hunters that are no mites, from above: the young spider, the false scorpion, and both together."""

from __future__ import annotations

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Points, Shape
from . import together, tube
from .limbs import leg
from .points import pts


def _ring(half: str, top: float, low: float, n: float) -> Points:
    side = pts(half)
    return geometry.clockwise(
        geometry.scaled(geometry.curve([(0.0, top), *side, (0.0, low), *reversed(geometry.mirrored(side))], closed=True), n)
    )


def _limbs(paths: tuple[str, ...], n: float, thick: float, body: Points, part: str) -> list[Shape]:
    out: list[Shape] = []
    for path in paths:
        joints = list(geometry.scaled(pts(path), n))
        out += leg(joints, thick * n, body, part) + leg(list(geometry.mirrored(joints)), thick * n, body, part)
    return out


def spider(n: float) -> Sketch:
    """A front body that bears eight long legs, a narrow waist, an egg-shaped hind body, eight eyes, two feelers."""
    return Sketch(tuple(_spider(n)), pen_for(1.9 * n, 1.9 * n))


def _spider(n: float) -> list[Shape]:
    front = _ring(".07 .005, .115 .06, .175 .18, .18 .29, .12 .38, .045 .412", 0.0, 0.415, n)
    hind = _ring(".05 .455, .15 .50, .225 .62, .225 .78, .14 .94, .04 .995", 0.45, 1.0, n)
    legs = (
        ".15 .12, .38 -.12, .55 -.44, .62 -.66",
        ".17 .19, .48 .04, .78 -.14, .92 -.30",
        ".17 .27, .44 .30, .66 .42, .78 .54",
        ".14 .33, .40 .56, .62 .92, .70 1.22",
    )
    waist = [pen.line(geometry.scaled(((s * 0.022, 0.405), (s * 0.020, 0.46)), n), (1.6,), "waist") for s in (-1, 1)]
    eyes = [(0.018, 0.035), (0.050, 0.042), (0.020, 0.068), (0.062, 0.075)]
    chevrons = [
        geometry.curve(geometry.scaled(((-w, y + 0.03), (0.0, y), (w, y + 0.03)), n), per=6)
        for w, y in ((0.09, 0.62), (0.11, 0.71), (0.09, 0.80))
    ]
    return [
        *_limbs(legs, n, 0.060, front, "legs"),
        *_limbs((".07 .02, .13 -.08, .16 -.18",), n, 0.045, front, "feelers"),
        *waist,
        pen.contour(front, 1.3, 2.2, "outline"),
        pen.contour(hind, 1.3, 2.4, "outline"),
        pen.stroke(geometry.scaled(((0.0, 0.24), (0.0, 0.31)), n), 0.9, "folds"),
        *(pen.disc(s * x * n, y * n, 0.010 * n, "eyes") for s in (-1, 1) for x, y in eyes),
        pen.strokes(chevrons, 0.7, "folds"),
        *pen.grain(geometry.offset(hind, [0.02 * n] * len(hind), closed=True), 0.030 * n, "shade", lambda p: max(0.1, (p[0] / n) * 2.4)),
    ]


def false_scorpion(n: float) -> Sketch:
    """A shield in front, a flat ringed hind body without waist or tail, and two long arms that end in pincers."""
    return Sketch(tuple(_false_scorpion(n)), pen_for(1.75 * n, 1.65 * n))


def _false_scorpion(n: float) -> list[Shape]:
    front = _ring(".05 .01, .10 .03, .135 .16, .155 .33, .08 .345", 0.0, 0.345, n)
    hind = _ring(".12 .35, .19 .42, .255 .60, .25 .78, .16 .93, .06 .99", 0.345, 1.0, n)
    rows = [0.345 + 0.0585 * k for k in range(1, 11)]
    bars = [
        run
        for y in rows
        for run in geometry.runs(
            [(0.01 * k * n, (y + 0.012 * (1 - (k / 26) ** 2)) * n) for k in range(-27, 28)], lambda p: geometry.inside(hind, p)
        )
    ]
    legs = (
        ".11 .14, .24 .05, .34 -.02, .41 -.10",
        ".13 .20, .28 .19, .40 .20, .49 .18",
        ".14 .26, .30 .36, .42 .48, .50 .56",
        ".14 .31, .28 .48, .38 .68, .44 .82",
    )
    arms: list[Shape] = []
    for s in (-1, 1):
        arms += _arm(s, n)
    return [
        *_limbs(legs, n, 0.055, hind, "legs"),
        *arms,
        pen.contour(hind, 1.2, 2.2, "outline"),
        pen.contour(front, 1.3, 2.2, "outline"),
        pen.strokes(bars, 0.8, "segments"),
        *(pen.disc(s * 0.115 * n, y * n, 0.010 * n, "eyes") for s in (-1, 1) for y in (0.07, 0.105)),
        *(
            pen.line(geometry.scaled(((s * 0.03, 0.01), (s * 0.045, -0.06), (s * 0.012, -0.085)), n), (3.0, 2.2, 0.8), "jaws")
            for s in (-1, 1)
        ),
    ]


_ARM = (
    (".115 .035, .15 -.01, .195 -.03", ".020 .030 .026"),
    (".195 -.03, .33 -.07, .47 -.14", ".020 .030 .034"),
    (".47 -.14, .54 -.25, .575 -.38", ".022 .038 .044"),
    (".575 -.38, .60 -.50, .595 -.62", ".026 .066 .052"),
    (".622 -.62, .625 -.74, .55 -.88", ".022 .017 .004"),
    (".568 -.62, .525 -.74, .535 -.88", ".022 .017 .004"),
)
"""The joints of an arm from the body outward, the last two the fingers: the way each runs, its half width on that way."""


def _arm(s: int, n: float) -> list[Shape]:
    """One arm of hard joints, the last a swollen hand with two fingers."""
    out: list[Shape] = []
    for way, widths in _ARM:
        line = geometry.spaced(geometry.curve([(s * x * n, y * n) for x, y in pts(way)], per=12), 0.004 * n)
        first, middle, last = (float(w) for w in widths.split())

        def half(t: float, first: float = first, middle: float = middle, last: float = last) -> float:
            wide = first * (1 - t) * (1 - 2 * t) + middle * 4 * t * (1 - t) + last * t * (2 * t - 1)
            return float(n * wide * tube.round_ends(t, 0.08, 0.08) ** 0.6)

        out.append(pen.contour(geometry.clockwise(tube.ring(line, half)), 1.1, 1.9, "pincers"))
    return out


def pair(n: float) -> Sketch:
    """A spider above a false scorpion, each `n` long."""
    return Sketch(together.below((_spider(n), _false_scorpion(n)), 0.10 * n), pen_for(1.9 * n, 3.6 * n))
