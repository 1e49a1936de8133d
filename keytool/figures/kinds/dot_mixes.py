"""Dots that are not strewn alike: what cannot be told apart, cocci in every arrangement, two planes of focus, things on their way."""

from __future__ import annotations

from collections.abc import Callable
from math import atan2, cos, hypot, pi, sin
from random import Random

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Dots, Point, Points, Role, Shape
from .points import pts
from .rod_builds import capsule, slim, wound_body


def mixed(size: float) -> Sketch:
    """Dots, short rods and angular specks side by side, all as soft as the lens leaves them."""
    chance = Random("mixed dots")
    across = 13 * size
    out: list[Shape] = []
    for k, (u, v) in enumerate(
        pts(
            "-.42 -.42, -.16 -.46, .12 -.40, .42 -.44, -.30 -.24, .02 -.20, .30 -.18, -.46 -.04, -.16 -.02, .14 .02, .44 .04, "
            "-.32 .18, .28 .22, -.02 .24, -.46 .38, -.18 .44, .12 .42, .42 .40"
        )
    ):
        x, y, turn = u * across, v * across, chance.uniform(0, pi)
        ring = (_dot, _rod, _speck)[k % 3](size, chance)
        out += _soft(geometry.moved(ring, x, y, turn=turn), size)
    return Sketch(tuple(out), pen_for(across, across))


def _dot(size: float, chance: Random) -> Points:
    return geometry.ellipse(0, 0, 0.45 * size, 0.45 * size, count=28)


def _rod(size: float, chance: Random) -> Points:
    return capsule(1.7 * size, 0.33 * size)


def _speck(size: float, chance: Random) -> Points:
    return tuple(
        (0.6 * size * s * cos(a), 0.5 * size * s * sin(a)) for a, s in ((2 * pi * k / 5, chance.uniform(0.7, 1.0)) for k in range(5))
    )


def _soft(ring: Points, size: float) -> list[Shape]:
    """A grey body whose edge thins out into dots: nothing of it is sharp."""
    x, y = (sum(p[i] for p in ring) / len(ring) for i in (0, 1))
    core = [(x + 0.72 * (px - x), y + 0.72 * (py - y)) for px, py in ring]
    halo = [(x + 1.45 * (px - x), y + 1.45 * (py - y)) for px, py in ring]
    return [
        pen.filled(core, "dots", role="faint"),
        *pen.grain(tuple(halo), 0.17 * size, "dots", lambda p: 0.75, sizes=(1.0,), role="faint"),
    ]


def every_way(size: float) -> Sketch:
    """Cocci in every arrangement: lone, in twos, in a packet of four, in a chain, in a bunch."""
    s, step = size, 0.94 * size
    spots: list[Point] = [(-5.5 * s, -5.6 * s), (5.6 * s, 0.4 * s), (-6.0 * s, 5.4 * s)]
    for x, y, turn in ((-2.0 * s, -5.0 * s, 0.5), (0.4 * s, 1.2 * s, -0.7), (5.4 * s, -5.4 * s, 1.2)):
        spots += [(x + k * step / 2 * cos(turn), y + k * step / 2 * sin(turn)) for k in (-1, 1)]
    spots += [(1.9 * s + a * step / 2, -3.4 * s + b * step / 2) for a in (-1, 1) for b in (-1, 1)]
    x, y, lean = -6.2 * s, 0.2 * s, -0.5
    for k in range(7):
        spots.append((x, y))
        lean += 0.19 + 0.1 * sin(2.1 * k)
        x, y = x + step * cos(lean), y + step * sin(lean)
    for k in range(9):
        r = step * 0.62 * k**0.5 * 1.05
        spots.append((3.1 * s + r * cos(2.39996 * k), 5.0 * s + r * sin(2.39996 * k)))
    return Sketch(tuple(pen.disc(x, y, size / 2, "dots") for x, y in spots), pen_for(14 * s, 14 * s))


def two_planes(size: float) -> Sketch:
    """One dot at two turns of the focus: bright within a dark ring, then dark within a bright ring, on a grey ground."""
    r, gap = size / 2, 2.5 * size
    out: list[Shape] = []
    for x, bright in ((-gap / 2, True), (gap / 2, False)):
        ground = geometry.ellipse(x, 0, 2.2 * r, 2.2 * r, count=72)
        hole = geometry.ellipse(x, 0, (1.0 if bright else 1.55) * r, (1.0 if bright else 1.55) * r, count=64)
        out.append(pen.holed(ground, [hole], "ground", role="faint"))
        if bright:
            out.append(pen.holed(geometry.ellipse(x, 0, r, r, count=64), [geometry.ellipse(x, 0, 0.72 * r, 0.72 * r, count=64)], "dots"))
        else:
            out.append(pen.filled(geometry.ellipse(x, 0, r, r, count=64), "dots"))
    return Sketch(tuple(out), pen_for(2 * gap, 2.2 * size), tonal=True)


