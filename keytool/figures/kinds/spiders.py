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
    return Sketch(tuple(_spider(n)), pen_for(1.45 * n, 1.7 * n))


def _spider(n: float) -> list[Shape]:
    front = _ring(".07 .005, .125 .05, .185 .17, .185 .29, .12 .385, .045 .412", 0.0, 0.415, n)
    hind = _ring(".07 .452, .20 .51, .285 .64, .275 .78, .17 .92, .05 .965", 0.45, 0.97, n)
    legs = (
        ".12 .08, .27 -.12, .37 -.36, .33 -.58",
        ".17 .16, .42 .01, .60 -.14, .70 -.34",
        ".17 .25, .42 .25, .58 .36, .66 .54",
        ".13 .33, .38 .48, .56 .74, .56 1.06",
    )
    waist = [pen.line(geometry.scaled(((s * 0.026, 0.400), (s * 0.020, 0.432), (s * 0.028, 0.465)), n), (1.8,), "waist") for s in (-1, 1)]
    eyes = [(0.018, 0.035), (0.052, 0.044), (0.022, 0.070), (0.066, 0.080)]
    spinners = [pen.line(geometry.scaled(((s * 0.022, 0.955), (s * 0.030, 1.0)), n), (2.6, 1.6), "outline") for s in (-1, 1)]
    mark = geometry.curve(geometry.scaled(pts("0 .50, .035 .56, .022 .66, 0 .74, -.022 .66, -.035 .56"), n), closed=True, per=8)
    spots = [(s * x, y) for s in (-1, 1) for x, y in ((0.105, 0.60), (0.12, 0.71), (0.095, 0.81))]

    def shade(p: tuple[float, float]) -> float:
        return max(0.0, (p[0] + 0.45 * (p[1] - 0.7 * n)) / n * 3.4)

    return [
        *_limbs(legs, n, 0.066, front, "legs"),
        *_limbs((".07 .02, .12 -.07, .13 -.18",), n, 0.050, front, "feelers"),
        *waist,
        *spinners,
        pen.contour(front, 1.3, 2.2, "outline"),
        pen.contour(hind, 1.3, 2.6, "outline"),
        *(pen.line(geometry.scaled(((s * 0.03, 0.25), (s * 0.10, 0.18)), n), (1.0, 0.4), "folds") for s in (-1, 1)),
        pen.stroke(geometry.scaled(((0.0, 0.25), (0.0, 0.31)), n), 1.0, "folds"),
        *(pen.disc(s * x * n, y * n, 0.012 * n, "eyes") for s in (-1, 1) for x, y in eyes),
        pen.stroke(mark, 0.6, "folds", closed=True, role="faint"),
        *(pen.disc(x * n, y * n, 0.011 * n, "folds") for x, y in spots),
        *pen.grain(geometry.offset(hind, [0.02 * n] * len(hind), closed=True), 0.028 * n, "shade", shade),
    ]


def false_scorpion(n: float) -> Sketch:
    """A shield in front, a flat ringed hind body without waist or tail, and two long arms that end in pincers."""
    return Sketch(tuple(_false_scorpion(n)), pen_for(1.3 * n, 1.65 * n))


def _false_scorpion(n: float) -> list[Shape]:
    front = _ring(".05 .01, .10 .03, .135 .16, .155 .33, .08 .345", 0.0, 0.345, n)
    hind = _ring(".14 .35, .21 .42, .275 .60, .27 .78, .17 .93, .06 .99", 0.345, 1.0, n)
    rows = [0.345 + 0.0585 * k for k in range(1, 11)]
    bars = [
        run
        for y in rows
        for run in geometry.runs(
            [(0.01 * k * n, (y + 0.012 * (1 - (k / 26) ** 2)) * n) for k in range(-27, 28)], lambda p: geometry.inside(hind, p)
        )
    ]
    legs = (
        ".12 .17, .25 .12, .36 .10, .45 .14",
        ".13 .22, .29 .23, .40 .28, .47 .36",
        ".14 .27, .31 .38, .42 .52, .46 .66",
        ".15 .31, .30 .52, .39 .74, .40 .92",
    )
    arms: list[Shape] = []
    for s in (-1, 1):
        arms += _arm(s, n)
    return [
        *_limbs(
            legs,
            n,
            0.058,
            geometry.clockwise(_ring(".14 .0, .20 .2, .14 .35, .21 .42, .275 .60, .27 .78, .17 .93, .06 .99", 0.0, 1.0, n)),
            "legs",
        ),
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
    (".095 .055, .150 .022, .205 -.002", ".024 .038 .032"),
    (".195 .002, .305 -.044, .432 -.074", ".030 .046 .044"),
    (".418 -.064, .502 -.140, .532 -.262", ".036 .058 .056"),
    (".530 -.248, .560 -.360, .545 -.490", ".046 .092 .070"),
    (".583 -.480, .595 -.580, .505 -.720", ".032 .022 .005"),
    (".518 -.480, .468 -.580, .490 -.720", ".032 .022 .005"),
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
            return float(n * wide * tube.round_ends(t, 0.04, 0.04) ** 0.5)

        out.append(pen.contour(geometry.clockwise(tube.ring(line, half)), 1.1, 1.9, "pincers"))
    return out


def pair(n: float) -> Sketch:
    """A spider above a false scorpion, each `n` long."""
    return Sketch(together.below((_spider(n), _false_scorpion(n)), 0.12 * n), pen_for(1.45 * n, 3.6 * n))
