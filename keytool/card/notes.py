"""Notes, measured: the steps to begin with, a caution, the test to do first, points to know."""

from __future__ import annotations

from keytool.card import typeface
from keytool.card.ink import Block, Heading, Piece, Rule
from keytool.card.model import WARNING_SIGN, Note, Told
from keytool.card.typeface import Sizes
from keytool.card.words import NO_BREAK, Run, longest_word, set_lines


def note_block(note: Note, width: float, sizes: Sizes, near: bool) -> Block:
    """The note in `width` mm; for what is held `near`, a caution runs on from its title."""
    if near and note.caution:
        return _run_on(note, width, sizes)
    pt = sizes.lead if note.caution else sizes.question
    title = f"{WARNING_SIGN}{NO_BREAK}{note.title}" if note.caution else note.title
    heading = set_lines((Run(title, bold=True),), pt, width)
    pieces: list[Piece] = [Heading(note.title, 1), Rule(0, 0.3, width, 0.3, 0.25 if note.caution else 0.6), *heading.pieces(0, 1.2)]
    y = 1.2 + heading.height + 0.2
    indent = 0.0 if note.caution else typeface.width("0. ", False, sizes.small)
    for number, paragraph in enumerate(note.paragraphs, 1):
        lines = set_lines(paragraph, sizes.small, width - indent, even=False)
        if indent:
            pieces += set_lines((Run(f"{number}."),), sizes.small, indent).pieces(0, y)
        pieces += lines.pieces(indent, y)
        y += lines.height + 0.7
    return Block(y, tuple(pieces))


def _run_on(note: Note, width: float, sizes: Sizes) -> Block:
    title = Run(f"{WARNING_SIGN}{NO_BREAK}{note.title.replace(' ', NO_BREAK)}: ", bold=True)
    lines = set_lines((title, *note.paragraphs[0]), sizes.small, width, even=False)
    return Block(0.9 + lines.height, (Heading(note.title, 1), Rule(0, 0.3, width, 0.3, 0.25), *lines.pieces(0, 0.9)))


def told_block(told: Told, width: float, sizes: Sizes) -> Block | None:
    """The one test to do first in large type beside a heavy line; or points in small type."""
    pt = sizes.question if told.first else sizes.small
    left = 3.0 if told.first else typeface.width("· ", False, pt)
    heading = set_lines((Run(told.title, bold=True),), sizes.question, width - left)
    if any(longest_word(each, pt) > width - left for each in told.paragraphs):
        return None
    at = left if told.first else 0.0
    pieces: list[Piece] = [Heading(told.title, 1), *heading.pieces(at, 1.2)]
    y = 1.2 + heading.height + 0.2
    for paragraph in told.paragraphs:
        lines = set_lines(paragraph, pt, width - left, even=False)
        if not told.first:
            pieces += set_lines((Run("·"),), pt, left).pieces(0, y)
        pieces += lines.pieces(left, y)
        y += lines.height + 0.5
    edge = Rule(0.6, 1.4, 0.6, y, 1.2) if told.first else Rule(0, 0.3, width, 0.3, 0.25)
    return Block(y + 0.6, (edge, *pieces))
