"""What to look at next: how much each look is expected to tell, for what it costs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from operator import mul

from keytool.identify.model import Model
from keytool.identify.observation_tables import Table, entropy
from keytool.identify.posterior import Posterior, mass
from keytool.library.pieces import Box
from keytool.library.value import States


@dataclass(frozen=True, slots=True)
class Question:
    """A character worth looking at: the expected gain in bits, its effort in plain looks, and gain for effort."""

    character: str
    gain: float
    effort: float

    @property
    def worth(self) -> float:
        """Bits for each look."""
        return self.gain / self.effort


def information(rows: Sequence[Sequence[float]], masses: Sequence[float], kinds: Sequence[int]) -> float:
    """How much an outcome is expected to tell about the kind of what is there, in bits: its entropy less what is left given the kind.

    `rows` are the chances of the outcomes for each thing, `masses` how likely each thing is, `kinds` the number of its kind.
    """
    total = sum(masses)
    outcomes = [0.0] * len(rows[0])
    of_kind: dict[int, list[float]] = {}
    for weight, row, kind in zip(masses, rows, kinds, strict=True):
        if weight > 0:
            each = of_kind.setdefault(kind, [0.0] * len(outcomes))
            of_kind[kind] = [before + weight * chance for before, chance in zip(each, row, strict=True)]
    outcomes = [sum(column) for column in zip(*of_kind.values(), strict=True)]
    left = sum(sum(each) * entropy(each) for each in of_kind.values())
    return max(0.0, entropy(outcomes) - left / total)


def questions(model: Model, after: Posterior, power: int, kinds: Sequence[int] = (), share: float = 0.0) -> list[Question]:
    """The characters that tell most for their effort, the best first, none that is settled or has no meaning for what is likely.

    What could not be told together with something else is asked by itself: who saw no edge may well have seen it move.

    `power` is the magnification at hand: a higher one costs a change. `kinds` are numbers of what is to be told apart, one for
    each entry: without them, the entries. A question must have a meaning for a `share` of what is likely (without one: that of
    the figures). What it takes for granted must be as likely as the figures say, if it was not told.
    """
    usual, least = model.figure("asks-share"), model.figure("least-gain")
    share = share or usual
    found = []
    for character in model.library.characters.values():
        if (was_asked(model, character.id, after) and character.id not in after.evidence.partly) or takes_open(model, character.id, after):
            continue
        if applying(model, after.chance, character.id) < share or granted(model, character.id, after) < usual:
            continue
        gain = _gain(model.tables[character.id], after, kinds)
        if gain >= least:
            found.append(Question(character.id, gain, effort_of(model, character.id, power)))
    return sorted(found, key=lambda each: (-round(each.worth, 9), each.character))


def _gain(table: Table, after: Posterior, kinds: Sequence[int]) -> float:
    masses: dict[tuple[int, int], float] = {}
    for number, chance in enumerate(after.chance):
        row = table.row[number]
        same = (row, kinds[number] if kinds else row)  # entries of one row are told apart by nothing that is seen of this character
        masses[same] = masses.get(same, 0.0) + chance
    return information([table.outcomes[row] for row, _ in masses], list(masses.values()), [kind for _, kind in masses])


def was_asked(model: Model, character: str, after: Posterior) -> bool:
    """Whether a character was told or could not be, or another one was told that looks at the same thing."""
    found = after.evidence
    return character in found.told | found.unsure or not found.told.isdisjoint(model.library.characters[character].settled_by)


def granted(model: Model, character: str, after: Posterior) -> float:
    """How likely what a character takes for granted is: a spear, for the length of one. 1 where it was told, or where it takes nothing."""
    found = 1.0
    for name, states in model.library.characters[character].applies.where.items():
        if name not in after.evidence.told:
            chances = model.tables[name].chances(States(frozenset(states)))
            found = min(found, sum(map(mul, after.chance, map(chances.__getitem__, model.tables[name].row))))
    return found


def takes_open(model: Model, character: str, after: Posterior) -> bool:
    """Whether a character has a meaning only if another is so, of which it could not be told whether it is, or was told that it is not."""
    where = model.library.characters[character].applies.where
    if not after.evidence.unsure.isdisjoint(where):
        return True
    wanted = {name: States(frozenset(states)) for name, states in where.items()}
    told = [boxes for _, boxes in after.evidence.parts if any(name in box for box in boxes for name in wanted)]
    return any(not any(_may_be(box, wanted) for box in boxes) for boxes in told)


def _may_be(box: Box, wanted: Box) -> bool:
    return all(name not in box or not box[name].meet(value).is_empty for name, value in wanted.items())


def effort_of(model: Model, name: str, power: int) -> float:
    """What it costs to see a character, in plain looks, from the magnification at hand; at a higher one it is seen as well."""
    character = model.library.characters[name]
    change = model.figure("change-power-cost") if character.magnification > power else 0.0
    return float(model.library.vocabulary["effort"][character.effort].get("weight", 1)) + change


def applying(model: Model, chance: Sequence[float], character: str) -> float:
    """The chance that what is there has such a part at all."""
    table = model.tables[character]
    return mass(chance, [number for number, has in enumerate(table.has) if has])


def power_at_hand(model: Model, after: Posterior) -> int:
    """The magnification that the last looks needed: the highest of what was looked at so far."""
    looked = after.evidence.told | after.evidence.unsure
    return max((model.library.characters[name].magnification for name in looked), default=40)
