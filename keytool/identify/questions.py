"""What to look at next: how much each look is expected to tell, for what it costs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from keytool.identify.model import Model
from keytool.identify.observation_tables import entropy
from keytool.identify.posterior import Posterior, mass


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


def information(rows: Sequence[Sequence[float]], masses: Sequence[float], noise: Sequence[float] | None = None) -> float:
    """How much an outcome is expected to tell about what is there, in bits: its entropy less what is left when that is known.

    `rows` are the chances of the outcomes for each kind of thing, `masses` how likely each kind is; `noise` the entropy of each
    row, where it is known.
    """
    total = sum(masses)
    outcomes = [0.0] * len(rows[0])
    left = 0.0
    for number, (weight, row) in enumerate(zip(masses, rows, strict=True)):
        if weight > 0:
            outcomes = [before + weight * chance for before, chance in zip(outcomes, row, strict=True)]
            left += weight * (noise[number] if noise else entropy(row))
    return max(0.0, entropy(outcomes) - left / total)


def questions(model: Model, after: Posterior, power: int) -> list[Question]:
    """The characters that tell most for their effort, the best first, none that is settled or has no meaning for what is likely.

    `power` is the magnification at hand: another one costs a change.
    """
    share, least = model.figure("asks-share"), model.figure("least-gain")
    asked = after.evidence.told | after.evidence.unsure
    found = []
    for character in model.library.characters.values():
        table = model.tables[character.id]
        if character.id in asked or applying(model, after.chance, character.id) < share:
            continue
        masses = [0.0] * len(table.rows)
        for number, chance in zip(table.row, after.chance, strict=True):
            masses[number] += chance
        gain = information(table.outcomes, masses, table.noise)
        if gain >= least:
            found.append(Question(character.id, gain, effort_of(model, character.id, power)))
    return sorted(found, key=lambda each: (-round(each.worth, 9), each.character))


def effort_of(model: Model, name: str, power: int) -> float:
    """What it costs to see a character, in plain looks, from the magnification at hand."""
    character = model.library.characters[name]
    change = model.figure("change-power-cost") if character.magnification != power else 0.0
    return float(model.library.vocabulary["effort"][character.effort].get("weight", 1)) + change


def applying(model: Model, chance: Sequence[float], character: str) -> float:
    """The chance that what is there has such a part at all."""
    table = model.tables[character]
    return mass(chance, [number for number, has in enumerate(table.has) if has])


def power_at_hand(model: Model, after: Posterior) -> int:
    """The magnification that the last looks needed: the highest of what was told so far."""
    return max((model.library.characters[name].magnification for name in after.evidence.told), default=40)
