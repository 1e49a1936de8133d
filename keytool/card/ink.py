"""What is put on a side, measured but not yet drawn: words, rules, panels and pictures, in millimetres, y pointing down."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from keytool.figures import Drawing

BLACK = "#000000"
WHITE = "#ffffff"
GREY = "#4a4a4a"
"""Dark enough to be read in the dim; for what is read once."""


@dataclass(frozen=True, slots=True)
class Words:
    """One line of text of one style; (x, y) is where its baseline starts."""

    x: float
    y: float
    text: str
    pt: float
    bold: bool = False
    colour: str = BLACK


@dataclass(frozen=True, slots=True)
class Rule:
    """A straight line from (x, y) to (x2, y2), `weight` mm wide, with flat ends; an `exact` weight is that in every version."""

    x: float
    y: float
    x2: float
    y2: float
    weight: float = 0.25
    colour: str = BLACK
    exact: bool = False


@dataclass(frozen=True, slots=True)
class Panel:
    """A black rectangle with its top left corner at (x, y); `radius` rounds its corners, `reversed` type stands on it."""

    x: float
    y: float
    width: float
    height: float
    radius: float = 0.0
    reversed: bool = False


@dataclass(frozen=True, slots=True)
class Picture:
    """A plate without its scale bar, its top left corner at (x, y), drawn at `mm_per_um`."""

    x: float
    y: float
    drawing: Drawing
    mm_per_um: float


@dataclass(frozen=True, slots=True)
class Bitmap:
    """A photograph, its top left corner at (x, y): a PNG or JPEG file, stretched to `width` by `height`."""

    x: float
    y: float
    width: float
    height: float
    file: bytes


@dataclass(frozen=True, slots=True)
class Heading:
    """Not printed: an entry of the document's outline, 0 for what a card is of and 1 for a couplet or note, leading to (x, y)."""

    text: str
    level: int
    x: float = 0.0
    y: float = 0.0


@dataclass(frozen=True, slots=True)
class Moved:
    """Pieces that stand `x` further right and `y` further down than they say."""

    x: float
    y: float
    pieces: tuple[Piece, ...]


@dataclass(frozen=True, slots=True)
class Turned:
    """Pieces of an area `width` by `height` that stands on its head; (x, y) is its corner at the top left as it stands then."""

    width: float
    height: float
    pieces: tuple[Piece, ...]
    x: float = 0.0
    y: float = 0.0


Mark = Words | Rule | Panel | Picture | Bitmap | Turned | Heading
Piece = Mark | Moved


@dataclass(frozen=True, slots=True)
class Block:
    """Pieces that stay together, from y = 0 down to `height`, no wider than they were measured for."""

    height: float
    pieces: tuple[Piece, ...]


def marks(pieces: Iterable[Piece], x: float = 0.0, y: float = 0.0) -> Iterator[Mark]:
    """Every mark where it really stands, in order."""
    for each in pieces:
        match each:
            case Moved():
                yield from marks(each.pieces, x + each.x, y + each.y)
            case Rule():
                yield replace(each, x=each.x + x, y=each.y + y, x2=each.x2 + x, y2=each.y2 + y)
            case _:
                yield replace(each, x=each.x + x, y=each.y + y)
