"""The drawing of an entry for its page, its keys and its look-alikes: drawn once, however many pages show it."""

from __future__ import annotations

import json

from keytool.figures import drawn
from keytool.figures.shapes import Drawing
from keytool.library.model import Entry, Library
from keytool.library.show import plain

_kept: dict[tuple[str, ...], Drawing | None] = {}


def of_entry(library: Library, entry: Entry) -> Drawing | None:
    """The drawing of an entry, to scale; None where it has none."""
    if entry.figure is None:
        return None
    asked = (entry.figure.kind, json.dumps(drawn.resolved(entry.figure, entry)), entry.name, plain(library, entry.summary))
    if asked not in _kept:
        _kept[asked] = drawn.of_entry(library, entry)
    return _kept[asked]
