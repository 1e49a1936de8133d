"""Outlines written as text: `0 0, .12 .03, .2 .18` is three points."""

from __future__ import annotations

from random import Random

from .. import geometry
from ..shapes import Points


def pts(text: str) -> Points:
    """The points of "x y, x y, ..." in the order written."""
    return tuple((float(x), float(y)) for x, y in (pair.split() for pair in text.split(",")))


def cornered(text: str, per: int = 8) -> Points:
    """A closed outline of smooth stretches that meet at corners: "x y, x y; x y, x y; ..." with a corner at each semicolon.

    Each stretch ends where the next one starts.
    """
    stretches = [pts(one) for one in text.split(";")]
    if len(stretches) == 1:
        return geometry.curve(stretches[0], closed=True, per=per)
    out: list[tuple[float, float]] = []
    for stretch, after in zip(stretches, (*stretches[1:], stretches[0]), strict=True):
        whole = (*stretch, after[0])
        out += geometry.curve(whole, per=per)[:-1]
    return tuple(out)


def rough(ring: Points, step: float, by: float, salt: object) -> Points:
    """A closed outline broken up into small uneven teeth: walked in steps of `step`, each point pushed in or out by up to `by` (µm)."""
    chance = Random(repr(salt))
    walk = geometry.spaced((*ring, ring[0]), step)[:-1]
    return geometry.offset(walk, [chance.uniform(-by, by) for _ in walk], closed=True)
