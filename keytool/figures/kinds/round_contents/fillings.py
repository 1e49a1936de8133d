"""What fills a body: grains, drops, a ball, a star, spores, green or dark."""

from __future__ import annotations

from math import cos, hypot, pi, sin
from random import Random

from ... import geometry, pen
from ...shapes import Point, Points, Shape
from .room import PART, at, shaded, size


def clear(room: Points, pen_um: float) -> list[Shape]:
    """Nothing but a gleam."""
    box = geometry.around(room)
    glint = tuple((0.80 * box.width / 2 * cos(a), 0.80 * box.height / 2 * sin(a)) for a in (pi * (1.12 + 0.24 * k / 12) for k in range(13)))
    return [pen.line(glint, (0.4, 1.3, 0.4), PART, role="faint")]


def grains(room: Points, pen_um: float) -> list[Shape]:
    """Grains, denser on the shaded side."""
    return list(pen.grain(room, 3.4 * pen_um, PART, shaded(room), sizes=(1.0, 1.7)))


def _drops(room: Points, spots: tuple[tuple[float, float, float], ...]) -> list[Shape]:
    r = size(room)
    return [pen.contour(geometry.ellipse(*at(room, x, y), s * r, s * r, count=48), 0.9, 1.6, PART) for x, y, s in spots]


def oil(room: Points, pen_um: float) -> list[Shape]:
    """Many drops of oil of many sizes."""
    return _drops(
        room, ((-0.25, -0.18, 0.38), (0.38, 0.12, 0.27), (-0.12, 0.48, 0.22), (0.22, -0.55, 0.18), (-0.62, 0.30, 0.13), (0.55, 0.55, 0.12))
    )


def coloured_drops(room: Points, pen_um: float) -> list[Shape]:
    """The room packed with drops of a colour of their own (a dense grain stands for it)."""
    spots = ((-0.30, -0.28, 0.40), (0.42, -0.10, 0.32), (-0.05, 0.46, 0.34), (0.20, -0.68, 0.18), (-0.66, 0.32, 0.20), (0.62, 0.50, 0.16))
    out = _drops(room, spots)
    for x, y, s in spots:
        drop = geometry.ellipse(*at(room, x, y), 0.92 * s * size(room), 0.92 * s * size(room), count=48)
        out += pen.grain(drop, 2.2 * pen_um, PART, lambda p: 0.75, sizes=(1.0, 1.3))
    return out


def one_drop(room: Points, pen_um: float) -> list[Shape]:
    """One large drop."""
    return _drops(room, ((0.08, 0.05, 0.48),))


def ball(room: Points, pen_um: float) -> list[Shape]:
    """A thick-walled ball loose in the wall, one large drop in it and a pale spot."""
    r = 0.86 * size(room)
    inner = geometry.ellipse(0, 0, r, r, count=96)
    core = geometry.ellipse(0, 0, 0.84 * r, 0.84 * r, count=96)
    drop = geometry.ellipse(-0.06 * r, 0.05 * r, 0.46 * r, 0.46 * r, count=64)

    def grain(p: Point) -> float:
        return 0.0 if geometry.inside(drop, p) or (p[0] - 0.50 * r) ** 2 + (p[1] + 0.36 * r) ** 2 < (0.20 * r) ** 2 else 0.6

    return [
        pen.contour(inner, 1.2, 2.2, PART),
        pen.stroke(core, 0.8, PART, closed=True),
        pen.contour(drop, 0.9, 1.6, PART),
        pen.ring(0.50 * r, -0.36 * r, 0.13 * r, 0.7, PART),
        *pen.grain(geometry.ellipse(0, 0, 0.78 * r, 0.78 * r), 3.2 * pen_um, PART, grain),
    ]


