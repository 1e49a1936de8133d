"""The couplets of a key never lead back to one that was answered."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.finding import Finding
from keytool.library.graph import rings
from keytool.library.load import Loaded
from keytool.library.message import Message

NAME = "rings"
RING = Message(NAME, "The key goes round in a ring: {ring}.", tip="Let this lead go forward, to a couplet not yet asked or to an end.")


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each lead that closes a ring of couplets."""
    for key in loaded.library.keys.values():
        for ring, lead in rings(key):
            place = loaded.files.place("key", key.id, ("couplets", ring[-1], "leads", lead.id, "couplet"))
            yield RING.at(place, ring=" > ".join([*ring, ring[0]]))
