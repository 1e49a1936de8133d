"""What a key costs: how many questions it asks on average, against the least that could do."""

from __future__ import annotations

import math
from collections import Counter
from dataclasses import dataclass

from keytool.identify.model import prior_chances
from keytool.identify.observation_tables import entropy
from keytool.library.model import Key, Library
from keytool.library.pieces import Showings, cells


@dataclass(frozen=True, slots=True)
class Cost:
    """The cost of one key, weighted by how common its entries are.

    `questions` is the expected number asked, `most` the longest way, `bits` the entropy of
    its ends, and `least` the entropy bound: no key with couplets as wide can ask fewer on
    average. Source: Shannon 1948 (from memory).
    """

    key: str
    questions: float
    most: int
    bits: float
    least: float


def cost(library: Library, key: Key) -> Cost:
    """The cost of a key that has been proved."""
    members = list(library.members(key.scope))
    prior = prior_chances(library, key.scope)
    ends: Counter[str] = Counter()
    expected, most = 0.0, 0
    for entry in members:
        showings: Showings = {name: statement.showing for name, statement in entry.statements.items()}
        waiting = [(key.first, showings, prior[entry.id], 1)]
        while waiting:
            at, shown, weight, depth = waiting.pop()
            for cell in cells(key.couplets[at], shown):
                lead = cell.leads[0]
                share = weight * cell.share
                if lead.couplet:
                    waiting.append((lead.couplet, cell.showings, share, depth + 1))
                else:
                    ends[lead.goes_to] += share  # type: ignore[assignment]
                    expected, most = expected + share * depth, max(most, depth)
    bits = entropy(list(ends.values()))
    widest = max(len(couplet.leads) for couplet in key.couplets.values())
    return Cost(key.id, expected, most, bits, bits / math.log2(widest))
