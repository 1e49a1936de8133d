"""Light, drops and films. Each value names where it stands outside this project; "worked" means worked independently by hand."""

from __future__ import annotations

import math

import pytest

from keytool.bench import optics, sample
from tests.bench.conftest import near

FN18 = optics.field_area_mm2(0.45)
"""mm² at 40×/FN 18."""


@pytest.mark.parametrize(
    ("fn", "objective", "diameter", "area"),
    [  # field number over objective: formula page of an optics supplier (seen); values worked
        (18, 4, 4.5, 15.9043),
        (18, 40, 0.45, 0.159043),
        (20, 10, 2.0, 3.14159),
        (20, 40, 0.5, 0.19635),
        (22, 4, 5.5, 23.7583),
    ],
)
def test_field_is_field_number_over_objective(fn: float, objective: float, diameter: float, area: float) -> None:
    width = optics.field_diameter_mm(fn, objective)
    assert near(width, diameter)
    assert near(optics.field_area_mm2(width), area)


def test_a_tube_factor_narrows_the_field() -> None:
    assert optics.field_diameter_mm(20, 40, 1.25) == pytest.approx(0.4)
    assert optics.field_seen_at_other_objective_mm(4.4, 4, 40) == pytest.approx(0.44)


def test_eyepiece_scale_by_stage_micrometer() -> None:  # worked; reading error by the rectangular rule of JCGM 100
    scale = optics.scale_from_stage(10, 10, 40)
    assert scale.um_per_part == 2.5
    assert scale.length_um(13) == 32.5
    assert near(scale.length_error_um(0, optics.WHOLE_DIVISION_SD), 1.02062)
    assert near(optics.scale_from_stage(25, 10, 100).relative_error, 0.00408248)


@pytest.mark.parametrize(
    ("aperture", "rayleigh", "abbe"),
    [
        (0.10, 3.355, 2.75),
        (0.25, 1.342, 1.1),
        (0.65, 0.516154, 0.423077),
        (1.25, 0.2684, 0.22),
    ],  # Abbe λ/2NA seen in a textbook of image processing
)
def test_resolution_by_rayleigh_and_abbe(aperture: float, rayleigh: float, abbe: float) -> None:
    assert near(optics.resolution_um(0.55, aperture), rayleigh)
    assert near(optics.abbe_um(0.55, aperture), abbe)


def test_a_closed_condenser_makes_it_coarser_and_an_open_one_no_finer() -> None:
    assert near(optics.resolution_um(0.55, 0.65, 0.30), 0.706316)
    assert near(optics.resolution_um(0.55, 0.65, 0.325), 0.688205)
    assert optics.resolution_um(0.55, 0.65, 0.9) == optics.resolution_um(0.55, 0.65)


@pytest.mark.parametrize(
    ("aperture", "total", "index", "depth"),
    [(0.65, 400, 1.0, 1.95858), (0.65, 400, 1.333, 2.61079), (0.10, 40, 1.0, 112.5)],  # Berek form seen on optics teaching pages
)
def test_depth_of_field_to_the_eye(aperture: float, total: float, index: float, depth: float) -> None:
    assert near(optics.depth_of_field_um(0.55, aperture, total, index), depth)


@pytest.mark.parametrize(
    ("aperture", "objective", "detail", "depth"),
    [
        (0.65, 40, 6.5, 1.55178),
        (0.65, 40, 5, 1.49408),
        (0.10, 4, 14, 90.0),
        (0.25, 10, 6.5, 11.4),
    ],  # camera form seen in full on a teaching page
)
def test_depth_of_field_on_a_detector(aperture: float, objective: float, detail: float, depth: float) -> None:
    assert near(optics.depth_of_field_detector_um(0.55, aperture, objective, detail), depth)


def test_useful_magnification_and_depth_by_knob() -> None:  # 500 to 1000 NA seen; Snell's law
    assert optics.useful_magnification(0.65) == pytest.approx((325, 650))
    axis, edge = optics.depth_by_knob_um(77.5, 1.333, 0.65)
    assert near(axis, 103.3075)
    assert near(edge / 77.5, 1.53142)
    assert near(optics.um_per_pixel(100, 1137), 0.0879507)


@pytest.mark.parametrize(
    ("side", "volume", "micrometres"),
    [(18, 0.05, 154.321), (22, 0.05, 103.306), (24, 0.03, 52.0833), (20, 0.05, 125.0)],  # geometry, worked twice independently
)
def test_film_is_drop_over_coverslip(side: float, volume: float, micrometres: float) -> None:
    assert near(sample.film_depth_mm(volume, side**2) * 1000, micrometres)


def test_volume_under_a_field_times_fields_is_the_drop() -> None:
    depth = sample.film_depth_mm(0.05, 484)
    assert near(sample.field_volume_ml(FN18, depth), 1.64301e-5)
    assert near(sample.fields_per_slip(484, FN18), 3043.20)
    assert sample.field_volume_ml(FN18, depth) * sample.fields_per_slip(484, FN18) == pytest.approx(0.05)


def test_dilution_is_total_over_sample_and_pores_soak_up_water() -> None:
    assert sample.dilution_factor(1, 5) == 5
    assert sample.serial_dilution([5, 10, 10]) == 500
    assert near(sample.combined_error([0.03, 0.05, 0.05]), 0.0768115)
    assert near(sample.volume_after_adding_ml(4, 1.2, 2.65, 0.20), 4.69283)
    assert near(sample.volume_after_adding_ml(4, 0.88, 2.65, 0.25), 4.55208)


def test_drops_by_counting_and_by_weight() -> None:
    assert sample.drop_ml(20) == pytest.approx(0.05)
    assert near(sample.drop_by_weight_ml(0.824, 20, 0.9982), 0.0412743)
    assert near(sample.drop_by_weight_ml(0.870, 20, 0.998), 0.0435872)


def test_moisture_is_on_dry_mass() -> None:  # ISO 11465 (catalogue text seen): dry to constant mass at 105 °C
    assert near(sample.moisture(32.40, 29.07, 12.40), 0.19976)
    assert sample.moisture(45, 40, 20) == pytest.approx(0.25)
    assert near(sample.dry_mass_g(1.10, 0.19976), 0.91685)


def test_the_whole_chain_to_a_gram() -> None:  # worked twice independently: 22 mm and 18 mm coverslips
    volume = sample.field_volume_ml(FN18, sample.film_depth_mm(0.05, 484))
    assert near(sample.per_ml(37, 20 * volume), 112598)
    assert near(sample.per_unit_of_sample(37, 20 * volume, 1, 5), 562992)
    assert near(sample.per_unit_of_sample(37, 20 * volume, 1, 5) / sample.dry_mass_g(1.10, 0.19976), 614050)
    deeper = sample.field_volume_ml(FN18, sample.film_depth_mm(0.05, 324))
    assert near(sample.per_unit_of_sample(37, 20 * deeper, 1, 5) / 1.1 * 1.25, 428271)


def test_ten_fields_are_five_thousandths_of_a_milligram() -> None:  # 1.2 mg under a whole slip of 2515 fields, worked
    volume = sample.field_volume_ml(FN18, 0.030)
    assert near(sample.sample_searched(10 * volume, 1, 10) * 1000, 0.00477129)
    assert math.isclose(sample.sample_searched(0.012, 1, 10) * 1000, 1.2)
