"""The gullet by type: a tube with swellings, where its muscle lies and where the gut begins."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import sqrt

from ...shapes import Point
from .head import Head
from .stoma import half_at

_SMALL_MOUTHS = ("funnel", "minute", "slit")
_COLUMN = 0.60
"""How much of the body's width a thick gullet takes behind a mouth that is no box; round a box it has to reach farther."""


@dataclass(frozen=True, slots=True)
class Bulb:
    """A swelling: centre depth, half width, half length (µm), what fills it and what valve it holds."""

    at: float
    wide: float
    long: float
    filling: str = "muscle"
    valve: str = "none"
    square: float = 2.0

    def half(self, y: float) -> float:
        """Half width of the swelling alone at depth y."""
        t = abs(y - self.at) / self.long
        return self.wide * (1 - t**self.square) ** (1 / self.square) if t < 1 else 0.0


@dataclass(frozen=True, slots=True)
class Gullet:
    """A tube (depth, half width) with bulbs on it; `stop` is where it ends and the gut begins."""

    tube: tuple[Point, ...]
    bulbs: tuple[Bulb, ...]
    stop: float
    muscle: tuple[float, float]
    head: Head
    bold: bool = False
    share: float = 1.0

    def half(self, y: float) -> float:
        """Half width at depth y: tube and bulbs blended softly, kept within the body wall and within `share` of the body's width."""
        tube = _knots(self.tube, y)
        blend = (tube**4 + sum(b.half(y) ** 4 for b in self.bulbs)) ** 0.25
        return float(min(blend, self.share * self.head.half(y), self.head.half(y) - self.head.skin - 3.0 * self.head.pen))


def plan(head: Head) -> Gullet | None:
    """The gullet of this head, or None where none is drawn."""
    d, a, z = head.width, head.gullet_start, head.gullet_end
    span = z - a
    shoulder = a + 0.16 * d
    slim = max(half_at(head, 0.98 * a), 1.2 * head.pen)
    tube: tuple[Point, ...]
    match head.gullet:
        case "rhabditoid":
            swollen = head.mouth in ("open-tube", "flared-tube") and head.spear == "none"
            front, back = (0.15 * d, 0.21 * d) if swollen else (0.14 * d, 0.14 * d)
            top = a - (0.5 * head.mouth_length if swollen else 0.0)
            neck = a + 0.52 * span
            mouth = (top, slim + 1.5 * head.pen)
            tube = (mouth, (top + 0.2 * d, front), (neck - 0.14 * d, back), (neck + 0.08 * d, 0.07 * d), (z, 0.07 * d))
            bulb = Bulb(z - 0.30 * d, 0.225 * d, 0.30 * d, valve="grinder")
            return Gullet(tube, (bulb,), z, (top, neck), head)
        case "diplogastroid":
            first = Bulb(a + 0.48 * span, 0.27 * d, 0.33 * d, valve="lens")
            rear = Bulb(z - 0.30 * d, 0.20 * d, 0.32 * d, filling="gland")
            tube = ((a, slim), (shoulder, 0.15 * d), (first.at, 0.15 * d), (first.at + 0.3 * d, 0.075 * d), (z, 0.075 * d))
            return Gullet(tube, (first, rear), z, (a, first.at), head)
        case "tylenchoid":
            middle = Bulb(a + 0.46 * span, 0.235 * d, 0.32 * d, valve="lens")
            rear = Bulb(z - 0.38 * d, 0.20 * d, 0.42 * d, filling="gland")
            tube = ((a, slim), (shoulder, 0.085 * d), (middle.at - 0.3 * d, 0.085 * d), (middle.at + 0.3 * d, 0.055 * d), (z, 0.06 * d))
            return Gullet(tube, (middle, rear), z, (a, middle.at), head)
        case "aphelenchoid":
            middle = Bulb(a + 0.55 * span, 0.385 * d, 0.42 * d, valve="lens", square=2.7)
            tube = ((a, slim), (shoulder, 0.10 * d), (middle.at, 0.11 * d), (middle.at + 0.42 * d, 0.09 * d), (z, 0.08 * d))
            return Gullet(tube, (middle,), middle.at + 0.46 * d, (a, middle.at), head)
        case "criconematoid":
            middle = Bulb(a + 0.30 * span, 0.22 * d, 0.36 * d, valve="lens", square=2.4)
            rear = Bulb(z - 0.22 * d, 0.14 * d, 0.22 * d, filling="gland")
            front_end = head.spear_tip + 0.62 * head.spear_length
            tube = (
                (front_end, 0.06 * d),
                (front_end + 0.2 * d, 0.14 * d),
                (middle.at, 0.19 * d),
                (middle.at + 0.3 * d, 0.07 * d),
                (z, 0.06 * d),
            )
            return Gullet(tube, (middle, rear), z, (a, middle.at), head)
        case "dorylaimoid":
            swell = a + 0.42 * span
            tube = ((a, slim), (shoulder, 0.085 * d), (swell - 0.3 * d, 0.085 * d), (swell + 0.45 * d, 0.235 * d), (z, 0.235 * d))
            return Gullet(tube, (), head.end, (a, z + d), head)
        case "mononchoid":
            open_mouth = head.spear == "none"
            top = a - 0.30 * head.mouth_length if open_mouth else a
            edge = half_at(head, top) + 1.5 * head.pen if open_mouth else slim
            broad = max(0.26 * d, 0.62 * head.mouth_width if open_mouth else 0.0)
            tube = ((top, edge), (top + 0.25 * d, broad), (max(z, top + 0.3 * d), 0.29 * d))
            share = _COLUMN if open_mouth and head.mouth in _SMALL_MOUTHS else 1.0
            return Gullet(tube, (), head.end, (top, z + d), head, bold=True, share=share)
        case "trichodorid":
            tube = ((a, slim), (shoulder, 0.07 * d), (a + 0.45 * span, 0.07 * d), (z - 0.35 * d, 0.22 * d), (z, 0.20 * d))
            return Gullet(tube, (Bulb(z - 0.36 * d, 0.24 * d, 0.40 * d, filling="gland"),), z, (a, a), head)
        case "cylindrical":
            return Gullet(((a, slim), (shoulder, 0.12 * d), (z, 0.17 * d)), (), head.end, (a, z + d), head)
        case "thin":
            return Gullet(((a, slim), (shoulder, 0.07 * d), (z, 0.085 * d)), (), head.end, (a, a), head)
        case _:
            return None


def _knots(knots: tuple[Point, ...], y: float) -> float:
    """A rounded shoulder, then smooth steps from one (depth, half width) to the next."""
    (y0, r0), (y1, r1) = knots[:2]
    if y <= y1:
        t = max(0.0, (y - y0) / (y1 - y0))
        return r0 + (r1 - r0) * sqrt(max(0.0, 1 - (1 - t) ** 2))
    for (y1, r1), (y2, r2) in pairwise(knots[1:]):
        if y <= y2:
            t = (y - y1) / (y2 - y1)
            return r1 + (r2 - r1) * t * t * (3 - 2 * t)
    return knots[-1][1]
