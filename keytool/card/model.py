"""What stands on a card, in words and drawings, before any of it is measured."""

from __future__ import annotations

from dataclasses import dataclass

from keytool.card.words import NO_BREAK, Run, Text, spoken
from keytool.figures import Drawing

WARNING_SIGN = "⚠"


@dataclass(frozen=True, slots=True)
class Goto:
    """A lead that goes on: to the number of a couplet, or else to another key."""

    words: Text
    to_number: bool


@dataclass(frozen=True, slots=True)
class End:
    """A lead that ends. `flag`, `name` and `diets` are printed in reversed type (the name never empty), `below` under them."""

    flag: Text
    name: Text
    diets: Text
    below: tuple[Text, ...]


@dataclass(frozen=True, slots=True)
class CardLead:
    """One lead: its words, its plate and where it goes."""

    text: Text
    drawing: Drawing | None
    target: Goto | End


@dataclass(frozen=True, slots=True)
class CardCouplet:
    """One couplet. `look` is all of how to see it, `look_short` its first sentence.

    `magnification` is said where it is not that of the whole key, and is empty elsewhere. `one_scale` says whether
    all plates share a scale, `goes_on` that more leads follow on the next face.
    """

    number: int
    came_from: tuple[int, ...]
    magnification: str
    asks: Text
    look: Text
    look_short: Text
    leads: tuple[CardLead, ...]
    one_scale: bool
    goes_on: bool = False
    matched: tuple[Drawing, ...] = ()
    """The drawings its own are to be at one scale with, where it is part of a couplet."""


@dataclass(frozen=True, slots=True)
class Note:
    """Short paragraphs under a title: steps to take in order, or a caution with its sign."""

    title: str
    paragraphs: tuple[Text, ...]
    caution: bool = False


@dataclass(frozen=True, slots=True)
class Told:
    """Paragraphs under a title, set large and full width: the one test to do first (`first`); or small, as points."""

    title: str
    paragraphs: tuple[Text, ...]
    first: bool


@dataclass(frozen=True, slots=True)
class CardPhoto:
    """A photograph with its scale bar burnt in: the picture as a file, its size in pixels, and what is said below it."""

    picture: bytes
    width: int
    height: int
    said: Text


@dataclass(frozen=True, slots=True)
class Photographed:
    """Photographs of the things compared; None where there is none."""

    entries: tuple[End, ...]
    shots: tuple[CardPhoto | None, ...]


@dataclass(frozen=True, slots=True)
class Compared:
    """The head of a table: what is compared, each with its plate. `one_scale` says whether all plates may share a scale."""

    entries: tuple[End, ...]
    drawings: tuple[Drawing | None, ...]
    one_scale: bool
    photographs: Photographed | None = None


@dataclass(frozen=True, slots=True)
class Row:
    """One row of a table: what a character is called, and what each of `entries`, the things compared, shows."""

    label: Text
    cells: tuple[Text, ...]
    entries: tuple[End, ...]

    @property
    def names(self) -> tuple[str, ...]:
        """What the things compared are called."""
        return tuple(spoken(each.name) for each in self.entries)


CardBlock = Note | CardCouplet | Told | Compared | Photographed | Row


@dataclass(frozen=True, slots=True)
class Content:
    """What stands on one card, in reading order. `page` is where the site says more, `magnification` may be empty.

    `later` is said instead of `begin` on the sides after the first; a `wide` content is set in one column.
    """

    page: str
    title: str
    magnification: str
    begin: tuple[Text, ...]
    later: tuple[Text, ...]
    blocks: tuple[CardBlock, ...]
    wide: bool = False

    @property
    def cautions(self) -> str:
        """The titles of its cautions in one line, such as "⚠ Broken glass · Flame and hot glass"; empty without any."""
        return caution_line(self.blocks)


def caution_line(blocks: tuple[CardBlock, ...]) -> str:
    """The titles of the cautions among the blocks in one line; empty without any."""
    titles = [each.title.replace(" ", NO_BREAK) for each in blocks if isinstance(each, Note) and each.caution]
    return f"{WARNING_SIGN}{NO_BREAK}{' · '.join(titles)}" if titles else ""


def dotted(line: str) -> Text:
    """The line as a text: a dot that parts two items ends a line, it never begins one."""
    return (Run(line.replace(" · ", f"{NO_BREAK}· ")),)
