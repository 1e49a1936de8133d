"""Volume and carbon of bacteria.

Widths below a micrometre cannot be measured at 400× without stain, so these serve other people's figures too.
"""

from __future__ import annotations

import math


def sphere_um3(diameter_um: float) -> float:
    """Volume of a coccus."""
    return math.pi / 6 * diameter_um**3


def rod_um3(width_um: float, length_um: float) -> float:
    """Volume of a rod with round ends of this whole length; a sphere where the two are equal."""
    return math.pi / 4 * width_um**2 * (length_um - width_um / 3)


def carbon_by_volume_fg(volume_um3: float, fg_per_um3: float) -> float:
    """Carbon of one cell with a constant share of its volume."""
    return volume_um3 * fg_per_um3


def allometric_fg(volume_um3: float, factor: float, exponent: float) -> float:
    """Dry mass or carbon of one cell by a power of its volume: small cells are denser."""
    return factor * math.pow(volume_um3, exponent)


def dry_ug(total_um3: float, wet_density_g_per_cm3: float, dry_share: float) -> float:
    """Dry mass in µg of so much cell volume: 1 µm³ of 1 g/cm³ is a picogram."""
    return total_um3 * 1e-6 * wet_density_g_per_cm3 * dry_share
