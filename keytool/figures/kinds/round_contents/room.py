"""The room inside a wall: its size, places in it, how it is shaded."""

from __future__ import annotations

from collections.abc import Callable

from ... import geometry
from ...shapes import Point, Points

PART = "contents"


def shaded(room: Points) -> Callable[[Point], float]:
    """How dense stipple is at a point: denser away from the light."""
    box = geometry.around(room)
    r = max(box.width, box.height) / 2
    return lambda p: 0.30 + 0.6 * max(0.0, (0.6 * p[0] + 0.8 * p[1]) / r)


def at(room: Points, x: float, y: float) -> Point:
    """A place in the room, -1 to 1 each way."""
    box = geometry.around(room)
    return (x * box.width / 2, y * box.height / 2)


def size(room: Points) -> float:
    """Half the narrower measure of the room (µm)."""
    box = geometry.around(room)
    return min(box.width, box.height) / 2
