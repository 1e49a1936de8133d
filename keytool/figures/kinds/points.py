"""Outlines written as text: `0 0, .12 .03, .2 .18` is three points."""

from __future__ import annotations

from ..shapes import Points


def pts(text: str) -> Points:
    """The points of "x y, x y, ..." in the order written."""
    return tuple((float(x), float(y)) for x, y in (pair.split() for pair in text.split(",")))
