"""Plates as PNG: antialiased by drawing larger and shrinking; the same plate and colours always give the same bytes."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from io import BytesIO
from itertools import groupby
from pathlib import Path
from typing import TYPE_CHECKING

from .marks import Lettering, Mark, marks
from .raster import ON, ink
from .shapes import WASHES, Drawing, Role

if TYPE_CHECKING:
    from PIL.Image import Image

_OVER = 4
"""Pixels drawn for each pixel kept, each way."""


@dataclass(frozen=True, slots=True)
class Colours:
    """What a PNG is drawn in, as `#rrggbb`. `faint` is how much of the ink's colour faint lines keep, 0 to 1."""

    ink: str = "#1a1816"
    accent: str = "#b0401c"
    paper: str = "#fdfbf6"
    faint: float = 0.55

    def of(self, role: Role) -> tuple[str, float]:
        """Colour and strength of a role."""
        if role in WASHES:
            return (WASHES[role], 1.0)
        return {"ink": (self.ink, 1.0), "accent": (self.accent, 1.0), "faint": (self.ink, self.faint), "paper": (self.paper, 1.0)}[role]


def to_png(drawing: Drawing, px_per_um: float, *, colours: Colours | None = None, font: Path | None = None) -> bytes:
    """The plate as the bytes of a PNG, `drawing.box` times `px_per_um` in size.

    `font` is a TrueType file for the lettering; without one Pillow's own face is used. Needs Pillow.
    """
    image = to_image(drawing, px_per_um, colours=colours, font=font)
    out = BytesIO()
    image.save(out, "PNG", optimize=True)
    return out.getvalue()


def to_image(drawing: Drawing, px_per_um: float, *, colours: Colours | None = None, font: Path | None = None) -> Image:
    """The plate as a Pillow image in RGB, for pasting into a larger picture."""
    from PIL import Image

    shades = colours or Colours()
    size = tuple(max(1, round(side * px_per_um)) for side in (drawing.box.width, drawing.box.height))
    image = Image.new("RGB", (size[0], size[1]), shades.paper)
    for role, run in groupby(marks(drawing), key=lambda mark: mark.role):
        colour, strength = shades.of(role)
        mask = _mask(drawing, list(run), px_per_um, (size[0], size[1]), font)
        if strength < 1:
            mask = mask.point([round(v * strength) for v in range(256)])
        image.paste(colour, (0, 0, *image.size), mask)
    return image


def _mask(drawing: Drawing, run: Iterable[Mark | Lettering], px_per_um: float, size: tuple[int, int], font: Path | None) -> Image:
    """How much of each pixel the marks cover."""
    from PIL import Image, ImageDraw

    k = px_per_um * _OVER
    mask = Image.new("L", (size[0] * _OVER, size[1] * _OVER), 0)
    for mark in run:
        if isinstance(mark, Mark):
            ink(mask, mark, lambda x, y: ((x - drawing.box.x) * k, (y - drawing.box.y) * k), k)
        else:
            at = ((mark.x - drawing.box.x) * k, (mark.y - drawing.box.y) * k)
            ImageDraw.Draw(mask).text(
                at, mark.text, fill=ON, font=_face(font, mark.size * k), anchor="rs" if mark.anchor == "end" else "ls"
            )
    return mask.resize(size, Image.Resampling.BOX)


def _face(font: Path | None, size: float):  # type: ignore[no-untyped-def]
    from PIL import ImageFont

    return ImageFont.truetype(str(font), max(1.0, size)) if font else ImageFont.load_default(max(1.0, size))
