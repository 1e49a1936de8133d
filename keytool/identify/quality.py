"""How good a key is: what it asks against what would do, the couplet that misleads most, and the pair that is hardest to part."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from operator import mul

from keytool.identify.asking import lead_chances
from keytool.identify.cost import cost
from keytool.identify.model import Model, prior_chances
from keytool.identify.observation_tables import entropy
from keytool.library.model import Couplet, Entry
from keytool.library.pieces import Showings, cells

EXACT_MOST = 5
"""Up to so many couplets every order is tried; above it, the one that tells most is asked first each time."""
LEAST = 1e-6

Split = Mapping[str, float]
"""How much of an entry takes each lead of a couplet."""


@dataclass(frozen=True)
class Quality:
    """The quality of one key.

    `questions` are asked on average, and at least `bound` would be by entropy. `worst` is the couplet at which most identifications
    are lost, and `lost` how many of all; `pair` the two entries with different ends that are hardest to part, and `alike` how far
    their looks overlap, 0 to 1 (Bhattacharyya 1943, from memory).
    """

    key: str
    questions: float
    bound: float
    worst: str
    lost: float
    pair: tuple[str, str]
    alike: float

    @property
    def ratio(self) -> float:
        """Questions asked for each that the bound needs."""
        return self.questions / self.bound if self.bound else 1.0


def quality(model: Model, key: str) -> Quality:
    """The quality of a key that has been proved."""
    found = cost(model.library, model.keys[key].key)
    worst, lost = _worst(model, key)
    pair, alike = _hardest(model, key)
    return Quality(key, found.questions, found.least, worst, lost, pair, alike)


def _flows(model: Model, key: str) -> dict[str, tuple[dict[str, float], dict[str, float]]]:
    """For each entry, how much of it comes to each couplet, and how much to each end, as it truly is."""
    compiled = model.keys[key].key
    found = {}
    for entry in model.library.members(compiled.scope):
        couplets: dict[str, float] = {}
        ends: dict[str, float] = {}
        waiting: list[tuple[str, Showings, float]] = [(compiled.first, _shown(entry), 1.0)]
        while waiting:
            at, shown, weight = waiting.pop()
            couplets[at] = couplets.get(at, 0.0) + weight
            for cell in cells(compiled.couplets[at], shown):
                lead = cell.leads[0]
                if lead.couplet:
                    waiting.append((lead.couplet, cell.showings, weight * cell.share))
                else:
                    ends[lead.goes_to] = ends.get(lead.goes_to, 0.0) + weight * cell.share
        found[entry.id] = (couplets, ends)
    return found


def _shown(entry: Entry) -> Showings:
    return {name: statement.showing for name, statement in entry.statements.items()}


def best_order(model: Model, key: str) -> tuple[float, bool]:
    """The questions asked on average by the same couplets in the best order, and whether every order was tried.

    Otherwise the most telling one was asked first each time, which may be a little above the best. It takes seconds.
    """
    compiled = model.keys[key].key
    prior = prior_chances(model.library, compiled.scope)
    ends = {id: max(sorted(to), key=lambda end: to[end]) for id, (_, to) in _flows(model, key).items()}
    splits: dict[str, dict[str, Split]] = {}
    for couplet in compiled.couplets.values():
        splits[couplet.id] = {entry.id: _split(couplet, entry) for entry in model.library.members(compiled.scope)}
    exact = len(compiled.couplets) <= EXACT_MOST
    asked = _asked(prior, ends, splits, tuple(compiled.couplets), exact=exact)
    return min(asked, cost(model.library, compiled).questions), exact


def _split(couplet: Couplet, entry: Entry) -> Split:
    shown = _shown(entry)
    if any(name not in shown for name in couplet.characters):
        return {lead: 1 / len(couplet.leads) for lead in couplet.leads}
    found: dict[str, float] = {}
    for cell in cells(couplet, shown):
        found[cell.leads[0].id] = found.get(cell.leads[0].id, 0.0) + cell.share
    return found


def _asked(
    weights: Mapping[str, float],
    ends: Mapping[str, str],
    splits: Mapping[str, Mapping[str, Split]],
    left: Sequence[str],
    *,
    exact: bool,
) -> float:
    """The questions asked on average from here on, times the weight that is here."""
    total = sum(weights.values())
    if total < LEAST or len({ends[id] for id in weights}) < 2 or not left:
        return 0.0
    parted = {couplet: _parted(weights, splits[couplet]) for couplet in left}
    useful = [couplet for couplet in left if len(parted[couplet]) > 1]
    if not useful:
        return 0.0
    if not exact:
        useful = [min(useful, key=lambda couplet: (round(_open(parted[couplet], ends), 9), couplet))]
    return min(
        total
        + sum(_asked(part, ends, splits, tuple(each for each in left if each != couplet), exact=exact) for part in parted[couplet].values())
        for couplet in useful
    )


def _parted(weights: Mapping[str, float], splits: Mapping[str, Split]) -> dict[str, dict[str, float]]:
    parts: dict[str, dict[str, float]] = {}
    for id, weight in weights.items():
        for lead, share in splits[id].items():
            if weight * share > LEAST:
                parts.setdefault(lead, {})[id] = weight * share
    return parts


def _open(parts: Mapping[str, Mapping[str, float]], ends: Mapping[str, str]) -> float:
    """What is still open about the end after an answer, in bits times weight."""
    found = 0.0
    for part in parts.values():
        sums: dict[str, float] = {}
        for id, weight in part.items():
            sums[ends[id]] = sums.get(ends[id], 0.0) + weight
        found += sum(sums.values()) * entropy(list(sums.values()))
    return found


def _worst(model: Model, key: str) -> tuple[str, float]:
    """The couplet at which most identifications are lost, and the share of all that is."""
    compiled = model.keys[key]
    prior = prior_chances(model.library, compiled.key.scope)
    flows = _flows(model, key)
    lost = {}
    for couplet in compiled.key.couplets.values():
        chances = lead_chances(model, compiled.boxes[couplet.id])
        wrong = 0.0
        for id, (couplets, _) in flows.items():
            if couplet.id in couplets:
                true = _split(couplet, model.library.entries[id])
                right = sum(chances[lead][model.index[id]] for lead, share in true.items() if share > 0)
                wrong += prior[id] * couplets[couplet.id] * max(0.0, 1 - right)
        lost[couplet.id] = wrong
    worst = max(sorted(lost), key=lambda couplet: round(lost[couplet], 9))
    return worst, lost[worst]


def _hardest(model: Model, key: str) -> tuple[tuple[str, str], float]:
    """The two entries with different ends whose looks at the key's characters overlap most."""
    compiled = model.keys[key]
    ends = {id: frozenset(to) for id, (_, to) in _flows(model, key).items()}
    names = sorted({name for couplet in compiled.key.couplets.values() for name in couplet.characters})
    overlaps = []
    for name in names:
        rows = model.tables[name].outcomes
        roots = [[math.sqrt(each) for each in row] for row in rows]
        overlaps.append((model.tables[name].row, [[min(1.0, sum(map(mul, one, other))) for other in roots] for one in roots]))
    best, pair = -1.0, ("", "")
    ids = sorted(ends)
    for first, one in enumerate(ids):
        for other in ids[first + 1 :]:
            if ends[one] & ends[other]:
                continue
            a, b = model.index[one], model.index[other]
            alike = math.prod(table[row[a]][row[b]] for row, table in overlaps)
            if alike > best + 1e-12:
                best, pair = alike, (one, other)
    return pair, max(best, 0.0)
