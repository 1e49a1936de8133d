"""How likely each thing is seen of each character, given what is there: one table for each character, over all entries.

An entry that says what it shows is seen so, or misread at the rates of the character. One that is silent takes after its
nearest kin; one that has no such part shows the state that everything else shows, or anything at all, and then pays once for
being described so (`posterior`). So no entry wins by saying little.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from keytool.library.applies import applies, ruled_out_by, within_reach
from keytool.library.model import Character, Entry, Library
from keytool.library.value import Interval, Showing, States

DIGITS = 6
"""Chances in the tables are rounded to so many decimals, so that the pages' data is short and both languages have the same."""
BINS = 16
"""Into so many equal steps of its logarithm a number is cut when it is weighed as a question."""
LEAST = 1e-9
"""No look is quite impossible."""


@dataclass(frozen=True)
class Table:
    """What may be seen of one character.

    `rows` are the different rows of chances, one chance for each of `states` in order; for a number each row is the range
    (low, high) in base units, or empty where nothing is known. `row[i]` is the number of the row of the entry i, `has[i]`
    whether the character has a meaning for it. `domain` is the number of the set of entries that can be described so, -1 for
    all. `span` is the least and the greatest number of any entry, `misread` the rate at which a number is read quite wrongly,
    `soft` by how much of itself the ends of a range are blurred, `plus_minus` the reading error.
    """

    character: str
    states: tuple[str, ...]
    rows: tuple[tuple[float, ...], ...]
    row: tuple[int, ...]
    has: tuple[bool, ...]
    domain: int
    span: tuple[float, float] = (0.0, 0.0)
    misread: float = 0.0
    soft: float = 0.0
    plus_minus: float = 0.0

    @property
    def is_number(self) -> bool:
        """Whether it is a number."""
        return not self.states

    def chances(self, value: Showing) -> list[float]:
        """For each row, the chance that what is seen lies within a value."""
        if isinstance(value, States):
            inside = [number for number, state in enumerate(self.states) if state in value.ids]
            return [max(sum(row[number] for number in inside), LEAST) for row in self.rows]
        assert isinstance(value, Interval)
        blind = self.blind(value)
        return [max((1 - self.misread) * self._within(row, value) + self.misread * blind, LEAST) if row else blind for row in self.rows]

    def blind(self, value: Showing) -> float:
        """The chance of a value when nothing is known of what is there."""
        if isinstance(value, States):
            return sum(state in value.ids for state in self.states) / len(self.states)
        assert isinstance(value, Interval)
        low, high = (math.log(end) for end in self.span)
        return max(_share(_log(value.high), low, high) - _share(_log(value.low), low, high), LEAST)

    def _within(self, row: tuple[float, ...], value: Interval) -> float:
        low, high = math.log(row[0]), math.log(row[1])
        return _below(_log(value.high), low, high, self.soft) - _below(_log(value.low), low, high, self.soft)

    @cached_property
    def outcomes(self) -> list[list[float]]:
        """For each row, the chance of every outcome of looking: of each state, or of each of BINS steps of a number."""
        if not self.is_number:
            return [list(row) for row in self.rows]
        low, high = (math.log(end) for end in self.span)
        ends = [-math.inf, *(low + (high - low) * step / BINS for step in range(1, BINS)), math.inf]
        found = []
        for row in self.rows:
            blind = [1 / BINS] * BINS
            if row:
                a, b = math.log(row[0]), math.log(row[1])
                below = [_below(end, a, b, self.soft) for end in ends]
                blind = [(1 - self.misread) * (below[i + 1] - below[i]) + self.misread / BINS for i in range(BINS)]
            found.append(blind)
        return found


def entropy(weights: Sequence[float]) -> float:
    """Shannon entropy in bits of weights that need not add up to 1; 0 for none. Source: Shannon 1948 (from memory)."""
    total = sum(weights)
    return -sum(w / total * math.log2(w / total) for w in weights if w > 0) if total > 0 else 0.0


def _log(value: float) -> float:
    return math.inf if value == math.inf else math.log(value) if value > 0 else -math.inf


def _share(x: float, low: float, high: float) -> float:
    return min(1.0, max(0.0, (x - low) / (high - low)))


def _below(x: float, low: float, high: float, blur: float) -> float:
    """The chance that a logarithm spread evenly from low to high, with ends blurred evenly by `blur` to both sides, lies below x."""
    if x == math.inf or x == -math.inf:
        return float(x > 0)
    width = max(high - low, 1e-6)

    def ramp(t: float) -> float:
        return t * t / 2 if t > 0 else 0.0

    a, b = x - low, x - low - width
    return min(1.0, max(0.0, (ramp(a + blur) - ramp(a - blur) - ramp(b + blur) + ramp(b - blur)) / (2 * blur * width)))


