"""Every card of the keys, and the short card: sides, smallest type of a lead and smallest type of all, as read from the finished PDF.

python benchmarks/cards.py [FOLDER]      with FOLDER each PDF is kept there, to be looked at

Type is read by another library than the one that wrote the file. Every ink is made as well: `inks` says whether all take the same sides.
A card that does not fit says what it lacks.
"""

from __future__ import annotations

import re
import sys
from collections.abc import Callable, Iterator
from functools import partial
from io import BytesIO
from pathlib import Path

from pypdf import PdfReader

from keytool.card import FORMS, INKS, PAPERS, DoesNotFit, card, short_card
from keytool.library import load, root
from keytool.library.model import Library

SHORT_FORMS = ("sheet", "pocket")
TOLD = 14
"""A piece of text shorter than this may stand anywhere; a longer one that is part of a lead is taken for the lead."""

Make = Callable[..., bytes]
"""What makes a card: called with a paper and with `ink`."""


def main(folder: Path | None) -> None:
    """Prints the table."""
    loaded = load(root())
    print(f"{'card':24} {'form':9} {'paper':7} {'sides':>5} {'lead pt':>8} {'least pt':>9} {'kB':>6}  inks")
    for name, form, make in asked(loaded.library):
        for paper in PAPERS:
            print(
                f"{name:24} {form:9} {paper:7} {row(make, paper, leads_of(loaded.library, name), folder, f'{name}-{form}-{paper}')}",
                flush=True,
            )


def asked(library: Library) -> Iterator[tuple[str, str, Make]]:
    """Every key in every form, and the short card."""
    for key in library.keys:
        for form in FORMS:
            yield key, form, partial(card, library, [key], form=form)
    for form in SHORT_FORMS:
        yield "short card", form, partial(short_card, library, form=form)


def leads_of(library: Library, name: str) -> str:
    """All leads of a key as one text without spaces, as they are looked for in the PDF."""
    key = library.keys.get(name)
    texts = [lead.text for couplet in key.couplets.values() for lead in couplet.leads.values()] if key else []
    return squeezed(" ".join(texts))


def row(make: Make, paper: str, leads: str, folder: Path | None, name: str) -> str:
    """The figures of one card, or what it lacks."""
    try:
        made = {ink: make(paper=paper, ink=ink) for ink in INKS}
    except DoesNotFit as error:
        return str(error)
    if folder:
        for ink, data in made.items():
            (folder / f"{name.replace(' ', '-')}-{ink}.pdf").write_bytes(data)
    sides = {ink: len(PdfReader(BytesIO(data)).pages) for ink, data in made.items()}
    shown = [piece for data in made.values() for piece in pieces(data)]
    of_leads = [size for text, size in shown if len(text) >= TOLD and text in leads]
    lead = f"{min(of_leads):8.1f}" if of_leads else " " * 8
    alike = "alike" if len(set(sides.values())) == 1 else f"differ: {sides}"
    return f"{sides['normal']:5} {lead} {min(size for _, size in shown):9.1f} {len(made['normal']) / 1000:6.0f}  {alike}"


def pieces(data: bytes) -> list[tuple[str, float]]:
    """Every piece of text of a PDF, without spaces, with its size in points."""
    found: list[tuple[str, float]] = []

    def note(text: str, _matrix: object, _place: object, _font: object, size: float) -> None:
        if text.strip():
            found.append((squeezed(text), size))

    for page in PdfReader(BytesIO(data)).pages:
        page.extract_text(visitor_text=note)
    return found


def squeezed(text: str) -> str:
    """The text without spaces and ties."""
    return re.sub(r"[\s\u00a0~]", "", text)


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else None)
