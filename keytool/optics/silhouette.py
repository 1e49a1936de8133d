"""From a drawing to shapes with an inside: the silhouette of its outline, how deep each point lies in it, and closed parts within.

The outline of a plate may be open where the plate cuts the thing off, or where a branch leaves; loose ends are joined to
the nearest other loose end. What cannot be reached from without is the body.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import cos, dist, sin

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageDraw
from scipy.ndimage import distance_transform_edt, gaussian_filter, label, zoom
from scipy.sparse import coo_matrix
from scipy.sparse.linalg import spsolve

from keytool.figures.raster import flattened
from keytool.figures.shapes import Dots, Drawing, Path, Point, Shape, Swell

from .transfer import Floats

Line = list[Point]
FINER = 3
"""Sub-pixels a side while distances are found: walls are thinner than a pixel."""
SOLVED = 150
"""Pixels a side, at most, of the grid on which the height of a body is solved."""


@dataclass(frozen=True, slots=True)
class Placing:
    """Where a drawing lies in the picture: its point `middle` at 0, 0, turned by `turn` radians."""

    middle: Point
    turn: float

    def put(self, points: Iterable[Point]) -> Line:
        """Points of the drawing in the picture's µm."""
        c, s = cos(self.turn), sin(self.turn)
        return [
            ((x - self.middle[0]) * c - (y - self.middle[1]) * s, (x - self.middle[0]) * s + (y - self.middle[1]) * c) for x, y in points
        ]


def lines_of(shape: Shape) -> list[Line]:
    """The lines of a shape, µm; a closed one ends where it began. Stipple and lettering have none."""
    match shape:
        case Swell(points=points, closed=closed):
            return [[*points, points[0]] if closed else list(points)]
        case Path(steps=steps):
            return [list(each) for each in flattened(steps, 4.0)]
        case _:
            return []


def named(drawing: Drawing, *parts: str) -> list[Line]:
    """All lines of these parts; paper, which only hides what lies below, is left out."""
    return [line for shape in drawing.shapes if shape.part in parts and shape.role != "paper" for line in lines_of(shape) if len(line) > 1]


def stipple(drawing: Drawing, part: str) -> list[Point]:
    """Where the stipple of a part lies."""
    return [p for shape in drawing.shapes if isinstance(shape, Dots) and shape.part == part for p in shape.points]


def is_closed(line: Line) -> bool:
    """Whether a line comes back to where it began."""
    return len(line) > 2 and dist(line[0], line[-1]) < 1e-6 + 0.02 * max(dist(line[0], each) for each in line)


def joined(lines: Sequence[Line]) -> list[Line]:
    """Straight joins between loose ends, nearest first, so that the lines enclose what they outline."""
    ends = [(i, end) for i, line in enumerate(lines) if not is_closed(line) for end in (line[0], line[-1])]
    pairs = sorted((dist(a[1], b[1]), m, n) for m, a in enumerate(ends) for n, b in enumerate(ends) if m < n)
    used: set[int] = set()
    out: list[Line] = []
    for _, m, n in pairs:
        if m not in used and n not in used:
            used |= {m, n}
            out.append([ends[m][1], ends[n][1]])
    return out


@dataclass(frozen=True, slots=True)
class Silhouette:
    """Of each pixel: how far inside the edge it lies (µm, negative outside), and the height over the middle of a body with that outline.

    `height` is that of a rod as thick as it is wide; a ball is the square root of two higher.
    """

    inside: Floats
    height: Floats

    def inset(self, wall: float) -> Silhouette:
        """The room left within a wall of even thickness, µm."""
        depth = self.inside - wall
        share = np.sqrt(np.clip(depth, 0, None) / np.maximum(self.inside, 1e-9))
        return Silhouette(depth, np.clip(np.minimum(self.height * share, self.height - wall * (self.height > wall)), 0, None) * (depth > 0))


def silhouette(lines: Sequence[Line], size: int, pixel: float) -> Silhouette:
    """What the lines enclose (the picture's µm, the middle at 0, 0) in a picture of `size` pixels."""
    n, beyond = size * FINER, 12
    wide = n + 2 * beyond
    image = Image.new("L", (wide, wide), 0)
    pen = ImageDraw.Draw(image)

    def cell(value: float) -> float:
        # what runs out of the picture is led along its border, so that it still encloses the thing
        return min(max(value / pixel * FINER + wide / 2, 4.0), wide - 5.0)

    kept: list[Line] = [[(cell(x), cell(y)) for x, y in line] for line in lines]
    for line in [*kept, *joined(kept)]:
        pen.line(line, fill=255, width=2)
    rooms, _ = label(~(np.asarray(image) > 0))
    mask = (rooms != rooms[0, 0])[beyond:-beyond, beyond:-beyond]
    return _depths(mask, size, pixel)


