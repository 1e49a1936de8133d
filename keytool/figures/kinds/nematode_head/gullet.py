"""Drawing a gullet: walls, lumen, muscle as hatching, glands as grain, valves, and the gut that follows."""

from __future__ import annotations

from itertools import pairwise
from math import cos, pi, sin, sqrt

from ... import geometry, pen
from ...shapes import Box, Point, Points, Shape
from .gullet_plan import Bulb, Gullet
from .head import Head
from .stoma import half_at


def draw(head: Head, g: Gullet) -> list[Shape]:
    """Walls, lumen, muscle, glands, valves, and the gut that follows."""
    return [*_walls(head, g), *_lumen(head, g), *_muscle(head, g), *_fillings(head, g), *_gut(head, g)]


def hollow(head: Head, g: Gullet | None, y: float) -> float:
    """Half width to keep clear of stipple at depth y."""
    front = max(head.mouth_width, head.lip * 0.9) if y < head.gullet_start else 0.0
    if g is None or y < g.tube[0][0]:
        return front
    if y >= g.stop:
        return 0.36 * head.width
    if head.gullet == "aphelenchoid" and y > g.stop - 0.1 * head.width:
        return 0.45 * head.width
    return max(front, g.half(y))


def _stop(head: Head, g: Gullet) -> float:
    return min(g.stop, head.end)


