"""What an objective lets through: cut-offs, depth of field, and the transfer function of weak objects in partly coherent light.

Symbols: f frequency (cycles/µm), S the iris, psi = pi z NA²/(n lambda) the phase at the edge of the pupil for a focus z.
Hopkins (1953) and Streibl (1985) gave the theory (recalled); the same form stands in Tian and Waller (2015).
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

WATER = 1.333
GREEN = 0.55
"""µm."""
Floats = NDArray[np.float64]
Bools = NDArray[np.bool_]


def airy_radius(aperture: float, wavelength: float = GREEN) -> float:
    """First dark ring of a point, µm: 0.61 lambda/NA (Rayleigh)."""
    return 0.61 * wavelength / aperture


def cut_off(aperture: float, iris: float, wavelength: float = GREEN) -> float:
    """The finest grating seen, cycles/µm: (1 + S) NA/lambda; an iris beyond 1 adds nothing."""
    return (1 + min(iris, 1.0)) * aperture / wavelength


def depth_of_field(aperture: float, medium: float = WATER, wavelength: float = GREEN, *, exact: bool = False) -> float:
    """The wave part of the depth of field, µm: n lambda/NA², or lambda/2(n - sqrt(n² - NA²)) where `exact`."""
    if exact:
        return float(wavelength / (2 * (medium - np.sqrt(medium**2 - aperture**2))))
    return medium * wavelength / aperture**2


def transfer(f: Sequence[float] | Floats, iris: float, psi: float, *, grid: int = 401) -> tuple[Floats, Floats]:
    """How absorption and phase come through, H_a and H_p, at frequencies `f` in units of NA/lambda (paraxial focus).

    A weak object then shows I = 1 - H_a a + H_p phi. The integral over the lamp's disc is a sum over `grid`² points of it.
    """
    at = np.asarray(f, float)
    if iris <= 0:
        wave = np.where(at <= 1 + 1e-12, np.exp(-1j * psi * at**2), 0)
        return 2 * wave.real, -2 * wave.imag
    g = (np.arange(grid) + 0.5) / grid * 2 - 1
    x, y = (each * iris for each in np.meshgrid(g, g))
    lamp = x * x + y * y <= iris**2
    x, y = x[lamp], y[lamp]
    out = np.empty(len(at), complex)
    for i, one in enumerate(at):
        passes = (x + one) ** 2 + y * y <= 1
        out[i] = np.where(passes, np.exp(-1j * psi * (one**2 + 2 * one * x)), 0).mean()
    return 2 * out.real, -2 * out.imag


def covered(shift: Floats, iris: float) -> Floats:
    """The share of the lamp's disc that a pupil shifted by so many of its radii still covers: the overlap of two discs."""
    f, s = np.clip(shift, 1e-9, 1 + iris), iris
    a = np.arccos(np.clip((f * f + s * s - 1) / (2 * f * s), -1, 1))
    b = np.arccos(np.clip((f * f + 1 - s * s) / (2 * f), -1, 1))
    c = np.sqrt(np.clip((-f + s + 1) * (f + s - 1) * (f - s + 1) * (f + s + 1), 0, None))
    lens = (s * s * a + b - 0.5 * c) / (np.pi * s * s)
    return np.where(f <= 1 - s, 1.0, lens)


def overlap(f: float, iris: float) -> float:
    """H_a/2 at exact focus in closed form."""
    return float(covered(np.asarray(f, float), iris))


def fringe(z: float, medium: float = WATER, wavelength: float = GREEN) -> float:
    """How wide the first fringe beside an edge is in coherent light, µm: sqrt(lambda z/n)."""
    return float(np.sqrt(wavelength * abs(z) / medium))
