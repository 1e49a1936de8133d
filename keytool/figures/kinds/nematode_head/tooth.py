"""Teeth, which stand inside the mouth on its walls."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from ... import geometry, pen
from ...shapes import Path, Point, Points, Shape
from .head import Head
from .stoma import wall


def tooth(head: Head, style: str, denticles: str) -> list[Shape]:
    """The tooth or teeth named by `style`, and the denticles of the wall opposite."""
    side = wall(head)
    return [*_teeth(side, style, head), *_denticles(head, denticles)]


def _teeth(side: Points, style: str, head: Head) -> list[Shape]:
    match style:
        case "small":
            return [_bump(side, head, 0.5)]
        case "pair":
            return [*_pocketed(side, head, 0.60, 1), *_pocketed(side, head, 0.86, -1)]
        case "hook":
            return [_hook(side, head)]
        case "large-dorsal":
            return [_thorn(side, 0.42, 0.34, 0.40, head)]
        case "basal-dorsal":
            return [_thorn(side, 0.84, 0.26, 0.34, head)]
        case "three" | "three-forward":
            return _three(side, head, back=style == "three")
        case "movable":
            return _claws(side, head)
        case "front-hooks":
            return _front_hooks(side, head)
        case _:
            return []


def _at(side: Sequence[Point], depth: float) -> Point:
    """The point of the wall at a share of the cavity's depth."""
    top, base = side[0][1], side[-1][1]
    y = top + depth * (base - top)
    for (x1, y1), (x2, y2) in pairwise(side):
        if y1 <= y <= y2:
            return (x1 + (x2 - x1) * (y - y1) / ((y2 - y1) or 1.0), y)
    return side[-1]


def _thorn(side: Points, depth: float, base: float, reach: float, head: Head) -> Shape:
    """A thorn on a broad base, pointing forward: hollow in front, rounded behind."""
    n, w = head.mouth_length, head.mouth_width
    wall_points = [_at(side, depth + base * (k / 8 - 0.4)) for k in range(9)]
    foot, heel = wall_points[0], wall_points[-1]
    tip = (foot[0] - reach * w, foot[1] - 0.12 * n * reach / 0.4)
    front = geometry.curve([foot, (foot[0] - 0.50 * reach * w, foot[1] + 0.08 * base * n), tip], per=6)
    back = geometry.curve([tip, (tip[0] + 0.24 * reach * w, tip[1] + 0.50 * base * n), heel], per=6)
    return pen.filled((*front, *back, *reversed(wall_points)), "tooth")


def _bump(side: Points, head: Head, depth: float) -> Path:
    """A small tooth on the back wall, at a share of the cavity's depth."""
    size = max(0.18 * head.mouth_width, 0.09 * head.mouth_length)
    x, y = _at(side, depth)
    edge = geometry.curve([(x, y - 0.9 * size), (x - 0.6 * size, y - 0.5 * size), (x - 1.2 * size, y - 0.75 * size)], per=5)
    back = geometry.curve([(x - 1.2 * size, y - 0.75 * size), (x - 0.7 * size, y + 0.5 * size), (x, y + 1.1 * size)], per=5)
    return pen.filled((*edge, *back), "tooth")


def _pocketed(side: Points, head: Head, depth: float, s: int) -> list[Shape]:
    """A small tooth that stands in a pocket of the wall, at a share of the cavity's depth; `s` 1 is the back wall, -1 the belly wall."""
    n, w = head.mouth_length, head.mouth_width
    x, y = _at(side, depth)
    pocket = geometry.curve([(s * x, y - 0.12 * n), (s * (x + 0.16 * w), y + 0.02 * n), (s * (x - 0.02 * w), y + 0.15 * n)], per=6)
    front = geometry.curve(
        [(s * (x + 0.12 * w), y + 0.07 * n), (s * (x - 0.08 * w), y - 0.02 * n), (s * (x - 0.20 * w), y - 0.17 * n)], per=6
    )
    back = geometry.curve(
        [(s * (x - 0.20 * w), y - 0.17 * n), (s * (x - 0.12 * w), y + 0.10 * n), (s * (x + 0.02 * w), y + 0.16 * n)], per=6
    )
    return [pen.line(pocket, (1.0, 1.4, 1.0), "stoma"), pen.filled((*front, *back), "tooth")]


def _hook(side: Points, head: Head) -> Shape:
    """A small hook deep in the cavity."""
    n, w = head.mouth_length, head.mouth_width
    x, y = _at(side, 0.74)
    back = geometry.curve([(x, y + 0.1 * n), (x - 0.20 * w, y + 0.07 * n), (x - 0.27 * w, y - 0.09 * n)], per=6)
    front = geometry.curve([(x - 0.27 * w, y - 0.09 * n), (x - 0.13 * w, y - 0.02 * n), (x, y - 0.06 * n)], per=6)
    return pen.filled((*back, *front), "tooth")