def _walls(head: Head, g: Gullet) -> list[Shape]:
    top, stop = g.tube[0][0], _stop(head, g)
    cuts = [top]
    for b in g.bulbs:
        cuts += [b.at - 0.96 * b.long, b.at + 0.96 * b.long]
    cuts = [c for c in cuts if c < stop] + [stop]
    out: list[Shape] = []
    for k, (y1, y2) in enumerate(pairwise(cuts)):
        bulb = g.bulbs[k // 2] if k % 2 else None
        part = "gullet" if bulb is None else ("bulb" if bulb.filling == "muscle" else "gland")
        count = max(4, int((y2 - y1) / (1.5 * head.pen)))
        side = tuple((g.half(y), y) for y in (y1 + (y2 - y1) * i / count for i in range(count + 1)))
        light, dark = (1.3, 1.9) if part == "bulb" else (0.8, 1.1)
        out += [pen.line(side, (dark,), part), pen.line(geometry.mirrored(side), (light,), part)]
    return out


def _lumen(head: Head, g: Gullet) -> list[Shape]:
    stop = _stop(head, g)
    gaps = [(b.at - 0.34 * b.long, b.at + 0.34 * b.long) for b in g.bulbs if b.valve != "none"]
    lines: list[Points] = []
    y = head.gullet_start + 0.02 * head.width
    for y1, y2 in [*gaps, (stop, stop)]:
        if min(y1, stop) > y:
            lines.append(((0.0, y), (0.0, min(y1, stop))))
        y = y2
    if g.bold:
        lines = [tuple((x + s * 0.9 * head.pen, yy) for x, yy in one) for one in lines for s in (-1, 1)]
    return [pen.strokes(lines, 1.2 if g.bold else 0.8, "gullet")] if lines else []


def _muscle(head: Head, g: Gullet) -> list[Shape]:
    """Hatching from lumen to wall, leaning forward; bulbs have their own, radiating from the valve."""
    first, last = g.muscle
    stop = min(last, _stop(head, g))
    step = 2.5 * head.pen
    inner = 1.5 * head.pen
    lines: list[Points] = []
    y = first + step
    while y < stop - 0.2 * step:
        bulb = any(abs(y - b.at) < b.long for b in g.bulbs)
        r = g.half(y) - 1.0 * head.pen
        cavity = half_at(head, y)
        front = cavity + 3.0 * head.pen if cavity else 0.0
        if not bulb and r > max(inner, front) + head.pen:
            rise = 0.22 * r
            lines += [((s * max(inner, front), y), (s * r, y - rise)) for s in (-1, 1) if y - rise > first]
        y += step
    return [pen.strokes(lines, 0.5, "gullet", role="faint")] if lines else []


def _fillings(head: Head, g: Gullet) -> list[Shape]:
    out: list[Shape] = []
    for b in g.bulbs:
        if b.filling == "gland":
            out += _grain(head, g, b)
            continue
        lines = []
        for k in range(28):
            c, s = cos(2 * pi * k / 28), sin(2 * pi * k / 28)
            if abs(c) < 0.25:
                continue
            lines.append(tuple((b.wide * f * c, b.at + b.long * f * s) for f in (0.50, 0.90)))
        seen = [one for one in lines if max(y for _, y in one) < head.end - head.pen]
        if seen:
            out.append(pen.strokes(seen, 0.55, "bulb", role="faint"))
        if b.at + 0.4 * b.long < head.end:
            out += _grinder(b) if b.valve == "grinder" else _lens(b)
    if head.gullet == "aphelenchoid":
        out += _lobe(head, g)
    return out


def _grinder(b: Bulb) -> list[Shape]:
    """The valve of a terminal bulb: two hard plates like a butterfly."""
    a = 0.46 * b.wide
    wing = geometry.curve(
        [
            (0.07 * a, -0.12 * a),
            (0.45 * a, -0.72 * a),
            (0.98 * a, -0.95 * a),
            (1.08 * a, -0.2 * a),
            (0.92 * a, 0.62 * a),
            (0.42 * a, 0.55 * a),
            (0.07 * a, 0.22 * a),
        ],
        per=6,
    )
    right = geometry.moved(wing, 0.0, b.at)
    return [pen.filled(right, "valve"), pen.filled(geometry.mirrored(right), "valve")]


def _lens(b: Bulb) -> list[Shape]:
    """The valve of a median bulb: two crescents facing each other across the lumen."""
    a, n = 0.20 * b.wide, 0.30 * b.long
    out_edge = geometry.curve([(0.25 * a, b.at - n), (1.25 * a, b.at), (0.25 * a, b.at + n)], per=8)
    in_edge = geometry.curve([(0.25 * a, b.at + n), (0.45 * a, b.at), (0.25 * a, b.at - n)], per=8)
    side = (*out_edge, *in_edge)
    return [pen.filled(side, "valve"), pen.filled(geometry.mirrored(side), "valve")]


def _grain(head: Head, g: Gullet, b: Bulb) -> list[Shape]:
    def density(p: Point) -> float:
        room = g.half(p[1]) - 1.6 * head.pen
        return 0.75 if p[1] < head.end - head.pen and abs(p[0]) < room and abs(p[0]) > 1.2 * head.pen else 0.0

    box = Box(-b.wide, b.at - b.long, 2 * b.wide, 2 * b.long)
    return list(pen.stipple(box, density, 2.6 * head.pen, "gland", sizes=(0.8, 1.1)))


def _lobe(head: Head, g: Gullet) -> list[Shape]:
    """The gland lobe of an aphelenchoid gullet, lying along the back of the gut."""
    d, top, end = head.width, g.stop, head.end
    inner, outer = 0.06 * d, 0.37 * d
    left = geometry.curve([(0.10 * d, top), (inner, top + 0.35 * d), (inner + 0.02 * d, end)], per=8)
    right = geometry.curve([(0.16 * d, top), (outer, top + 0.30 * d), (outer, end)], per=8)

    def density(p: Point) -> float:
        return 0.6 if inner + 0.03 * d < p[0] < outer - 0.03 * d and top + 0.15 * d < p[1] < end - head.pen else 0.0

    return [
        pen.stroke(left, 0.7, "gland"),
        pen.stroke(right, 0.7, "gland"),
        *pen.stipple(Box(inner, top, outer - inner, end - top), density, 2.6 * head.pen, "gland", sizes=(0.8, 1.1)),
    ]


def _gut(head: Head, g: Gullet) -> list[Shape]:
    """The first of the gut: two walls and coarse grains."""
    if g.stop >= head.end:
        return []
    d, top, end = head.width, g.stop, head.end
    lobed = head.gullet == "aphelenchoid"
    wide = 0.35 * d

    def half(y: float) -> float:
        t = min(1.0, (y - top) / (0.30 * d))
        return 0.05 * d + (wide - 0.05 * d) * sqrt(max(0.0, 1 - (1 - t) ** 2))

    count = 24
    side = tuple((half(y), y) for y in (top + (end - top) * k / count for k in range(count + 1)))
    sides = [geometry.mirrored(side)] if lobed else [side, geometry.mirrored(side)]

    def density(p: Point) -> float:
        free = abs(p[0]) < half(p[1]) - 1.8 * head.pen and p[1] < end - 1.5 * head.pen
        return 0.8 if free and not (lobed and p[0] > -head.pen) else 0.0

    return [
        *(pen.stroke(s, 0.8, "gut") for s in sides),
        *pen.stipple(Box(-wide, top, 2 * wide, end - top), density, 4.2 * head.pen, "gut", sizes=(1.5, 2.2), role="faint"),
    ]
