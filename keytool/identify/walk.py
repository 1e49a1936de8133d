"""Walk a key: one answer at a time, with "cannot tell" as a proper answer, and anything else that was seen besides.

A walk is nothing but what was told, so it has an address. As long as every question is answered the key is followed as printed,
but for questions that are settled by what was told already, and those of which one answer is as good as sure. After a "cannot tell"
everything stays possible. Where one answer is likely enough all the same, the walk goes on with it; where one of the onward keys
holds most of what is still likely, it goes on there and says so; else it asks what parts the ends best for its effort (`asking`).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from keytool.identify.asking import best_question, lead_chances, leads_left, told_of
from keytool.identify.model import CompiledKey, Model
from keytool.identify.observation import CANNOT_TELL, Answer, Leg, Trail
from keytool.identify.posterior import Posterior, mass, met, posterior
from keytool.identify.result import Identification, Named, identification, narrowest, word
from keytool.library.graph import one_way
from keytool.library.pieces import Box


@dataclass(frozen=True)
class WalkState:
    """Where a walk stands.

    `asks` is the couplet to answer next, or `asks_character` a character to look at instead; both empty when it is over.
    `arrived` is the end it came to, `goes_on` the key that takes over; both empty while something is asked, or when it stops
    undecided. `holds` is the chance that the key that takes over holds it, where the walk goes on there only because most of what
    is still likely lies there; 1 where an answer leads there. `passed` are the couplets that what was told has settled, each with
    its lead, and `likely` those passed over because one lead is likely enough, with how likely; `open` those that could not be
    told. `ends` are the ends and onward keys of this key that are likely, the likeliest first.
    """

    asks: str
    asks_character: str
    arrived: str
    goes_on: str
    holds: float
    passed: Mapping[str, str]
    likely: Mapping[str, float]
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
    passed, likely, at, end = _printed(model, compiled, given, after, plainly=_is_plain(trail))
    opened = {each.key for each in trail.legs}
    end = "" if end in opened else end
    asks, asks_character, holds = "", "", 1.0
    if at and given.get(at) != CANNOT_TELL and not _could_not_be_told(compiled, at, after):
        asks = at
    elif at:
        asks, asks_character, end = _undecided(model, compiled, given, after, trail)
    goes_on = end if end in model.keys else ""
    if goes_on and (at or likely):
        holds = mass(after.chance, model.keys[end].scope)
    undecided = tuple(id for id in compiled.order if given.get(id) == CANNOT_TELL)
    ends = _ends(model, compiled, after)
    return WalkState(asks, asks_character, "" if goes_on else end, goes_on, holds, passed, likely, undecided, ends, result)


def _could_not_be_told(compiled: CompiledKey, couplet: str, after: Posterior) -> bool:
    """Whether a couplet asks only what could not be told already: to ask it would be to ask again."""
    return after.evidence.unsure.issuperset(compiled.key.couplets[couplet].characters)


def _is_plain(trail: Trail) -> bool:
    """Whether one key is walked and everything asked was told: then a page can say beforehand what comes, without the engine.

    So the first question, and one to which several ways lead, are not passed over there as likely.
    """
    return len(trail.legs) == 1 and not trail.pictures and not unsure_looks(trail)


def _undecided(model: Model, compiled: CompiledKey, given: Mapping[str, str], after: Posterior, trail: Trail) -> tuple[str, str, str]:
    """After a "cannot tell": the couplet or the character to ask, or the end or key where the walk goes; one of the three.

    What is common is no finding, so nothing is ended before something was told.
    """
    unsure, figure = unsure_looks(trail), model.figure
    most = figure("unsure-most") + figure("unsure-more") * (len(trail.legs) - 1)
    if not after.evidence.told:
        couplet, character, _ = best_question(model, compiled, given, after)
        return (couplet, character, "") if unsure < most else ("", "", "")
    if end := _settled(model, compiled, after) or _most(model, compiled, after, trail, figure("goes-on-share")):
        return "", "", end
    couplet, character, worth = best_question(model, compiled, given, after)
    if unsure > 1 and worth < figure("splits-worth") and (key := _most(model, compiled, after, trail, figure("goes-on-unsure"))):
        return "", "", key
    if worth > 0 and unsure < most:
        return couplet, character, ""
    return "", "", _only(model, compiled, after) or _most(model, compiled, after, trail, figure("goes-on-least"))


def unsure_looks(trail: Trail) -> int:
    """How often a trail says that something could not be told."""
    return sum(each.lead == CANNOT_TELL for leg in trail.legs for each in leg.answers) + sum(each.is_unsure for each in trail.saw)


def _most(model: Model, compiled: CompiledKey, after: Posterior, trail: Trail, least: float) -> str:
    """The key not opened yet that holds most, at least a share; of those a narrower one within it, if that holds as much of it.

    Where the present key holds most of what is still likely by itself, only its own onward keys come into question.
    """
    opened = {each.key for each in trail.legs}
    near = mass(after.chance, compiled.scope) >= model.figure("goes-on-unsure")
    keys = [id for id in model.keys if id not in opened and (id in compiled.within or not near)]
    found = [(round(mass(after.chance, model.keys[id].scope), 9), -len(model.keys[id].scope), id) for id in keys]
    held = [each for each in found if each[0] >= least]
    return max(held)[2] if held else ""


def _printed(
    model: Model, compiled: CompiledKey, given: Mapping[str, str], after: Posterior, *, plainly: bool
) -> tuple[dict[str, str], dict[str, float], str, str]:
    """The key as printed: what is passed over, the couplet where it stands (unanswered, or not told), and the end it came to."""
    passed: dict[str, str] = {}
    likely: dict[str, float] = {}
    at = compiled.key.first
    while True:
        lead = given.get(at, "")
        if lead in ("", CANNOT_TELL):
            share = model.figure("holds-share" if lead else "passes-share")
            lead = settled_lead(compiled.boxes[at], after)
            if not lead and not (plainly and at in compiled.printed):
                lead, held = likely_lead(model, compiled, at, after, share)
                if lead:
                    likely[at] = held
            if not lead:
                return passed, likely, at, ""
            passed[at] = lead
        taken = compiled.key.couplets[at].leads[lead]
        if not taken.couplet:
            return passed, likely, "", taken.goes_to
        at = taken.couplet


def settled_lead(leads: Mapping[str, Sequence[Box]], after: Posterior) -> str:
    """The one lead that what was told of a couplet's characters leaves, or an empty text where several are open."""
    told = told_of(leads, after)
    if not any(told):
        return ""
    fitting = [lead for lead, boxes in leads.items() if met(told, boxes)]
    return fitting[0] if len(fitting) == 1 else ""


