"""How likely: prior odds from how common a thing is, chances of an answer given what a thing shows.

Bayes' rule with the answers taken as independent given the entry. A character is misread at
its own rate, and a number is read with its own error, so no answer rules anything out for good.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence

from keytool.identify.match import cells, unstated
from keytool.library.model import Character, Couplet, Entry, Library
from keytool.library.value import Interval, Showing


def priors(library: Library, members: Iterable[Entry]) -> dict[str, float]:
    """The prior chance of each entry, adding up to 1, from the weights of `commonness`."""
    weights = {entry.id: float(library.vocabulary["commonness"][entry.commonness].get("weight")) for entry in members}
    return normal(weights)


def normal(weights: Mapping[str, float]) -> dict[str, float]:
    """Weights scaled to add up to 1."""
    total = sum(weights.values())
    return {id: weight / total for id, weight in weights.items()}


def chances(characters: Mapping[str, Character], couplet: Couplet, entry: Entry) -> list[float]:
    """The chance that each lead is chosen when the entry lies under the lens, in the order of the leads.

    The chances add up to 1. Where the entry does not say what the couplet asks, every lead is
    as likely as any other.
    """
    showings = {name: statement.showing for name, statement in entry.statements.items()}
    leads = list(couplet.leads)
    if unstated(couplet, showings):
        return [1 / len(leads)] * len(leads)
    only = couplet.characters[0]
    if len(couplet.characters) == 1 and characters[only].is_number:
        true = [_read_within(showings[only], couplet.leads[id].when.get(only), characters[only].plus_minus) for id in leads]
        true = [1 - sum(each for each in true if each is not None) if each is None else each for each in true]
    else:
        share = dict.fromkeys(leads, 0.0)
        for cell in cells(couplet, showings):
            for lead in cell.leads:
                share[lead.id] += cell.share / len(cell.leads)
        true = list(share.values())
    wrong = 1 - math.prod(1 - characters[name].misread for name in couplet.characters)
    return [(1 - wrong) * each + wrong * (1 - each) / (len(leads) - 1) for each in true]


def _read_within(shown: Showing, wanted: Showing | None, error: float) -> float | None:
    """The chance that a number spread evenly over `shown`, read with an even error, is read within `wanted`."""
    if wanted is None:
        return None
    assert isinstance(shown, Interval) and isinstance(wanted, Interval)
    if not math.isfinite(shown.high - shown.low):
        return shown.share(wanted)
    return _read_below(shown, wanted.high, error) - _read_below(shown, wanted.low, error)


def _read_below(shown: Interval, limit: float, error: float) -> float:
    if math.isinf(limit):
        return float(limit > 0)
    width = max(shown.high - shown.low, 1e-9)
    blur = max(error, 1e-9)

    def ramp(x: float) -> float:
        return max(x, 0.0) ** 2 / 2

    a, b = limit - shown.low, limit - shown.low - width
    return min(1.0, max(0.0, (ramp(a + blur) - ramp(a - blur) - ramp(b + blur) + ramp(b - blur)) / (2 * blur * width)))


def entropy(weights: Sequence[float]) -> float:
    """Shannon entropy in bits of weights that need not add up to 1; 0 for none."""
    total = sum(weights)
    return -sum(w / total * math.log2(w / total) for w in weights if w > 0) if total > 0 else 0.0
