"""What is met most, at one scale: at low power what is large enough there, at high power what fits its field."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from keytool.figures.field import Optics, optics
from keytool.figures.in_field import is_in_field, seen_of
from keytool.figures.whole_body import whole_of
from keytool.library.model import Entry, Library
from keytool.library.wording import number
from keytool.pages.figure_files import Bare, FigureFiles
from keytool.pages.html import Html, el
from keytool.pages.page import Page, page
from keytool.pages.page_writer import Writer
from keytool.pages.point_at import POWERS

PATH = "gallery.md"
ACROSS = 360.0
"""How wide a field would be on this page, px: at either power a thing is as large as in a field that fills a phone."""
LEAST = 9.0
"""What comes out shorter than this, px, is no more than a speck here and is shown at the other power."""
MET_MOST = ("very-common", "common")
"""The classes of commonness that are shown: what one may look through must be short enough to be looked through."""


@dataclass(frozen=True, slots=True)
class Shown:
    """A drawing at true size and all entries that are drawn alike."""

    bare: Bare
    entries: tuple[Entry, ...]


def gallery_page(library: Library, figures: FigureFiles) -> Page:
    """The page: a part for each power, in it the themes, in each the drawings from small to large."""
    writer = Writer(library, PATH)
    parts = [part for power in POWERS for part in _part(writer, figures, optics(library, power))]
    return page(
        PATH,
        "keydata/entries",
        "What is that? All at one scale",
        [
            el(
                "section",
                el("link", rel="stylesheet", href=writer.href("assets/describe.css")),
                el(
                    "div",
                    el("h1", "What is that?"),
                    el(
                        "p",
                        "What is met most in a drop, side by side at one scale: as large as in a round field that is as wide as "
                        "a phone. Tap what comes nearest. The rarer things are in the ",
                        el("a", "index", href=writer.href("entries/index.html")),
                        ".",
                        class_="lead",
                    ),
                    class_="body",
                ),
                class_="part first",
            ),
            *parts,
        ],
        description="Drawings of what is met most in a soil drop, at true relative size, at 40× and at 400×.",
        kind="s-gallery",
    )


def _part(writer: Writer, figures: FigureFiles, seen: Optics) -> Iterator[Html]:
    library, scale = writer.library, ACROSS / seen.diameter
    bar = 1000.0 if seen.diameter > 1000 else 100.0
    yield el(
        "section",
        el("h2", f"{number(seen.power)}×", id=f"at-{number(seen.power)}"),
        el(
            "div",
            el("p", el("span", _length(bar), class_="bar", style=f"--len:{bar * scale:.0f}px"), " in every drawing below"),
            class_="body",
        ),
        class_="part wm-scale-part",
    )
    for theme, word in library.vocabulary["theme"].items():
        entries = [each for each in library.entries.values() if each.theme == theme]
        if found := shown(writer, figures, entries, seen, scale):
            yield el(
                "section",
                el("h2", word.label),
                el("div", el("ul", *(_item(writer, each) for each in found), class_="wm-gallery wide", role="list"), class_="body"),
                class_="part",
                data_search_exclude=True,
            )


def shown(writer: Writer, figures: FigureFiles, entries: list[Entry], seen: Optics, scale: float) -> list[Shown]:
    """What of these is shown at this power, small to large; drawings that come out the same stand once."""
    alike: dict[str, tuple[Bare, float, list[Entry]]] = {}
    for entry in entries:
        if entry.commonness not in MET_MOST or not is_in_field(entry):
            continue
        whole = whole_of(entry, 0.9 * seen.diameter)
        if whole is None:
            continue
        longest = seen_of(whole).longest
        if not _belongs(longest, seen, scale):
            continue
        bare = figures.true_size(writer, whole, scale, pen=0.8)
        alike.setdefault(str(bare.image), (bare, longest, []))[2].append(entry)
    ordered = sorted(alike.values(), key=lambda each: (each[1], each[2][0].id))
    return [Shown(bare, tuple(entries)) for bare, _, entries in ordered]


def _belongs(longest: float, seen: Optics, scale: float) -> bool:
    """Whether a thing is large enough to be known here; what does not fit the high-power field is known at the low one."""
    return longest * scale >= LEAST and (seen.diameter > 1000 or longest <= seen.diameter)


def _item(writer: Writer, each: Shown) -> Html:
    first, *others = each.entries
    return el(
        "li",
        el("a", el("span", each.bare.image, class_="plate"), el("span", first.name, class_="t"), href=writer.place(first.id)),
        el(
            "details",
            el("summary", f"and {len(others)} alike"),
            el("ul", *(el("li", writer.link(other.id)) for other in others), class_="plain"),
        )
        if others
        else None,
    )


def _length(um: float) -> str:
    return f"{number(um / 1000)} mm" if um >= 1000 else f"{number(um)} µm"
