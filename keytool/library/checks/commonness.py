"""Every entry that can lie under the lens says how common it is; a group may."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.messages import listed

NAME = "commonness"
NOT_SAID = Message(
    NAME,
    "'{entry}' does not say how common it is.",
    allowed="{classes}",
    tip="Add commonness: {{class: ..., basis: ...}}; an estimate from memory will do.",
)


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each entry without members and without `commonness`."""
    for entry in loaded.library.entries.values():
        holds = loaded.library.is_group(entry.id)
        if not (holds or entry.commonness or entry.kind == "group" or loaded.files.broken):
            file = loaded.files.by_id["entry", entry.id]
            yield NOT_SAID.at(file.place(("id",), of_key=True), entry=entry.id, classes=listed(loaded.library.vocabulary["commonness"]))
