"""The pages that list: keys, entries, terms, cautions, quantities and the bench method."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from keytool.library.model import Entry, Library
from keytool.library.wording import feeding_words, plain, quantity_words
from keytool.pages.eyepiece import at_low_power
from keytool.pages.html import Html, el
from keytool.pages.page import Page, heading, page
from keytool.pages.page_writer import Writer
from keytool.pages.thumbs import picture, thumb


def first_keys(library: Library) -> list[str]:
    """The ids of all keys, those that no other key leads to first: there one starts."""
    led_to = {lead.key for key in library.keys.values() for couplet in key.couplets.values() for lead in couplet.leads.values()}
    return sorted(library.keys, key=lambda id: (id in led_to, list(library.keys).index(id)))


def key_cards(writer: Writer, *, brief: bool = False) -> Html:
    """The keys with a picture and what each names, as rows; `brief` keeps to the first sentence."""
    return el("ul", *(_key(writer, library_key, brief) for library_key in first_keys(writer.library)), class_="keys", role="list")


def _key(writer: Writer, id: str, brief: bool) -> Html:
    library = writer.library
    key = library.keys[id]
    shown = next((library.entries[each] for each in key.scope if library.entries[each].figure), None)
    words = el(
        "span",
        el("strong", key.title),
        el("span", _about(library, id, brief)),
        el("span", f"{len(key.couplets)} questions · {writer.power(key.magnification)}", class_="label"),
        class_="t",
    )
    return el("li", el("a", thumb(writer, shown) if shown else None, words, href=writer.place(id)))


def _about(library: Library, key: str, brief: bool) -> str:
    about = plain(library, library.keys[key].about)
    return re.split(r"(?<=[.?!]) ", about, maxsplit=1)[0] if brief else about


def keys_page(library: Library) -> Page:
    """All keys."""
    writer = Writer(library, "keys/index.md")
    blocks = [heading(1, "Keys"), el("p", "One question at a time, from what you see to a name.", class_="lead"), key_cards(writer)]
    return page("keys/index.md", "keydata/keys", "Keys", blocks, kind="s-keys", description="All keys, and what each names.")


def entries_page(library: Library) -> Page:
    """All entries as a drawer of specimens, by theme and then by name; the script of the page adds a filter."""
    writer = Writer(library, "entries/index.md")
    used = [theme for theme in library.vocabulary["theme"].values() if any(each.theme == theme.id for each in library.entries.values())]
    blocks: list[str] = [
        heading(1, "Entries"),
        el("p", f"{len(library.entries)} things one can meet in a drop of soil, and groups of such things.", class_="lead"),
        el(
            "nav",
            el("ul", *(el("li", el("a", theme.label, href=f"#{theme.id}")) for theme in used), class_="themes", role="list"),
            class_="filter",
            aria_label="Themes",
            data_filter="name, word, or what it eats",
        ),
    ]
    for theme in used:
        entries = sorted((each for each in library.entries.values() if each.theme == theme.id), key=_general_first(library))
        head = heading(2, theme.label, theme.id).replace("</h2>", f' <span class="num">{len(entries)}</span></h2>')
        blocks += [
            head,
            at_low_power(writer, theme.id) or "",
            el("ul", *(_specimen(writer, each) for each in entries), class_="drawer", role="list"),
        ]
    blocks.append(el("script", src=writer.href("assets/lists.js"), defer=True))
    return page(
        "entries/index.md",
        "keydata/entries",
        "Entries",
        blocks,
        kind="s-index",
        description="Everything one can meet in a drop of soil, with pictures, by theme and by letter.",
    )


def _general_first(library: Library) -> Callable[[Entry], tuple[int, str]]:
    """Groups that stand in no other of their theme come first, then all by name."""
    return lambda entry: (0 if _is_top(library, entry) else 1, entry.name.lower())


def _is_top(library: Library, entry: Entry) -> bool:
    return entry.kind == "group" and not any(library.entries[each].theme == entry.theme for each in entry.within)


def _specimen(writer: Writer, entry: Entry) -> Html:
    """An entry with its picture: name and Latin name, each once; what is typed into the filter is looked for in `data-words` too."""
    library = writer.library
    words = " ".join(
        dict.fromkeys([*entry.also, feeding_words(library, entry.feeding), library.vocabulary["entry-kind"][entry.kind].label])
    )
    return el(
        "li",
        el(
            "a",
            el("span", picture(writer, entry), class_="plate"),
            el("span", *names(entry), class_="t"),
            href=writer.place(entry.id),
        ),
        data_words=words.strip().lower(),
    )


def names(entry: Entry) -> list[Html | str]:
    """The name, and the Latin name in italics where it is another one; a name that is Latin itself stands once, in italics."""
    if entry.scientific == entry.name:
        return [el("i", entry.name)]
    return [entry.name, *([el("i", entry.scientific)] if entry.scientific else [])]


def terms_page(library: Library) -> Page:
    """The words of the trade, by the alphabet."""
    blocks: list[str] = [heading(1, "Words")]
    for term in sorted(library.terms.values(), key=lambda each: each.term.lower()):
        also = el("p", f"Also: {', '.join(term.also)}", class_="wm-aside") if term.also else None
        blocks += [heading(2, term.term, term.id), el("p", plain(library, term.means)), also or ""]
    return page("terms.md", _file(library, "terms", "keydata/terms.yaml"), "Words", blocks, kind="s-words")


def cautions_page(library: Library) -> Page:
    """What can hurt, and what to do."""
    writer = Writer(library, "cautions.md")
    blocks: list[str] = [heading(1, "Take care")]
    for caution in library.cautions.values():
        blocks += [
            heading(2, caution.title, caution.id),
            el("p", writer.rich(caution.text)),
            el("div", el("span", writer.rich(caution.defer), class_="t"), " ", writer.mark(caution.basis), class_="wm-said wm-defer"),
        ]
    return page("cautions.md", _file(library, "cautions", "keydata/cautions.yaml"), "Take care", blocks)


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
            el("div", el("strong", quantity_words(quantity), class_="t"), " ", writer.mark(quantity.basis), class_="wm-said"),
            el("p", plain(library, quantity.about)),
        ]
    return page("quantities.md", _file(library, "quantities", "keydata/bench"), "Figures", blocks)


def _file(library: Library, kind: str, otherwise: str) -> str:
    """The file things of one kind are read from; the first where there are several."""
    return next(_files(library, kind), otherwise)


def _files(library: Library, kind: str) -> Iterator[str]:
    return (name for (each, _), name in library.files.items() if each == kind)
