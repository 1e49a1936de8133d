"""Every character a key asks about can be seen at the key's magnification."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.checks.couplets import couplets
from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.message import Message

NAME = "visible"
NOT_VISIBLE = Message(
    NAME,
    "'{name}' shows only at {needed}×, but this key is for {power}×.",
    tip="Ask for something that shows there, or give the key the greater magnification.",
)


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each couplet that asks for more than the key's magnification shows."""
    for at in couplets(loaded):
        for id in at.couplet.characters:
            needed = loaded.library.characters[id].magnification
            if needed > at.key.magnification:
                first = next(lead.id for lead in at.couplet.leads.values() if id in lead.when)
                yield NOT_VISIBLE.at(at.place("leads", first, "when", id, of_key=True), name=id, needed=needed, power=at.key.magnification)
