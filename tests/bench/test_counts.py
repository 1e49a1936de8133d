"""Intervals, clumping, effort, comparisons: against printed tables, scipy and statsmodels."""

from __future__ import annotations

import math

import pytest

from keytool.bench import counts
from keytool.bench.special import normal_quantile, t_quantile
from tests.bench.conftest import near

stats = pytest.importorskip("scipy.stats")
Z = normal_quantile(0.975)
Q = [2, 0, 5, 1, 8, 0, 3, 1, 0, 6]
TEN = [3, 0, 5, 2, 1, 7, 2, 0, 4, 6]


@pytest.mark.parametrize(
    ("count", "confidence", "low", "high"),
    [
        (0, 0.95, 0.0, 3.689),  # manual of an epidemiology library, exact Poisson (seen)
        (25, 0.95, 16.18, 36.90),  # a statistics FAQ that cites Garwood 1936 (seen)
        (25, 0.90, 17.38, 34.92),  # the same
        (25, 0.99, 14.00, 41.00),  # the same
    ],
)
def test_garwood_limits_are_the_published_ones(count: int, confidence: float, low: float, high: float) -> None:
    limits = counts.poisson_limits(count, confidence)
    assert (limits.low, limits.high) == pytest.approx((low, high), abs=0.006)


@pytest.mark.parametrize("count", [0, 1, 2, 5, 10, 37, 100, 400, 1000])
def test_garwood_limits_are_those_of_scipy(count: int) -> None:
    limits = counts.poisson_limits(count, 0.95)
    low = stats.chi2.ppf(0.025, 2 * count) / 2 if count else 0
    assert (limits.low, limits.high) == pytest.approx((low, stats.chi2.ppf(0.975, 2 * count + 2) / 2), rel=1e-10)


@pytest.mark.parametrize(
    ("frequencies", "mean", "variance", "index", "chi_square", "p"),
    [  # Student 1907, yeast in a haemacytometer, Biometrika 5:351; frequencies read in a data collection, means are the published ones
        ([213, 128, 37, 18, 3, 1], 0.6825, 0.813728, 1.19228, 475.718, 0.00490842),
        ([103, 143, 98, 42, 8, 4, 2], 1.3225, 1.28671, 0.972938, 388.202, 0.641355),
        ([75, 103, 121, 54, 30, 13, 2, 1, 0, 1], 1.80, 1.96491, 1.09162, 435.556, 0.100282),
        ([0, 20, 43, 53, 86, 70, 54, 37, 18, 10, 5, 2, 2], 4.68, 4.46877, 0.954866, 380.991, 0.733573),
        ([109, 65, 22, 3, 1], 0.61, 0.610955, 1.00157, 199.311, 0.480450),  # Bortkiewicz 1898, horse kicks
    ],
)
def test_scatter_of_published_counts(
    frequencies: list[int], mean: float, variance: float, index: float, chi_square: float, p: float
) -> None:
    scatter = counts.dispersion([value for value, n in enumerate(frequencies) for _ in range(n)])
    assert (scatter.mean, scatter.variance, scatter.index) == pytest.approx((mean, variance, index), rel=1e-5)
    assert (scatter.chi_square, scatter.p_clumped) == pytest.approx((chi_square, p), rel=1e-5)


def test_clumping_by_moments() -> None:
    scatter = counts.dispersion(Q)
    assert (scatter.k, scatter.k_adjusted) == pytest.approx((1.24163, 1.09388), rel=1e-5)
    assert scatter.p_clumped == pytest.approx(stats.chi2.sf(scatter.chi_square, 9), rel=1e-10)
    assert counts.dispersion(TEN).p_clumped == pytest.approx(0.0351735, rel=1e-5)
    assert counts.dispersion([2, 2, 2, 2]).k == math.inf


