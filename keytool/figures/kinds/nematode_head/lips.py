"""What stands on the lips: outgrowths, bristles, frills, the stiff cap, and the amphid beside them."""

from __future__ import annotations

from math import cos, pi, sin

from ... import geometry, pen
from ...shapes import Point, Shape
from .head import Head


def outgrowths(head: Head, style: str, length: float) -> list[Shape]:
    """Three processes before the mouth (of which two stand aside and one between): outside, never inside."""
    r = head.lip
    if style == "points":
        return [
            pen.line(((x - 0.13 * r, y), (x, y - length), (x + 0.13 * r, y)), (1.0, 1.3, 1.0), "lips")
            for x, y in ((-0.52 * r, 0.14 * r), (-0.18 * r, 0.05 * r), (0.18 * r, 0.05 * r), (0.52 * r, 0.14 * r))
        ]
    if style == "flaps":
        return _flaps(r, length)
    if style == "low":
        return [
            pen.line(
                geometry.curve(
                    [
                        (x - 0.2 * r, y),
                        (x - 0.13 * r, y - 0.8 * length),
                        (x, y - length),
                        (x + 0.13 * r, y - 0.8 * length),
                        (x + 0.2 * r, y),
                    ],
                    per=6,
                ),
                (1.1, 1.4, 1.1),
                "lips",
            )
            for x, y in ((-0.52 * r, 0.14 * r), (0.0, 0.04 * r), (0.52 * r, 0.14 * r))
        ]
    out: list[Shape] = []
    for x, y, lean in ((-0.6 * r, 0.13 * r, -0.36), (0.0, 0.02 * r, 0.0), (0.6 * r, 0.13 * r, 0.36)):
        out += _antler((x, y), lean, length, style == "fringed", r)
    return out


def _flaps(r: float, length: float) -> list[Shape]:
    """Six triangular flaps round the mouth, of which three face the eye: broad at the foot, each with a rib, the tips leaning in."""
    out: list[Shape] = []
    for x, y, lean, wide in ((-0.60, 0.16, 0.34, 0.24), (0.60, 0.16, -0.34, 0.24), (0.0, 0.10, 0.0, 0.30)):
        face = geometry.curve(
            [(-wide * r, 0.0), (-0.62 * wide * r, -0.55 * length), (0.0, -length), (0.62 * wide * r, -0.55 * length), (wide * r, 0.0)],
            per=6,
        )
        placed = geometry.moved(face, x * r, y * r, turn=lean)
        rib = geometry.moved([(0.0, -0.02 * length), (0.0, -0.78 * length)], x * r, y * r, turn=lean)
        out += [pen.filled(placed, "skin", role="paper"), pen.stroke(placed, 1.6, "lips"), pen.line(rib, (1.6, 0.7), "lips")]
    return out


def _antler(foot: Point, lean: float, length: float, fringed: bool, r: float) -> list[Shape]:
    """One forked process: a stem that splits in two; fringed ones carry a row of fine tines on each branch."""
    fork = 0.42 * length
    stem = [(0.0, 0.0), (0.0, -fork * 0.6), (0.0, -fork)]
    out: list[Shape] = [pen.line(geometry.moved(stem, *foot, turn=lean), (2.4, 1.7), "lips")]
    spread = min(0.26 * length, 0.32 * r)
    tines: list[tuple[Point, ...]] = []
    for side in (-1, 1):
        branch = geometry.curve([(0.0, -fork), (side * 0.55 * spread, -0.62 * length), (side * spread, -length)], per=6)
        out.append(pen.line(geometry.moved(branch, *foot, turn=lean), (1.7, 0.8), "lips"))
        if fringed:
            for k in (4, 7, 10):
                x, y = branch[k]
                tines += [geometry.moved(((x, y), (x + s * 0.10 * length, y - 0.10 * length)), *foot, turn=lean) for s in (-1, 1)]
    if tines:
        out.append(pen.strokes(tines, 0.65, "lips"))
    return out


