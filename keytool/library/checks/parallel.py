"""The leads of a couplet are worded alike, so that the eye goes straight to the difference."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.checks.couplets import At, couplets
from keytool.library.checks.shown import as_shown
from keytool.library.finding import Finding, Severity
from keytool.library.load import Loaded

NAME = "parallel"
WIDEST_RATIO = 2.2


def check(loaded: Loaded) -> Iterator[Finding]:
    """Advice for each couplet whose leads differ much in length, in how they begin, or in how they end."""
    for at in couplets(loaded):
        texts = {lead.id: as_shown(loaded.library, lead.text) for lead in at.couplet.leads.values()}
        short, long = min(texts, key=lambda id: len(texts[id])), max(texts, key=lambda id: len(texts[id]))
        if len(texts[long]) > WIDEST_RATIO * len(texts[short]):
            yield _advice(
                at,
                long,
                f"Lead '{long}' has {len(texts[long])} characters, its partner '{short}' only {len(texts[short])}.",
                "Say of each what is said of the other.",
            )
        stopped = [id for id, text in texts.items() if text.endswith(".")]
        if stopped and len(stopped) < len(texts):
            yield _advice(
                at,
                stopped[0],
                f"Lead '{stopped[0]}' ends with a full stop, its partner does not.",
                "End all leads of a couplet alike; without a full stop is the habit here.",
            )
        for id, text in texts.items():
            if text[0].islower():
                yield _advice(at, id, f"Lead '{id}' begins with a small letter.", "Begin it with a capital.")


def _advice(at: At, lead: str, message: str, tip: str) -> Finding:
    return Finding(NAME, at.place("leads", lead, "text"), message, tip=tip, severity=Severity.ADVICE)
