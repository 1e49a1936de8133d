"""Choosing how a key is set on a paper: how many faces and columns, how large the type, how much of each look."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import cache, partial
from typing import Literal

from keytool.card.couplet import Style, couplet_block
from keytool.card.flow import NEAR_PLATES, PLATES, Column, columns, mean_plate
from keytool.card.form import Form
from keytool.card.ink import Block
from keytool.card.model import CardBlock, CardCouplet, Compared, Content, Note, Row, Told
from keytool.card.notes import note_block, told_block
from keytool.card.table import compared_block, row_block
from keytool.card.typeface import SMALLEST_LEAD, Sizes

COLUMN_GAP = 5.0
LEADS = (12.5, 11.5, 10.5, 10.0, 9.5, 9.0, 8.5, SMALLEST_LEAD)
MOST_DENSE = 9.0
"""Points: the largest leads of a dense card."""
NARROWEST, WIDEST, NARROWEST_DENSE = 56.0, 145.0, 43.0
GOOD_LEAD, GOOD_PLATE = 10.5, 20.0
"""What is comfortable at arm's length: points, and mm for the largest plate of a couplet."""
LOSS = {"all": 0.0, "first": 0.1, "none": 0.3}
"""What it costs in comfort to leave out some of how to see it."""
WHOLE_TABLE = 0.7
"""A table is better seen whole than comfortable: this comfort is enough for one face."""


@dataclass(frozen=True, slots=True)
class Area:
    """The room between header and footer, mm: `heights` are those of the faces of one card, which come again on the next."""

    width: float
    heights: tuple[float, ...]
    near: bool = False
    """Whether it is held in the hand, so that plates may be smaller."""
    dense: bool = False
    """Whether it takes as few faces as it can, all as small as may be."""

    @property
    def plates(self) -> tuple[float, ...]:
        """The sizes of plates to try, mm."""
        return NEAR_PLATES if self.near or self.dense else PLATES

    @property
    def styles(self) -> tuple[Style, ...]:
        """The styles to try, the largest first."""
        leads = [lead for lead in LEADS if lead <= MOST_DENSE] if self.dense else LEADS
        looks: tuple[Literal["all", "first", "none"], ...] = ("all", "first", "none") if self.dense else ("all", "first")
        return tuple(Style(Sizes(lead, self.dense), look, self.near or self.dense) for lead in leads for look in looks)

    def widths(self, wide: bool) -> Iterator[tuple[int, float]]:
        """Columns on a face, and their width; a wide content has one."""
        if wide:
            yield 1, self.width
            return
        for across in range(1, 7):
            width = round((self.width - COLUMN_GAP * (across - 1)) / across, 3)
            if (NARROWEST_DENSE if self.dense else NARROWEST) <= width <= WIDEST:
                yield across, width

    def columns(self, faces: int, across: int) -> tuple[float, ...]:
        """The height of every column on so many faces."""
        return tuple(self.heights[face % len(self.heights)] for face in range(faces) for _ in range(across))


@dataclass(frozen=True, slots=True)
class Setting:
    """One way to set the content. `columns` runs through all faces, `across` to a face."""

    across: int
    width: float
    style: Style
    columns: tuple[Column, ...]
    comfort: float
    """About 1 where type and plates are comfortable at arm's length; below, cramped."""

    @property
    def faces(self) -> int:
        """How many faces it takes."""
        return -(-len(self.columns) // self.across)


def best_setting(content: Content, area: Area, form: Form) -> Setting | None:
    """The most comfortable setting on one face if that is comfortable, else on as few cards as it takes, every face of each.

    None if some block does not fit a column even with the smallest type and plates.
    """
    measure = _measurer(content)
    enough = 0.0 if area.dense else WHOLE_TABLE if content.wide else 1.0
    usable = [
        (style, across, width)
        for style in area.styles
        for across, width in area.widths(content.wide)
        if _each_fits(measure, len(content.blocks), style, width, area)
    ]
    for faces in form.counts(len(content.blocks) + 1) if usable else ():
        found = max(_settings(measure, content, area, usable, faces), key=lambda each: each.comfort, default=None)
        if found and (faces > 1 or found.comfort >= enough):
            return found
    return None


def _each_fits(measure: _Measurer, count: int, style: Style, width: float, area: Area) -> bool:
    """Whether every block by itself fits a column so wide."""
    blocks = (measure(width, style, number, area.plates[0]) for number in range(count))
    return all(block and block.height <= max(area.heights) for block in blocks)


def shortfall(content: Content, area: Area) -> tuple[str, float]:
    """What fits a column least at the smallest sizes, and by how many mm it is too high (or, if infinite, too wide)."""
    style = area.styles[-1]
    measure = _measurer(content)
    worst = []
    for _, width in area.widths(content.wide):
        blocks = [(measure(width, style, number, area.plates[0]), number) for number in range(len(content.blocks))]
        over = [((block.height if block else float("inf")) - max(area.heights), number) for block, number in blocks]
        worst.append(max(over))
    by, number = min(worst, default=(float("inf"), 0))
    return _called(content.blocks[number]), by


def _called(block: CardBlock) -> str:
    match block:
        case CardCouplet():
            return f"couplet {block.number}"
        case Row():
            return f"the row '{''.join(run.text for run in block.label)}'"
        case Compared():
            return "the row of drawings"
        case _:
            return f"'{block.title}'"


_Measurer = Callable[[float, Style, int, float], Block | None]
"""A block by column width, style, its number and the size of its largest plate."""


def _measurer(content: Content) -> _Measurer:
    @cache
    def measure(width: float, style: Style, number: int, plate: float) -> Block | None:
        match block := content.blocks[number]:
            case CardCouplet():
                return couplet_block(block, width, style, plate)
            case Note():
                return note_block(block, width, style.sizes, style.near)
            case Told():
                return told_block(block, width, style.sizes)
            case Compared():
                return compared_block(block, width, style, plate)
            case Row():
                return row_block(block, width, style)

    return measure


def _settings(
    measure: _Measurer, content: Content, area: Area, usable: Sequence[tuple[Style, int, float]], faces: int
) -> Iterator[Setting]:
    """Every setting worth having on so many faces: those that cannot be the most comfortable are not tried."""
    best = -1.0
    for style, across, width in usable:
        if _comfort(style, PLATES[-1], 1.0) <= best:
            continue
        heights = area.columns(faces, across)
        made = columns(partial(measure, width, style), len(content.blocks), heights, area.plates)
        if made:
            filled = sum(column.filled for column in made) / sum(heights)
            comfort = _comfort(style, mean_plate(made), filled)
            best = max(best, comfort)
            yield Setting(across, width, style, tuple(made), comfort)


def _comfort(style: Style, plate_size: float, filled: float) -> float:
    """The lesser of type and plates counts most, then the other, then how well the paper is used; short looks cost a little."""
    kind = min(1.2, style.sizes.lead / GOOD_LEAD)
    plate = min(1.2, plate_size / GOOD_PLATE)
    return 0.8 * min(kind, plate) + 0.1 * (kind + plate) + 0.15 * filled - LOSS[style.look] - 0.1
