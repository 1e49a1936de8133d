"""The distributions, against scipy."""

from __future__ import annotations

import pytest

from keytool.bench import special

stats = pytest.importorskip("scipy.stats")


@pytest.mark.parametrize("shape", [0.5, 1, 3, 37, 250, 20_000])
@pytest.mark.parametrize("share", [0.001, 0.025, 0.5, 0.975, 0.999])
def test_gamma_quantiles_are_those_of_scipy(shape: float, share: float) -> None:
    assert special.gamma_quantile(shape, share) == pytest.approx(stats.gamma.ppf(share, shape), rel=1e-11)


@pytest.mark.parametrize("df", [1, 2, 9, 19, 99])
def test_t_quantiles_are_those_of_scipy(df: int) -> None:
    assert special.t_quantile(df, 0.975) == pytest.approx(stats.t.ppf(0.975, df), rel=1e-11)
    assert special.t_quantile(df, 0.2) == pytest.approx(stats.t.ppf(0.2, df), rel=1e-11)


@pytest.mark.parametrize(("a", "b"), [(1, 5), (30, 16), (300, 20), (0.5, 4)])
def test_beta_quantiles_are_those_of_scipy(a: float, b: float) -> None:
    for share in (0.025, 0.5, 0.975):
        assert special.beta_quantile(a, b, share) == pytest.approx(stats.beta.ppf(share, a, b), rel=1e-11)


def test_tails_keep_their_digits_where_they_are_tiny() -> None:
    assert special.gamma_tail(3, 60) == pytest.approx(stats.gamma.sf(60, 3), rel=1e-10)
    assert special.chi_square_tail(9, 27.8462) == pytest.approx(stats.chi2.sf(27.8462, 9), rel=1e-10)
    assert special.normal_tail_both(1.959964) == pytest.approx(0.05, rel=1e-6)


def test_counts_have_the_chances_of_scipy() -> None:
    assert special.poisson_share(12.5, 9) == pytest.approx(stats.poisson.cdf(9, 12.5), rel=1e-11)
    assert special.poisson_chance(12.5, 9) == pytest.approx(stats.poisson.pmf(9, 12.5), rel=1e-11)
    assert special.binomial_chance(7, 20, 0.3) == pytest.approx(stats.binom.pmf(7, 20, 0.3), rel=1e-11)
    assert special.poisson_share(3, -1) == 0


def test_the_edges_are_answered() -> None:
    assert special.gamma_share(3, 0) == 0
    assert special.gamma_share(3, float("inf")) == 1
    assert special.gamma_tail(3, 0) == 1
    assert special.gamma_quantile(3, 0) == 0
    assert special.beta_share(2, 3, 0) == 0
    assert special.beta_share(2, 3, 1) == 1
    assert special.binomial_chance(0, 5, 0) == 1
    assert special.binomial_chance(5, 5, 1) == 1
    assert special.binomial_chance(3, 5, 1) == 0
    assert special.poisson_chance(0, 0) == 1
    assert special.poisson_chance(0, 2) == 0
    assert special.normal_quantile(0.025) == pytest.approx(-1.959964, rel=1e-6)
