"""One couplet, measured: number, question, how to see it, and its leads in whichever arrangement is lowest."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from math import ceil
from typing import Literal

from keytool.card import typeface
from keytool.card.cell import Cell, cell
from keytool.card.ink import BLACK, GREY, Block, Heading, Moved, Piece, Rule, Words
from keytool.card.model import CardCouplet
from keytool.card.plates import largest
from keytool.card.typeface import MM_PER_PT, RISE, Sizes
from keytool.card.words import Run, Text, set_lines, spoken
from keytool.figures import Drawing

GAP = 3.0
"""Between neighbours, mm."""


@dataclass(frozen=True, slots=True)
class Style:
    """How couplets are set: point sizes, how much is given of how to see it, whether the card is read from near."""

    sizes: Sizes
    look: Literal["all", "first", "none"] = "all"
    near: bool = False


@dataclass(frozen=True, slots=True)
class Rows:
    """The leads of a couplet in one arrangement, and the size its largest plate came out at (mm)."""

    block: Block
    plate: float


def couplet_block(couplet: CardCouplet, width: float, style: Style, plate: float) -> Block | None:
    """The couplet in `width` mm with its largest plate as near the size `plate` as that width allows.

    Of the arrangements that come that near, the lowest. None where a word would not fit or stand in slivers.
    """
    rows = [each for each in _arrangements(couplet, width, style, plate) if each is not None]
    if not rows:
        return None
    greatest = max(each.plate for each in rows)
    best = min((each.block for each in rows if each.plate >= 0.97 * greatest), key=lambda block: block.height)
    look = {"all": couplet.look, "first": couplet.look_short, "none": ()}[style.look]
    head = _head(couplet.number, couplet.came_from, couplet.magnification, couplet.asks, look, width, style.sizes)
    return Block(head.height + best.height, (*head.pieces, Moved(0, head.height, best.pieces)))


# The same head comes again with plates of every size, while a layout is sought.
@lru_cache(maxsize=4096)
def _head(number: int, came_from: tuple[int, ...], magnification: str, asks: Text, look: Text, width: float, sizes: Sizes) -> Block:
    below = [Run(f"from {', '.join(str(each) for each in came_from)}")] if came_from else []
    below += [Run(magnification, bold=True)] if magnification else []
    gutter = max(typeface.width("00", True, sizes.number), typeface.width("from 00", False, sizes.fine)) + 1.4
    question = set_lines(asks, sizes.question, width - gutter)
    told = set_lines(look, sizes.small, width - gutter, even=False)
    top = 1.6
    base = top + sizes.number * MM_PER_PT * RISE * 0.98
    first = top + (sizes.number - sizes.question) * MM_PER_PT * 0.45
    pieces: list[Piece] = [
        Heading(f"{number}  {spoken(asks)}", 1),
        Rule(0, 0.3, width, 0.3, 0.6),
        Words(0, base, str(number), sizes.number, True),
        *question.pieces(gutter, first),
        *told.pieces(gutter, first + question.height + 0.3, GREY),
    ]
    bottom = first + question.height + 0.3 + told.height
    top = base + 0.3 * sizes.fine * MM_PER_PT
    for run in below:
        lines = set_lines((run,), sizes.fine, gutter - 1.2)
        pieces += lines.pieces(0, top, BLACK if run.bold else GREY)
        top += lines.height
        bottom = max(bottom, top)
    return Block(bottom + 1.4, tuple(pieces))


def _arrangements(couplet: CardCouplet, width: float, style: Style, plate: float) -> Iterable[Rows | None]:
    """Leads side by side with plates above or beside their words, or one below the other.

    Below one another, plates stand beside their words: a plate between two texts would not show which it belongs to.
    """
    count = len(couplet.leads)
    drawn = any(lead.drawing for lead in couplet.leads)
    for across, beside in dict.fromkeys(((count, False), (count, drawn), (1, drawn))):
        yield _grid(couplet, width, style, plate, across, beside)


def _grid(couplet: CardCouplet, width: float, style: Style, plate: float, across: int, beside: bool) -> Rows | None:
    """The leads side by side or one below the other, plates above their words or beside them, all plates at one scale."""
    each_width = (width - GAP * (across - 1)) / across
    drawings = [lead.drawing for lead in couplet.leads if lead.drawing]
    scale, widest = 0.0, 0.0
    if drawings:
        room = each_width - style.sizes.lead * MM_PER_PT * 10.5 - GAP if beside else each_width
        if room <= 0:
            return None
        scale = min(plate / largest(drawings), room / max(d.box.width for d in drawings))
        # Whole millimetres, so that words beside plates of nearly one width are set only once.
        widest = ceil(max(d.box.width for d in drawings) * scale)
    bar = scale_bar(drawings, scale, style.sizes)
    crowded = bar and all(each_width - d.box.width * scale - 1 < bar.width for d in drawings)
    below = 1.0 + (bar.height if bar and crowded else 0.0)
    # Beside broad plates there is little room; a lead without a plate then has the whole width.
    indents = [widest if beside and (lead.drawing or widest < 0.3 * each_width) else None for lead in couplet.leads]
    cells = [cell(lead, each_width, style.sizes, scale, indent, below) for lead, indent in zip(couplet.leads, indents, strict=True)]
    made = [each for each in cells if each is not None]
    if len(made) < len(cells):
        return None
    return Rows(_placed(made, each_width, across, bar), scale * largest(drawings) if drawings else 0.0)


def _placed(cells: list[Cell], width: float, across: int, bar: Bar | None) -> Block:
    """The cells in rows, and the bar in the first free room: by a plate if there is any, else below them all."""
    pieces: list[Piece] = []
    spots: list[tuple[bool, int, float, float]] = []
    top = 0.0
    for start in range(0, len(cells), across):
        row = cells[start : start + across]
        height = max(each.height for each in row)
        for number, each in enumerate(row):
            left = number * (width + GAP)
            pieces.append(Moved(left, top, each.pieces))
            if number:
                pieces.append(Rule(left - GAP / 2, top, left - GAP / 2, top + height, 0.2, GREY))
            if bar and (spot := each.spot_for(bar.width, bar.height, height)):
                spots.append((not each.plate[1], start + number, left + spot[0], top + spot[1]))
        top += height + (1.6 if start + across < len(cells) else 0.0)
    if bar and not spots:
        spots.append((True, 0, 0.0, top + 0.6))
        top += bar.height + 0.6
    if bar:
        _, _, x, y = min(spots)
        pieces.append(Moved(x, y, bar.pieces))
    return Block(top + 1.2, tuple(pieces))


@dataclass(frozen=True, slots=True)
class Bar:
    """A scale bar with its label above it."""

    width: float
    height: float
    pieces: tuple[Piece, ...]


def scale_bar(drawings: list[Drawing], scale: float, sizes: Sizes) -> Bar | None:
    """The one scale bar of a couplet; its true length is that of the heavy line."""
    if not drawings:
        return None
    bar, pt = drawings[0].bar, sizes.fine
    length, height = bar.length * scale, pt * MM_PER_PT + 1.0
    label = Words(0, pt * MM_PER_PT * RISE, bar.label, pt)
    line = Rule(0, height - 0.4, length, height - 0.4, 0.6)
    return Bar(max(length, typeface.width(bar.label, False, pt)) + 0.4, height, (label, line))
