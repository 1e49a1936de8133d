"""Choosing how a key is set on a paper: how many sides and columns, how large the type, how much of each look."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cache, partial

from keytool.card.content import CardCouplet, Content
from keytool.card.couplet import Style, couplet_block
from keytool.card.flow import PLATES, Column, columns, mean_plate
from keytool.card.ink import Block
from keytool.card.notes import note_block
from keytool.card.typeface import SMALLEST_LEAD, Sizes

CLEAR_MM = 5.0
"""Kept clear inside the cut edge for laminating; nothing at all is printed there."""
MARGIN_MM = 7.0
"""From the edge of the paper to the type."""
COLUMN_GAP = 5.0
LEADS = (12.5, 11.5, 10.5, 10.0, 9.5, 9.0, SMALLEST_LEAD)
NARROWEST, WIDEST = 56.0, 145.0
GOOD_LEAD, GOOD_PLATE = 10.5, 20.0
"""What is comfortable at arm's length: points, and mm for the largest plate of a couplet."""


@dataclass(frozen=True, slots=True)
class Area:
    """The room between header and footer, mm."""

    width: float
    height: float


@dataclass(frozen=True, slots=True)
class Setting:
    """One way to set a key. `columns` runs through all sides, `across` to a side."""

    across: int
    width: float
    style: Style
    columns: tuple[Column, ...]
    comfort: float
    """About 1 where type and plates are comfortable at arm's length; below, cramped."""

    @property
    def sides(self) -> int:
        """How many sides it takes."""
        return -(-len(self.columns) // self.across)


def best_setting(content: Content, area: Area) -> Setting | None:
    """The most comfortable setting on one side if that is comfortable, else on as few sheets as it takes, both sides of each.

    None if some block does not fit a column even with the smallest type and plates.
    """
    measure = _measurer(content)
    for sides in (1, *range(2, len(content.blocks) + 2, 2)):
        found = max(_settings(measure, len(content.blocks), area, sides), key=lambda each: each.comfort, default=None)
        if found and (sides > 1 or found.comfort >= 1):
            return found
    return None


def shortfall(content: Content, area: Area) -> tuple[str, float]:
    """What fits a column least at the smallest sizes, and by how many mm it is too high (or, if infinite, too wide)."""
    style = Style(Sizes(SMALLEST_LEAD), short_look=True)
    measure = _measurer(content)
    worst = []
    for _, width in _widths(area):
        blocks = [(measure(width, style, number, PLATES[0]), number) for number in range(len(content.blocks))]
        over = [((block.height if block else float("inf")) - area.height, number) for block, number in blocks]
        worst.append(max(over))
    by, number = min(worst, default=(float("inf"), 0))
    block = content.blocks[number]
    return (f"couplet {block.number}" if isinstance(block, CardCouplet) else f"'{block.title}'"), by


_Measurer = Callable[[float, Style, int, float], Block | None]
"""A block by column width, style, its number and the size of its largest plate."""


def _measurer(content: Content) -> _Measurer:
    @cache
    def measure(width: float, style: Style, number: int, plate: float) -> Block | None:
        block = content.blocks[number]
        return couplet_block(block, width, style, plate) if isinstance(block, CardCouplet) else note_block(block, width, style.sizes)

    return measure


def _settings(measure: _Measurer, count: int, area: Area, sides: int) -> Iterator[Setting]:
    """Every setting worth having on so many sides: those that cannot be the most comfortable are not tried."""
    best = 0.0
    for lead in LEADS:
        for short_look in (False, True):
            style = Style(Sizes(lead), short_look)
            if _comfort(style, PLATES[-1], 1.0) <= best:
                continue
            for across, width in _widths(area):
                made = columns(partial(measure, width, style), count, area.height, sides * across)
                if made:
                    filled = sum(column.filled for column in made) / (area.height * sides * across)
                    comfort = _comfort(style, mean_plate(made), filled)
                    best = max(best, comfort)
                    yield Setting(across, width, style, tuple(made), comfort)


def _widths(area: Area) -> Iterator[tuple[int, float]]:
    for across in range(1, 7):
        width = round((area.width - COLUMN_GAP * (across - 1)) / across, 3)
        if NARROWEST <= width <= WIDEST:
            yield across, width


def _comfort(style: Style, plate_size: float, filled: float) -> float:
    """The lesser of type and plates counts most, then the other, then how well the paper is used; short looks cost a little."""
    kind = min(1.2, style.sizes.lead / GOOD_LEAD)
    plate = min(1.2, plate_size / GOOD_PLATE)
    return 0.8 * min(kind, plate) + 0.1 * (kind + plate) + 0.15 * filled - (0.1 if style.short_look else 0.0) - 0.1
