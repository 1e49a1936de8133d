"""The pages that list: keys, entries, terms, cautions, quantities and the bench method."""

from __future__ import annotations

import re
from collections.abc import Iterator

from keytool.library.model import Entry, Library
from keytool.library.wording import feeding_words, plain, quantity_words
from keytool.pages.html import Html, el
from keytool.pages.page import Page, heading, page
from keytool.pages.page_writer import Writer


def first_keys(library: Library) -> list[str]:
    """The ids of all keys, those that no other key leads to first: there one starts."""
    led_to = {lead.key for key in library.keys.values() for couplet in key.couplets.values() for lead in couplet.leads.values()}
    return sorted(library.keys, key=lambda id: (id in led_to, list(library.keys).index(id)))


def key_cards(writer: Writer, *, brief: bool = False) -> Html:
    """The keys with what each names, as large links; `brief` keeps to the first sentence."""
    library = writer.library
    return el(
        "ul",
        *(
            el(
                "li",
                el(
                    "a",
                    el("strong", library.keys[id].title),
                    el("span", _about(library, id, brief)),
                    el(
                        "span",
                        f"{len(library.keys[id].couplets)} questions · {writer.power(library.keys[id].magnification)}",
                        class_="wm-aside",
                    ),
                    href=writer.place(id),
                    class_="wm-key-card",
                ),
            )
            for id in first_keys(library)
        ),
        class_="wm-key-cards",
        role="list",
    )


def _about(library: Library, key: str, brief: bool) -> str:
    about = plain(library, library.keys[key].about)
    return re.split(r"(?<=[.?!]) ", about, maxsplit=1)[0] if brief else about


def keys_page(library: Library) -> Page:
    """All keys."""
    writer = Writer(library, "keys/index.md")
    return page("keys/index.md", "keydata/keys", "Keys", [heading(1, "Keys"), key_cards(writer)])


def entries_page(library: Library) -> Page:
    """All entries, by theme and then by name."""
    writer = Writer(library, "entries/index.md")
    blocks: list[str] = [
        heading(1, "Entries"),
        el("p", f"{len(library.entries)} things one can meet in a drop of soil, and groups of such things."),
    ]
    for theme in library.vocabulary["theme"].values():
        entries = sorted((each for each in library.entries.values() if each.theme == theme.id), key=lambda each: each.name.lower())
        if entries:
            blocks += [heading(2, theme.label, theme.id), el("ul", *(_line(writer, each) for each in entries), class_="wm-entry-list")]
    return page("entries/index.md", "keydata/entries", "Entries", blocks)


def _line(writer: Writer, entry: Entry) -> Html:
    library = writer.library
    kind = library.vocabulary["entry-kind"][entry.kind].label
    feeding = f", {feeding_words(library, entry.feeding)}" if entry.feeding else ""
    return el(
        "li",
        writer.link(entry.id),
        *([" ", el("i", entry.scientific)] if entry.scientific else []),
        el("span", f" {kind}{feeding}", class_="wm-aside"),
    )


def terms_page(library: Library) -> Page:
    """The words of the trade, by the alphabet."""
    blocks: list[str] = [heading(1, "Words")]
    for term in sorted(library.terms.values(), key=lambda each: each.term.lower()):
        also = el("p", f"Also: {', '.join(term.also)}", class_="wm-aside") if term.also else None
        blocks += [heading(2, term.term, term.id), el("div", el("p", plain(library, term.means)), also, class_="wm-term-means")]
    return page("terms.md", _file(library, "terms", "keydata/terms.yaml"), "Words", blocks)


def cautions_page(library: Library) -> Page:
    """What can hurt, and what to do."""
    writer = Writer(library, "cautions.md")
    blocks: list[str] = [heading(1, "Take care")]
    for caution in library.cautions.values():
        blocks += [
            heading(2, caution.title, caution.id),
            el(
                "div",
                el("p", writer.rich(caution.text)),
                el("div", writer.rich(caution.defer), " ", writer.mark(caution.basis), class_="wm-said wm-defer"),
            ),
        ]
    return page("cautions.md", _file(library, "cautions", "keydata/cautions.yaml"), "Take care", [*blocks, writer.legend()])


def quantities_page(library: Library) -> Page:
    """Every threshold and constant, with what it rests on and which keys use it."""
    writer = Writer(library, "quantities.md")
    blocks: list[str] = [
        heading(1, "Figures"),
        el("p", "Every threshold and constant of the library. Each stands once; keys and texts use it from here."),
    ]
    for quantity in library.quantities.values():
        blocks += [
            heading(2, quantity.name, quantity.id),
            el(
                "div",
                el("div", el("strong", quantity_words(quantity)), " ", writer.mark(quantity.basis), class_="wm-said"),
                el("p", plain(library, quantity.about)),
            ),
        ]
    return page("quantities.md", _file(library, "quantities", "keydata/bench"), "Figures", [*blocks, writer.legend()])


def _file(library: Library, kind: str, otherwise: str) -> str:
    """The file things of one kind are read from; the first where there are several."""
    return next(_files(library, kind), otherwise)


def _files(library: Library, kind: str) -> Iterator[str]:
    return (name for (each, _), name in library.files.items() if each == kind)
