"""Walls of single bodies: smooth, doubled, thick, layered, warty, spiny, netted, wrinkled, folded, glassy."""

from __future__ import annotations

from math import cos, pi, sin

from .. import geometry, pen
from ..shapes import Point, Points, Shape

ROOMS = {
    "single": 0.92,
    "double": 0.80,
    "thick": 0.78,
    "warty": 0.88,
    "spiny": 0.88,
    "layered": 0.72,
    "wrinkled": 0.84,
    "netted": 0.86,
    "folded": 0.86,
    "thin": 0.94,
    "cones": 0.88,
    "coated": 0.80,
}
"""Each wall, and the share of the body its contents may fill."""


def wall(style: str, edge: Points, pen_um: float) -> list[Shape]:
    """The wall; the outer edge of its ink is `edge`."""
    box = geometry.around(edge)
    r = min(box.width, box.height) / 2
    thin, thick = (0.9, 1.4) if style == "thin" else (1.3, 2.6)
    out: list[Shape] = [pen.contour(edge, thin, thick, "outline")]
    match style:
        case "double":
            out.append(pen.contour(_in(edge, 0.15 * r), 0.9, 1.3, "wall"))
        case "thick":
            out += [pen.contour(_in(edge, 0.18 * r), 1.0, 1.4, "wall"), _ticks(edge, 0.05 * r, 0.16 * r, 72)]
        case "layered":
            out += [pen.stroke(_in(edge, s * r), w, "wall", closed=True) for s, w in ((0.06, 0.6), (0.12, 0.6), (0.18, 0.7))]
            out.append(pen.contour(_in(edge, 0.25 * r), 1.0, 1.4, "wall"))
        case "warty":
            out += [pen.disc(x - 0.02 * r * nx, y - 0.02 * r * ny, 0.045 * r, "wall") for (x, y), (nx, ny) in _round(edge, 30)]
        case "spiny":
            out += [_spine(p, n, 0.06 * r, 0.16 * r) for p, n in _round(edge, 26)]
            out += [pen.disc(x, y, 0.016 * r, "wall") for x, y in _face(edge, 30)]
        case "cones":
            out += [_spine(p, n, 0.11 * r, 0.20 * r) for p, n in _round(edge, 18)]
            out += [pen.ring(x, y, 0.055 * r, 0.8, "wall") for x, y in _face(edge, 18)]
        case "netted":
            out += [
                _mesh(edge, r),
                pen.strokes([((x, y), (x - nx * 0.06 * r, y - ny * 0.06 * r)) for (x, y), (nx, ny) in _round(edge, 24)], 1.4, "wall"),
            ]
        case "wrinkled":
            out = [pen.contour(_crumpled(edge, r), 1.1, 2.0, "outline"), pen.contour(_in(edge, 0.14 * r), 0.9, 1.3, "wall")]
        case "folded":
            out += [
                pen.line(geometry.curve([(x * r, y * r) for x, y in one], per=8), (0.5, 1.6, 0.5), "wall")
                for one in (
                    ((-0.78, -0.30), (-0.30, -0.12), (0.10, -0.30), (0.52, -0.22)),
                    ((-0.40, 0.62), (0.02, 0.36), (0.50, 0.42)),
                    ((0.10, -0.80), (0.30, -0.52), (0.24, -0.36)),
                )
            ]
        case "coated":
            out += _coat(edge, r)
    return out


def _in(edge: Points, by: float) -> Points:
    return geometry.offset(edge, [by] * len(edge), closed=True)


def _round(edge: Points, count: int) -> list[tuple[Point, Point]]:
    """Even places on the edge, each with the unit vector that points inward."""
    step = sum(((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2) ** 0.5 for a, b in zip(edge, (*edge[1:], edge[0]), strict=True)) / count
    walk = geometry.spaced((*edge, edge[0]), step)[:-1]
    return list(zip(walk, geometry.normals(walk, closed=True), strict=True))


def _ticks(edge: Points, start: float, stop: float, count: int) -> Shape:
    lines = [((x + nx * start, y + ny * start), (x + nx * stop, y + ny * stop)) for (x, y), (nx, ny) in _round(edge, count)]
    return pen.strokes(lines, 0.5, "wall", role="faint")


def _spine(p: Point, n: Point, half: float, tall: float) -> Shape:
    (x, y), (nx, ny) = p, n
    return pen.filled(((x + ny * half, y - nx * half), (x - nx * tall, y - ny * tall), (x - ny * half, y + nx * half)), "wall")


def _face(edge: Points, count: int) -> list[Point]:
    """Even places on the face of the body, thinner toward the rim."""
    box = geometry.around(edge)
    return [
        (
            0.86 * box.width / 2 * ((k + 0.5) / count) ** 0.5 * cos(2.39996 * k),
            0.86 * box.height / 2 * ((k + 0.5) / count) ** 0.5 * sin(2.39996 * k),
        )
        for k in range(count)
    ]


def _mesh(edge: Points, r: float) -> Shape:
    """Six-sided meshes over the face."""
    cell = 0.20 * r
    lines = []
    for row in range(-8, 9):
        for col in range(-8, 9):
            x, y = (col + 0.5 * (row % 2)) * 1.732 * cell, row * 1.5 * cell
            hexagon = geometry.arc(x, y, cell, pi / 6, pi / 6 + pi, count=3)
            lines += geometry.runs(hexagon, lambda p: geometry.inside(edge, (1.04 * p[0], 1.04 * p[1])))
    return pen.strokes(lines, 0.9, "wall")


def _crumpled(edge: Points, r: float) -> Points:
    """An outer skin in folds; it reaches the true edge at the crests."""
    count = len(edge)
    return geometry.offset(
        edge, [0.045 * r * (1 + sin(2 * pi * 11 * k / count + 1.3 * sin(4 * pi * k / count))) for k in range(count)], closed=True
    )


def _coat(edge: Points, r: float) -> list[Shape]:
    """Soil grains stuck on all round."""
    out: list[Shape] = []
    for k, ((x, y), (nx, ny)) in enumerate(_round(edge, 30)):
        s = r * (0.06 + 0.05 * ((k * 0.618) % 1))
        turn = 2.0 * k
        grain = geometry.moved(
            [(-s, -0.5 * s), (0.2 * s, -0.9 * s), (s, -0.1 * s), (0.5 * s, 0.8 * s), (-0.6 * s, 0.7 * s)],
            x - nx * 0.4 * s,
            y - ny * 0.4 * s,
            turn=turn,
        )
        out += [pen.stroke(grain, 1.1, "wall", closed=True)]
    return out
