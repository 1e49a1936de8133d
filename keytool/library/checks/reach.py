"""Every couplet of a key can be reached from its first."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.finding import Finding
from keytool.library.graph import reached
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.model import Key, Lead

NAME = "reach"
UNREACHED = Message(NAME, "No lead comes to couplet '{name}', so nobody will ever be asked this.", tip="Let a lead go to it, or delete it.")


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each couplet that no way from the first one comes to."""
    for key in loaded.library.keys.values():
        if key.first not in key.couplets or any(_gets_lost(key, lead) for each in key.couplets.values() for lead in each.leads.values()):
            continue
        met = reached(key)
        for id in key.couplets:
            if id not in met:
                yield UNREACHED.at(loaded.files.place("key", key.id, ("couplets", id), of_key=True), name=id)


def _gets_lost(key: Key, lead: Lead) -> bool:
    """Whether a lead names a couplet that is not there, so that nobody can say what it was to reach."""
    return bool(lead.couplet) and lead.couplet not in key.couplets