def test_limits_with_a_scale_are_those_of_a_generalised_linear_model() -> None:
    api = pytest.importorskip("statsmodels.api")
    import numpy as np

    fit = api.GLM(Q, np.ones(len(Q)), family=api.families.Poisson()).fit(scale="X2")
    limits = counts.quasi_poisson_limits(Q, Z)
    assert (limits.low, limits.high) == pytest.approx(tuple(np.exp(fit.conf_int())[0]), rel=1e-6)
    by_t = counts.quasi_poisson_limits(Q, t_quantile(9, 0.975))
    assert (by_t.low, by_t.high) == pytest.approx((1.19142, 5.6739), rel=1e-4)


def test_counts_at_random_get_exact_limits_and_clumped_ones_wider(by: counts.Judging) -> None:
    even = counts.mean_per_field([2, 3, 2, 3, 2, 3, 2, 3, 2, 3], by)
    assert not even.widened
    assert even.per_field == counts.poisson_limits(25, 0.95).times(1 / 10)
    clumped = counts.mean_per_field(Q, by)
    assert clumped.widened
    assert clumped.per_field.low < 1.69841
    assert clumped.per_field.high > 3.8096  # the exact limits of chance alone, too narrow here
    few = counts.mean_per_field([2, 7, 1], by)
    assert not few.widened  # three fields cannot say
    giant = counts.mean_per_field([0, 1, 0, 60], by)
    assert giant.widened  # but one drop that holds them all can
    assert giant.per_field.low < 1
    assert giant.per_field.high > 100


def test_none_seen_is_never_zero(by: counts.Judging) -> None:
    mean = counts.mean_per_field([0] * 12, by)
    assert mean.per_field.value == 0
    assert mean.per_field.high == pytest.approx(3.68888 / 12, rel=1e-5)


@pytest.mark.parametrize(
    ("mean", "k", "precision", "deviate", "fields"),
    [  # Elliott 1977 and Southwood & Henderson 2000 (recalled); Downing 1989 for SE over mean (seen)
        (2, math.inf, 0.2, Z, 48.0182),
        (2, 1.5, 0.2, Z, 112.043),
        (5, 2, 0.2, Z, 67.2255),
        (0.5, math.inf, 0.25, Z, 122.927),
        (10, math.inf, 0.1, Z, 38.4146),
        (2, 1.5, 0.2, 1, 29.1667),
        (5, math.inf, 0.2, 1, 5.0),
        (2.6, 1.24163, 0.3, 1, 13.2223),
    ],
)
def test_fields_for_a_precision(mean: float, k: float, precision: float, deviate: float, fields: float) -> None:
    assert near(counts.fields_needed(mean, precision, deviate, k), fields)
    assert near(counts.precision_reached(mean, counts.fields_needed(mean, precision, deviate, k), deviate, k), precision)


def test_a_hundred_counted_are_good_to_a_fifth() -> None:  # Lund, Kipling and Le Cren 1958 (recalled)
    assert near(counts.total_needed(0.2, Z), 96.0365)
    assert near(counts.total_needed(0.1, Z), 384.146)


def test_what_may_have_been_missed() -> None:  # Hanley and Lippman-Hand 1983, three over n (2.996 seen in a manual)
    assert near(counts.most_when_none_seen(0.95), 2.99573)
    assert near(counts.most_when_none_seen(0.95, 20, 0.5), 0.174641)
    assert near(counts.most_when_none_seen(0.95, 20), 0.149787)
    assert near(counts.chance_of_none(1), 0.367879)
    assert near(counts.chance_of_none(3), 0.0497871)
    assert near(counts.chance_of_none(1, 0.5), 0.57735)
    assert near(counts.chance_of_none(0.2), 0.818731)  # 20 worms a gram, a drop of 0.05 mL of 1 in 5
    assert math.ceil(counts.effort_to_meet(0.2, 0.95)) == 15


def test_counting_on_to_a_hundred() -> None:  # gamma waiting time
    rate = counts.stopped_at_count(100, 57, 0.95)
    assert (rate.value, rate.low, rate.high) == pytest.approx((1.73684, 1.42744, 2.11454), rel=1e-5)


