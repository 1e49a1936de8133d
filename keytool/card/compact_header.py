"""Heads and feet of small faces, cards cut from a sheet and panels of a pocket fold; and the check bar of all."""

from __future__ import annotations

from keytool.card import typeface
from keytool.card.colophon import Imprint, legend, made, microscope, yours
from keytool.card.form import Form
from keytool.card.impose import fold_words
from keytool.card.ink import GREY, Block, Heading, Moved, Piece, Rule, Words
from keytool.card.model import Content, dotted
from keytool.card.qr import qr_block
from keytool.card.typeface import MM_PER_PT, RISE, SMALLEST
from keytool.card.words import Run, set_lines
from keytool.library.model import Library

CHECK_BAR_MM = 50.0
CHECK_WORDS = "check: this bar is 50 mm"
TITLE = 13.0
RUNNING = 8.5
BEGIN = 7.6
GAP = 2.5


def check_bar(pt: float) -> Block:
    """The bar a ruler is laid on, with ticks at its ends."""
    size, end = pt * MM_PER_PT, CHECK_BAR_MM
    bar = [Rule(0, 0.4, end, 0.4, 0.6, exact=True), Rule(0.125, 0.1, 0.125, 2.4, 0.25), Rule(end - 0.125, 0.1, end - 0.125, 2.4, 0.25)]
    return Block(2.0 + size, (*bar, Words(1.5, 1.4 + size, CHECK_WORDS, pt)))


def running_head(content: Content, width: float, place: str) -> Block:
    """The title and the place in one line, for faces after a card's first; a long title is set smaller."""
    right = typeface.width(place, False, SMALLEST)
    title = min(RUNNING, RUNNING * (width - right - GAP) / typeface.width(content.title, True, RUNNING))
    base = RUNNING * MM_PER_PT * RISE
    words: list[Piece] = [Words(width - right, base, place, SMALLEST, colour=GREY)]
    # Where even the smallest type is too wide the place alone tells the face.
    if title >= SMALLEST:
        words.insert(0, Words(0, base, content.title, title, True))
    return Block(RUNNING * MM_PER_PT + 0.6, tuple(words))


def small_head(content: Content, imprint: Imprint | None, width: float, place: str) -> Block:
    """Title, magnification, place and how to begin, with the code that leads to the page if `imprint` has an address."""
    code = qr_block(f"{imprint.address}/{content.page}") if imprint and imprint.address else Block(0, ())
    right = width - (code.height + GAP if code.height else 0)
    power = typeface.width(content.magnification, True, TITLE)
    lines = set_lines((Run(content.title, bold=True),), TITLE, right - power - GAP)
    pieces: list[Piece] = [
        Heading(content.title, 0),
        *lines.pieces(0, 0),
        Words(right - power, TITLE * MM_PER_PT * 0.87, content.magnification, TITLE, True),
        Moved(width - code.height, 0, code.pieces),
    ]
    y = lines.height
    for text in ((Run(place, bold=True),), *content.begin):
        begin = set_lines(text, BEGIN, right, even=False)
        pieces += begin.pieces(0, y)
        y += begin.height
    return Block(max(y, code.height) + 1.2, tuple(pieces))


def small_foot(library: Library, content: Content, imprint: Imprint, width: float, form: Form) -> Block:
    """The check bar and what a mark means; on a pocket fold, whose only foot it is, all the rest and how to fold it."""
    pocket = form.name == "pocket"
    address = imprint.short_address
    if pocket:
        lines = [fold_words(form), legend(library), *microscope(library, imprint), made(library, imprint)]
        lines += [f"More, with every source: {address}"] if address else []
    else:
        lines = [legend(library), *yours(library, imprint), f"{address} · {made(library, imprint)}" if address else made(library, imprint)]
    bar = check_bar(SMALLEST)
    code = qr_block(f"{imprint.address}/{content.page}") if pocket and address else Block(0, ())
    y = 1.2 + bar.height + 0.4
    code_ends = y + 0.8 + code.height if code.height else 0.0
    pieces: list[Piece] = [Rule(0, 0, width, 0, 0.3), Moved(0, 1.2, bar.pieces), Moved(width - code.height, y + 0.8, code.pieces)]
    if content.cautions and not pocket:
        lines.insert(0, content.cautions)
    for line in lines:
        words = set_lines(dotted(line), SMALLEST, width - (code.height + GAP if y < code_ends else 0), even=False)
        pieces += words.pieces(0, y, GREY)
        y += words.height
    return Block(max(y, code_ends), tuple(pieces))
