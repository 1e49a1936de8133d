"""A drawing in letters: braille dots, half blocks or plain ASCII, for a terminal."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from .marks import Mark, of_shape
from .raster import ON, ink
from .shapes import WASHES, Dots, Drawing

if TYPE_CHECKING:
    from PIL.Image import Image

Letters = Literal["braille", "blocks", "ascii"]

_PIXELS: dict[Letters, tuple[int, int]] = {"braille": (2, 4), "blocks": (1, 2), "ascii": (1, 2)}
"""Pixels a letter stands for, across and down."""
_HALVES = {"blocks": " ▀▄█", "ascii": " '.|"}
"""The letter for: nothing, upper, lower, both halves."""
_BRAILLE = ((0x01, 0x08), (0x02, 0x10), (0x04, 0x20), (0x40, 0x80))
_TALL = 2.0
"""A letter's height over its width in common terminals."""


def preview(drawing: Drawing, columns: int, rows: int, *, letters: Letters = "braille") -> str:
    """The picture (without scale bar) in at most `columns` by `rows` letters, as lines joined by newlines.

    `braille` needs a terminal that shows U+2800 to U+28FF, `blocks` one that shows half blocks; `ascii` needs nothing.
    Trailing blanks are taken off; the picture stands at the left. Needs Pillow.
    """
    image = _raster(drawing, columns, rows, letters)
    wide, high = _PIXELS[letters]
    lines = []
    for top in range(0, image.height, high):
        cells = [
            [[bool(image.getpixel((left + x, top + y))) for x in range(wide)] for y in range(high)] for left in range(0, image.width, wide)
        ]
        lines.append("".join(_letter(cell, letters) for cell in cells).rstrip(" \u2800"))
    return "\n".join(lines).rstrip("\n")


def _letter(cell: list[list[bool]], letters: Letters) -> str:
    if letters == "braille":
        return chr(0x2800 + sum(bit for row, bits in zip(cell, _BRAILLE, strict=True) for on, bit in zip(row, bits, strict=True) if on))
    return _HALVES[letters][cell[0][0] + 2 * cell[1][0]]


def _raster(drawing: Drawing, columns: int, rows: int, letters: Letters) -> Image:
    """The picture in black and white, its size a whole number of letters.

    At this size stipple is noise and a faint line hides a firm one, so both are left out, unless nothing else is there.
    """
    from PIL import Image

    wide, high = _PIXELS[letters]
    across, down = columns * wide, rows * high
    square = _TALL * wide / high  # a pixel's height over its width
    frame = drawing.frame
    k = min((across - 1) / frame.width, (down - 1) * square / frame.height)
    width = -(-round(frame.width * k + 1) // wide) * wide
    height = -(-round(frame.height * k / square + 1) // high) * high
    image = Image.new("L", (width, height), 0)
    firm = [s for s in drawing.shapes if s.role != "faint" and s.role not in WASHES and not isinstance(s, Dots)] or drawing.shapes
    for shape in firm:
        for mark in of_shape(shape, drawing.pen_um, drawing.letter_um):
            if isinstance(mark, Mark):
                ink(image, mark, lambda x, y: ((x - frame.x) * k, (y - frame.y) * k / square), k, least=1.0)
    return image.point([ON if v >= ON / 2 else 0 for v in range(256)])
