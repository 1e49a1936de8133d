"""Balls and grains by rays, against the geometry of a sphere (deviation 2[asin b - asin(b/m)], thin-lens focus of a ball)."""

from __future__ import annotations

import pytest

np = pytest.importorskip("numpy")
pytest.importorskip("scipy")

from keytool.optics.rays import Ball, Grain, ball_focus, bright_to, deviation

WATER = 1.333


@pytest.mark.parametrize(
    ("index", "aperture", "share"),
    [
        (1.0, 0.65, 0.568), (1.0, 0.25, 0.269), (1.0, 0.10, 0.112),  # air
        (1.47, 0.65, 0.972), (1.47, 0.25, 0.728), (1.47, 0.10, 0.376),  # oil
        (1.549, 0.65, 0.920), (1.549, 0.25, 0.572), (1.549, 0.10, 0.261),  # quartz
    ],
)  # fmt: skip
def test_how_far_out_a_ball_is_bright(index: float, aperture: float, share: float) -> None:
    # worked by hand from the deviation of a sphere, apart from this package
    assert bright_to(index, aperture) == pytest.approx(share, abs=1.5e-3)


def test_opening_the_iris_narrows_the_black_rim_of_a_bubble() -> None:
    assert bright_to(1.0, 0.65, 0.325) == pytest.approx(0.692, abs=2e-3)


def test_beyond_three_quarters_of_a_bubble_light_is_thrown_back() -> None:
    # critical angle: sin = 1/1.333
    assert np.isnan(deviation(0.7502, 1.0))
    assert np.degrees(deviation(1 / WATER - 1e-9, 1.0)) == pytest.approx(82.8, abs=0.1)


@pytest.mark.parametrize(("index", "radii"), [(1.0, -1.50), (1.47, 5.36), (1.549, 3.59), (1.38, 14.7)])
def test_where_a_ball_gathers_light(index: float, radii: float) -> None:
    # ball lens, paraxial: m r / 2(m - 1)
    assert ball_focus(index) == pytest.approx(radii, rel=5e-3)


@pytest.mark.parametrize(("index", "share"), [(1.0, 0.568), (1.47, 0.972), (1.549, 0.920)])
def test_traced_rays_end_where_the_formula_says(index: float, share: float) -> None:
    x = np.linspace(0, 9.99, 2000)
    light = Ball(0, 0, 0, 10, index).light(x, 0 * x, 0.0, 1e-6, 0.65, rays=4)
    assert x[np.argmax(light < 0.5)] / 10 == pytest.approx(share, abs=0.03)


@pytest.mark.parametrize(("index", "sign"), [(1.0, -1), (1.47, 1), (1.549, 1)])
def test_a_bubble_is_brightest_with_focus_low_and_a_drop_with_focus_high(index: float, sign: int) -> None:
    ball = Ball(0, 0, 0, 10, index)
    planes = np.linspace(-70, 70, 36)
    middle = [float(ball.light(np.zeros(1), np.zeros(1), z, 0.65, 0.1)[0]) for z in planes]
    assert np.sign(planes[int(np.argmax(middle))]) == sign


def test_a_bubble_has_a_broad_black_rim_at_every_focus_and_a_drop_a_thin_one() -> None:
    x = np.linspace(0, 9.9, 400)
    dark = {n: [(Ball(0, 0, 0, 10, n).light(x, 0 * x, z, 0.65, 0.2) < 0.2).mean() for z in (-3.0, 0.0, 3.0)] for n in (1.0, 1.47)}
    assert min(dark[1.0]) > 0.18
    assert max(dark[1.47]) < 0.09


def test_what_has_the_index_of_water_is_not_seen() -> None:
    x = np.linspace(0, 20, 200)
    assert np.allclose(Ball(0, 0, 0, 10, WATER).light(x, 0 * x, 2.0, 0.65, 0.2), 1, atol=0.02)


def test_a_grain_has_dark_edges_a_lit_middle_and_leaves_the_ground_alone() -> None:
    ring = [(10 * np.cos(a), 8 * np.sin(a)) for a in np.linspace(0, 2 * np.pi, 9)[:-1]]
    grain = Grain(ring, 0.0, 1.549, 3)
    x, y = np.meshgrid(np.linspace(-14, 14, 60), np.linspace(-14, 14, 60))
    light = grain.light(x, y, 0.0, 0.65, 0.2)
    inside = np.hypot(x / 10, y / 8) < 0.9
    assert light[inside].min() < 0.4 < light[inside].max()
    assert np.allclose(light[np.hypot(x, y) > 13.5], 1, atol=0.05)


def test_a_grain_is_the_same_every_time() -> None:
    ring = [(10 * np.cos(a), 8 * np.sin(a)) for a in np.linspace(0, 2 * np.pi, 9)[:-1]]
    x, y = np.meshgrid(np.linspace(-5, 5, 12), np.linspace(-5, 5, 12))
    one, other = (Grain(ring, 0.0, 1.549, 3).light(x, y, 0.0, 0.65, 0.2) for _ in range(2))
    assert (one == other).all()
