"""Length of threads from crossings or from measures, and what they weigh.

Lengths per field or per area; a µm² of cross-section over a metre of thread is 1e-6 cm³, so with g/cm³ the product is µg per m.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

TENNANT = 11 / 14
"""The factor of Tennant (1975) for an endless square grid; it stands for π/4."""


def length_by_crossings(crossings: float, area: float, line_length: float) -> float:
    """True length of threads in an area, from how often they cross test lines of this length in all (Newman 1966): π N A / 2H.

    Any one unit of length throughout. Lines or threads must lie in all directions; a touch counts as none or one by a fixed rule.
    """
    return math.pi * crossings * area / (2 * line_length)


def length_by_endless_grid(crossings: float, spacing: float) -> float:
    """The same for a square grid that covers everything and whose edges are shared (Tennant 1975): 11/14 N G."""
    return TENNANT * crossings * spacing


def grid_line_length(squares_across: int, spacing: float) -> float:
    """Length of all lines of a ruled square, both edges counted: 22 lines of 10 spacings for 10 x 10 squares."""
    return 2 * (squares_across + 1) * squares_across * spacing


def chain_length(points: Sequence[tuple[float, float]]) -> float:
    """Length along a bent line given by points."""
    return math.fsum(math.dist(one, two) for one, two in pairwise(points))


def tilted_length(seen: float, depth: float) -> float:
    """True length of a straight thread that also climbs through the film."""
    return math.hypot(seen, depth)


def m_per_ml(length_mm: float, searched_ml: float) -> float:
    """Metres of thread in a mL: mm found, over mL searched."""
    return length_mm / 1000 / searched_ml


def mean_square(widths_um: Sequence[float]) -> float:
    """The mean of squared widths, which volume needs: 2, 3 and 4 µm give 9.67, not 9."""
    return math.fsum(each**2 for each in widths_um) / len(widths_um)


def volume_um3(length_um: float, mean_square_um2: float) -> float:
    """Volume of threads: a quarter of π times the mean square of the width times the length."""
    return math.pi / 4 * mean_square_um2 * length_um


def dry_ug(length_m: float, mean_square_um2: float, wet_density_g_per_cm3: float, dry_share: float) -> float:
    """Dry mass in µg of so many metres. The width counts twice: 10 % wider is 21 % heavier."""
    return math.pi / 4 * mean_square_um2 * length_m * wet_density_g_per_cm3 * dry_share


def carbon_ug(length_m: float, mean_square_um2: float, wet_density_g_per_cm3: float, dry_share: float, carbon_share: float) -> float:
    """Carbon in µg of so many metres, living and dead."""
    return dry_ug(length_m, mean_square_um2, wet_density_g_per_cm3, dry_share) * carbon_share
