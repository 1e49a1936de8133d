"""A key starts at a couplet it has, and its leads go to couplets it has."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.checks.couplets import couplets
from keytool.library.checks.unknown_ids import few, missing, not_among
from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.messages import did_you_mean

NAME = "leads"
NO_SUCH_START = missing(NAME, "The key starts at '{couplet}', but has no such couplet.")
NO_SUCH_COUPLET = Message(
    NAME, "Lead '{lead}' goes to couplet '{couplet}', which this key does not have.", allowed="{allowed}", tip="{tip}"
)
A_SLIP = 0.85
"""How like another couplet a name must be to be a slip of the pen: those of one key are named much alike, and a wrong one mends nothing."""


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each `first` and each lead that names a couplet the key does not have."""
    for key in loaded.library.keys.values():
        if key.first not in key.couplets:
            place = loaded.files.place("key", key.id, ("first",))
            yield not_among(NO_SUCH_START, key.first, key.couplets, place, couplet=key.first)
    for at in couplets(loaded):
        for lead in at.couplet.leads.values():
            if lead.couplet and lead.couplet not in at.key.couplets:
                near = did_you_mean(lead.couplet, at.key.couplets, A_SLIP)
                tip = near or "Where the couplet was taken out, put it back or let this lead go elsewhere; else mend the name."
                yield NO_SUCH_COUPLET.at(
                    at.place("leads", lead.id, "couplet"), lead=lead.id, couplet=lead.couplet, allowed=few(at.key.couplets), tip=tip
                )
