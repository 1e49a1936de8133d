"""Everything by the alphabet: the page the search falls back on, which needs no script."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from keytool.library.model import Library
from keytool.pages.html import Html, el
from keytool.pages.page import Page, heading, page
from keytool.pages.page_writer import Writer

OTHERS = "#"


def find_page(library: Library) -> Page:
    """Each name with what it is and where it stands, the other names of an entry among them."""
    writer = Writer(library, "find.md")
    rows = sorted(dict.fromkeys(_rows(library)), key=lambda row: (row[0].casefold(), row[1]))
    by_letter = [(letter, list(group)) for letter, group in groupby(rows, key=lambda row: _letter(row[0]))]
    by_letter.sort(key=lambda each: each[0])
    jumps = el(
        "nav", *(el("a", letter, href=f"#{_anchor(letter)}") for letter, _ in by_letter), class_="wm-letters", aria_label="By letter"
    )
    blocks: list[str] = [
        heading(1, "Find"),
        el("p", "Every name by the alphabet, everyday and Latin. With script on, Find at the head of each page searches as you type."),
        jumps,
    ]
    for letter, group in by_letter:
        blocks += [heading(2, letter, _anchor(letter)), el("ul", *(_line(writer, *row) for row in group), class_="wm-find-list")]
    return page("find.md", "keydata", "Find", blocks, description="Everything wetmount knows, by name, from A to Z.")


def _rows(library: Library) -> Iterator[tuple[str, str, str]]:
    """Name, id and kind."""
    for entry in library.entries.values():
        kind = library.vocabulary["entry-kind"][entry.kind].label
        for name in (entry.common, entry.scientific, *entry.also):
            if name:
                yield name[0].upper() + name[1:], entry.id, kind
    for key in library.keys.values():
        yield key.title, key.id, "key"
    for guide in library.guides.values():
        yield guide.title, guide.id, "guide"
    for each in library.look_alikes.values():
        yield each.title, each.id, "look-alikes"
    for caution in library.cautions.values():
        yield caution.title, caution.id, "take care"


def _line(writer: Writer, name: str, id: str, kind: str) -> Html:
    return el("li", writer.link(id, name), el("span", f" {kind}", class_="wm-aside"))


def _letter(name: str) -> str:
    first = name[0].upper()
    return first if first.isascii() and first.isalpha() else OTHERS


def _anchor(letter: str) -> str:
    return "letter-other" if letter == OTHERS else f"letter-{letter.lower()}"
