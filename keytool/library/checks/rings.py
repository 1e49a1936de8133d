"""The couplets of a key never lead back to one that was answered."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.model import Key, Lead

NAME = "rings"


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each lead that closes a ring of couplets."""
    for key in loaded.library.keys.values():
        for ring, lead in rings(key):
            place = loaded.files.place("key", key.id, ("couplets", ring[-1], "leads", lead.id, "couplet"))
            yield Finding(
                NAME,
                place,
                f"The key goes round in a ring: {' > '.join([*ring, ring[0]])}.",
                tip="Let this lead go forward, to a couplet not yet asked or to an end.",
            )


def rings(key: Key) -> Iterator[tuple[tuple[str, ...], Lead]]:
    """The rings of a key: the couplets of each, and the lead of its last couplet that closes it."""
    done: set[str] = set()

    def visit(id: str, way: tuple[str, ...]) -> Iterator[tuple[tuple[str, ...], Lead]]:
        for lead in key.couplets[id].leads.values():
            if lead.couplet in way:
                yield way[way.index(lead.couplet) :], lead
            elif lead.couplet in key.couplets and lead.couplet not in done:
                yield from visit(lead.couplet, (*way, lead.couplet))
        done.add(id)

    for id in [key.first, *key.couplets]:
        if id in key.couplets and id not in done:
            yield from visit(id, (id,))
