"""What a microscope shows: the width of its field, the worth of a division or a pixel, how fine and how deep it sees.

Field number, objective and aperture are what is engraved. Lengths in millimetres or micrometres, as named.
"""

from __future__ import annotations

import math
from dataclasses import dataclass


def field_diameter_mm(field_number_mm: float, objective: float, tube_factor: float = 1.0) -> float:
    """Width of the round field in mm: field number over objective. The power of the eyepiece does not enter.

    Good while the stop of the eyepiece limits the view. Engraved powers are good to a few per cent only.
    """
    return field_number_mm / (objective * tube_factor)


def field_area_mm2(diameter_mm: float) -> float:
    """Area of a round field in mm²."""
    return math.pi * diameter_mm**2 / 4


def field_seen_at_other_objective_mm(diameter_mm: float, measured_with: float, objective: float) -> float:
    """Width of the field with another objective of the same stand, from one that was measured."""
    return diameter_mm * measured_with / objective


@dataclass(frozen=True, slots=True)
class Scale:
    """The worth of one part (an eyepiece division, a pixel) in µm, and its relative standard error."""

    um_per_part: float
    relative_error: float

    def length_um(self, parts: float) -> float:
        """A length read in parts."""
        return parts * self.um_per_part

    def length_error_um(self, parts: float, end_sd_parts: float) -> float:
        """Standard deviation of that length: both ends read with `end_sd_parts`, and the error of the scale itself."""
        return math.hypot(math.sqrt(2) * end_sd_parts * self.um_per_part, self.length_um(parts) * self.relative_error)


WHOLE_DIVISION_SD = math.sqrt(1 / 12)
"""Standard deviation, in divisions, of an end read to the nearest whole division: uniform over half a division either way."""


def scale_from_stage(stage_parts: float, um_per_stage_part: float, eyepiece_divisions: float) -> Scale:
    """The worth of an eyepiece division where so many parts of a stage micrometer cover so many divisions.

    Each end of the span is read to the nearest division, so a long span is better: 0.41 % over 100, 4.1 % over 10.
    """
    return Scale(stage_parts * um_per_stage_part / eyepiece_divisions, math.sqrt(2) * WHOLE_DIVISION_SD / eyepiece_divisions)


def resolution_um(wavelength_um: float, aperture: float, condenser_aperture: float | None = None) -> float:
    """Finest spacing of two points that are told apart (Rayleigh): 0.61 λ / NA, or 1.22 λ over both apertures.

    A condenser closed below the aperture of the objective makes it coarser; one opened further does not make it finer.
    """
    condenser = aperture if condenser_aperture is None else min(condenser_aperture, aperture)
    return 1.22 * wavelength_um / (aperture + condenser)


def abbe_um(wavelength_um: float, aperture: float) -> float:
    """Finest period of a grating that is resolved, with a matched condenser (Abbe): λ / (2 NA)."""
    return wavelength_um / (2 * aperture)


def depth_of_field_um(wavelength_um: float, aperture: float, total_magnification: float, index: float = 1.0) -> float:
    """Depth that is sharp to the eye (Berek): n (λ / (2 NA²) + 340 / (NA M)). Authors differ by a factor of two.

    `index` is that of the medium the object lies in: 1.333 for the film of water.
    """
    return index * (wavelength_um / (2 * aperture**2) + 340 / (aperture * total_magnification))


def depth_of_field_detector_um(wavelength_um: float, aperture: float, objective: float, detail_um: float, index: float = 1.0) -> float:
    """Depth that is sharp on a detector that parts `detail_um` in its own plane: n λ / NA² + n e / (M NA)."""
    return index * wavelength_um / aperture**2 + index * detail_um / (objective * aperture)


def useful_magnification(aperture: float) -> tuple[float, float]:
    """Least and greatest total magnification that show all the lens resolves and no more: 500 to 1000 times NA."""
    return 500 * aperture, 1000 * aperture


def depth_by_knob_um(knob_um: float, water_index: float, aperture: float) -> tuple[float, float]:
    """True depth in water from travel of the focus knob with a dry lens: for rays near the axis, and for the edge rays."""
    edge = math.tan(math.asin(aperture)) / math.tan(math.asin(aperture / water_index))
    return knob_um * water_index, knob_um * edge


def um_per_pixel(span_um: float, pixels: float) -> float:
    """The worth of one pixel, from a known length that spans so many pixels at the same camera, zoom and picture size."""
    return span_um / pixels