def filled(lines: Sequence[Line], size: int, pixel: float) -> Silhouette:
    """The same of closed lines, each of them filled by itself."""
    n = size * FINER
    image = Image.new("L", (n, n), 0)
    pen = ImageDraw.Draw(image)
    for line in lines:
        pen.polygon([(x / pixel * FINER + n / 2, y / pixel * FINER + n / 2) for x, y in line], fill=255)
    return _depths(np.asarray(image) > 0, size, pixel)


def _depths(mask: NDArray[np.bool_], size: int, pixel: float) -> Silhouette:
    """Distance and height; worked out only where the mask lies."""
    depth, height = np.full((size, size), -1e3), np.zeros((size, size))
    rows, columns = np.nonzero(mask.any(1))[0], np.nonzero(mask.any(0))[0]
    if not len(rows):
        return Silhouette(depth, height)
    lo = [max(0, each[0] // FINER - 4) for each in (rows, columns)]
    hi = [min(size, each[-1] // FINER + 5) for each in (rows, columns)]
    cut = mask[lo[0] * FINER : hi[0] * FINER, lo[1] * FINER : hi[1] * FINER]
    # beyond the picture the thing goes on: an edge of the picture is no edge of it
    wide = np.pad(cut, FINER * 6, mode="edge")
    sub = pixel / FINER
    fine = (distance_transform_edt(wide) - distance_transform_edt(~wide))[FINER * 6 : -FINER * 6, FINER * 6 : -FINER * 6]
    fine = gaussian_filter(fine.astype(np.float32) - 0.5 * np.sign(fine), 0.8) * sub
    h, w = hi[0] - lo[0], hi[1] - lo[1]
    inside = fine.reshape(h, FINER, w, FINER).mean((1, 3))
    window = (slice(lo[0], hi[0]), slice(lo[1], hi[1]))
    depth[window] = inside
    height[window] = _height(inside, pixel)
    return Silhouette(depth, height)


def _height(inside: Floats, pixel: float) -> Floats:
    """Half the thickness of a round body: u with laplacian -4 and 0 at the edge is x(w - x) twice over in a strip, and R² - r² in a disc.

    u is solved on a coarse grid as a share of the distance to the edge, so that the edge itself stays as sharp as that is known.
    """
    step = max(1, int(np.ceil(max(inside.shape) / SOLVED)))
    coarse = inside[::step, ::step]
    body = coarse > 0
    if not body.any():
        return np.sqrt(np.clip(inside, 0, None) * np.clip(inside, 0, None))
    h = pixel * step
    index = np.full(body.shape, -1)
    index[body] = np.arange(body.sum())
    row, column = np.nonzero(body)
    own, rows, columns, values = np.zeros(len(row)), [], [], []
    for dr, dc in ((1, 0), (-1, 0), (0, 1), (0, -1)):
        r, c = row + dr, column + dc
        beyond = (r < 0) | (c < 0) | (r >= body.shape[0]) | (c >= body.shape[1])
        r, c = np.clip(r, 0, body.shape[0] - 1), np.clip(c, 0, body.shape[1] - 1)
        other = np.where(beyond, index[row, column], index[r, c])  # beyond the picture: as here
        within = other >= 0
        rows.append(np.nonzero(within)[0])
        columns.append(other[within])
        values.append(np.full(within.sum(), -1.0))
        # where the neighbour is outside, the edge lies a part of a step away
        reach = np.clip(coarse[row, column] / h, 0.15, 1.0)
        own += np.where(within, 1.0, 1.0 / reach)
    n = len(row)
    here = np.arange(n)
    entries, at = np.concatenate([*values, own]), (np.concatenate([*rows, here]), np.concatenate([*columns, here]))
    matrix = coo_matrix((entries, at), (n, n)).tocsc()
    u = np.zeros(body.shape)
    u[body] = spsolve(matrix, np.full(n, 4 * h * h))
    ratio = np.where(body, u / np.maximum(coarse, 0.35 * h), 0)
    known = gaussian_filter(body.astype(float), 1.0)
    ratio = np.where(body, ratio, gaussian_filter(ratio, 1.0) / np.maximum(known, 1e-6) * (known > 0.02))
    smooth = zoom(ratio, step, order=1, mode="nearest", grid_mode=True)[: inside.shape[0], : inside.shape[1]] if step > 1 else ratio
    return np.sqrt(np.clip(inside, 0, None) * np.clip(smooth, 0, None) / 2)
