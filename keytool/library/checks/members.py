"""An entry of kind group holds members."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.message import Message

NAME = "members"
NO_MEMBERS = Message(
    NAME, "No entry stands within the group '{entry}'.", tip="Write a member with within: [{entry}], or give this entry another kind."
)


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each empty group. Nothing is said while a file is broken, since it may be a member."""
    for entry in loaded.library.entries.values():
        if entry.kind == "group" and not loaded.library.is_group(entry.id) and not loaded.files.broken:
            yield NO_MEMBERS.at(loaded.files.place("entry", entry.id, ("kind",)), entry=entry.id)
