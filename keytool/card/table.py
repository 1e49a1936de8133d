"""A table of the same characters, measured: its head with the drawings, and its rows."""

from __future__ import annotations

from collections.abc import Sequence

from keytool.card.cell import end_block, end_fits
from keytool.card.couplet import UNLIKE, Bar, Style, scale_bar
from keytool.card.ink import GREY, Block, Moved, Picture, Piece, Rule
from keytool.card.model import CardPhoto, Compared, End, Photographed, Row
from keytool.card.photographs import NARROWEST, bitmap, card_photo_block
from keytool.card.plates import largest
from keytool.card.typeface import Sizes
from keytool.card.words import Run, longest_word, set_lines
from keytool.figures import Drawing

LABEL_MM = 27.0
"""The first column, which names the characters."""
GAP = 2.5
NARROW_MM = 20.0
"""A column narrower than this is a sliver: what each shows then stands in a list instead."""
SHARE = 0.36
"""What drawings one below the other take of the width."""


def _columns(entries: Sequence[End], width: float, sizes: Sizes) -> tuple[float, list[float]] | None:
    """The width of a column and where each begins; None where they would be slivers, or too narrow for a name."""
    each = (width - LABEL_MM - GAP * len(entries)) / len(entries)
    if each < NARROW_MM or not all(end_fits(end, each, sizes) for end in entries):
        return None
    return each, [LABEL_MM + GAP + n * (each + GAP) for n in range(len(entries))]


def compared_block(head: Compared, width: float, style: Style, plate: float) -> Block | None:
    """The drawings, as near the size `plate` as they can be, each with its name: at one scale, with one bar, if they can.

    A photograph stands below the drawing of what it shows; where only one thing is shown, at its right.
    """
    if head.photographs is None:
        return _drawn(head, width, style, plate)
    if len(head.entries) == 1 and head.drawings[0] and width >= 2 * NARROWEST + GAP:
        return _beside(head.entries[0], head.drawings[0], head.photographs.shots[0], width, style, plate)
    drawn = _drawn(head, width, style, plate)
    shown = photographed_block(head.photographs, width, style, plate)
    return drawn and Block(drawn.height + shown.height, (*drawn.pieces, Moved(0, drawn.height, shown.pieces)))


def _beside(entry: End, drawing: Drawing, shot: CardPhoto | None, width: float, style: Style, plate: float) -> Block | None:
    """The drawing with its bar at the left, the photograph at the right, and below them the name and what is said of it."""
    half = (width - GAP) / 2
    scale = min(plate / largest([drawing]), half / drawing.box.width)
    bar, end = scale_bar([drawing], scale, style.sizes), end_block(entry, width, style.sizes)
    if bar is None or shot is None or end is None:
        return None
    tall = drawing.box.height * scale
    picture = bitmap(shot, half, plate)
    below = 1.6 + max(tall + 0.6 + bar.height, picture.height) + 1.2
    said = set_lines(shot.said, style.sizes.small, width, even=False)
    return Block(
        below + end.height + 0.6 + said.height + 1.2,
        (
            Rule(0, 0.3, width, 0.3, 0.6),
            Picture(0, 1.6, drawing, scale),
            Moved(0, 1.6 + tall + 0.6, bar.pieces),
            Moved(half + GAP, 1.6, (picture,)),
            Moved(0, below, end.pieces),
            *said.pieces(0, below + end.height + 0.6),
        ),
    )


def _drawn(head: Compared, width: float, style: Style, plate: float) -> Block | None:
    columns = _columns(head.entries, width, style.sizes)
    return _abreast(head, width, *columns, style, plate) if columns else _stacked(head, width, style, plate)


def photographed_block(photographs: Photographed, width: float, style: Style, plate: float) -> Block:
    """The photographs in the columns of the table, or one below the other, each under the name of what it shows."""
    columns = _columns(photographs.entries, width, style.sizes) if len(photographs.entries) > 1 else None
    each, starts = columns or (width, [0.0] * len(photographs.entries))
    pieces: list[Piece] = []
    top, bottom = 1.6, 1.6
    for entry, shot, start in zip(photographs.entries, photographs.shots, starts, strict=True):
        if shot:
            name = (*entry.name, Run(": ")) if len(photographs.entries) > 1 else ()
            block = card_photo_block(shot, name, each, style.sizes, plate)
            pieces.append(Moved(start, top, block.pieces))
            bottom = max(bottom, top + block.height)
            top = top if columns else bottom
    return Block(bottom, tuple(pieces))


