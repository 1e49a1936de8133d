"""Texts of the library as runs of one style, and setting them in lines."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cache, cached_property
from itertools import groupby, pairwise, takewhile
from typing import NamedTuple

from keytool.card import typeface
from keytool.card.ink import BLACK, Words
from keytool.card.typeface import LINE, MM_PER_PT, RISE, SMALLEST
from keytool.library.model import Library
from keytool.library.text import Link, QuantityRef, parts
from keytool.library.wording import mark, name_of, quantity_words

NO_BREAK = "\u00a0"


class Run(NamedTuple):
    """Text of one style. A `raised` run is a basis mark: small, above the line, never parted from what it follows."""

    text: str
    bold: bool = False
    raised: bool = False


Text = tuple[Run, ...]


def text_of(library: Library, text: str, bold: bool = False) -> Text:
    """A text of the library: each quantity in figures with the mark of its basis, each link as the name it leads to."""
    runs: list[Run] = []
    for part in parts(text):
        if isinstance(part, QuantityRef):
            quantity = library.quantities[part.id]
            runs.append(Run(quantity_words(quantity).replace(" ", NO_BREAK), bold))
            runs.append(Run(mark(library, quantity.basis), bold, raised=True))
        elif isinstance(part, Link):
            runs.append(Run(part.words or name_of(library, part.id), bold))
        else:
            runs.append(Run(_kept_together(library, part), bold))
    return tuple(runs)


def spoken(text: Text) -> str:
    """The text as plain characters, without its basis marks."""
    return "".join(run.text for run in text if not run.raised).replace(NO_BREAK, " ")


def _kept_together(library: Library, text: str) -> str:
    """The text with no line break between a number and its unit."""
    units = "|".join(re.escape(unit) for unit in library.vocabulary["unit"] if unit != "1")
    return re.sub(rf"(?<=\d) (?=({units})\b)", NO_BREAK, text)


@dataclass(frozen=True)
class Lines:
    """A text set in lines at one size. Widths and heights in mm."""

    text: Text
    pt: float
    room: float
    even: bool

    @property
    def height(self) -> float:
        """From the top of the first line to the foot of the last."""
        return len(self._starts) * self.pt * LINE * MM_PER_PT

    @property
    def width(self) -> float:
        """Of the longest line."""
        return max((row_width(row, self.pt) for row in self.rows), default=0.0)

    @property
    def last_width(self) -> float:
        """Of the last line."""
        return row_width(self.rows[-1], self.pt) if self.rows else 0.0

    @cached_property
    def rows(self) -> tuple[Text, ...]:
        """The runs of each line. Even lines are as narrow as they can be without a line more; others only end well."""
        words = _measured(self.text, self.pt)
        starts = self._starts
        if len(starts) > 1:
            tried = (_breaks(words, self.room * share / 100) for share in range(100, 40, -2))
            fitting = list(takewhile(lambda each: len(each) == len(starts), tried))
            starts = fitting[-1] if self.even else next((each for each in fitting if self._ends_well(each)), starts)
        return tuple(_joined(words[start:end]) for start, end in pairwise([*starts, len(words)]))

    def pieces(self, x: float, y: float, colour: str = BLACK) -> Iterable[Words]:
        """The words with the top left of the first line at (x, y)."""
        size = self.pt * MM_PER_PT
        for number, row in enumerate(self.rows):
            at = x
            base = y + number * size * LINE + size * (LINE + RISE - 0.22) / 2
            for run in row:
                yield Words(at, base - (0.3 * size if run.raised else 0.0), run.text, _pt(run, self.pt), run.bold, colour)
                at += _run_width(run, self.pt)

    def _ends_well(self, starts: list[int]) -> bool:
        """Whether the last line is no sliver: a quarter of the room or more."""
        return sum(word.width + word.space for word in _measured(self.text, self.pt)[starts[-1] :]) > self.room / 4

    @cached_property
    def _starts(self) -> list[int]:
        return _breaks(_measured(self.text, self.pt), self.room)


@cache
def set_lines(text: Text, pt: float, width: float, even: bool = True) -> Lines:
    """The text in the fewest lines that fit `width` mm."""
    return Lines(text, pt, width, even)


@cache
def longest_word(text: Text, pt: float) -> float:
    """How wide the longest word is that cannot be broken, in mm."""
    return max((word.width for word in _measured(text, pt)), default=0.0)


def row_width(row: Iterable[Run], pt: float) -> float:
    """How wide a line is, in mm."""
    return sum(_run_width(run, pt) for run in row)


@dataclass(frozen=True, slots=True)
class _Word:
    runs: Text
    width: float
    space: float


@cache
def _measured(text: Text, pt: float) -> tuple[_Word, ...]:
    return tuple(_Word(word, row_width(word, pt), typeface.width(" ", word[0].bold, pt)) for word in _words(text))


def _breaks(words: Sequence[_Word], width: float) -> list[int]:
    """The number of the first word of each line, every line as full as it can be."""
    starts: list[int] = []
    left = -1.0
    for number, word in enumerate(words):
        if starts and left >= word.space + word.width:
            left -= word.space + word.width
        else:
            starts.append(number)
            left = width + 1e-6 - word.width
    return starts


def _joined(row: Sequence[_Word]) -> Text:
    """A line's words as few runs: neighbours of one style become one, with the spaces between them."""
    pieces: list[Run] = []
    for number, word in enumerate(row):
        first, *rest = word.runs
        pieces += [Run(" " + first.text if number else first.text, first.bold, first.raised), *rest]
    return tuple(
        Run("".join(run.text for run in runs), bold, raised)
        for (bold, raised), runs in groupby(pieces, key=lambda run: (run.bold, run.raised))
    )


def _words(text: Text) -> Iterable[Text]:
    """The text cut at its spaces; what stands without a space between stays together."""
    word: list[Run] = []
    for run in text:
        chunks = run.text.split(" ")
        for number, chunk in enumerate(chunks):
            if number and word:
                yield tuple(word)
                word = []
            if chunk:
                word.append(Run(chunk, run.bold, run.raised))
    if word:
        yield tuple(word)


def _pt(run: Run, pt: float) -> float:
    return max(SMALLEST, 0.72 * pt) if run.raised else pt


def _run_width(run: Run, pt: float) -> float:
    return typeface.width(run.text, run.bold, _pt(run, pt))
