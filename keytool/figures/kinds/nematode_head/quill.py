"""The odontostyle: a hollow spear cut like a quill, its extension and its guiding ring."""

from __future__ import annotations

from ... import geometry, pen
from ...shapes import Shape
from .head import Head


def quill(top: float, n: float, half: float, aperture: float, part: str, *, x: float = 0.0) -> list[Shape]:
    """A hollow spear cut obliquely on its dorsal (right) side, as a quill is cut; no knobs."""
    cut = top + aperture * n
    ventral = geometry.curve([(x - half, top + n), (x - half, cut), (x - 0.86 * half, (top + cut) / 2), (x - 0.35 * half, top)], per=6)
    edge = geometry.curve([(x - 0.35 * half, top), (x + 0.1 * half, top + 0.45 * (cut - top)), (x + half, cut)], per=6)
    return [
        pen.line(ventral, (1.5, 1.7, 1.5, 1.0), part),
        pen.line(edge, (0.9, 0.9, 1.3), part),
        pen.line(((x + half, cut), (x + half, top + n)), (1.6, 1.5), part),
        pen.stroke(((x - half, top + n), (x + half, top + n)), 0.8, part),
    ]


def quill_half(head: Head) -> float:
    """Half the thickness of the quill."""
    if head.spear_width is not None:
        return head.spear_width / 2
    # Needle and dagger nematodes have the longest spears and yet slim ones, about 2 µm thick.
    stout = 0.046 * min(head.spear_length, 30.0) + 0.27
    slim = min(1.0, max(0.0, (head.spear_length - 35.0) / 30.0))
    return max(stout - 0.65 * slim, 1.3 * head.pen)


def odontostyle(head: Head, aperture: float, base: str, ring: str, ring_at: float) -> list[Shape]:
    """The quill, the extension that carries it, and the ring that guides it."""
    half = quill_half(head)
    return [
        *quill(head.spear_tip, head.spear_length, half, aperture, "spear"),
        *_odontophore(head, half, base),
        *_guide(head, half, ring, ring_at),
    ]


def _odontophore(head: Head, half: float, base: str) -> list[Shape]:
    y0, n = head.spear_base, head.base_length
    if n == 0.0:
        return []
    y1 = y0 + n
    rod = 0.72 * half
    if base == "flanged":
        side = geometry.curve(
            [
                (rod, y0),
                (rod, y0 + 0.45 * n),
                (1.15 * half, y0 + 0.68 * n),
                (2.0 * half, y1 - 0.10 * n),
                (1.75 * half, y1),
                (0.5 * half, y1 + 0.0),
            ],
            per=8,
        )
        inner = ((0.28 * half, y0 + 0.1 * n), (0.28 * half, y1 - 0.04 * n))
        return [
            *(pen.line(s, (0.9, 1.2, 2.2, 1.6), "base") for s in (side, geometry.mirrored(side))),
            *(pen.stroke(s, 0.6, "base") for s in (inner, geometry.mirrored(inner))),
        ]
    side = ((rod, y0), (rod, y1))
    out: list[Shape] = [pen.line(s, (0.9, 1.1), "base") for s in (side, geometry.mirrored(side))]
    if base == "knobbed":
        r = 0.95 * half
        out += [pen.disc(s * 1.1 * half, y1 - r, r, "base") for s in (-1, 1)]
        out.append(pen.disc(0.0, y1 - r, 0.7 * r, "base"))
    return out


def _guide(head: Head, half: float, ring: str, ring_at: float) -> list[Shape]:
    """The ring, with the sheath that runs to it from the mouth."""
    if ring == "none":
        return []
    rx = half + 2.4 * head.pen
    mouth = 0.30 * head.lip
    sheath = geometry.curve([(0.34 * head.lip, mouth), (0.8 * rx + 0.1 * head.lip, (mouth + ring_at) / 2), (rx, ring_at)], per=6)
    lines = [sheath, geometry.mirrored(sheath)]
    out: list[Shape] = [pen.strokes(lines, 0.5, "sheath", role="faint")]
    for y in (ring_at, ring_at + 2.6 * head.pen)[: 2 if ring == "double" else 1]:
        tick = geometry.curve([(half + 1.2 * head.pen, y + 0.5 * head.pen), (rx, y), (rx + 1.6 * head.pen, y - 0.5 * head.pen)], per=4)
        out += [pen.line(s, (1.6, 2.0, 1.4), "guiding-ring") for s in (tick, geometry.mirrored(tick))]
    return out
