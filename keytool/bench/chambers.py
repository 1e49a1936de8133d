"""Counting chambers: a known depth under a ruled glass, as an alternative to the film under a coverslip."""

from __future__ import annotations

from keytool.bench.sample import MM3_PER_ML


def square_ml(side_mm: float, depth_mm: float) -> float:
    """Volume over one ruled square: a 1 mm square of a 0.1 mm chamber is 0.0001 mL."""
    return side_mm**2 * depth_mm / MM3_PER_ML


def chamber_per_ml(count: float, squares: float, square_volume_ml: float) -> float:
    """Things in a mL of what was put into the chamber. Count those that touch two of the four sides, not those on the other two."""
    return count / (squares * square_volume_ml)