def table(library: Library, character: Character, entries: Sequence[Entry], domain: int, weights: Sequence[float]) -> Table:
    """The table of one character. `weights` are how common the entries are, for what the silent take after their kin."""
    rows: dict[tuple[float, ...], int] = {}
    number: list[int] = []
    has: list[bool] = []
    kin = _Kin(library, character, entries, weights)
    for entry in entries:
        row = kin.row(entry)
        number.append(rows.setdefault(row, len(rows)))
        has.append(applies(library, character, entry))
    span = (0.0, 0.0)
    if character.is_number:
        ends = [end for row in rows for end in row]
        span = (min(ends, default=1.0) / 2, max(ends, default=1.0) * 2)
    quantities = library.quantities
    return Table(
        character.id,
        tuple(character.states),
        tuple(rows),
        tuple(number),
        tuple(has),
        domain,
        span,
        character.misread,
        math.log(1 + quantities["soft-edge"].low),
        character.plus_minus,
    )


class _Kin:
    """Rows of one character, also of the entries that are silent about it."""

    def __init__(self, library: Library, character: Character, entries: Sequence[Entry], weights: Sequence[float]) -> None:
        self.library, self.character = library, character
        self.stating = [
            (entry.id, library.ancestry(entry.id), weight)
            for entry, weight in zip(entries, weights, strict=True)
            if character.id in entry.statements
        ]
        self.stated = {
            entry.id: self._stated(entry.statements[character.id].showing) for entry in entries if character.id in entry.statements
        }
        self.known: dict[str, tuple[float, ...] | None] = {}

    def row(self, entry: Entry) -> tuple[float, ...]:
        if entry.id in self.stated:
            return self.stated[entry.id]
        character = self.character
        if not within_reach(self.library, character, entry.id):
            if character.applies.otherwise:
                return self._stated(States(frozenset({character.applies.otherwise})))
            return self._unknown()
        if ruled_out_by(self.library, character, entry):
            return self._unknown()
        for group in _upwards(self.library, entry):
            if (row := self._of_group(group)) is not None:
                return row
        return self._unknown()

    def _unknown(self) -> tuple[float, ...]:
        states = len(self.character.states)
        return tuple([round(1 / states, DIGITS)] * states) if states else ()

    def _stated(self, showing: Showing) -> tuple[float, ...]:
        if isinstance(showing, States):
            return tuple(round(chance, DIGITS) for chance in seen(self.character, showing))
        assert isinstance(showing, Interval)
        if (math.isinf(showing.low) and math.isinf(showing.high)) or showing.high < LEAST:
            return ()
        low = showing.low if showing.low > 0 and not math.isinf(showing.low) else showing.high / 10
        high = showing.high if not math.isinf(showing.high) else low * 10
        return (float(f"{low:.6g}"), float(f"{high:.6g}"))

    def _of_group(self, group: str) -> tuple[float, ...] | None:
        """What the members of a group show that say so, mixed by how common they are, or nothing if none does."""
        if group not in self.known:
            members = [(self.stated[id], weight) for id, above, weight in self.stating if group in above and self.stated[id]]
            self.known[group] = self._mixed(members) if members else None
        return self.known[group]

    def _mixed(self, members: Sequence[tuple[tuple[float, ...], float]]) -> tuple[float, ...]:
        if self.character.is_number:
            return (min(row[0] for row, _ in members), max(row[1] for row, _ in members))
        share, states, total = self.library.quantities["group-share"].low, len(self.character.states), sum(weight for _, weight in members)
        mean = [sum(row[state] * weight for row, weight in members) / total for state in range(states)]
        return tuple(round(share * each + (1 - share) / states, DIGITS) for each in mean)


def _upwards(library: Library, entry: Entry) -> Iterator[str]:
    """The groups that hold an entry, the nearest first."""
    waiting, met = list(entry.within), set[str]()
    while waiting:
        group = waiting.pop(0)
        if group not in met:
            met.add(group)
            yield group
            waiting += library.entries[group].within


def seen(character: Character, shown: States) -> list[float]:
    """The chance that each state is seen when one of some states is there, adding up to 1.

    Every state an entry may show is as likely as the next, and each is seen rightly or misread at the rates of its character.
    """
    return [sum(taken(character, true, state) for true in sorted(shown.ids)) / len(shown.ids) for state in character.states]


def taken(character: Character, true: str, seen: str) -> float:
    """The chance that one state is taken for another, or seen for what it is."""

    def mixed_up(other: str) -> float:
        return character.mix_ups.get((true, other), character.misread / (len(character.states) - 1))

    return mixed_up(seen) if seen != true else 1 - sum(mixed_up(other) for other in character.states if other != true)


def domains(library: Library, entries: Sequence[Entry]) -> tuple[Mapping[str, int], tuple[tuple[int, ...], ...]]:
    """For each character the number of the set of entries that can be described so (-1: all), and those sets."""
    numbers: dict[tuple[int, ...], int] = {}
    found: dict[str, int] = {}
    for character in library.characters.values():
        if not character.applies.to or character.applies.otherwise:
            found[character.id] = -1
            continue
        inside = tuple(
            index for index, entry in enumerate(entries) if character.id in entry.statements or within_reach(library, character, entry.id)
        )
        found[character.id] = numbers.setdefault(inside, len(numbers))
    return found, tuple(numbers)
