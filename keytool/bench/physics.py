"""How fast things sink, and how far a dead speck jiggles. SI inside; lengths in µm at the edges."""

from __future__ import annotations

import math

BOLTZMANN = 1.380649e-23
"""J/K, exact in the SI since 2019."""
GRAVITY = 9.80665
"""m/s², the standard value."""
KELVIN = 273.15


def brownian_um2_per_s(diameter_um: float, viscosity_mpa_s: float, celsius: float) -> float:
    """Diffusion of a sphere (Stokes and Einstein): kT / (3 π η d)."""
    return BOLTZMANN * (celsius + KELVIN) / (3 * math.pi * viscosity_mpa_s * 1e-3 * diameter_um * 1e-6) * 1e12


def brownian_step_um(diameter_um: float, seconds: float, viscosity_mpa_s: float, celsius: float, axes: int = 2) -> float:
    """Root-mean-square distance in that time along so many axes: sqrt(2 n D t). Two are the plane of the slide."""
    return math.sqrt(2 * axes * brownian_um2_per_s(diameter_um, viscosity_mpa_s, celsius) * seconds)


def chance_jiggled_um(distance_um: float, diameter_um: float, seconds: float, viscosity_mpa_s: float, celsius: float) -> float:
    """The chance that jiggling alone takes a sphere at least that far in the plane: exp(-r² / 4Dt)."""
    return math.exp(-(distance_um**2) / (4 * brownian_um2_per_s(diameter_um, viscosity_mpa_s, celsius) * seconds))


def near_wall(gap_um: float, diameter_um: float) -> float:
    """What is left of the diffusion along a glass at this gap (Faxén)."""
    q = diameter_um / 2 / (gap_um + diameter_um / 2)
    return 1 - 9 / 16 * q + q**3 / 8 - 45 / 256 * q**4 - q**5 / 16


def stokes_mm_per_s(diameter_um: float, density: float, water_density: float, viscosity_mpa_s: float) -> float:
    """Speed of sinking (rising if negative) of a sphere; densities in kg/m³. Good below a Reynolds number of about 0.3."""
    return (density - water_density) * GRAVITY * (diameter_um * 1e-6) ** 2 / (18 * viscosity_mpa_s * 1e-3) * 1000


def reynolds(diameter_um: float, speed_mm_per_s: float, water_density: float, viscosity_mpa_s: float) -> float:
    """Reynolds number of a sinking sphere."""
    return water_density * abs(speed_mm_per_s) * 1e-3 * diameter_um * 1e-6 / (viscosity_mpa_s * 1e-3)


def grain_mm_per_s(diameter_um: float, density: float, water_density: float, viscosity_mpa_s: float, drag: float = 1.0) -> float:
    """Speed of sinking of natural grains of any size (Ferguson and Church 2004); `drag` 1.0 for grains, 0.4 for spheres."""
    d, excess = diameter_um * 1e-6, (density - water_density) / water_density
    kinematic = viscosity_mpa_s * 1e-3 / water_density
    return excess * GRAVITY * d**2 / (18 * kinematic + math.sqrt(0.75 * drag * excess * GRAVITY * d**3)) * 1000


def cleared_above_um(seconds: float, column_mm: float, density: float, water_density: float, viscosity_mpa_s: float) -> float:
    """The smallest grain that has left a column of this height in that time (Stokes)."""
    speed = column_mm * 1e-3 / seconds
    return math.sqrt(18 * viscosity_mpa_s * 1e-3 * speed / ((density - water_density) * GRAVITY)) * 1e6
