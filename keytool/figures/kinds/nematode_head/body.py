"""The outline: lips running smoothly into the neck, cuticle, rings, loose skins, shade."""

from __future__ import annotations

from collections.abc import Callable
from math import sin

from ... import geometry, pen
from ...shapes import Box, Point, Points, Shape
from .head import Head

_LIPS: dict[str, tuple[Point, ...]] = {  # right half, as shares of half the lip width
    "smooth": ((0, 0), (0.34, 0.03), (0.66, 0.16), (0.88, 0.42), (1.0, 0.72)),
    "offset": ((0, 0), (0.4, 0.02), (0.76, 0.12), (0.97, 0.38), (0.99, 0.62), (0.92, 0.84), (0.905, 0.98)),
    "angular": ((0, 0), (0.5, 0.02), (0.86, 0.14), (1.0, 0.42), (0.97, 0.66), (0.84, 0.84)),
    "disc": ((0, 0), (0.7, 0.0), (1.16, 0.06), (1.32, 0.2), (1.2, 0.36), (0.84, 0.5), (0.78, 0.64)),
    "frilled": ((0, 0.16), (0.4, 0.18), (0.76, 0.26), (0.95, 0.46), (0.96, 0.7), (0.88, 0.9), (0.86, 1.0)),
    "capped": ((0, 0), (0.42, 0.0), (0.72, 0.05), (0.93, 0.22), (1.0, 0.46), (0.96, 0.68)),
}


def right_side(head: Head) -> Points:
    """The right half of the outline, from the mouth to the crop."""
    lips = [(x * head.lip, y * head.lip) for x, y in _LIPS[head.lip_shape]]
    steps = 40
    neck = [(head.half(y), y) for y in (head.join + (head.end - head.join) * k / steps for k in range(steps + 1))]
    if head.coarse:
        return (*geometry.curve(lips)[:-1], *_ringed(head))
    if head.lip_shape == "angular":
        return (*lips[:2], *lips[2:-1], *geometry.curve([lips[-1], *neck], per=3))
    return geometry.curve([*lips, *neck], per=6)


def ring_length(head: Head) -> float:
    """Length of one coarse ring."""
    return head.width / 9


def _ringed(head: Head) -> Points:
    """Rings that flare backward: each starts narrow and ends in a rounded lip that overhangs the next."""
    out: list[Point] = []
    step = ring_length(head)
    count = round((head.end - head.join) / step)
    for k in range(count):
        y = head.join + k * step
        wide, deep = head.half(y + step / 2), 0.30 * step
        out += [(wide - deep, y), (wide - 0.45 * deep, y + 0.25 * step), (wide - 0.08 * deep, y + 0.6 * step)]
        out += [(wide, y + 0.84 * step), (wide - 0.2 * deep, y + 0.98 * step)]
    return tuple(out)


def outline(head: Head) -> list[Shape]:
    """Outline, inner cuticle line and the cut end."""
    right = right_side(head)
    whole = (*reversed(geometry.mirrored(right)), *right[1:])
    lip = tuple(p for p in whole if p[1] <= head.join)
    return [
        pen.contour(whole, 1.2, 2.3, "outline", closed=False),
        pen.contour(lip, 1.2, 1.9, "lip-region", closed=False),
        *_inner_line(head),
        _cut(head),
    ]


def _inner_line(head: Head) -> list[Shape]:
    if head.coarse:
        return []
    skin = head.skin
    steps = 30
    start = head.join + 0.4 * head.lip
    side = tuple((head.half(y) - skin, y) for y in (start + (head.end - start) * k / steps for k in range(steps + 1)))
    return [pen.stroke(s, 0.55, "cuticle") for s in (side, geometry.mirrored(side))]


def _cut(head: Head) -> Shape:
    """The crop: a shallow S, the draughtsman's sign for a thing that goes on."""
    wide, y = head.half(head.end), head.end
    return pen.stroke(tuple((wide * (k / 12 - 1), y + 0.02 * head.width * sin(k * 0.5236)) for k in range(25)), 0.5, "cut", role="faint")


