"""From an outline to a body with a thickness, against plain solid geometry."""

from __future__ import annotations

import pytest

np = pytest.importorskip("numpy")
pytest.importorskip("scipy")

from math import cos, pi, sin, sqrt

from keytool.optics.silhouette import filled, joined, silhouette

PIXEL = 0.25


def ring(a: float, b: float, n: int = 120) -> list[tuple[float, float]]:
    points = [(a * cos(2 * pi * k / n), b * sin(2 * pi * k / n)) for k in range(n)]
    return [*points, points[0]]


def test_a_ball_has_the_volume_of_a_ball() -> None:
    # 4/3 pi r³
    shape = silhouette([ring(10, 10)], 128, PIXEL)
    volume = (2 * sqrt(2) * shape.height).sum() * PIXEL**2
    assert volume == pytest.approx(4 / 3 * pi * 1000, rel=0.04)


def test_a_rod_is_as_thick_as_it_is_wide() -> None:
    # a cylinder: pi r² l
    wall = [[(-3.0, y / 2) for y in range(-60, 61)], [(3.0, y / 2) for y in range(-60, 61)]]
    shape = silhouette(wall, 128, PIXEL)
    assert shape.height[64, 60:68].max() == pytest.approx(3.0, rel=0.05)
    assert (2 * shape.height[32:96]).sum() * PIXEL**2 == pytest.approx(pi * 9 * 64 * PIXEL, rel=0.08)


def test_depth_within_is_the_distance_to_the_edge() -> None:
    shape = silhouette([ring(10, 10)], 128, PIXEL)
    assert shape.inside.max() == pytest.approx(10, abs=0.3)
    assert shape.inside[64, 84] == pytest.approx(10 - 20.5 * PIXEL, abs=0.2)


def test_a_wall_leaves_a_room_that_is_smaller_all_round() -> None:
    shape = silhouette([ring(10, 10)], 128, PIXEL)
    room = shape.inset(1.0)
    assert room.inside.max() == pytest.approx(9, abs=0.3)
    assert (room.height <= shape.height + 1e-6).all()
    assert room.height.max() == pytest.approx(shape.height.max() - 1.0, abs=0.2)


def test_an_outline_that_the_plate_cut_open_is_closed_between_its_nearest_ends() -> None:
    half = ring(10, 10)[20:110]
    assert len(joined([half])) == 1
    shape = silhouette([half], 128, PIXEL)
    assert (shape.inside > 0).sum() * PIXEL**2 > 0.7 * pi * 100


def test_a_filled_line_is_filled_by_itself() -> None:
    shape = filled([ring(4, 2)], 128, PIXEL)
    assert (shape.inside > 0).sum() * PIXEL**2 == pytest.approx(pi * 8, rel=0.06)
