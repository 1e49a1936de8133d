"""How likely each entry is after all that was told: Bayes' rule over the whole library, with one look at each character.

Whoever looks at a character sees one thing, however often it is asked about. So what was told of one character is met: two answers
on it say what both allow. Where they contradict each other, the later counts, and the earlier is named as left out. Different
characters are taken as independent given the entry; an answer to a couplet that asks several is a look at all of them.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from operator import mul

from keytool.identify.model import Model
from keytool.identify.observation import CANNOT_TELL, Observation, Trail
from keytool.library.pieces import Box
from keytool.library.value import Interval, Showing, States


@dataclass(frozen=True)
class Look:
    """One thing told: all that may have been seen, as boxes with nothing in common, and where it was told.

    `source` is (key, couplet, lead) for an answer and (character,) for an observation.
    """

    boxes: tuple[Box, ...]
    source: tuple[str, ...]
    pointed: bool = False

    @property
    def characters(self) -> frozenset[str]:
        """The characters it speaks of."""
        return frozenset(name for box in self.boxes for name in box)


@dataclass(frozen=True)
class Evidence:
    """What a trail comes to.

    `parts` are the looks that count, those that share a character together, each part with the boxes they leave;
    `conflicts` the looks left out because a later one contradicts them; `unsure` the characters that could not be told,
    `told` those of which something was said for sure. `partly` are those of `unsure` that were only asked together with others, so
    that each may still be told by itself.
    """

    parts: tuple[tuple[tuple[Look, ...], tuple[Box, ...]], ...]
    pointed: tuple[Look, ...]
    conflicts: tuple[Look, ...]
    unsure: frozenset[str]
    told: frozenset[str]
    partly: frozenset[str]
    pictures: tuple[str, ...] = ()
    scopes: tuple[str, ...] = ()
    sample: str = ""
    called: tuple[tuple[str, int], ...] = ()


@dataclass(frozen=True)
class Posterior:
    """The chance of each entry, adding up to 1, and `outside`: the chance that it is nothing in the library."""

    chance: tuple[float, ...]
    outside: float
    evidence: Evidence = field(repr=False)


def posterior(model: Model, trail: Trail) -> Posterior:
    """The chance of each entry after a trail."""
    found = evidence(model, trail)
    weights, blind = _before(model, found), 1.0
    before = sum(weights)
    for _, boxes in found.parts:
        weights = list(map(mul, weights, likelihood(model, boxes)))
        blind *= sum(math.prod(model.tables[name].blind(value) for name, value in box.items()) for box in boxes)
    for look in found.pointed:
        weights = list(map(mul, weights, _may_be_mistaken(model, look)))
        blind *= sum(math.prod(model.tables[name].blind(value) for name, value in box.items()) for box in look.boxes)
    weights = list(map(mul, weights, _described_so(model, found)))
    if found.called:
        weights = list(map(mul, weights, _called_so(model, found)))
    total = sum(weights)
    prior = model.figure("outside-prior")
    outside = prior * blind / (prior * blind + (1 - prior) * total / before)
    return Posterior(tuple(weight / total for weight in weights), outside, found)


def evidence(model: Model, trail: Trail) -> Evidence:
    """What a trail comes to: looks sorted by the characters they share, without those that later ones contradict."""
    looks: list[Look] = []
    unsure, alone = set[str](), set[str]()
    for leg in trail.legs:
        key = model.keys[leg.key]
        for answer in leg.answers:
            if answer.lead == CANNOT_TELL:
                asked = key.key.couplets[answer.couplet].characters
                unsure |= set(asked)
                alone |= set(asked) if len(asked) == 1 else set()
            else:
                looks.append(Look(key.boxes[answer.couplet][answer.lead], (leg.key, answer.couplet, answer.lead)))
    for observation in trail.saw:
        if observation.is_unsure:
            unsure.add(observation.character)
            alone.add(observation.character)
        else:
            looks.append(Look(({observation.character: value(model, observation)},), (observation.character,), observation.pointed))
    firm = [look for look in looks if not look.pointed]
    told = frozenset(name for look in firm for name in look.characters)
    firm += _implied(model, firm, told)
    parts, conflicts = _parts(firm)
    pointed = tuple(look for look in looks if look.pointed and not look.characters & told)
    return Evidence(
        tuple(parts),
        pointed,
        tuple(conflicts),
        frozenset(unsure - told),
        told,
        frozenset(unsure - told - alone),
        trail.pictures,
        tuple(leg.key for leg in trail.legs),
        trail.sample,
        trail.called,
    )


def value(model: Model, observation: Observation) -> Showing:
    """What an observation says may be there: states, or a stretch of numbers as wide as it may be misread."""
    table = model.tables[observation.character]
    if not table.is_number:
        named = frozenset(observation.states)
        return States(frozenset(table.states) - named if observation.negated else named)
    assert observation.low is not None
    assert observation.high is not None
    share = model.figure("about-share" if observation.about else "reading-share")
    return Interval(
        observation.low - max(table.plus_minus, share * observation.low) if math.isfinite(observation.low) else -math.inf,
        observation.high + max(table.plus_minus, share * observation.high) if math.isfinite(observation.high) else math.inf,
    )


def _implied(model: Model, looks: Sequence[Look], told: frozenset[str]) -> list[Look]:
    """Who measured a spear saw a spear: looks at the characters without which another has no meaning, where nothing was said of them."""
    found: dict[str, Look] = {}
    waiting = sorted(told)
    while waiting:
        applies = model.library.characters[waiting.pop(0)].applies
        for name, states in applies.where.items():
            if name not in told and name not in found and len(applies.where) == 1:
                found[name] = Look(({name: States(frozenset(states))},), (name,))
                waiting.append(name)
    return list(found.values())


def _parts(looks: Sequence[Look]) -> tuple[list[tuple[tuple[Look, ...], tuple[Box, ...]]], list[Look]]:
    """Looks sorted into parts with no character in common, each with the boxes left; and the looks that later ones contradict."""
    parts: list[tuple[tuple[Look, ...], tuple[Box, ...]]] = []
    conflicts: list[Look] = []
    for look in reversed(looks):
        near = [part for part in parts if any(each.characters & look.characters for each in part[0])]
        boxes: tuple[Box, ...] = look.boxes
        for _, others in near:
            boxes = met(boxes, others)
        if not boxes:
            conflicts.append(look)
            continue
        parts = [part for part in parts if part not in near]
        parts.append(((*(each for part in near for each in part[0]), look), boxes))
    return parts, conflicts


def met(one: Sequence[Box], other: Sequence[Box]) -> tuple[Box, ...]:
    """What two sets of boxes have in common."""
    found: list[Box] = []
    for a in one:
        for b in other:
            both = {**a, **{name: a[name].meet(value) if name in a else value for name, value in b.items()}}
            if not any(value.is_empty for value in both.values()):
                found.append(both)
    return tuple(found)


def likelihood(model: Model, boxes: Sequence[Box]) -> list[float]:
    """For each entry, the chance that what is seen lies in one of some boxes."""
    total = [0.0] * len(model.entries)
    for box in boxes:
        each: list[float] | None = None
        for name, value in box.items():
            table = model.tables[name]
            column = list(map(table.chances(value).__getitem__, table.row))
            each = column if each is None else list(map(mul, each, column))
        total = [a + b for a, b in zip(total, each or [1.0] * len(total), strict=True)]
    return total


def _may_be_mistaken(model: Model, look: Look) -> list[float]:
    """The chances of a first impression: at the rate of such mistakes it is as likely for anything as it is on average."""
    rate = model.figure("pointed-rate")
    right = likelihood(model, look.boxes)
    mean = sum(map(mul, right, model.prior))
    return [(1 - rate) * each + rate * mean for each in right]


def _called_so(model: Model, found: Evidence) -> list[float]:
    """How much likelier each entry is by what the user's own words are like, 1 on average."""
    bits = [0] * len(model.entries)
    for id, tenths in found.called:
        for number in model.groups[id] if id in model.groups else (model.index[id],):
            bits[number] = max(bits[number], tenths)
    factors = [2 ** (each / 10) for each in bits]
    mean = sum(map(mul, factors, model.prior))
    return [each / mean for each in factors]


