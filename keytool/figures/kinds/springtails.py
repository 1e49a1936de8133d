"""Springtails from the side: the surface one with its spring, the globe, and the long white one of the deep soil."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Points, Shape
from . import tube
from .limbs import leg
from .points import pts


def _wide(points: Points, n: float) -> Points:
    """The closed edge, exactly `n` wide, its left end at x = 0."""
    ring = geometry.curve(points, closed=True, per=8)
    box = geometry.around(ring)
    by = n / box.width
    return geometry.clockwise(tuple(((x - box.x) * by, y * by) for x, y in ring))


@dataclass(frozen=True, slots=True)
class _Limbs:
    """Legs and feeler in shares of the length: where each runs, and how thick it is."""

    legs: Sequence[str]
    feeler: str
    leg_thick: float
    feeler_thick: float


def _limbs(limbs: _Limbs, n: float, body: Points) -> list[Shape]:
    out: list[Shape] = []
    for way in limbs.legs:
        out += leg(list(geometry.scaled(pts(way), n)), limbs.leg_thick * n, body, "legs")
    return out + leg(list(geometry.scaled(pts(limbs.feeler), n)), limbs.feeler_thick * n, body, "feelers")


def _borders(body: Points, tops: Sequence[float], low: float, n: float) -> list[Shape]:
    """Hind borders of the rings: each runs from the back down the flank and fades before it reaches the belly."""
    out: list[Shape] = []
    for x in tops:
        way = [((x + 0.030 * t - 0.052 * t * t) * n, (-0.30 + (0.30 + low) * t) * n) for t in (k / 40 for k in range(41))]
        out += [pen.line(run, (1.7, 1.3, 0.4), "segments") for run in geometry.runs(way, lambda p: geometry.inside(body, p))]
    return out


def _spring(path: str, thick: float, n: float, body: Points) -> list[Shape]:
    """The spring: a stem under the fourth ring of the hind body, then the two prongs of its fork, each with a hooked tip."""
    stem, near, far = (geometry.curve(geometry.scaled(pts(part), n), per=8) for part in path.split(";"))
    out: list[Shape] = []
    for line, first, last in ((far, 0.62, 0.16), (near, 0.66, 0.16), (stem, 1.0, 0.72)):
        ring = geometry.clockwise(tube.ring(line, lambda t, a=first, b=last: thick * n * (a + (b - a) * t)))  # type: ignore[misc]
        for run in geometry.runs((*ring, ring[0]), lambda p: not geometry.inside(body, p)):
            out.append(pen.line(run, (1.2, 1.5), "spring"))
    return out


def _hairs(body: Points, xs: Sequence[float], n: float, size: float) -> Shape:
    """Short hairs leaning back along the upper edge, one above each of `xs`."""
    feet = [min((p for p in body if abs(p[0] - x * n) < 0.03 * n), key=lambda p: p[1]) for x in xs]
    return pen.strokes([((x, y), (x + 0.55 * size * n, y - size * n)) for x, y in feet], 0.7, "hairs")


_SURFACE = _Limbs(
    (
        ".300 .060, .275 .125, .225 .185, .205 .300",
        ".385 .070, .395 .140, .370 .205, .375 .310",
        ".465 .078, .505 .140, .530 .210, .555 .310",
    ),
    ".055 -.075, .000 -.175, -.110 -.255, -.270 -.275",
    0.046,
    0.044,
)


def banded(n: float) -> Sketch:
    """A springtail of the surface: dark bands across a scaly body, feelers more than twice as long as the head."""
    plain = springtail(n)
    edge = next(one for one in plain.shapes if one.part == "outline").points  # type: ignore[union-attr]

    def band(p: tuple[float, float]) -> float:
        x = p[0] / n
        return (
            0.95 if any(abs(x - at - 0.10 * p[1] / n) < 0.030 for at in (0.305, 0.395, 0.480, 0.565, 0.650, 0.745, 0.850, 0.945)) else 0.0
        )

    pen_um = plain.pen_um
    dark = pen.grain(geometry.offset(edge, [0.010 * n] * len(edge), closed=True), 1.9 * pen_um, "bands", band, sizes=(1.2, 1.7))
    far = leg(list(geometry.scaled(pts(".050 -.080, .020 -.200, -.050 -.320, -.210 -.420"), n)), 0.036 * n, edge, "feelers")
    return Sketch((*far, *(one for one in plain.shapes if one.part != "shade"), *dark), pen_um)


def springtail(n: float) -> Sketch:
    """A long body of nine rings, a patch of eyes, feelers longer than the head, a tube under the belly, the spring half let down."""
    edge = _wide(
        pts(
            ".0 .020, .012 -.045, .060 -.090, .125 -.098, .185 -.070, .225 -.098, .300 -.135, .430 -.160, .570 -.172, .700 -.165, "
            ".830 -.130, .930 -.075, .990 -.015, 1.0 .012, .975 .030, .900 .048, .800 .075, .660 .092, .500 .092, .360 .078, "
            ".260 .060, .205 .050, .150 .078, .090 .100, .040 .080"
        ),
        n,
    )
    pen_um = pen_for(1.3 * n, 0.75 * n)
    neck = geometry.curve(geometry.scaled(pts(".190 -.070, .178 -.020, .190 .025, .212 .050"), n), per=8)
    tube_foot = geometry.curve(geometry.scaled(pts(".548 .088, .540 .135, .552 .158, .580 .160, .592 .138, .588 .088"), n), per=6)
    eyes = pts(".075 -.045, .098 -.052, .086 -.028, .109 -.034, .098 -.014, .118 -.016")

    def shade(p: tuple[float, float]) -> float:
        return 0.10 + 0.95 * max(0.0, (p[1] + 0.05 * n) / (0.13 * n))

    inner = geometry.offset(edge, [0.018 * n] * len(edge), closed=True)
    return Sketch(
        (
            *_spring(
                ".855 .050, .835 .105, .800 .165; .800 .165, .860 .235, .960 .285, 1.055 .300, 1.075 .285; "
                ".795 .160, .820 .255, .900 .325, .990 .352, 1.012 .340",
                0.026,
                n,
                edge,
            ),
            *_limbs(_SURFACE, n, edge),
            _hairs(edge, (0.27, 0.36, 0.45, 0.54, 0.64, 0.73, 0.82, 0.90, 0.96), n, 0.045),
            pen.contour(edge, 1.3, 2.5, "outline"),
            pen.line(neck, (1.0, 1.7, 0.9), "segments"),
            *_borders(edge, (0.330, 0.420, 0.500, 0.580, 0.660, 0.750, 0.870, 0.935), 0.040, n),
            pen.line(tube_foot, (1.1, 1.5, 1.1), "tube"),
            *(pen.disc(x * n, y * n, 0.0105 * n, "eyes") for x, y in eyes),
            *pen.grain(inner, 3.2 * pen_um, "shade", shade),
        ),
        pen_um,
    )


_GLOBE = _Limbs(
    (
        ".300 .120, .255 .190, .190 .255, .165 .390",
        ".400 .160, .400 .235, .350 .310, .345 .420",
        ".490 .185, .530 .260, .540 .330, .570 .430",
    ),
    ".085 -.130, .000 -.270, -.075 -.400, -.275 -.360",
    0.044,
    0.040,
)


def globe(n: float) -> Sketch:
    """A round body as high as long in which no rings can be made out, a head hung in front, elbowed feelers, a spring."""
    edge = _wide(
        pts(
            ".0 .000, .020 -.090, .090 -.165, .180 -.180, .240 -.190, .300 -.330, .430 -.455, .600 -.490, .780 -.430, .900 -.300, "
            ".965 -.190, 1 -.110, .997 -.030, .960 .045, .900 .105, .800 .170, .660 .210, .500 .200, .360 .150, .270 .105, .190 .130, "
            ".110 .165, .050 .130"
        ),
        n,
    )
    neck = geometry.curve(geometry.scaled(pts(".245 -.190, .225 -.100, .232 -.010, .270 .100"), n), per=8)
    tail = geometry.curve(geometry.scaled(pts(".890 -.300, .858 -.200, .858 -.070, .895 .085"), n), per=8)
    pen_um = pen_for(1.3 * n, 1.0 * n)
    eyes = pts(".090 -.085, .122 -.095, .105 -.060, .137 -.068, .124 -.036")

    def shade(p: tuple[float, float]) -> float:
        return max(0.0, (0.7 * p[0] + 1.5 * p[1] - 0.25 * n) / n) if p[0] > 0.26 * n else 0.12

    return Sketch(
        (
            *_spring(
                ".760 .180, .745 .235, .715 .290; .715 .290, .790 .365, .900 .410, 1.030 .425, 1.055 .405; "
                ".710 .285, .750 .395, .840 .460, .960 .490, .985 .475",
                0.026,
                n,
                edge,
            ),
            *_limbs(_GLOBE, n, edge),
            _hairs(edge, (0.33, 0.42, 0.52, 0.62, 0.72, 0.82, 0.90), n, 0.045),
            pen.contour(edge, 1.3, 2.6, "outline"),
            pen.line(neck, (1.0, 1.7, 0.9), "fold"),
            pen.line(tail, (1.2, 1.0, 0.4), "fold"),
            *(pen.disc(x * n, y * n, 0.013 * n, "eyes") for x, y in eyes),
            *pen.grain(geometry.offset(edge, [0.03 * n] * len(edge), closed=True), 3.2 * pen_um, "shade", shade),
        ),
        pen_um,
    )


_LONG = _Limbs(
    (
        ".240 .052, .235 .085, .212 .115, .205 .162",
        ".330 .060, .332 .095, .318 .125, .318 .170",
        ".415 .066, .428 .100, .428 .130, .440 .172",
    ),
    ".030 -.040, .000 -.082, -.030 -.104, -.072 -.108",
    0.036,
    0.038,
)


def long_white(n: float) -> Sketch:
    """A long white body, short legs, feelers no longer than the head, neither eyes nor a spring to be seen."""
    edge = _wide(
        pts(
            ".0 .010, .008 -.035, .045 -.066, .105 -.072, .150 -.056, .195 -.078, .290 -.098, .430 -.112, .600 -.120, .760 -.116, "
            ".880 -.092, .965 -.048, 1 .002, .985 .036, .900 .060, .760 .076, .600 .084, .430 .080, .300 .066, .205 .050, .160 .046, "
            ".115 .066, .060 .066, .020 .046"
        ),
        n,
    )
    pen_um = pen_for(1.1 * n, 0.42 * n)
    neck = geometry.curve(geometry.scaled(pts(".152 -.056, .143 -.015, .150 .020, .165 .046"), n), per=8)
    return Sketch(
        (
            *_limbs(_LONG, n, edge),
            _hairs(edge, (0.24, 0.34, 0.44, 0.54, 0.64, 0.74, 0.84, 0.93), n, 0.030),
            pen.contour(edge, 1.1, 2.0, "outline"),
            pen.line(neck, (0.9, 1.3, 0.7), "segments"),
            *_borders(edge, (0.260, 0.365, 0.460, 0.560, 0.660, 0.755, 0.845, 0.920), 0.045, n),
        ),
        pen_um,
    )
