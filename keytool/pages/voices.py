"""Where the bench rule and what has been published differ: both said, kept apart, and what to do with it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from keytool.library.model import Library, Said, Voices
from keytool.pages.html import Html, el, join
from keytool.pages.page import Page, heading, page
from keytool.pages.writer import Writer

PRACTICE, PUBLISHED = "Said at the bench", "Published or worked out"


def voices_page(library: Library) -> Page:
    """Every such question, with the entries and keys it bears on."""
    writer = Writer(library, "voices.md")
    blocks: list[str] = [
        heading(1, "Two voices"),
        el("p", "Where the bench rule and what has been published differ. Neither is shouted down."),
    ]
    for each in library.voices.values():
        where = [writer.link(id) for id in (*each.entries, *each.keys)]
        blocks += [
            heading(2, each.title, each.id),
            el("div", _both(writer, each), el("p", "Bears on ", join(where, ", "), ".", class_="wm-aside") if where else None),
        ]
    return page("voices.md", "keydata/bench/voices.yaml", "Two voices", [*blocks, writer.legend()])


def voices_on(writer: Writer, voices: Iterable[Voices]) -> Iterator[Html]:
    """These questions as parts of another page, each folded to its title."""
    for each in voices:
        yield el("details", el("summary", each.title), _both(writer, each), class_="wm-voices")


def voice(writer: Writer, kind: str, title: str, said: Sequence[Said]) -> Html | None:
    """One voice: "practice" or "published", with its statements; None where it says nothing."""
    if not said:
        return None
    return el(
        "div",
        el("p", el("strong", title)),
        el("ul", *(writer.said(each) for each in said), class_="wm-list"),
        class_=f"wm-voice wm-voice-{kind}",
    )


def _both(writer: Writer, these: Voices) -> Html:
    return el(
        "div",
        voice(writer, "practice", PRACTICE, these.practice),
        voice(writer, "published", PUBLISHED, these.published),
        el("p", el("strong", "So: "), writer.rich(these.so)),
    )
