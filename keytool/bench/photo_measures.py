"""Measures on a picture with a known scale, each with its uncertainty: from blur, from the scale, and from distortion near the edge."""

from __future__ import annotations

import math
from collections.abc import Sequence

from keytool.bench.field_edge import Circle, Point
from keytool.bench.hyphae import chain_length
from keytool.bench.optics import Scale


def scale_of_field(circle: Circle, field_um: float, edge_error: float, field_error: float) -> Scale:
    """µm to a pixel from the round edge and the true width of the field; both relative errors join."""
    return Scale(field_um / (2 * circle.radius), math.hypot(edge_error, field_error))


def length_um(points: Sequence[Point], scale: Scale, circle: Circle | None, end_um: float, distortion: float) -> tuple[float, float]:
    """Length along a bent line, and its standard error. `distortion` is that at the edge; it grows with the square of the distance."""
    length = scale.length_um(chain_length(points))
    return length, math.hypot(math.sqrt(2) * end_um, length * scale.relative_error, length * stretched(points, circle, distortion))


def area_um2(points: Sequence[Point], scale: Scale, circle: Circle | None, end_um: float, distortion: float) -> tuple[float, float]:
    """Area inside a closed line, and its standard error: its outline may lie `end_um` in or out."""
    turned = [*points[1:], points[0]]
    area = abs(math.fsum(a * d - c * b for (a, b), (c, d) in zip(points, turned, strict=True))) / 2 * scale.um_per_part**2
    around = scale.length_um(chain_length([*points, points[0]]))
    relative = 2 * math.hypot(scale.relative_error, stretched(points, circle, distortion))
    return area, math.hypot(around * end_um / math.sqrt(max(3, len(points))), area * relative)


def angle_degrees(one: Point, corner: Point, two: Point, scale: Scale, end_um: float) -> tuple[float, float]:
    """Angle at the corner between two arms, and its standard error in degrees."""
    first = math.atan2(one[1] - corner[1], one[0] - corner[0])
    second = math.atan2(two[1] - corner[1], two[0] - corner[0])
    angle = abs(math.degrees(first - second)) % 360
    arms = [scale.length_um(math.dist(each, corner)) for each in (one, two)]
    return min(angle, 360 - angle), math.degrees(math.sqrt(2) * end_um * math.hypot(*(1 / max(each, 1e-9) for each in arms)))


def stretched(points: Sequence[Point], circle: Circle | None, distortion: float) -> float:
    """Relative error by distortion at the outermost point; half of it where nobody knows where the middle of the lens is."""
    if circle is None:
        return distortion / 2
    return distortion * max(min(1.0, math.dist(each, (circle.x, circle.y)) / circle.radius) for each in points) ** 2
