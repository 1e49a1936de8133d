"""Whole problems of the bench, from what is counted to what is written down.

Each was worked by hand from the formula named beside it, apart from this project and with another library of numbers (scipy), and is
kept here with its figures. "Read" says that a figure was read where it was published, "recalled" that the source was quoted from memory;
the rest is arithmetic of the formula.
"""

from __future__ import annotations

import math

import pytest

from keytool.bench import bacteria, chambers, counts, hyphae, nematodes, optics, physics, sample
from keytool.bench.mpn import Level, most_probable_number
from keytool.bench.ratio import fieller, ratio
from keytool.bench.results import with_slide_errors
from keytool.bench.special import normal_quantile, t_quantile
from tests.bench.conftest import near

Z = normal_quantile(0.975)
FIELD_MM2 = optics.field_area_mm2(optics.field_diameter_mm(18, 40))
FIELD_ML = sample.field_volume_ml(FIELD_MM2, sample.film_depth_mm(0.05, 18 * 18))
"""Under one field: field number 18, 40x objective, a drop of 0.05 mL under 18 by 18 mm."""
WATER = {"water_density": 998.207, "viscosity_mpa_s": 1.0016}
"""At 20 °C (recalled, IAPWS)."""


def test_1_a_scale_in_the_eyepiece_is_read_and_carried_to_another_objective() -> None:
    # Length on the stage micrometer over divisions. Error of the two ends: rectangular rule of JCGM 100 (recalled).
    scale = optics.scale_from_stage(25, 10, 100)
    assert scale.um_per_part == pytest.approx(2.5)
    assert scale.length_um(14.5) == pytest.approx(36.25)
    assert near(scale.relative_error, 0.00408248)
    assert near(optics.scale_from_stage(2.5, 10, 10).relative_error, 0.0408248), "a short span is ten times worse"


def test_2_thirty_seven_in_twenty_fields_is_so_many_in_a_gram_of_dry_soil() -> None:
    # N / (fields x volume), times dilution, over bulk density, times 1 + water. Limits: Garwood 1936 (recalled); errors: JCGM 100 (recalled).
    assert near(FIELD_ML, 2.45437e-5)
    to_gram = 5 / 1.1 * 1.25 / (20 * FIELD_ML)
    assert near(37 * to_gram, 428271)
    limits = counts.poisson_limits(37, 0.95).times(to_gram)
    assert (limits.low, limits.high) == pytest.approx((301543, 590316), rel=1e-5)
    assert near(sample.combined_error([1 / math.sqrt(37), 0.10, 0.02, 0.05, 0.03]), 0.202057)
    wider = with_slide_errors(limits, [0.10, 0.02, 0.05, 0.03])
    assert wider.low < limits.low < limits.high < wider.high


def test_3_one_in_a_drop_and_none_in_a_drop() -> None:
    # Drop of 0.05 mL, 1 in 5, 1.1 g fresh soil to the mL. Three over n: Hanley and Lippman-Hand 1983 (2.996 and 3.689 read in a manual).
    per_gram = sample.per_unit_of_sample(1, 0.05, 1, 5) / 1.1
    assert near(per_gram, 90.9091)
    assert near(counts.poisson_limits(0, 0.95).high * per_gram, 335.353)
    assert near(counts.most_when_none_seen(0.95) * per_gram, 272.339)
    assert near(10 / per_gram, 0.11), "a soil with ten worms in a gram mostly shows none"
    assert near(1e9 / 20 * FIELD_ML, 1227.18), "bacteria at 1 in 20 cannot be counted"


def test_4_water_that_goes_into_pores_makes_a_dilution_less_than_it_seems() -> None:
    # Solids of 2.65 g/mL (Blake and Hartge 1986, recalled), a spoon of 0.88 g dry in the mL with 0.25 g/g water, 4 mL added.
    volume = sample.volume_after_adding_ml(4, 0.88, 2.65, 0.25)
    assert near(volume, 4.55208)
    assert near(5 / volume, 1.09840)
    assert sample.serial_dilution([10, 10, 10]) == pytest.approx(1000)


