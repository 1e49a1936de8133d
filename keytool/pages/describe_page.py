"""What do you see? Point at it, or say it; then what was seen, what it probably is, and what to look at next, in one column."""

from __future__ import annotations

from keytool.library.model import Library
from keytool.pages.figure_files import FigureFiles
from keytool.pages.html import Html, el, join
from keytool.pages.index_pages import first_keys
from keytool.pages.page import Page, page
from keytool.pages.page_writer import Writer
from keytool.pages.point_at import fields, has_optics

PATH = "describe.md"
SAID = ("springs open", "see-through", "tail like a hair")
"""Words shown as examples of what may be typed."""


def describe_page(library: Library, figures: FigureFiles) -> Page:
    """The page. It arrives with the field to point at; each thing in it is a link to what it most likely is, until the script listens."""
    writer = Writer(library, PATH)
    first = first_keys(library)[0]
    return page(
        PATH,
        "keydata/bench/pictures.yaml",
        "What do you see?",
        [
            el(
                "section",
                el("link", rel="stylesheet", href=writer.href("assets/describe.css")),
                el("h1", "What do you see?", class_="side"),
                el(
                    "div",
                    el("p", "Point at what comes nearest. A wrong guess does no harm.", class_="lead"),
                    fields(writer, figures) if library.pictures and has_optics(library) else None,
                    el("div", _box(), class_="wm-say-here"),
                    el("div", *_said(), class_="ways wm-people-say", hidden=True),
                    _sample(library),
                    el(
                        "p",
                        el("a", "Rather be asked? Start the first look", href=writer.href(f"keys/{first}.html")),
                        class_="asked",
                    ),
                    el(
                        "p",
                        el("a", "Or look everything through, at one scale", href=writer.href("gallery.html")),
                        class_="asked",
                    )
                    if has_optics(library)
                    else None,
                    class_="body",
                ),
                class_="part first wm-start",
                id="start",
            ),
            el(
                "section",
                el("p", "", class_="wm-message label", role="status"),
                el("div", class_="wm-told", data_count=bool(library.bench.tally), hidden=True),
                el(
                    "div",
                    el("label", el("span", "Say what you see", class_="unseen"), _input("What else do you see?"), class_="say"),
                    el("button", "Point", type="button", class_="btn plain", data_does="point"),
                    class_="dock wm-say-dock",
                    hidden=True,
                ),
                el("script", src=writer.href("assets/describe.js"), defer=True),
                class_="part wm-raw",
            ),
        ],
        description="Tell what you saw, in any order and in your own words, and see what it probably is.",
        kind="s-look",
        own_dock=True,
    )


def _box() -> Html:
    return el("label", el("span", "Say what you see", class_="unseen"), _input("or say it: tail like a hair"), class_="say")


def _input(hint: str) -> Html:
    return el("input", type="text", placeholder=hint, autocomplete="off", autocapitalize="off", enterkeyhint="done")


def _said() -> list[Html]:
    words = [el("button", each, type="button", data_say=each) for each in SAID]
    return [el("span", "People say", class_="label"), *words]


def _sample(library: Library) -> Html | None:
    """Where the drop is from: it changes what is likely. Hidden until the script can use it."""
    kinds = library.vocabulary.get("sample-kind", {})
    if not kinds:
        return None
    options = [el("option", "not said", value=""), *(el("option", each.label, value=each.id) for each in kinds.values())]
    return el("label", "The drop is from ", el("select", join(options)), class_="wm-sample small", hidden=True)
