"""How likely: prior odds from how common a thing is, chances of what is seen given what a thing shows.

A character is misread at its own rate, and a number is read with its own error, so nothing
seen rules anything out for good.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from keytool.library.model import Character, Entry, Library
from keytool.library.pieces import shares
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


def seen(character: Character, wholes: Sequence[Showing], shown: Showing) -> list[float]:
    """The chance of each piece of all that may be seen of a character, when one of `shown` is there.

    The chances add up to 1. Every state an entry may show is as likely as the next, and each is
    seen rightly or misread at the rates of its character. A number that is misread lies in any
    other of the pieces as likely as in the next.
    """
    if isinstance(shown, States):
        return [
            sum(_taken(character, true, state) for true in sorted(shown.ids) for state in character.states if state in whole.ids)
            / len(shown.ids)
            for whole in wholes
            if isinstance(whole, States)
        ]
    right = _read_within(shown, wholes, character.plus_minus)
    others = max(len(wholes) - 1, 1)
    return [(1 - character.misread) * each + character.misread * (1 - each) / others for each in right]


def _taken(character: Character, true: str, seen: str) -> float:
    """The chance that one state is taken for another, or seen for what it is."""

    def mixed_up(other: str) -> float:
        return character.mix_ups.get((true, other), character.misread / (len(character.states) - 1))

    return mixed_up(seen) if seen != true else 1 - sum(mixed_up(other) for other in character.states if other != true)


def _read_within(shown: Showing, wholes: Sequence[Showing], error: float) -> list[float]:
    """The chance that a number spread evenly over `shown`, read with an even error, is read within each piece of all numbers."""
    assert isinstance(shown, Interval)
    if not math.isfinite(shown.high - shown.low):
        return shares(shown, wholes)
    return [_read_below(shown, whole.high, error) - _read_below(shown, whole.low, error) for whole in wholes if isinstance(whole, Interval)]


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
