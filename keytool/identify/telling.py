"""What of an entry tells most: its statements in the order in which they part it from what it is mistaken for."""

from __future__ import annotations

import math
from collections.abc import Sequence

from keytool.identify.observation_tables import LEAST, seen
from keytool.library.model import Character, Entry, Library, Statement
from keytool.library.value import Interval, Showing, States
from keytool.library.wording import stated


def telling_first(library: Library, entry: Entry) -> list[tuple[str, list[Statement]]]:
    """What an entry states, its own statements first, then those of each group that holds it; of each the most telling first.

    First come the looks that the entry itself names against a double. The rest follow by how many bits a look is expected to tell
    for the entry and against one of its doubles, on the mean: what it is mistaken for, or stands beside in a set of look-alikes;
    where it has none, all of its theme. A double that does not state a character counts as told nothing. Source of the measure:
    Kullback and Leibler 1951 (from memory).
    """
    others = _doubles(library, entry)
    named = {each.character for each in entry.mistaken_for}

    def rank(statement: Statement) -> tuple[bool, float]:
        return (statement.character not in named, -round(_bits(library, statement, others), 9))

    return [(group, sorted(statements, key=rank)) for group, statements in stated(library, entry)]


def _doubles(library: Library, entry: Entry) -> list[Entry]:
    beside = [id for each in library.look_alikes.values() if entry.id in each.entries for id in each.entries]
    ids = dict.fromkeys([*(each.entry for each in entry.mistaken_for), *beside])
    near = [library.entries[id] for id in ids if id != entry.id and id not in library.ancestry(entry.id)]
    return near or [each for each in library.entries.values() if each.theme == entry.theme and not each.within and each.id != entry.id]


def _bits(library: Library, statement: Statement, others: Sequence[Entry]) -> float:
    character = library.characters[statement.character]
    there = [each.statements[character.id].showing for each in others if character.id in each.statements]
    return sum(_against(character, statement.showing, each) for each in there) / max(1, len(others))


def _against(character: Character, one: Showing, other: Showing) -> float:
    """The bits that a look at one thing is expected to tell for it and against another."""
    if isinstance(one, States) and isinstance(other, States):
        return _expected(seen(character, one), seen(character, other))
    assert isinstance(one, Interval)
    assert isinstance(other, Interval)
    outside, misread = _share_outside(one, other), character.misread
    read = (1 - misread) * outside + misread * (1 - outside)
    return _expected([read, 1 - read], [misread, 1 - misread])


def _expected(one: Sequence[float], other: Sequence[float]) -> float:
    return sum(p * math.log2(p / max(q, LEAST)) for p, q in zip(one, other, strict=True) if p > 0)


def _share_outside(one: Interval, other: Interval) -> float:
    """How much of a range, in steps of its logarithm, lies outside another; an open end runs on over one power of ten."""
    low, high = _logs(one)
    from_, to = _logs(other)
    return 1 - max(0.0, min(high, to) - max(low, from_)) / max(high - low, LEAST)


def _logs(interval: Interval) -> tuple[float, float]:
    high = max(interval.high, LEAST) if not math.isinf(interval.high) else 10 * max(interval.low, LEAST)
    low = interval.low if interval.low > 0 else high / 10
    return math.log10(low), max(math.log10(high), math.log10(low) + LEAST)
