"""Round things by wall and contents: cysts, spores, eggs."""

from __future__ import annotations

from math import cos, pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Box, Point, Shape
from .kind import Kind, Values, accent, choice, flag, num, um, word


def build(v: Values) -> Sketch:
    """A round body centred on the page."""
    d = num(v, "diameter")
    r, pen_um = d / 2, pen_for(1.15 * d, 1.15 * d)
    wall, contents = word(v, "wall"), word(v, "contents")
    shapes = _wall(r, wall, pen_um)
    room = r * {"single": 0.92, "double": 0.80, "thick": 0.78, "warty": 0.88, "spiny": 0.88}[wall]
    shapes += _contents(room, contents, pen_um)
    if v["stalk"]:
        shapes += _stalk(r, d)
    return Sketch(tuple(shapes), pen_um)


def _wall(r: float, wall: str, pen_um: float) -> list[Shape]:
    out: list[Shape] = [pen.contour(geometry.ellipse(0, 0, r, r, count=96), 1.3, 2.6, "outline")]
    match wall:
        case "double":
            out.append(pen.contour(geometry.ellipse(0, 0, 0.85 * r, 0.85 * r, count=96), 0.9, 1.3, "wall"))
        case "thick":
            out.append(pen.contour(geometry.ellipse(0, 0, 0.82 * r, 0.82 * r, count=96), 1.0, 1.4, "wall"))
            lines = [
                ((0.84 * r * cos(a), 0.84 * r * sin(a)), (0.95 * r * cos(a), 0.95 * r * sin(a)))
                for a in (2 * pi * k / 72 for k in range(72))
            ]
            out.append(pen.strokes(lines, 0.5, "wall", role="faint"))
        case "warty":
            for k in range(30):
                a = 2 * pi * k / 30
                out.append(pen.disc(1.02 * r * cos(a), 1.02 * r * sin(a), 0.045 * r, "wall"))
        case "spiny":
            for k in range(26):
                a = 2 * pi * k / 26
                foot = [(r * cos(a + s), r * sin(a + s)) for s in (-0.06, 0.06)]
                out.append(pen.filled((foot[0], (1.16 * r * cos(a), 1.16 * r * sin(a)), foot[1]), "wall"))
    return out


def _contents(room: float, contents: str, pen_um: float) -> list[Shape]:
    box = Box(-room, -room, 2 * room, 2 * room)

    def shaded(p: Point) -> float:
        d2 = p[0] ** 2 + p[1] ** 2
        return 0.30 + 0.6 * max(0.0, (0.6 * p[0] + 0.8 * p[1]) / room) if d2 < (0.96 * room) ** 2 else 0.0

    match contents:
        case "grains":
            return list(pen.stipple(box, shaded, 3.4 * pen_um, "contents", sizes=(1.0, 1.7)))
        case "oil":
            drops = (
                (-0.25, -0.18, 0.38),
                (0.38, 0.12, 0.27),
                (-0.12, 0.48, 0.22),
                (0.22, -0.55, 0.18),
                (-0.62, 0.30, 0.13),
                (0.55, 0.55, 0.12),
            )
            return [pen.contour(geometry.ellipse(x * room, y * room, s * room, s * room), 0.9, 1.6, "contents") for x, y, s in drops]
        case "star":
            ring = []
            for k in range(48):
                a = 2 * pi * k / 48
                s = 0.55 + 0.42 * (0.5 + 0.5 * cos(6 * a)) ** 1.6
                ring.append((room * s * cos(a), room * s * sin(a)))
            inner = tuple(ring)
            dots = pen.stipple(box, lambda p: 0.7 * shaded(p) + 0.1 if geometry.inside(inner, p) else 0.0, 3.6 * pen_um, "contents")
            return [pen.contour(geometry.curve(inner, closed=True, per=3), 1.0, 1.8, "contents"), *dots]
        case "cell":
            edge = pen.wobble(geometry.ellipse(0, 0, 0.86 * room, 0.86 * room, count=72), 0.04 * room, 3, "cell")
            return [
                pen.contour(edge, 0.8, 1.2, "contents"),
                pen.ring(0.12 * room, -0.08 * room, 0.34 * room, 0.9, "contents"),
                pen.disc(0.12 * room, -0.08 * room, 0.14 * room, "contents"),
                *pen.stipple(
                    box,
                    lambda p: (
                        0.8 * shaded(p)
                        if geometry.inside(edge, p) and (p[0] - 0.12 * room) ** 2 + (p[1] + 0.08 * room) ** 2 > (0.42 * room) ** 2
                        else 0.0
                    ),
                    3.8 * pen_um,
                    "contents",
                ),
            ]
        case _:
            glint = geometry.arc(0, 0, 0.80 * room, 1.12 * pi, 1.36 * pi)
            return [pen.line(glint, (0.4, 1.3, 0.4), "contents", role="faint")]


def _stalk(r: float, d: float) -> list[Shape]:
    """A stub of the thread it grew on, joined to the wall and torn off square."""
    half, drop = 0.10 * d, 0.55 * d
    top = (r * r - half * half) ** 0.5
    left = geometry.curve(
        [(-1.25 * half, top - 0.03 * d), (-half, top + 0.12 * d), (-0.9 * half, r + drop * 0.6), (-1.0 * half, r + drop)], per=6
    )
    right = geometry.curve(
        [(1.25 * half, top - 0.03 * d), (half, top + 0.12 * d), (1.0 * half, r + drop * 0.6), (1.05 * half, r + drop * 0.96)], per=6
    )
    torn = ((-1.0 * half, r + drop), (-0.3 * half, r + 0.94 * drop), (0.3 * half, r + 1.02 * drop), (1.05 * half, r + 0.96 * drop))
    return [pen.line(left, (1.4, 1.2), "stalk"), pen.line(right, (1.8, 1.6), "stalk"), pen.stroke(torn, 0.8, "stalk")]


KIND = Kind(
    "round-body",
    "a cyst, spore or egg: a round body by its wall and what is in it",
    (
        um("diameter", 20, 2, 1000, "outer diameter, ornament left out"),
        choice("wall", ("single", "double", "thick", "warty", "spiny"), "the wall"),
        choice("contents", ("grains", "oil", "star", "clear", "cell"), "what is inside; star: a second, star-shaped wall"),
        flag("stalk", "a stub of the thread it grew on"),
        accent("body", "wall", "contents", "stalk"),
    ),
    build,
)
