"""What stands above and below the columns of every face: title, cautions, check bar, marks, field of view and small print."""

from __future__ import annotations

from dataclasses import dataclass

from keytool.card import typeface
from keytool.card.colophon import Imprint, legend, made, microscope
from keytool.card.compact_header import CHECK_BAR_MM, check_bar, running_head, small_foot, small_head
from keytool.card.form import Form
from keytool.card.ink import GREY, Block, Heading, Moved, Piece, Rule, Words
from keytool.card.model import Content, dotted
from keytool.card.qr import qr_block
from keytool.card.typeface import MM_PER_PT, RISE
from keytool.card.words import Run, row_width, set_lines
from keytool.library.model import Library

LONGEST_PLACE = "side 10 of 10 · couplets 100 to 100"
SMALL = 9.0
FINE, FINE_DENSE = 7.6, 7.0
"""Points: the foot of a whole sheet."""
GAP = 4.0


@dataclass(frozen=True, slots=True)
class Place:
    """Which face of how many, whether its content begins there, and the words for the couplets on it, such as "couplets 4 to 10"."""

    word: str
    number: int
    total: int
    begins: bool
    couplets: str
    together: int = 1
    """How many faces one sheet holds that is folded by itself; 1 where none is."""

    @property
    def words(self) -> str:
        """Such as "side 2 of 4 · couplets 4 to 10", or on the second of three pockets "sheet 2 of 3 · panel 1 · couplet 9"."""
        sheet, face = divmod(self.number - 1, self.together)
        if 1 < self.together < self.total:
            said = f"sheet {sheet + 1} of {self.total // self.together} · {self.word} {face + 1}"
        else:
            said = f"{self.word} {self.number} of {self.total}"
        return f"{said} · {self.couplets}" if self.couplets else said


@dataclass(frozen=True, slots=True)
class Furniture:
    """What stands above and below the columns of a card's faces. The faces of every card are furnished alike."""

    library: Library
    content: Content
    imprint: Imprint
    form: Form
    fine: float = FINE

    def heights(self) -> tuple[float, ...]:
        """The room left for columns on each face of a card."""
        return tuple(
            self.form.inner[1] - self.above(n, Place(self.form.word, 1, 1, True, "")).height - self.below(n).height - 1.5
            for n in range(self.form.together)
        )

    def above(self, number: int, place: Place) -> Block:
        """The head of a face, `number` counted from 0; equally high whatever its place says."""
        width = self.form.inner[0]
        if not self.form.small:
            return _header(self.content, self.imprint, width, place)
        if number % self.form.together:
            return running_head(self.content, width, place.words)
        return small_head(self.content, self.imprint if self.form.name != "pocket" else None, width, place.words)

    def below(self, number: int) -> Block:
        """The foot of a face."""
        width = self.form.inner[0]
        if not self.form.small:
            return _footer(self.library, self.imprint, width, self.fine)
        if self.form.name == "pocket" and number % self.form.together != self.form.together - 1:
            return Block(0, ())
        return small_foot(self.library, self.content, self.imprint, width, self.form)


def _header(content: Content, imprint: Imprint, width: float, place: Place) -> Block:
    """Title, magnification, which side this is, how to begin, and at the right the code that leads to the page.

    Sides after the first name the cautions instead of how to begin; all are equally high.
    """
    size = 20.0 if width > 180 else 15.0
    high = size * MM_PER_PT
    code = qr_block(f"{imprint.address}/{content.page}") if imprint.address else Block(0, ())
    right = width - (code.height + GAP if code.height else 0)
    title = size * min(1.0, (right - typeface.width(content.magnification, True, size) - GAP) / typeface.width(content.title, True, size))
    where = typeface.width(place.words, True, SMALL)
    ways = [content.begin, content.later]
    # The room is that of the longest words there can be, so that the header is equally high on every side.
    beside = all(row_width(way[0], SMALL) <= right - GAP - typeface.width(LONGEST_PLACE, True, SMALL) for way in ways)
    below = high * 1.06 + (0 if beside else SMALL * MM_PER_PT * 1.2)
    heights = [sum(set_lines(each, SMALL, right, even=False).height for each in way) for way in ways]
    pieces: list[Piece] = [
        *([Heading(content.title, 0)] if place.begins else []),
        Words(0, high * RISE, content.title, title, True),
        Words(right - typeface.width(content.magnification, True, size), high * RISE, content.magnification, size, True),
        *set_lines((Run(place.words, bold=True),), SMALL, where + 1).pieces(right - where, high * 1.06),
        Moved(width - code.height, 0, code.pieces),
    ]
    y = below
    for each in ways[0 if place.begins else 1]:
        lines = set_lines(each, SMALL, right, even=False)
        pieces += lines.pieces(0, y)
        y += lines.height
    return Block(max(below + max(heights), code.height) + 1.5, tuple(pieces))


def _footer(library: Library, imprint: Imprint, width: float, fine: float) -> Block:
    left = check_bar(fine)
    beside = width - CHECK_BAR_MM - GAP
    x, y = (CHECK_BAR_MM + GAP, 1.2) if beside >= 60 else (0.0, 1.2 + left.height)
    pieces: list[Piece] = [Rule(0, 0, width, 0, 0.3), Moved(0, 1.6, left.pieces)]
    more = f"More, with every source: {imprint.short_address} · " if imprint.address else ""
    for line in (legend(library), *microscope(library, imprint), more + made(library, imprint)):
        lines = set_lines(dotted(line), fine, width - x, even=False)
        pieces += lines.pieces(x, y, GREY)
        y += lines.height
    return Block(max(y, 1.6 + left.height), tuple(pieces))
