"""Where several groups hold an entry, they agree on what it inherits, or it says so itself."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.checks.within import HOLDING_KINDS
from keytool.library.finding import Finding
from keytool.library.load import Loaded

NAME = "inherited"


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each character on which two groups disagree and their member is silent."""
    entries = loaded.library.entries
    for entry in entries.values():
        parents = [entries[parent] for parent in entry.within if parent in entries and entries[parent].kind in HOLDING_KINDS]
        file = loaded.files.by_id["entry", entry.id]
        said: dict[str, str] = {}
        for parent in parents:
            for name, statement in parent.statements.items():
                first = said.setdefault(name, parent.id)
                if name not in file.data.get("characters", {}) and entries[first].statements[name].showing != statement.showing:
                    yield Finding(
                        NAME,
                        file.place(("within",)),
                        f"'{first}' and '{parent.id}' say different things about '{name}'.",
                        tip=f"Say under characters: what '{entry.id}' shows of '{name}'.",
                    )
