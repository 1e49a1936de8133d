"""From the spoon to the slide and back: dilution, drop, film, the water under one field, and per gram again.

Volumes in mL, areas in mm², masses in g. 1 mm³ is 0.001 mL.
"""

from __future__ import annotations

import math
from collections.abc import Iterable

MM3_PER_ML = 1000.0


def dilution_factor(sample: float, total_ml: float) -> float:
    """Total volume over what was taken (mL or g): 1 mL made up to 5 mL is 5. Never worked out from a ratio such as "1:5"."""
    return total_ml / sample


def serial_dilution(factors: Iterable[float]) -> float:
    """The factor of several dilutions, one after the other."""
    return math.prod(factors)


def combined_error(relative_errors: Iterable[float]) -> float:
    """Relative standard error of a product or quotient whose parts have these, independent of each other."""
    return math.sqrt(math.fsum(each**2 for each in relative_errors))


def volume_after_adding_ml(
    water_ml: float, dry_bulk_density_g_per_ml: float, particle_density_g_per_ml: float, moisture: float, soil_ml: float = 1.0
) -> float:
    """What `soil_ml` of soil and this much added water really make: pores fill first, so it is less than the sum.

    `moisture` is g water per g dry soil. Making up to a mark has no such error.
    """
    solids = dry_bulk_density_g_per_ml / particle_density_g_per_ml
    return soil_ml * (solids + dry_bulk_density_g_per_ml * moisture) + water_ml


def drop_ml(drops_per_ml: float) -> float:
    """One drop, from how many make a millilitre."""
    return 1 / drops_per_ml


def drop_by_weight_ml(grams: float, drops: float, density_g_per_ml: float) -> float:
    """One drop, from the weight of several."""
    return grams / (drops * density_g_per_ml)


def film_depth_mm(volume_ml: float, slip_mm2: float) -> float:
    """Depth of the film: the drop over the area of the coverslip, when it just fills it and no grain props it up."""
    return volume_ml * MM3_PER_ML / slip_mm2


def field_volume_ml(field_mm2: float, depth_mm: float) -> float:
    """Water under one field, through the whole film."""
    return field_mm2 * depth_mm / MM3_PER_ML


def fields_per_slip(slip_mm2: float, field_mm2: float) -> float:
    """How many fields the area of a coverslip is worth."""
    return slip_mm2 / field_mm2


def moisture(wet_g: float, dry_g: float, tare_g: float = 0.0) -> float:
    """g water per g dry soil, from weighings with the dish before and after the oven. Not the share of the wet mass."""
    return (wet_g - dry_g) / (dry_g - tare_g)


def dry_mass_g(fresh_g: float, water_per_dry: float) -> float:
    """Dry mass in so much fresh soil."""
    return fresh_g / (1 + water_per_dry)


def per_ml(count: float, searched_ml: float) -> float:
    """Things in a millilitre of suspension: counted, over the volume searched."""
    return count / searched_ml


def per_unit_of_sample(count: float, searched_ml: float, sample: float, total_ml: float) -> float:
    """Things in one unit (g or mL) of the sample that was made up to `total_ml`."""
    return per_ml(count, searched_ml) * dilution_factor(sample, total_ml)


def sample_searched(searched_ml: float, sample: float, total_ml: float) -> float:
    """How much of the sample (g or mL, as `sample`) has been looked through: 30 µL of 1 g in 5 mL is 6 mg."""
    return searched_ml * sample / total_ml
