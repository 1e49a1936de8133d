"""Which leads of a couplet something may take, given what it may show."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import product

from keytool.library.model import Couplet, Lead
from keytool.library.value import Showing

Showings = Mapping[str, Showing]


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
    cut = [pieces(name, couplet, showings[name]) for name in couplet.characters]
    axes = [zip(parts, shares(showings[name], parts), strict=True) for name, parts in zip(couplet.characters, cut, strict=True)]
    for combination in product(*axes):
        seen = dict(zip(couplet.characters, (piece for piece, _ in combination), strict=True))
        yield Cell({**showings, **seen}, math.prod(share for _, share in combination), holds(couplet, seen))


def pieces(name: str, couplet: Couplet, showing: Showing) -> list[Showing]:
    """What may be shown of one character, cut along the leads of a couplet."""
    result = [showing]
    for lead in couplet.leads.values():
        if wanted := lead.when.get(name):
            result = [part for piece in result for part in (piece.meet(wanted), *piece.without(wanted)) if not part.is_empty]
    return result


def shares(showing: Showing, parts: Sequence[Showing]) -> list[float]:
    """How much of what may be shown lies in each part of everything; they add up to 1.

    Where a number may be anything, or has an open end, all parts that it reaches into count alike.
    """
    each = [showing.share(part) for part in parts]
    return [share / sum(each) for share in each]


def holds(couplet: Couplet, seen: Showings) -> tuple[Lead, ...]:
    """The leads that hold for what is seen of every character of a couplet; the otherwise lead when no other does."""
    named = tuple(
        lead
        for lead in couplet.leads.values()
        if not lead.otherwise and all(not seen[name].meet(wanted).is_empty for name, wanted in lead.when.items())
    )
    return named or tuple(lead for lead in couplet.leads.values() if lead.otherwise)
