"""Which parts take the accent colour when one of them is asked about."""

from __future__ import annotations

from dataclasses import replace

from ..frame import Sketch
from ..shapes import recoloured

_WHOLES: dict[str, tuple[str, ...]] = {
    "stoma": ("stoma", "stoma-base"),
    "spear": ("spear", "knobs", "base"),
    "gullet": ("gullet", "bulb", "gland", "valve"),
    "tooth": ("tooth", "denticles"),
    "body": ("outline",),
    "insect-marks": ("eyes", "wings"),
    "waist-or-pincers": ("waist", "pincers"),
}
"""Parts that are made of other parts; any other part is just itself."""


def accented(sketch: Sketch, part: str) -> Sketch:
    """The sketch with `part` in the accent colour; `none`, or a part that is not there, changes nothing."""
    members = _WHOLES.get(part, (part,))
    shapes = tuple(recoloured(s, "accent") if s.part in members else s for s in sketch.shapes)
    return replace(sketch, shapes=shapes)
