"""Threads, bacteria, worms, ratios and what sinks. Sources beside each."""

from __future__ import annotations

import math

import pytest

from keytool.bench import bacteria, hyphae, nematodes, physics, sample
from keytool.bench.ratio import fieller, ratio
from keytool.bench.sensitivity import vary
from keytool.bench.special import normal_quantile
from tests.bench.conftest import near

Z = normal_quantile(0.975)


def test_length_by_crossings() -> None:  # Newman 1966: π N A / 2H (abstract seen)
    assert near(hyphae.length_by_crossings(64, 0.0625, 5.5), 1.1424)
    assert near(hyphae.length_by_crossings(46, math.pi * 0.45**2 / 4, 0.25 * 60), 0.766128)
    assert near(hyphae.length_by_crossings(1, 62500, hyphae.grid_line_length(10, 25)), 17.8500)


@pytest.mark.parametrize(
    ("grid_cm", "factor"), [(0.5, 0.3928), (1, 0.7857), (2, 1.5714), (3, 2.3571), (5, 3.9286)]
)  # Tennant 1975, printed factors (recalled); 11/14 N G seen quoted in a patent
def test_tennant_factors(grid_cm: float, factor: float) -> None:
    assert hyphae.length_by_endless_grid(1, grid_cm) == pytest.approx(factor, abs=1e-4)


def test_half_an_inch_reads_as_one_centimetre() -> None:  # grid-line method page of a culture collection (seen)
    assert math.pi / 4 * 40 * 1.27 == pytest.approx(40, abs=0.2)


def test_thrown_lines_give_the_true_length() -> None:
    numpy = pytest.importorskip("numpy")
    chance = numpy.random.default_rng(3)
    side, spacing, crossings, thrown, length = 100.0, 10.0, 0, 4000, 2.0
    x, y, angle = chance.uniform(0, side, thrown), chance.uniform(0, side, thrown), chance.uniform(0, math.pi, thrown)
    for position, reach in ((x, numpy.cos(angle)), (y, numpy.sin(angle))):
        low, high = numpy.minimum(position, position + length * reach), numpy.maximum(position, position + length * reach)
        crossings += int((numpy.floor(high / spacing) - numpy.floor(low / spacing)).sum())
    lines = 2 * side / spacing * side
    assert hyphae.length_by_crossings(crossings, side**2, lines) == pytest.approx(thrown * length, rel=0.05)


def test_metres_to_a_gram() -> None:  # worked twice independently
    depth = sample.film_depth_mm(0.05, 484)
    per_ml = hyphae.m_per_ml(1.1424, sample.field_volume_ml(20 * 0.0625, depth))
    assert near(per_ml, 8.84672, 1e-4)
    assert near(hyphae.tilted_length(100, 20), 101.98, 1e-4)
    assert hyphae.chain_length([(0, 0), (3, 4), (3, 10)]) == 11


def test_mean_of_squares_and_mass() -> None:
    assert near(hyphae.mean_square([2, 3, 4]), 9.66667)
    assert near(hyphae.volume_um3(100e6, 6.25), 4.90874e8)
    assert near(hyphae.dry_ug(100, 6.25, 1.1, 0.20), 107.992)
    assert near(hyphae.carbon_ug(100, 6.25, 1.1, 0.20, 0.45), 48.5965)
    assert near(hyphae.dry_ug(780.372, 6.25, 1.09, 0.21), 876.833)  # Bakken and Olsen 1983 (abstract seen)
    assert hyphae.volume_um3(1, 9.3 * 4 / math.pi) == pytest.approx(9.3)  # Berg and Söderström 1979, cross-section (quoted)


@pytest.mark.parametrize(("width", "carbon"), [(2.0, 0.311), (2.5, 0.486), (3.0, 0.700), (5.0, 1.944)])  # worked table, 1.1 x 0.20 x 0.45
def test_carbon_to_a_metre(width: float, carbon: float) -> None:
    assert hyphae.carbon_ug(1, width**2, 1.1, 0.20, 0.45) == pytest.approx(carbon, abs=0.001)


