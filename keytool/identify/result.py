"""What a trail comes to, said briefly: the narrowest group that holds, at most five names, and whether that is settled."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from keytool.identify.model import Model
from keytool.identify.posterior import Look, Posterior, mass
from keytool.identify.questions import Question, power_at_hand, questions

COUNTED = 0.0005
"""The least chance of a name that is counted among the rest: half of what is printed at the finest, 0.1 %."""


@dataclass(frozen=True, slots=True)
class Named:
    """An entry, a group or a feeding group, with its chance and the word for how sure that is."""

    id: str
    chance: float
    word: str


@dataclass(frozen=True)
class Identification:
    """What is there, as far as was told.

    `verdict` is the narrowest group (or entry) that holds most of the chance, none where none does; then `leading` is the narrowest
    that holds more than all the rest, if any does; `names` the likeliest entries; `more` and `more_chance` how many others there
    are and what they come to; `settled` whether the first name or the verdict leads clearly; `feeding` the chance of each feeding
    group, over what is likely, where an entry that may feed in several ways counts for each in equal parts; `lives` the feeding
    groups that nearly all that is likely has, whatever it eats besides; `cautions` those of the kind given when likely that half of
    the chance carries, whether or not one group holds it; `fits` is false where something that is not in the library explains
    better; `next` the looks that tell most for their effort; `conflicts` what was left out since something told later contradicts
    it; `after` the chance of everything.
    """

    verdict: Named | None
    leading: Named | None
    names: tuple[Named, ...]
    more: int
    more_chance: float
    settled: bool
    feeding: tuple[Named, ...]
    lives: tuple[Named, ...]
    cautions: tuple[str, ...]
    outside: float
    fits: bool
    next: tuple[Question, ...]
    conflicts: tuple[Look, ...]
    after: Posterior


def identification(model: Model, after: Posterior) -> Identification:
    """The result of a posterior."""
    chance = after.chance
    ranked = sorted(range(len(chance)), key=lambda number: (-round(chance[number], 9), model.entries[number]))
    least, most = model.figure("name-share"), int(model.figure("names-most"))
    listed = [number for number in ranked[:most] if chance[number] >= least]
    rest = [number for number in ranked if number not in listed and chance[number] >= COUNTED]
    verdict = narrowest(model, chance, model.figure("holds-share"))
    first, second = chance[ranked[0]], chance[ranked[1]] if len(ranked) > 1 else 0.0
    return Identification(
        verdict,
        None if verdict else narrowest(model, chance, model.figure("leads-share")),
        tuple(Named(model.entries[number], chance[number], word(model, chance[number])) for number in listed),
        len(rest),
        1 - mass(chance, listed),
        verdict is not None or first >= model.figure("settled-lead") * second,
        _feeding(model, chance, model.figure("name-share")),
        _feeding(model, chance, model.figure("holds-share"), whole=True),
        tuple(id for id, numbers in model.cautions.items() if mass(chance, numbers) >= model.figure("caution-share")),
        after.outside,
        after.outside < model.figure("outside-share"),
        tuple(questions(model, after, power_at_hand(model, after))),
        after.evidence.conflicts,
        after,
    )


def narrowest(model: Model, chance: Sequence[float], share: float, among: Mapping[str, Sequence[int]] | None = None) -> Named | None:
    """The narrowest of some sets that holds a share of the chance: the one with fewest members, then the likeliest."""
    sets = among if among is not None else {**{id: (number,) for id, number in model.index.items()}, **model.groups}
    holding = [(len(numbers), -round(mass(chance, numbers), 9), id) for id, numbers in sets.items() if mass(chance, numbers) >= share]
    if not holding:
        return None
    _, _, best = min(holding)
    held = mass(chance, sets[best])
    return Named(best, held, word(model, held))


def word(model: Model, chance: float) -> str:
    """The word of the closed list `sureness` for a chance."""
    scale = model.library.vocabulary["sureness"]
    return next(id for id, each in scale.items() if round(chance, 9) >= float(each.get("from")))


def _feeding(model: Model, chance: Sequence[float], least: float, *, whole: bool = False) -> tuple[Named, ...]:
    """The feeding groups with at least a chance; an entry with several counts for each in equal parts, or `whole` for each."""
    shares: dict[str, float] = {}
    for number, id in enumerate(model.entries):
        eats = model.library.entries[id].feeding
        for feeding in eats:
            shares[feeding] = shares.get(feeding, 0.0) + chance[number] / (1 if whole else len(eats))
    ranked = sorted(shares.items(), key=lambda each: (-round(each[1], 9), each[0]))
    return tuple(Named(id, share, word(model, share)) for id, share in ranked if share >= least)
