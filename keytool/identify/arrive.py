"""At an end: how sure, the nearest rivals, and the looks that would expose a mistake."""

from __future__ import annotations

from dataclasses import dataclass

from keytool.identify.answer import Answers, told
from keytool.identify.ground import Ground
from keytool.identify.standing import Standing

LEAST_RIVAL = 0.005
RIVALS = 2


@dataclass(frozen=True, slots=True)
class Rival:
    """Another end that the answers do not quite rule out: the narrowest that holds the likeliest entry not held yet.

    `chance` is the chance of what it holds and neither the end arrived at nor a nearer rival
    does; `entry` the likeliest of that; `couplet` the answer that speaks most against it: if one
    look was wrong, it is most likely that one. Empty when every answer was "cannot tell".
    """

    end: str
    chance: float
    entry: str
    couplet: str


@dataclass(frozen=True, slots=True)
class Arrival:
    """What an end means: `sure` is the chance (0 to 1, an estimate) that it holds what lies under the lens.

    `members` are the entries it holds that fit the answers, the likeliest first.
    """

    end: str
    sure: float
    members: tuple[str, ...]
    rivals: tuple[Rival, ...]


def arrivals(ground: Ground, answers: Answers, standing: Standing) -> tuple[Arrival, ...]:
    """One arrival for each end still open, the likeliest first; one only when the walk has arrived."""
    return tuple(_arrival(ground, answers, standing, end) for end in standing.ends)


def _arrival(ground: Ground, answers: Answers, standing: Standing, end: str) -> Arrival:
    held = ground.within[end]
    rivals: list[Rival] = []
    taken = held
    while len(rivals) < RIVALS:
        left = sorted(standing.chance.keys() - taken, key=lambda id: (-round(standing.chance[id], 9), id))
        nearest = next((_narrowest(ground, id) for id in left if _narrowest(ground, id)), "")
        if not nearest or _mass(standing, ground.within[nearest] - taken) < LEAST_RIVAL:
            break
        rivals.append(_rival(ground, answers, standing, nearest, taken))
        taken |= ground.within[nearest]
    return Arrival(end, _mass(standing, held), tuple(id for id in standing.possible if id in held), tuple(rivals))


def _mass(standing: Standing, entries: frozenset[str]) -> float:
    return sum(standing.chance[id] for id in sorted(entries))


def _narrowest(ground: Ground, entry: str) -> str:
    """The end that says most about an entry: of those that hold it, the one that holds fewest."""
    holding = [end for end, ids in ground.within.items() if entry in ids]
    return min(holding, key=lambda end: (len(ground.within[end]), end), default="")


def _rival(ground: Ground, answers: Answers, standing: Standing, end: str, taken: frozenset[str]) -> Rival:
    rest = ground.within[end] - taken
    entry = min(rest, key=lambda id: (-round(standing.chance[id], 9), id))
    said = told(answers)

    def fit(index: int) -> float:
        each = said[index]
        return ground.chance[each.couplet][entry][list(ground.key.couplets[each.couplet].leads).index(each.lead)]

    against = said[min(range(len(said)), key=fit)].couplet if said else ""
    return Rival(end, _mass(standing, rest), entry, against)