def test_a_result_says_what_it_rests_on_and_how_far_it_moves(constants) -> None:
    used = [constants[each] for each in ("hypha-density", "hypha-dry-share", "carbon-share", "hypha-width")]
    found = vary(
        lambda by: hyphae.carbon_ug(100, by["hypha-width"] ** 2, by["hypha-density"], by["hypha-dry-share"], by["carbon-share"]), used
    )
    assert near(found.value, hyphae.carbon_ug(100, 6.25, 1.09, 0.21, 0.45))
    assert near(found.used[3].span, 4)  # the width counts twice
    assert found.least < min(each.at_low for each in found.used)
    assert found.most > max(each.at_high for each in found.used)


def test_volumes_of_bacteria() -> None:  # geometry; Fry 1990 (recalled)
    assert near(bacteria.sphere_um3(0.8), 0.268083)
    assert near(bacteria.rod_um3(0.6, 1.8), 0.452389)
    assert near(bacteria.rod_um3(0.5, 1), 0.163625)
    assert bacteria.rod_um3(1, 1) == pytest.approx(bacteria.sphere_um3(1))


def test_carbon_of_a_rod_by_several_authors() -> None:
    rod = bacteria.rod_um3(0.6, 1.8)
    assert near(bacteria.allometric_fg(rod, 435, 0.86), 219.902)  # Loferer-Krössbacher and others 1998 (seen)
    assert near(bacteria.carbon_by_volume_fg(rod, 310), 140.241)  # Fry 1990 (recalled)
    assert near(bacteria.allometric_fg(rod, 133.754, 0.438), 94.4977)  # pooled fit of 2010 (abstract seen)
    assert near(bacteria.allometric_fg(0.163625, 435, 0.86), 91.7063)
    assert near(bacteria.dry_ug(4.90875e8, 1.09, 0.30), 160.516)  # Bakken and Olsen 1983 (seen)


@pytest.mark.parametrize(
    ("length", "width", "mass"),
    [(800, 30, 0.45), (400, 18, 0.081), (1000, 30, 0.5625), (500, 20, 0.125), (2000, 60, 4.5), (5000, 100, 31.25), (1000, 25, 0.390625)],
)  # Andrássy 1956 (recalled); the divisor seen in Ma and others 2024
def test_mass_of_worms(length: float, width: float, mass: float, constants) -> None:
    assert near(nematodes.fresh_ug(length, width, constants["andrassy-divisor"].value), mass)


def test_footprint_of_ferris() -> None:  # Ferris 2010 (recalled), worked by hand
    assert near(nematodes.footprint_ug(20, 0.5625, 1, 0.1, 0.273), 4.671, 1e-3)
    assert near(nematodes.footprint_ug(10, 4.5, 4, 0.1, 0.273), 9.560, 1e-3)
    assert near(nematodes.carbon_ug(0.5625, 0.2, 0.52), 0.0585)


FIRST = {"Ba1": 24, "Ba2": 52, "Ba3": 5, "Fu2": 18, "Om4": 9, "Om5": 3, "Ca4": 4, "Pl2": 14, "Pl3": 18}
SECOND = {"Ba1": 20, "Ba2": 50, "Fu2": 10, "Ba3": 5, "Om4": 10, "Ca4": 5, "Pl3": 30, "Pl2": 20}


def test_indices_by_the_published_weights(constants) -> None:  # Ferris, Bongers and de Goede 2001 (weights as quoted), worked by hand
    found = nematodes.indices(FIRST, nematodes.weights(constants))
    wanted = (147, 2.13913, 2.43956, 2.23129, 2.5625, 91.2, 56, 65.6, 61.9565, 53.9474, 26.3158, 15.7895, 0.818182)
    assert tuple(getattr(found, each) for each in found.__slots__) == pytest.approx(wanted, rel=1e-5)
    kinds = [24, 40, 12, 5, 8, 10, 9, 3, 4, 14, 18]
    assert near(nematodes.shannon(kinds), 2.14046)


def test_a_second_community_worked_by_hand(constants) -> None:
    found = nematodes.indices(SECOND, nematodes.weights(constants))
    assert (found.mi, found.ppi, found.sigma_mi, found.mi_2_5) == pytest.approx((2.15, 2.60, 2.30, 2.4375), rel=1e-4)
    assert (found.ei, found.si, found.bi, found.ci, found.ncr) == pytest.approx((60.0, 54.2857, 27.1186, 11.1111, 0.882353), rel=1e-4)


