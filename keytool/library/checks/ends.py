"""A key ends at something in its scope, in its own theme, or at a group."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.checks.couplets import couplets
from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.messages import listed
from keytool.library.model import Entry, Key, Library

NAME = "ends"
OTHER_THEME = Message(
    NAME,
    "'{end}' is of the theme '{theme}', which this key does not treat.",
    allowed="an entry of the theme {themes}, or a group",
    tip="Name another end, or add a group of that theme to the scope.",
)


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each end that is a single entry outside the scope and of a theme the key does not treat."""
    library = loaded.library
    for at in couplets(loaded):
        if all(group in library.entries for group in at.key.scope):
            themes = list(dict.fromkeys(library.entries[group].theme for group in at.key.scope))
            for lead in at.couplet.leads.values():
                end = library.entries.get(lead.end)
                if end and end.theme not in themes and not _is_welcome(library, at.key, end):
                    yield OTHER_THEME.at(at.place("leads", lead.id, "end"), end=end.id, theme=end.theme, themes=listed(themes))


def _is_welcome(library: Library, key: Key, end: Entry) -> bool:
    """Whether an end of another theme is in place: a group, or itself in the scope."""
    return end.kind == "group" or library.is_group(end.id) or bool(library.ancestry(end.id) & set(key.scope))
