"""The page of a key: its first question, readable and answerable before any script; the rest comes as data when it is needed."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.identify import Ground
from keytool.library.model import Key
from keytool.library.wording import plain
from keytool.pages.couplets import Place, couplet_html
from keytool.pages.eyepiece import at_low_power
from keytool.pages.figure_files import FigureFiles
from keytool.pages.html import Html, el
from keytool.pages.key_data import data_path
from keytool.pages.movement import moving_leads
from keytool.pages.page import Page, page
from keytool.pages.page_writer import Writer
from keytool.pages.undecided_help import undecided_help

WRITING_DOWN = "writing-it-down"
"""The guide to go to with a name in hand."""


def key_page(ground: Ground, figures: FigureFiles) -> Page:
    """The page one starts a key on.

    It holds one couplet. Its leads are links into the whole printed key, so that it is a key without any script; with one
    they are answers, and each next question takes the place of the one before.
    """
    library, key = ground.library, ground.key
    writer = Writer(library, f"keys/{key.id}.md")
    place = Place(writer.href(f"keys/whole/{key.id}.html"))
    first = key.couplets[key.first]
    return page(
        f"keys/{key.id}.md",
        library.files["key", key.id],
        key.title,
        [
            el(
                "section",
                el("link", rel="stylesheet", href=writer.href("assets/key.css")),
                el("h1", key.title, class_="unseen"),
                el("p", class_="wm-message label", role="status"),
                el("script", src=writer.href("assets/fit.js")),
                couplet_html(writer, figures, key, first, place, moving_leads(ground, first), now=True),
                class_="part first wm-key",
                data_key=key.id,
                data_first=key.first,
                data_whole=place.whole,
                data_count=writer.href("count.html") if library.bench.tally else None,
                data_writing=writer.place(WRITING_DOWN) if WRITING_DOWN in library.guides else None,
                aria_label="The question",
            ),
            _dock(writer, place, key),
            el(
                "section",
                el("h2", "Before you start"),
                el("div", before(writer, key), *_at_low_power(writer, key), class_="body"),
                class_="part wm-before-part",
                data_search_exclude=True,
            ),
            el("section", el("h2", "Stuck?"), el("div", undecided_help(writer), class_="body"), class_="part wm-stuck-part", hidden=True),
            el(
                "section",
                el("h2", "The key"),
                el("div", _ways(place, key), class_="body"),
                el("script", src=writer.href(data_path(key.id)), defer=True),
                el("script", src=writer.href("assets/key.js"), defer=True),
                class_="part wm-ways-part",
            ),
        ],
        description=plain(library, key.about),
        kind="s-key",
        own_dock=True,
    )


def _at_low_power(writer: Writer, key: Key) -> Iterator[Html]:
    """What the low power shows of the themes that the key treats."""
    entries = writer.library.entries
    for theme in dict.fromkeys(entries[each].theme for each in key.scope):
        if field := at_low_power(writer, theme):
            yield field


def before(writer: Writer, key: Key, *, is_open: bool = False) -> Html:
    """What to know before the first question: what the key is for, how to begin, and what to take care of."""
    titles = ", ".join(writer.library.cautions[each].title.lower() for each in key.cautions)
    return el(
        "details",
        el("summary", el("span", "How to begin"), el("span", f"Take care: {titles}", class_="wm-take-care") if titles else None),
        el("p", writer.rich(key.about)),
        el("ul", *(el("li", writer.rich(each)) for each in key.before)) if key.before else None,
        *(writer.caution(each) for each in key.cautions),
        el(
            "p",
            f"Use {writer.power(key.magnification)}. For each question take the one statement that "
            "fits what you see and go where it says. The drawings of one question are to one scale unless it says otherwise.",
        ),
        class_="wm-before",
        open=is_open,
    )


def _ways(place: Place, key: Key) -> Html:
    return el(
        "p",
        el("a", "The whole key, printed", href=place.couplet(key.first)),
        " has every question with its numbers, to be read, learnt or put on paper.",
        class_="wm-whole-link",
    )


def _dock(writer: Writer, place: Place, key: Key) -> Html:
    """What is pressed most, at the thumb. Links until the script makes them buttons of the same size."""
    return el(
        "section",
        el(
            "div",
            el("a", "Keys", href=writer.href("keys/index.html"), class_="btn plain", data_does="back"),
            el("a", "I also saw…", href=writer.href("describe.html"), class_="btn", data_does="also"),
            el("a", "Cannot tell", href=place.couplet(key.first), class_="btn", data_does="cannot-tell"),
            class_="dock wm-walk-dock",
        ),
        class_="part wm-raw",
    )