def bristles(head: Head, style: str, length: float) -> list[Shape]:
    """Stiff bristles at the base of the lips, leaning forward; a ring shows more of them."""
    y = 0.55 * head.lip
    feet = ((0.99, 0.0, 0.5),) if style == "four" else ((0.99, 0.0, 0.42), (1.0, 0.3, 0.85), (0.62, -0.05, 0.24), (0.22, -0.1, 0.08))
    out: list[Shape] = []
    for share, down, lean in feet:
        foot = (share * head.lip, y + down * head.lip)
        tip = (foot[0] + length * sin(lean), foot[1] - length * cos(lean))
        mid = ((foot[0] + tip[0]) / 2 + 0.05 * length, (foot[1] + tip[1]) / 2)
        line = geometry.curve([foot, mid, tip], per=5)
        out += [pen.line(s, (1.5, 0.6), "bristles") for s in (line, geometry.mirrored(line))]
    return out


def frill(head: Head) -> list[Shape]:
    """A frilled cap: three thin fans that stand up round the mouth, ribbed, their edges cut into scallops."""
    r = head.lip
    out: list[Shape] = []
    for x, y, lean, size in ((-0.62, 0.26, -0.62, 0.92), (0.62, 0.26, 0.62, 0.92), (0.0, 0.22, 0.0, 1.05)):
        out += _fan((x * r, y * r), lean, size * r)
    return out


def _fan(foot: Point, lean: float, size: float) -> list[Shape]:
    """One fan: its whole face, its edge, its ribs."""
    lobes, spread = 5, 0.62
    rim: list[Point] = []
    for k in range(lobes * 8 + 1):
        a = spread * (2 * k / (lobes * 8) - 1)
        reach = size * (0.86 + 0.14 * abs(sin(pi * k / 8)) ** 0.7)
        rim.append((reach * sin(a), -reach * cos(a)))
    edge = ((-0.14 * size, 0.0), *rim, (0.14 * size, 0.0))
    ribs = [((0.16 * x, 0.16 * y), (0.97 * x, 0.97 * y)) for x, y in rim[8 : lobes * 8 : 8]]
    return [
        pen.filled(geometry.moved(edge, *foot, turn=lean), "skin", role="paper"),
        pen.stroke(geometry.moved(edge, *foot, turn=lean), 1.3, "lips"),
        pen.strokes([geometry.moved(rib, *foot, turn=lean) for rib in ribs], 0.7, "lips"),
    ]


def cap(head: Head) -> list[Shape]:
    """The stiff dark head framework: two solid blocks with the spear's passage between."""
    r = head.lip
    slot = max(0.16 * r, 1.4 * head.pen)
    block = geometry.curve([(slot, 0.16 * r), (0.62 * r, 0.17 * r), (0.85 * r, 0.34 * r), (0.9 * r, 0.66 * r)], per=6)
    under = geometry.curve([(0.72 * r, 0.70 * r), (0.60 * r, 0.50 * r), (slot + 0.06 * r, 0.44 * r)], per=6)
    side = (*block, *under)
    return [pen.filled(side, "cap"), pen.filled(geometry.mirrored(side), "cap")]


def frame(head: Head) -> list[Shape]:
    """The light framework of a stylet-bearing head that has no dark cap."""
    r = head.lip
    side = geometry.curve([(0.16 * r, 0.26 * r), (0.52 * r, 0.28 * r), (0.78 * r, 0.48 * r), (0.74 * r, 0.78 * r)], per=6)
    return [pen.line(s, (0.6, 1.0, 0.7), "frame") for s in (side, geometry.mirrored(side))]


def amphid(head: Head, style: str) -> list[Shape]:
    """A sense organ on the side of the head: a ring, or a spiral."""
    y, r = head.join + 0.75 * head.lip, 0.30 * head.lip
    x = 0.62 * head.half(y)
    if style == "round":
        return [pen.ring(x, y, r, 1.0, "amphid")]
    turns = tuple((x + r * (1 - k / 40) * cos(k * pi / 9), y + r * (1 - k / 40) * sin(k * pi / 9)) for k in range(38))
    return [pen.stroke(turns, 0.8, "amphid")]
