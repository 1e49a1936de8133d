"""Every drawing on sheets by theme, so that anyone can look them through; each a file of its own that loads when it comes into sight."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from keytool.figures.library_figures import of_entry, resolved
from keytool.figures.whole_body import kind_named
from keytool.library.model import Character, Entry, Library
from keytool.library.wording import number
from keytool.pages.html import Html, el, join
from keytool.pages.index_pages import first_keys
from keytool.pages.page import Asset, Page, heading, page
from keytool.pages.page_writer import Writer
from keytool.pages.plates import FOLDER, as_file, portrait, portrait_path
from keytool.pages.thumbs import small_asset

SAY_SO = "a-drawing-is-wrong"
"""The part of the guide for contributors that says what to do about it."""


def plate_assets(library: Library, entries: Iterable[Entry]) -> list[Asset]:
    """The drawing of each entry as SVG files: `drawings/<entry>.svg`, and small, without a bar, in `drawings/small/`."""
    drawings = {entry.id: of_entry(library, entry) for entry in entries}
    return [
        asset
        for id, drawing in drawings.items()
        if drawing
        for asset in (
            Asset(portrait_path(id), as_file(portrait(drawing).svg), library.files["entry", id]),
            small_asset(library.entries[id], drawing, library.files["entry", id]),
        )
    ]


def themes(library: Library) -> list[str]:
    """The themes that have entries, in the order of the vocabulary."""
    used = {entry.theme for entry in library.entries.values()}
    return [theme for theme in library.vocabulary["theme"] if theme in used]


def sheets_page(library: Library) -> Page:
    """The page that says where the drawings are."""
    writer = Writer(library, f"{FOLDER}/index.md")
    lines = [
        el(
            "li",
            el("a", library.vocabulary["theme"][id].label, href=_place(writer, id)),
            el("span", f" {_count(library, id)}", class_="wm-aside"),
        )
        for id in themes(library)
    ]
    drawn = sorted((each for each in library.characters.values() if _drawn_states(each)), key=lambda each: each.name.lower())
    return page(
        f"{FOLDER}/index.md",
        "keydata/entries",
        "All drawings",
        [
            heading(1, "All drawings"),
            el(
                "p",
                "Every drawing is made from the entry's own figures, to scale, by a program. A program does not wince; a person who knows "
                "the animal does. Look them through, and say which are wrong.",
            ),
            heading(2, "Entries", "entries"),
            el("ul", *lines, class_="wm-entry-list"),
            heading(2, "What characters may show", "states"),
            el("ul", *(el("li", _states(writer, each)) for each in drawn), class_="wm-columns"),
            heading(2, "Questions of the keys", "leads"),
            el("p", "Beside the answers, at one scale: ", join((writer.link(each) for each in first_keys(library)), ", "), "."),
            heading(2, "On paper", "paper"),
            el(
                "p",
                "Everything on one PDF, and each kind of drawing with each of its choices: ",
                el("code", "wetmount plate -o drawings.pdf"),
                ".",
            ),
        ],
        description="Every drawing of the library, to be looked through.",
    )


def sheet_page(library: Library, theme: str) -> Page:
    """The sheet of a theme."""
    writer = Writer(library, f"{FOLDER}/{theme}.md")
    title = f"Drawings: {library.vocabulary['theme'][theme].label}"
    entries = sorted((each for each in library.entries.values() if each.theme == theme), key=lambda each: each.name.lower())
    missing = [writer.link(each.id) for each in entries if not each.figure]
    return page(
        f"{FOLDER}/{theme}.md",
        f"keydata/entries/{theme}",
        title,
        [
            heading(1, title),
            el(
                "p",
                "Each has its own scale bar; they are not at one scale. ",
                el("a", "All drawings", href=writer.href(f"{FOLDER}/index.html")),
                ".",
            ),
            el("div", *(_figure(writer, each) for each in entries if each.figure), class_="wm-sheet", data_search_exclude=True),
            el("p", "No drawing: ", join(missing, ", "), ".") if missing else "",
        ],
    )


def _figure(writer: Writer, entry: Entry) -> Html | None:
    drawing = of_entry(writer.library, entry)
    if drawing is None:
        return None
    made = portrait(drawing)
    image = el(
        "img",
        src=writer.href(portrait_path(entry.id)),
        width=f"{made.size[0]:.0f}",
        height=f"{made.size[1]:.0f}",
        loading="lazy",
        alt="",
    )
    return el(
        "figure",
        el("a", el("span", image, class_="plate"), el("span", entry.name), href=writer.place(entry.id)),
        el(
            "details",
            el("summary", "This drawing is wrong", el("span", f": {entry.name}", class_="wm-unseen")),
            el("p", "Drawn as ", el("code", entry.figure.kind if entry.figure else ""), ": ", ", ".join(_params(entry)), "."),
            el("p", "From ", el("code", writer.library.files["entry", entry.id]), ". "),
            el("p", el("a", "How to say so", href=writer.href("contribute/index.html", SAY_SO))),
            class_="wm-drawn-from",
        ),
        id=entry.id,
    )


def _params(entry: Entry) -> Iterator[str]:
    """What the drawing was told, in the words of its kind."""
    if entry.figure is None or not entry.figure.params:
        yield "as it comes"
        return
    lengths = {each.name for each in kind_named(entry.figure.draws).params if each.type == "um"}
    for name, value in resolved(entry.figure, entry).items():
        words = ("yes" if value else "no") if isinstance(value, bool) else number(value) if isinstance(value, int | float) else str(value)
        yield f"{name} {words}{' µm' if name in lengths else ''}"


def _place(writer: Writer, theme: str) -> str:
    return writer.href(f"{FOLDER}/{theme}.html")


def _count(library: Library, theme: str) -> str:
    entries = [each for each in library.entries.values() if each.theme == theme]
    drawn = sum(1 for each in entries if each.figure)
    return f"{drawn} drawing{'' if drawn == 1 else 's'}" + (f", {len(entries) - drawn} without" if drawn < len(entries) else "")


def _drawn_states(character: Character) -> int:
    return sum(1 for each in character.states.values() if each.figure)


def _states(writer: Writer, character: Character) -> Html:
    return join([writer.link(character.id), f" ({_drawn_states(character)})"])
