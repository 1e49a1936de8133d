"""The leads of a couplet divide what can be seen: none overlap, nothing falls between them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import combinations, islice, product

from keytool.library.checks.couplets import At, couplets, is_whole
from keytool.library.checks.showing_text import seen_words
from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.model import Lead, Library
from keytool.library.pieces import single_pieces, takes
from keytool.library.value import Showing

NAME = "division"
OVERLAP = Message(NAME, "Leads '{one}' and '{other}' both take {seen}.", tip="Let each thing that can be seen fit one lead only.")
GAP = Message(NAME, "No lead of '{couplet}' takes {shown}{more}.", tip="Add it to a lead, or let one lead say otherwise: true.")
MOST_SHOWN = 3


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each pair of leads that overlap, and for what no lead takes."""
    for at in couplets(loaded):
        named = [lead for lead in at.couplet.leads.values() if not lead.otherwise]
        if named and is_whole(at) and all(set(lead.when) == set(named[0].when) for lead in named):
            yield from _overlaps(at, named)
            if len(named) == len(at.couplet.leads):
                yield from _gaps(at, named)


def _overlaps(at: At, named: list[Lead]) -> Iterator[Finding]:
    for one, other in combinations(named, 2):
        both = {id: one.when[id].meet(other.when[id]) for id in one.when}
        if not any(showing.is_empty for showing in both.values()):
            yield OVERLAP.at(
                at.place("leads", other.id, "when", of_key=True), one=one.id, other=other.id, seen=seen_words(at.loaded.library, both)
            )


def _gaps(at: At, named: list[Lead]) -> Iterator[Finding]:
    library = at.loaded.library
    left = [seen for seen in _cells(library, named) if not any(takes(lead, seen) for lead in named)]
    if left:
        shown = ", nor ".join(seen_words(library, seen) for seen in islice(left, MOST_SHOWN))
        more = f", nor {len(left) - MOST_SHOWN} more" if len(left) > MOST_SHOWN else ""
        yield GAP.at(at.place(), couplet=at.couplet.id, shown=shown, more=more)


def _cells(library: Library, named: list[Lead]) -> Iterator[Mapping[str, Showing]]:
    """All that can be seen of the couplet's characters, cut so finely that a lead takes all of a cell or nothing."""
    ids = list(named[0].when)
    for combination in product(*(single_pieces(library, id, named) for id in ids)):
        yield dict(zip(ids, combination, strict=True))
