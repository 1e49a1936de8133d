"""Both edges of a hair."""

from __future__ import annotations

from collections.abc import Callable

from ... import pen
from ...shapes import Points, Shape
from .. import tube

Half = Callable[[float], float]


def sides(line: Points, half: Half, light: float = 1.3, dark: float = 2.0, part: str = "outline") -> list[Shape]:
    """Both edges; the ink lies inside, so the hair keeps its true width."""
    right, left = tube.sides(line, half)
    return [pen.line(left, (dark,), part, inset=1.0), pen.line(tuple(reversed(right)), (light,), part, inset=1.0)]
