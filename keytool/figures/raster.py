"""Marks on a grid of pixels, through Pillow: the ground under the PNG writer and the terminal preview.

Every function takes an image of a single band in which 0 is bare and `ON` is inked.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from math import dist
from typing import TYPE_CHECKING

from .geometry import bezier, twice_area
from .marks import Mark
from .shapes import Points, Step

if TYPE_CHECKING:
    from PIL.Image import Image

ON = 255
Placing = Callable[[float, float], tuple[float, float]]
"""From µm on the plate to pixels."""

_PIECES = 16
"""Straight pieces that stand for a curve, at least."""
_PIECE = 12
"""Pixels that a piece may be long before its corners show."""


def ink(image: Image, mark: Mark, place: Placing, px_per_um: float, *, least: float = 0.0) -> None:
    """Draw one mark; no stroke is thinner than `least` pixels."""
    lines = [tuple(place(x, y) for x, y in line) for line in flattened(mark.steps, px_per_um)]
    if mark.width:
        stroke(image, lines, max(mark.width * px_per_um, least))
        return
    fill(image, lines)
    if least:
        stroke(image, [(*line, line[0]) for line in lines], least)


def fill(image: Image, rings: Iterable[Points]) -> None:
    """Fill rings; one that runs the other way round than the first is a hole in it, through which what lies below still shows."""
    from PIL import Image as images
    from PIL import ImageDraw

    closed = [(list(ring), twice_area(ring)) for ring in rings if len(ring) > 2]
    if not any(turn * closed[0][1] < 0 for _, turn in closed):
        for ring, _ in closed:
            ImageDraw.Draw(image).polygon(ring, fill=ON)
        return
    alone = images.new("L", image.size, 0)
    pen = ImageDraw.Draw(alone)
    for ring, turn in closed:
        pen.polygon(ring, fill=ON if turn * closed[0][1] >= 0 else 0)
    image.paste(ON, mask=alone)


def stroke(image: Image, lines: Iterable[Points], width: float) -> None:
    """Lines with round ends and joins; a line of no length is a dot."""
    from PIL import ImageDraw

    pen = ImageDraw.Draw(image)
    r = width / 2
    for line in lines:
        if width > 1.5:
            for x, y in line:
                pen.ellipse((x - r, y - r, x + r, y + r), fill=ON)
        else:
            pen.point([line[0]], fill=ON)
        if len(line) > 1:
            pen.line(list(line), fill=ON, width=max(1, round(width)))


def flattened(steps: Iterable[Step], px_per_um: float = 0.0) -> list[Points]:
    """The steps as runs of points; a closed run ends where it began. A curve large in pixels gets more points."""
    out: list[list[tuple[float, float]]] = []
    for letter, v in steps:
        match letter:
            case "M":
                out.append([(v[0], v[1])])
            case "L":
                out[-1].append((v[0], v[1]))
            case "C":
                curve = (out[-1][-1], (v[0], v[1]), (v[2], v[3]), (v[4], v[5]))
                n = max(_PIECES, round(dist(curve[0], curve[3]) * px_per_um / _PIECE))
                out[-1] += [bezier(*curve, k / n) for k in range(1, n + 1)]
            case "Z":
                out[-1].append(out[-1][0])
    return [tuple(run) for run in out]
