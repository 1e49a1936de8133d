"""Flagellates by their flagella: which point ahead, which trail, how thick, how long, and what shows in the body."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import cos, pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape
from .cell_parts import clear_of, vacuole
from .cell_parts import nucleus as draw_nucleus
from .kind import Kind, Values, accent, choice, flag, num, um, word

Half = Sequence[Point]


def build(v: Values) -> Sketch:
    """The flagellate, front end at the top."""
    n = num(v, "length")
    shapes, wide, tall = _FORMS[word(v, "form")](n)
    if v["stalk"]:
        shapes = [*shapes, pen.line(geometry.curve(geometry.scaled([(0, 1.0), (0.03, 1.35), (-0.02, 1.8)], n), per=8), (0.9, 0.9), "stalk")]
    return Sketch(tuple(shapes), pen_for(wide * n, tall * n))


def _body(points: Sequence[Point], n: float) -> Points:
    return geometry.clockwise(geometry.tall(geometry.curve(points, closed=True, per=8), n))


def _even(half: Half) -> list[Point]:
    return [(0, 0), *half, (0, 1), *reversed(geometry.mirrored(half))]


def _whip(points: Sequence[Point], n: float, weights: tuple[float, ...] = (1.3, 0.8)) -> Shape:
    return pen.line(geometry.curve(geometry.scaled(points, n), per=8), weights, "flagella")


def _wave(start: Point, end: Point, n: float, swing: float, turns: float, weights: tuple[float, ...] = (1.3, 0.8)) -> Shape:
    """A beating flagellum: a wave that grows toward its tip."""
    (x0, y0), (x1, y1) = start, end
    dx, dy = x1 - x0, y1 - y0
    line = []
    for k in range(49):
        t = k / 48
        off = swing * min(1.0, 2.5 * t) * sin(2 * pi * turns * t)
        line.append(((x0 + dx * t - dy * off) * n, (y0 + dy * t + dx * off) * n))
    return pen.line(line, weights, "flagella")


def _grain(edge: Points, n: float, gap: float, *clear: tuple[float, float, float]) -> list[Shape]:
    spots = tuple((x * n, y * n, r * n) for x, y, r in clear)
    return list(pen.grain(geometry.offset(edge, [0.03 * n] * len(edge), closed=True), gap * n, "contents", clear_of(*spots)))


def _nucleus(x: float, y: float, r: float, n: float) -> list[Shape]:
    return draw_nucleus(x * n, y * n, r * n)


Drawn = tuple[list[Shape], float, float]


def _bean(n: float) -> Drawn:
    """A bean with a beak; both flagella leave below it, a short curled one in front and a long one trailing."""
    edge = _body([(-0.16, 0.02), (-0.06, 0.0), (0.12, 0.05), (0.24, 0.24), (0.27, 0.52), (0.20, 0.80), (0.05, 0.98), (-0.12, 0.94), (-0.21, 0.74),
                  (-0.20, 0.50), (-0.14, 0.34), (-0.15, 0.22), (-0.21, 0.10)], n)
    return [
        pen.contour(edge, 1.2, 2.2, "outline"),
        _whip([(-0.15, 0.26), (-0.32, 0.16), (-0.42, -0.06), (-0.34, -0.28), (-0.20, -0.30), (-0.17, -0.18)], n, (1.4, 0.9)),
        _whip([(-0.15, 0.28), (-0.31, 0.50), (-0.35, 0.86), (-0.22, 1.24), (-0.12, 1.58), (-0.24, 1.98), (-0.16, 2.4)], n),
        *_nucleus(0.06, 0.36, 0.10, n), vacuole(0.06 * n, 0.12 * n, 0.055 * n), *_grain(edge, n, 0.055, (0.06, 0.36, 0.10), (0.06, 0.12, 0.06)),
    ], 0.75, 2.8


def _round(n: float) -> Drawn:
    """Roundish and slightly flat; a flickering flagellum in front, a longer one trailing, the bubble at the rear."""
    edge = _body([(-0.10, 0.02), (0.08, 0.0), (0.28, 0.10), (0.36, 0.34), (0.36, 0.62), (0.25, 0.88), (0.05, 1.0), (-0.16, 0.95), (-0.32, 0.76), (-0.36, 0.48), (-0.27, 0.16)], n)
    return [
        pen.contour(edge, 1.2, 2.2, "outline"),
        _wave((-0.05, 0.03), (-0.24, -0.72), n, 0.12, 1.3),
        _whip([(-0.10, 0.03), (-0.40, 0.16), (-0.50, 0.50), (-0.44, 0.94), (-0.26, 1.30), (-0.22, 1.66), (-0.32, 2.0)], n),
        *_nucleus(0.08, 0.32, 0.12, n), vacuole(-0.02 * n, 0.82 * n, 0.10 * n), *_grain(edge, n, 0.06, (0.08, 0.32, 0.12), (-0.02, 0.82, 0.10)),
    ], 0.95, 2.9


def _sausage(n: float) -> Drawn:
    """A little sausage; one flagellum shows, trailing along the glass."""
    edge = _body(_even([(0.13, 0.02), (0.205, 0.11), (0.215, 0.30), (0.205, 0.55), (0.20, 0.80), (0.12, 0.97)]), n)
    return [
        pen.contour(edge, 1.2, 2.2, "outline"),
        _whip([(-0.08, 0.04), (-0.27, 0.16), (-0.30, 0.50), (-0.27, 0.95), (-0.18, 1.40), (-0.20, 1.90)], n),
        *_nucleus(0.03, 0.28, 0.085, n), vacuole(0.0, 0.85 * n, 0.07 * n), *_grain(edge, n, 0.05, (0.03, 0.28, 0.09), (0, 0.85, 0.075)),
    ], 0.5, 2.0


def _drawn_out(n: float) -> Drawn:
    """Soft and drawn out behind; one flagellum ahead, one along the belly and out behind; strings and short arms at the rear."""
    edge = _body([(0.0, 0.0), (0.09, 0.06), (0.15, 0.20), (0.16, 0.38), (0.12, 0.54), (0.16, 0.62), (0.22, 0.655), (0.15, 0.67), (0.075, 0.68), (0.05, 0.80), (0.02, 1.0),
                  (-0.015, 0.82), (-0.05, 0.72), (-0.13, 0.76), (-0.155, 0.745), (-0.09, 0.66), (-0.11, 0.52), (-0.155, 0.36), (-0.13, 0.16), (-0.07, 0.05)], n)
    return [
        pen.contour(edge, 1.1, 2.1, "outline"),
        _wave((0.0, 0.01), (-0.10, -0.52), n, 0.12, 1.0),
        _whip([(0.0, 0.02), (-0.07, 0.25), (-0.02, 0.52), (0.0, 0.80), (0.05, 1.10), (0.0, 1.42)], n),
        _whip([(0.02, 0.98), (0.10, 1.08), (0.13, 1.20)], n, (0.7, 0.4)),
        *_nucleus(0.02, 0.15, 0.06, n), vacuole(0.06 * n, 0.50 * n, 0.045 * n), *_grain(edge, n, 0.038, (0.02, 0.15, 0.065), (0.06, 0.50, 0.05)),
    ], 0.55, 2.0


def _ball(n: float) -> Drawn:
    """A clear ball: one long flagellum and a stub beside it, food as bubbles inside."""
    edge = _body([(0.5 * cos(a) * 0.96, 0.5 * sin(a)) for a in (2 * pi * k / 20 for k in range(20))], n)
    food = [pen.ring(x * n, y * n, r * n, 0.9, "food") for x, y, r in ((-0.17, 0.70, 0.12), (0.14, 0.76, 0.09), (0.26, 0.52, 0.07))]
    return [
        pen.contour(edge, 1.1, 2.1, "outline"),
        _wave((-0.04, 0.0), (-0.10, -1.7), n, 0.09, 2.2),
        _whip([(0.05, 0.0), (0.12, -0.12), (0.20, -0.16)], n, (1.4, 0.9)),
        *_nucleus(0.0, 0.30, 0.13, n), *food, *_grain(edge, n, 0.07, (0, 0.30, 0.14), (-0.17, 0.70, 0.13), (0.14, 0.76, 0.10), (0.26, 0.52, 0.08)),
    ], 1.1, 2.8


def _stiff_ahead(n: float) -> Drawn:
    """A long soft sac; one thick flagellum straight ahead of which only the tip flickers."""
    edge = _body([(0.02, 0.0), (0.07, 0.03), (0.12, 0.16), (0.165, 0.38), (0.19, 0.60), (0.19, 0.80), (0.13, 0.95), (0.0, 1.0), (-0.13, 0.94), (-0.17, 0.78), (-0.15, 0.56), (-0.12, 0.34),
                  (-0.085, 0.14), (-0.03, 0.02)], n)
    thick = geometry.scaled([(0.0, 0.02), (0.005, -0.62)], n)
    rod = [pen.line(geometry.scaled([(0.035, 0.05), (0.04, 0.22)], n), (1.2, 1.0), "feeding-rod"), pen.line(geometry.scaled([(0.06, 0.06), (0.058, 0.22)], n), (1.2, 1.0), "feeding-rod")]
    starch = [pen.ring(x * n, y * n, 0.022 * n, 0.7, "contents", ry=0.032 * n) for x, y in ((-0.07, 0.50), (0.10, 0.66), (-0.03, 0.86), (0.05, 0.80), (-0.10, 0.72), (0.09, 0.44))]
    return [
        pen.contour(edge, 1.1, 2.1, "outline"),
        pen.line(thick, (2.6, 1.7), "flagella"),
        _wave((0.005, -0.62), (0.0, -0.92), n, 0.16, 1.0, (1.7, 0.8)),
        *rod, *_nucleus(-0.01, 0.60, 0.075, n), vacuole(-0.02 * n, 0.16 * n, 0.05 * n), *starch, *_grain(edge, n, 0.04, (-0.01, 0.60, 0.08), (-0.02, 0.16, 0.055)),
    ], 0.5, 2.0


def _leaf(n: float) -> Drawn:
    """A stiff flat leaf with keels; one flagellum straight ahead."""
    edge = _body(_even([(0.10, 0.03), (0.26, 0.22), (0.335, 0.48), (0.30, 0.74), (0.17, 0.94)]), n)
    keels = [geometry.curve(geometry.scaled([(x * 0.35, 0.08), (x, 0.34), (x * 1.1, 0.62), (x * 0.5, 0.93)], n), per=8) for x in (-0.15, 0.0, 0.15)]
    return [
        pen.contour(edge, 1.4, 2.4, "outline"), pen.strokes(keels, 0.8, "ridges"),
        pen.line(geometry.scaled([(0.0, 0.02), (0.0, -0.62)], n), (2.0, 1.4), "flagella"), _wave((0.0, -0.62), (0.03, -0.95), n, 0.14, 1.0, (1.4, 0.8)),
        *_nucleus(-0.07, 0.58, 0.08, n), *_grain(edge, n, 0.06, (-0.07, 0.58, 0.09)),
    ], 0.8, 2.1


def _sweeps(n: float) -> Drawn:
    """A stiff grooved oval with a rod-like feeding tube; one flagellum sweeps in front, a thicker one drags behind."""
    edge = _body(_even([(0.12, 0.015), (0.25, 0.14), (0.31, 0.40), (0.29, 0.70), (0.18, 0.93)]), n)
    grooves = [geometry.curve(geometry.scaled([(x * 0.4, 0.07), (x, 0.36), (x, 0.64), (x * 0.45, 0.94)], n), per=8) for x in (-0.23, -0.14, 0.15, 0.24)]
    tube = [pen.line(geometry.scaled([(x, 0.05), (x * 0.7, 0.88)], n), (1.3, 1.0), "feeding-rod") for x in (-0.028, 0.028)]
    return [
        pen.contour(edge, 1.4, 2.4, "outline"), pen.strokes(grooves, 0.6, "ridges"), *tube,
        _whip([(-0.02, 0.02), (-0.06, -0.30), (-0.26, -0.58), (-0.52, -0.60)], n, (1.3, 0.8)),
        _whip([(-0.04, 0.03), (-0.32, 0.10), (-0.40, 0.45), (-0.36, 0.90), (-0.20, 1.28), (-0.22, 1.7)], n, (2.4, 1.8, 1.2)),
        *_nucleus(0.13, 0.55, 0.07, n),
    ], 1.0, 2.4


def _snout(n: float) -> Drawn:
    """A tiny glider: a finger-like snout waves in front, one flagellum trails."""
    edge = _body([(-0.30, 0.03), (-0.24, 0.0), (-0.16, 0.06), (-0.07, 0.17), (0.10, 0.20), (0.26, 0.36), (0.31, 0.62), (0.22, 0.88), (0.04, 1.0), (-0.15, 0.93), (-0.24, 0.70), (-0.23, 0.46),
                  (-0.19, 0.30), (-0.26, 0.16)], n)
    return [
        pen.contour(edge, 1.2, 2.2, "outline"), _whip([(-0.19, 0.28), (-0.33, 0.52), (-0.34, 0.95), (-0.22, 1.35), (-0.26, 1.85)], n),
        pen.line(geometry.curve(geometry.scaled([(-0.22, 0.22), (-0.30, 0.10), (-0.295, 0.02), (-0.235, 0.0), (-0.15, 0.08)], n), per=6), (1.6, 2.0), "snout"),
        *_nucleus(0.08, 0.46, 0.10, n), *_grain(edge, n, 0.06, (0.08, 0.46, 0.11)),
    ], 0.7, 2.0


def _green_egg(n: float) -> Drawn:
    """A green egg: one cup-shaped plastid, a red dot at its side, two equal flagella in front."""
    edge = _body(_even([(0.09, 0.01), (0.24, 0.13), (0.345, 0.40), (0.345, 0.64), (0.25, 0.88), (0.10, 0.985)]), n)
    skin = geometry.offset(edge, [0.035 * n] * len(edge), closed=True)
    cup = [p for p in skin if p[1] > 0.26 * n]
    hollow = geometry.curve(geometry.scaled([(-0.24, 0.26), (-0.18, 0.42), (0, 0.53), (0.18, 0.42), (0.24, 0.26)], n), per=8)
    left = min(range(len(cup)), key=lambda k: cup[k][1] + (10 * n if cup[k][0] < 0 else 0))
    ring = (*cup[left:], *cup[:left], *hollow)
    whips = [geometry.curve(geometry.scaled([(s * 0.03, 0.0), (s * 0.10, -0.24), (s * 0.34, -0.52), (s * 0.58, -0.56)], n), per=8) for s in (-1, 1)]
    return [
        pen.contour(edge, 1.2, 2.2, "outline"), *_plastid(ring, n), pen.ring(0, 0.72 * n, 0.085 * n, 1.0, "plastid"),
        *(pen.line(w, (1.3, 0.8), "flagella") for w in whips),
        pen.disc(0.25 * n, 0.36 * n, 0.035 * n, "eyespot"), vacuole(-0.04 * n, 0.10 * n, 0.03 * n), vacuole(0.04 * n, 0.10 * n, 0.03 * n), *_nucleus(0, 0.38, 0.085, n),
    ], 1.15, 1.7


def _plastid(ring: Points, n: float) -> list[Shape]:
    """A green body: an edge and a dense, even grain (green cannot be shown in one ink)."""
    return [pen.stroke(ring, 1.0, "plastid", closed=True), *pen.grain(ring, 0.026 * n, "plastid", lambda p: 0.85, sizes=(0.9, 1.2))]


def _equal(n: float) -> Drawn:
    """A clear pear with two equal flagella in front."""
    edge = _body(_even([(0.07, 0.02), (0.15, 0.16), (0.25, 0.42), (0.29, 0.66), (0.21, 0.90), (0.09, 0.985)]), n)
    whips = [geometry.curve(geometry.scaled([(s * 0.02, 0.01), (s * 0.10, -0.30), (s * 0.28 + 0.03, -0.62), (s * 0.30, -0.95)], n), per=8) for s in (-1, 1)]
    return [
        pen.contour(edge, 1.1, 2.1, "outline"), *(pen.line(w, (1.3, 0.8), "flagella") for w in whips),
        *_nucleus(0.0, 0.26, 0.09, n), vacuole(0.03 * n, 0.82 * n, 0.08 * n), *_grain(edge, n, 0.05, (0, 0.26, 0.10), (0.03, 0.82, 0.09)),
    ], 0.75, 2.0


def _spindle(n: float) -> Drawn:
    """A long green spindle: many plastids, a red spot in front, one flagellum."""
    edge = _body([(0.0, 0.0), (0.065, 0.035), (0.11, 0.18), (0.13, 0.40), (0.12, 0.62), (0.08, 0.82), (0.025, 0.94), (0.0, 1.0), (-0.025, 0.93), (-0.085, 0.80), (-0.125, 0.60), (-0.13, 0.38),
                  (-0.11, 0.17), (-0.065, 0.04)], n)
    out: list[Shape] = [pen.contour(edge, 1.2, 2.1, "outline"), _wave((-0.01, 0.03), (0.03, -0.62), n, 0.13, 1.4)]
    spots = ((-0.055, 0.20), (0.06, 0.25), (-0.065, 0.34), (0.0, 0.30), (0.075, 0.38), (-0.07, 0.47), (0.08, 0.58), (-0.065, 0.62), (0.0, 0.68), (0.055, 0.71), (-0.04, 0.76), (0.02, 0.83))
    for k, (x, y) in enumerate(spots):
        out += _plastid(geometry.ellipse(x * n, y * n, 0.045 * n, 0.034 * n, turn=0.6 * (k % 3 - 1), count=28), 0.7 * n)
    return [*out, pen.disc(0.045 * n, 0.095 * n, 0.022 * n, "eyespot"), *_nucleus(0.0, 0.50, 0.055, n), vacuole(-0.02 * n, 0.09 * n, 0.03 * n)], 0.4, 1.7


def _notched(n: float) -> Drawn:
    """A lopsided oval cut off slantwise in front, a notch there, two nearly equal flagella out of it."""
    edge = _body([(0.20, 0.0), (0.27, 0.06), (0.29, 0.26), (0.27, 0.54), (0.19, 0.82), (0.05, 1.0), (-0.08, 0.93), (-0.19, 0.74), (-0.25, 0.48), (-0.25, 0.27), (-0.20, 0.19), (-0.11, 0.19),
                  (-0.03, 0.26), (0.03, 0.20), (0.11, 0.06)], n)
    gullet = geometry.curve(geometry.scaled([(-0.03, 0.25), (0.02, 0.36), (0.0, 0.50)], n), per=8)
    pearls = [pen.disc((0.035 + 0.01 * (k % 2)) * n, (0.30 + 0.05 * k) * n, 0.014 * n, "contents") for k in range(5)]
    plate = geometry.curve(geometry.scaled([(0.21, 0.14), (0.23, 0.40), (0.15, 0.74), (0.05, 0.86), (0.10, 0.60), (0.14, 0.34)], n), closed=True, per=8)
    return [
        pen.contour(edge, 1.2, 2.2, "outline"), pen.line(gullet, (1.4, 0.8), "mouth"), *pearls, *_plastid(plate, n),
        _whip([(-0.05, 0.23), (-0.16, -0.02), (-0.16, -0.34), (-0.30, -0.58)], n), _whip([(-0.03, 0.22), (-0.05, -0.06), (0.02, -0.34), (-0.06, -0.62)], n),
        *_nucleus(-0.04, 0.76, 0.075, n),
    ], 0.8, 1.8


def _collar(n: float) -> Drawn:
    """A drop-shaped cell with one flagellum out of a thin collar that bright field mostly does not show."""
    edge = _body(_even([(0.14, 0.02), (0.27, 0.16), (0.345, 0.42), (0.32, 0.68), (0.18, 0.92)]), n)
    side = geometry.curve(geometry.scaled([(0.13, 0.03), (0.15, -0.22), (0.24, -0.56)], n), per=8)
    rays = [tuple((x * (0.32 * k - 0.96), y) for x, y in side) for k in range(7)]
    return [
        pen.contour(edge, 1.1, 2.1, "outline"), pen.strokes(rays, 0.5, "collar", role="faint"), *(pen.line(s, (1.0, 0.7), "collar") for s in (side, geometry.mirrored(side))),
        _wave((0.0, 0.0), (0.0, -1.6), n, 0.06, 2.0), *_nucleus(0, 0.36, 0.12, n), *_grain(edge, n, 0.06, (0, 0.36, 0.13)),
    ], 0.8, 2.8


def _hollow_side(n: float) -> Drawn:
    """A bean whose two flagella leave the hollow of its side, one ahead and one behind (a swimming spore)."""
    edge = _body([(0.02, 0.0), (0.17, 0.06), (0.28, 0.26), (0.30, 0.52), (0.24, 0.80), (0.09, 0.98), (-0.06, 0.96), (-0.13, 0.80), (-0.09, 0.60), (-0.06, 0.48), (-0.09, 0.34), (-0.14, 0.16), (-0.08, 0.03)], n)
    groove = geometry.curve(geometry.scaled([(-0.03, 0.16), (0.05, 0.36), (0.06, 0.58), (-0.01, 0.82)], n), per=8)
    return [
        pen.contour(edge, 1.1, 2.1, "outline"), pen.line(groove, (0.5, 1.1, 0.5), "groove"),
        _wave((-0.05, 0.44), (-0.34, -0.62), n, 0.09, 1.3), _whip([(-0.05, 0.50), (-0.30, 0.66), (-0.36, 1.0), (-0.26, 1.4), (-0.30, 1.75)], n),
        *_nucleus(0.15, 0.44, 0.08, n), *_grain(edge, n, 0.055, (0.15, 0.44, 0.09)),
    ], 0.85, 2.4


def _two_ahead_unequal(n: float) -> Drawn:
    """The plain form of a swarm cell: a soft pear with one long flagellum in front and a short one bent back along it."""
    edge = _body([(0.0, 0.0), (0.07, 0.07), (0.14, 0.30), (0.24, 0.56), (0.24, 0.80), (0.12, 0.97), (-0.06, 0.99), (-0.20, 0.86), (-0.23, 0.62), (-0.14, 0.32), (-0.07, 0.08)], n)
    return [
        pen.contour(edge, 1.1, 2.1, "outline"), _wave((0.0, 0.0), (-0.06, -1.0), n, 0.10, 1.3), _whip([(0.01, 0.01), (0.13, 0.06), (0.22, 0.24), (0.27, 0.36)], n, (1.2, 0.8)),
        *_nucleus(0.0, 0.20, 0.07, n), vacuole(0.02 * n, 0.80 * n, 0.10 * n), *_grain(edge, n, 0.055, (0, 0.20, 0.08), (0.02, 0.80, 0.11)),
    ], 0.75, 2.1


_FORMS: dict[str, Callable[[float], Drawn]] = {
    "bean": _bean,
    "round": _round,
    "sausage": _sausage,
    "drawn-out": _drawn_out,
    "ball": _ball,
    "stiff-ahead": _stiff_ahead,
    "leaf": _leaf,
    "sweeps-and-drags": _sweeps,
    "snout": _snout,
    "green-egg": _green_egg,
    "equal-pair": _equal,
    "green-spindle": _spindle,
    "notched": _notched,
    "collar": _collar,
    "swimming-spore": _hollow_side,
    "swarm-cell": _two_ahead_unequal,
}

KIND = Kind(
    "flagellate",
    "a flagellate by its flagella and its build",
    (
        choice(
            "form",
            tuple(_FORMS),
            "bean with a short curled and a long trailing flagellum; round, one flickering, one trailing; sausage with one trailing; soft, drawn out behind; "
            "ball with one long and a stub; one thick flagellum straight ahead; flat leaf; one sweeps, a thick one drags; waving snout; green egg with two equal; "
            "clear pear with two equal; green spindle; notched oval; collar; bean with flagella in the hollow side; swarm cell",
        ),
        um("length", 10, 2, 200, "length of the body without flagella"),
        flag("stalk", "sits on a thread"),
        accent("body", "flagella", "plastid", "eyespot", "collar", "snout", "ridges", "nucleus", "vacuole", "contents", "stalk", "feeding-rod"),
    ),
    build,
)