def test_whether_a_tylenchid_eats_fungi_changes_everything(constants) -> None:
    moved = {**SECOND, "Fu2": 30, "Pl2": 0}
    found = nematodes.indices(moved, nematodes.weights(constants))
    assert (found.ei, found.si, found.bi, found.ci, found.mi, found.ppi) == pytest.approx(
        (57.8947, 47.1074, 30.6220, 27.2727, 2.125, 3.0), rel=1e-4
    )


def test_an_index_without_a_divisor_is_not_worked_out(constants) -> None:
    found = nematodes.indices({"Pl3": 5}, nematodes.weights(constants))
    assert found.ei is found.si is found.bi is found.ci is found.ncr is found.mi is None
    with pytest.raises(ValueError, match="Xx1"):
        nematodes.indices({"Xx1": 3}, nematodes.weights(constants))


def test_fungi_over_bacteria() -> None:  # delta method, and Fieller 1954; worked independently
    found = ratio(48, 10, 60, 9, Z)
    assert (found.value, found.low, found.high) == pytest.approx((0.8, 0.483697, 1.32314), rel=1e-5)
    other = fieller(150, 40, 100, 25, Z)
    assert (other.low, other.high) == pytest.approx((0.653199, 3.29464), rel=1e-5)
    assert fieller(150, 40, 100, 60, Z).high == math.inf


def test_the_ratio_interval_is_that_of_simulated_estimates() -> None:
    numpy = pytest.importorskip("numpy")
    chance = numpy.random.default_rng(5)
    top, bottom = chance.normal(48, 10, 20_000), chance.normal(60, 9, 20_000)
    found = ratio(48, 10, 60, 9, Z)
    assert numpy.quantile(top / bottom, 0.025) == pytest.approx(found.low, rel=0.08)
    assert numpy.quantile(top / bottom, 0.975) == pytest.approx(found.high, rel=0.08)


@pytest.mark.parametrize(
    ("diameter", "diffusion", "second", "ten"),
    [(0.5, 0.857165, 1.85166, 5.85548), (1, 0.428582, 1.30932, 4.14045), (2, 0.214291, 0.925832, 2.92774)],
)  # Einstein 1905; worked with k of the SI
def test_jiggling(diameter: float, diffusion: float, second: float, ten: float) -> None:
    assert near(physics.brownian_um2_per_s(diameter, 1.002, 20), diffusion)
    assert near(physics.brownian_step_um(diameter, 1, 1.002, 20), second)
    assert near(physics.brownian_step_um(diameter, 10, 1.002, 20), ten)


def test_scipy_knows_the_same_boltzmann() -> None:
    constants = pytest.importorskip("scipy.constants")
    assert constants.Boltzmann == physics.BOLTZMANN
    assert constants.g == physics.GRAVITY


def test_jiggling_alone_hardly_ever_goes_ten_micrometres() -> None:
    assert physics.chance_jiggled_um(10, 1, 2, 1.002, 20) == pytest.approx(2.2e-13, rel=0.1)
    assert near(physics.near_wall(0.5, 1), 0.721436, 1e-4)


@pytest.mark.parametrize(
    ("diameter", "speed", "reynolds"), [(2, 0.00359251, 7.15777e-06), (20, 0.359251, 0.00715777), (50, 2.24532, 0.11184)]
)
def test_sand_sinks_by_stokes(diameter: float, speed: float, reynolds: float) -> None:  # Stokes 1851, worked
    found = physics.stokes_mm_per_s(diameter, 2650, 998.2, 1.002)
    assert near(found, speed)
    assert near(physics.reynolds(diameter, found, 998.2, 1.002), reynolds)


@pytest.mark.parametrize(("diameter", "speed"), [(50, 2.10261), (100, 7.53029), (250, 31.8426), (1000, 126.401)])
def test_grains_sink_by_ferguson_and_church(diameter: float, speed: float) -> None:  # 2004, formula seen restated
    assert near(physics.grain_mm_per_s(diameter, 2650, 998.207, 1.0016), speed, 1e-4)


@pytest.mark.parametrize(("wait", "grain", "cell"), [(30, 43.078, 0.33798), (60, 30.4607, 0.675961), (300, 13.6225, 3.3798)])
def test_how_long_to_let_it_stand(wait: float, grain: float, cell: float) -> None:
    assert near(physics.cleared_above_um(wait, 50, 2650, 998.2, 1.002), grain)
    assert near(physics.stokes_mm_per_s(20, 1050, 998.2, 1.002) * wait, cell)