def rings(head: Head, style: str) -> list[Shape]:
    """Fine ticks along the skin, or the furrows of coarse rings running in from the edge."""
    lines: list[Points] = []
    if style == "fine":
        step = max(head.width / 26, 3.0 * head.pen)
        y = head.join + 0.3 * head.lip
        while y < head.end:
            wide = head.half(y)
            lines.append(((wide - 0.4 * head.pen, y), (wide - 0.9 * head.skin, y + 0.15 * step)))
            y += step
    if style == "coarse":
        step = ring_length(head)
        for k in range(1, int((head.end - head.join) / step)):
            y = head.join + k * step
            wide = head.half(y) - 0.30 * step
            reach = 0.30 * wide
            lines.append(geometry.curve([(wide, y), (wide - reach / 2, y + 0.16 * step), (wide - reach, y + 0.22 * step)], per=4))
    if style == "scaled":
        return _scales(head)
    both = [*lines, *(geometry.mirrored(one) for one in lines)]
    return [pen.strokes(both, 0.6, "rings")] if both else []


def _scales(head: Head) -> list[Shape]:
    """Scales that point backward from the hind border of each coarse ring, each laid over the ring behind like a roof tile."""
    step = ring_length(head)
    count = round((head.end - head.join) / step)
    out: list[Shape] = []
    for k in reversed(range(count - 1)):
        y = head.join + (k + 0.84) * step
        wide = head.half(y)
        for share, across, lean in ((0.64, 0.46, 0.12), (0.92, 0.34, 0.30)):
            x, foot, reach = share * wide, across * step, 0.92 * step
            tile = (
                (x - foot, y - 0.10 * step),
                *geometry.curve([(x - foot, y + 0.10 * step), (x + lean * step, y + reach), (x + foot, y + 0.10 * step)], per=6),
                (x + foot, y - 0.10 * step),
            )
            for one in (tile, geometry.mirrored(tile)):
                out += [pen.filled(one, "skin", role="paper"), pen.stroke(one[1:-1], 1.0, "rings")]
        border = geometry.curve([(wide - 0.05 * step, y), (0.76 * wide, y + 0.06 * step), (0.56 * wide, y + 0.10 * step)], per=5)
        out.append(pen.strokes((border, geometry.mirrored(border)), 0.6, "rings"))
    return out


def loose_skin(head: Head, gap: float, part: str) -> list[Shape]:
    """A second skin standing off the body, closed over the mouth."""
    lips = [(x * (head.lip + gap), y * (head.lip + gap) - 1.5 * gap) for x, y in _LIPS["smooth"]]
    steps = 40
    first = head.join + 0.2 * head.lip
    neck = [
        (head.half(y) + gap * (1.25 - 0.35 * k / steps + 0.05 * sin(k * 0.45)), y)
        for k, y in ((k, first + (head.end - first) * k / steps) for k in range(steps + 1))
    ]
    right = geometry.curve([*lips, *neck], per=4)
    whole = (*reversed(geometry.mirrored(right)), *right[1:])
    return [pen.line(whole, (1.0, 0.8, 1.2), part)]


def shade(head: Head, hollow: Callable[[float], float]) -> list[Shape]:
    """Stipple on the shaded side only, clear of whatever lies within `hollow` of the axis at each depth."""
    skin = head.skin + 1.2 * head.pen

    def density(p: Point) -> float:
        x, y = p
        wide = (head.half(y) if y > head.join else 0.0) - skin
        clear = hollow(y) + 1.6 * head.pen
        if x > wide or x < clear or wide - clear < 2 * head.pen:
            return 0.0
        share = (x - clear) / (wide - clear)
        return 0.08 + 0.9 * share * share

    top = head.join + 0.8 * head.lip
    area = Box(0.0, top, head.width / 2, head.end - top)
    return list(pen.stipple(area, density, 3.0 * head.pen, "shade", sizes=(0.75, 0.95)))