def test_5_a_chamber_of_known_depth() -> None:
    # Improved Neubauer: 0.1 mm deep, groups of 0.2 mm (a lab page, read). Sedgewick-Rafter: squares of 1 mm, 1 mm deep (a maker's page, read).
    assert near(chambers.square_ml(0.2, 0.1), 4e-6)
    assert near(chambers.chamber_per_ml(187, 5, chambers.square_ml(0.2, 0.1)), 9.35e6)
    assert near(chambers.chamber_per_ml(84, 100, chambers.square_ml(1, 1)), 840)


def test_6_counts_that_scatter_twice_as_much_as_chance() -> None:
    # Index of dispersion: Fisher, Thornton and Mackenzie 1922; k: Elliott 1977; limits: McCullagh and Nelder 1989 (all recalled).
    fields = [3, 0, 5, 2, 1, 7, 2, 0, 4, 6]
    scatter = counts.dispersion(fields)
    assert (scatter.mean, scatter.variance, scatter.index, scatter.chi_square) == pytest.approx((3, 6, 2, 18))
    assert (scatter.k, scatter.k_adjusted) == pytest.approx((3.0, 2.8))
    by_z, by_t = counts.quasi_poisson_limits(fields, Z), counts.quasi_poisson_limits(fields, t_quantile(9, 0.975))
    assert (by_z.low, by_z.high) == pytest.approx((1.80860, 4.97623), rel=1e-5)
    assert (by_t.low, by_t.high) == pytest.approx((1.67285, 5.38006), rel=1e-5)
    assert near(counts.chance_of_none(3, 3), 0.125)


def test_7_how_many_fields_and_how_many_things() -> None:
    # z² (1/m + 1/k) / d²: Elliott 1977 (recalled).
    assert math.ceil(counts.fields_needed(2, 0.2, Z)) == 49
    assert math.ceil(counts.fields_needed(2, 0.2, Z, 1.5)) == 113
    assert [math.ceil(counts.total_needed(each, Z)) for each in (0.1, 0.2, 0.25, 0.3, 0.5)] == [385, 97, 62, 43, 16]


def test_8_two_slides_are_held_against_each_other() -> None:
    # Conditional test: Przyborowski and Wilenski 1940; E-test: Krishnamoorthy and Thomson 2004 (recalled; p by scipy).
    assert near(counts.conditional_p(45, 20, 30, 25), 0.00738612)
    assert near(counts.e_test_p(45, 20, 30, 25), 0.00867595)
    assert near(counts.e_test_p(12, 10, 4, 10), 0.0459963)
    assert near(counts.conditional_p(12, 10, 4, 10), 0.0768127)
    found = counts.rate_ratio(45, 20, 30, 25, 0.95)
    assert (found.value, found.low, found.high) == pytest.approx((1.875, 1.15556, 3.08247), rel=1e-5)


def test_9_most_probable_number_of_a_dilution_series() -> None:
    # Haas, Rose and Gerba 2014, example 6.4 (0.792 read as quoted); the series 3-1-0 of three tubes: 43 in the FDA tables (recalled).
    tubes = [Level(5, 5, 10), Level(5, 3, 1), Level(5, 0, 0.1)]
    three = [Level(3, 3, 0.1), Level(3, 1, 0.01), Level(3, 0, 0.001)]
    assert near(most_probable_number(tubes, Z).value, 0.792427)
    assert near(most_probable_number(three, Z).value, 42.7288)


def test_10_fields_that_hold_any_stand_for_so_many_in_a_millilitre() -> None:
    # -ln(1 - x/n), limits of Clopper and Pearson carried through.
    assert near(counts.mean_from_occupied(7, 20, 0.95).value / FIELD_ML, 17551.7)


