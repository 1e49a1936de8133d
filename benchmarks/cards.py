"""Every card of the keys, and the short card: sides, and the smallest type of a lead, of how to see it, and of all, in points.

python benchmarks/cards.py [FOLDER] [--paper A4] [--form sheet] [--key threads]

With FOLDER each PDF is kept there in every ink, and of each the normal one and the strong one as a contact sheet, to be looked at
(needs pdftoppm). Each option may be given several times; without one all are made, which takes about twenty minutes.

Type is read by another library than the one that wrote the file. A card is laid out once and printed in every ink, so all inks take
the same sides. A card that does not fit says what it lacks.
"""

from __future__ import annotations

import argparse
import re
import subprocess
import tempfile
from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import partial
from io import BytesIO
from pathlib import Path

from PIL import Image
from pypdf import PdfReader

from keytool.card import FORMS, INKS, PAPERS, Card, DoesNotFit, laid_out, short_card
from keytool.library import load, root
from keytool.library.model import Library

SHORT, SHORT_FORMS = "short-card", ("sheet", "pocket")
TOLD = 14
"""A piece of text shorter than this may stand anywhere; a longer one that is part of a lead is taken for the lead."""
CONTACT_DPI, CONTACT_ACROSS = 60, 4

Make = Callable[..., Card]
"""What lays out a card: called with a paper."""


def main() -> None:
    """Prints the table."""
    read = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    read.add_argument("folder", nargs="?", type=Path)
    read.add_argument("--paper", action="append", choices=list(PAPERS))
    read.add_argument("--form", action="append", choices=list(FORMS))
    read.add_argument("--key", action="append")
    given = read.parse_args()
    if given.folder:
        given.folder.mkdir(parents=True, exist_ok=True)
    library = load(root()).library
    print(f"{'card':22} {'form':8} {'paper':6} {'sides':>5} {'lead':>6} {'how':>6} {'least':>6} {'kB':>6}")
    for name, form, make in asked(library):
        if (given.key and name not in given.key) or (given.form and form not in given.form):
            continue
        for paper in given.paper or PAPERS:
            told = row(make, paper, words_of(library, name), given.folder, f"{name}-{form}-{paper}")
            print(f"{name:22} {form:8} {paper:6} {told}", flush=True)


def asked(library: Library) -> Iterator[tuple[str, str, Make]]:
    """The short card, and every key in every form."""
    for form in SHORT_FORMS:
        yield SHORT, form, partial(short_card, library, form=form)
    for key in library.keys:
        for form in FORMS:
            yield key, form, partial(laid_out, library, [key], form=form)


def words_of(library: Library, name: str) -> tuple[str, str]:
    """All leads of a key, and all that is said of how to see them, each as one text without spaces, as they are looked for in the PDF."""
    key = library.keys.get(name)
    couplets = list(key.couplets.values()) if key else []
    leads = " ".join(lead.text for couplet in couplets for lead in couplet.leads.values())
    asked_about = {id for couplet in couplets for id in couplet.characters}
    looks = " ".join([*(each.look or "" for each in couplets), *(library.characters[id].look or "" for id in asked_about)])
    return squeezed(leads), squeezed(looks)


def row(make: Make, paper: str, words: tuple[str, str], folder: Path | None, name: str) -> str:
    """The figures of one card, or what it lacks."""
    try:
        made = make(paper=paper)
    except DoesNotFit as error:
        return str(error)
    pdfs = {ink: replace(made, ink=version).pdf() for ink, version in INKS.items()}
    if folder:
        for ink, data in pdfs.items():
            (folder / f"{name}-{ink}.pdf").write_bytes(data)
        for ink in ("normal", "strong"):
            contact_sheet(folder / f"{name}-{ink}.pdf")
    shown = pieces(pdfs["normal"])
    least = [min((size for text, size in shown if len(text) >= TOLD and text in told), default=None) for told in words]
    told = " ".join(f"{each:6.1f}" if each else " " * 6 for each in (*least, min(size for _, size in shown)))
    return f"{len(made.sides):5} {told} {len(pdfs['normal']) / 1000:6.0f}"


def contact_sheet(pdf: Path) -> None:
    """All sides of a PDF on one picture beside it."""
    with tempfile.TemporaryDirectory() as work:
        subprocess.run(["pdftoppm", "-r", str(CONTACT_DPI), "-png", str(pdf), f"{work}/side"], check=True)
        sides = [Image.open(path).convert("RGB") for path in sorted(Path(work).glob("*.png"))]
    wide, high = max(each.width for each in sides) + 6, max(each.height for each in sides) + 6
    across = min(CONTACT_ACROSS, len(sides))
    sheet = Image.new("RGB", (wide * across, high * -(-len(sides) // across)), "#888888")
    for number, side in enumerate(sides):
        sheet.paste(side, (3 + number % across * wide, 3 + number // across * high))
    sheet.save(pdf.with_suffix(".png"))


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
    main()
