"""How likely: prior odds from how common a thing is, chances of an answer given what a thing shows.

Bayes' rule with the answers taken as independent given the entry. A character is misread at
its own rate, and a number is read with its own error, so no answer rules anything out for good.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from itertools import product

from keytool.identify.match import holds, pieces, unstated
from keytool.library.model import Character, Couplet, Entry, Library
from keytool.library.value import Interval, Showing, States


def priors(library: Library, scope: Sequence[str]) -> dict[str, float]:
    """The prior chance of each entry within the groups of a scope, adding up to 1.

    Weights are those of `commonness`. A group of the scope that states its own is as common
    as it says, however many entries it holds: they share its weight in proportion to theirs.
    """
    def weight(entry: Entry) -> float:
        return float(library.vocabulary["commonness"][entry.commonness].get("weight"))

    weights: dict[str, float] = {}
    for group in scope:
        members = {entry.id: weight(entry) for entry in library.members((group,)) if entry.id not in weights}
        if library.entries[group].commonness:
            members = {id: each * weight(library.entries[group]) for id, each in normal(members).items()}
        weights |= members
    return normal(weights)


def normal(weights: Mapping[str, float]) -> dict[str, float]:
    """Weights scaled to add up to 1."""
    total = sum(weights.values())
    return {id: weight / total for id, weight in weights.items()}


def chances(characters: Mapping[str, Character], couplet: Couplet, entry: Entry) -> list[float]:
    """The chance that each lead is chosen when the entry lies under the lens, in the order of the leads.

    The chances add up to 1. Every state an entry may show is as likely as the next, and each is
    seen rightly or misread at the rates of its character. Where the entry does not say what
    the couplet asks, every lead is as likely as any other.
    """
    showings = {name: statement.showing for name, statement in entry.statements.items()}
    leads = list(couplet.leads)
    if unstated(couplet, showings):
        return [1 / len(leads)] * len(leads)
    axes = [_seen(characters[name], pieces(name, couplet, everything(characters[name])), showings[name]) for name in couplet.characters]
    share = dict.fromkeys(leads, 0.0)
    for combination in product(*axes):
        holding = holds(couplet, dict(zip(couplet.characters, (piece for piece, _ in combination), strict=True)))
        chosen = [lead.id for lead in holding] or leads
        for lead in chosen:
            share[lead] += math.prod(chance for _, chance in combination) / len(chosen)
    return list(share.values())


def everything(character: Character) -> Showing:
    """All that a character could show."""
    return Interval() if character.is_number else States(frozenset(character.states))


def _seen(character: Character, wholes: Sequence[Showing], shown: Showing) -> list[tuple[Showing, float]]:
    """What may be seen, in pieces, and how likely each is when one of `shown` is there."""
    if isinstance(shown, States):
        return [(States(frozenset([seen])), sum(_taken(character, true, seen) for true in shown.ids) / len(shown.ids))
                for seen in character.states]
    right = [_read_within(shown, piece, character.plus_minus) for piece in wholes]
    others = max(len(wholes) - 1, 1)
    return [(piece, (1 - character.misread) * each + character.misread * (1 - each) / others)
            for piece, each in zip(wholes, right, strict=True)]


def _taken(character: Character, true: str, seen: str) -> float:
    """The chance that one state is taken for another, or seen for what it is."""
    def mixed_up(other: str) -> float:
        return character.mix_ups.get((true, other), character.misread / (len(character.states) - 1))

    return mixed_up(seen) if seen != true else 1 - sum(mixed_up(other) for other in character.states if other != true)


def _read_within(shown: Showing, wanted: Showing, error: float) -> float:
    """The chance that a number spread evenly over `shown`, read with an even error, is read within `wanted`."""
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