def _three(side: Points, head: Head, *, back: bool) -> list[Shape]:
    """Three like teeth half way down, two on the walls in view and one between, seen from the front."""
    n, w = head.mouth_length, head.mouth_width
    way = 1 if back else -1
    x, y = _at(side, 0.52)
    foot, heel = _at(side, 0.52 - way * 0.10), _at(side, 0.52 + way * 0.10)
    tip = (x - 0.22 * w, y + way * 0.17 * n)
    edge = geometry.curve([foot, (x - 0.13 * w, y - way * 0.02 * n), tip], per=6)
    under = geometry.curve([tip, (x - 0.10 * w, y + way * 0.10 * n), heel], per=6)
    right = (*edge, *under, (x, y))
    middle = geometry.curve([(-0.10 * w, y - way * 0.08 * n), (-0.05 * w, y + way * 0.03 * n), (0.0, y + way * 0.16 * n)], per=6)
    front = (*middle, *reversed(geometry.mirrored(middle)))
    return [pen.filled(right, "tooth"), pen.filled(geometry.mirrored(right), "tooth"), pen.stroke(front, 0.9, "tooth", closed=True)]


def _front_hooks(side: Points, head: Head) -> list[Shape]:
    """Small hooks at the very front of a tube, on its walls, their tips curling outward; one more between, seen from the front."""
    x, y = side[0]
    size = max(1.5 * head.mouth_width, 0.30 * head.lip)
    hook = (
        *geometry.curve(
            [
                (x, y + 0.9 * size),
                (x + 0.04 * size, y + 0.2 * size),
                (x + 0.30 * size, y - 0.10 * size),
                (x + 0.62 * size, y + 0.22 * size),
            ],
            per=6,
        ),
        *geometry.curve([(x + 0.62 * size, y + 0.22 * size), (x + 0.36 * size, y + 0.22 * size), (x + 0.26 * size, y + 0.9 * size)], per=6),
    )
    middle = ((-0.14 * size, y + 0.42 * size), (0.0, y - 0.02 * size), (0.14 * size, y + 0.42 * size))
    return [pen.filled(hook, "tooth"), pen.filled(geometry.mirrored(hook), "tooth"), pen.stroke(middle, 0.9, "tooth")]


def _claws(side: Points, head: Head) -> list[Shape]:
    """A dorsal claw and, against it, a smaller tooth: the pair that closes when the worm bites."""
    n, w = head.mouth_length, head.mouth_width
    x, y = _at(side, 0.72)
    claw = (
        *geometry.curve(
            [(x, y + 0.14 * n), (x - 0.34 * w, y + 0.06 * n), (x - 0.50 * w, y - 0.22 * n), (x - 0.42 * w, y - 0.42 * n)], per=6
        ),
        *geometry.curve([(x - 0.42 * w, y - 0.42 * n), (x - 0.30 * w, y - 0.20 * n), (x, y - 0.10 * n)], per=6),
    )
    small = (
        *geometry.curve([(-x, y + 0.16 * n), (-x + 0.22 * w, y + 0.10 * n), (-x + 0.30 * w, y - 0.10 * n)], per=6),
        *geometry.curve([(-x + 0.30 * w, y - 0.10 * n), (-x + 0.16 * w, y), (-x, y - 0.02 * n)], per=6),
    )
    return [pen.filled(claw, "tooth"), pen.filled(small, "tooth")]


def _denticles(head: Head, style: str) -> list[Shape]:
    """On the wall facing the tooth: a smooth lengthwise thickening, a ridge of points, or crosswise rows like a rasp."""
    if style == "none":
        return []
    side = geometry.mirrored(wall(head))
    w, n = head.mouth_width, head.mouth_length
    if style == "thickening":
        return [pen.line([_at(side, 0.20 + 0.06 * k) for k in range(11)], (0.5, 0.12 * w / head.pen, 0.5), "denticles", inset=-1.0)]
    lines: list[Points] = []
    if style == "ridge":
        for k in range(9):
            x, y = _at(side, 0.24 + 0.055 * k)
            lines.append(((x + 0.05 * w, y), (x + 0.14 * w, y - 0.02 * n)))
    else:
        for row in range(6):
            x, y = _at(side, 0.26 + 0.07 * row)
            for k in range(4):
                x1 = x + (0.07 + 0.075 * k) * w
                lines.append(((x1, y), (x1 + 0.012 * w, y - 0.022 * n)))
    return [pen.strokes(lines, 1.1, "denticles")]
