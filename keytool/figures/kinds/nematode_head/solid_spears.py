"""Spears that are not hollow: the bowed onchiostyle and the tooth on the wall."""

from __future__ import annotations

from ... import geometry, pen
from ...shapes import Shape
from .head import Head


def onchiostyle(head: Head) -> list[Shape]:
    """A solid spear bowed toward the belly (left), thickest behind, with no lumen and no knobs."""
    top, n = head.spear_tip, head.spear_length
    bow, thick = 0.085 * n, head.spear_width / 2 if head.spear_width is not None else max(0.026 * n, 1.1 * head.pen)

    def spine(t: float) -> float:
        return bow * (4 * t * (1 - t)) - 0.4 * bow

    count = 24
    right, left = [], []
    for k in range(count + 1):
        t = k / count
        half = thick * (0.12 + 0.88 * min(1.0, t / 0.55)) * (1.0 if t < 0.9 else 1.15)
        right.append((spine(t) + half, top + n * t))
        left.append((spine(t) - half, top + n * t))
    base = top + n
    x = spine(1.0)
    foot = ((x - thick, base), (x - 0.5 * thick, base + head.base_length))
    foot2 = ((x + thick, base), (x + 0.5 * thick, base + head.base_length))
    return [pen.filled((*right, *reversed(left)), "spear"), pen.strokes((foot, foot2), 0.8, "base")]


def mural_tooth(head: Head) -> list[Shape]:
    """One solid tooth fixed on the left, belly-side wall of a wide mouth, off the axis, pointing forward."""
    top, n = head.spear_tip, head.spear_length
    w = max(0.30 * n, head.lip * 0.55)
    y0, y1 = 0.25 * head.lip, top + n
    right = geometry.curve([(0.35 * w, y0), (w * 0.9, top), (w * 0.95, y1 - 0.3 * n), (0.35 * w, y1 + 0.12 * n)], per=12)
    left = geometry.mirrored(right)
    seat = [p for p in left if top + 0.42 * n <= p[1] <= y1]
    tip = (-0.38 * w, top)
    front = geometry.curve([seat[0], (-0.62 * w, top + 0.26 * n), tip], per=6)
    back = geometry.curve([tip, (-0.22 * w, top + 0.45 * n), (-0.34 * w, top + 0.80 * n), (seat[-1][0] * 0.9, y1)], per=6)
    tooth = (*front, *back, *reversed(seat))
    return [*(pen.line(s, (0.9, 1.2, 0.9), "stoma") for s in (right, left)), pen.filled(tooth, "spear")]
