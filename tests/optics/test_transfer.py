"""The transfer function and the plain figures of objectives, against optics outside the project.

Values without another source were worked out by hand integration on a 3201² grid of the formula of Hopkins (1953, recalled), green light 0.55 µm,
water 1.333, apart from this package; closed forms are named beside their check.
"""

from __future__ import annotations

import pytest

pytest.importorskip("numpy")
pytest.importorskip("scipy")

from math import cos, pi, sin, sqrt

from scipy.special import j1

from keytool.optics.transfer import airy_radius, cut_off, depth_of_field, fringe, overlap, transfer

HALF = pi / 2


def h(f: float, iris: float, psi: float) -> tuple[float, float]:
    absorption, phase = transfer([f], iris, psi)
    return float(absorption[0]), float(phase[0])


@pytest.mark.parametrize(("aperture", "radius"), [(0.65, 0.516), (0.25, 1.342), (0.10, 3.355)])
def test_a_point_is_as_wide_as_rayleigh_says(aperture: float, radius: float) -> None:
    # Rayleigh: 0.61 lambda / NA (any textbook of optics)
    assert airy_radius(aperture) == pytest.approx(radius, abs=5e-4)


@pytest.mark.parametrize(
    ("aperture", "iris", "cycles"), [(0.65, 0, 1.1818), (0.65, 0.5, 1.7727), (0.65, 1, 2.3636), (0.25, 1, 0.9091), (0.10, 1, 0.3636)]
)
def test_the_finest_grating_follows_abbe(aperture: float, iris: float, cycles: float) -> None:
    # Abbe: (NA + NA of the condenser) / lambda
    assert cut_off(aperture, iris) == pytest.approx(cycles, abs=5e-5)


def test_an_iris_wider_than_the_objective_adds_no_resolution() -> None:
    assert cut_off(0.65, 1.4) == cut_off(0.65, 1.0)


@pytest.mark.parametrize(("aperture", "depth"), [(0.10, 55.0), (0.25, 8.80), (0.65, 1.30)])
def test_depth_of_field_in_air(aperture: float, depth: float) -> None:
    # lambda/NA² for these apertures: table of depths of field by R. Littlefield, photomacrography.net
    assert depth_of_field(aperture, medium=1.0) == pytest.approx(depth, rel=2e-3)


def test_depth_of_field_in_water_paraxial_and_exact() -> None:
    assert depth_of_field(0.65) == pytest.approx(1.735, abs=1e-3)
    assert depth_of_field(0.65, exact=True) == pytest.approx(1.625, abs=1e-3)


@pytest.mark.parametrize("f", [0.25, 0.5, 0.75, 1.0])
@pytest.mark.parametrize("psi", [0.5, HALF, pi])
def test_coherent_light_shows_phase_by_the_sine_of_the_focus(f: float, psi: float) -> None:
    # 2 cos and 2 sin (pi D lambda f²): Phase Space Optics: Fundamentals and Applications, eq. 2.15
    assert h(f, 0, psi) == pytest.approx((2 * cos(psi * f * f), 2 * sin(psi * f * f)))


@pytest.mark.parametrize("iris", [0.0, 0.15, 0.3, 0.5, 0.7, 1.0])
@pytest.mark.parametrize("f", [0.25, 0.75, 1.2])
def test_at_exact_focus_no_phase_is_seen(iris: float, f: float) -> None:
    assert abs(h(f, iris, 0)[1]) < 1e-12


@pytest.mark.parametrize("psi", [0.7, HALF, pi])
@pytest.mark.parametrize("f", [0.25, 0.5, 1.0, 1.5])
def test_with_a_matched_iris_no_phase_is_seen_at_any_focus(f: float, psi: float) -> None:
    # the transfer of phase vanishes in incoherent imaging: Lexikon der Optik, "Phasenkontrast"
    assert abs(h(f, 1.0, psi)[1]) < 2e-3


@pytest.mark.parametrize(("f", "phase"), [(0.25, 0.1923), (0.5, 0.7078), (0.75, 0.8263), (1.0, 0.6161), (1.25, 0.2746)])
def test_phase_at_half_open_iris(f: float, phase: float) -> None:
    assert h(f, 0.5, HALF)[1] == pytest.approx(phase, abs=3e-3)


@pytest.mark.parametrize(
    ("f", "iris", "psi", "absorption"),
    [
        (0.75, 0.5, 0, 1.5231),
        (1.0, 0.5, 0, 0.8932),
        (1.25, 0.5, 0, 0.3326),
        (0.5, 1, 0, 1.3701),
        (0.5, 1, HALF, 1.1518),
        (1.25, 0.5, pi, -0.1321),
    ],
)
def test_absorption_at_stated_points(f: float, iris: float, psi: float, absorption: float) -> None:
    assert h(f, iris, psi)[0] == pytest.approx(absorption, abs=4e-3)


def test_phase_at_a_wider_iris() -> None:
    assert h(0.75, 0.7, HALF)[1] == pytest.approx(0.4296, abs=3e-3)


def test_the_matched_iris_in_focus_is_the_optical_transfer_function_of_a_disc() -> None:
    # (4/pi)(acos(f/2) - (f/2) sqrt(1 - f²/4)), Goodman, Introduction to Fourier Optics (recalled)
    assert h(1.0, 1.0, 0)[0] == pytest.approx(4 / pi * (pi / 3 - sqrt(3) / 4), abs=3e-3)


@pytest.mark.parametrize(("f", "iris"), [(0.3, 0.5), (0.75, 0.5), (1.2, 0.7), (1.9, 1.0)])
def test_in_focus_the_integral_is_the_overlap_of_two_discs(f: float, iris: float) -> None:
    assert h(f, iris, 0)[0] == pytest.approx(2 * overlap(f, iris), abs=4e-3)


def test_at_low_frequencies_the_lamp_washes_fringes_out_by_a_bessel_function() -> None:
    # 2 sin(psi f²) 2 J1(u)/u with u = 2 psi f S, for f up to 1 - S
    u = 2 * pi * 0.5 * 0.3
    assert h(0.5, 0.3, pi)[1] == pytest.approx(2 * sin(pi * 0.25) * 2 * j1(u) / u, abs=2e-3)
    assert h(0.5, 0.3, pi)[1] == pytest.approx(1.2629, abs=3e-3)


@pytest.mark.parametrize("iris", [0.0, 0.3, 0.7])
def test_turning_the_focus_the_other_way_turns_dark_into_bright(iris: float) -> None:
    up, down = h(0.6, iris, 1.2), h(0.6, iris, -1.2)
    assert up[1] == pytest.approx(-down[1])
    assert up[0] == pytest.approx(down[0])


def test_nothing_passes_beyond_the_cut_off() -> None:
    assert h(1.31, 0.3, HALF) == (0, 0)
    assert h(1.01, 0, HALF) == (0, 0)


@pytest.mark.parametrize(("z", "width"), [(5, 1.436), (10, 2.031)])
def test_fringes_widen_with_the_root_of_the_focus(z: float, width: float) -> None:
    assert fringe(z) == pytest.approx(width, abs=1e-3)
