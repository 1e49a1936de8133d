"""The drawings of a couplet's leads in a terminal, side by side, each under its number and with its width, since no scale bar shows."""

from __future__ import annotations

from typing import TYPE_CHECKING

from keytool.cli.terminal import Terminal
from keytool.library.model import Couplet, Library
from keytool.library.wording import number

if TYPE_CHECKING:
    from keytool.figures import Drawing

ROWS = 9
GAP = 3


def pictures(terminal: Terminal, library: Library, couplet: Couplet, *, indent: int) -> str:
    """Lines to print above the leads; empty where no lead is drawn or the terminal cannot show pictures."""
    if not terminal.shows_braille:
        return ""
    from keytool.figures.library_figures import of_lead
    from keytool.figures.terminal import preview

    drawings = [of_lead(library, couplet, lead) for lead in couplet.leads.values()]
    if not any(drawings):
        return ""
    columns = (terminal.width - indent) // len(drawings) - GAP
    blocks = [preview(each, columns, ROWS).split("\n") if each else [] for each in drawings]
    rows = max(map(len, blocks))
    heads = [f"{count}  {across(each)}" if each else f"{count}" for count, each in enumerate(drawings, 1)]
    lines = ["".join(f"{head:<{columns + GAP}}" for head in heads)]
    lines += ["".join(f"{_line(block, row - rows + len(block)):<{columns + GAP}}" for block in blocks) for row in range(rows)]
    return "\n".join((" " * indent + line).rstrip() for line in lines)


def across(drawing: Drawing) -> str:
    """How much of the world a drawing shows from side to side, to two figures, such as "38 µm across"."""
    um = drawing.frame.width
    value, unit = (um / 1000, "mm") if um >= 1000 else (um, "µm")
    return f"{number(float(f'{value:.2g}'))} {unit} across"


def _line(block: list[str], row: int) -> str:
    return block[row] if row >= 0 else ""
