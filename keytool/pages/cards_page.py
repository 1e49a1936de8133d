"""Bench cards on the site: the ready ones to print, and a form that makes the command of your own."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from keytool.library.model import Key, Library
from keytool.pages.card_form import card_form, picture
from keytool.pages.extras import Extras
from keytool.pages.html import Html, el
from keytool.pages.index_pages import first_keys
from keytool.pages.page import Page, heading, page
from keytool.pages.page_writer import Writer


def ready(key: str, paper: str) -> str:
    """Where the ready card of a key on a paper lies in the site."""
    return f"cards/{key}-{paper}.pdf"


def preview(key: str, paper: str) -> str:
    """Where the picture of its first side lies."""
    return f"cards/{key}-{paper}.svg"


def short(paper: str, form: str) -> str:
    """Where the short card on a paper lies, as a sheet or as a pocket."""
    return f"cards/most-met-{form}-{paper}.pdf"


def short_preview(paper: str, form: str, side: int) -> str:
    """Where the picture of one of its sides lies."""
    return f"cards/most-met-{form}-{paper}-{side}.svg"


def cards_page(library: Library, extras: Extras) -> Page:
    """The cards there are, and the form."""
    writer = Writer(library, "cards.md")
    return page(
        "cards.md",
        "keydata/keys",
        "Bench cards",
        [
            heading(1, "Bench cards"),
            el(
                "p",
                "A key on paper, its drawings to scale, to be laminated and kept beside the microscope. Print at 100 % (“actual size”), "
                "hold a ruler to the 50 mm bar on each side, and only then laminate.",
            ),
            el(
                "p",
                "Leave 5 mm of film all round a card: soil water creeps in where it is not sealed. A laminator is hot; mind its maker's "
                "instructions.",
            ),
            *_short(writer, extras),
            heading(2, "Ready to print", "ready"),
            *_ready(writer, extras),
            heading(2, "Make your own", "own"),
            *card_form(writer, extras),
        ],
        description="Keys on paper to be laminated: ready PDFs, and how to make your own.",
    )


def _short(writer: Writer, extras: Extras) -> Iterator[Html | str]:
    """The short card: the first one to print."""
    made = [(paper, form) for form in ("sheet", "pocket") for paper in reversed(extras.papers) if short(paper, form) in extras.files]
    if not made:
        return
    yield heading(2, "The one to begin with", "most-met")
    yield el(
        "p",
        "What is met nine times in ten, at its true size in the field at 40× and at 400×, each with the one look that decides, how "
        "to make counts comparable, which key goes on, and room for your own figures. One sheet, both sides.",
    )
    words = {"sheet": "both sides of a sheet", "pocket": "one side, to be folded in eight"}
    yield el(
        "ul",
        *(el("li", el("a", f"Most met, {paper} (PDF)", href=writer.href(short(paper, form))), f": {words[form]}") for paper, form in made),
        class_="wm-entry-list",
    )
    for side, power in ((0, "40×"), (1, "400×")):
        yield picture(writer, short_preview(made[0][0], "sheet", side), f"Look at the side for {power}", extras.files)


def _ready(writer: Writer, extras: Extras) -> Iterator[Html]:
    library, files, papers = writer.library, extras.files, extras.papers
    made = [(library.keys[id], paper) for id in first_keys(library) for paper in papers if ready(id, paper) in files]
    lines = [_card(writer, key, paper, files) for key, paper in made]
    if lines:
        yield el("ul", *lines, class_="wm-entry-list")
        yield el(
            "p",
            "The field diameters on these are those of an example microscope, and say so. Yours go on a card of your own.",
            class_="wm-aside",
        )
    else:
        yield el(
            "p",
            "This copy of the site was built without them. Build it with ",
            el("code", "wetmount site --cards"),
            ", or make one card with the command below.",
        )


def _card(writer: Writer, key: Key, paper: str, files: Mapping[str, bytes]) -> Html:
    content = files[ready(key.id, paper)]
    sides = _sides(content)
    size = f"{paper}, {sides} side{'s' if sides > 1 else ''}, {max(1, round(len(content) / 1000))} kB"
    questions = f"{len(key.couplets)} questions, {writer.power(key.magnification)}"
    return el(
        "li",
        el("a", f"{key.title} (PDF)", href=writer.href(ready(key.id, paper))),
        el("div", f"{size}. {questions}.", class_="wm-aside"),
        picture(writer, preview(key.id, paper), f"Look at the first side: {key.title}", files),
    )


def _sides(pdf: bytes) -> int:
    """How many sides a card has: what its page tree says."""
    counted = re.search(rb"/Count (\d+)", pdf)
    return int(counted[1]) if counted else 1