def flat_discs(size: float) -> Sketch:
    """Flat discs of one even tint with a soft edge, a few lying together: too small for anything to show in them."""
    out: list[Shape] = []
    for u, v in pts("-2.6 -2.4, 1.1 -2.9, 2.9 -.7, -.9 -.5, -.35 .35, -2.9 1.7, 1.9 2.3"):
        ring = geometry.ellipse(u * size, v * size, size / 2, size / 2, count=40)
        out += [pen.filled(ring, "dots", role="faint")]
    return Sketch(tuple(out), pen_for(8 * size, 8 * size))


def swimming(size: float) -> Sketch:
    """Rods on the move: each with where it was just before (faint) and the line it came along, with a tumble and a new run."""
    tracks = (
        pts("-6 -5.6, -3.6 -4.9, -1.2 -5.6, 1.0 -5.0, 3.4 -5.6"),
        pts("5.6 -1.6, 3.4 -.6, 1.3 .6, .9 1.2, 2.6 2.6, 4.6 3.4"),
        pts("-6 5.6, -5.0 3.4, -4.4 1.0, -3.8 -1.0, -4.2 -2.2"),
    )
    out: list[Shape] = []
    for track in tracks:
        line = geometry.spaced(geometry.curve(geometry.scaled(track, 0.8 * size), per=14), 0.2 * size)
        last = len(line) - 1
        for share, role in ((0.08, "faint"), (0.36, "faint"), (0.66, "faint"), (0.98, "ink")):
            k = min(max(1, round(share * last)), last)
            (x1, y1), (x2, y2) = line[k - 1], line[k]
            rod = geometry.moved(capsule(size, 0.17 * size), x2, y2, turn=atan2(y2 - y1, x2 - x1))
            out.append(pen.filled(rod, "dots") if role == "ink" else pen.stroke(rod, 0.7, "before", role="faint", closed=True))
        dashes = [line[k : k + 3] for k in range(0, last - 3, 4)]
        out.append(pen.strokes(dashes, 0.8, "track"))
    return Sketch(tuple(out), pen_for(11 * size, 11 * size))


def jiggling(size: float) -> Sketch:
    """Rods that only jiggle: each where it lies, and the short tangled line its middle went along, which leads nowhere."""
    chance = Random("jiggling")
    out: list[Shape] = []
    for u, v in pts("-3.4 -3.2, .6 -3.6, 3.6 -1.6, -1.2 -.4, -3.6 2.2, 1.8 1.4, 0 4"):
        x, y, turn = u * size, v * size, chance.uniform(0, pi)
        way = [(x + chance.uniform(-0.75, 0.75) * size, y + chance.uniform(-0.75, 0.75) * size) for _ in range(9)]
        rod = geometry.moved(capsule(size, 0.17 * size), *way[0], turn=turn)
        out += [pen.stroke(way, 0.8, "track"), pen.filled(rod, "dots")]
        last = geometry.moved(capsule(size, 0.17 * size), *way[-1], turn=turn + 0.8)
        out.append(pen.stroke(last, 0.7, "before", role="faint", closed=True))
    return Sketch(tuple(out), pen_for(9 * size, 9 * size))


def creeping(size: float) -> Sketch:
    """Slim rods that creep along their own length: each with where it was (faint) behind it on the same straight line."""
    out: list[Shape] = []
    for u, v, turn in ((-0.9, -1.5, 0.15), (0.8, -0.7, -0.5), (-0.7, 0.5, 0.35), (0.9, 1.3, -0.1)):
        c, s = cos(turn), sin(turn)
        for back, role in ((1.05, "faint"), (0.0, "ink")):
            x, y = (u + 0.4 - back * c) * size, (v - back * s) * size
            rod = slim(size, x, y, turn)
            out.append(pen.filled(rod, "dots") if role == "ink" else pen.stroke(rod, 0.7, "before", role="faint", closed=True))
        tip, head = (u + 0.4 + 0.62 * c, v + 0.62 * s), (u + 0.4 + 0.95 * c, v + 0.95 * s)
        left, right = ((head[0] - 0.17 * cos(turn + d), head[1] - 0.17 * sin(turn + d)) for d in (-0.45, 0.45))
        out.append(pen.strokes([geometry.scaled((tip, head), size), geometry.scaled((left, head, right), size)], 0.9, "track"))
    return Sketch(tuple(out), pen_for(4.6 * size, 4.2 * size))


