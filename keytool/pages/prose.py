"""The pages written by hand in `site/pages`, with what the library fills in."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from functools import partial
from pathlib import Path

from keytool.library.model import Library
from keytool.library.wording import name_of
from keytool.pages.html import Html, el
from keytool.pages.index_pages import first_keys, key_cards
from keytool.pages.page import Page
from keytool.pages.page_writer import Writer, legend_rows
from keytool.pages.plates import portrait_path


def prose_paths(site: Path) -> list[str]:
    """The path of each page under `site/pages`."""
    folder = site / "pages"
    return [path.relative_to(folder).as_posix() for path in sorted(folder.rglob("*.md"))]


def prose_pages(library: Library, site: Path, slots: Mapping[str, str]) -> Iterator[Page]:
    """Each page under `site/pages`, its slots (`<!-- keys -->`) filled by the library or by those given."""
    folder = site / "pages"
    for name in prose_paths(site):
        text = (folder / name).read_text(encoding="utf-8")
        writer = Writer(library, name)
        for slot, fill in SLOTS.items():
            mark = f"<!-- {slot} -->"
            if mark in text:
                text = text.replace(mark, fill(writer))
        for slot, filling in slots.items():
            text = text.replace(f"<!-- {slot} -->", filling)
        yield Page(name, text, f"site/pages/{name}")


def _start(writer: Writer) -> Html:
    """Both ways in: point at what one sees, or be asked."""
    id = first_keys(writer.library)[0]
    return el(
        "p",
        el("a", "What do you see?", href=writer.href("describe.html"), class_="btn main"),
        el("a", f"{name_of(writer.library, id)}: be asked", href=writer.place(id), class_="btn"),
        class_="acts",
    )


def _portrait(writer: Writer) -> Html:
    """The round window on the first page: of the first theme, the thing most is said of."""
    themes = list(writer.library.vocabulary["theme"])
    drawn = max(
        (each for each in writer.library.entries.values() if each.figure),
        key=lambda each: (-themes.index(each.theme), len(each.statements), each.id),
        default=None,
    )
    if drawn is None:
        return Html("")
    image = el("img", src=writer.href(portrait_path(drawn.id)), alt="", width="196", height="196")
    return el("a", el("span", image, class_="lens"), el("span", drawn.name, class_="label"), href=writer.place(drawn.id), class_="ring")


def _counts(writer: Writer) -> Html:
    library = writer.library
    return el(
        "p",
        f"wetmount {library.version}: {len(library.keys)} keys, {len(library.entries)} entries, {len(library.characters)} characters, "
        f"{len(library.sources)} sources.",
        class_="label",
    )


SLOTS: dict[str, Callable[[Writer], Html]] = {
    "start": _start,
    "keys": partial(key_cards, brief=True),
    "portrait": _portrait,
    "counts": _counts,
    "marks": lambda writer: el("div", legend_rows(writer.library), class_="wm-marks"),
}
