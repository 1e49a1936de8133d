"""Things that turn: a soft coil of hypha, a fine bacterial corkscrew."""

from __future__ import annotations

from math import cos, pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape
from .kind import Kind, Values, accent, choice, num, um, word
from .points import pts
from .springs import band, screw


def build(v: Values) -> Sketch:
    """The coil; its thread has the width asked for."""
    w = num(v, "width")
    match word(v, "form"):
        case "screw":
            return _screw(w)
        case "knot":
            return _knot(w)
        case "round-hypha":
            return _wound(w)
        case _:
            return _soft(w)


def _pieces(line: Points, half: float, height: list[float], part: str) -> list[Shape]:
    """Both walls of a thread that passes over and under itself: hidden where another stretch lies above it."""
    steps = len(line)
    band = 12
    rings = []
    for start in range(0, steps - 1, band):
        piece = line[start : min(start + band + 1, steps)]
        if len(piece) > 1:
            rings.append((start, (*geometry.offset(piece, [half] * len(piece)), *reversed(geometry.offset(piece, [-half] * len(piece))))))
    out: list[Shape] = []
    for s, weight in ((1, 1.2), (-1, 1.7)):
        side = geometry.offset(line, [s * half] * steps)
        run: list[Point] = []
        for k, p in enumerate(side):
            hidden = any(
                abs(start + band / 2 - k) > 1.6 * band
                and height[min(start + band // 2, steps - 1)] > height[k]
                and geometry.inside(ring, p)
                for start, ring in rings
            )
            if not hidden:
                run.append(p)
            elif len(run) > 1:
                out.append(pen.line(run, (weight,), part))
                run = []
            else:
                run = []
        if len(run) > 1:
            out.append(pen.line(run, (weight,), part))
    return out


def _soft(w: float) -> Sketch:
    """A soft thread in loose, uneven turns, wound up alone."""
    loops = pts(
        "-2.2 -8.5, -1.4 -5.6, 1.4 -3.6, 4.6 -1.6, 4.9 2.4, 1.6 4.6, -2.6 3.4, -3.6 -.4, -1 -3, 2.6 -2.2, 3.2 1.2, .6 3, "
        "-1.7 1.4, -1.2 -1, .9 -.9, 1.2 .7"
    )
    loops += pts("-.4 2, -3 4.6, -4.4 7.4")
    line = geometry.spaced(geometry.curve(geometry.scaled(loops, w), per=14), 0.25 * w)
    return Sketch(tuple(_pieces(line, w / 2, [float(k) for k in range(len(line))], "outline")), pen_for(12 * w, 17 * w))


def _knot(w: float) -> Sketch:
    """A stiff even thread in a loose knot of wide loops, one end free: near loops lie over far ones."""
    loops = pts(
        "-14 9, -9 3, -2 -3, 5 -7, 11 -4, 11 3, 5 7, -3 6, -9 1, -10 -6, -5 -11, "
        "3 -10, 8 -4, 7 4, 1 9, -6 8, -11 -1, -7 -8, 1 -8, 6 -1, 12 7, 17 11"
    )
    line = geometry.spaced(geometry.curve(geometry.scaled(loops, w), per=16), 0.25 * w)
    return Sketch(tuple(_pieces(line, w / 2, [float(k) for k in range(len(line))], "outline")), pen_for(32 * w, 24 * w))


def _wound(w: float) -> Sketch:
    """A thin thread wound in uneven turns round another, straighter one."""
    host_half, n = 1.1 * w, 30 * w
    host = [[(s * host_half + 0.3 * w * sin(y / (7 * w)), y) for y in (n * k / 60 for k in range(61))] for s in (-1, 1)]
    out: list[Shape] = []
    line, front = [], []
    for k in range(361):
        t = k / 360
        a = 2 * pi * (5.2 * t + 0.18 * sin(9 * t))
        line.append(((host_half + 0.45 * w) * sin(a) + 0.3 * w * sin(n * t / (7 * w)), n * (0.08 + 0.84 * t)))
        front.append(cos(a))
    rings = []
    run: list[Point] = []
    for p, f in zip((*line, line[-1]), (*front, -1.0), strict=True):
        if f > -0.12:
            run.append(p)
        elif len(run) > 2:
            rings.append((*geometry.offset(run, [w / 2] * len(run)), *reversed(geometry.offset(run, [-w / 2] * len(run)))))
            out += [pen.line(geometry.offset(run, [s * w / 2] * len(run)), (1.5,), "outline") for s in (-1, 1)]
            run = []
        else:
            run = []
    for side in host:
        out += [pen.line(piece, (1.4,), "host") for piece in geometry.runs(side, lambda p: not any(geometry.inside(r, p) for r in rings))]
    return Sketch(tuple(out), pen_for(8 * w, n))


def _screw(w: float) -> Sketch:
    """A fine thread in even corkscrew turns, the front of each turn over the back."""
    pitch, turns = 4.2 * w, 7
    line, front = screw(turns, lambda t: 2.0 * w, lambda t: pitch, 0.75 * w)
    return Sketch(tuple(band(line, front, w, "outline", near=(1.4, 1.9), far=0.9)), pen_for(10 * w, pitch * turns))


KIND = Kind(
    "coil",
    "a thread that is wound up",
    (
        choice(
            "form",
            ("soft", "round-hypha", "screw", "knot"),
            "a soft coil of hypha alone; wound round another hypha; a fine bacterial corkscrew; a stiff thread in a loose knot",
        ),
        um("width", 3, 0.2, 200, "width of the thread"),
        accent("body", "host"),
    ),
    build,
)
