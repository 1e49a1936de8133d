"""What a walk asks after a "cannot tell": the couplet or character that parts the ends of its key best for what it costs.

Only what has a meaning for nearly all that is still likely is asked, never what was told or could not be told, nor what takes for
granted a thing that could not be told: who cannot say whether it moves is not asked how. All of it is weighed within the scope of the
key, since whoever walks it has taken the thing for one of those.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from operator import mul

from keytool.identify.model import CompiledKey, Model
from keytool.identify.observation import CANNOT_TELL
from keytool.identify.posterior import Posterior, likelihood, marks, mass, met
from keytool.identify.questions import effort_of, information, power_at_hand, questions, takes_open, was_asked
from keytool.library.pieces import Box


def best_question(model: Model, compiled: CompiledKey, given: Mapping[str, str], after: Posterior) -> tuple[str, str, float]:
    """The couplet or the character to look at next, of which one is empty, and its worth; both where nothing is worth its effort.

    Where nothing has a meaning for nearly all that is likely, what has one for most of it is asked.
    """
    for share in (model.figure("asks-share"), model.figure("asks-least")):
        couplet, character, worth = _best(model, compiled, given, after, share)
        if worth > 0:
            return couplet, character, worth
    return "", "", 0.0


def _best(model: Model, compiled: CompiledKey, given: Mapping[str, str], after: Posterior, share: float) -> tuple[str, str, float]:
    """The best of the questions that have a meaning for a share of what is likely.

    It is the ends of the key that are to be told apart. The key goes on in its own order; then come the characters it would
    still ask, then all others. What comes later is asked instead only where it tells clearly more for its effort.
    """
    least, clearly = model.figure("least-gain"), model.figure("clearly-better")
    after = replace(after, chance=within_scope(after.chance, compiled.scope))
    reached, power = reaching(model, compiled, given), power_at_hand(model, after)
    ends = end_of(model, compiled)
    best, couplet, character = 0.0, "", ""
    for id in compiled.order:
        each = compiled.key.couplets[id]
        if id in given or id not in reached or all(was_asked(model, name, after) for name in each.characters):
            continue
        if not after.evidence.unsure.isdisjoint(each.characters) or any(takes_open(model, name, after) for name in each.characters):
            continue
        if sum(map(mul, after.chance, reached[id])) < share:
            continue
        worth = _gain(model, compiled.boxes[id], after, ends) / max(effort_of(model, name, power) for name in each.characters)
        if worth >= least and round(worth, 9) > round(clearly * best, 9):
            best, couplet = worth, id
    ahead = {name for id in reached if id not in given for name in compiled.key.couplets[id].characters}
    found = [each for each in questions(model, after, power, ends, share) if each.worth >= least]
    for question in (*(each for each in found if each.character in ahead), *(each for each in found if each.character not in ahead)):
        if round(question.worth, 9) > round(clearly * best, 9):
            best, couplet, character = question.worth, "", question.character
    return couplet, character, best


def within_scope(chance: Sequence[float], scope: Sequence[int]) -> tuple[float, ...]:
    """The chance of each entry if it is one of a scope."""
    held, inside = mass(chance, scope), marks(scope, len(chance))
    return tuple(each * mark / held for each, mark in zip(chance, inside, strict=True))


def end_of(model: Model, compiled: CompiledKey) -> tuple[int, ...]:
    """For each entry a number that is the same for entries that the key brings to the same ends; 0 for all that it does not hold."""
    ends: list[tuple[str, ...]] = [()] * len(model.entries)
    for end, numbers in compiled.within.items():
        for number in numbers:
            ends[number] = (*ends[number], end)
    kinds: dict[tuple[str, ...], int] = {(): 0}
    return tuple(kinds.setdefault(each, len(kinds)) for each in ends)


def reaching(model: Model, compiled: CompiledKey, given: Mapping[str, str]) -> dict[str, list[float]]:
    """For each couplet that lies ahead, how much of each entry comes to it, given the leads taken."""
    found = {compiled.key.first: marks(compiled.scope, len(model.entries))}
    for id in compiled.order:
        if id not in found:
            continue
        here, leads = found[id], compiled.key.couplets[id].leads
        taken = given.get(id, CANNOT_TELL)
        flows = {taken: [1.0] * len(here)} if taken != CANNOT_TELL else lead_chances(model, compiled.boxes[id])
        for lead, chances in flows.items():
            if goes := leads[lead].couplet:
                flow = list(map(mul, here, chances))
                found[goes] = [a + b for a, b in zip(found[goes], flow, strict=True)] if goes in found else flow
    return found


def lead_chances(model: Model, leads: Mapping[str, Sequence[Box]]) -> dict[str, list[float]]:
    """For each lead and entry, the chance that the lead is taken when nothing was told before; over the leads they add up to 1."""
    each = {lead: likelihood(model, boxes) for lead, boxes in leads.items()}
    totals = [sum(column) for column in zip(*each.values(), strict=True)]
    return {lead: [a / b for a, b in zip(chances, totals, strict=True)] for lead, chances in each.items()}


def _gain(model: Model, leads: Mapping[str, Sequence[Box]], after: Posterior, kinds: Sequence[int]) -> float:
    """How much an answer is expected to tell of the kind of thing, in bits, beyond what was told of its characters before."""
    chances = lead_chances(model, leads_left(leads, after))
    return information([list(row) for row in zip(*chances.values(), strict=True)], after.chance, kinds)


def leads_left(leads: Mapping[str, Sequence[Box]], after: Posterior) -> dict[str, tuple[Box, ...]]:
    """The leads of a couplet that what was told of its characters leaves, each with what it leaves of it."""
    told = told_of(leads, after)
    return {lead: left for lead, boxes in leads.items() if (left := met(told, boxes))}


def told_of(leads: Mapping[str, Sequence[Box]], after: Posterior) -> tuple[Box, ...]:
    """What was told of the characters of a couplet, and of those that were told together with them."""
    names = frozenset(name for boxes in leads.values() for box in boxes for name in box)
    told: tuple[Box, ...] = ({},)
    for looks, boxes in after.evidence.parts:
        if any(look.characters & names for look in looks):
            told = met(told, boxes)
    return told
