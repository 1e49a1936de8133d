"""One couplet, measured: number, question, how to see it, and its leads in whichever arrangement is lowest."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from math import ceil
from typing import Literal

from keytool.card import typeface
from keytool.card.cell import Cell, cell, with_bar
from keytool.card.ink import BLACK, GREY, Block, Heading, Moved, Piece, Rule, Words
from keytool.card.model import CardCouplet
from keytool.card.plates import largest
from keytool.card.typeface import MM_PER_PT, RISE, Sizes
from keytool.card.words import Run, Text, set_lines, spoken
from keytool.figures import Drawing

GAP = 3.0
"""Between neighbours, mm."""
OWN = 0.65
"""What a plate with a bar of its own takes of the size asked for: it need not leave a smaller one beside it large enough."""
TALLEST = 1.0
"""How tall a slim plate with a bar of its own may stand, against the size asked for."""
UNLIKE = "Drawings not at one scale: read each bar."


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
    if not couplet.one_scale:
        look = (*look, Run(f" {UNLIKE}" if look else UNLIKE))
    head = _head(couplet.number, couplet.came_from, couplet.magnification, couplet.asks, look, width, style.sizes, style.near)
    more = _more(couplet, width, style.sizes)
    below = head.height + best.height
    return Block(below + more.height, (*head.pieces, Moved(0, head.height, best.pieces), Moved(0, below, more.pieces)))


def _more(couplet: CardCouplet, width: float, sizes: Sizes) -> Block:
    """Says at the right below the leads that others follow."""
    if not couplet.goes_on:
        return Block(0, ())
    said = set_lines((Run(f"More answers to {couplet.number} follow", bold=True),), sizes.fine, width)
    return Block(said.height + 0.4, tuple(said.pieces(width - said.width, 0)))


# The same head comes again with plates of every size, while a layout is sought.
@lru_cache(maxsize=4096)
def _head(
    number: int, came_from: tuple[int, ...], magnification: str, asks: Text, look: Text, width: float, sizes: Sizes, near: bool
) -> Block:
    """Number and question, and how to see it below: under the question, or across the whole width where that is lower and room is short."""
    below = [Run(f"from {', '.join(str(each) for each in came_from)}")] if came_from else []
    below += [Run(magnification, bold=True)] if magnification else []
    gutter = max(typeface.width("00", True, sizes.number), typeface.width("from 00", False, sizes.fine)) + 1.4
    question = set_lines(asks, sizes.question, width - gutter)
    top = 1.6
    base = top + sizes.number * MM_PER_PT * RISE * 0.98
    first = top + (sizes.number - sizes.question) * MM_PER_PT * 0.45
    pieces: list[Piece] = [
        Heading(f"{number}  {spoken(asks)}", 1),
        Rule(0, 0.3, width, 0.3, 0.6),
        Words(0, base, str(number), sizes.number, True),
        *question.pieces(gutter, first),
    ]
    left = base + 0.3 * sizes.fine * MM_PER_PT
    for run in below:
        lines = set_lines((run,), sizes.fine, gutter - 1.2)
        pieces += lines.pieces(0, left, BLACK if run.bold else GREY)
        left += lines.height
    asked = first + question.height + 0.3
    left = left if below else base
    told = set_lines(look, sizes.small, width - gutter, even=False)
    x, y = gutter, asked
    if near and look:
        across = set_lines(look, sizes.small, width, even=False)
        if max(left, asked) + across.height < max(left, asked + told.height):
            told, x, y = across, 0.0, max(left, asked)
    pieces += told.pieces(x, y)
    return Block(max(left, y + told.height) + 1.4, tuple(pieces))


def _arrangements(couplet: CardCouplet, width: float, style: Style, plate: float) -> Iterable[Rows | None]:
    """Leads side by side with plates above or beside their words, or one below the other.

    Below one another, plates stand beside their words: a plate between two texts would not show which it belongs to.
    """
    count = len(couplet.leads)
    drawn = any(lead.drawing for lead in couplet.leads)
    for across, beside in dict.fromkeys(((count, False), (count, drawn), (1, drawn))):
        yield _grid(couplet, width, style, plate, across, beside)


def _grid(couplet: CardCouplet, width: float, style: Style, plate: float, across: int, beside: bool) -> Rows | None:
    """The leads side by side or in rows, plates above their words or beside them: at one scale with one bar, or each with its own."""
    each_width = (width - GAP * (across - 1)) / across
    drawings = [lead.drawing for lead in couplet.leads if lead.drawing]
    room = each_width - style.sizes.lead * MM_PER_PT * 10.5 - GAP if beside else each_width
    if drawings and room <= 0:
        return None
    groups = [list(couplet.matched) or drawings] if couplet.one_scale else [[each] for each in drawings]
    fitted = [min(plate / largest(group), room / max(d.box.width for d in group)) for group in groups if group]
    if not couplet.one_scale:
        fitted = [min(scale * OWN, TALLEST * plate / each.box.height) for scale, each in zip(fitted, drawings, strict=True)]
    scales = iter(fitted * len(drawings) if couplet.one_scale else fitted)
    scaled = [(lead, next(scales) if lead.drawing else 0.0) for lead in couplet.leads]
    # Whole millimetres, so that words beside plates of nearly one width are set only once.
    widest = ceil(max((lead.drawing.box.width * scale for lead, scale in scaled if lead.drawing), default=0.0))
    bars = [scale_bar([lead.drawing], scale, style.sizes) if lead.drawing else None for lead, scale in scaled]
    shared = next((bar for bar in bars if bar), None) if couplet.one_scale else None
    crowded = shared and all(each_width - lead.drawing.box.width * scale - 1 < shared.width for lead, scale in scaled if lead.drawing)
    made = []
    for (lead, scale), bar in zip(scaled, bars, strict=True):
        own = None if couplet.one_scale else bar
        below = 1.0 + (own.height if own else shared.height if shared and crowded else 0.0)
        # Beside broad plates there is little room; a lead without a plate then has the whole width.
        indent = widest if beside and (lead.drawing or widest < 0.3 * each_width) else None
        each = cell(lead, each_width, style.sizes, scale, indent, below)
        if each is None:
            return None
        made.append(with_bar(each, own.width, own.height, own.pieces) if own else each)
    block = _placed(made, each_width, across, shared)
    return Rows(block, min((scale * largest(group) for scale, group in zip(fitted, groups, strict=False)), default=0.0))


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
