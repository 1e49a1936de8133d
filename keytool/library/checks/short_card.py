"""What the short card shows is there and has a drawing."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.checks.unknown_ids import unknown
from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.message import Message

NAME = "short-card"
NO_DRAWING = Message(NAME, "'{entry}' has no drawing.", tip="Name an entry of the group that has one as draw:.")
FILE = "short-card.yaml"


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each entry, key or caution that does not exist, and for each entry shown that has no drawing."""
    card = loaded.library.short_card
    for number, met in enumerate(card.met):
        places = {name: loaded.files.place("short-card", FILE, ("met", number, name)) for name in ("entry", "draw", "key")}
        yield from unknown(loaded, NAME, "entry", met.entry, places["entry"])
        yield from unknown(loaded, NAME, "entry", met.draw, places["draw"])
        if met.key:
            yield from unknown(loaded, NAME, "key", met.key, places["key"])
        shown = loaded.library.entries.get(met.draw)
        if shown and not shown.figure:
            yield NO_DRAWING.at(places["draw"], entry=met.draw)
    for number, caution in enumerate(card.cautions):
        yield from unknown(loaded, NAME, "caution", caution, loaded.files.place("short-card", FILE, ("cautions", number)))
