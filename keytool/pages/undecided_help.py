"""What to change at the microscope when several questions in a row could not be told: a folded part of the page of a key."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.model import Word
from keytool.pages.html import Html, el
from keytool.pages.page_writer import Writer


def undecided_help(writer: Writer) -> Html:
    """The words of the closed list `in-doubt`, each with where it is said in full. The script of the page shows its part."""
    words = writer.library.vocabulary["in-doubt"].values()
    return el(
        "details",
        el("summary", writer.library.say("stuck")),
        el("ul", *(el("li", each.label, *_source(writer, each)) for each in words)),
        class_="wm-stuck",
        data_search_exclude=True,
    )


def _source(writer: Writer, word: Word) -> Iterator[Html | str]:
    """A link to the step of a guide, or to the character, that has the id of the word; none where the library does not hold it."""
    library = writer.library
    for guide in library.guides.values():
        if any(step.id == word.id for step in guide.steps):
            yield " "
            yield el("a", guide.title, href=writer.href(f"guides/{guide.id}.html", f"step-{word.id}"))
    if word.id in library.characters:
        yield " "
        yield writer.link(word.id)
