"""What may be shown or seen, cut along the leads of a couplet: which leads take which piece of it.

Walk, proofs, cost, contributing and the check on division all cut here.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import product

from keytool.library.model import Couplet, Lead, Library
from keytool.library.requirements import everything
from keytool.library.value import Interval, Showing, States

Showings = Mapping[str, Showing]
Box = Mapping[str, Showing]
"""A stretch of what may be seen: a value for each of some characters, all at once."""


@dataclass(frozen=True, slots=True)
class Cell:
    """A part of what may be shown within which every lead either holds or does not.

    `share` is how much of the whole it is, 0 to 1; `leads` are the leads that hold in it:
    one, unless the couplet has a gap (none) or an overlap (several).
    """

    showings: Mapping[str, Showing]
    share: float
    leads: tuple[Lead, ...]


def unstated(couplet: Couplet, showings: Showings) -> tuple[str, ...]:
    """The characters a couplet asks about of which nothing is said."""
    return tuple(name for name in couplet.characters if name not in showings)


def cells(couplet: Couplet, showings: Showings) -> Iterator[Cell]:
    """Everything that may be shown, cut along the leads of a couplet.

    Every character of the couplet must be in `showings`. The shares add up to 1.
    """
    cut = [pieces(name, couplet.leads.values(), showings[name]) for name in couplet.characters]
    axes = [zip(parts, shares(showings[name], parts), strict=True) for name, parts in zip(couplet.characters, cut, strict=True)]
    for combination in product(*axes):
        seen = dict(zip(couplet.characters, (piece for piece, _ in combination), strict=True))
        yield Cell({**showings, **seen}, math.prod(share for _, share in combination), holds(couplet, seen))


def pieces(name: str, leads: Iterable[Lead], showing: Showing) -> list[Showing]:
    """What may be shown of one character, cut along some leads."""
    result = [showing]
    for lead in leads:
        if wanted := lead.when.get(name):
            result = [part for piece in result for part in (piece.meet(wanted), *piece.without(wanted)) if not part.is_empty]
    return result


def single_pieces(library: Library, name: str, leads: Iterable[Lead]) -> list[Showing]:
    """All that can be seen of one character, cut along some leads; states one by one, numbers from low to high."""
    character = library.characters[name]
    if not character.is_number:
        return [States(frozenset({state})) for state in character.states]
    cut = pieces(name, leads, Interval())
    return sorted(cut, key=lambda piece: piece.low if isinstance(piece, Interval) else 0.0)


def shares(showing: Showing, parts: Sequence[Showing]) -> list[float]:
    """How much of what may be shown lies in each part of everything; they add up to 1.

    Where a number may be anything, or has an open end, all parts that it reaches into count alike.
    """
    each = [showing.share(part) for part in parts]
    return [share / sum(each) for share in each]


def takes(lead: Lead, seen: Showings) -> bool:
    """Whether what is seen meets what a lead asks for."""
    return all(not seen[name].meet(wanted).is_empty for name, wanted in lead.when.items())


def holds(couplet: Couplet, seen: Showings) -> tuple[Lead, ...]:
    """The leads that hold for what is seen of every character of a couplet; the otherwise lead when no other does."""
    named = tuple(lead for lead in couplet.leads.values() if not lead.otherwise and takes(lead, seen))
    return named or tuple(lead for lead in couplet.leads.values() if lead.otherwise)


def boxes(library: Library, couplet: Couplet, lead: Lead) -> tuple[Box, ...]:
    """All that a lead takes, as boxes that have nothing in common; one for a lead that says what it wants.

    What is left for a lead that takes all the rest is joined along one character at a time, so that few boxes are left.
    """
    if not lead.otherwise:
        return (dict(lead.when),)
    axes = [pieces(name, couplet.leads.values(), everything(library.characters[name])) for name in couplet.characters]
    left: list[dict[str, Showing]] = []
    for combination in product(*axes):
        seen = dict(zip(couplet.characters, combination, strict=True))
        if not any(takes(each, seen) for each in couplet.leads.values() if not each.otherwise):
            left.append(seen)
    for name in reversed(couplet.characters):
        left = _joined(left, name)
    return tuple(left)


def _joined(parts: list[dict[str, Showing]], name: str) -> list[dict[str, Showing]]:
    """Boxes that differ in one character alone, made one where its values join."""
    result: list[dict[str, Showing]] = []
    for part in parts:
        for number, other in enumerate(result):
            if all(other[each] == part[each] for each in part if each != name) and (whole := _union(other[name], part[name])):
                result[number] = {**other, name: whole}
                break
        else:
            result.append(part)
    return result


def _union(one: Showing, other: Showing) -> Showing | None:
    if isinstance(one, States) and isinstance(other, States):
        return States(one.ids | other.ids)
    assert isinstance(one, Interval) and isinstance(other, Interval)
    if one.high == other.low:
        return Interval(one.low, other.high)
    return Interval(other.low, one.high) if other.high == one.low else None