def sure_leads(model: Model, key: str) -> dict[str, str]:
    """The questions that a walk of one key alone passes over as long as everything is told, each with the answer taken as likely.

    So a page knows them without the engine: only one way leads to each.
    """
    compiled, found = model.keys[key], dict[str, str]()
    for couplet, way in sorted(one_way(compiled.key).items(), key=lambda each: len(each[1])):
        told = tuple(Answer(at, lead) for at, lead in way if found.get(at) != lead)
        after = posterior(model, Trail(legs=(Leg(key, told),)))
        if not settled_lead(compiled.boxes[couplet], after):
            lead, _ = likely_lead(model, compiled, couplet, after, model.figure("passes-share"))
            if lead and couplet not in compiled.printed:
                found[couplet] = lead
    return found


def likely_lead(model: Model, compiled: CompiledKey, couplet: str, after: Posterior, share: float) -> tuple[str, float]:
    """The lead that a share of what is still likely in the key's scope would take, with that share; else an empty text and 0.

    Only what takes the lead with hardly a doubt counts for it, and nothing is passed over before something was told.
    """
    takes = model.figure("takes-share")
    scope = mass(after.chance, compiled.scope)
    if not after.evidence.told:
        return "", 0.0
    for lead, chances in lead_chances(model, leads_left(compiled.boxes[couplet], after)).items():
        held = sum(after.chance[number] for number in compiled.scope if chances[number] >= takes) / scope
        if held >= share:
            return lead, held
    return "", 0.0


def _settled(model: Model, compiled: CompiledKey, after: Posterior) -> str:
    """The narrowest end that holds most of the chance, or an empty text."""
    found = narrowest(model, after.chance, model.figure("holds-share"), compiled.within)
    return found.id if found else ""


def _only(model: Model, compiled: CompiledKey, after: Posterior) -> str:
    """The end a walk stops at when nothing is left to ask: the first, where it leads clearly and is likelier than all that is not in it."""
    ends = _ends(model, compiled, after)
    if not ends or ends[0].chance < model.figure("leads-share"):
        return ""
    return ends[0].id if len(ends) == 1 or ends[0].chance >= model.figure("settled-lead") * ends[1].chance else ""


def _ends(model: Model, compiled: CompiledKey, after: Posterior) -> tuple[Named, ...]:
    least = model.figure("name-share")
    found = [(mass(after.chance, numbers), id) for id, numbers in compiled.within.items()]
    ranked = sorted(found, key=lambda each: (-round(each[0], 9), each[1]))
    return tuple(Named(id, chance, word(model, chance)) for chance, id in ranked if chance >= least)
