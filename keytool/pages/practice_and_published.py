"""Where the bench rule and what has been published differ: both said, kept apart, and what to do with it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from keytool.library.basis import weakest
from keytool.library.model import Claim, Library, Voices
from keytool.pages.html import Html, el, join
from keytool.pages.page import Page, heading, page
from keytool.pages.page_writer import Writer

VOICES = {
    "practice": ("Said at the bench", ("common-practice",)),
    "published": ("Published or worked out", ("published", "computed")),
    "memory": ("From memory, no source at hand", ("memory",)),
}
"""Each voice: what it is called on a page, and the weakest basis of what it says."""


def voices_page(library: Library) -> Page:
    """Every such question, with the entries and keys it bears on."""
    writer = Writer(library, "voices.md")
    blocks: list[str] = [
        heading(1, "Two voices"),
        el("p", "Where the bench rule and what has been published differ.", class_="lead"),
    ]
    for each in library.voices.values():
        where = [writer.link(id) for id in (*each.entries, *each.keys)]
        blocks += [
            heading(2, each.title, each.id),
            _both(writer, each),
            el("p", "Bears on ", join(where, ", "), ".", class_="label") if where else "",
        ]
    return page("voices.md", "keydata/bench/voices.yaml", "Two voices", blocks)


def voices_on(writer: Writer, questions: Iterable[Voices]) -> Iterator[Html]:
    """These questions as parts of another page, each folded to its title."""
    for each in questions:
        yield el("details", el("summary", each.title), _both(writer, each), class_="wide wm-voices")


def voices(writer: Writer, said: Sequence[Claim]) -> Iterator[Html]:
    """Statements kept apart by what they rest on: what practice says, what is published or computed, what is only remembered."""
    for kind, (title, bases) in VOICES.items():
        these = [each for each in said if weakest(each.basis).kind in bases]
        if these:
            yield el(
                "div",
                el("p", el("strong", title)),
                el("ul", *(writer.said(each) for each in these), class_="wm-list"),
                class_=f"wm-voice wm-voice-{kind}",
            )


def _both(writer: Writer, these: Voices) -> Html:
    return join([*voices(writer, (*these.practice, *these.published)), el("p", el("strong", "So: "), writer.rich(these.so))])