def test_fields_that_hold_any() -> None:
    rate = counts.mean_from_occupied(7, 20, 0.95)
    assert (rate.value, rate.low, rate.high) == pytest.approx((0.430783, 0.167129, 0.896950), rel=1e-5)
    assert counts.mean_from_occupied(20, 20, 0.95).value == math.inf


@pytest.mark.parametrize(
    ("x1", "e1", "x2", "e2"),
    [(30, 20, 15, 20), (12, 10, 40, 20), (5, 20, 0, 20), (45, 20, 30, 25), (12, 10, 4, 10), (3, 7, 9, 4), (0, 100, 3, 100)],
)
def test_two_counts_are_compared_as_scipy_does(x1: int, e1: float, x2: int, e2: float) -> None:
    assert counts.conditional_p(x1, e1, x2, e2) == pytest.approx(stats.binomtest(x1, x1 + x2, e1 / (e1 + e2)).pvalue, rel=1e-9)
    assert counts.e_test_p(x1, e1, x2, e2) == pytest.approx(stats.poisson_means_test(x1, e1, x2, e2).pvalue, abs=2e-9)


def test_the_dodder_seeds_of_1940() -> None:  # Przyborowski and Wilenski, as printed in the manual of scipy: p 0.0884
    assert counts.e_test_p(0, 100, 3, 100) == pytest.approx(0.0883790, rel=1e-5)
    assert counts.e_test_p(0, 100, 0, 100) == 1


def test_large_counts_are_compared_too() -> None:
    assert counts.e_test_p(5000, 20, 5200, 20) == pytest.approx(0.0477, abs=0.001)


@pytest.mark.parametrize(
    ("x1", "e1", "x2", "e2", "ratio", "low", "high"),
    [  # exact limits, worked twice independently
        (30, 20, 15, 20, 2.0, 1.04289, 3.99986),
        (12, 10, 40, 20, 0.6, 0.28654, 1.16658),
        (45, 20, 30, 25, 1.875, 1.15556, 3.08247),
        (12, 10, 4, 10, 3.0, 0.909232, 12.7623),
    ],
)
def test_rate_ratio(x1: int, e1: float, x2: int, e2: float, ratio: float, low: float, high: float) -> None:
    found = counts.rate_ratio(x1, e1, x2, e2, 0.95)
    assert (found.value, found.low, found.high) == pytest.approx((ratio, low, high), rel=1e-5)


def test_a_ratio_over_none_has_no_upper_end() -> None:
    found = counts.rate_ratio(5, 20, 0, 20, 0.95)
    assert found.value == found.high == math.inf
    assert found.low == pytest.approx(0.916356, rel=1e-5)
    assert math.isnan(counts.rate_ratio(0, 1, 0, 1, 0.95).value)


def test_clumping_takes_a_difference_away(by: counts.Judging) -> None:
    calm = counts.compare(
        counts.mean_per_field([1, 1, 1, 1, 1, 2, 1, 1, 1, 0], by), counts.mean_per_field([3, 2, 3, 2, 3, 2, 2, 3, 2, 3], by), by
    )
    wild = counts.compare(
        counts.mean_per_field([0, 0, 0, 0, 9, 0, 0, 1, 0, 0], by), counts.mean_per_field([0, 14, 0, 0, 0, 11, 0, 0, 0, 0], by), by
    )
    assert near(calm.ratio.value, 2.5)
    assert near(wild.ratio.value, 2.5)
    assert calm.p < 0.05 < wild.p
    assert wild.widened


def test_another_dilution_is_allowed_for(by: counts.Judging) -> None:
    one, two = counts.mean_per_field([5] * 10, by), counts.mean_per_field([5] * 10, by)
    compared = counts.compare(one, two, by, 2)
    assert near(compared.ratio.value, 2)
    assert compared.p < 0.01
