"""The card's typeface: where its files stand, how wide a text is set in it, and the sizes used."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path

FAMILY = "card"
FILES = {
    False: Path(__file__).parent / "fonts" / "DejaVuSansCondensed.ttf",
    True: Path(__file__).parent / "fonts" / "DejaVuSansCondensed-Bold.ttf",
}
"""The file of the plain (False) and the bold (True) face."""

MM_PER_PT = 25.4 / 72
LINE = 1.2
"""From one baseline to the next, in sizes."""
RISE = 0.76
"""How far capitals and ascenders stand above the baseline, in sizes."""
SMALLEST_LEAD = 8.0
"""Points. Below this a lead cannot be read at arm's length in the dim."""
SMALLEST = 7.0
"""Points. Nothing on a card is smaller."""


@dataclass(frozen=True, slots=True)
class Sizes:
    """Point sizes of one card; all follow from the size of the leads. A dense card has its small print as small as may be."""

    lead: float
    dense: bool = False

    @property
    def question(self) -> float:
        """Of a couplet's question (bold)."""
        return 1.15 * self.lead

    @property
    def number(self) -> float:
        """Of a couplet's number (bold)."""
        return (1.6 if self.dense else 1.9) * self.lead

    @property
    def arrow(self) -> float:
        """Of the number a lead goes to (bold)."""
        return 1.35 * self.lead

    @property
    def small(self) -> float:
        """Of how to see it, steps, cautions and what would tell: read once, from near by."""
        return max(SMALLEST if self.dense else 7.6, 0.85 * self.lead)

    @property
    def group(self) -> float:
        """Of the functional group below the name of an end (bold capitals)."""
        return max(SMALLEST if self.dense else 7.6, 0.86 * self.lead)

    @property
    def fine(self) -> float:
        """Of scale bars and back references."""
        return max(SMALLEST, 0.74 * self.lead)


@cache
def _advances(bold: bool) -> tuple[dict[int, str], dict[str, tuple[int, int]], int]:
    from fontTools.ttLib import TTFont

    font = TTFont(FILES[bold], lazy=True)
    return font.getBestCmap(), dict(font["hmtx"].metrics), font["head"].unitsPerEm


@cache
def width(text: str, bold: bool, pt: float) -> float:
    """How wide `text` is set, in mm."""
    glyphs, advances, em = _advances(bold)
    return sum(advances[glyphs.get(ord(char), ".notdef")][0] for char in text) / em * pt * MM_PER_PT


def missing(text: str) -> str:
    """The characters of `text` the typeface has no glyph for."""
    return "".join(sorted({char for char in text if ord(char) not in _advances(False)[0]}))