def test_11_crossings_of_a_line_become_metres_in_a_gram() -> None:
    # Newman 1966, π N A / 2 H (abstract read). 60 fields with a line of 0.25 mm, 46 crossings; 1 g made to 20 mL, 0.25 g/g water.
    a_field = hyphae.length_by_crossings(46, FIELD_MM2, 60 * 0.25)
    assert near(a_field, 0.766128)
    per_ml = hyphae.m_per_ml(a_field, FIELD_ML)
    assert near(per_ml, 31.2149)
    assert near(per_ml * 20 * 1.25, 780.372)
    limits = counts.poisson_limits(46, 0.95).times(per_ml * 25 / 46)
    assert (limits.low, limits.high) == pytest.approx((571.330, 1040.91), rel=1e-5)


def test_12_metres_become_carbon_and_the_constant_matters_most() -> None:
    # Bakken and Olsen 1983: 1.09 g/cm³, 21 % dry; van Veen and Paul 1979: 0.11, 0.33 and 0.41 g dry to the cm³ (abstracts read).
    assert near(hyphae.volume_um3(780.372e6, 2.5**2), 3.83064e9)
    assert near(hyphae.carbon_ug(780.372, 2.5**2, 1.09, 0.21, 0.45), 394.575)
    assert [round(hyphae.dry_ug(780.372, 2.5**2, each, 1)) for each in (0.11, 0.33, 0.41)] == [421, 1264, 1571]


def test_13_carbon_of_three_thousand_million_rods_by_six_authors() -> None:
    # Loferer-Krössbacher 1998, Khachikyan 2019, a pooled fit of 2010, Lee and Fuhrman 1987, Bratbak 1985 (read); Norland 1993 (recalled).
    rod, cells = bacteria.rod_um3(0.5, 1), 3e9 * 1e-9
    assert near(bacteria.allometric_fg(rod, 435, 0.86) * cells, 275.119)
    assert near(bacteria.allometric_fg(rod, 120, 0.72) * cells, 97.7855)
    assert near(bacteria.allometric_fg(rod, 197, 0.46) * cells, 257.015)
    assert near(bacteria.allometric_fg(rod, 133.754, 0.438) * cells, 181.591)
    assert near(bacteria.carbon_by_volume_fg(rod, 380) * cells, 186.532)
    assert near(bacteria.carbon_by_volume_fg(rod, 560) * cells, 274.890)


def test_14_fungi_over_bacteria_with_both_kinds_of_limits() -> None:
    # 150 with an error of 40 over 100 with 25. Spread of the logarithm, and Fieller 1954 (recalled).
    by_log, exact = ratio(150, 40, 100, 25, Z), fieller(150, 40, 100, 25, Z)
    assert (by_log.value, by_log.low, by_log.high) == pytest.approx((1.5, 0.732745, 3.07065), rel=1e-5)
    assert (exact.low, exact.high) == pytest.approx((0.653199, 3.29464), rel=1e-5)


def test_15_a_worm_a_jiggling_speck_and_a_sinking_grain(constants) -> None:
    # Andrássy 1956 (divisor read in a paper of 2024); Einstein 1905; Stokes 1851; Ferguson and Church 2004 (recalled).
    masses = [
        nematodes.fresh_ug(length, width, constants["andrassy-divisor"].value) for width, length in ((20, 600), (40, 1000), (50, 2000))
    ]
    assert masses == pytest.approx([0.15, 1.0, 3.125])
    assert near(physics.brownian_um2_per_s(1, 1.0016, 20), 0.428754)
    assert near(physics.brownian_step_um(1, 1, 1.0016, 20), 1.30959)
    assert near(physics.brownian_step_um(1, 10, 1.0016, 20), 4.14127)
    for micrometres, seconds in ((2, 13912.4), (10, 556.494), (50, 22.2598), (63, 14.0210)):
        assert near(50 / physics.stokes_mm_per_s(micrometres, 2650, **WATER), seconds)
    assert near(physics.grain_mm_per_s(1000, 2650, **WATER), 126.401)
