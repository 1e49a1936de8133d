"""Where several groups hold an entry, they agree on what it inherits, or it says so itself."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.closed_lists import holding_kinds
from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.message import Message

NAME = "inherited"
PARENTS_DIFFER = Message(
    NAME, "'{first}' and '{parent}' say different things about '{name}'.", tip="Say under characters: what '{entry}' shows of '{name}'."
)


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each character on which two groups disagree and their member is silent."""
    entries, holding = loaded.library.entries, holding_kinds(loaded.library.vocabulary)
    for entry in entries.values():
        parents = [entries[parent] for parent in entry.within if parent in entries and entries[parent].kind in holding]
        file = loaded.files.by_id["entry", entry.id]
        said: dict[str, str] = {}
        for parent in parents:
            for name, statement in parent.statements.items():
                first = said.setdefault(name, parent.id)
                if name not in file.data.get("characters", {}) and entries[first].statements[name].showing != statement.showing:
                    yield PARENTS_DIFFER.at(file.place(("within",)), first=first, parent=parent.id, name=name, entry=entry.id)
