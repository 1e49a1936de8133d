"""A note, measured: the steps to begin with, or a caution."""

from __future__ import annotations

from keytool.card import typeface
from keytool.card.content import WARNING_SIGN, Note
from keytool.card.ink import Block, Piece, Rule
from keytool.card.typeface import Sizes
from keytool.card.words import NO_BREAK, Run, set_lines


def note_block(note: Note, width: float, sizes: Sizes) -> Block:
    """The note in `width` mm."""
    pt = sizes.lead if note.caution else sizes.question
    title = f"{WARNING_SIGN}{NO_BREAK}{note.title}" if note.caution else note.title
    heading = set_lines((Run(title, bold=True),), pt, width)
    pieces: list[Piece] = [Rule(0, 0.3, width, 0.3, 0.25 if note.caution else 0.6), *heading.pieces(0, 1.2)]
    y = 1.2 + heading.height + 0.2
    indent = 0.0 if note.caution else typeface.width("0. ", False, sizes.small)
    for number, paragraph in enumerate(note.paragraphs, 1):
        lines = set_lines(paragraph, sizes.small, width - indent, even=False)
        if indent:
            pieces += set_lines((Run(f"{number}."),), sizes.small, indent).pieces(0, y)
        pieces += lines.pieces(indent, y)
        y += lines.height + 0.7
    return Block(y, tuple(pieces))
