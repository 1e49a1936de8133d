"""What stands on every side: the title above, and below it the check bar, the marks, the field of view and the small print."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from keytool.card import typeface
from keytool.card.content import Content
from keytool.card.ink import GREY, Block, Moved, Piece, Rule, Words
from keytool.card.qr import qr_block
from keytool.card.typeface import MM_PER_PT, RISE
from keytool.card.words import NO_BREAK, Run, row_width, set_lines
from keytool.library import show
from keytool.library.model import Library

CHECK_BAR_MM = 50.0
CHECK_WORDS = "check: this bar is 50 mm"
EXAMPLE = "field-number-example"
"""The quantity of the library the example is worked out from where the user gave no field diameters."""
EYEPIECE = 10
"""The magnifications of the vocabulary are those with 10× eyepieces."""
LONGEST_PLACE = "side 10 of 10 · couplets 100 to 100"
SMALL = 9.0
FINE = 7.6
GAP = 4.0


@dataclass(frozen=True, slots=True)
class Imprint:
    """What a side says besides its key."""

    version: str
    reviewed: str
    site_address: str
    field_diameters: Mapping[int, float] | None
    """Power of an objective to diameter of the field of view in mm; empty or None for the worked example."""


@dataclass(frozen=True, slots=True)
class Place:
    """Which side of how many, and the words for the couplets on it, such as "couplets 4 to 10"."""

    side: int
    sides: int
    couplets: str

    @property
    def words(self) -> str:
        """Such as "side 2 of 4 · couplets 4 to 10"."""
        return f"side {self.side} of {self.sides}" + (f" · {self.couplets}" if self.couplets else "")


def header(content: Content, imprint: Imprint, width: float, place: Place) -> Block:
    """Title, magnification, which side this is, how to begin, and at the right the code that leads to the key's page.

    Equally high on every side.
    """
    size = 20.0 if width > 180 else 15.0
    high = size * MM_PER_PT
    address = imprint.site_address.rstrip("/")
    code = qr_block(f"{address}/keys/{content.key}.html") if address else Block(0, ())
    right = width - (code.height + GAP if code.height else 0)
    power = right - typeface.width(content.magnification, True, size)
    where = typeface.width(place.words, True, SMALL)
    # The room is that of the longest words there can be, so that the header is equally high on every side.
    beside = all(row_width(each, SMALL) <= right - GAP - typeface.width(LONGEST_PLACE, True, SMALL) for each in content.begin)
    begin = [set_lines(each, SMALL, right, even=False) for each in content.begin]
    below = high * 1.06 + (0 if beside else SMALL * MM_PER_PT * 1.2)
    pieces: list[Piece] = [
        Words(0, high * RISE, content.title, size, True),
        Words(power, high * RISE, content.magnification, size, True),
        *set_lines((Run(place.words, bold=True),), SMALL, where + 1).pieces(right - where, high * 1.06),
        Moved(width - code.height, 0, code.pieces),
    ]
    for lines in begin:
        pieces += lines.pieces(0, below)
        below += lines.height
    return Block(max(below, code.height) + 1.5, tuple(pieces))


def footer(library: Library, imprint: Imprint, width: float) -> Block:
    """The foot of every side."""
    left = _check()
    beside = width - CHECK_BAR_MM - GAP
    x, y = (CHECK_BAR_MM + GAP, 1.2) if beside >= 60 else (0.0, 1.2 + left.height)
    pieces: list[Piece] = [Rule(0, 0, width, 0, 0.3), Moved(0, 1.6, left.pieces)]
    for line in _lines(library, imprint):
        # A dot that parts two items ends a line, it never begins one.
        lines = set_lines((Run(line.replace(" · ", f"{NO_BREAK}· ")),), FINE, width - x, even=False)
        pieces += lines.pieces(x, y, GREY)
        y += lines.height
    return Block(max(y, 1.6 + left.height), tuple(pieces))


def _check() -> Block:
    """The bar a ruler is laid on, with ticks at its ends."""
    size, end = FINE * MM_PER_PT, CHECK_BAR_MM
    bar = [Rule(0, 0.4, end, 0.4, 0.6), Rule(0.125, 0.1, 0.125, 2.4, 0.25), Rule(end - 0.125, 0.1, end - 0.125, 2.4, 0.25)]
    return Block(2.0 + size, (*bar, Words(1.5, 1.4 + size, CHECK_WORDS, FINE)))


def _lines(library: Library, imprint: Imprint) -> list[str]:
    made = f"wetmount {imprint.version} · entries reviewed up to {imprint.reviewed} · CC BY 4.0 · print at 100 %"
    address = imprint.site_address.rstrip("/")
    more = f"More, with every source: {address.partition('://')[2] or address} · " if address else ""
    return [f"Marks: {_legend(library)}.", *_field_line(library, imprint.field_diameters), more + made]


def _legend(library: Library) -> str:
    """Each basis mark with its meaning; words that share a mark share a place."""
    meanings: dict[str, list[str]] = {}
    values = list(library.vocabulary["value"].values())
    for kind in library.vocabulary["basis"].values():
        if kind.id == "published":
            for value in values:
                meanings.setdefault(value.get("mark"), []).append(f"{kind.label}, {value.label}")
        else:
            meanings.setdefault(kind.get("mark"), []).append(kind.label)
    return " · ".join(f"{mark}{NO_BREAK}{' or '.join(_without_repeats(words))}" for mark, words in meanings.items())


def _without_repeats(words: list[str]) -> list[str]:
    first, *rest = words
    head = first.partition(", ")[0] + ", "
    return [first, *(each.removeprefix(head) for each in rest)]


def _field_line(library: Library, diameters: Mapping[int, float] | None) -> list[str]:
    if diameters:
        return [f"Your field of view: {_fields(diameters)}."]
    if EXAMPLE not in library.quantities:
        return []
    number = library.quantities[EXAMPLE]
    known = {int(id) // EYEPIECE: number.low * EYEPIECE / int(id) for id in library.vocabulary["magnification"]}
    return [f"Field of view, for example with field number {show.number(number.low)}: {_fields(known)} "
            "(= field number / objective; yours stands on the eyepiece)."]


def _fields(diameters: Mapping[int, float]) -> str:
    return " · ".join(f"{power}× objective {diameter:.3g} mm".replace(" ", NO_BREAK) for power, diameter in sorted(diameters.items()))
