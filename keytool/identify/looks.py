"""What may be seen of each character that a key asks about, and how likely each is.

Whoever looks at a character sees one thing, however many couplets ask about it. So all that a
character could show is cut along the leads of all of them, and the chance of each piece is
worked out once for each entry. Every answer about the character follows from the piece seen.

A state is misread at the rates of its character. A misread number lies evenly in any other
piece: where couplets of one key cut a number at different limits, there are more pieces than
one of them knows of, and a limit far from what is there is less often read past than a near
one. (Had every limit its full rate, as if it alone were asked, one number read could never lie
between two limits, unless the thing itself does: each misreading would pass both.)
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import product

from keytool.identify.weigh import seen
from keytool.library.model import Couplet, Entry, Key, Library
from keytool.library.pieces import holds, pieces
from keytool.library.requirements import everything
from keytool.library.value import Showing

DIGITS = 12
"""Chances are rounded to so many decimals, for the page's data to be short."""


@dataclass(frozen=True, slots=True)
class Take:
    """A piece of each character of a couplet, in order, and the leads it may be answered with, by number; each as often."""

    pieces: tuple[int, ...]
    leads: tuple[int, ...]


@dataclass(frozen=True)
class Looks:
    """What the characters of one key look like.

    `rows[character]` are the different rows of chances of its pieces, each adding up to 1;
    `row[entry][character]` is the number of the row of an entry, of characters it says something of.
    `takes[couplet]` is every combination of pieces of what the couplet asks; all its leads are
    as likely as each other where none fits.
    """

    rows: Mapping[str, Sequence[tuple[float, ...]]]
    row: Mapping[str, Mapping[str, int]]
    takes: Mapping[str, tuple[Take, ...]]


def looks(library: Library, key: Key, members: Sequence[Entry]) -> Looks:
    """The looks of one key."""
    wholes: dict[str, list[Showing]] = {}
    for couplet in key.couplets.values():
        for name in couplet.characters:
            before = wholes.get(name, [everything(library.characters[name])])
            wholes[name] = [part for whole in before for part in pieces(name, couplet.leads.values(), whole)]
    rows: dict[str, list[tuple[float, ...]]] = {name: [] for name in wholes}
    known: dict[tuple[str, Showing], int] = {}
    row: dict[str, dict[str, int]] = {}
    for entry in members:
        row[entry.id] = {}
        for name, each in wholes.items():
            if name in entry.statements:
                shown = entry.statements[name].showing
                if (name, shown) not in known:
                    found = tuple(round(chance, DIGITS) for chance in seen(library.characters[name], each, shown))
                    if found not in rows[name]:
                        rows[name].append(found)
                    known[name, shown] = rows[name].index(found)
                row[entry.id][name] = known[name, shown]
    return Looks(rows, row, {couplet.id: tuple(_takes(couplet, wholes)) for couplet in key.couplets.values()})


def _takes(couplet: Couplet, wholes: Mapping[str, Sequence[Showing]]) -> Iterator[Take]:
    leads = list(couplet.leads)
    for combination in product(*(enumerate(wholes[name]) for name in couplet.characters)):
        holding = holds(couplet, dict(zip(couplet.characters, (piece for _, piece in combination), strict=True)))
        yield Take(tuple(number for number, _ in combination), tuple(leads.index(lead.id) for lead in holding) or tuple(range(len(leads))))


def alone(looks: Looks, key: Key, members: Sequence[Entry]) -> Mapping[str, Mapping[str, tuple[float, ...]]]:
    """For each couplet and entry, the chance of each lead, in order, when nothing else was answered.

    They add up to 1. Where the entry does not say what the couplet asks, every lead is as likely as any other.
    """
    return {couplet.id: dict(_alone(looks, couplet, members)) for couplet in key.couplets.values()}


def _alone(looks: Looks, couplet: Couplet, members: Sequence[Entry]) -> Iterator[tuple[str, tuple[float, ...]]]:
    known: dict[tuple[int, ...], tuple[float, ...]] = {}
    for entry in members:
        if any(name not in entry.statements for name in couplet.characters):
            yield entry.id, (1 / len(couplet.leads),) * len(couplet.leads)
            continue
        numbers = tuple(looks.row[entry.id][name] for name in couplet.characters)
        if numbers not in known:
            axes = [looks.rows[name][number] for name, number in zip(couplet.characters, numbers, strict=True)]
            chance = [0.0] * len(couplet.leads)
            for take in looks.takes[couplet.id]:
                share = math.prod(axis[piece] for axis, piece in zip(axes, take.pieces, strict=True)) / len(take.leads)
                for lead in take.leads:
                    chance[lead] += share
            known[numbers] = tuple(chance)
        yield entry.id, known[numbers]
