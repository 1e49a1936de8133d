"""Intervals hold the truth as often as they say: simulated, with a fixed seed."""

from __future__ import annotations

import pytest

from keytool.bench.counts import Judging, mean_per_field

np = pytest.importorskip("numpy")
RUNS = 600
SLACK = 0.022
"""Two and a half standard errors of a share of 0.95 in so many runs."""


def held(mean: float, k: float | None, fields: int, by: Judging) -> float:
    """How often the interval of so many fields holds the true mean."""
    chance = np.random.default_rng(round(1000 * mean) + fields + round(10 * (k or 0)))
    size = (RUNS, fields)
    drawn = chance.poisson(mean, size) if k is None else chance.negative_binomial(k, k / (k + mean), size)
    limits = (mean_per_field([int(each) for each in row], by).per_field for row in drawn)
    return sum(each.low <= mean <= each.high for each in limits) / RUNS


@pytest.mark.parametrize("fields", [20])
@pytest.mark.parametrize("mean", [1, 2, 5])
@pytest.mark.parametrize("k", [None, 2, 1, 0.5])
def test_a_95_interval_holds_935_to_97_of_100(mean: float, k: float | None, fields: int, by: Judging) -> None:
    assert 0.935 - SLACK <= held(mean, k, fields, by) <= 0.97 + SLACK


def test_ten_fields_of_strong_clumps_hold_less_and_the_guide_says_so(by: Judging) -> None:
    assert 0.88 <= held(2, 1, 10, by) <= 0.945
