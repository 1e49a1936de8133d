"""Plane geometry against its definitions: a point within a ring, and a line with fewer points."""

from __future__ import annotations

from itertools import pairwise
from math import acos, cos, hypot, pi, sin
from random import Random

import pytest

from keytool.figures import geometry
from keytool.figures.shapes import Point, Points


def star(points: int, seed: int) -> Points:
    """A ring round the origin whose distance from it changes at random."""
    chance = Random(seed)
    return tuple((r * cos(a), r * sin(a)) for a, r in ((2 * pi * k / points, 2 + 8 * chance.random()) for k in range(points)))


def winding(ring: Points, p: Point) -> float:
    """How often the ring turns about the point: the sum of the angles its sides are seen under, in turns."""
    total = 0.0
    for (x1, y1), (x2, y2) in zip(ring, (*ring[1:], ring[0]), strict=True):
        ax, ay, bx, by = x1 - p[0], y1 - p[1], x2 - p[0], y2 - p[1]
        size = hypot(ax, ay) * hypot(bx, by)
        total += (1 if ax * by - ay * bx > 0 else -1) * _angle((ax * bx + ay * by) / size)
    return total / (2 * pi)


def _angle(cosine: float) -> float:
    return acos(max(-1.0, min(1.0, cosine)))


@pytest.mark.parametrize("points", [3, 4, 7, 40, 333])
def test_a_point_is_inside_a_ring_that_turns_about_it_once(points: int):
    ring, chance = star(points, points), Random(1)
    for _ in range(400):
        p = (chance.uniform(-11, 11), chance.uniform(-11, 11))
        assert geometry.inside(ring, p) == (abs(winding(ring, p)) > 0.5), p


def test_two_rings_asked_about_in_turn_are_not_mixed_up():
    near, far = geometry.ellipse(0, 0, 1, 1), geometry.ellipse(10, 0, 1, 1)
    for _ in range(3):
        assert geometry.inside(near, (0.1, 0.1)) and not geometry.inside(far, (0.1, 0.1))
        assert geometry.inside(far, (10.1, 0.1)) and not geometry.inside(near, (10.1, 0.1))


def test_rings_made_and_dropped_one_after_the_other_are_not_mixed_up():
    for k in range(100):
        assert geometry.inside(geometry.ellipse(k, 0, 1, 1), (k, 0.0)) and not geometry.inside(geometry.ellipse(k + 5, 0, 1, 1), (k, 0.0))


def test_no_point_of_a_line_strays_from_its_simpler_form():
    chance = Random(5)
    line = tuple((0.1 * k, sin(0.1 * k) + 0.02 * chance.random()) for k in range(500))
    short = geometry.simplified(line, 0.05)
    assert short[0] == line[0] and short[-1] == line[-1] and len(short) < len(line) / 4
    for p in line:
        assert min(_distance(p, a, b) for a, b in pairwise(short)) <= 0.05 + 1e-9


def _distance(p: Point, a: Point, b: Point) -> float:
    dx, dy = b[0] - a[0], b[1] - a[1]
    t = max(0.0, min(1.0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy)))
    return hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy)