def star(room: Points, pen_um: float) -> list[Shape]:
    """A second, star-shaped wall that reaches the outer one at its points; a nucleus in it."""
    r = size(room)
    ring = tuple(
        (r * s * cos(a), r * s * sin(a))
        for a, s in ((2 * pi * k / 48, 0.62 + 0.36 * (0.5 + 0.5 * cos(12 * pi * k / 48)) ** 1.8) for k in range(48))
    )
    inner = geometry.curve(ring, closed=True, per=3)
    nucleus = [pen.ring(0.06 * r, 0.02 * r, 0.17 * r, 0.9, PART), pen.disc(0.06 * r, 0.02 * r, 0.07 * r, PART)]
    shade = shaded(room)
    dots = pen.grain(
        inner,
        3.6 * pen_um,
        PART,
        lambda p: 0.0 if (p[0] - 0.06 * r) ** 2 + (p[1] - 0.02 * r) ** 2 < (0.22 * r) ** 2 else 0.7 * shade(p) + 0.1,
    )
    return [pen.contour(inner, 1.0, 1.8, PART), *nucleus, *dots]


def spores(room: Points, pen_um: float) -> list[Shape]:
    """Hundreds of equal oval spores."""
    box, chance = geometry.around(room), Random("spores")
    r = 0.062 * size(room) * 1.1
    spots: list[Point] = []
    for _ in range(2600):
        p = (box.x + chance.random() * box.width, box.y + chance.random() * box.height)
        if geometry.inside(room, (1.07 * p[0], 1.07 * p[1])) and all((p[0] - x) ** 2 + (p[1] - y) ** 2 > (1.95 * r) ** 2 for x, y in spots):
            spots.append(p)
    return [pen.strokes([geometry.ellipse(x, y, r, 0.72 * r, turn=chance.uniform(0, pi), count=12) for x, y in spots], 0.8, PART)]


def green(room: Points, pen_um: float) -> list[Shape]:
    """A green body with an edge and a clear part beside it (a dense even grain stands for green)."""
    box = geometry.around(room)
    a, b = 0.88 * box.width / 2, 0.88 * box.height / 2
    bay = [(0.55 * a, -0.52 * b), (0.10 * a, -0.30 * b), (0.02 * a, 0.08 * b), (0.36 * a, 0.34 * b), (0.80 * a, 0.30 * b)]
    outer = [(a * cos(t), b * sin(t)) for t in (0.34 + (2 * pi - 1.15) * k / 60 for k in range(61))]
    body = (*outer, *geometry.curve(bay, per=8))
    return [
        pen.stroke(body, 1.0, PART, closed=True),
        *pen.grain(body, 2.0 * pen_um, PART, lambda p: 0.8, sizes=(1.0, 1.3)),
        pen.contour(geometry.ellipse(-0.22 * a, 0.16 * b, 0.22 * size(room), 0.22 * size(room), count=24), 1.0, 1.4, PART),
    ]


def plastids(room: Points, pen_um: float) -> list[Shape]:
    """Many round green discs, pressed close."""
    out: list[Shape] = []
    r, chance = size(room), Random("green discs")
    seats = [(0.395 * col + 0.1975 * (row % 2), 0.340 * row) for row in range(-2, 3) for col in range(-3, 4)]
    for k, (u, v) in enumerate(seats):
        u, v = u + chance.uniform(-0.022, 0.022), v + chance.uniform(-0.022, 0.022)
        if hypot(u, v) > 0.79:
            continue
        x, y = at(room, u, v)
        share = chance.uniform(0.185, 0.200) * r
        disc = pen.wobble(geometry.ellipse(x, y, share, 0.90 * share, turn=1.1 * k, count=36), 0.05 * share, 3, k)
        out.append(pen.contour(disc, 0.9, 1.6, PART))
        out += pen.grain(disc, 2.1 * pen_um, PART, lambda p, x=x, y=y: 0.4 + 0.4 * ((p[0] - x) + (p[1] - y) > 0))  # type: ignore[misc]
    return out


def even(room: Points, pen_um: float) -> list[Shape]:
    """One even tint from wall to wall."""
    return [pen.stroke(room, 0.2, PART, role="faint", closed=True), *pen.grain(room, 2.1 * pen_um, PART, lambda p: 0.75, sizes=(0.9, 1.1))]


def dark(room: Points, pen_um: float) -> list[Shape]:
    """Dark right through: no light comes out."""
    return [pen.filled(room, PART)]
