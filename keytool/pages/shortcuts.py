"""Rules of thumb on the page of the key that does better, shown as what they are."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.model import Key, Library, Shortcut
from keytool.library.wording import feeding_words
from keytool.pages.html import Html, el
from keytool.pages.page_writer import Writer


def shortcuts(writer: Writer, key: Key) -> Iterator[Html]:
    """The shortcuts of one key, each folded to its title and the number of entries it fails at."""
    for shortcut in writer.library.shortcuts.values():
        if shortcut.key == key.id:
            yield el(
                "details",
                el("summary", f"{shortcut.title}: {_fails(shortcut)}"),
                el(
                    "div",
                    el(
                        "div",
                        "Common practice, not this key: ",
                        writer.rich(shortcut.about),
                        " ",
                        writer.mark(shortcut.basis),
                        class_="wm-said",
                    ),
                    el("ul", *(_rule(writer, shortcut, rule) for rule in shortcut.rules)),
                    id=f"shortcut-{shortcut.id}",
                    class_="wm-misled",
                ),
                class_="wm-shortcut",
            )


def _fails(shortcut: Shortcut) -> str:
    count = len({each.entry for each in shortcut.fails})
    return f"fails at {count} {'entry' if count == 1 else 'entries'}"


def failures_at(library: Library, entry: str) -> list[tuple[Shortcut, int]]:
    """The shortcuts that go wrong at an entry, each with the position of that failure."""
    return [
        (shortcut, index)
        for shortcut in library.shortcuts.values()
        for index, failure in enumerate(shortcut.fails)
        if failure.entry == entry
    ]


def _rule(writer: Writer, shortcut: Shortcut, rule: str) -> Html:
    stated = shortcut.rules[rule]
    fails = [failure for failure in shortcut.fails if failure.rule == rule]
    return el(
        "li",
        el("p", el("q", writer.rich(stated.text)), f" says: {feeding_words(writer.library, stated.says)}."),
        el(
            "details",
            el("summary", f"Fails at {len(fails)}"),
            el(
                "ul",
                *(
                    el(
                        "li",
                        writer.link(each.entry),
                        ": ",
                        writer.rich(each.said.text),
                        " ",
                        writer.mark(each.said.basis),
                        class_="wm-said",
                    )
                    for each in fails
                ),
            ),
            class_="wm-fails",
        )
        if fails
        else None,
    )
