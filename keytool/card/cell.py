"""One lead, measured: its plate, its words, and where it goes."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache

from keytool.card.ink import BLACK, WHITE, Block, Moved, Panel, Picture, Piece
from keytool.card.model import CardLead, End, Goto
from keytool.card.typeface import MM_PER_PT, Sizes
from keytool.card.words import Lines, Text, longest_word, set_lines

GAP = 2.2
PAD = 1.3
"""Between the edge of a panel and its words, mm."""


@dataclass(frozen=True, slots=True)
class Cell:
    """One lead as pieces. The plate stands at the top left; the words begin at `words_x`, `words_y`."""

    width: float
    height: float
    pieces: tuple[Piece, ...]
    plate: tuple[float, float]
    words: tuple[float, float, float]
    """Left and top of the words, and where they end below."""

    def spot_for(self, width: float, height: float, row: float) -> tuple[float, float] | None:
        """Where a scale bar of this size finds free room, the row being `row` mm high: beside the plate, below it, or in its place."""
        across, down = self.plate
        x, y, bottom = self.words
        if not down:
            return (0, 0.4) if x >= width and row >= height else None
        if y >= down and self.width - across - 1 >= width:
            return across + 1, down - height
        if y >= down + height + 0.4:
            return 0, down + 0.4
        if x > across and self.width - x >= width and row - bottom - 1 >= height:
            return x, max(min(down, row) - height, bottom + 1)
        if x > across and row - down - 0.6 >= height and across >= width:
            return 0, down + 0.6
        return None


def with_bar(made: Cell, width: float, height: float, pieces: tuple[Piece, ...]) -> Cell:
    """The lead with a scale bar of its own, by its plate; it grows where there is no room."""
    spot = made.spot_for(width, height, made.height)
    if spot is None:
        x, _, bottom = made.words
        spot = (0.0, (made.plate[1] if width < x - 0.5 else max(made.plate[1], bottom)) + 0.6)
    return replace(made, height=max(made.height, spot[1] + height), pieces=(*made.pieces, Moved(*spot, pieces)))


def cell(lead: CardLead, width: float, sizes: Sizes, scale: float, beside: float | None, below: float) -> Cell | None:
    """The lead in `width` mm, its plate at `scale` mm/µm.

    `beside` is the width kept free for plates at the left; None sets the words `below` mm under the plate. None comes
    back where the words would stand in slivers.
    """
    plate = (lead.drawing.box.width * scale, lead.drawing.box.height * scale) if lead.drawing else (0.0, 0.0)
    x = beside + GAP if beside is not None else 0.0
    y = 0.0 if beside is not None or not lead.drawing else plate[1] + below
    room = width - x
    words = _words(lead.text, lead.target, room, sizes)
    if words is None:
        return None
    pieces: list[Piece] = [Moved(x, y, words.pieces)]
    if lead.drawing:
        pieces.insert(0, Picture(0, 0, lead.drawing, scale))
    return Cell(width, max(plate[1], y + words.height), tuple(pieces), plate, (x, y, y + words.height))


# The same words come again and again with plates of other sizes, while a layout is sought.
@lru_cache(maxsize=16384)
def _words(text: Text, target: Goto | End, width: float, sizes: Sizes) -> Block | None:
    measure = sizes.lead * MM_PER_PT * 10
    if width < measure or longest_word(text, sizes.lead) > width:
        return None
    if isinstance(target, Goto):
        return _going_on(text, target, width, sizes)
    said = set_lines(text, sizes.lead, width)
    end = end_block(target, width, sizes)
    if end is None:
        return None
    top = said.height + 0.6
    return Block(top + end.height, (*said.pieces(0, 0), Moved(0, top, end.pieces)))


def _going_on(text: Text, target: Goto, width: float, sizes: Sizes) -> Block:
    """The words, and `→ 5` at the right: on their last line, for which they are set narrower if need be; else below."""
    pt = sizes.arrow if target.to_number else sizes.lead
    arrow = set_lines(target.words, pt, width)
    said = set_lines(text, sizes.lead, width)
    narrower = width - arrow.width - GAP
    if said.last_width > narrower and narrower > max(width / 2, longest_word(text, sizes.lead)):
        said = set_lines(text, sizes.lead, narrower)
    if said.last_width > narrower:
        return Block(said.height + arrow.height, (*said.pieces(0, 0), *arrow.pieces(width - arrow.width, said.height)))
    top = said.height - arrow.height + (pt - sizes.lead) * MM_PER_PT * 0.5
    lift = max(0.0, -top)
    return Block(max(said.height, top + arrow.height) + lift, (*said.pieces(0, lift), *arrow.pieces(width - arrow.width, top + lift)))


def end_fits(end: End, width: float, sizes: Sizes) -> bool:
    """Whether no word of the panel is wider than it may be."""
    return all(longest_word(text, pt) <= width - 2 * PAD for text, pt in _reversed(end, sizes))


def _reversed(end: End, sizes: Sizes) -> list[tuple[Text, float]]:
    return [(end.flag, sizes.group), (end.name, sizes.lead), (end.diets, sizes.group)]


def end_block(end: End, width: float, sizes: Sizes) -> Block | None:
    """The reversed panel as wide as its longest line, and what stands below it."""
    inner = width - 2 * PAD
    if not end_fits(end, width, sizes):
        return None
    rows = [set_lines(text, pt, inner) for text, pt in _reversed(end, sizes) if text]
    panel_width = max(each.width for each in rows) + 2 * PAD
    panel_height = sum(each.height for each in rows) + 1.4
    pieces: list[Piece] = [Panel(0, 0, panel_width, panel_height, 0.9, reversed=True), *_stacked(rows, PAD, 0.7, WHITE)]
    below = [set_lines(text, sizes.small, width, even=False) for text in end.below]
    top = panel_height + 0.6
    pieces += _stacked(below, 0, top)
    return Block(top + sum(each.height for each in below) + 0.4, tuple(pieces))


def _stacked(texts: list[Lines], x: float, y: float, colour: str = BLACK) -> list[Piece]:
    pieces: list[Piece] = []
    for text in texts:
        pieces += text.pieces(x, y, colour)
        y += text.height
    return pieces