def _abreast(head: Compared, width: float, each: float, starts: list[float], style: Style, plate: float) -> Block | None:
    """Drawings standing on one line in the columns of the table, names below; the one bar in the column of labels."""
    ends = [block for end in head.entries if (block := end_block(end, each, style.sizes))]
    scales = _scales(head, each, plate)
    tall = max((d.box.height * scale for d, scale in zip(head.drawings, scales, strict=True) if d), default=0.0)
    pieces: list[Piece] = [Rule(0, 0.3, width, 0.3, 0.6)]
    below = 1.6 + tall + 0.8
    bars = _bars(head, scales, style)
    for drawing, scale, start, bar in zip(head.drawings, scales, starts, bars, strict=True):
        if drawing:
            pieces.append(Picture(start, 1.6 + tall - drawing.box.height * scale, drawing, scale))
        if bar:
            pieces.append(Moved(0, below - bar.height - 0.8, bar.pieces) if head.one_scale else Moved(start, below, bar.pieces))
    if not head.one_scale:
        said = set_lines((Run(UNLIKE),), style.sizes.fine, LABEL_MM, even=False)
        pieces += said.pieces(0, below - said.height, GREY)
        below += max((bar.height for bar in bars if bar), default=0.0) + 0.8
    pieces += [Moved(start, below, end.pieces) for start, end in zip(starts, ends, strict=True)]
    return Block(below + max(end.height for end in ends) + 0.6, tuple(pieces))


def _stacked(head: Compared, width: float, style: Style, plate: float) -> Block | None:
    """Drawings one below the other at the left, each with its name at the right, where there is no room abreast."""
    left = width * SHARE
    ends = [block for end in head.entries if (block := end_block(end, width - left - GAP, style.sizes))]
    if len(ends) < len(head.entries):
        return None
    scales = _scales(head, left, plate)
    pieces: list[Piece] = [Rule(0, 0.3, width, 0.3, 0.6)]
    y = 1.6
    if not head.one_scale:
        said = set_lines((Run(UNLIKE),), style.sizes.fine, width, even=False)
        pieces += said.pieces(0, y, GREY)
        y += said.height + 0.6
    for drawing, scale, end, bar in zip(head.drawings, scales, ends, _bars(head, scales, style), strict=True):
        pieces.append(Moved(left + GAP, y, end.pieces))
        tall = drawing.box.height * scale if drawing else 0.0
        if drawing:
            pieces.append(Picture(0, y, drawing, scale))
        if bar:
            pieces.append(Moved(left + GAP, y + end.height + 0.4, bar.pieces))
        y += max(tall, end.height + (bar.height + 0.4 if bar else 0)) + 1.4
    return Block(y, tuple(pieces))


def _scales(head: Compared, room: float, plate: float) -> list[float]:
    """mm per µm for each drawing, none wider than `room`; 0 where there is none."""
    there = [drawing for drawing in head.drawings if drawing]
    if there and head.one_scale:
        together = min([plate / largest(there), *(room / d.box.width for d in there)])
        return [together if d else 0.0 for d in head.drawings]
    return [min(plate / largest([d]), room / d.box.width) if d else 0.0 for d in head.drawings]


def _bars(head: Compared, scales: list[float], style: Style) -> list[Bar | None]:
    """A scale bar for each drawing, or for the first only where all share one scale."""
    bars = [scale_bar([d], scale, style.sizes) if d else None for d, scale in zip(head.drawings, scales, strict=True)]
    first = next((n for n, bar in enumerate(bars) if bar), 0)
    return [bar if n == first or not head.one_scale else None for n, bar in enumerate(bars)]


def row_block(row: Row, width: float, style: Style) -> Block | None:
    """One row: side by side where the drawings are, else one below the other, each with its name."""
    columns = _columns(row.entries, width, style.sizes)
    return _listed(row, width, style) if columns is None else _in_columns(row, width, *columns, style)


def _in_columns(row: Row, width: float, each: float, starts: list[float], style: Style) -> Block | None:
    pt = style.sizes.lead
    if any(longest_word(cell, pt) > each for cell in row.cells) or longest_word(row.label, style.sizes.group) > LABEL_MM:
        return None
    label = set_lines(row.label, style.sizes.group, LABEL_MM, even=False)
    pieces: list[Piece] = [Rule(0, 0.2, width, 0.2, 0.2, GREY), *label.pieces(0, 0.9)]
    bottom = 0.9 + label.height
    for start, cell, name in zip(starts, row.cells, row.names, strict=True):
        y = 0.9
        if style.near and len(row.cells) > 1:
            whose = set_lines((Run(name),), style.sizes.fine, each, even=False)
            pieces += whose.pieces(start, y, GREY)
            y += whose.height
        lines = set_lines(cell, pt, each, even=False)
        pieces += lines.pieces(start, y)
        bottom = max(bottom, y + lines.height)
    return Block(bottom, tuple(pieces))


def _listed(row: Row, width: float, style: Style) -> Block | None:
    pt = style.sizes.lead
    label = set_lines(row.label, style.sizes.group, width, even=False)
    pieces: list[Piece] = [Rule(0, 0.2, width, 0.2, 0.2, GREY), *label.pieces(0, 0.9)]
    y = 0.9 + label.height
    for name, cell in zip(row.names, row.cells, strict=True):
        text = (Run(f"{name}: "), *cell)
        if longest_word(text, pt) > width:
            return None
        lines = set_lines(text, pt, width, even=False)
        pieces += lines.pieces(0, y)
        y += lines.height
    return Block(y, tuple(pieces))
