"""Describe a thing in any order: everything told is weighed, every entry ranked, and the result explains itself."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from keytool.identify.model import Model
from keytool.identify.observation import Trail
from keytool.identify.posterior import Look, likelihood, posterior
from keytool.identify.result import Identification, identification


@dataclass(frozen=True, slots=True)
class Reason:
    """What one part of what was told says of an entry: above 0 for it, below 0 against it, in bits.

    It is weighed against what is likely besides: 1 bit makes the entry twice as likely against the rest.
    """

    looks: tuple[Look, ...]
    weight: float


def describe(model: Model, trail: Trail) -> Identification:
    """What a trail comes to."""
    return identification(model, posterior(model, trail))


def explain(model: Model, trail: Trail, entry: str) -> tuple[Reason, ...]:
    """What speaks for and against an entry, the weightiest first."""
    after = posterior(model, trail)
    number = model.index[entry]
    rest = 1 - after.chance[number]
    reasons = [Reason(looks, _bits(likelihood(model, boxes), after.chance, number, rest)) for looks, boxes in after.evidence.parts]
    reasons += [Reason((look,), _bits(likelihood(model, look.boxes), after.chance, number, rest)) for look in after.evidence.pointed]
    return tuple(sorted(reasons, key=lambda each: -abs(round(each.weight, 9))))


def _bits(chances: Sequence[float], after: Sequence[float], number: int, rest: float) -> float:
    """How much likelier a look is with an entry than with what else is likely without that look."""
    if rest <= 0:
        return 0.0
    without = [chance / each for chance, each in zip(after, chances, strict=True)]
    others = sum(without) - without[number]
    mean = sum(chance for i, chance in enumerate(after) if i != number) / others if others > 0 else 1.0
    return math.log2(chances[number] / mean)
