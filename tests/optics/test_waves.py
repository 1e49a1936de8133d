"""Waves through slices, against exact results for thin objects and the conservation of light."""

from __future__ import annotations

import pytest

np = pytest.importorskip("numpy")
pytest.importorskip("scipy")

from math import cos, pi

from keytool.optics.matter import Drop
from keytool.optics.waves import Slices, images

GREEN, NA, WATER = 0.55, 0.65, 1.333


def thin(phase: np.ndarray, pixel: float, loss: np.ndarray | None = None) -> Slices:
    """One thin slice with its middle at z = 0."""
    path = (phase * GREEN / (2 * pi)).astype("f4")[None]
    lost = np.zeros((1, 1, *phase.shape), "f4") if loss is None else loss.astype("f4")[None, None]
    return Slices(path, lost, pixel, 1e-6)


def seen(matter: Slices, z: float, iris: float, points: int | None = None) -> np.ndarray:
    return images(matter, (z,), iris, NA, points=points, colours=(GREEN,), green_focus=0.0)[0, ..., 0]


def test_the_empty_ground_is_one() -> None:
    assert seen(thin(np.zeros((64, 64)), 0.2), 3.0, 0.3) == pytest.approx(1.0, abs=1e-5)


@pytest.mark.parametrize("step", [0.2, 0.5, 1.0, 2.0])
def test_a_phase_step_in_focus_shows_a_dark_line(step: float) -> None:
    # coherent light, in focus: cos²(phi/2) at the step (closed form: the two half planes interfere)
    phase = np.zeros((256, 256))
    phase[:, 64:192] = step
    light = seen(thin(phase, 0.05), 0.0, 0.0)
    line = light[128, 56:72]
    assert line.min() == pytest.approx(cos(step / 2) ** 2, abs=0.035)
    assert line.min() < 1


def test_the_dark_line_deepens_with_the_step() -> None:
    depths = []
    for step in (0.2, 0.5, 1.0, 2.0):
        phase = np.zeros((128, 128))
        phase[:, 32:96] = step
        depths.append(float(seen(thin(phase, 0.1), 0.0, 0.0)[64, 24:40].min()))
    assert depths == sorted(depths, reverse=True)


@pytest.mark.parametrize(("iris", "points"), [(0.0, 1), (0.3, 60), (0.5, 90)])
@pytest.mark.parametrize("z", [1.0, 3.0])
def test_a_weak_grating_comes_through_as_the_transfer_function_says(iris: float, points: int, z: float) -> None:
    # the weak-object integral with the exact defocus phase 2 pi z sqrt((n/lambda)² - rho²), summed here apart from the package
    n, pixel, cycles = 200, 0.2, 20
    f = cycles / (n * pixel)
    grating = 0.02 * np.cos(2 * pi * cycles * np.arange(n) / n)[None] * np.ones((n, 1))
    light = seen(thin(grating, pixel), z, iris, points)
    contrast = 2 * np.fft.fft(light[0])[cycles].real / n / 0.02
    g = ((np.arange(201) + 0.5) / 201 * 2 - 1) * max(iris, 1e-9) * NA / GREEN
    x, y = (each[np.add.outer(g * g, g * g) <= (max(iris, 1e-9) * NA / GREEN) ** 2] for each in np.meshgrid(g, g))

    def defocus(square: np.ndarray) -> np.ndarray:
        return 2 * pi * z * np.sqrt((WATER / GREEN) ** 2 - np.minimum(square, (NA / GREEN) ** 2))

    square = (x + f) ** 2 + y * y
    wave = np.where(square <= (NA / GREEN) ** 2, np.exp(1j * (defocus(square) - defocus(x * x + y * y))), 0)
    assert contrast == pytest.approx(-2 * wave.mean().imag, rel=0.06, abs=0.04)


@pytest.mark.parametrize("iris", [0.0, 0.3, 0.7])
def test_a_clear_body_takes_no_light_away(iris: float) -> None:
    # mean light is 1 for pure phase as long as none leaves the pupil
    y, x = np.mgrid[-64:64, -64:64] * 0.3
    ball = 0.6 * np.exp(-(x * x + y * y) / 30)
    assert seen(thin(ball, 0.3), 4.0, iris).mean() == pytest.approx(1.0, abs=2e-3)


def test_an_even_film_darkens_by_lambert_and_beer() -> None:
    # amplitude loss a: intensity exp(-2a)
    loss = np.full((64, 64), 0.25)
    assert seen(thin(np.zeros((64, 64)), 0.2, loss), 0.0, 0.3) == pytest.approx(np.exp(-0.5), rel=1e-4)


def test_a_rod_is_dark_below_and_bright_above_and_gone_in_focus() -> None:
    # rod 0.8 x 2 µm of index 1.388, S 0.5: 0.73, 1.00, 1.27 by the weak integral; a real rod is strong enough to differ by a fifth of its contrast
    light = {}
    for z in (-1.0, 0.0, 1.0):
        drop = Drop(128, 0.1, 5, 2.0)
        at = np.c_[np.linspace(-0.6, 0.6, 13), np.zeros(13), np.full(13, 5.0)]
        drop.grains(at, np.full(13, 0.4), np.full(13, 0.055 * 3.05 / 13 / 0.8))
        light[z] = float(
            images(drop.slices(), (5.0 + z,), 0.5, NA, points=40, colours=(GREEN,), green_focus=0.0)[0, 63:65, 63:65, 0].mean()
        )
    assert light[-1.0] < 0.9 < light[0.0] < 1.1 < light[1.0]
    assert light[1.0] - 1 == pytest.approx(1 - light[-1.0], rel=0.4)


@pytest.mark.parametrize(("index", "sign"), [(1.38, 1), (1.434, 1), (1.30, -1)])
def test_the_bright_line_goes_into_what_is_denser_when_focus_is_raised(index: float, sign: int) -> None:
    # Becke line: lowering the stage, it moves into the higher index (Brock University notes on optical mineralogy)
    y, x = np.mgrid[-64:64, -64:64] * 0.25
    thick = 2 * np.sqrt(np.clip(16 - x * x - y * y, 0, None))
    phase = 2 * pi / GREEN * (index - WATER) * thick * 0.25
    up = seen(thin(phase, 0.25), 6.0, 0.2)
    assert np.sign(up[62:66, 62:66].mean() - 1) == sign


def test_opening_the_iris_hides_what_only_refracts() -> None:
    y, x = np.mgrid[-64:64, -64:64] * 0.2
    ball = 0.4 * np.exp(-(x * x + y * y) / 0.5)
    contrast = [float(seen(thin(ball, 0.2), 1.5, iris).std()) for iris in (0.15, 0.5, 0.9)]
    assert contrast[0] > contrast[1] > contrast[2]


def test_one_passage_gives_the_same_planes_as_one_by_one() -> None:
    y, x = np.mgrid[-32:32, -32:32] * 0.3
    matter = thin(0.8 * np.exp(-(x * x + y * y) / 4), 0.3)
    both = images(matter, (-2.0, 2.0), 0.3, NA)
    assert np.allclose(both[1], images(matter, (2.0,), 0.3, NA)[0])