def _before(model: Model, found: Evidence) -> list[float]:
    """How likely each entry is before any look: by the kind of sample, the keys opened, and the pictures pointed at."""
    weights = list(model.prior)
    if found.sample:
        weights = list(map(mul, weights, model.samples[found.sample]))
    if found.scopes:
        weights = _chosen(model, weights, found.scopes[0])
    rate, pictures = model.figure("pointed-rate"), len(model.pictures)
    for picture in found.pictures:
        like = set(model.pictures[picture])
        held = [sum(number in others for others in model.pictures.values()) for number in like]
        chance = dict(zip(like, ((1 - rate) / count for count in held), strict=True))
        weights = [weight * chance.get(number, rate / pictures) for number, weight in enumerate(weights)]
    return weights


def _chosen(model: Model, weights: Sequence[float], key: str) -> list[float]:
    """Weights after somebody has opened a key: what it does not hold keeps the rate at which the wrong key is opened.

    Only the first key counts: where it hands on, that rests on what was told.
    """
    inside = marks(model.keys[key].scope, len(weights))
    held = sum(map(mul, weights, inside))
    rest = sum(weights) - held
    wrong = model.figure("wrong-key-rate")
    factor = min(1.0, wrong / (1 - wrong) * held / rest) if rest > 0 else 1.0
    return [weight if mark else weight * factor for weight, mark in zip(weights, inside, strict=True)]


def marks(numbers: Sequence[int], size: int) -> list[float]:
    """1 for each of some numbers, 0 for every other, in a list of a size."""
    marked = [0.0] * size
    for number in numbers:
        marked[number] = 1.0
    return marked


def _described_so(model: Model, found: Evidence) -> list[float]:
    """What each entry pays for being described as something it is not.

    In full for the first character of overlapping kinds of things, less for each further one, since whoever is mistaken once
    goes on in the same way.
    """
    rate, again = model.figure("elsewhere-rate"), model.figure("elsewhere-again")
    counts: dict[int, int] = {}
    for name in sorted(found.told):
        domain = model.tables[name].domain
        if domain != -1:
            counts[domain] = counts.get(domain, 0) + 1
    clusters: list[tuple[set[int], list[int]]] = []
    for number in sorted(counts):
        domain_set = set(model.domains[number])
        near = [cluster for cluster in clusters if cluster[0] & domain_set]
        clusters = [cluster for cluster in clusters if cluster not in near]
        clusters.append((domain_set.union(*(each[0] for each in near)), [number, *(one for each in near for one in each[1])]))
    factors = [1.0] * len(model.entries)
    for _, numbers in clusters:
        outside = [0] * len(factors)
        for number in numbers:
            inside = set(model.domains[number])
            outside = [count + (0 if entry in inside else counts[number]) for entry, count in enumerate(outside)]
        factors = [factor * rate * again ** (count - 1) if count else factor for factor, count in zip(factors, outside, strict=True)]
    return factors


def mass(chance: Sequence[float], numbers: Sequence[int]) -> float:
    """The chance of some entries together."""
    return sum(chance[number] for number in numbers)


Chances = Mapping[str, float]
