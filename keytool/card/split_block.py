"""A block too high for any face goes on in the next: a couplet is parted between two leads, a comparison between two things."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace

from keytool.card.model import CardBlock, CardCouplet, Compared, Photographed, Row, Told
from keytool.card.words import Run, Text

Fits = Callable[[CardBlock], bool]
"""Whether a block by itself fits a face."""
CONTINUED = Run(" (continued)")


def continued(blocks: Iterable[CardBlock], fits: Fits) -> tuple[CardBlock, ...]:
    """The blocks; each that does not fit in two halves, if those do. What ran over three faces could not be compared."""
    return tuple(part for block in blocks for part in _parts(block, fits))


def _parts(block: CardBlock, fits: Fits) -> Iterable[CardBlock]:
    if fits(block):
        return (block,)
    return next((halves for halves in _halves(block) if all(fits(each) for each in halves)), (block,))


def _halves(block: CardBlock) -> Iterator[tuple[CardBlock, CardBlock]]:
    """Every way to part a block, the evenest first; photographs are parted from the drawings before these are."""
    match block:
        case CardCouplet():
            matched = tuple(lead.drawing for lead in block.leads if lead.drawing)
            block = replace(block, matched=matched)
            rest = replace(block, asks=_again(block.asks), look=(), look_short=())
            for n in _evenest(len(block.leads)):
                yield replace(block, leads=block.leads[:n], goes_on=True), replace(rest, leads=block.leads[n:])
        case Compared(photographs=Photographed() as photographs):
            yield replace(block, photographs=None), photographs
        case Compared():
            for n in _evenest(len(block.entries)):
                yield (
                    replace(block, entries=block.entries[:n], drawings=block.drawings[:n]),
                    replace(block, entries=block.entries[n:], drawings=block.drawings[n:]),
                )
        case Photographed():
            for n in _evenest(len(block.entries)):
                yield Photographed(block.entries[:n], block.shots[:n]), Photographed(block.entries[n:], block.shots[n:])
        case Row():
            for n in _evenest(len(block.cells)):
                yield (
                    Row(block.label, block.cells[:n], block.entries[:n]),
                    Row(_again(block.label), block.cells[n:], block.entries[n:]),
                )
        case Told():
            for n in _evenest(len(block.paragraphs)):
                yield (
                    replace(block, paragraphs=block.paragraphs[:n]),
                    replace(block, title=block.title + CONTINUED.text, paragraphs=block.paragraphs[n:]),
                )


def _again(text: Text) -> Text:
    return (*text, CONTINUED)


def _evenest(count: int) -> list[int]:
    """Where to part so many, the middle first and rather late than early."""
    return sorted(range(1, count), key=lambda n: (abs(2 * n - count), -n))
