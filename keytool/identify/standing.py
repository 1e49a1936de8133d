"""Walk a key: one answer at a time, with "cannot tell" as a proper answer, and back.

A walk is nothing but its answers, so it has an address: `rings=fine/spear=cannot-tell`. The
same address gives the same standing here, in the terminal and on the page.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from keytool.identify.answer import CANNOT_TELL, Answer, Answers, told
from keytool.identify.ground import Ground
from keytool.identify.joint import chances, next_chances
from keytool.identify.weigh import entropy
from keytool.library.value import Showing

LEAST_GAIN = 1e-6


class NoSuchAnswer(Exception):
    """Raised for an address that this key does not have; the message says which part, and what is there."""


@dataclass(frozen=True, slots=True)
class Standing:
    """Where a walk stands.

    `asks` is the couplet to answer next, empty at an end. `ends` are the ends and onward keys
    that can still be reached, the likeliest first: exactly one when the walk has arrived, more
    when it had to stop undecided. `possible` are the entries that fit every answer, the
    likeliest first; `chance` is the chance of each entry in scope, answers and misreading
    considered.
    """

    asks: str
    ends: tuple[str, ...]
    possible: tuple[str, ...]
    chance: Mapping[str, float]

    @property
    def is_over(self) -> bool:
        """Whether there is nothing left to ask."""
        return not self.asks


def address(answers: Answers) -> str:
    """The address of a walk, without the key: `couplet=lead/couplet=lead`."""
    return "/".join(f"{each.couplet}={each.lead}" for each in answers)


def answers_at(ground: Ground, address: str) -> Answers:
    """The answers of an address.

    Raises:
        NoSuchAnswer: it names a couplet or a lead that the key does not have, or one couplet
            twice, or a couplet that is not asked at that point.
    """
    answers: Answers = ()
    for part in filter(None, address.split("/")):
        couplet, _, lead = part.partition("=")
        if couplet not in ground.key.couplets:
            raise NoSuchAnswer(f"'{couplet}' is not a couplet of {ground.key.id}.")
        allowed = [*ground.key.couplets[couplet].leads, CANNOT_TELL]
        if lead not in allowed:
            raise NoSuchAnswer(f"'{lead}' is not an answer to '{couplet}'. Answers: {', '.join(allowed)}.")
        asked = stand(ground, answers).asks
        if couplet != asked:
            raise NoSuchAnswer(f"'{couplet}' is not asked there; " + (f"the question is '{asked}'." if asked else "the walk is over."))
        answers = (*answers, Answer(couplet, lead))
    return answers


def stand(ground: Ground, answers: Answers) -> Standing:
    """Where the answers lead.

    As long as every question is answered the key is followed as printed. After a "cannot
    tell" all its leads stay open, and the next question is the one, of those they lead to,
    that tells most about what is still possible.
    """
    given = {each.couplet: each.lead for each in answers}
    chance = chances(ground, answers)
    possible = tuple(sorted(_possible(ground, answers), key=lambda id: (-round(chance[id], 9), id)))
    open_couplets, ends = _reach(ground, given, possible)
    asks = ""
    if open_couplets:
        asks = open_couplets[0]
        if CANNOT_TELL in given.values() and (len(open_couplets) > 1 or ends):
            asks = _best_question(ground, answers, open_couplets, possible, chance)
    if asks:
        ends = ()
    elif open_couplets:
        ends = _reach(ground, given, possible, through=True)[1]
    sure = {end: sum(chance[id] for id in ground.within[end]) for end in ends}
    return Standing(asks, tuple(sorted(ends, key=lambda end: (-round(sure[end], 9), end))), possible, chance)


def _possible(ground: Ground, answers: Answers) -> list[str]:
    """The entries that may show all that was answered, each character taken together over all answers."""
    said = told(answers)
    wanted: dict[str, list[Showing]] = {}
    for each in said:
        for name, showing in ground.wants[each.couplet][each.lead].items():
            wanted.setdefault(name, []).append(showing)

    def fits(id: str) -> bool:
        if any(each.lead not in ground.may[each.couplet][id] for each in said):
            return False
        statements = ground.library.entries[id].statements
        for name, showings in wanted.items():
            if name in statements:
                left = statements[name].showing
                for showing in showings:
                    left = left.meet(showing)
                if left.is_empty:
                    return False
        return True

    return [entry.id for entry in ground.members if fits(entry.id)]


def _reach(
    ground: Ground, given: Mapping[str, str], possible: tuple[str, ...], *, through: bool = False
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The unanswered couplets and the ends that lie before us, in reading order.

    Past a "cannot tell" only leads that something still possible may take are followed; with
    `through` unanswered couplets are passed in the same way, so that all ends ahead are found.
    """
    couplets: dict[str, None] = {}
    ends: dict[str, None] = {}
    waiting, seen = [ground.key.first], set()
    while waiting:
        at = waiting.pop()
        if at in seen:
            continue
        seen.add(at)
        leads = ground.key.couplets[at].leads
        answer = given.get(at)
        if answer is None:
            couplets[at] = None
            if not through:
                continue
        if answer is None or answer == CANNOT_TELL:
            live = [lead for lead in leads if any(lead in ground.may[at][id] for id in possible)] or list(leads)
        else:
            live = [answer]
        for id in live:
            lead = leads[id]
            if lead.couplet:
                waiting.append(lead.couplet)
            else:
                ends[lead.goes_to] = None
    number = {couplet.id: couplet.number for couplet in ground.key.couplets.values()}
    return tuple(sorted(couplets, key=number.__getitem__)), tuple(ends)


def _best_question(
    ground: Ground, answers: Answers, nearest: tuple[str, ...], possible: tuple[str, ...], chance: Mapping[str, float]
) -> str:
    """The unanswered couplet ahead that tells most, or an empty text when none tells anything.

    The wording of a couplet may take for granted what the couplets before it ask ("the whip of
    this slider"). So one behind another that is unanswered is only asked when none of the `nearest` tells anything.
    """
    everywhere, ends = _reach(ground, {each.couplet: each.lead for each in answers}, possible, through=True)
    if len(ends) < 2:
        return ""
    for candidates in (nearest, everywhere):
        gains = {id: gain(ground, answers, id, possible, chance) for id in candidates}
        best = max(candidates, key=lambda id: round(gains[id], 6))
        if gains[best] > LEAST_GAIN:
            return best
    return ""


def gain(ground: Ground, answers: Answers, couplet: str, possible: tuple[str, ...], chance: Mapping[str, float]) -> float:
    """How much an answer at a couplet is expected to tell about what is still possible, in bits.

    What the answers before say of a character it asks about is no news a second time.

    Source: information gain, Shannon 1948 (from memory).
    """
    before = [chance[id] for id in possible]
    total = sum(before)
    after = 0.0
    for given in next_chances(ground, answers, couplet, possible):
        joint = [chance[id] * given[id] for id in possible]
        after += sum(joint) / total * entropy(joint) if total > 0 else 0.0
    return entropy(before) - after
