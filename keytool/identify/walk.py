"""Walk a key: one answer at a time, with "cannot tell" as a proper answer, and anything else that was seen besides.

A walk is nothing but what was told, so it has an address. As long as every question is answered the key is followed as printed;
questions that are settled by what was told already are passed over. After a "cannot tell" everything stays possible, and the next
question is the one that tells most for its effort: a question of the key, or simply a character, but only one that has a meaning
for nearly all that is still likely.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from operator import mul

from keytool.identify.model import CompiledKey, Model
from keytool.identify.observation import CANNOT_TELL, Trail
from keytool.identify.posterior import Posterior, likelihood, marks, mass, met, posterior
from keytool.identify.questions import effort_of, information, power_at_hand, questions
from keytool.identify.result import Identification, Named, identification, narrowest, word
from keytool.library.pieces import Box


@dataclass(frozen=True)
class WalkState:
    """Where a walk stands.

    `asks` is the couplet to answer next, or `asks_character` a character to look at instead; both empty when it is over.
    `arrived` is the end it came to, `goes_on` the key that takes over; both empty while something is asked, or when it stops
    undecided. `passed` are the couplets that what was told has settled, each with its lead; `open` those that could not be told.
    `ends` are the ends and onward keys of this key that are likely, the likeliest first.
    """

    asks: str
    asks_character: str
    arrived: str
    goes_on: str
    passed: Mapping[str, str]
    open: tuple[str, ...]
    ends: tuple[Named, ...]
    result: Identification

    @property
    def is_over(self) -> bool:
        """Whether there is nothing left to ask in this key."""
        return not self.asks and not self.asks_character


def evaluate(model: Model, trail: Trail) -> WalkState:
    """Where a trail stands in the last of its keys. It must have one."""
    leg = trail.legs[-1]
    compiled = model.keys[leg.key]
    given = {answer.couplet: answer.lead for answer in leg.answers}
    after = posterior(model, trail)
    result = identification(model, after)
    passed, at, end = _printed(compiled, given, after)
    undecided = tuple(id for id in compiled.order if given.get(id) == CANNOT_TELL)
    asks = asks_character = ""
    if at and given.get(at) != CANNOT_TELL:
        asks = at
    elif at:
        end = _settled(model, compiled, after) if after.evidence.told else ""
        unsure = len(undecided) + sum(each.is_unsure for each in trail.saw)
        if not end and unsure < model.figure("unsure-most"):
            asks, asks_character = _best_question(model, compiled, given, after)
        if not asks and not asks_character and after.evidence.told:  # what is common is no finding: an end needs something told
            end = end or _only(model, compiled, after)
    goes_on = end if end in model.keys else ""
    return WalkState(asks, asks_character, "" if goes_on else end, goes_on, passed, undecided, _ends(model, compiled, after), result)


def _printed(compiled: CompiledKey, given: Mapping[str, str], after: Posterior) -> tuple[dict[str, str], str, str]:
    """The key as printed: what is passed over, the couplet where it stands (unanswered, or not told), and the end it came to."""
    passed: dict[str, str] = {}
    at = compiled.key.first
    while True:
        lead = given.get(at, "")
        if lead in ("", CANNOT_TELL):
            lead = settled_lead(compiled.boxes[at], after)
            if not lead:
                return passed, at, ""
            passed[at] = lead
        taken = compiled.key.couplets[at].leads[lead]
        if not taken.couplet:
            return passed, "", taken.goes_to
        at = taken.couplet


def settled_lead(leads: Mapping[str, Sequence[Box]], after: Posterior) -> str:
    """The one lead that what was told of a couplet's characters leaves, or an empty text where several are open."""
    names = frozenset(name for boxes in leads.values() for box in boxes for name in box)
    told: tuple[Box, ...] = ({},)
    for looks, boxes in after.evidence.parts:
        if any(look.characters & names for look in looks):
            told = met(told, boxes)
    if not any(told):
        return ""
    fitting = [lead for lead, boxes in leads.items() if met(told, boxes)]
    return fitting[0] if len(fitting) == 1 else ""


def _settled(model: Model, compiled: CompiledKey, after: Posterior) -> str:
    """The narrowest end that holds most of the chance, or an empty text."""
    found = narrowest(model, after.chance, model.figure("holds-share"), compiled.within)
    return found.id if found else ""


def _only(model: Model, compiled: CompiledKey, after: Posterior) -> str:
    """The end a walk stops at when nothing is left to ask: the first, where it leads clearly."""
    ends = _ends(model, compiled, after)
    if len(ends) == 1 or (ends and ends[0].chance >= model.figure("settled-lead") * ends[1].chance):
        return ends[0].id
    return ""


def _ends(model: Model, compiled: CompiledKey, after: Posterior) -> tuple[Named, ...]:
    least = model.figure("name-share")
    found = [(mass(after.chance, numbers), id) for id, numbers in compiled.within.items()]
    ranked = sorted(found, key=lambda each: (-round(each[0], 9), each[1]))
    return tuple(Named(id, chance, word(model, chance)) for chance, id in ranked if chance >= least)


def _best_question(model: Model, compiled: CompiledKey, given: Mapping[str, str], after: Posterior) -> tuple[str, str]:
    """The couplet or the character to look at next, among those that have a meaning for what is likely.

    The key goes on in its own order; then come the characters it would still ask, then all others. What comes later is asked
    instead only where it tells clearly more for its effort.
    """
    share, least, clearly = model.figure("asks-share"), model.figure("least-gain"), model.figure("clearly-better")
    asked = after.evidence.told | after.evidence.unsure
    reached, power = _reaching(model, compiled, given), power_at_hand(model, after)
    scope = mass(after.chance, compiled.scope)
    best, couplet, character = 0.0, "", ""
    for id in compiled.order:
        each = compiled.key.couplets[id]
        if id in given or id not in reached or set(each.characters) <= asked:
            continue
        if sum(map(mul, after.chance, reached[id])) < share * scope:
            continue
        gain = _gain(model, compiled.boxes[id], after)
        worth = gain / max(effort_of(model, name, power) for name in each.characters)
        if gain >= least and round(worth, 9) > round(clearly * best, 9):
            best, couplet = worth, id
    ahead = {name for id in reached if id not in given for name in compiled.key.couplets[id].characters}
    found = questions(model, after, power)
    for question in (*(each for each in found if each.character in ahead), *(each for each in found if each.character not in ahead)):
        if round(question.worth, 9) > round(clearly * best, 9):
            best, couplet, character = question.worth, "", question.character
    return couplet, character


def _reaching(model: Model, compiled: CompiledKey, given: Mapping[str, str]) -> dict[str, list[float]]:
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


def _gain(model: Model, leads: Mapping[str, Sequence[Box]], after: Posterior) -> float:
    """How much an answer is expected to tell, in bits, beyond what was told of its characters before."""
    names = frozenset(name for boxes in leads.values() for box in boxes for name in box)
    told: tuple[Box, ...] = ({},)
    for looks, boxes in after.evidence.parts:
        if any(look.characters & names for look in looks):
            told = met(told, boxes)
    chances = lead_chances(model, {lead: left for lead, boxes in leads.items() if (left := met(told, boxes))})
    return information([list(row) for row in zip(*chances.values(), strict=True)], after.chance)
