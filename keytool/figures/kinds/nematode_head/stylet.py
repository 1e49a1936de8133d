"""The stylet: a hollow needle of cone and shaft, with knobs its muscles pull on."""

from __future__ import annotations

from ... import geometry, pen
from ...shapes import Points, Shape
from .head import Head


def stylet(head: Head, knobs: str, knob_shape: str, *, shed: bool) -> list[Shape]:
    """Cone, shaft and three knobs: two stand aside in this view, one lies between.

    In a moulting worm (`shed`) the cone has gone with the old skin and the new knobs are not there yet.
    """
    top, n, p = head.spear_tip, head.spear_length, head.pen
    half = stylet_half(head)
    joint, base = top + 0.5 * n, top + n
    out: list[Shape] = []
    if not shed:
        out.append(pen.filled(((-0.1 * p, top), (0.1 * p, top), (half, joint), (-half, joint)), "spear"))
    tube = ((half, joint), (half, base - 0.02 * n))
    out += [pen.line(s, (1.2, 1.2), "spear", inset=0.0) for s in (tube, geometry.mirrored(tube))]
    out.append(pen.stroke(((-half, joint), (half, joint)), 1.0, "spear"))
    if shed:
        return out
    muscle_foot = knob_half(head, knobs)
    return [*out, *_knobs(head, knobs, knob_shape), *_muscles(head, muscle_foot)]


def stylet_half(head: Head) -> float:
    """Half the thickness of the shaft."""
    if head.spear_width is not None:
        return head.spear_width / 2
    return max(0.035 * min(head.spear_length, 40.0) + 0.12, 0.9 * head.pen)


def knob_half(head: Head, knobs: str) -> float:
    """Half the width across the knobs."""
    full = (2.2 + 0.14 * min(head.spear_length, 60.0)) / 2
    return {"none": stylet_half(head), "faint": 1.5 * stylet_half(head), "tiny": 0.42 * full, "distinct": full}[knobs]


def _knobs(head: Head, size: str, shape: str) -> list[Shape]:
    base, half, shaft = head.spear_tip + head.spear_length, knob_half(head, size), stylet_half(head)
    if size == "none":
        return [pen.stroke(((-shaft, base), (shaft, base)), 1.0, "knobs")]
    if size == "faint":
        side = geometry.curve([(shaft, base - 2.6 * half), (half, base - 0.8 * half), (0.7 * half, base)], per=6)
        return [pen.filled((*side, *reversed(geometry.mirrored(side))), "knobs")]
    r = 0.44 * half
    tall = 1.06 * r
    middle = pen.disc(0.0, base - 0.86 * tall, 0.30 * half, "knobs", ry=0.86 * tall)
    if shape == "round":
        cx = half - r
        return [pen.disc(cx, base - tall, r, "knobs", ry=tall), pen.disc(-cx, base - tall, r, "knobs", ry=tall), middle]
    rise = {"tulip": 2.6, "anchor": 1.9}[shape] * r
    points = {
        "tulip": [
            (shaft, base - 1.3 * r),
            (0.62 * half, base - 1.5 * r),
            (0.8 * half, base - rise),
            (half, base - 1.3 * r),
            (0.86 * half, base - 0.4 * r),
            (0.4 * half, base),
            (0.0, base),
        ],
        "anchor": [
            (shaft, base - 0.9 * r),
            (0.5 * half, base - 1.0 * r),
            (half, base - rise),
            (0.92 * half, base - 0.7 * r),
            (0.5 * half, base - 0.1 * r),
            (0.0, base),
        ],
    }[shape]
    side = geometry.curve(points, per=6)
    return [pen.filled((*side, *reversed(geometry.mirrored(side))), "knobs")]


def _muscles(head: Head, half: float) -> list[Shape]:
    """The muscles that push the spear out: from the knobs forward to the head framework."""
    base, r = head.spear_tip + head.spear_length, head.lip
    lines: list[Points] = []
    for k in range(4):
        foot = (half * (0.55 + 0.15 * k), base - half * (1.15 - 0.12 * k))
        hold = (r * (0.50 + 0.11 * k), 0.80 * r + 0.05 * k * r)
        bow = ((foot[0] + hold[0]) / 2 + 0.03 * r * k, (foot[1] + hold[1]) / 2)
        lines.append(geometry.curve([foot, bow, hold], per=5))
    return [pen.strokes([*lines, *(geometry.mirrored(one) for one in lines)], 0.5, "muscles", role="faint")]
