"""What a key ends at, as HTML: its name, what it eats and means, what would tell more, what to take care of."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.model import Entry, Key
from keytool.library.wording import feeding_words, meaning
from keytool.pages.couplets import Place, letter
from keytool.pages.html import Html, el, join
from keytool.pages.page_writer import Writer
from keytool.pages.plates import FOLDER


def end_html(writer: Writer, key: Key, end: str, place: Place) -> Html:
    """An end as the whole printed key shows it."""
    comes = [
        el("a", letter(key, couplet, lead), href=place.couplet(couplet.id))
        for couplet in key.couplets.values()
        for lead in couplet.leads.values()
        if lead.goes_to == end and not lead.couplet
    ]
    entry = writer.library.entries.get(end)
    return el(
        "article",
        el("h3", writer.link(end), id=f"end-{end}", tabindex="-1"),
        *(_of_entry(writer, key, entry) if entry else [el("p", "Another key: it goes on from here.")]),
        el("p", "Reached from ", join(comes, ", "), class_="label wm-reached"),
        class_="wm-end",
        data_end=end,
    )


def _of_entry(writer: Writer, key: Key, entry: Entry) -> Iterator[Html]:
    if entry.scientific and entry.scientific != entry.name:
        yield el("p", el("i", entry.scientific), class_="wm-names")
    if entry.feeding:
        yield el("div", feeding_words(writer.library, entry.feeding), " ", writer.mark(entry.feeding_basis), class_="wm-feeding")
    if entry.figure:
        portrait = el("img", src=writer.href(f"{FOLDER}/{entry.id}.svg"), alt="", loading="lazy", decoding="async")
        yield el("figure", portrait, class_="plate wm-end-plate", aria_hidden="true")
    yield el("p", writer.rich(entry.summary))
    yield from _means(writer, entry)
    if entry.would_tell:
        yield el("p", el("strong", "What would tell: "), writer.rich(entry.would_tell))
    yield from (writer.brief_caution(each) for each in entry.cautions if each not in key.cautions)


def _means(writer: Writer, entry: Entry) -> Iterator[Html]:
    """What an end tells about the soil, in brief: its own first word, and that of the nearest group that holds it."""
    for teller, said in meaning(writer.library, entry):
        who = None if teller is entry else join(["As all of ", writer.link(teller.id), ": "])
        yield el("div", who, writer.rich(said.text), " ", writer.mark(said.basis), class_="wm-means")
