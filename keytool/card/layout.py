"""Choosing how a key is set on a paper: how many faces and columns, how large the type, how much of each look."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cache, partial
from typing import Literal

from keytool.card.couplet import Style, couplet_block
from keytool.card.flow import NEAR_PLATES, PLATES, Column, columns, mean_plate
from keytool.card.form import Form
from keytool.card.ink import Block
from keytool.card.model import CardBlock, CardCouplet, Compared, Content, Note, Photographed, Row, Told
from keytool.card.notes import note_block, told_block
from keytool.card.split_block import continued
from keytool.card.table import compared_block, photographed_block, row_block
from keytool.card.typeface import SMALLEST_LEAD, Sizes

COLUMN_GAP = 5.0
LEADS = (12.5, 11.5, 10.5, 10.0, 9.5, 9.0, 8.5, SMALLEST_LEAD)
MOST_DENSE = 9.0
"""Points: the largest leads of a dense card."""
NARROWEST, WIDEST, NARROWEST_DENSE = 56.0, 145.0, 43.0
WIDEST_SOUGHT = 200
"""mm: to say by how much a word is too wide, no more is tried."""
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
    least_lead: float = SMALLEST_LEAD
    """The smallest leads of a card that is not dense, in points."""

    @property
    def narrowest(self) -> float:
        """The least width of a column of a key, mm."""
        return NARROWEST_DENSE if self.dense else NARROWEST

    @property
    def plates(self) -> tuple[float, ...]:
        """The sizes of plates to try, mm."""
        return NEAR_PLATES if self.near or self.dense else PLATES

    @property
    def styles(self) -> tuple[Style, ...]:
        """The styles to try, the largest first."""
        leads = [lead for lead in LEADS if lead <= MOST_DENSE] if self.dense else [lead for lead in LEADS if lead >= self.least_lead]
        looks: tuple[Literal["all", "first", "none"], ...] = ("all", "first", "none") if self.dense else ("all", "first")
        return tuple(Style(Sizes(lead, self.dense), look, self.near or self.dense) for lead in leads for look in looks)

    def widths(self, wide: bool) -> Iterator[tuple[int, float]]:
        """Columns on a face, and their width; a wide content has one."""
        if wide:
            yield 1, self.width
            return
        for across in range(1, 7):
            width = round((self.width - COLUMN_GAP * (across - 1)) / across, 3)
            if self.narrowest <= width <= WIDEST:
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
    blocks: tuple[CardBlock, ...]
    """What it sets, in order: the blocks of the content, some of them perhaps parted in two."""
    comfort: float
    """About 1 where type and plates are comfortable at arm's length; below, cramped."""

    @property
    def faces(self) -> int:
        """How many faces it takes."""
        return -(-len(self.columns) // self.across)


def best_setting(content: Content, area: Area, form: Form) -> Setting | None:
    """The most comfortable setting on one face if that is comfortable, else on as few cards as it takes, every face of each.

    A block too high for a face even with the smallest type and plates goes on in the next. None if one is too high even so.
    """
    usable = list(_usable(content, area))
    if not usable:
        content = _parted(content, area)
        usable = list(_usable(content, area))
    measure = _measurer(content)
    enough = 0.0 if area.dense else WHOLE_TABLE if content.wide else 1.0
    for faces in form.counts(2 * len(content.blocks) + 1) if usable else ():
        found = max(_settings(measure, content, area, usable, faces), key=lambda each: each.comfort, default=None)
        if found and (faces > 1 or found.comfort >= enough):
            return found
    return None


def fits(content: Content, area: Area) -> bool:
    """Whether there is a way to set the content at all, on however many faces."""
    return any(_usable(content, area)) or any(_usable(_parted(content, area), area))


def _usable(content: Content, area: Area) -> Iterator[tuple[Style, int, float]]:
    """Each style and column, as columns to a face and their width, that every block of the content fits."""
    plate, highest = area.plates[0], max(area.heights)
    for style in area.styles:
        for across, width in area.widths(content.wide):
            if all((made := _measured(block, width, style, plate)) and made.height <= highest for block in content.blocks):
                yield style, across, width


def _parted(content: Content, area: Area) -> Content:
    """The content with its highest blocks in two parts, in the columns that suit them best."""
    ways = []
    for _, width in area.widths(content.wide):
        lacks = partial(_lack, area, width)
        blocks = continued(content.blocks, lambda block, lacks=lacks: lacks(block) <= 0)  # type: ignore[misc]
        ways.append((sum(lacks(block) > 0 for block in blocks), len(blocks), width, blocks))
    return replace(content, blocks=min(ways)[-1]) if ways else content


def _lack(area: Area, width: float, block: CardBlock) -> float:
    """By how many mm a block is too high for any face at the smallest sizes; infinite where a word is too wide."""
    made = _measured(block, width, area.styles[-1], area.plates[0])
    return made.height - max(area.heights) if made else float("inf")


@dataclass(frozen=True, slots=True, order=True)
class Shortfall:
    """What fits least, even parted in two and at the smallest sizes: by how many mm it is too high, or too wide."""

    wide: bool
    by: float
    name: str


def shortfall(content: Content, area: Area) -> Shortfall:
    """What lacks most in the columns that lack least."""
    if not any(area.widths(content.wide)):
        return Shortfall(True, area.narrowest - area.width, "a column of leads")
    content = _parted(content, area)
    return min(max(_falls_short(area, width, block) for block in content.blocks) for _, width in area.widths(content.wide))


def _falls_short(area: Area, width: float, block: CardBlock) -> Shortfall:
    by = _lack(area, width, block)
    if by < float("inf"):
        return Shortfall(False, by, _called(block))
    enough = next((each for each in range(1, WIDEST_SOUGHT) if _lack(area, width + each, block) < float("inf")), WIDEST_SOUGHT)
    return Shortfall(True, enough, _called(block))


def _called(block: CardBlock) -> str:
    match block:
        case CardCouplet():
            return f"couplet {block.number}"
        case Row():
            return f"the row '{''.join(run.text for run in block.label)}'"
        case Compared():
            return "the row of drawings"
        case Photographed():
            return "the row of photographs"
        case _:
            return f"'{block.title}'"


_Measurer = Callable[[float, Style, int, float], Block | None]
"""A block by column width, style, its number and the size of its largest plate."""


def _measurer(content: Content) -> _Measurer:
    @cache
    def measure(width: float, style: Style, number: int, plate: float) -> Block | None:
        return _measured(content.blocks[number], width, style, plate)

    return measure


def _measured(block: CardBlock, width: float, style: Style, plate: float) -> Block | None:
    match block:
        case CardCouplet():
            return couplet_block(block, width, style, plate)
        case Note():
            return note_block(block, width, style.sizes, style.near)
        case Told():
            return told_block(block, width, style.sizes)
        case Compared():
            return compared_block(block, width, style, plate)
        case Photographed():
            return photographed_block(block, width, style, plate)
        case Row():
            return row_block(block, width, style)


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
            yield Setting(across, width, style, tuple(made), content.blocks, comfort)


def _comfort(style: Style, plate_size: float, filled: float) -> float:
    """The lesser of type and plates counts most, then the other, then how well the paper is used; short looks cost a little."""
    kind = min(1.2, style.sizes.lead / GOOD_LEAD)
    plate = min(1.2, plate_size / GOOD_PLATE)
    return 0.8 * min(kind, plate) + 0.1 * (kind + plate) + 0.15 * filled - LOSS[style.look] - 0.1