def bent_kinds(size: float) -> Sketch:
    """The bent ones side by side: a comma, a stiff wave, a thin coil that bends as a whole."""
    out: list[Shape] = []
    for k, (u, v, turn) in enumerate(
        ((-1.1, -1.2, 0.5), (0.2, -1.3, 1.2), (1.2, -0.9, 0.2), (-0.9, 0.2, 2.0), (0.5, 0.1, 0.4), (1.1, 1.0, 2.4), (-0.5, 1.3, 0.2))
    ):
        share, turns, amp, thick, bend = ((0.38, 0.0, 0.0, 0.085, 1.5), (0.9, 2.2, 0.10, 0.075, 0.0), (1.2, 6.5, 0.05, 0.035, 1.0))[k % 3]
        out.append(
            pen.filled(
                geometry.moved(wound_body(share * size, turns, amp * size, thick * size, bend), u * size, v * size, turn=turn), "dots"
            )
        )
    return Sketch(tuple(out), pen_for(3.4 * size, 3.4 * size))


def dwarfs(size: float) -> Sketch:
    """Cells under the limit of the lens: faint soft dots, as wide as the lens makes any point; one ordinary rod for measure."""
    out: list[Shape] = []
    wide = max(size, _LIMIT)
    for x, y in pts(
        "-2.7 -2.4, -1.2 -2.9, .6 -2.2, 2.5 -2.6, -2.2 -.8, 2.8 -.5, -2.9 .9, -1.1 2.0, .9 2.7, 2.4 1.4, -2.4 2.7, 2.7 2.9, -.9 -1.2"
    ):
        out.append(pen.disc(x, y, size / 2, "dots", role="faint"))
        out += _fading(x, y, 0.9 * wide)
    rod = geometry.moved(capsule(2.0, 0.4), 0.6, 0.4, turn=-0.4)
    return Sketch((*out, pen.filled(rod, "rod")), pen_for(6.4, 6.4))


def _fading(x: float, y: float, r: float) -> tuple[Dots, ...]:
    """A soft spot that thins out to nothing."""
    return pen.grain(
        geometry.ellipse(x, y, r, r, count=36), 0.13 * r, "haze", lambda p: 1.0 - hypot(p[0] - x, p[1] - y) / r, sizes=(0.9,), role="faint"
    )


_LIMIT = 0.5
"""How wide a point comes out at 400x (µm), to the nearest tenth; the picture is drawn in µm, not in lengths of the cell."""


def coloured(size: float) -> Sketch:
    """Specks with a colour of their own: ragged brown ones, compact rust-red ones, black ones."""
    chance = Random("coloured specks")
    out: list[Shape] = []
    roles: tuple[Role, ...] = ("brown", "rust", "ink")
    for k, (u, v) in enumerate(
        pts(
            "-3 -3, -.8 -3.3, 1.6 -2.9, 3.3 -1.6, -2.2 -1.2, .4 -1.0, -3.4 .6, 2.3 .4, -1.2 .9, .9 1.9, 3.2 2.4, -2.7 2.8, -.4 3.3, 2.0 3.5"
        )
    ):
        count, low = ((15, 0.62), (8, 0.84), (6, 0.7))[k % 3]
        ring = [
            (size / 2 * s * cos(a), 0.86 * size / 2 * s * sin(a))
            for a, s in ((2 * pi * j / count, chance.uniform(low, 1.0)) for j in range(count))
        ]
        placed = geometry.moved(ring, u * size, v * size, turn=chance.uniform(0, pi))
        out.append(pen.filled(placed, "dots", role=roles[k % 3]))
    return Sketch(tuple(out), pen_for(8 * size, 8 * size), tonal=True)


MIXES: dict[str, Callable[[float], Sketch]] = {
    "mixed": mixed,
    "every-way": every_way,
    "two-planes": two_planes,
    "flat-discs": flat_discs,
    "swimming": swimming,
    "jiggling": jiggling,
    "creeping": creeping,
    "bent-kinds": bent_kinds,
    "dwarfs": dwarfs,
    "coloured": coloured,
}
"""Each by the word of `form` that asks for it."""
